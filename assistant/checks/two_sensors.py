"""Two sensors at one temperature: whether they agree."""

from __future__ import annotations

from assistant.checks.law import Law, stated
from assistant.checks.thermistor import TEMPERATURE

TWO = Law(
    name="two sensors at one temperature",
    formula="difference = T1(R1) - T2(R2), each by its own curve",
    source="definition; common practice after an hour off and shaded",
    limits=(TEMPERATURE,),
    note=(
        "It says that the two differ, not which one is wrong: a third thermometer "
        "decides."
    ),
)


@stated(TWO)
def disagreement(first: float, second: float) -> float:
    """Return by how much one sensor reads warmer than the other.

    Parameters
    ----------
    first : float
        By its own curve, [K].
    second : float
        By its own curve, [K].

    Returns
    -------
    float
        First minus second, [dK].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> disagreement(298.15, 296.65)
    1.5
    """
    TEMPERATURE.hold(first)
    TEMPERATURE.hold(second)
    return first - second
