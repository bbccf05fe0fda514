"""The named checks of thermistors."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.comparing import because
from assistant.checks.entry import (
    METER_INPUTS,
    POWER_INPUT,
    NamedCheck,
    reading_of,
    required,
)
from assistant.checks.families.asking import built, figure
from assistant.checks.families.sensors import drawn, sensor_of
from assistant.checks.inputs import POINTS, Input, Values
from assistant.checks.judge import judge
from assistant.checks.kinds import (
    Sensor,
    ThermistorCheck,
)
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.thermistor import (
    BETA,
    TABLE,
    resistance_beta,
    resistance_from_table,
    temperature_beta,
    temperature_from_table,
)
from assistant.errors import UsageError

_TEMPERATURE = Input(
    "temperature", "temperature", "25 °C", "measured at the sensor, not in the room"
)
_RESISTANCE = Input("resistance", "resistance", "10 kohm", "read, sensor unplugged")
_TOLERANCE = Input(
    "tolerance", "ratio", "5 %", "the document's tolerance of resistance"
)
_SENSOR = (_TEMPERATURE, _RESISTANCE, _TOLERANCE, POWER_INPUT, *METER_INPUTS)


def _thermistor(name: str, sensor: Sensor, values: Values) -> CheckReport:
    check = built(ThermistorCheck, "thermistor", name, sensor=sensor.id)
    reading = reading_of(values, "resistance", at="temperature")
    report = from_verdict(name, judge(check, reading, sensor, {}, values.meter()))
    if reading.power_state is None:
        report = replace(report, reason=because(report.reason, "say power=off if so"))
    return report


def thermistor_beta(values: Values) -> CheckReport:
    """Return resistance, temperature, or the verdict of both, by R0, T0 and B."""
    r0, t0, beta = (values.number(key) for key in ("r0", "t0", "beta"))
    name, temperature, resistance = _either(values, "thermistor-beta")
    if temperature is not None and resistance is not None:
        return _thermistor(name, sensor_of(values, "sensor"), values)
    if temperature is not None:
        value = resistance_beta(temperature, r0, t0, beta)
        return figure(name, BETA, value, "ohm")
    value = temperature_beta(resistance or 0.0, r0, t0, beta)
    return figure(name, BETA, value, "K")


def thermistor_table(values: Values) -> CheckReport:
    """Return resistance, temperature, or the verdict of both, by stated points."""
    points = values.points("points")
    name, temperature, resistance = _either(values, "thermistor-table")
    if temperature is not None and resistance is not None:
        return _thermistor(name, sensor_of(values, "sensor"), values)
    if temperature is not None:
        value = resistance_from_table(temperature, points)
        return figure(name, TABLE, value, "ohm")
    value = temperature_from_table(resistance or 0.0, points)
    return figure(name, TABLE, value, "K")


def _either(values: Values, name: str) -> tuple[str, float | None, float | None]:
    temperature, resistance = values.maybe("temperature"), values.maybe("resistance")
    if temperature is None and resistance is None:
        raise UsageError(
            f"check {name!r} needs a temperature, a resistance, or both to compare",
            "give temperature='25 °C' or resistance='10 kohm'",
        )
    return (
        name,
        None if temperature is None else temperature.value,
        None if resistance is None else resistance.value,
    )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "thermistor-beta",
        "resistance and temperature of a sensor by R0, T0 and B",
        BETA,
        (
            required("r0", "resistance", "10 kohm", "resistance at t0"),
            required("t0", "temperature", "25 °C", "reference temperature"),
            required("beta", "temperature", "3950 K", "B value"),
            *_SENSOR,
        ),
        thermistor_beta,
        drawn,
    ),
    NamedCheck(
        "thermistor-table",
        "resistance and temperature of a sensor between stated points",
        TABLE,
        (
            required(
                "points",
                POINTS,
                "20 °C: 25.0 kohm; 25 °C: 20.0 kohm",
                "points of the document's table",
            ),
            *_SENSOR,
        ),
        thermistor_table,
        drawn,
    ),
)
"""The checks of this family."""
