"""Bounds of gauges, and whether tools can decide a band before they are used."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, stated
from assistant.checks.uncertainty import expanded

CLASS = Limit("gauge class", 0.0, 10.0, "%")
SCALE = Limit("full scale of a gauge", 0.0, 1e8, "any unit")

GAUGE = Law(
    name="gauge bound",
    formula="a = full scale class / 100",
    source="accuracy class of gauges: a share of full scale, whatever is read",
    limits=(CLASS, SCALE),
    note="Analogue meters state their accuracy in the same way.",
)
DECIDES = Law(
    name="whether tools can decide a band",
    formula="never when high - low < 2 U",
    source="guard band w = U (ILAC-G8:09/2019): nothing is left to accept",
    limits=(Limit("bound", 0.0, 1e12, "any unit"),),
    note="Said before the reading is taken; a finer tool, not another try, helps.",
)


@stated(GAUGE)
def gauge_bound(full_scale: float, percent: float) -> float:
    """Return the largest error of a gauge.

    Parameters
    ----------
    full_scale : float
        End of its scale, [any unit].
    percent : float
        Its class, [%].

    Returns
    -------
    float
        Bound either way, [unit of `full_scale`].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> gauge_bound(500.0, 0.5)
    2.5
    """
    SCALE.hold(full_scale)
    CLASS.hold(percent)
    return full_scale * percent / 100


@stated(DECIDES)
def never_decides(low: float, high: float, *bounds: float) -> bool:
    """Return whether no reading could ever pass a band with these tools.

    Parameters
    ----------
    low : float
        Limit, [any unit].
    high : float
        Limit, [unit of `low`].
    *bounds : float
        Largest errors of the tools, brought to the same unit, [unit of `low`].

    Returns
    -------
    bool
        True when every reading would be too close to call, [1].

    Raises
    ------
    OutOfRangeError
        For a bound outside the limits.

    Examples
    --------
    >>> never_decides(8.0, 12.0, 1.10, 1.0), never_decides(8.0, 10.0, 1.10, 1.0)
    (False, True)
    """
    return high - low < 2 * expanded(*bounds)
