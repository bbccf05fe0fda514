"""The inputs of a named check: how each is read from ``key=value``."""

from __future__ import annotations

import difflib
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import cast

from assistant.checks.kinds import Meter
from assistant.errors import InputError, UsageError
from assistant.units.parse import parse_number, parse_quantity
from assistant.units.quantity import CANONICAL, Quantity

COUNT = "count"
POINTS = "points"
POWER = "power state"
READING = "reading"
"""Any quantity but a temperature, whose percentage would mean nothing."""
WORD = "word"
"""One of the input's `choices`."""
NAMED = "named readings"
"""``U: 1.2 ohm; V: OL``: a reading for each name, OL for an open line."""
BANDS = "named bands"
"""``Vcc: 13.5 V to 16.5 V``: two limits for each name."""
SERIES = "series"
"""``0 min: 300 micron; 10 min: 380 micron``: [s] and [Pa]."""
TEXT = "text"
"""Read by the check itself."""
FLUID = "refrigerant"
"""A refrigerant with a saturation table: ``R-410A``, ``r410a`` or ``410a``."""
PRESSURE = "gauge or absolute"
"""A pressure either way: what is not written as absolute is gauge."""
PAIRS = "charges and areas"
"""``1.84 kg: 28.81 m2; 1.86 kg: 29.44 m2``, smallest first."""
OPEN = "OL"

