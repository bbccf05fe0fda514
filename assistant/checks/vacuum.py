"""Vacuum decay: how the pressure moves once the pump is shut off."""

from __future__ import annotations

from itertools import pairwise
from typing import Literal

from assistant.checks.law import Law, Limit, OutOfRangeError, stated

VACUUM = Limit("pressure under vacuum, absolute", 0.0, 1.1e5, "Pa")
SINCE = Limit("time since the pump was shut off", 0.0, 1e6, "s")
FLATTER = 0.5
"""Share of the first rate below which a rise counts as flattening: common practice."""
_FEWEST = 3
Decay = Literal["steady", "flattening", "rising"]

DECAY = Law(
    name="vacuum decay",
    formula=(
        "steady: no reading above the first by more than s; flattening: last rate < "
        "0.5 first rate; rising: otherwise"
    ),
    source="common practice, no source: a rise that flattens is moisture or oil "
    "boiling off, one that goes on is a leak",
    limits=(VACUUM, SINCE),
    note=(
        "The target and the time stand in the document. A low pressure some minutes "
        "after the pump stopped is no pass by itself."
    ),
)


@stated(DECAY)
def decay(points: tuple[tuple[float, float], ...], still: float = 0.0) -> Decay:
    """Return how a pressure moved after the pump was shut off.

    Parameters
    ----------
    points : tuple of (float, float)
        Time since shut off [s] and absolute pressure [Pa], three or more, [1].
    still : float
        Rise that the gauge cannot tell from none, [Pa].

    Returns
    -------
    str
        ``steady``, ``flattening`` or ``rising``, [1].

    Raises
    ------
    OutOfRangeError
        With fewer than three points, two at one time, or outside the limits.

    Examples
    --------
    >>> decay(((0.0, 40.0), (300.0, 90.0), (600.0, 140.0)))
    'rising'
    >>> decay(((0.0, 40.0), (300.0, 90.0), (600.0, 100.0)))
    'flattening'
    """
    ordered = sorted(points)
    if len(ordered) < _FEWEST:
        raise OutOfRangeError(
            f"{len(ordered)} readings do not show how a vacuum moves",
            "note time and pressure three times or more after isolating the pump",
        )
    for time, pressure in ordered:
        SINCE.hold(time)
        VACUUM.hold(pressure)
    if any(a[0] == b[0] for a, b in pairwise(ordered)):
        raise OutOfRangeError("two readings stand at one time")
    first = ordered[0][1]
    if max(pressure for _, pressure in ordered) <= first + still:
        return "steady"
    rates = [(b[1] - a[1]) / (b[0] - a[0]) for a, b in pairwise(ordered)]
    return "flattening" if rates[-1] < FLATTER * max(rates[0], 0.0) else "rising"
