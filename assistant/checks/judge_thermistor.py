"""Judges a sensor's resistance at its measured temperature."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.checks.comparing import because, compare, question, shown
from assistant.checks.kinds import BetaSensor, Meter, Sensor
from assistant.checks.law import Law, OutOfRangeError
from assistant.checks.reading import (
    AT_SENSOR,
    METER_TOP,
    THE_READING,
    WELL_INSIDE,
    ReadingFor,
    meter_for,
)
from assistant.checks.thermistor import (
    BETA,
    TABLE,
    TEMPERATURE,
    resistance_beta,
    resistance_from_table,
    slope_beta,
    slope_from_table,
    temperature_beta,
    temperature_from_table,
)
from assistant.checks.uncertainty import expanded, guarded, meter_bound
from assistant.checks.verdict import Verdict, unjudged
from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Expected:
    """What a sensor reads at a temperature: ohm, ohm/K, and the law behind both."""

    resistance: float
    slope: float
    law: Law


def judge_thermistor(
    name: str, sensor: Sensor, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of a resistance; the power is known to have been off.

    Parameters
    ----------
    name : str
        Of the check.
    sensor : Sensor
        With a table or with R0, T0 and B.
    reading : ReadingFor
        Resistance [ohm], or OL, with the temperature at the sensor [K].
    meter : Meter or None
        Assumed when not told.
    """
    law = BETA if isinstance(sensor, BetaSensor) else TABLE
    none = unjudged(name, law, "ohm")
    at = reading.at_temperature
    if at is None:
        reason = "the temperature at the sensor is not known"
        return replace(none, reason=reason, missing=(AT_SENSOR,))
    if at.unit != "K":
        return replace(none, reason=f"{at.text!r} is not a temperature")
    try:
        expected = expected_of(sensor, at.value)
    except OutOfRangeError:
        return replace(none, reason=outside(sensor, at))
    except ValueError as error:
        return replace(none, reason=f"the sensor's table cannot be used: {error}")
    none = replace(none, expected=expected.resistance)
    if reading.open_line:
        return open_line(none, sensor, expected.resistance)
    if reading.value is None:
        return replace(none, reason="no reading is told", missing=(THE_READING,))
    return _resistance(none, sensor, expected, reading.value.value, meter)


def expected_of(sensor: Sensor, temperature: float) -> Expected:
    """Return what a sensor reads at a temperature [K], and how steeply.

    Raises
    ------
    OutOfRangeError
        Outside its table or the formula's range.
    """
    if isinstance(sensor, BetaSensor):
        r0, t0, beta = sensor.r0.value, sensor.t0.value, sensor.beta.value
        resistance = resistance_beta(temperature, r0, t0, beta)
        return Expected(resistance, slope_beta(temperature, r0, t0, beta), BETA)
    points = [(p.temperature.value, p.resistance.value) for p in sensor.points]
    resistance = resistance_from_table(temperature, points)
    return Expected(resistance, slope_from_table(temperature, points), TABLE)


def temperature_of(sensor: Sensor, resistance: float) -> float:
    """Return the temperature [K] that a sensor shows by a resistance [ohm].

    Raises
    ------
    OutOfRangeError
        Outside its table or the formula's range.
    """
    if isinstance(sensor, BetaSensor):
        r0, t0, beta = sensor.r0.value, sensor.t0.value, sensor.beta.value
        return temperature_beta(resistance, r0, t0, beta)
    points = [(p.temperature.value, p.resistance.value) for p in sensor.points]
    return temperature_from_table(resistance, points)


def outside(sensor: Sensor, at: Quantity) -> str:
    """Say that a temperature lies outside what the sensor is stated for."""
    if isinstance(sensor, BetaSensor):
        ends, what = (TEMPERATURE.low, TEMPERATURE.high), "formula's range"
    else:
        rows = [point.temperature.value for point in sensor.points]
        ends, what = (min(rows), max(rows)), "table's stated points"
    low, high = (
        format_quantity(Quantity(value=end, unit="K"), like=at.text) for end in ends
    )
    here = format_quantity(at, like=at.text)
    return f"{here} is outside the {what}, {low} to {high}; it is not extrapolated"


def open_line(none: Verdict, sensor: Sensor, expected: float) -> Verdict:
    """Judge OL, over range: open only when the meter could have shown the value.

    Parameters
    ----------
    none : Verdict
        What is known already.
    sensor : Sensor
        With the maker's own threshold for open, if it states one.
    expected : float
        At the measured temperature, [ohm].
    """
    top = shown(METER_TOP, "ohm")
    limit = None if sensor.open_above is None else sensor.open_above.value
    if limit is not None and limit <= METER_TOP:
        reason = f"open: OL, above the maker's {shown(limit, 'ohm')} for open"
        return replace(none, result="fail", reason=reason, high=limit)
    if expected * WELL_INSIDE <= METER_TOP:
        reason = (
            f"open: OL, where {shown(expected, 'ohm')} is expected, well inside the "
            f"{top} that any meter shows"
        )
        return replace(none, result="fail", reason=reason)
    reason = (
        f"OL is not proof of an open sensor: {shown(expected, 'ohm')} is expected, and "
        f"some meters end at {top}; read again on a range that shows it, or warmer"
    )
    return replace(none, reason=reason, missing=(THE_READING,))


def _resistance(
    none: Verdict,
    sensor: Sensor,
    expected: Expected,
    value: float,
    meter: Meter | None,
) -> Verdict:
    fitted, assumed = meter_for(meter, value, "ohm")
    resolution = fitted.resolution.value
    bound = meter_bound(value, fitted.percent, fitted.digits, resolution)
    u = expanded(bound, abs(expected.slope) * fitted.thermometer)
    degrees = f"the thermometer is taken as good to {fitted.thermometer:g} K"
    doubt = question(value, expected.resistance, "ohm")
    found = replace(none, value=value, uncertainty=u)
    beyond = _thresholds(found, sensor, expanded(bound))
    if sensor.tolerance is None:
        return _no_tolerance(beyond or found, because(assumed, degrees, doubt))
    share = sensor.tolerance.value
    low, high = expected.resistance * (1 - share), expected.resistance * (1 + share)
    result, reason = compare(value, low, high, u, "ohm")
    if result != "pass" and beyond is not None:
        result, reason = beyond.result, beyond.reason
    return replace(
        found,
        result=result,
        reason=because(reason, assumed, degrees, doubt),
        low=low,
        high=high,
    )


def _thresholds(found: Verdict, sensor: Sensor, u: float) -> Verdict | None:
    """Hold a value against the maker's own limits for open and shorted.

    They do not move with temperature, so only the meter's own U guards them.
    """
    value = found.value or 0.0
    above = None if sensor.open_above is None else sensor.open_above.value
    below = None if sensor.short_below is None else sensor.short_below.value
    if above is not None and guarded(value, None, above, u) == "fail":
        reason = f"open: above the maker's {shown(above, 'ohm')}"
        return replace(found, result="fail", reason=reason, high=above)
    if below is not None and guarded(value, below, None, u) == "fail":
        reason = f"shorted: below the maker's {shown(below, 'ohm')}"
        return replace(found, result="fail", reason=reason, low=below)
    return None


def _no_tolerance(found: Verdict, notes: str) -> Verdict:
    if found.result == "fail":
        return replace(found, reason=because(found.reason, notes))
    expected = shown(found.expected or 0.0, "ohm")
    reason = f"{expected} is expected, but the document states no tolerance"
    return replace(found, reason=because(reason, notes))
