"""Steinhart-Hart through three points of a table: a second opinion on a sensor."""

from __future__ import annotations

import math
from collections.abc import Sequence

from assistant.checks.law import Law, Limit, stated
from assistant.checks.thermistor import RESISTANCE, TEMPERATURE

COEFFICIENTS = 3
_SLACK = 1e-9
"""Share by which the last bit of a point may stand beyond itself."""
_TURNS = 80

STEINHART = Law(
    name="thermistor, Steinhart-Hart",
    formula="1/T = a + b ln R + c (ln R)^3, through three stated points",
    source="Steinhart and Hart's fit, widely printed (the form is from memory)",
    limits=(TEMPERATURE, RESISTANCE),
    note=(
        "A second opinion beside the table; only between the coldest and the "
        "warmest of the three points. Within 0.03 K of makers' tables."
    ),
)

Fit = tuple[float, float, float]
"""a, b and c."""


@stated(STEINHART)
def steinhart_fit(points: Sequence[tuple[float, float]]) -> Fit:
    """Return the three coefficients through three points.

    Parameters
    ----------
    points : sequence of (float, float)
        Temperature [K] and resistance [ohm], three of them.

    Returns
    -------
    tuple of float
        a [1/K], b [1/K] and c [1/K].

    Raises
    ------
    OutOfRangeError
        Outside the limits.
    ValueError
        When the points are not three of one falling or rising sensor.

    Examples
    --------
    >>> points = [(253.15, 97060.0), (298.15, 10000.0), (321.15, 3889.0)]
    >>> a, b, c = steinhart_fit(points)
    >>> f"{a:.6e} {b:.6e} {c:.4e}"
    '1.125583e-03 2.346730e-04 8.5772e-08'
    """
    _hold(points)
    (y1, l1), (y2, l2), (y3, l3) = ((1 / t, math.log(r)) for t, r in points)
    first, second = (y2 - y1) / (l2 - l1), (y3 - y1) / (l3 - l1)
    c = (second - first) / (l3 - l2) / (l1 + l2 + l3)
    b = first - c * (l1 * l1 + l1 * l2 + l2 * l2)
    return y1 - l1 * (b + c * l1 * l1), b, c


@stated(STEINHART)
def temperature_steinhart(
    resistance: float, points: Sequence[tuple[float, float]]
) -> float:
    """Return the temperature of a resistance, by the curve through three points.

    Parameters
    ----------
    resistance : float
        As measured, [ohm].
    points : sequence of (float, float)
        Temperature [K] and resistance [ohm], three of them.

    Returns
    -------
    float
        Temperature, [K].

    Raises
    ------
    OutOfRangeError
        Outside the three points.
    ValueError
        When the points are not three of one falling or rising sensor.

    Examples
    --------
    The same table prints 4370 ohm at 45 °C:

    >>> points = [(253.15, 97060.0), (298.15, 10000.0), (321.15, 3889.0)]
    >>> round(temperature_steinhart(4370.0, points) - 273.15, 3)
    44.992
    """
    a, b, c = steinhart_fit(points)
    ends = sorted(r for _, r in points)
    _between("resistance", ends, "ohm").hold(resistance)
    log = math.log(resistance)
    return 1 / (a + b * log + c * log**3)


@stated(STEINHART)
def resistance_steinhart(
    temperature: float, points: Sequence[tuple[float, float]]
) -> float:
    """Return the resistance at a temperature, by the curve through three points.

    Parameters
    ----------
    temperature : float
        Of the sensor, [K].
    points : sequence of (float, float)
        Temperature [K] and resistance [ohm], three of them.

    Returns
    -------
    float
        Resistance, [ohm].

    Raises
    ------
    OutOfRangeError
        Outside the three points.
    ValueError
        When the points are not three of one falling or rising sensor.

    Examples
    --------
    The same table prints 12493 ohm at 20 °C:

    >>> points = [(253.15, 97060.0), (298.15, 10000.0), (321.15, 3889.0)]
    >>> round(resistance_steinhart(293.15, points))
    12493
    """
    a, b, c = steinhart_fit(points)
    ends = sorted(t for t, _ in points)
    _between("temperature", ends, "K").hold(temperature)
    low, high = sorted(math.log(r) for _, r in points)[:: COEFFICIENTS - 1]
    falls = points[0][1] > points[-1][1]
    for _ in range(_TURNS):
        middle = (low + high) / 2
        warmer = 1 / (a + b * middle + c * middle**3) > temperature
        low, high = (middle, high) if warmer == falls else (low, middle)
    return math.exp((low + high) / 2)


def _hold(points: Sequence[tuple[float, float]]) -> None:
    if len(points) != COEFFICIENTS:
        raise ValueError("Steinhart-Hart goes through exactly three stated points")
    for temperature, resistance in points:
        TEMPERATURE.hold(temperature)
        RESISTANCE.hold(resistance)
    (t1, r1), (t2, r2), (t3, r3) = points
    if not t1 < t2 < t3 or not (r1 > r2 > r3 or r1 < r2 < r3):
        raise ValueError(
            "the points go from cold to warm, and the resistance only falls or rises"
        )


def _between(what: str, ends: Sequence[float], unit: str) -> Limit:
    low, high = ends[0] * (1 - _SLACK), ends[-1] * (1 + _SLACK)
    return Limit(what, low, high, unit, "the three stated points")
