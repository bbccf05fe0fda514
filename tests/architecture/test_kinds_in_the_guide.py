"""The guide's table of kinds: none is missing, each row and each test is there."""

from __future__ import annotations

import re
from pathlib import Path
from typing import get_args

from assistant.rules.loader import load_pack
from assistant.signals.kinds import Signal, TableNote
from assistant.timing.stop_kinds import Stop
from assistant.timing.wait_kinds.every import Wait

ROOT = Path(__file__).parents[2]
GUIDE = (ROOT / "DEVELOPERS.md").read_text("utf-8")
ROW = re.compile(r"^\| `(\w+)` \| `([\w/-]+)` \| `(test_\w+)` \|$", re.MULTILINE)
USUAL = "ondreval-pochard"


def kinds_of(union: object) -> set[str]:
    """Return the discriminators of a union of models, nested ones too."""
    model = getattr(union, "model_fields", None)
    if model is not None:
        return set(get_args(model["kind"].annotation))
    return {kind for part in get_args(union) for kind in kinds_of(part)}


def sections() -> dict[str, list[tuple[str, str, str]]]:
    whole = GUIDE.partition("## Every kind, its sample row, its test")[2]
    parts = whole.partition("\n## ")[0].split("| Sample row | Test |")
    names = ("signals", "waits", "stops")
    return dict(zip(names, map(ROW.findall, parts[1:]), strict=True))


def test_every_kind_that_a_pack_may_write_stands_in_the_guide() -> None:
    told = {name: {row[0] for row in rows} for name, rows in sections().items()}

    assert told["signals"] == kinds_of(Signal) | kinds_of(TableNote)
    assert told["waits"] == kinds_of(Wait)
    assert told["stops"] == kinds_of(Stop)


def test_the_rows_that_the_guide_names_are_of_that_kind() -> None:
    packs = {
        path.name: load_pack(path) for path in (ROOT / "kb_samples/packs").iterdir()
    }
    wrong = []
    for file, rows in sections().items():
        for kind, row, _ in rows:
            pack, _, name = (
                f"{USUAL}/{row}".rpartition("/")
                if "/" not in row
                else (row.rpartition("/"))
            )
            items = getattr(packs[pack], file)
            if kind not in {item.kind for item in items if item.id == name}:
                wrong.append(row)

    assert wrong == []


def test_the_tests_that_the_guide_names_are_there() -> None:
    text = "".join(
        path.read_text("utf-8") for path in (ROOT / "tests").rglob("test_*.py")
    )
    named = [test for rows in sections().values() for *_, test in rows]

    assert [test for test in named if f"def {test}(" not in text] == []
