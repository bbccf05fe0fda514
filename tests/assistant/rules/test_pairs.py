"""The few pairs of rows that are compared are all that could be one sight."""

from __future__ import annotations

from itertools import combinations
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import TypeAdapter

import kb_samples
from assistant.rules.loader import load_pack
from assistant.rules.overlaps import common_sight
from assistant.rules.pairs import candidate_pairs, conditions
from assistant.signals.kinds import Signal
from tests.packs_at_scale import whole_pack

PACKS = Path(kb_samples.__file__).parent / "packs"
SAMPLES = sorted(folder.name for folder in PACKS.iterdir() if folder.is_dir())

ROWS: TypeAdapter[Signal] = TypeAdapter(Signal)


def every_pair(rows: tuple[Signal, ...]) -> set[tuple[str, str]]:
    """Return the ids of rows that one look cannot tell, by looking at every pair."""
    return {
        (one.id, other.id)
        for one, other in combinations(rows, 2)
        if conditions(one) == conditions(other) and common_sight(one, other) is not None
    }


def by_index(rows: tuple[Signal, ...]) -> set[tuple[str, str]]:
    """Return the same by looking only at the pairs that the index gives."""
    return {
        (one.id, other.id)
        for one, other in candidate_pairs(rows)
        if common_sight(one, other) is not None
    }


lamps = st.fixed_dictionaries(
    {},
    optional={
        "box": st.sampled_from(["indoor", "outdoor"]),
        "board": st.sampled_from(["outdoor main", "main", "fan board"]),
        "label": st.sampled_from(["LD1", "ld-1", "LD2", "run lamp", "run"]),
        "colour": st.sampled_from(["amber", "orange", "green"]),
    },
)
codes = st.text(alphabet="E05O4S", min_size=1, max_size=2)


def row(kind: str, **fields: st.SearchStrategy[object]) -> st.SearchStrategy[object]:
    return st.fixed_dictionaries({"kind": st.just(kind), **fields})


rows = st.one_of(
    row("steady", lamp=lamps),
    row("off", lamp=lamps),
    row("heartbeat", lamp=lamps),
    row("even_blink", lamp=lamps),
    row("rate_blink", lamp=lamps, rate_class=st.sampled_from(["slow", "fast"])),
    row("single_flash", lamp=lamps, window=st.just("3 s")),
    row(
        "count_per_window", lamp=lamps, count=st.integers(1, 3), window=st.just("10 s")
    ),
    row("group_then_pause", lamp=lamps, count=st.integers(1, 3)),
    row("short_long", lamp=lamps, short=st.integers(1, 2), long=st.integers(0, 1)),
    row("beeps", count=st.integers(1, 2)),
    row("display_code", code=codes),
    row("digit_position", position=st.just(1), of=st.just(2), sign=st.just("E")),
    row(
        "display_value",
        encoding=st.just("plain"),
        low=st.integers(0, 5),
        high=st.integers(40, 60),
    ),
    row(
        "several_lamps",
        lamps=st.lists(
            st.fixed_dictionaries(
                {"lamp": lamps, "state": st.sampled_from(["on", "off", "flash", "any"])}
            ),
            min_size=2,
            max_size=2,
        ).map(tuple),
    ),
)


@given(st.lists(rows, min_size=2, max_size=7))
def test_no_pair_that_one_look_cannot_tell_is_left_out(
    written: list[dict[str, object]],
) -> None:
    read = tuple(
        ROWS.validate_python(
            {"id": f"r{n}", "meaning": "m", "is_fault": True, **row}, strict=True
        )
        for n, row in enumerate(written)
    )

    assert by_index(read) == every_pair(read)


@pytest.mark.parametrize("name", SAMPLES)
def test_a_sample_pack_loses_no_pair(name: str) -> None:
    read = load_pack(PACKS / name).rows

    assert by_index(read) == every_pair(read)


def test_a_large_pack_is_verified_by_looking_at_few_pairs(tmp_path: Path) -> None:
    read = load_pack(whole_pack(tmp_path, 1000)).rows

    assert len(read) == 600
    assert len(list(candidate_pairs(read))) < 2 * len(read)
