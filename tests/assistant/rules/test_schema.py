"""The JSON Schema for editors takes what the loader takes, and not what it refuses."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

import pytest

from assistant.rules.schema import NAMES, schema_of
from assistant.rules.shapes import KINDS
from assistant.rules.yaml_lines import read_yaml
from tests.pack_folders import GOOD, write_pack
from tests.schema_check import problems
from tests.scheme_pack import SCHEMES

PACKS = Path(__file__).parents[3] / "kb_samples" / "packs"
FILES = sorted(PACKS.rglob("*.yaml"))


@cache
def schema(name: str) -> dict[str, Any]:
    return schema_of(name)


def written(path: Path) -> object:
    found = read_yaml(path, path.name)
    assert found.mistakes == []
    return found.data


@pytest.mark.parametrize(
    "path", FILES, ids=[path.relative_to(PACKS).as_posix() for path in FILES]
)
def test_the_files_of_the_sample_packs_fit_their_schemas(path: Path) -> None:
    assert problems(written(path), schema(path.stem)) == []


@pytest.mark.parametrize("files", [GOOD, SCHEMES], ids=["whole pack", "every scheme"])
def test_the_packs_of_the_tests_fit_their_schemas(files: dict[str, str]) -> None:
    with TemporaryDirectory() as place:
        folder = write_pack(Path(place), files)
        for path in sorted(folder.glob("*.yaml")):
            assert problems(written(path), schema(path.stem)) == [], path.name


@pytest.mark.parametrize("name", [name for name in NAMES if name != "pack"])
def test_every_kind_the_loader_takes_is_in_the_schema(name: str) -> None:
    items = schema_of(name)["items"]

    assert set(items["discriminator"]["mapping"]) == set(KINDS[name])


@pytest.mark.parametrize(
    ("name", "item"),
    [
        ("waits", {"kind": "start_delay", "id": "a", "name": "A", "trigger": "reset",
                   "minimum": 240}),
        ("waits", {"kind": "start_delay", "id": "a", "name": "A", "trigger": "reset",
                   "minimum": "4"}),
        ("waits", {"kind": "start_delay", "id": "a", "name": "A", "trigger": "dawn"}),
        ("signals", {"kind": "steady", "id": "a", "meaning": "on", "is_fault": "no",
                     "lamp": {}}),
        ("signals", {"kind": "steady", "id": "a", "meaning": "on", "is_fault": False,
                     "lamp": {}, "colour": "red"}),
        ("signals", {"kind": "glow", "id": "a", "meaning": "on", "is_fault": False}),
        ("sensors", {"kind": "resistance_table", "id": "a", "name": "A", "role": "r",
                     "table": "a.csv", "points": []}),
    ],
)  # fmt: skip
def test_what_the_loader_refuses_does_not_fit(
    name: str, item: dict[str, object]
) -> None:
    assert problems([item], schema_of(name)) != []


@pytest.mark.parametrize(
    "text", ["8 s", "3 min", "1 h 30 min", "0.5 s", "12,000 s", "2 hours"]
)
def test_durations_are_written_with_their_unit(text: str) -> None:
    item = {"kind": "start_delay", "id": "a", "name": "A", "trigger": "reset"}

    assert problems([{**item, "minimum": text}], schema_of("waits")) == []


def test_a_schema_holds_only_definitions_that_it_uses() -> None:
    text = str(schema_of("stops"))

    assert all(f"#/$defs/{name}" in text for name in schema_of("stops")["$defs"])
