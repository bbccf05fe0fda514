"""Direct voltage behind the rectifier, in standby."""

from __future__ import annotations

import math

from assistant.checks.law import Law, Limit, stated
from assistant.checks.supply import TOLERANCE

SUPPLY = Limit("measured supply", 80.0, 690.0, "V")

STANDBY = Law(
    name="standby bus voltage",
    formula="V bus = sqrt(2) V supply, within p either way",
    source="peak of a sine wave behind a full-wave rectifier without load",
    limits=(SUPPLY, TOLERANCE),
    note=(
        "From the supply measured at the same time, never from the nameplate. Not "
        "for a voltage doubler, and not while a boost stage runs. About 1.4 V are "
        "lost in the rectifier."
    ),
)


@stated(STANDBY)
def standby_bus(supply: float) -> float:
    """Return the bus voltage of a rectifier that carries no load.

    Parameters
    ----------
    supply : float
        Alternating voltage measured at the terminals, line to line when three
        phases feed the rectifier, [V].

    Returns
    -------
    float
        Direct voltage, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits: a supply not measured, or not there, says nothing.

    Examples
    --------
    >>> standby_bus(230.0)
    325.3
    """
    SUPPLY.hold(supply)
    return math.sqrt(2) * supply


@stated(STANDBY)
def standby_band(supply: float, tolerance: float) -> tuple[float, float]:
    """Return the lowest and the highest bus voltage expected in standby.

    Parameters
    ----------
    supply : float
        Alternating voltage measured at the terminals, [V].
    tolerance : float
        Allowed share either way, [1].

    Returns
    -------
    tuple of (float, float)
        Low and high, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> standby_band(230.0, 0.10)
    (292.7, 357.8)
    """
    TOLERANCE.hold(tolerance)
    expected = standby_bus(supply)
    return expected * (1 - tolerance), expected * (1 + tolerance)
