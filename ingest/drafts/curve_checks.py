"""What a misread resistance table shows by its figures alone. Pure.

A thermistor's ln R is nearly straight over 1/T, so a point that lies off the line
through its neighbours was misread or misprinted. Nothing is ever mended here.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

LOOSEST = 0.03
"""Departure of ln R that a curved B explains."""
AT_THE_ENDS = 3.0
"""How much looser an end point is judged, which stands beyond its neighbours."""
FEWEST = 4
HOTTEST, COLDEST = 473.15, 213.15
"""Kelvin between which sensors of air conditioners are tabled: -60 to 200 °C."""


def degree_as_zero(temperatures: Sequence[float]) -> list[int]:
    """Return the places where a degree sign may have been read as the digit 0.

    The value ends in 0, does not stand between its neighbours, and does without that
    0: ``20, 250, 30``.

    Examples
    --------
    >>> degree_as_zero([10, 20, 250, 30])
    [2]
    >>> degree_as_zero([10, 20, 30])
    []
    """
    found: list[int] = []
    for place, value in enumerate(temperatures):
        if value == 0 or value % 10 != 0:
            continue
        low, high = _neighbours(temperatures, place, found)
        fits = low is None or value > low, high is None or value < high
        short = value / 10
        mended = (low is None or short > low) and (high is None or short < high)
        if not all(fits) and mended:
            found.append(place)
    return found


def _neighbours(
    values: Sequence[float], place: int, left_out: Sequence[int]
) -> tuple[float | None, float | None]:
    before = [n for n in range(place) if n not in left_out]
    low = values[before[-1]] if before else None
    high = values[place + 1] if place + 1 < len(values) else None
    return low, high


def restarts(temperatures: Sequence[float], suspects: Sequence[int]) -> list[int]:
    """Return the places where another table begins: the temperature starts anew.

    Examples
    --------
    >>> restarts([0, 10, 20, 0, 10, 20], [])
    [3]
    """
    kept = [n for n in range(len(temperatures)) if n not in suspects]
    return [
        after
        for before, after in pairwise(kept)
        if temperatures[after] < temperatures[before]
    ]


def off_the_curve(
    kelvins: Sequence[float], ohms: Sequence[float], rounding: float = 0.0
) -> list[int]:
    """Return the places whose ln R is off the line of their neighbours over 1/T.

    A wrong point pulls its neighbours off the line too, so the point taken out is
    the one without which the rest lies best.

    Parameters
    ----------
    kelvins, ohms : sequence of float
        In the order printed; every value above zero.
    rounding : float
        Half a unit of the last printed digit, relative to the coarsest value.
    """
    limit = LOOSEST + 2 * rounding
    left = dict(enumerate(zip(kelvins, ohms, strict=True)))
    found: list[int] = []
    while len(left) >= FEWEST:
        off = {n: _excess(left, n) for n in left}
        if max(off.values()) <= limit:
            break
        suspects = [n for n in off if off[n] > limit / AT_THE_ENDS]
        wrong = min(suspects, key=lambda n: (round(_rest(left, n), 6), -off[n], n))
        found.append(wrong)
        del left[wrong]
    return sorted(found)


def _rest(left: Mapping[int, tuple[float, float]], place: int) -> float:
    """Return how far the worst of the other points is off without this one."""
    others = {n: point for n, point in left.items() if n != place}
    if len(others) < FEWEST - 1:
        return 0.0
    return max(_excess(others, n) for n in others)


def _excess(left: Mapping[int, tuple[float, float]], place: int) -> float:
    places = sorted(left)
    slack = AT_THE_ENDS if place in (places[0], places[-1]) else 1.0
    return abs(_departure(left, place)) / slack


def _departure(left: Mapping[int, tuple[float, float]], place: int) -> float:
    """Return ln R less that of the line through the two nearest other points."""
    places = sorted(left)
    at = places.index(place)
    first = min(max(at - 1, 0), len(places) - 3)
    near = [n for n in places[first : first + 3] if n != place][:2]
    (x0, y0), (x1, y1) = (_straight(*left[n]) for n in near)
    x, y = _straight(*left[place])
    if x0 == x1:
        return math.inf
    return y - (y0 + (y1 - y0) * (x - x0) / (x1 - x0))


def _straight(kelvin: float, ohm: float) -> tuple[float, float]:
    return 1 / kelvin, math.log(ohm)


def wrong_turns(ohms: Sequence[float]) -> list[int]:
    """Return the places whose resistance turns against the run of the table.

    Examples
    --------
    >>> wrong_turns([90, 60, 70, 30])
    [2]
    """
    falls = ohms[-1] < ohms[0] if ohms else True
    turned = []
    last = None
    for place, value in enumerate(ohms):
        if last is not None and (value < last) != falls:
            turned.append(place)
            continue
        last = value
    return turned
