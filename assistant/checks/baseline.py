"""How far a reading has moved since the unit was commissioned."""

from __future__ import annotations

from assistant.checks.law import Law, Limit, stated

ANY = Limit("reading", -1e12, 1e12, "any unit")

DRIFT = Law(
    name="drift from the baseline",
    formula="drift = reading - baseline",
    source="definition; the allowed drift is the document's",
    limits=(ANY,),
    note=(
        "Only under the conditions of the baseline: mode, speed, both air "
        "temperatures. Two uncertainties stand between two readings."
    ),
)


@stated(DRIFT)
def drift(reading: float, baseline: float) -> float:
    """Return how far a reading has moved since its baseline.

    Parameters
    ----------
    reading : float
        Now, [any unit].
    baseline : float
        When the unit was commissioned, [unit of `reading`].

    Returns
    -------
    float
        Drift, negative for a fall, [unit of `reading`].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    >>> drift(8.6, 9.4)
    -0.8
    """
    ANY.hold(reading)
    ANY.hold(baseline)
    return reading - baseline
