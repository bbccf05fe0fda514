"""Builds signal rows of invented tables, for tests."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import TypeAdapter

from assistant.signals.kinds import Signal
from assistant.signals.observation import Match, Observation, SignalRow

_SIGNAL: TypeAdapter[Signal] = TypeAdapter(Signal)
AMBER = {"board": "outdoor main", "label": "LD2", "colour": "amber"}
OF_ONE_LAMP = {
    "steady",
    "off",
    "heartbeat",
    "even_blink",
    "rate_blink",
    "single_flash",
    "analog_rate",
    "count_per_window",
    "group_then_pause",
    "short_long",
}
GREEN = {"board": "outdoor main", "label": "LD1", "colour": "green"}


def row(
    name: str,
    kind: str,
    document: str = "service manual",
    match: Literal["confirmed", "possible"] = "confirmed",
    **fields: Any,
) -> SignalRow:
    """Return a row `quellmar/<name>` of a table in `document`."""
    written = {"id": name, "kind": kind, "meaning": name, "is_fault": True, **fields}
    if kind in OF_ONE_LAMP:
        written.setdefault("lamp", AMBER)
    signal = _SIGNAL.validate_python(written)
    return SignalRow(f"quellmar/{name}", signal, match, document)


def window(count: int, name: str = "", **fields: Any) -> SignalRow:
    """Return `count` amber flashes per 10 s."""
    written = {"window": "10 s", **fields}
    return row(name or f"amber-{count}", "count_per_window", count=count, **written)


def group(count: int, name: str = "", **fields: Any) -> SignalRow:
    """Return a group of `count` amber flashes, then a pause."""
    return row(name or f"group-{count}", "group_then_pause", count=count, **fields)


def grid(name: str, document: str = "service manual", **lamps: str) -> SignalRow:
    """Return a grid row; each lamp by its label, such as ``run="on"``."""
    states: list[dict[str, Any]] = []
    for label, state in lamps.items():
        entry: dict[str, Any] = {"lamp": {"label": label}, "state": state}
        if state.isdecimal():
            entry |= {"state": "count", "count": int(state)}
        states.append(entry)
    return row(name, "several_lamps", document, lamps=tuple(states))


def ids(match: Match) -> list[str]:
    return [candidate.row.gid.partition("/")[2] for candidate in match.candidates]


def amber(**seen: object) -> Observation:
    return Observation.model_validate({"colour": ("amber",), "state": "count", **seen})


TABLE = tuple(window(count) for count in range(1, 9))
"""One lamp, one to eight flashes, none left out."""
