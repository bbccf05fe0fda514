"""Builds waits of invented documents, for tests."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from typing import Any

from pydantic import TypeAdapter

from assistant.timing.moment import Moment
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening, WaitRow
from assistant.timing.wait_kinds.every import Wait

_WAIT: TypeAdapter[Wait] = TypeAdapter(Wait)
NOON = datetime(2026, 5, 4, 12, tzinfo=UTC)


def minutes(number: float) -> timedelta:
    """Return a number of minutes."""
    return timedelta(minutes=number)


def at(number: float, wide: float = 0.0) -> Moment:
    """Return the moment `number` minutes after noon, up to `wide` minutes later."""
    return Moment(earliest=NOON + minutes(number), latest=NOON + minutes(number + wide))


def happened(trigger: Trigger, number: float | None, wide: float = 0.0) -> Happening:
    """Return a happening some minutes after noon; None is a time not known."""
    return Happening(trigger, None if number is None else at(number, wide))


def wait(name: str, trigger: Trigger, pack: str = "quellmar", **fields: Any) -> WaitRow:
    """Return a wait row; durations as written, such as ``minimum="3 min"``."""
    written = {"id": name, "kind": "start_delay", "name": name, "trigger": trigger}
    return WaitRow(
        f"{pack}/{name}", _WAIT.validate_python(written | fields), "confirmed"
    )
