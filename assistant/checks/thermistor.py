"""Resistance and temperature of a thermistor, by the Beta formula or by a table."""

from __future__ import annotations

import math
from bisect import bisect_right
from collections.abc import Sequence
from itertools import pairwise

from assistant.checks.law import Law, Limit, stated

Points = Sequence[tuple[float, float]]
"""Stated points of a table: temperature in K, resistance in ohm, coldest first."""

TEMPERATURE = Limit("temperature", 213.15, 473.15, "K")
RESISTANCE = Limit("resistance", 0.1, 5e7, "ohm")
BETA_VALUE = Limit("B", 1000.0, 8000.0, "K")

BETA = Law(
    name="thermistor, Beta formula",
    formula="R = R0 exp(B (1/T - 1/T0)),  T = 1 / (1/T0 + ln(R/R0) / B)",
    source="Beta formula, as printed in makers' service manuals; T in kelvin",
    limits=(TEMPERATURE, RESISTANCE, BETA_VALUE),
    note=(
        "Good to about 0.3 K only near the two temperatures that define B; errors of "
        "1 to 2 K are usual elsewhere. The maker's table is preferred."
    ),
)
TABLE = Law(
    name="thermistor, table",
    formula="ln R linear in 1/T between the two stated points around it",
    source="the table itself; interpolation follows from the Beta formula between "
    "neighbours",
    limits=(
        Limit("temperature of a stated point", 213.15, 473.15, "K"),
        Limit("resistance of a stated point", 0.1, 5e7, "ohm"),
    ),
    note="Never extrapolated: only between the first and the last stated point.",
)


@stated(BETA)
def resistance_beta(temperature: float, r0: float, t0: float, beta: float) -> float:
    """Return the resistance of a thermistor at a temperature.

    Parameters
    ----------
    temperature : float
        Of the sensor, [K].
    r0 : float
        Resistance at `t0`, [ohm].
    t0 : float
        Reference temperature, [K].
    beta : float
        B value, [K].

    Returns
    -------
    float
        Resistance, [ohm].

    Raises
    ------
    OutOfRangeError
        Outside the limits.

    Examples
    --------
    15 kohm at 0 °C with B 3480 is printed as 6.3 kohm at 20 °C:

    >>> resistance_beta(293.15, r0=15e3, t0=273.15, beta=3480.0)
    6289.
    """
    TEMPERATURE.hold(temperature)
    _hold_beta(r0, t0, beta)
    return r0 * math.exp(beta * (1 / temperature - 1 / t0))


@stated(BETA)
def temperature_beta(resistance: float, r0: float, t0: float, beta: float) -> float:
    """Return the temperature of a thermistor with a resistance.

    Parameters
    ----------
    resistance : float
        As measured, [ohm].
    r0 : float
        Resistance at `t0`, [ohm].
    t0 : float
        Reference temperature, [K].
    beta : float
        B value, [K].

    Returns
    -------
    float
        Temperature, [K].

    Raises
    ------
    OutOfRangeError
        Outside the limits, the resulting temperature included.

    Examples
    --------
    >>> temperature_beta(5000.0, r0=10e3, t0=298.15, beta=3950.0) - 273.15
    41.46
    """
    RESISTANCE.hold(resistance)
    _hold_beta(r0, t0, beta)
    inverse = 1 / t0 + math.log(resistance / r0) / beta
    found = 1 / inverse if inverse > 0 else math.inf
    TEMPERATURE.hold(found)
    return found


@stated(TABLE)
def resistance_from_table(temperature: float, points: Points) -> float:
    """Return the resistance at a temperature, between two stated points.

    Parameters
    ----------
    temperature : float
        Of the sensor, [K].
    points : sequence of (float, float)
        Temperature [K] and resistance [ohm], coldest first, at least two.

    Returns
    -------
    float
        Resistance, [ohm].

    Raises
    ------
    OutOfRangeError
        Outside the stated points, naming the range.
    ValueError
        When the points are not a table of one sensor.

    Examples
    --------
    >>> table = [(293.15, 25.02e3), (298.15, 20.00e3)]
    >>> resistance_from_table(295.65, table)
    22348.
    """
    (cold, r_cold), (hot, r_hot) = _around(temperature, points)
    share = (1 / temperature - 1 / cold) / (1 / hot - 1 / cold)
    return math.exp(math.log(r_cold) + share * math.log(r_hot / r_cold))


