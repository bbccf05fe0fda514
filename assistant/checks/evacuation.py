"""Level to which an appliance is evacuated before it is opened."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, OutOfRangeError, stated
from assistant.units.table import INCH_OF_MERCURY, POUND

CHARGE = Limit("full charge", 0.0, 5000.0, "kg")
ATMOSPHERE = 101325.0
LARGE = 200 * POUND
"""200 lb of full charge, kg."""
LOW_PRESSURE = -(ATMOSPHERE - 25 / 760 * ATMOSPHERE)
"""25 mm of mercury absolute, as gauge pressure."""
CLASSES = ("very high", "high", "medium", "low")

_LEVELS: dict[tuple[str, bool], tuple[float, float]] = {
    ("very high", False): (0.0, 0.0),
    ("very high", True): (0.0, 0.0),
    ("high", False): (0.0, 0.0),
    ("high", True): (4.0, 10.0),
    ("medium", False): (4.0, 10.0),
    ("medium", True): (4.0, 15.0),
}
"""Pressure class and whether 200 lb or more, to inches of mercury below the
atmosphere: with recovery machines made before 15 November 1993, and since."""

EVACUATION = Law(
    name="evacuation before opening",
    formula="level by pressure class, full charge below or from 200 lb, and machine",
    source="40 CFR 82.156, Table 1; an archived agency page prints 10 in.Hg for "
    "medium pressure from 200 lb, where the rule has 15",
    limits=(CHARGE,),
    note=(
        "In the United States; other places have their own rules. For licensed "
        "persons. A repair that is not major, and leaks, have rules of their own."
    ),
)


@stated(EVACUATION)
def evacuation_level(pressure_class: str, charge: float, machine: str) -> float:
    """Return the level to evacuate to before opening.

    Parameters
    ----------
    pressure_class : str
        ``very high``, ``high``, ``medium`` or ``low``, [1].
    charge : float
        Full charge of the appliance, [kg].
    machine : str
        Recovery machine made ``before`` 15 November 1993 or ``since``, [1].

    Returns
    -------
    float
        Gauge pressure, zero or below, [PaG].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or for another class or machine.

    Examples
    --------
    >>> evacuation_level("medium", 100.0, "since") / INCH_OF_MERCURY
    -15.0
    """
    CHARGE.hold(charge)
    if pressure_class not in CLASSES or machine not in {"before", "since"}:
        raise OutOfRangeError(
            f"{pressure_class!r} with a machine {machine!r} is not in the table",
            f"a class of {', '.join(CLASSES)}; a machine before or since",
        )
    if pressure_class == "low":
        return LOW_PRESSURE
    old, new = _LEVELS[(pressure_class, charge >= LARGE)]
    return -INCH_OF_MERCURY * (old if machine == "before" else new)
