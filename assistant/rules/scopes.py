"""Whether two statements of `applies_to` can speak of one unit."""

from __future__ import annotations

from itertools import product

from assistant.record import Scope, SerialRange
from assistant.rules.patterns import overlap
from assistant.rules.plates import (
    compare_capacity,
    compare_phase,
    compare_voltage,
    compare_words,
    serial_key,
)

_COMPARED = {
    "voltage": compare_voltage,
    "phase": compare_phase,
    "board_mark": compare_words,
    "capacity_class": compare_capacity,
    "market": compare_words,
    "unit_role": compare_words,
}


def apart(one: Scope, other: Scope) -> bool:
    """Return whether no unit fits both scopes."""
    for name, compare in _COMPARED.items():
        mine, theirs = getattr(one, name), getattr(other, name)
        if mine and theirs and compare(mine, theirs) == "excluded":
            return True
    if one.models and other.models:
        shared = any(overlap(a, b) for a, b in product(one.models, other.models))
        # A pattern for the indoor unit and one for the outdoor unit may both fit.
        if not shared and one.unit_role == other.unit_role is not None:
            return True
    return _serials_apart(one.serial, other.serial)


def _serials_apart(one: SerialRange | None, other: SerialRange | None) -> bool:
    if one is None or other is None:
        return False
    for early, late in ((one, other), (other, one)):
        last = serial_key(early.format, early.last) if early.last else None
        first = serial_key(late.format, late.first) if late.first else None
        if last is not None and first is not None and last < first:
            return True
    return False
