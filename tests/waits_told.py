"""Puts one invented wait of a kind in force and says how it stands, for tests."""

from __future__ import annotations

import tempfile
from functools import cache
from pathlib import Path

from pydantic import TypeAdapter

from assistant.rules.yaml_lines import read_yaml
from assistant.timing.values import Happening, Known, ValueTold, WaitRow, WaitState
from assistant.timing.wait_kinds.every import Wait
from assistant.timing.waits import waits_in_force
from assistant.units.parse import parse_quantity
from tests.wait_rows import NOON, at, minutes
from tests.waits_of_each_kind import EVERY

_WAIT: TypeAdapter[Wait] = TypeAdapter(Wait)


@cache
def of_kind(kind: str) -> WaitRow:
    """Return the row of a kind as the engine holds it."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "waits.yaml")
        path.write_text(EVERY[kind].yaml, encoding="utf-8")
        written = read_yaml(path, "waits.yaml")
    assert not written.mistakes
    wait = _WAIT.validate_python(written.data[0])
    return WaitRow(f"quellmar/{wait.id}", wait, "confirmed")


def state_of(
    row: WaitRow, told: list[Happening], after: float, known: Known | None = None
) -> WaitState | None:
    """Return how a wait stands some minutes after noon, None where it is not listed."""
    states = waits_in_force([row], told, NOON + minutes(after), known=known or Known())
    assert len(states) <= 1
    return states[0] if states else None


def standing(
    kind: str, told: list[Happening], after: float, known: Known | None = None
) -> str | None:
    """Return whether the wait of a kind runs, is over or overdue."""
    state = state_of(of_kind(kind), told, after, known)
    return state.state if state else None


def value(sensor: str, text: str, after: float) -> ValueTold:
    """Return a value read some minutes after noon."""
    return ValueTold(sensor, parse_quantity(text), at(after))
