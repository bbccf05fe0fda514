"""A reading on its curve, as values: what a plot shows, drawn by nobody here."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from assistant.checks.kinds import BetaSensor, Sensor
from assistant.checks.saturation import (
    TEMPERATURE,
    Side,
    saturation_pressure,
)
from assistant.checks.thermistor import resistance_beta, resistance_from_table

POINTS = 61
"""Of a curve: more than a terminal has columns to tell apart at half its width."""
_AROUND = 45.0
"""K shown either way of what matters, where a curve has no ends of its own."""

Point = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Curve:
    """One curve with a reading on or beside it, in canonical units.

    Attributes
    ----------
    title : str
        What the curve is of.
    x_unit, y_unit : str
        Canonical units.
    line : tuple of (float, float)
        The curve, left to right.
    low, high : tuple of (float, float)
        Limits along it; empty for none.
    reading : (float, float) or None
        What was read.
    """

    title: str
    x_unit: str
    y_unit: str
    line: tuple[Point, ...]
    low: tuple[Point, ...] = ()
    high: tuple[Point, ...] = ()
    reading: Point | None = None


def sensor_curve(sensor: Sensor, at: float | None, resistance: float | None) -> Curve:
    """Return a sensor's resistance over temperature, with its tolerance.

    Parameters
    ----------
    sensor : Sensor
        With a table, which ends where its points end, or with R0, T0 and B.
    at, resistance : float or None
        The reading, K and ohm; both or there is none to show.
    """
    if isinstance(sensor, BetaSensor):
        r0, t0, beta = sensor.r0.value, sensor.t0.value, sensor.beta.value
        middle = t0 if at is None else at
        ends = (min(t0, middle) - _AROUND, max(t0, middle) + _AROUND)

        def ohms(kelvin: float) -> float:
            return resistance_beta(kelvin, r0, t0, beta)

    else:
        rows = [(p.temperature.value, p.resistance.value) for p in sensor.points]
        ends = (rows[0][0], rows[-1][0])

        def ohms(kelvin: float) -> float:
            return resistance_from_table(kelvin, rows)

    line = _drawn(ohms, *ends)
    share = 0.0 if sensor.tolerance is None else sensor.tolerance.value
    both = at is not None and resistance is not None
    return Curve(
        title=f"resistance of {sensor.name}",
        x_unit="K",
        y_unit="ohm",
        line=line,
        low=_scaled(line, 1 - share) if share else (),
        high=_scaled(line, 1 + share) if share else (),
        reading=(at, resistance) if both else None,  # type: ignore[arg-type]
    )


def saturation_curve(
    refrigerant: str, side: Side, line: float | None, pressure: float
) -> Curve:
    """Return a refrigerant's pressure over temperature around a reading.

    Parameters
    ----------
    refrigerant : str
        With a saturation table.
    side : str
        ``bubble`` or ``dew``.
    line : float or None
        Temperature of the line or of saturation, [K].
    pressure : float
        Absolute, [Pa].
    """
    middle = TEMPERATURE.high if line is None else line
    low = max(min(middle - _AROUND, TEMPERATURE.high - _AROUND), TEMPERATURE.low)
    high = min(middle + _AROUND, TEMPERATURE.high)

    def pascal(kelvin: float) -> float:
        return saturation_pressure(refrigerant, kelvin, side)

    return Curve(
        title=f"{refrigerant}, {side}",
        x_unit="K",
        y_unit="Pa",
        line=_drawn(pascal, low, high),
        reading=None if line is None else (line, pressure),
    )


def _drawn(law: Callable[[float], float], low: float, high: float) -> tuple[Point, ...]:
    step = (high - low) / (POINTS - 1)
    places = [low + step * place for place in range(POINTS - 1)] + [high]
    return tuple((place, law(place)) for place in places)


def _scaled(line: tuple[Point, ...], factor: float) -> tuple[Point, ...]:
    return tuple((x, y * factor) for x, y in line)
