"""Room area for a mildly flammable refrigerant, by the formula makers print."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from assistant.checks.law import Law, Limit, stated

LFL = Limit("lower flammability limit", 0.03, 0.6, "kg/m3")
HEIGHT = Limit("height of the unit", 0.6, 3.0, "m", "never below 0.6 m in the rule")
CHARGE = Limit("charge", 0.01, 80.0, "kg")
AREA = Limit("room area", 0.5, 2000.0, "m2")
NO_LIMIT_FACTOR = 6.0
"""m3; at or below 6 LFL the rule asks for no room (2018 edition)."""

ROOM = Law(
    name="room area for a flammable refrigerant",
    formula="m max = min(2.5 LFL^(5/4) h sqrt(A), 0.75 LFL h A); none up to 6 LFL",
    source="IEC 60335-2-40:2018 GG.2 as makers print it; small rooms as they tabulate "
    "them",
    limits=(LFL, HEIGHT, CHARGE, AREA),
    note=(
        "LFL comes from the document: R-454B is printed with two values. Codes that "
        "use another rule (leak detection, airflow) are not worked out here. The "
        "maker states the room, and local code decides."
    ),
)
TABLE = Law(
    name="room area by the maker's table",
    formula="between two rows the higher charge counts",
    source="the table itself; rounding as a maker prints it",
    limits=(CHARGE, AREA),
    note="Never extrapolated.",
)

Rows = Sequence[tuple[float, float]]
"""Charge in kg and area in m2, smallest first."""


@stated(ROOM)
def largest_charge(area: float, lfl: float, height: float) -> float:
    """Return the largest charge for a room.

    Parameters
    ----------
    area : float
        Of the smallest room served, [m2].
    lfl : float
        Lower flammability limit, from the document, [kg/m3].
    height : float
        0.6 floor, 1.0 window, 1.8 wall, 2.2 ceiling, [m].

    Returns
    -------
    float
        Charge, [kg].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    R-32 on the floor: 10 m2 are printed with 1.084 kg, 4 m2 with 0.553 kg.

    >>> [round(largest_charge(a, 0.307, 0.6), 3) for a in (10.0, 4.0)]
    [1.084, 0.553]
    """
    AREA.hold(area)
    _hold(lfl, height)
    spread = 2.5 * math.pow(lfl, 1.25) * height * math.sqrt(area)
    return min(spread, 0.75 * lfl * height * area)


@stated(ROOM)
def smallest_area(charge: float, lfl: float, height: float) -> float:
    """Return the smallest room for a charge; zero when the rule asks for none.

    Parameters
    ----------
    charge : float
        Of the whole system, line set included, [kg].
    lfl : float
        Lower flammability limit, from the document, [kg/m3].
    height : float
        0.6 floor, 1.0 window, 1.8 wall, 2.2 ceiling, [m].

    Returns
    -------
    float
        Floor area, [m2].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    R-32 on the floor: 2.00 kg are printed with 34.04 m2.

    >>> round(smallest_area(2.0, 0.307, 0.6), 2), smallest_area(1.8, 0.307, 0.6)
    (34.04, 0.0)
    """
    CHARGE.hold(charge)
    _hold(lfl, height)
    if charge <= NO_LIMIT_FACTOR * lfl:
        return 0.0
    spread = (charge / (2.5 * math.pow(lfl, 1.25) * height)) ** 2
    return max(spread, charge / (0.75 * lfl * height))


@stated(TABLE)
def area_from_table(charge: float, rows: Rows) -> float:
    """Return the room area that the maker's table asks for.

    Parameters
    ----------
    charge : float
        Of the whole system, [kg].
    rows : sequence of (float, float)
        Charge [kg] and area [m2], smallest first.

    Returns
    -------
    float
        Floor area, [m2].

    Raises
    ------
    OutOfRangeError
        Outside the stated rows.
    ValueError
        When the rows do not rise together.

    Examples
    --------
    1.85 kg counts as the next row, 1.86 kg:

    >>> area_from_table(1.85, [(1.84, 28.81), (1.86, 29.44), (1.90, 30.72)])
    29.44
    """
    if not rows or any(a[0] >= b[0] or a[1] > b[1] for a, b in pairwise(rows)):
        raise ValueError(
            "the rows go from the smallest charge up, and so does the area"
        )
    basis = "the stated rows of the table"
    Limit("charge", rows[0][0], rows[-1][0], "kg", basis).hold(charge)
    return next(area for row, area in rows if row >= charge)


def _hold(lfl: float, height: float) -> None:
    LFL.hold(lfl)
    HEIGHT.hold(height)