_Point = tuple[float, float]
Reading = tuple[str, Quantity | None]
"""A name with its reading, None for an open line."""
Band = tuple[str, Quantity, Quantity]
Parsed = (
    Quantity
    | float
    | str
    | tuple[_Point, ...]
    | tuple[Quantity, ...]
    | tuple[Reading, ...]
    | tuple[Band, ...]
)


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
    choices : tuple of str
        The words allowed, for a `WORD`.
    many : bool
        Whether it takes several values with ``;`` between them.
    or_open : bool
        Whether it takes OL, an open line.
    instead_of : str
        The input in whose place it may be given; empty for none.
    """

    name: str
    dimension: str
    example: str
    says: str
    required: bool = False
    default: str = ""
    choices: tuple[str, ...] = ()
    many: bool = False
    or_open: bool = False
    instead_of: str = ""


class Values:
    """The parsed inputs of one call, by key."""

    def __init__(
        self, parsed: Mapping[str, Parsed], saved: Meter | None = None
    ) -> None:
        self._parsed = dict(parsed)
        self._saved = saved

    def has(self, name: str) -> bool:
        """Return whether `name` was given or has a default."""
        return name in self._parsed

    def quantity(self, name: str) -> Quantity:
        """Return a quantity that is known to be there."""
        found = self._parsed[name]
        assert isinstance(found, Quantity)  # noqa: S101 - read by its dimension
        return found

    def maybe(self, name: str) -> Quantity | None:
        """Return a quantity, or None when it is not given or an open line."""
        known = self.has(name) and not self.is_open(name)
        return self.quantity(name) if known else None

    def number(self, name: str) -> float:
        """Return a count, or the value of a quantity in its canonical unit."""
        found = self._parsed[name]
        return found if isinstance(found, float) else self.quantity(name).value

    def points(self, name: str) -> tuple[_Point, ...]:
        """Return points of a table, coldest first: [K], [ohm]."""
        return cast("tuple[_Point, ...]", self._parsed[name])

    def many(self, name: str) -> tuple[Quantity, ...]:
        """Return several quantities, in order; none when not given."""
        return cast("tuple[Quantity, ...]", self._parsed.get(name, ()))

    def named(self, name: str) -> tuple[Reading, ...]:
        """Return readings by name, None for an open line; none when not given."""
        return cast("tuple[Reading, ...]", self._parsed.get(name, ()))

    def bands(self, name: str) -> tuple[Band, ...]:
        """Return bands by name; none when not given."""
        return cast("tuple[Band, ...]", self._parsed.get(name, ()))

    def is_open(self, name: str) -> bool:
        """Return whether OL was given for `name`."""
        return self._parsed.get(name) == OPEN

    def yes(self, name: str) -> bool | None:
        """Return what a yes or no says; None when not given."""
        return {"yes": True, "no": False}.get(self.word(name) or "")

    def word(self, name: str) -> str | None:
        """Return a word or None."""
        found = self._parsed.get(name)
        return found if isinstance(found, str) else None

    def meter(self) -> Meter | None:
        """Return the meter told by `percent`, `digits` and `resolution`, or saved.

        Raises
        ------
        UsageError
            When only some of the three are given.
        """
        keys = ("percent", "digits", "resolution")
        given = [key for key in keys if self.has(key)]
        if not given:
            return self._saved
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
    check: str,
    inputs: tuple[Input, ...],
    given: Mapping[str, str],
    saved: Meter | None = None,
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
    parsed = {name: _read(known[name], text) for name, text in texts.items()}
    return Values(parsed, saved), texts


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
    special = _SPECIAL.get(item.dimension)
    if special is not None:
        return special(text)
    if item.dimension == WORD:
        return _word(item, text)
    if item.or_open and _is_open(text):
        return OPEN
    if item.many:
        return tuple(_quantity(item, part) for part in _listed(text))
    return _quantity(item, text)


def _quantity(item: Input, text: str) -> Quantity:
    quantity = parse_quantity(text)
    if item.dimension == READING:
        if quantity.unit == "K":
            raise ValueError("a share of a temperature means nothing")
    elif quantity.unit != CANONICAL[item.dimension]:
        raise ValueError(f"not a {item.dimension}")
    return quantity


def _listed(text: str) -> list[str]:
    """Split ``462; 463; 455 V``; a part without a unit has that of the next one."""
    parts = [part.strip() for part in re.split(r";|,(?!\d{3}(?!\d))", text)]
    parts = [part for part in parts if part]
    for place in range(len(parts) - 2, -1, -1):
        unit = re.sub(r"^[-+−\d.,eE\s]+", "", parts[place + 1])
        if re.fullmatch(r"[-+−\d.,]+", parts[place]):
            parts[place] = f"{parts[place]} {unit}"
    return parts


def _is_open(text: str) -> bool:
    return text.strip().casefold() in {"ol", "o.l", "o.l.", "open"}


def _word(item: Input, text: str) -> str:
    if text not in item.choices:
        raise ValueError(f"one of {', '.join(item.choices)}")
    return text


def _named(text: str) -> tuple[Reading, ...]:
    found: list[Reading] = []
    for name, value in _entries(text):
        found.append((name, None if _is_open(value) else parse_quantity(value)))
    return tuple(found)


def _bands(text: str) -> tuple[Band, ...]:
    found: list[Band] = []
    for name, value in _entries(text):
        low, to, high = value.partition(" to ")
        if not to:
            raise ValueError(f"the band {value!r} lacks its 'to'")
        ends = (parse_quantity(low), parse_quantity(high))
        if ends[0].unit != ends[1].unit or ends[0].value > ends[1].value:
            raise ValueError(f"{value!r} does not run from low to high")
        found.append((name, *ends))
    return tuple(found)


def _entries(text: str) -> list[tuple[str, str]]:
    found: dict[str, str] = {}
    for part in filter(None, (piece.strip() for piece in text.split(";"))):
        name, colon, value = (word.strip() for word in part.partition(":"))
        if not colon or not name:
            raise ValueError(f"{part!r} is not NAME: VALUE")
        if name in found:
            raise ValueError(f"{name!r} stands there twice")
        found[name] = value
    if not found:
        raise ValueError("nothing is given")
    return list(found.items())


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


def _fluid(text: str) -> str:
    from assistant.checks.refrigerants import refrigerant_named

    try:
        return refrigerant_named(text)
    except InputError as error:
        raise ValueError(f"{error}") from error


def _pressure(text: str) -> Quantity:
    quantity = parse_quantity(text)
    if quantity.unit not in {"PaG", "Pa"}:
        raise ValueError("not a pressure")
    return quantity


def _pairs(text: str) -> tuple[_Point, ...]:
    return _rising(text, ("kg", "m2"), "a charge and an area")


def _series(text: str) -> tuple[_Point, ...]:
    return _rising(text, ("s", "Pa"), "a time and absolute pressure")


def _rising(text: str, units: tuple[str, str], what: str) -> tuple[_Point, ...]:
    found = []
    for left, right in _entries(text):
        first, second = parse_quantity(left), parse_quantity(right)
        if (first.unit, second.unit) != units:
            raise ValueError(f"{left}: {right} is not {what}")
        found.append((first.value, second.value))
    return tuple(sorted(found))


_SPECIAL: Mapping[str, Callable[[str], Parsed]] = {
    COUNT: _count,
    FLUID: _fluid,
    PAIRS: _pairs,
    POINTS: _points,
    POWER: _power,
    PRESSURE: _pressure,
    NAMED: _named,
    BANDS: _bands,
    SERIES: _series,
    TEXT: str,
}
