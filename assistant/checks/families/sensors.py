"""The named checks of sensors beside their own table: fit, voltage, two of them."""

from __future__ import annotations

from typing import Literal

from assistant.checks.curve import Curve, sensor_curve
from assistant.checks.divider import DIVIDER, divider_voltage
from assistant.checks.entry import METER_INPUTS, POWER_INPUT, NamedCheck, required
from assistant.checks.families.asking import built, choice, figure, flag, told
from assistant.checks.inputs import POINTS, Input, Values
from assistant.checks.judge import judge
from assistant.checks.judge_thermistor import expected_of, temperature_of
from assistant.checks.kinds import (
    BetaSensor,
    DividerCheck,
    ResistanceTable,
    Sensor,
    TablePoint,
    TwoSensorsCheck,
)
from assistant.checks.reading import BOARD_ON, ONE_TEMPERATURE, ReadingFor
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.steinhart import (
    STEINHART,
    resistance_steinhart,
    temperature_steinhart,
)
from assistant.checks.thermistor import temperature_from_table
from assistant.checks.two_sensors import TWO
from assistant.errors import UsageError
from assistant.units.quantity import Quantity


def steinhart(values: Values) -> CheckReport:
    """Return a sensor's temperature or resistance by the curve through three points."""
    name, points = "thermistor-steinhart", values.points("points")
    if values.has("temperature") == values.has("resistance"):
        raise UsageError(
            f"check {name!r} takes a temperature or a resistance, one of them",
            "give temperature='25 °C' or resistance='10 kohm'",
        )
    if values.has("temperature"):
        found = resistance_steinhart(values.number("temperature"), points)
        return figure(name, STEINHART, found, "ohm", "a second opinion")
    resistance = values.number("resistance")
    found = temperature_steinhart(resistance, points)
    by_table = temperature_from_table(resistance, points)
    reason = f"a second opinion: the same points by ln R say {by_table - 273.15:.2f} °C"
    return figure(name, STEINHART, found, "K", reason, expected=by_table)


def sensor_of(values: Values, role: str, end: str = "") -> Sensor:
    """Return a sensor from typed points, or from R0, T0 and B.

    Raises
    ------
    UsageError
        When neither is given in full.
    """
    if values.has("points" + end):
        rows = tuple(
            TablePoint(
                temperature=Quantity(value=t, unit="K"),
                resistance=Quantity(value=r, unit="ohm"),
            )
            for t, r in values.points("points" + end)
        )
        return ResistanceTable(
            kind="resistance_table",
            id=role,
            name=role,
            role=role,
            tolerance=values.maybe("tolerance"),
            table="given",
            points=rows,
        )
    keys = tuple(key + end for key in ("r0", "t0", "beta"))
    if not all(values.has(key) for key in keys):
        raise UsageError(
            f"a sensor is told by points{end}, or by {', '.join(keys)}",
            f"give points{end}='20 °C: 25.0 kohm; 25 °C: 20.0 kohm'",
        )
    return BetaSensor(
        kind="beta",
        id=role,
        name=role,
        role=role,
        tolerance=values.maybe("tolerance"),
        r0=values.quantity(keys[0]),
        t0=values.quantity(keys[1]),
        beta=values.quantity(keys[2]),
    )


def drawn(values: Values) -> Curve:
    """Return a sensor's curve with the reading on it."""
    sensor = sensor_of(values, "sensor")
    at, read = values.maybe("temperature"), values.maybe("resistance")
    if at is None or read is None:
        return sensor_curve(sensor, *_whole(sensor, at, read))
    return sensor_curve(sensor, at.value, read.value)


def _whole(
    sensor: Sensor, at: Quantity | None, read: Quantity | None
) -> tuple[float | None, float | None]:
    """Return the point of the curve that one of both settles."""
    if at is not None:
        return at.value, expected_of(sensor, at.value).resistance
    if read is not None:
        return temperature_of(sensor, read.value), read.value
    return None, None


