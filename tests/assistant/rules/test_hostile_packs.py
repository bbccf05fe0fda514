"""Whatever stands in a pack's files, it is loaded or every mistake has its line."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.errors import PackError
from assistant.rules.loader import load_pack
from tests.pack_folders import GOOD, write_pack

PLACE = re.compile(r".+:[1-9]\d*: .+", re.DOTALL)
FILES = sorted(GOOD)


def loaded_or_told(folder: Path, files: dict[str, str]) -> bool:
    """Whether a pack is loaded, or refused with mistakes that all have a line."""
    try:
        load_pack(write_pack(folder, files))
    except PackError as error:
        told = error.mistakes
        return bool(told) and all(PLACE.fullmatch(mistake) for mistake in told)
    return True


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    file=st.sampled_from(FILES),
    text=st.text(st.characters(codec="utf-8"), max_size=80),
)
def test_any_text_in_any_file_is_answered(tmp_path: Path, file: str, text: str) -> None:
    assert loaded_or_told(tmp_path, {**GOOD, file: text})


@settings(max_examples=25, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(data=st.data())
def test_any_slip_in_a_good_file_is_answered(
    tmp_path: Path, data: st.DataObject
) -> None:
    file = data.draw(st.sampled_from(FILES))
    text = GOOD[file]
    place = data.draw(st.integers(0, len(text) - 1))
    length = data.draw(st.integers(0, 12))
    put = data.draw(
        st.sampled_from(["", " ", "\n", ":", "- ", "{", "]", "'", "0", "x"])
    )

    slip = text[:place] + put + text[place + length :]
    assert loaded_or_told(tmp_path, {**GOOD, file: slip})


@pytest.mark.parametrize(
    "text",
    [
        "- &a [*a]\n",
        "- id: " + "[" * 60 + "]" * 60 + "\n",
        "--- []\n--- []\n",
        "- {id: a, id: a}\n",
        "- ? [a]\n  : b\n",
        "- !!python/object:os.system x\n",
        "- <<: {id: a}\n",
        "%YAML 1.1\n---\n- id: off\n",
        "\x00",
        "- 'open\n",
        "just words\n",
        "- 1\n- 2\n",
        "- null\n",
        "- id: 7\n  kind: 8\n",
        "- id: a\n  kind: [steady]\n",
    ],
)
def test_odd_yaml_is_told_and_never_run(text: str, tmp_path: Path) -> None:
    with pytest.raises(PackError) as raised:
        load_pack(write_pack(tmp_path, {**GOOD, "causes.yaml": text}))

    assert all(PLACE.fullmatch(mistake) for mistake in raised.value.mistakes)


def test_a_file_far_too_large_is_refused_unread(tmp_path: Path) -> None:
    files = {**GOOD, "causes.yaml": "#" * 4_000_001}

    with pytest.raises(PackError, match="a rule file has at most"):
        load_pack(write_pack(tmp_path, files))
