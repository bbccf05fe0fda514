"""The one door to pint: units that the project's own table does not hold."""

from __future__ import annotations

import re
from functools import cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    import pint

_PLAIN = re.compile(r"[A-Za-zµ°_]{2,}(?:/[A-Za-zµ_]+[23²³]?)?")
_TARGETS: tuple[tuple[str, str], ...] = (
    ("second", "s"),
    ("ohm", "ohm"),
    ("volt", "V"),
    ("ampere", "A"),
    ("kelvin", "K"),
    ("pascal", "PaG"),
    ("hertz", "Hz"),
    ("farad", "F"),
    ("kilogram", "kg"),
    ("metre", "m"),
)
"""pint's name of a unit the core computes in, and the core's own."""


@cache
def _registry() -> pint.UnitRegistry[Any]:
    import pint

    return pint.UnitRegistry(cache_folder=None)


def convert(value: float, unit: str) -> tuple[float, str] | None:
    """Return `value` in a canonical unit with that unit's name.

    Parameters
    ----------
    value : float
        As written.
    unit : str
        A unit that `assistant.units.table` does not know, such as ``hPa``.

    Returns
    -------
    tuple or None
        ``None`` when pint does not know the unit, or knows it as something that
        the core does not compute with.

    Examples
    --------
    >>> convert(3.0, "fortnight")
    (3628800.0, 's')
    >>> convert(1.0, "furry") is None
    True
    """
    if not _PLAIN.fullmatch(unit):
        return None
    import pint

    registry = _registry()
    try:
        given = registry.Quantity(value, unit)
    except (pint.PintError, AttributeError, TypeError, ValueError, AssertionError):
        return None
    for target, canonical in _TARGETS:
        if given.is_compatible_with(target):
            difference = canonical == "K" and unit.startswith("delta")
            name = "delta_degree_Celsius" if difference else target
            return float(given.to(name).magnitude), "dK" if difference else canonical
    return None
