"""A file that did not change is not parsed again, and nothing else depends on that."""

from __future__ import annotations

from collections import Counter
from pathlib import Path

import pytest

from assistant.checks.kinds import ResistanceTable
from assistant.errors import PackError
from assistant.rules import csv_tables, yaml_lines
from assistant.rules.loader import load_pack_with_lines
from assistant.rules.parsed import MOST, ParsedFiles
from tests.pack_folders import GOOD, changed, write_pack


@pytest.fixture
def parses(monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """Count what is parsed, by the text it was."""
    counted: Counter[str] = Counter()
    for module in (yaml_lines, csv_tables):
        real = module._parse

        def counting(text: str, into: object, real: object = real) -> object:
            counted[text] += 1
            return real(text, into)  # type: ignore[operator]

        monkeypatch.setattr(module, "_parse", counting)
    return counted


@pytest.fixture
def kept(tmp_path: Path) -> ParsedFiles:
    return ParsedFiles(tmp_path / "cache")


def test_an_unchanged_file_is_parsed_once(
    tmp_path: Path, kept: ParsedFiles, parses: Counter[str]
) -> None:
    folder = write_pack(tmp_path / "pack")
    first = load_pack_with_lines(folder, kept)

    again = load_pack_with_lines(folder, kept)

    assert again == first
    assert parses == Counter(dict.fromkeys(GOOD.values(), 1))


def test_without_kept_files_everything_is_parsed_each_time(
    tmp_path: Path, parses: Counter[str]
) -> None:
    folder = write_pack(tmp_path / "pack")

    load_pack_with_lines(folder)
    load_pack_with_lines(folder)

    assert set(parses.values()) == {2}


def test_only_the_changed_file_is_parsed_again(
    tmp_path: Path, kept: ParsedFiles, parses: Counter[str]
) -> None:
    load_pack_with_lines(write_pack(tmp_path / "pack"), kept)
    parses.clear()
    files = changed("tables/discharge.csv", "20,68,40", "20,69,40")

    pack, _ = load_pack_with_lines(write_pack(tmp_path / "pack", files), kept)

    assert list(parses) == [files["tables/discharge.csv"]]
    (sensor,) = pack.sensors
    assert isinstance(sensor, ResistanceTable)
    assert sensor.points[1].resistance.value == 69_000


def test_the_same_text_in_another_folder_is_not_parsed_again(
    tmp_path: Path, kept: ParsedFiles, parses: Counter[str]
) -> None:
    load_pack_with_lines(write_pack(tmp_path / "pack"), kept)
    parses.clear()

    _, lines = load_pack_with_lines(write_pack(tmp_path / "copy"), kept)

    assert not parses
    assert lines.place("green-on")[0].endswith("copy/signals.yaml")


def test_a_file_with_a_mistake_is_not_kept(
    tmp_path: Path, kept: ParsedFiles, parses: Counter[str]
) -> None:
    files = changed("signals.yaml", 'state: "on"', "state: off")
    folder = write_pack(tmp_path / "pack", files)
    told = []

    for _ in range(2):
        with pytest.raises(PackError) as raised:
            load_pack_with_lines(folder, kept)
        told.append(raised.value.mistakes)

    assert told[0] == told[1]
    assert parses[files["signals.yaml"]] == 2


@pytest.mark.parametrize("damage", ["", "x", "0" * 64 + "\n{}", "\udcff"])
def test_a_damaged_entry_is_as_good_as_none(
    damage: str, tmp_path: Path, kept: ParsedFiles, parses: Counter[str]
) -> None:
    folder = write_pack(tmp_path / "pack")
    first = load_pack_with_lines(folder, kept)
    for entry in kept.folder.iterdir():
        entry.write_bytes(damage.encode("utf-8", "surrogateescape"))

    assert load_pack_with_lines(folder, kept) == first
    assert set(parses.values()) == {2}
    load_pack_with_lines(folder, kept)
    assert set(parses.values()) == {2}


def test_a_folder_that_cannot_be_written_keeps_nothing(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    nowhere = ParsedFiles(tmp_path / "file" / "cache")
    folder = write_pack(tmp_path / "pack")

    assert load_pack_with_lines(folder, nowhere) == load_pack_with_lines(folder)


def test_only_so_many_entries_are_kept(kept: ParsedFiles) -> None:
    for number in range(MOST + 5):
        kept.put("reader", str(number), number)

    assert len(list(kept.folder.iterdir())) == MOST
    assert kept.get("reader", str(MOST + 4)) == MOST + 4
