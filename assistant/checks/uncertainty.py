"""What a meter promises, and the verdict that it can carry."""

from __future__ import annotations

import math

from assistant.checks.law import Law, Limit, OutOfRangeError, stated
from assistant.checks.verdict import Result

PERCENT = Limit("percentage of reading", 0.0, 20.0, "%")
DIGITS = Limit("digits", 0.0, 200.0, "digits")

METER = Law(
    name="meter bound",
    formula="a = reading percent / 100 + digits resolution",
    source="accuracy as meter makers state it: +-(% of reading + digits)",
    limits=(PERCENT, DIGITS),
    note=(
        "Holds in the meter's stated temperature window and calibration year. "
        "Analogue meters state a share of full scale instead."
    ),
)
EXPANDED = Law(
    name="expanded uncertainty",
    formula="U = 2 sqrt(sum of a_i^2 / 3)",
    source="bounds taken as rectangular, coverage factor 2 (JCGM 100)",
    limits=(Limit("bound", 0.0, 1e12, "any unit"),),
)
GUARD = Law(
    name="guard band",
    formula="pass in [low + U, high - U]; fail beyond low - U or high + U",
    source="guard band w = U (ILAC-G8:09/2019, JCGM 106:2012)",
    limits=(Limit("uncertainty", 0.0, 1e12, "any unit"),),
    note="A band narrower than 2 U is too close to call whatever is read.",
)


@stated(METER)
def meter_bound(
    reading: float, percent: float, digits: float, resolution: float
) -> float:
    """Return the largest error that a meter's maker allows for a reading.

    Parameters
    ----------
    reading : float
        As shown, [any unit].
    percent : float
        Share of the reading, [%].
    digits : float
        Counts of the last digit, [digits].
    resolution : float
        Value of one count on the range used, [unit of `reading`].

    Returns
    -------
    float
        Bound either way, [unit of `reading`].

    Raises
    ------
    OutOfRangeError
        Outside the limits, or a negative resolution.

    Examples
    --------
    >>> meter_bound(120.0, percent=0.7, digits=2, resolution=0.1)
    1.04
    """
    PERCENT.hold(percent)
    DIGITS.hold(digits)
    if resolution < 0:
        raise OutOfRangeError(f"resolution of {resolution:g} is below zero")
    return abs(reading) * percent / 100 + digits * resolution


@stated(EXPANDED)
def expanded(*bounds: float) -> float:
    """Return the expanded uncertainty (k = 2) of independent bounds.

    Parameters
    ----------
    *bounds : float
        Largest errors, all in one unit, [any unit].

    Returns
    -------
    float
        U, [unit of `bounds`].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> expanded(2.405)
    2.777
    """
    for bound in bounds:
        EXPANDED.limits[0].hold(bound)
    return 2 * math.sqrt(sum(bound**2 for bound in bounds) / 3)


@stated(GUARD)
def guarded(
    value: float, low: float | None, high: float | None, uncertainty: float
) -> Result:
    """Return the verdict that a reading with an uncertainty can carry.

    Parameters
    ----------
    value : float
        As read, [any unit].
    low, high : float or None
        Limits, at least one, [unit of `value`].
    uncertainty : float
        U with k = 2, [unit of `value`].

    Returns
    -------
    str
        ``pass``, ``fail`` or ``inconclusive``.

    Raises
    ------
    OutOfRangeError
        For a negative uncertainty.
    ValueError
        Without a limit, or with limits the wrong way round.

    Examples
    --------
    >>> guarded(210.5, 207.0, None, 2.777), guarded(207.4, 207.0, None, 2.741)
    ('pass', 'inconclusive')
    """
    GUARD.limits[0].hold(uncertainty)
    floor, ceiling = _open_ended(low, high)
    if ceiling - floor < 2 * uncertainty:
        return "inconclusive"
    if floor + uncertainty <= value <= ceiling - uncertainty:
        return "pass"
    outside = value < floor - uncertainty or value > ceiling + uncertainty
    return "fail" if outside else "inconclusive"


def _open_ended(low: float | None, high: float | None) -> tuple[float, float]:
    if low is None and high is None:
        raise ValueError("a verdict needs a low or a high limit")
    floor = -math.inf if low is None else low
    ceiling = math.inf if high is None else high
    if floor > ceiling:
        raise ValueError(f"the low limit {low} lies above the high limit {high}")
    return floor, ceiling
