"""The inputs of a named check: how each is read from ``key=value``."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import dataclass

from assistant.checks.kinds import Meter
from assistant.errors import UsageError
from assistant.units.parse import parse_number, parse_quantity
from assistant.units.quantity import CANONICAL, Quantity

COUNT = "count"
POINTS = "points"
POWER = "power state"
READING = "reading"
"""Any quantity but a temperature, whose percentage would mean nothing."""

_Point = tuple[float, float]
Parsed = Quantity | float | str | tuple[_Point, ...]


@dataclass(frozen=True, slots=True)
class Input:
    """One key of a named check.

    Attributes
    ----------
    name : str
        The key.
    dimension : str
        A key of `CANONICAL`, or one of the special ones of this module.
    example : str
        A value with the unit it is usually shown in.
    says : str
        What it is.
    required : bool
        Whether it must be given.
    default : str
        Taken when not given; empty for none.
    """

    name: str
    dimension: str
    example: str
    says: str
    required: bool = False
    default: str = ""


class Values:
    """The parsed inputs of one call, by key."""

    def __init__(self, parsed: Mapping[str, Parsed]) -> None:
        self._parsed = dict(parsed)

    def has(self, name: str) -> bool:
        """Return whether `name` was given or has a default."""
        return name in self._parsed

    def quantity(self, name: str) -> Quantity:
        """Return a quantity that is known to be there."""
        found = self._parsed[name]
        assert isinstance(found, Quantity)  # noqa: S101 - read by its dimension
        return found

    def maybe(self, name: str) -> Quantity | None:
        """Return a quantity or None."""
        return self.quantity(name) if self.has(name) else None

    def number(self, name: str) -> float:
        """Return a count, or the value of a quantity in its canonical unit."""
        found = self._parsed[name]
        return found if isinstance(found, float) else self.quantity(name).value

    def points(self, name: str) -> tuple[_Point, ...]:
        """Return points of a table, coldest first: [K], [ohm]."""
        found = self._parsed[name]
        assert isinstance(found, tuple)  # noqa: S101 - read by its dimension
        return found

    def word(self, name: str) -> str | None:
        """Return a word or None."""
        found = self._parsed.get(name)
        return found if isinstance(found, str) else None

    def meter(self) -> Meter | None:
        """Return the meter told by `percent`, `digits` and `resolution`.

        Raises
        ------
        UsageError
            When only some of the three are given.
        """
        keys = ("percent", "digits", "resolution")
        given = [key for key in keys if self.has(key)]
        if not given:
            return None
        if len(given) < len(keys):
            lacking = ", ".join(key for key in keys if key not in given)
            raise UsageError(
                f"a meter is told by percent, digits and resolution; {lacking} missing",
                "give all three, such as percent='1 %' digits=3 resolution='0.1 V'",
            )
        return Meter(
            percent=self.number("percent") * 100,
            digits=int(self.number("digits")),
            resolution=self.quantity("resolution"),
        )


def read_inputs(
    check: str, inputs: tuple[Input, ...], given: Mapping[str, str]
) -> tuple[Values, dict[str, str]]:
    """Return the parsed inputs of a check and the texts they came from.

    Raises
    ------
    UsageError
        Naming the key and the value, with the way out.
    """
    known = {item.name: item for item in inputs}
    for key in given:
        if key not in known:
            raise UsageError(
                f"check {check!r} has no input {key!r}", _suggest(check, key, known)
            )
    texts = {
        name: given.get(name, item.default)
        for name, item in known.items()
        if name in given or item.default
    }
    for name, item in known.items():
        if item.required and name not in texts:
            raise UsageError(
                f"check {check!r} needs {name!r}: {item.says}",
                f"give it as {name}='{item.example}'",
            )
    return Values({name: _read(known[name], text) for name, text in texts.items()}), (
        texts
    )


def _suggest(check: str, key: str, known: Mapping[str, Input]) -> str:
    near = difflib.get_close_matches(key, known, n=1)
    mean = f"did you mean {near[0]!r}? " if near else ""
    return f"{mean}{check} takes {', '.join(known)}"


def _read(item: Input, text: str) -> Parsed:
    try:
        return _parsed(item, text)
    except ValueError as error:
        raise UsageError(
            f"{item.name}={text!r}: {error}", f"write {item.name}='{item.example}'"
        ) from error


def _parsed(item: Input, text: str) -> Parsed:
    if item.dimension == COUNT:
        return _count(text)
    if item.dimension == POINTS:
        return _points(text)
    if item.dimension == POWER:
        return _power(text)
    quantity = parse_quantity(text)
    if item.dimension == READING:
        if quantity.unit == "K":
            raise ValueError("a share of a temperature means nothing")
    elif quantity.unit != CANONICAL[item.dimension]:
        raise ValueError(f"not a {item.dimension}")
    return quantity


def _count(text: str) -> float:
    value = parse_number(text)
    if value < 0 or value != int(value):
        raise ValueError("not a whole number from zero")
    return value


def _power(text: str) -> str:
    if text not in {"off", "live"}:
        raise ValueError("the power is off or live")
    return text


def _points(text: str) -> tuple[_Point, ...]:
    """Read ``0 °C: 15 kohm; 10 °C: 9.6 kohm`` to [K] and [ohm], coldest first."""
    found = []
    for part in filter(None, (piece.strip() for piece in text.split(";"))):
        left, colon, right = part.partition(":")
        if not colon:
            raise ValueError(f"the point {part!r} lacks a colon")
        temperature, resistance = parse_quantity(left), parse_quantity(right)
        if (temperature.unit, resistance.unit) != ("K", "ohm"):
            raise ValueError(f"the point {part!r} is not a temperature and resistance")
        found.append((temperature.value, resistance.value))
    return tuple(sorted(found))
