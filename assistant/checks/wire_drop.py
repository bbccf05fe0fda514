"""Voltage lost in the wires that feed a unit."""

from __future__ import annotations

import math

from assistant.checks.law import Law, Limit, OutOfRangeError, stated
from assistant.units.table import CIRCULAR_MIL

COPPER_OHM_METRE = 12.9 * CIRCULAR_MIL / 0.3048
"""Copper at working temperature, 12.9 ohm circular mil/ft: from memory, not checked."""

CURRENT = Limit("current", 0.0, 2000.0, "A")
LENGTH = Limit("length one way", 0.0, 2000.0, "m")
AREA = Limit("conductor area", 1e-7, 1e-3, "m2")

DROP = Law(
    name="voltage drop in copper wires",
    formula="drop = k rho I L / A, with k = 2 for one phase and sqrt(3) for three",
    source="resistance of a conductor; rho = 12.9 ohm circular mil/ft is from memory",
    limits=(CURRENT, LENGTH, AREA),
    note=(
        "3 % for a branch and 5 % in all are advice in informational notes of the NEC, "
        "not a rule. Power factor and reactance are left out: small wires only."
    ),
)


@stated(DROP)
def voltage_drop(current: float, length: float, area: float, phases: int) -> float:
    """Return the voltage lost between the board and the unit.

    Parameters
    ----------
    current : float
        Carried, [A].
    length : float
        One way, [m].
    area : float
        Of one copper conductor, [m2].
    phases : int
        1 or 3, [1].

    Returns
    -------
    float
        Voltage drop, [V].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or for other than one or three phases.

    Examples
    --------
    >>> voltage_drop(20.0, 100 * 0.3048, 10380 * CIRCULAR_MIL, phases=1)
    4.971
    """
    CURRENT.hold(current)
    LENGTH.hold(length)
    AREA.hold(area)
    ways = {1: 2.0, 3: math.sqrt(3)}.get(phases)
    if ways is None:
        raise OutOfRangeError(f"{phases} phases: a unit is fed by one or three")
    return ways * COPPER_OHM_METRE * current * length / area