@stated(TABLE)
def temperature_from_table(resistance: float, points: Points) -> float:
    """Return the temperature of a resistance, between two stated points.

    Parameters
    ----------
    resistance : float
        As measured, [ohm].
    points : sequence of (float, float)
        Temperature [K] and resistance [ohm], coldest first, at least two.

    Returns
    -------
    float
        Temperature, [K].

    Raises
    ------
    OutOfRangeError
        Outside the stated points, naming the range.
    ValueError
        When the points are not a table of one sensor.

    Examples
    --------
    >>> table = [(293.15, 25.02e3), (298.15, 20.00e3)]
    >>> temperature_from_table(22e3, table) - 273.15
    22.851
    """
    rows = sorted((r, t) for t, r in _table(points))
    (low, t_low), (high, t_high) = _pair(resistance, rows, "resistance", "ohm")
    share = math.log(resistance / low) / math.log(high / low)
    return 1 / (1 / t_low + share * (1 / t_high - 1 / t_low))


@stated(TABLE)
def slope_from_table(temperature: float, points: Points) -> float:
    """Return by how much the resistance changes per kelvin at a temperature.

    Parameters
    ----------
    temperature : float
        Of the sensor, [K].
    points : sequence of (float, float)
        Temperature [K] and resistance [ohm], coldest first, at least two.

    Returns
    -------
    float
        dR/dT, [ohm/K]; negative for a thermistor that falls when warmed.

    Raises
    ------
    OutOfRangeError
        Outside the stated points, naming the range.

    Examples
    --------
    >>> table = [(293.15, 25.02e3), (298.15, 20.00e3)]
    >>> slope_from_table(295.65, table)
    -1000.8
    """
    (cold, r_cold), (hot, r_hot) = _around(temperature, points)
    local_beta = math.log(r_cold / r_hot) / (1 / cold - 1 / hot)
    return -local_beta / temperature**2 * resistance_from_table(temperature, points)


@stated(BETA)
def slope_beta(temperature: float, r0: float, t0: float, beta: float) -> float:
    """Return by how much the resistance changes per kelvin at a temperature.

    Parameters
    ----------
    temperature : float
        Of the sensor, [K].
    r0 : float
        Resistance at `t0`, [ohm].
    t0 : float
        Reference temperature, [K].
    beta : float
        B value, [K].

    Returns
    -------
    float
        dR/dT = -B R / T², [ohm/K].

    Examples
    --------
    B 3950 gives -4.44 % per kelvin at 25 °C:

    >>> slope_beta(298.15, r0=100.0, t0=298.15, beta=3950.0)
    -4.44
    """
    return -beta / temperature**2 * resistance_beta(temperature, r0, t0, beta)


def _hold_beta(r0: float, t0: float, beta: float) -> None:
    RESISTANCE.hold(r0)
    TEMPERATURE.hold(t0)
    BETA_VALUE.hold(beta)


def _table(points: Points) -> Points:
    """Return `points` after checking that they are one sensor's."""
    if len(points) < 2:  # noqa: PLR2004
        raise ValueError("a table needs at least two stated points")
    for limit, column in zip(TABLE.limits, zip(*points, strict=True), strict=True):
        for value in column:
            limit.hold(value)
    rows = list(pairwise(points))
    falling = all(a[1] > b[1] for a, b in rows)
    rising = all(a[1] < b[1] for a, b in rows)
    if not all(a[0] < b[0] for a, b in rows) or not (falling or rising):
        raise ValueError(
            "the points of a table go from cold to warm, and the resistance only "
            "falls or only rises"
        )
    return points


def _around(temperature: float, points: Points) -> tuple[tuple[float, float], ...]:
    return _pair(temperature, list(_table(points)), "temperature", "K")


def _pair(
    value: float, rows: list[tuple[float, float]], what: str, unit: str
) -> tuple[tuple[float, float], tuple[float, float]]:
    keys = [key for key, _ in rows]
    Limit(what, keys[0], keys[-1], unit, "the stated points of the table").hold(value)
    after = min(max(bisect_right(keys, value), 1), len(rows) - 1)
    return rows[after - 1], rows[after]
