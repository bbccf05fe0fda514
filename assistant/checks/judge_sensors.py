"""Judges a sensor by its voltage at the board, and two sensors against each other."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.comparing import because, compare, shown
from assistant.checks.divider import (
    DIVIDER,
    divider_slope,
    divider_voltage,
)
from assistant.checks.judge_thermistor import (
    expected_of,
    open_line,
    outside,
    temperature_of,
)
from assistant.checks.kinds import DividerCheck, Meter, Sensor, TwoSensorsCheck
from assistant.checks.law import OutOfRangeError
from assistant.checks.reading import (
    AT_SENSOR,
    BOARD_ON,
    ReadingFor,
    bound_for,
)
from assistant.checks.two_sensors import TWO, disagreement
from assistant.checks.uncertainty import expanded
from assistant.checks.verdict import Verdict, unjudged

_RAIL = 0.02
"""Share of the logic supply from a rail that only an open or a short explains."""


def judge_divider(
    check: DividerCheck, sensor: Sensor, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of a sensor's voltage at its measured temperature.

    Parameters
    ----------
    check : DividerCheck
        Logic supply [V], fixed resistor [ohm] and where the sensor goes.
    sensor : Sensor
        With a table or with R0, T0 and B.
    reading : ReadingFor
        Voltage at the board [V] with the temperature at the sensor [K].
    meter : Meter or None
        Assumed when not told.
    """
    none = unjudged(check.id, DIVIDER, "V")
    at, value = reading.at_temperature, reading.value
    if at is None or value is None:
        reason = "the temperature at the sensor is not known"
        return replace(none, reason=reason, missing=(AT_SENSOR,))
    none = replace(none, value=value.value)
    if reading.power_state == "off":
        reason = "a sensor's voltage is read with the board powered"
        return replace(none, reason=reason, missing=(BOARD_ON,))
    try:
        expected = expected_of(sensor, at.value)
    except OutOfRangeError:
        return replace(none, reason=outside(sensor, at))
    logic, fixed, to = check.logic.value, check.fixed.value, check.sensor_to
    volts = divider_voltage(expected.resistance, logic, fixed, to)
    bound, assumed = bound_for(meter, value.value, "V")
    degrees = 1.0 if meter is None else meter.thermometer
    steep = divider_slope(expected.resistance, logic, fixed, to) * expected.slope
    u = expanded(bound, abs(steep) * degrees)
    found = replace(none, expected=volts, uncertainty=u)
    notes = because(assumed, f"the thermometer is taken as good to {degrees:g} K")
    rail = _at_a_rail(check, value.value, volts)
    if rail:
        return replace(found, result="fail", reason=because(rail, notes))
    if sensor.tolerance is None:
        reason = (
            f"{shown(volts, 'V')} is expected, but the document states no tolerance"
        )
        return replace(found, reason=because(reason, notes))
    share = sensor.tolerance.value
    low, high = sorted(
        divider_voltage(expected.resistance * (1 + side), logic, fixed, to)
        for side in (-share, share)
    )
    result, reason = compare(value.value, low, high, u, "V")
    return replace(
        found, result=result, reason=because(reason, notes), low=low, high=high
    )


def _at_a_rail(check: DividerCheck, value: float, expected: float) -> str:
    """Say open or short where only that explains a voltage at either end."""
    logic = check.logic.value
    near = _RAIL * logic
    top, bottom = logic - value < near, value < near
    if not (top or bottom) or not 2 * near < expected < logic - 2 * near:
        return ""
    is_open = top == (check.sensor_to == "ground")
    what = "open, or unplugged" if is_open else "shorted"
    return (
        f"{shown(value, 'V')} is at one end of {shown(logic, 'V')}, where "
        f"{shown(expected, 'V')} is expected: sensor or wiring {what}, or the board's "
        "own resistor; unplug it and read its resistance"
    )


def judge_two(
    check: TwoSensorsCheck,
    sensors: tuple[Sensor, ...],
    reading: ReadingFor,
    meter: Meter | None,
) -> Verdict:
    """Return whether two sensors agree; both unplugged, power off, one temperature.

    Parameters
    ----------
    check : TwoSensorsCheck
        With the largest difference allowed [dK].
    sensors : tuple of Sensor
        The two, in the check's order.
    reading : ReadingFor
        A set of both resistances [ohm], by the sensors' roles.
    meter : Meter or None
        Assumed when not told.
    """
    none = unjudged(check.id, TWO, "dK", high=check.largest)
    roles = [sensor.role for sensor in sensors]
    told = dict(reading.set_of)
    missing = tuple(role for role in roles if role not in told)
    if missing:
        reason = f"the other reading is not told: {', '.join(missing)}"
        untold = tuple(f"reading {role}" for role in missing)
        return replace(none, reason=reason, missing=untold)
    opened = [role for role in roles if told[role] is None]
    if opened:
        return _one_open(none, sensors, reading, opened)
    temperatures, bounds, notes = [], [], []
    for sensor in sensors:
        value = reading.among(sensor.role)
        assert value is not None  # noqa: S101 - the open ones are answered above
        if value.unit != "ohm":
            raise ValueError(f"{value.text!r} is not a resistance")
        temperature, errors, assumed = _by_curve(sensor, value.value, meter)
        temperatures.append(temperature)
        bounds += errors
        notes.append(assumed)
    apart = disagreement(temperatures[0], temperatures[1])
    u = expanded(*bounds)
    result, reason = compare(abs(apart), None, check.largest.value, u, "dK")
    which = "it does not say which of them is wrong" if result == "fail" else ""
    return replace(
        none,
        result=result,
        value=apart,
        uncertainty=u,
        reason=because(reason, which, *dict.fromkeys(notes)),
    )


def _by_curve(
    sensor: Sensor, value: float, meter: Meter | None
) -> tuple[float, list[float], str]:
    """Return a temperature [K], its bounds [K] and what was assumed."""
    temperature = temperature_of(sensor, value)
    expected = expected_of(sensor, temperature)
    bound, assumed = bound_for(meter, value, "ohm")
    errors = [bound]
    if sensor.tolerance is not None:
        errors.append(sensor.tolerance.value * value)
    else:
        assumed = because(assumed, f"no tolerance is stated for the {sensor.role}")
    return temperature, [error / abs(expected.slope) for error in errors], assumed


def _one_open(
    none: Verdict, sensors: tuple[Sensor, ...], reading: ReadingFor, opened: list[str]
) -> Verdict:
    """Judge OL on one sensor by what it should read at the other's temperature."""
    if len(opened) == len(sensors):
        reason = "both show OL: check the meter's range on a known resistance first"
        return replace(
            none, reason=reason, missing=tuple(f"reading {o}" for o in opened)
        )
    dead = next(sensor for sensor in sensors if sensor.role in opened)
    other = next(sensor for sensor in sensors if sensor.role not in opened)
    value = reading.among(other.role)
    assert value is not None  # noqa: S101 - only one of the two is open
    at = temperature_of(other, value.value)
    verdict = open_line(none, dead, expected_of(dead, at).resistance)
    return replace(
        verdict,
        high=none.high,
        reason=f"{dead.role}: {verdict.reason}",
        missing=(f"reading {dead.role}",) if verdict.missing else (),
    )
