"""Mistakes that people make in packs: each is told, at its exact line."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import PackError
from assistant.rules.loader import load_pack
from tests.pack_folders import GOOD, changed, write_pack
from tests.seeded.every import SEEDED
from tests.seeded.proved import PROVED
from tests.verified_packs import verified


def told(folder: Path, files: dict[str, str]) -> list[str]:
    """Return the mistakes told of a pack, without the folder."""
    with pytest.raises(PackError) as raised:
        load_pack(write_pack(folder / "pack", files))
    return [
        mistake.removeprefix(f"{(folder / 'pack').as_posix()}/")
        for mistake in raised.value.mistakes
    ]


@pytest.mark.parametrize("name", SEEDED)
def test_a_mistake_is_told_at_its_exact_line(name: str, tmp_path: Path) -> None:
    file, old, new, marker, said = SEEDED[name]
    files = changed(file, old, new)
    line = files[file][: files[file].index(marker)].count("\n") + 1

    mistakes = told(tmp_path, files)

    assert len(mistakes) == 1, mistakes
    assert mistakes[0].startswith(f"{file}:{line}: ")
    assert said in mistakes[0]


@pytest.mark.parametrize("name", PROVED)
def test_what_only_the_pages_or_the_whole_show_is_told_at_its_line(
    name: str, tmp_path: Path
) -> None:
    file, old, new, marker, said = PROVED[name]
    files = changed(file, old, new)
    line = files[file][: files[file].index(marker)].count("\n") + 1

    errors = [each for each in verified(tmp_path, files) if each.severity == "error"]

    told = [str(each) for each in errors if (each.file, each.line) == (file, line)]
    assert [each for each in told if said in each], [str(each) for each in errors]


def test_a_mistake_of_every_kind_a_shop_makes_is_seeded() -> None:
    assert len(SEEDED) >= 80
    assert len(PROVED) >= 20


def test_every_mistake_of_a_pack_is_told_at_once(tmp_path: Path) -> None:
    files = dict(GOOD)
    for file, old, new in (
        ("signals.yaml", "count: 4", "cuont: 4"),
        ("signals.yaml", "kind: steady", "kind: staedy"),
        ("waits.yaml", "minimum: 3 min", "minimum: 3 minuts"),
        ("stops.yaml", "edge: counts", "edge: count"),
        ("checks.yaml", "result: loose", "result: losse"),
        ("tables/discharge.csv", "20,68", "20,x"),
    ):
        files[file] = files[file].replace(old, new, 1)

    mistakes = told(tmp_path, files)

    assert [mistake.partition(": ")[0] for mistake in mistakes] == [
        "checks.yaml:30",
        "signals.yaml:4",
        "signals.yaml:23",
        "stops.yaml:7",
        "tables/discharge.csv:3",
        "waits.yaml:5",
    ]


def test_a_file_that_is_not_yaml_hides_no_mistake_of_another(tmp_path: Path) -> None:
    files = changed("signals.yaml", "kind: steady", "kind: [steady")
    files["causes.yaml"] = files["causes.yaml"].replace("common", "comon", 1)

    mistakes = told(tmp_path, files)

    assert any(one.startswith("signals.yaml:") for one in mistakes)
    assert any("did you mean `common`?" in one for one in mistakes)
    assert not any("is not an id in signals.yaml" in one for one in mistakes)


def test_a_file_of_another_name_is_not_passed_over(tmp_path: Path) -> None:
    files = {**GOOD, "signal.yaml": GOOD["signals.yaml"], "wait.yml": ""}

    mistakes = told(tmp_path, files)

    assert "signal.yaml:1: is not a file of a pack; did you mean `signals.yaml`?" in (
        mistakes
    )
    assert any(one.startswith("wait.yml:1: ") for one in mistakes)


def test_a_folder_without_a_head_is_told(tmp_path: Path) -> None:
    with pytest.raises(PackError) as raised:
        load_pack(tmp_path)

    assert "pack.yaml:1: there is no such file" in str(raised.value)
    assert raised.value.hint


def test_bytes_that_are_no_text_are_told_at_their_line(tmp_path: Path) -> None:
    folder = write_pack(tmp_path / "pack")
    (folder / "causes.yaml").write_bytes(b"- id: a\n  name: caf\xe9\n")

    with pytest.raises(PackError) as raised:
        load_pack(folder)

    assert "causes.yaml:2: is not UTF-8 text; save the file as UTF-8" in str(
        raised.value
    )


def test_semicolons_between_columns_are_told_with_the_way_out(tmp_path: Path) -> None:
    files = {**GOOD, "tables/discharge.csv": "temperature;resistance\n0;180\n"}

    mistakes = told(tmp_path, files)

    assert mistakes == [
        "tables/discharge.csv:1: columns are separated by `;`; save with commas "
        "between columns and points in decimals"
    ]
