"""The table of kinds of wait: complete, read, and strict."""

from __future__ import annotations

import ast
from pathlib import Path
from typing import get_args

import pytest
from pydantic import TypeAdapter, ValidationError

from assistant.rules.loader import load_pack
from assistant.timing.wait_kinds.every import Wait
from tests.pack_folders import write_pack
from tests.waits_of_each_kind import EVERY, ROWS, pack_files
from tests.waits_told import of_kind

_WAIT: TypeAdapter[Wait] = TypeAdapter(Wait)


def test_the_table_has_a_row_of_every_kind_and_its_test_exists() -> None:
    kinds = {
        get_args(model.model_fields["kind"].annotation)[0]
        for model in get_args(get_args(Wait)[0])
    }
    tests = {
        node.name
        for path in Path(__file__).parent.glob("test_*.py")
        for node in ast.parse(path.read_text(encoding="utf-8")).body
        if isinstance(node, ast.FunctionDef)
    }

    assert set(EVERY) == kinds
    assert {row.test for row in ROWS} <= tests


def test_a_pack_with_every_kind_is_read_without_a_mistake(tmp_path: Path) -> None:
    pack = load_pack(write_pack(tmp_path / "quellmar", pack_files()))

    assert [one.kind for one in pack.waits] == [row.kind for row in ROWS]


@pytest.mark.parametrize(
    ("kind", "wrong"),
    [
        ("start_delay", {"if_off_before": "5 min"}),
        ("minimum_run", {"minimum": None}),
        ("restart_delay", {"by_attempt": ["3 min"]}),
        ("restart_delay", {"minimum": "3 min"}),
        ("reset_delay", {"trigger": "reset"}),
        ("standby", {"give_up": None}),
        ("standby", {"latches": False}),
        ("value_and_time", {"conditions": []}),
        ("value_and_time", {"minimum": None}),
        ("soft_stop", {"retries": 0}),
        ("capacitor_bleed", {"below": "60 s"}),
        ("capacitor_bleed", {"logic": "or"}),
        ("reset_window", {"give_up": None}),
        ("startup_order", {"order": []}),
        ("defrost", {"entry": {}}),
        ("defrost", {"entry": {"coil_under_ambient": "7 degC"}}),
        ("display_delay", {"logic": "or"}),
        ("display_delay", {"only_when": ["it feels like it"]}),
        ("detection_time", {"minimum": None}),
        ("ignore_window", {"minimum": None}),
        ("button", {"presses": 3, "within": None}),
        ("button", {"presses": 1, "hold": None}),
    ],
)
def test_a_row_that_contradicts_its_kind_is_refused(
    kind: str, wrong: dict[str, object]
) -> None:
    good = of_kind(kind).wait.model_dump(exclude_defaults=True, exclude_none=True)
    written = {**good, "kind": kind, **wrong}
    lists = {key: tuple(one) for key, one in written.items() if isinstance(one, list)}
    assert _WAIT.validate_python({**good, "kind": kind}).kind == kind

    with pytest.raises(ValidationError):
        _WAIT.validate_python({**written, **lists})
