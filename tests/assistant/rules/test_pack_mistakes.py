"""Mistakes that people make in packs: each is told, at its exact line."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import PackError
from assistant.rules.loader import load_pack
from tests.pack_folders import GOOD, changed, write_pack


def told(folder: Path, files: dict[str, str]) -> list[str]:
    """Return the mistakes told of a pack, without the folder."""
    with pytest.raises(PackError) as raised:
        load_pack(write_pack(folder / "pack", files))
    return [
        mistake.removeprefix(f"{(folder / 'pack').as_posix()}/")
        for mistake in raised.value.mistakes
    ]


RESETS = (
    "  resets:\n"
    + (GOOD["stops.yaml"].partition("  resets:\n")[2].partition("  source")[0])
)
SEEDED: dict[str, tuple[str, str, str, str, str]] = {
    # name: file, what stood there, the mistake, text of its line, what is said
    "a misspelt key": (
        "signals.yaml",
        "  count: 4\n",
        "  cuont: 4\n",
        "cuont: 4",
        "`amber-4`: unknown key `cuont`; did you mean `count`?",
    ),
    "a misspelt key inside a lamp": (
        "signals.yaml",
        "colour: amber}",
        "color: amber}",
        "color: amber",
        "unknown key `lamp.color`; did you mean `colour`?",
    ),
    "an unknown kind": (
        "signals.yaml",
        "kind: steady",
        "kind: staedy",
        "kind: staedy",
        "unknown kind `staedy`; did you mean `steady`?",
    ),
    "a missing kind": (
        "causes.yaml",
        "  kind: part\n",
        "",
        "- id: discharge-sensor",
        "`kind` is missing; one of part, supply",
    ),
    "a missing key": (
        "signals.yaml",
        "  window: 10 s\n",
        "",
        "- id: amber-4",
        "`window` is missing",
    ),
    "a code without quotes that reads as a number": (
        "signals.yaml",
        'code: "E4"',
        "code: 44",
        "code: 44",
        '`code` is read as a number; expected text; quote it: "44"',
    ),
    "a code without quotes that tools read differently": (
        "signals.yaml",
        'code: "E4"',
        "code: 4E4",
        "code: 4E4",
        'quote it: "4E4"',
    ),
    "an off without quotes": (
        "signals.yaml",
        'state: "on"',
        "state: off",
        "state: off",
        'quote it: "off"',
    ),
    "a yes for true": (
        "signals.yaml",
        "is_fault: false",
        "is_fault: no",
        "is_fault: no",
        "or write true or false",
    ),
    "a number written as text": (
        "signals.yaml",
        "  count: 4\n",
        '  count: "4"\n',
        'count: "4"',
        "`count` is `4`; expected a whole number",
    ),
    "a count out of range": (
        "signals.yaml",
        "  count: 4\n",
        "  count: 0\n",
        "count: 0",
        "`count` is `0`; expected at least 1",
    ),
    "a version number without quotes": (
        "pack.yaml",
        'version: "1.0"',
        "version: 1.0",
        "version: 1.0",
        '`version` is read as a number; expected text; quote it: "1.0"',
    ),
    "a duration without a unit": (
        "waits.yaml",
        "minimum: 3 min",
        'minimum: "3"',
        'minimum: "3"',
        "`minimum`: '3' has no unit",
    ),
    "a duration in base sixty": (
        "waits.yaml",
        "minimum: 3 min",
        "minimum: 3:00",
        "minimum: 3:00",
        'quote it: "3:00"',
    ),
    "a duration that is a resistance": (
        "waits.yaml",
        "minimum: 3 min",
        "minimum: 3 kohm",
        "minimum: 3 kohm",
        "`minimum`: expected a time, got '3 kohm'",
    ),
    "a minimum longer than the give-up": (
        "waits.yaml",
        "give_up: 10 min",
        "give_up: 1 min",
        "give_up: 1 min",
        "`give_up` 1 min is shorter than `minimum` 3 min",
    ),
    "an unknown trigger": (
        "waits.yaml",
        "trigger: power_on",
        "trigger: poweron",
        "trigger: poweron",
        "`trigger` is `poweron`; did you mean `power_on`?",
    ),
    "a start-up order after a part that is not there": (
        "waits.yaml",
        "after: compressor",
        "after: compresor",
        "after: compresor",
        "did you mean `compressor`?",
    ),
    "a key written twice": (
        "signals.yaml",
        "  meaning: supply present\n",
        "  meaning: supply present\n  meaning: supply here\n",
        "meaning: supply here",
        "`meaning` is written twice",
    ),
    "an id used twice": (
        "signals.yaml",
        "- id: grid-1",
        "- id: code-e4",
        "- id: code-e4\n  kind: several_lamps",
        "id `code-e4` is used already, in signals.yaml line 28",
    ),
    "an id used in another file": (
        "waits.yaml",
        "- id: order",
        "- id: grid-1",
        "- id: grid-1",
        "id `grid-1` is used already, in signals.yaml line 35",
    ),
    "an id with capitals": (
        "signals.yaml",
        "- id: grid-1",
        "- id: Grid_1",
        "- id: Grid_1",
        "an id has small letters, digits and hyphens only",
    ),
    "a cause that is not there": (
        "signals.yaml",
        "causes: [discharge-sensor, main-board]",
        "causes: [discharge-senser, main-board]",
        "discharge-senser",
        "is not an id in causes.yaml; did you mean `discharge-sensor`?",
    ),
    "a moved cause that is not there": (
        "checks.yaml",
        "main-board: somewhat for",
        "mainboard: somewhat for",
        "mainboard: somewhat for",
        "did you mean `main-board`?",
    ),
    "a move that is no move": (
        "checks.yaml",
        "main-board: somewhat for",
        "main-board: somewat for",
        "main-board: somewat for",
        "did you mean `somewhat for`?",
    ),
    "a next check that is not there": (
        "checks.yaml",
        "then: measure-discharge",
        "then: measure-discharg",
        "then: measure-discharg",
        "did you mean `measure-discharge`?",
    ),
    "a sensor that is not there": (
        "checks.yaml",
        "sensor: discharge-table",
        "sensor: discharge",
        "sensor: discharge",
        "is not an id in sensors.yaml; did you mean `discharge-table`?",
    ),
    "an outcome that the check cannot have": (
        "checks.yaml",
        "result: loose",
        "result: losse",
        "result: losse",
        "result `losse` is not one of this check; did you mean `loose`?",
    ),
    "a lamp that is shown meanwhile and is not there": (
        "waits.yaml",
        "lamp_during: green-on",
        "lamp_during: green-one",
        "lamp_during: green-one",
        "did you mean `green-on`?",
    ),
    "a lockout without a way out": (
        "stops.yaml",
        RESETS,
        "",
        "- id: high-pressure",
        "`high-pressure`: a lockout names its reset or its release",
    ),
    "a document that is not named": (
        "signals.yaml",
        "source: {doc: service, page: 31",
        "source: {doc: servise, page: 31",
        "doc: servise",
        "`servise` is not a document of this pack; did you mean `service`?",
    ),
    "a page before the first": (
        "signals.yaml",
        "page: 31",
        "page: 0",
        "page: 0",
        "`source.page` is `0`; expected at least 1",
    ),
    "a maker's rule without a source": (
        "causes.yaml",
        '  source: {doc: service, page: 31, quote: "board"}\n',
        "",
        "- id: main-board",
        "a maker's rule names its source",
    ),
    "a quote left empty": (
        "causes.yaml",
        'quote: "board"',
        'quote: ""',
        'quote: ""',
        "`source.quote` is empty",
    ),
    "a replacement by a row that is not there": (
        "pack.yaml",
        "by: amber-4-late",
        "by: amber-4-lat",
        "by: amber-4-lat",
        "did you mean `amber-4-late`?",
    ),
    "a replaced row that is not there": (
        "pack.yaml",
        "rows: [amber-4]",
        "rows: [ambre-4]",
        "rows: [ambre-4]",
        "did you mean `amber-4`?",
    ),
    "a pattern with an open bracket": (
        "pack.yaml",
        'models: ["QM-(24,36)*"]',
        'models: ["QM-(24,36*"]',
        "QM-(24,36*",
        "a bracket is not closed",
    ),
    "a newer schema": (
        "pack.yaml",
        "schema: 1",
        "schema: 2",
        "schema: 2",
        "schema 2 is newer than this program reads (1)",
    ),
    "a table that is not there": (
        "sensors.yaml",
        "table: discharge.csv",
        "table: dischrage.csv",
        "table: dischrage.csv",
        "did you mean `discharge.csv`?",
    ),
    "a table outside the pack": (
        "sensors.yaml",
        "table: discharge.csv",
        "table: ../discharge.csv",
        "table: ../discharge.csv",
        "lies outside the pack",
    ),
    "a misspelt column": (
        "tables/discharge.csv",
        "resistance kohm",
        "resistence kohm",
        "resistence kohm",
        "unknown column `resistence kohm`; did you mean `resistance`?",
    ),
    "a cell that is no number": (
        "tables/discharge.csv",
        "20,68,",
        "20,6B,",
        "20,6B,",
        "resistance: '6B'",
    ),
    "a resistance that turns back": (
        "tables/discharge.csv",
        "20,68,",
        "20,6.8,",
        "60,14.5,",
        "does not fall from 6.8 kohm on line 3",
    ),
    "a temperature given twice": (
        "tables/discharge.csv",
        "60,14.5",
        "20,14.5",
        "20,14.5",
        "temperature 20 degC is there already, on line 3",
    ),
    "tabs for indentation": (
        "waits.yaml",
        "  name: restart delay",
        "\tname: restart delay",
        "\tname: restart delay",
        "indent with spaces, not tabs",
    ),
    "text with a colon and no quotes": (
        "cautions.yaml",
        "text: Measure the bus",
        "text: First: measure the bus",
        "text: First: measure",
        "put text that holds a colon between quotes",
    ),
    "a list where keys belong": (
        "signals.yaml",
        "  lamp: {board: outdoor main, label: LD1, colour: green}\n",
        "  lamp: [LD1, green]\n",
        "lamp: [LD1, green]",
        "`lamp` is a list; expected keys and values",
    ),
    "one name where a list belongs": (
        "procedures.yaml",
        "causes: [discharge-sensor]",
        "causes: discharge-sensor",
        "causes: discharge-sensor",
        "`causes` is `discharge-sensor`; expected a list",
    ),
    "an alias": (
        "causes.yaml",
        "name: main board",
        "name: &board main board",
        "name: &board main board",
        "anchors and aliases are not read; write it out",
    ),
    "a shop pack without its author": (
        "pack.yaml",
        "kind: maker",
        'kind: shop\ndate: "2026-03-02"',
        "kind: shop",
        "a shop pack says who wrote it; add `author:`",
    ),
}


@pytest.mark.parametrize("name", SEEDED)
def test_a_mistake_is_told_at_its_exact_line(name: str, tmp_path: Path) -> None:
    file, old, new, marker, said = SEEDED[name]
    files = changed(file, old, new)
    line = files[file][: files[file].index(marker)].count("\n") + 1

    mistakes = told(tmp_path, files)

    assert len(mistakes) == 1, mistakes
    assert mistakes[0].startswith(f"{file}:{line}: ")
    assert said in mistakes[0]


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
