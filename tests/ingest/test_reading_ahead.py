"""Two files are read at a time and given in one order; all of it can be stopped."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import InputError
from ingest.readers import ahead
from ingest.readers.ahead import Ahead
from ingest.readers.base import RawPage
from ingest.readers.isolation import Reading

HERE = Path(__file__).parent


@pytest.fixture(autouse=True)
def _hostile_readers(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PYTHONPATH", str(HERE))


def readings(tmp_path: Path, *readers: str) -> list[Reading]:
    made = []
    for number, reader in enumerate(readers):
        path = tmp_path / f"file-{number}.pdf"
        path.touch()
        made.append(Reading(path, f"hostile_readers:{reader}"))
    return made


def texts(found: Ahead, at: int) -> list[str]:
    return [item.text for item in found.items(at) if isinstance(item, RawPage)]


@pytest.mark.parametrize("workers", [1, 2, 3])
def test_the_order_does_not_depend_on_who_is_quicker(
    tmp_path: Path, workers: int
) -> None:
    found = Ahead(readings(tmp_path, "slow", "chatter", "slow", "chatter"), workers)

    told = [texts(found, at) for at in range(4)]
    found.stop()

    assert told == [
        ["file-0.pdf 1", "file-0.pdf 2", "file-0.pdf 3"],
        ["quiet"],
        ["file-2.pdf 1", "file-2.pdf 2", "file-2.pdf 3"],
        ["quiet"],
    ]


def test_a_file_that_is_refused_in_its_turn_leaves_the_others(tmp_path: Path) -> None:
    found = Ahead(readings(tmp_path, "slow", "die_at_once", "chatter"))

    assert len(texts(found, 0)) == 3
    with pytest.raises(InputError, match="the reader gave up"):
        texts(found, 1)
    assert texts(found, 2) == ["quiet"]
    found.stop()


def test_text_that_waits_is_bounded_and_nothing_is_lost_by_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(ahead, "AHEAD_CHARACTERS", 5)
    found = Ahead(readings(tmp_path, *["slow"] * 5))

    told = [texts(found, at) for at in range(5)]
    found.stop()

    assert told == [[f"file-{n}.pdf {p}" for p in (1, 2, 3)] for n in range(5)]


def test_a_stop_ends_readers_that_would_never_end(tmp_path: Path) -> None:
    found = Ahead(readings(tmp_path, "tell_pid", "tell_pid", "tell_pid"))
    items = found.items(0)
    next(items)
    page = next(items)
    assert isinstance(page, RawPage)

    found.stop()

    assert not Path(f"/proc/{page.text}").exists()
