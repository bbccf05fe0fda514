"""Reads and writes quantities: ``15 kohm`` to 15000 ohm and back to ``15.0 kΩ``.

A difference of temperatures is never a temperature: ``5 K difference`` and
``9 °F difference`` are kept in ``dK``; ``5 K`` is five kelvin above absolute zero.
"""

from __future__ import annotations

import math
import re
from itertools import pairwise

from assistant.units.names import find_unit
from assistant.units.quantity import Quantity
from assistant.units.show import format_quantity
from assistant.units.table import AMBIGUOUS

__all__ = ["find_unit", "format_quantity", "parse_number", "parse_quantity"]

_NUMBER = r"[+\-−]?(?:\d{1,3}(?:,\d{3})+|\d+)?(?:\.\d+)?(?:[eE][+\-]?\d+)?"
_FORM = re.compile(rf"\s*(?P<number>{_NUMBER})\s*(?P<unit>[^\d\s+\-−.,].*?)?\s*")
_PART = re.compile(r"(\d+(?:\.\d+)?)\s*([A-Za-z]+)")
EXAMPLE = "write a number and a unit, such as 8 s, 15 kohm or 25 °C"


def parse_number(text: str) -> float:
    """Return the number that `text` spells, with ``,`` only between thousands.

    Raises
    ------
    ValueError
        When it is not one finite number; the message holds the text.

    Examples
    --------
    >>> parse_number("12,400")
    12400.0
    """
    spelled = text.strip()
    if not re.fullmatch(_NUMBER, spelled) or not any(c.isdigit() for c in spelled):
        raise ValueError(f"{text!r} is not a number; use a point for decimals")
    value = float(spelled.replace(",", "").replace("−", "-"))
    if not math.isfinite(value):
        raise ValueError(f"{text!r} is too large to be a reading")
    return value


def parse_quantity(text: str) -> Quantity:
    """Return the quantity that `text` spells: one number and one unit.

    A duration may have parts (``1 h 30 min``). A pressure without ``absolute`` is
    gauge pressure. ``AC`` and ``DC`` are kept in the quantity's `text` only.

    Parameters
    ----------
    text : str
        Such as ``8 s``, ``15 kohm``, ``-5 °C``, ``230 V AC``, ``9 °F difference``.

    Raises
    ------
    ValueError
        Naming the text, when a number or a known unit is missing, when the unit can
        be read two ways, or below absolute zero.

    Examples
    --------
    >>> parse_quantity("15 kohm")
    Quantity(value=15000.0, unit='ohm', text='15 kohm')
    >>> parse_quantity("77 °F").value
    298.15
    >>> parse_quantity("18 F difference").unit
    'dK'
    """
    form = _FORM.fullmatch(text)
    if form is None or not any(c.isdigit() for c in form["number"]):
        raise ValueError(f"{text!r} is not a quantity; {EXAMPLE}")
    if not form["unit"]:
        raise ValueError(f"{text!r} has no unit; {EXAMPLE}")
    number = parse_number(form["number"])
    unit = find_unit(form["unit"])
    if unit is not None:
        return _checked(unit.to_canonical(number), unit.canonical, text)
    parts = _duration(text)
    if parts is not None:
        return Quantity(value=parts, unit="s", text=text.strip())
    return _by_library(number, form["unit"], text)


def _duration(text: str) -> float | None:
    """Seconds of ``1 h 30 min``, largest part first, or None."""
    if not re.fullmatch(rf"\s*(?:{_PART.pattern}\s*){{2,}}", text):
        return None
    parts = [
        (float(number), find_unit(unit)) for number, unit in _PART.findall(text.strip())
    ]
    units = [unit for _, unit in parts if unit is not None and unit.canonical == "s"]
    falling = all(a.factor > b.factor for a, b in pairwise(units))
    if len(units) != len(parts) or not falling:
        return None
    numbers = [number for number, _ in parts]
    return sum(n * unit.factor for n, unit in zip(numbers, units, strict=True))


def _by_library(number: float, unit: str, text: str) -> Quantity:
    doubt = AMBIGUOUS.get(unit) or AMBIGUOUS.get(unit.lower())
    if doubt:
        raise ValueError(f"{text!r} can be read two ways; {doubt}")
    from assistant.units.door import convert

    found = convert(number, unit)
    if found is None:
        raise ValueError(f"{text!r}: unit {unit!r} is not known; {EXAMPLE}")
    return _checked(*found, text)


def _checked(value: float, unit: str, text: str) -> Quantity:
    if unit in {"K", "Pa"} and value < 0:
        raise ValueError(f"{text!r} lies below absolute zero")
    if not math.isfinite(value):
        raise ValueError(f"{text!r} is too large to be a reading")
    return Quantity(value=value, unit=unit, text=text.strip())
