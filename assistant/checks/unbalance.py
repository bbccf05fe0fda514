"""Unbalance of three phases: volts, amperes or ohms, and the look of a lost phase."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

THREE = Limit("each of the three readings", 0.0, 1e6, "any unit")
LOST_BELOW = 0.10
"""Share of the average below which a phase carries next to nothing."""
LOST_UNBALANCE = 0.50
"""Unbalance beyond which a lost phase is suspected."""
_PHASES = 3

UNBALANCE = Law(
    name="unbalance of three phases",
    formula="unbalance = max |X_i - X average| / X average",
    source="maximum deviation from the average: NEMA MG 1, line-to-line volts",
    limits=(THREE,),
    note=(
        "Not (highest - lowest) / average, and not the phase named first. Limits in "
        "print: makers of equipment allow 2 % of voltage and 10 % of current; the "
        "document's limit decides."
    ),
)
PHASE_LOSS = Law(
    name="look of a lost phase",
    formula="suspected when one current < 0.10 I average, or unbalance > 0.50",
    source="common practice, from memory; that voltages near normal prove nothing on "
    "a running motor is in a meter maker's power quality guide",
    limits=(THREE,),
    note="A running motor makes the missing voltage itself: three currents decide.",
)


def _average(readings: tuple[float, ...]) -> float:
    if len(readings) != _PHASES:
        raise OutOfRangeError(
            f"{len(readings)} readings are not one for each of three phases",
            "read all three, with the same meter, at the same load",
        )
    for reading in readings:
        THREE.hold(reading)
    average = sum(readings) / _PHASES
    if average == 0:
        raise OutOfRangeError("three readings of zero have no unbalance")
    return average


@stated(UNBALANCE)
def unbalance(*readings: float) -> float:
    """Return the largest deviation from the average, as a share of the average.

    Parameters
    ----------
    *readings : float
        One for each phase, all in one unit, [any unit].

    Returns
    -------
    float
        Share, [1].

    Raises
    ------
    OutOfRangeError
        For other than three readings, outside the limits, or all zero.

    Examples
    --------
    >>> unbalance(203.0, 210.0, 212.0)
    0.02560
    """
    average = _average(readings)
    return max(abs(reading - average) for reading in readings) / average


@stated(UNBALANCE)
def unbalance_bound(a: float, average: float) -> float:
    """Return U (k = 2) of an unbalance whose readings have the same bound.

    The share is (2 X1 - X2 - X3) / (3 X average) at its largest; independent bounds
    add as squares, sqrt(4 + 1 + 1) / 3 of one.

    Parameters
    ----------
    a : float
        Rectangular bound of each reading, [unit of `average`].
    average : float
        Of the three, [any unit].

    Returns
    -------
    float
        U, a share, [1].

    Raises
    ------
    OutOfRangeError
        Without an average above zero.

    Examples
    --------
    >>> unbalance_bound(0.3, 460.0)
    0.000615
    """
    if average <= 0:
        raise OutOfRangeError("the average is not above zero")
    return 2 * a / 3**0.5 * 6**0.5 / 3 / average


@stated(PHASE_LOSS)
def phase_lost(*currents: float) -> bool:
    """Return whether three currents look like a lost phase.

    Parameters
    ----------
    *currents : float
        Of the three phases, running, [A].

    Returns
    -------
    bool
        True when a lost phase is suspected, [1].

    Raises
    ------
    OutOfRangeError
        For other than three readings, outside the limits, or all zero.

    Examples
    --------
    >>> phase_lost(33.0, 29.0, 34.0), phase_lost(14.1, 0.3, 14.0)
    (False, True)
    """
    average = _average(currents)
    return min(currents) < LOST_BELOW * average or (
        unbalance(*currents) > LOST_UNBALANCE
    )
