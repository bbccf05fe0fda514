"""The functions behind the named checks: values in, a report out."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from assistant.checks.bus import STANDBY, standby_band, standby_bus
from assistant.checks.comparing import because, compare
from assistant.checks.inputs import Values
from assistant.checks.judge import judge
from assistant.checks.kinds import (
    BetaSensor,
    BusCheck,
    Outcome,
    ResistanceTable,
    Sensor,
    SupplyCheck,
    TablePoint,
    ThermistorCheck,
)
from assistant.checks.reading import ReadingFor, meter_for
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.supply import BAND, SAG, band, sag
from assistant.checks.thermistor import (
    BETA,
    TABLE,
    resistance_beta,
    resistance_from_table,
    temperature_beta,
    temperature_from_table,
)
from assistant.checks.uncertainty import GUARD, METER, expanded, guarded, meter_bound
from assistant.errors import UsageError
from assistant.units.quantity import Quantity

_OUTCOMES = (Outcome(result="pass", says="in the band"),)


def _reading(values: Values, name: str, at: str = "", supply: str = "") -> ReadingFor:
    word = values.word("power")
    power: Literal["off", "live"] | None = None
    if word is not None:
        power = "off" if word == "off" else "live"
    return ReadingFor(
        value=values.maybe(name),
        at_temperature=values.maybe(at) if at else None,
        supply=values.maybe(supply) if supply else None,
        power_state=power,
    )


def _thermistor(name: str, sensor: Sensor, values: Values) -> CheckReport:
    check = ThermistorCheck(
        kind="thermistor",
        id=name,
        name=name,
        needs="power_off",
        minutes=1,
        allowed_for=("technician",),
        ask="",
        outcomes=_OUTCOMES,
        sensor=sensor.id,
    )
    reading = _reading(values, "resistance", at="temperature")
    report = from_verdict(name, judge(check, reading, sensor, {}, values.meter()))
    if reading.power_state is None:
        report = replace(report, reason=because(report.reason, "say power=off if so"))
    return report


def thermistor_beta(values: Values) -> CheckReport:
    """Return resistance, temperature, or the verdict of both, by R0, T0 and B."""
    r0, t0, beta = (values.number(key) for key in ("r0", "t0", "beta"))
    name, temperature, resistance = _either(values, "thermistor-beta")
    if temperature is not None and resistance is not None:
        sensor = BetaSensor(
            kind="beta",
            id=name,
            name=name,
            role="sensor",
            tolerance=values.maybe("tolerance"),
            r0=values.quantity("r0"),
            t0=values.quantity("t0"),
            beta=values.quantity("beta"),
        )
        return _thermistor(name, sensor, values)
    formula, source = BETA.formula, BETA.source
    if temperature is not None:
        value = resistance_beta(temperature, r0, t0, beta)
        return CheckReport(name, value, "ohm", formula=formula, source=source)
    value = temperature_beta(resistance or 0.0, r0, t0, beta)
    return CheckReport(name, value, "K", formula=formula, source=source)


def thermistor_table(values: Values) -> CheckReport:
    """Return resistance, temperature, or the verdict of both, by stated points."""
    points = values.points("points")
    name, temperature, resistance = _either(values, "thermistor-table")
    if temperature is not None and resistance is not None:
        rows = tuple(
            TablePoint(
                temperature=Quantity(value=t, unit="K"),
                resistance=Quantity(value=r, unit="ohm"),
            )
            for t, r in points
        )
        sensor = ResistanceTable(
            kind="resistance_table",
            id=name,
            name=name,
            role="sensor",
            tolerance=values.maybe("tolerance"),
            table="given",
            points=rows,
        )
        return _thermistor(name, sensor, values)
    formula, source = TABLE.formula, TABLE.source
    if temperature is not None:
        value = resistance_from_table(temperature, points)
        return CheckReport(name, value, "ohm", formula=formula, source=source)
    value = temperature_from_table(resistance or 0.0, points)
    return CheckReport(name, value, "K", formula=formula, source=source)


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


def supply_voltage(values: Values) -> CheckReport:
    """Return the band of a supply voltage, and the verdict of a reading."""
    name = "supply-voltage"
    nominal, tolerance = values.quantity("nominal"), values.quantity("tolerance")
    low, high = band(nominal.value, tolerance.value)
    if not values.has("reading"):
        return CheckReport(
            name,
            nominal.value,
            "V",
            low,
            high,
            formula=BAND.formula,
            source=BAND.source,
        )
    check = SupplyCheck(
        kind="supply_voltage",
        id=name,
        name=name,
        needs="live",
        minutes=1,
        allowed_for=("technician",),
        ask="",
        outcomes=_OUTCOMES,
        nominal=nominal,
        tolerance=tolerance,
    )
    reading = _reading(values, "reading")
    return from_verdict(name, judge(check, reading, None, {}, values.meter()))


def standby_bus_voltage(values: Values) -> CheckReport:
    """Return the bus expected in standby, and the verdict of a reading."""
    name, supply = "standby-bus", values.number("supply")
    tolerance = values.quantity("tolerance")
    low, high = standby_band(supply, tolerance.value)
    if not values.has("reading"):
        return CheckReport(
            name,
            standby_bus(supply),
            "V",
            low,
            high,
            formula=STANDBY.formula,
            source=STANDBY.source,
        )
    check = BusCheck(
        kind="standby_bus",
        id=name,
        name=name,
        needs="live",
        minutes=1,
        allowed_for=("technician",),
        ask="",
        outcomes=_OUTCOMES,
        tolerance=tolerance,
        points="as marked on the board",
    )
    reading = _reading(values, "reading", supply="supply")
    return from_verdict(name, judge(check, reading, None, {}, values.meter()))


def supply_sag(values: Values) -> CheckReport:
    """Return how far the supply falls at start, against the largest allowed."""
    name, rest, start = "supply-sag", values.number("rest"), values.number("start")
    fall = sag(rest, start)
    if not values.has("largest"):
        return CheckReport(name, fall, "V", formula=SAG.formula, source=SAG.source)
    bounds, assumed = [], ""
    for value in (rest, start):
        fitted, assumed = meter_for(values.meter(), value, "V")
        resolution = fitted.resolution.value
        bounds.append(meter_bound(value, fitted.percent, fitted.digits, resolution))
    u, largest = expanded(*bounds), values.number("largest")
    result, reason = compare(fall, None, largest, u, "V")
    return CheckReport(
        name,
        fall,
        "V",
        high=largest,
        result=result,
        reason=because(reason, assumed),
        formula=SAG.formula,
        source=SAG.source,
        uncertainty=u,
    )


def meter_error(values: Values) -> CheckReport:
    """Return the largest error of a reading, with the range it leaves."""
    reading, resolution = values.quantity("reading"), values.quantity("resolution")
    _same_unit(reading, resolution, "resolution")
    percent, digits = values.number("percent") * 100, values.number("digits")
    bound = meter_bound(reading.value, percent, digits, resolution.value)
    return CheckReport(
        "meter-bound",
        bound,
        reading.unit,
        reading.value - bound,
        reading.value + bound,
        formula=METER.formula,
        source=METER.source,
        uncertainty=expanded(bound),
    )


def guard_band(values: Values) -> CheckReport:
    """Return the verdict of a reading against limits, guarded by U."""
    reading = values.quantity("reading")
    low, high = values.maybe("low"), values.maybe("high")
    u, told = values.maybe("u"), values.meter()
    for other, name in ((low, "low"), (high, "high"), (u, "u")):
        if other is not None:
            _same_unit(reading, other, name)
    if low is None and high is None:
        raise UsageError("a guard band needs a limit", "give low='207 V' or high=…")
    fitted, note = meter_for(told, reading.value, reading.unit)
    spec = (fitted.percent, fitted.digits, fitted.resolution.value)
    wide = expanded(meter_bound(reading.value, *spec)) if u is None else u.value
    floor, ceiling = (None if end is None else end.value for end in (low, high))
    result = guarded(reading.value, floor, ceiling, wide)
    compared, reason = compare(reading.value, floor, ceiling, wide, reading.unit)
    if compared != result:
        reason = "too close to call: the band is narrower than twice the uncertainty"
    return CheckReport(
        "guard-band",
        reading.value,
        reading.unit,
        floor,
        ceiling,
        result=result,
        reason=because(reason, "" if u is not None else note),
        formula=GUARD.formula,
        source=GUARD.source,
        uncertainty=wide,
    )


def _same_unit(reading: Quantity, other: Quantity, name: str) -> None:
    if other.unit != reading.unit:
        raise UsageError(
            f"{name}={other.text!r} is not in the unit of reading={reading.text!r}",
            "give both in volts, both in ohms, or both in amperes",
        )
