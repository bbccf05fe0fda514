"""How a communication line moves on a meter: swings, one-sided, constant, nothing."""

from __future__ import annotations

from assistant.checks.kinds import Behaviour
from assistant.checks.law import Law, Limit, OutOfRangeError, stated

BEHAVIOURS: tuple[Behaviour, ...] = ("swings", "one-sided", "constant", "nothing")

READ = Limit("each reading of the line", -400.0, 400.0, "V")
STILL = 1.0
"""Volts within which a line counts as still: common practice, no source."""
_FEWEST = 3

BEHAVES = Law(
    name="behaviour of a communication line",
    formula=(
        "nothing: all |V| <= s; constant: highest - lowest <= s; swings: lowest < -s "
        "and highest > s; one-sided: otherwise; s = 1 V"
    ),
    source="words for what a meter shows; what it means stands in the document only",
    limits=(READ,),
    note=(
        "Makers' healthy lines differ: one swings both ways, one only above zero, one "
        "rests at 24 V. A meter is slow: three readings or more, some seconds apart. "
        "The line may be referenced to the mains: probes rated for it, hands away."
    ),
)


@stated(BEHAVES)
def behaviour(*readings: float) -> Behaviour:
    """Return how a line moved over several readings.

    Parameters
    ----------
    *readings : float
        Direct voltage, in the order they were read, [V].

    Returns
    -------
    str
        ``swings``, ``one-sided``, ``constant`` or ``nothing``, [1].

    Raises
    ------
    OutOfRangeError
        With fewer than three readings, or outside the limits.

    Examples
    --------
    >>> behaviour(-42.0, 10.0, 38.0), behaviour(2.0, 14.0, 19.0)
    ('swings', 'one-sided')
    >>> behaviour(23.9, 24.0, 24.1), behaviour(0.0, 0.1, 0.0)
    ('constant', 'nothing')
    """
    if len(readings) < _FEWEST:
        raise OutOfRangeError(
            f"{len(readings)} readings do not show how the line moves",
            "read it three times or more, some seconds apart",
        )
    for reading in readings:
        READ.hold(reading)
    low, high = min(readings), max(readings)
    if max(-low, high) <= STILL:
        return "nothing"
    if high - low <= STILL:
        return "constant"
    return "swings" if low < -STILL and high > STILL else "one-sided"
