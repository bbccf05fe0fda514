"""Numbers with a unit, and what a number without one could be."""

from __future__ import annotations

from assistant.units.parse import parse_quantity
from assistant.units.quantity import Quantity

UNIT = (
    r"(?:kohm|megohm|ohm|k|v ac|v dc|v|dc|ac|amp|ma|a|deg f|deg c|f|c|psia|"
    r"(?:psi|kpa|mpa|bar) abs(?:olute)?|psi|kpa|mpa|bara|bar|uf|hz|m)"
)
"""A folded unit after a number."""
_ABSOLUTE = {
    f"{unit} {word}": f"{spelled} absolute"
    for unit, spelled in (
        ("psi", "psi"),
        ("kpa", "kPa"),
        ("mpa", "MPa"),
        ("bar", "bar"),
    )
    for word in ("abs", "absolute")
}
"""What a service gauge does not show: never taken for a gauge pressure."""
SPELLED = {
    "k": "kohm", "kohm": "kohm", "ohm": "ohm", "megohm": "megohm", "m": "megohm",
    "v": "V", "v ac": "V AC", "v dc": "V DC", "dc": "V DC", "ac": "V AC", "amp": "A",
    "a": "A", "ma": "mA", "f": "F", "deg f": "F", "c": "C", "deg c": "C", "psi": "psi",
    "kpa": "kPa", "mpa": "MPa", "bar": "bar", "uf": "uF", "hz": "Hz",
    "psia": "psi absolute", "bara": "bar absolute", **_ABSOLUTE,
}  # fmt: skip
"""Folded unit -> the way `assistant.units` spells it."""
DIMENSION = {
    "kohm": "resistance", "ohm": "resistance", "megohm": "resistance", "V": "voltage",
    "V AC": "voltage", "V DC": "voltage", "A": "current", "mA": "current",
    "F": "temperature", "C": "temperature", "psi": "pressure", "kPa": "pressure",
    "MPa": "pressure", "bar": "pressure", "uF": "capacitance", "Hz": "frequency",
    **dict.fromkeys(_ABSOLUTE.values(), "pressure"),
}  # fmt: skip

_COULD_BE = {
    "resistance": ("ohm", "kohm"),
    "resistance to ground": ("ohm", "kohm", "megohm"),
    "winding": ("ohm",),
    "voltage": ("V",),
    "line voltage": ("V",),
    "pressure": ("psi", "kPa", "bar", "MPa"),
    "temperature": ("C", "F"),
    "room temperature": ("C", "F"),
    "outdoor temperature": ("C", "F"),
    "difference": ("K difference", "F difference"),
    "current": ("A",),
    "unknown": ("V", "ohm"),
    "anything": ("V", "ohm", "kohm"),
}
"""Units that a bare number of a measurand could have. A winding that carries a motor's
current has no kilohms (common practice, no source)."""
_LIMITS = {
    "line voltage": (85.0, 700.0),
    "pressure": (-1.1e5, 60e5),
    "temperature": (213.15, 473.15),
    "room temperature": (253.15, 328.15),
    "outdoor temperature": (213.15, 333.15),
}
"""What is physically possible, in canonical units: 85 to 700 V on a
line; -1.1 to 60 bar gauge; -60 to 200 C
at a part, -20 to 55 C in a room, -60 to 60 C outdoors (common practice, no source)."""


def quantity(number: str, unit: str) -> Quantity | None:
    """Return the quantity, or None where the unit does not allow the number."""
    try:
        return parse_quantity(f"{number} {unit}")
    except ValueError:
        return None


def possibilities(number: str, dimension: str) -> tuple[Quantity, ...]:
    """Return what a bare number could be: every unit that is physically possible.

    Examples
    --------
    >>> [q.text for q in possibilities("72", "room temperature")]
    ['72 F']
    >>> [q.text for q in possibilities("9.8", "resistance")]
    ['9.8 ohm', '9.8 kohm']
    """
    found = [quantity(number, unit) for unit in _COULD_BE.get(dimension, ())]
    low, high = _LIMITS.get(dimension, (float("-inf"), float("inf")))
    negative = number.startswith("-") and dimension in {"unknown", "resistance"}
    kept = tuple(
        q
        for q in found
        if q is not None
        and low <= q.value <= high
        and not (negative and q.unit == "ohm")
    )
    same = {(q.value, q.unit) for q in kept}
    return kept[:1] if len(same) == 1 else kept
