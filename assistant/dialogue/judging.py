"""Readings and answers to looks become results of the pack's checks."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any, Literal

from assistant.checks.judge import ReadingFor, judge, requirements
from assistant.checks.kinds import (
    BandCheck,
    BusCheck,
    CapacitorCheck,
    Check,
    CoilCheck,
    DividerCheck,
    FanPinsCheck,
    InsulationCheck,
    LookCheck,
    Sensor,
    SeveralReadings,
    SupplyCheck,
    SwitchCheck,
    ThermistorCheck,
)
from assistant.checks.reading import CALL, HEADER
from assistant.checks.verdict import Verdict
from assistant.dialogue.at_reading import context_at
from assistant.dialogue.several import sets_told
from assistant.dialogue.view import View
from assistant.facts import LookFact, ReadingFact
from assistant.jobs.events import CheckDone
from assistant.jobs.fold import Held
from assistant.rules.inforce import Row
from assistant.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Reading:
    """A reading told, and the checks in force that it can answer."""

    held: Held
    fact: ReadingFact
    checks: tuple[Row[Check], ...]


def readings(view: View) -> tuple[Reading, ...]:
    """Return the readings that still count, with the checks each can answer."""
    return tuple(
        Reading(held, held.fact, checks_for(view, held, held.fact))
        for held in view.facts
        if isinstance(held.fact, ReadingFact) and not held.fact.baseline
    )


def checks_for(view: View, held: Held, fact: ReadingFact) -> tuple[Row[Check], ...]:
    """Return the checks that a reading is for: the one asked for, else by its words."""
    if held.answers.startswith("reading:"):
        asked = held.answers.partition(":")[2]
        rows = [row for row in view.force.checks if row.gid == asked]
        if rows and _fits(view, rows[0], fact):
            return tuple(rows)
    return tuple(row for row in view.force.checks if _fits(view, row, fact))


def _fits(view: View, row: Row[Check], fact: ReadingFact) -> bool:
    """Tell whether a reading is of what a check with one reading measures."""
    check = row.item
    if isinstance(check, SeveralReadings):
        return False
    if fact.of == row.gid:
        return True
    if isinstance(check, ThermistorCheck):
        return _sensor_role(view, row) == fact.of
    return fact.of in _measurands(check)


def _measurands(check: Check) -> tuple[str, ...]:
    match check:
        case DividerCheck():
            return (check.points, *check.says)
        case SupplyCheck():
            return ("supply",)
        case BusCheck():
            return ("bus",)
        case BandCheck():
            return check.says
        case CapacitorCheck():
            return ("capacitor", *check.says)
        case InsulationCheck() | CoilCheck() | SwitchCheck():
            return (check.points, *check.says)
        case _:
            return ()


def _sensor_role(view: View, row: Row[Check]) -> str | None:
    sensor = view.force.sensor_of(row)
    return sensor.item.role if sensor else None


def results(view: View) -> tuple[CheckDone, ...]:
    """Return every result that the facts now give and the job has not noted yet."""
    new = (*_judged(view), *_judged_sets(view), *_looked(view))
    noted = {(done.check, tuple(done.of)): done for done in view.state.checks}
    return tuple(
        done for done in new if noted.get((done.check, tuple(done.of))) != done
    )


def _judged(view: View) -> tuple[CheckDone, ...]:
    done: list[CheckDone] = []
    for reading in readings(view):
        if len({row.gid for row in reading.checks}) != 1 or not _whole(reading.fact):
            continue
        row = reading.checks[0]
        if _is_sag_of_other_reading(view, row, reading.fact):
            continue
        verdict = judge(
            row.item,
            _for_judge(view, reading),
            _sensor(view, row),
            _context(view, reading, row),
            reading.fact.meter,
        )
        done.append(_done(row.gid, reading.held, verdict))
    return tuple(done)


def _judged_sets(view: View) -> tuple[CheckDone, ...]:
    """Judge the checks that compare several readings, on the last one told."""
    done = []
    for told in sets_told(view):
        reading = Reading(told.last, told.fact, ())
        shown = replace(_for_judge(view, reading), set_of=told.readings)
        context = _context(view, reading, told.row)
        if isinstance(told.row.item, FanPinsCheck):
            context[HEADER] = told.header
        sensors = [sensor.item for sensor in view.force.sensors_of(told.row)]
        first, second = (*sensors, None, None)[:2]
        verdict = judge(
            told.row.item, shown, first, context, told.fact.meter, second=second
        )
        done.append(_done(told.row.gid, told.last, verdict))
    return tuple(done)


def _is_sag_of_other_reading(view: View, row: Row[Check], fact: ReadingFact) -> bool:
    """Say whether it is a supply under load, judged with the one without load."""
    return (
        isinstance(row.item, SupplyCheck)
        and fact.under_load
        and _other_supply(view, under_load=False) is not None
    )


def _whole(fact: ReadingFact) -> bool:
    return fact.value is not None or fact.open_line


def _sensor(view: View, row: Row[Check]) -> Sensor | None:
    sensor = view.force.sensor_of(row)
    return sensor.item if sensor else None


def _for_judge(view: View, reading: Reading) -> ReadingFor:
    fact = reading.fact
    return ReadingFor(
        value=fact.value,
        at_temperature=fact.at_temperature,
        supply=_other_supply(view, under_load=False),
        under_load=_other_supply(view, under_load=True),
        open_line=fact.open_line,
        power_state=_power_state(view, reading.held, fact),
    )


def _power_state(
    view: View, held: Held, fact: ReadingFact
) -> Literal["off", "live"] | None:
    if fact.power_state is not None:
        return fact.power_state
    off = context_at(view, "power off", held)
    if off is None:
        return None
    return "off" if off else "live"


def _other_supply(view: View, *, under_load: bool) -> Quantity | None:
    for held in reversed(view.facts):
        fact = held.fact
        if (
            isinstance(fact, ReadingFact)
            and fact.of == "supply"
            and fact.under_load == under_load
            and not fact.baseline
            and fact.value is not None
        ):
            return fact.value
    return None


def _context(view: View, reading: Reading, row: Row[Any]) -> dict[str, bool | None]:
    """Collect what must hold, as known: True, False or None."""
    fact = reading.fact
    state = _power_state(view, reading.held, fact)
    mains = context_at(view, "mains at the terminals", reading.held)
    if mains is None and _other_supply(view, under_load=False) is not None:
        mains = True
    told = {
        "power off": None if state is None else state == "off",
        "temperature at the sensor": True if fact.at_temperature else None,
        "mains at the terminals": mains,
    }
    needs = (*requirements(row.item), CALL)
    return {
        need: told[need] if need in told else _told(view, need, reading.held)
        for need in needs
    }


def _told(view: View, need: str, held: Held) -> bool | None:
    """Return what was said of a requirement: the mode, or a yes or no."""
    if need.startswith("mode "):
        return None if view.mode is None else need == f"mode {view.mode}"
    return context_at(view, need, held)


def _done(gid: str, held: Held, verdict: Verdict) -> CheckDone:
    return CheckDone(
        check=gid,
        result=verdict.result,
        of=held.address,
        reason=verdict.reason,
        value=verdict.value,
        expected=verdict.expected,
        low=verdict.low,
        high=verdict.high,
        unit=verdict.unit,
        formula=verdict.formula,
        missing=verdict.missing,
    )


def _looked(view: View) -> tuple[CheckDone, ...]:
    looks = {
        row.gid: row.item
        for row in view.force.checks
        if isinstance(row.item, LookCheck)
    }
    return tuple(
        CheckDone(check=fact.check, result=fact.answer, of=held.address)
        for held in view.facts
        if isinstance(fact := held.fact, LookFact)
        and fact.check in looks
        and fact.answer in looks[fact.check].options
    )
