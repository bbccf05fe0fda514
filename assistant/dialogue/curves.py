"""The curves that the readings of a job lie on. Pure."""

from __future__ import annotations

from assistant.checks.charge_rules import PRESSURE, TEMPERATURE
from assistant.checks.curve import Curve, saturation_curve, sensor_curve
from assistant.checks.judge_charge import pressure_of
from assistant.checks.kinds import ChargeCheck, Check, ThermistorCheck
from assistant.checks.saturation import Side
from assistant.dialogue.several import sets_told
from assistant.dialogue.view import View
from assistant.facts import ReadingFact
from assistant.jobs.events import CheckDone
from assistant.rules.inforce import Row
from assistant.units.quantity import Quantity

Drawn = tuple[CheckDone, Curve]
"""A result with the curve that its reading lies on."""


def curves(view: View) -> tuple[Drawn, ...]:
    """Return the results that still count and have a curve, the last one last."""
    last = {done.check: done for done in view.state.checks}
    found = []
    for done in view.state.checks:
        curve = _curve(view, done) if last[done.check] is done else None
        if curve is not None:
            found.append((done, curve))
    return tuple(found)


def _curve(view: View, done: CheckDone) -> Curve | None:
    row = view.force.check(done.check)
    if row is None:
        return None
    try:
        if isinstance(row.item, ThermistorCheck):
            return _sensor(view, row, done)
        if isinstance(row.item, ChargeCheck):
            return _charge(view, row.item, done)
    except ValueError:
        # Outside what the curve is stated for, as the verdict says in words.
        return None
    return None


def _sensor(view: View, row: Row[Check], done: CheckDone) -> Curve | None:
    sensor = view.force.sensor_of(row)
    fact = _fact(view, done)
    at = None if fact is None else fact.at_temperature
    if sensor is None or at is None or done.value is None:
        return None
    return sensor_curve(sensor.item, at.value, done.value)


def _charge(view: View, check: ChargeCheck, done: CheckDone) -> Curve | None:
    told = next((one for one in sets_told(view) if one.row.gid == done.check), None)
    readings: dict[str, Quantity | None] = dict(told.readings) if told else {}
    pressure = readings.get(PRESSURE[check.kind])
    line = readings.get(TEMPERATURE[check.kind])
    if pressure is None or line is None or done.value is None:
        return None
    side: Side = "bubble" if check.kind == "subcooling" else "dew"
    absolute, _ = pressure_of(pressure, None)
    return saturation_curve(check.refrigerant, side, line.value, absolute)


def _fact(view: View, done: CheckDone) -> ReadingFact | None:
    """Return the reading that a result rests on."""
    for held in view.state.held:
        if held.address == done.of and isinstance(held.fact, ReadingFact):
            return held.fact
    return None
