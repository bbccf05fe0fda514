"""Shows a quantity in a person's unit: 12400 ohm as ``12.4 kΩ``."""

from __future__ import annotations

import math

from assistant.units.names import find_unit
from assistant.units.quantity import Quantity
from assistant.units.table import UNITS, Unit

_SCALES: dict[str, tuple[str, ...]] = {
    "ohm": ("Mohm", "kohm", "ohm"),
    "V": ("kV", "V", "mV"),
    "A": ("A", "mA"),
    "PaG": ("MPa", "kPa"),
    "Pa": ("MPaA", "kPaA", "PaA"),
    "Hz": ("kHz", "Hz"),
    "F": ("uF", "nF"),
    "kg": ("kg", "g"),
    "m": ("m", "mm"),
    "K": ("degC",),
    "dK": ("dK",),
    "1": ("%",),
    "m2": ("m2", "mm2"),
    "J": ("J", "mJ"),
    "1/s": ("rpm",),
    "W": ("kW", "W"),
    "m3/s": ("m3/s", "L/s"),
    "kg/m3": ("kg/m3",),
    "kg/m": ("kg/m", "g/m"),
    "J/kg": ("kJ/kg", "J/kg"),
}
"""Canonical unit to the units a person would use for it, largest first."""
_MINUTE = 60
_CLOCK = (("d", 86400), ("h", 3600), ("min", 60), ("s", 1))


def format_quantity(
    quantity: Quantity, like: str | None = None, digits: int = 3
) -> str:
    """Return text that a person would write, which `parse_quantity` reads back.

    Parameters
    ----------
    quantity : Quantity
        In a canonical unit.
    like : str, optional
        A unit, or a quantity as the person wrote it, whose unit to use when it fits.
        Durations are always shown in days, hours, minutes and seconds.
    digits : int
        Significant digits; thermometer readings get `digits` - 2 decimals instead.

    Examples
    --------
    >>> format_quantity(Quantity(value=12400, unit="ohm"))
    '12.4 kΩ'
    >>> format_quantity(Quantity(value=298.15, unit="K"), like="70 F")
    '77.0 °F'
    >>> format_quantity(Quantity(value=200, unit="s"))
    '3 min 20 s'
    """
    if quantity.unit == "s" and quantity.value >= 1:
        return _clock_parts(quantity.value)
    unit = _unit_like(like, quantity.unit)
    if unit is None:
        unit = _fitting(quantity.value, quantity.unit)
    value = unit.from_canonical(quantity.value)
    decimals = digits - 2 if unit.shift or unit.canonical in {"K", "dK"} else None
    shown = _rounded(value, digits) if decimals is None else _fixed(value, decimals)
    return f"{shown} {unit.sign}"


def _unit_like(like: str | None, canonical: str) -> Unit | None:
    if not like:
        return None
    spelled = like.strip().lstrip("+-−0123456789.,eE ") or like
    found = find_unit(spelled)
    if found is None:
        return None
    if canonical == "dK" and found.canonical == "K":
        return UNITS["delta_degF" if "F" in found.sign else "delta_degC"]
    return found if found.canonical == canonical else None


def _fitting(value: float, canonical: str) -> Unit:
    if canonical == "s":
        return UNITS["s"]
    scales = [UNITS[name] for name in _SCALES[canonical]]
    fits = [unit for unit in scales if unit.shift or abs(value) >= unit.factor]
    if value == 0 and canonical in UNITS:
        return UNITS[canonical]
    return fits[0] if fits else scales[-1]


def _clock_parts(seconds: float) -> str:
    whole = round(seconds)
    if seconds < _MINUTE and not math.isclose(seconds, whole, abs_tol=0.05):
        return f"{seconds:.1f} s"
    parts = []
    for name, size in _CLOCK:
        count, whole = divmod(whole, size)
        if count:
            parts.append(f"{count} {name}")
    return " ".join(parts)


def _fixed(value: float, decimals: int) -> str:
    """`value` to so many decimals; what rounds to zero loses its sign."""
    places = max(decimals, 0)
    return f"{round(value, places) + 0.0:.{places}f}"


def _rounded(value: float, digits: int) -> str:
    """`value` to `digits` significant digits, never in powers of ten."""
    if value == 0:
        return "0"
    places = digits - 1 - math.floor(math.log10(abs(value)))
    kept = round(value, places)
    places = digits - 1 - math.floor(math.log10(abs(kept)))
    return f"{kept:.{max(places, 0)}f}"