def sensor_voltage(values: Values) -> CheckReport:
    """Return the voltage expected of a sensor, and the verdict of a reading."""
    name, sensor = "sensor-voltage", sensor_of(values, "sensor")
    logic, fixed = values.quantity("logic"), values.quantity("fixed")
    to: Literal["ground", "supply"] = "ground"
    if values.word("sensor_to") == "supply":
        to = "supply"
    at = values.quantity("temperature")
    expected = expected_of(sensor, at.value).resistance
    volts = divider_voltage(expected, logic.value, fixed.value, to)
    if not values.has("reading"):
        return figure(name, DIVIDER, volts, "V")
    check = built(
        DividerCheck,
        "divider",
        name,
        sensor="sensor",
        logic=logic,
        fixed=fixed,
        sensor_to=to,
        points="as marked on the board",
    )
    reading = ReadingFor(value=values.quantity("reading"), at_temperature=at)
    context = told(values, board_on=BOARD_ON)
    verdict = judge(check, reading, sensor, context, values.meter())
    return from_verdict(name, verdict)


def two_sensors(values: Values) -> CheckReport:
    """Return by how much two sensors differ at one temperature."""
    name = "two-sensors"
    first = sensor_of(values, "first")
    second = sensor_of(values, "second", "_2" if _second_told(values) else "")
    check = built(
        TwoSensorsCheck,
        "two_sensors",
        name,
        sensors=("first", "second"),
        largest=values.quantity("largest"),
    )
    readings = tuple(
        (key, None if values.is_open(key) else values.quantity(key))
        for key in ("first", "second")
    )
    known = next((value for _, value in readings if value is not None), None)
    context = told(values, same=ONE_TEMPERATURE)
    reading = ReadingFor(value=known, set_of=readings, open_line=known is None)
    verdict = judge(check, reading, first, context, values.meter(), second=second)
    return from_verdict(name, verdict)


def _second_told(values: Values) -> bool:
    return any(values.has(key) for key in ("points_2", "r0_2", "t0_2", "beta_2"))


_TABLE = "20 °C: 25.0 kohm; 25 °C: 20.0 kohm"
_SENSOR = (
    Input("points", POINTS, _TABLE, "points of the document's table"),
    Input("r0", "resistance", "10 kohm", "resistance at t0, instead of points"),
    Input("t0", "temperature", "25 °C", "reference temperature"),
    Input("beta", "temperature", "3950 K", "B value"),
)
_SECOND = tuple(
    Input(item.name + "_2", item.dimension, item.example, f"of the second: {item.says}")
    for item in _SENSOR
)
_TOLERANCE = Input(
    "tolerance", "ratio", "5 %", "the document's tolerance of resistance"
)
_THREE = "-20 °C: 97060 ohm; 25 °C: 10000 ohm; 48 °C: 3889 ohm"

NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "thermistor-steinhart",
        "a second opinion on a sensor, through three of its points",
        STEINHART,
        (
            required("points", POINTS, _THREE, "three points of the table"),
            Input("resistance", "resistance", "5.3 kohm", "as read"),
            Input(
                "temperature",
                "temperature",
                "40 °C",
                "of the sensor",
                instead_of="resistance",
            ),
        ),
        steinhart,
    ),
    NamedCheck(
        "sensor-voltage",
        "voltage of a plugged-in sensor at the board",
        DIVIDER,
        (
            required("logic", "voltage", "5 V", "what feeds sensor and resistor"),
            required("fixed", "resistance", "10 kohm", "the board's own resistor"),
            required("temperature", "temperature", "25 °C", "at the sensor"),
            choice(
                "sensor_to",
                "where the sensor's other leg goes",
                "ground",
                "supply",
                default="ground",
            ),
            *_SENSOR,
            Input("reading", "voltage", "2.50 V", "to the board's logic ground"),
            _TOLERANCE,
            flag("board_on", "whether the board was powered"),
            *METER_INPUTS,
        ),
        sensor_voltage,
    ),
    NamedCheck(
        "two-sensors",
        "two sensors at one temperature against each other",
        TWO,
        (
            Input(
                "first",
                "resistance",
                "10.2 kohm",
                "read, unplugged",
                required=True,
                or_open=True,
            ),
            Input(
                "second",
                "resistance",
                "9.9 kohm",
                "read, unplugged",
                required=True,
                or_open=True,
            ),
            *_SENSOR,
            *_SECOND,
            required(
                "largest", "temperature difference", "2 K difference", "the document's"
            ),
            _TOLERANCE,
            flag("same", "whether both have stood at one temperature"),
            POWER_INPUT,
            *METER_INPUTS,
        ),
        two_sensors,
    ),
)
"""The checks of this family."""
