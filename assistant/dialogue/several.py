"""Checks that are judged from several readings: which readings a job has for one."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.checks.charge_rules import PRESSURE, TEMPERATURE
from assistant.checks.kinds import (
    ChargeCheck,
    FanPinsCheck,
    LineCheck,
    SeveralReadings,
    SplitCheck,
    TwoSensorsCheck,
)
from assistant.checks.reading import HEADER, RETURN_AIR, SUPPLY_AIR, WET_BULB
from assistant.dialogue.at_reading import context_at
from assistant.dialogue.view import View
from assistant.facts import ReadingFact
from assistant.jobs.fold import Held
from assistant.rules.inforce import Row
from assistant.units.quantity import Quantity

ENOUGH = 2
"""Points told before a set that nobody asked for is spoken of."""
_SUPPLY_PAIR = "l1 to l2"


@dataclass(frozen=True, slots=True)
class Told:
    """The readings a job has for one check, the last one told among them."""

    row: Row[SeveralReadings]
    last: Held
    fact: ReadingFact
    readings: tuple[tuple[str, Quantity | None], ...]
    header: bool | None = None
    """For pins: whether the header was unplugged while the supplies were read."""


def points_of(check: SeveralReadings) -> tuple[str, ...]:
    """Return what the readings of a check are called; none for two sensors.

    Sensors are told by their roles, which the pack's sensors know.
    """
    match check:
        case FanPinsCheck():
            return (*(pin.name for pin in check.pins), check.command.name)
        case LineCheck():
            return (check.points,)
        case ChargeCheck():
            return (PRESSURE[check.kind], TEMPERATURE[check.kind])
        case SplitCheck():
            return (RETURN_AIR, SUPPLY_AIR, WET_BULB)
        case TwoSensorsCheck():
            return ()
        case _:
            return check.points


def _points_in_force(view: View, row: Row[SeveralReadings]) -> tuple[str, ...]:
    if not isinstance(row.item, TwoSensorsCheck):
        return points_of(row.item)
    check = view.force.check(row.gid)
    sensors = view.force.sensors_of(check) if check else ()
    return tuple(sensor.item.role for sensor in sensors)


def sets_told(view: View) -> tuple[Told, ...]:
    """Return each check of several readings that the job has readings for."""
    found = []
    for row in view.force.checks:
        if isinstance(row.item, SeveralReadings):
            told = _told(view, Row(
                row.gid, row.item, row.unit_match, row.pack_kind, row.pack_id
            ))  # fmt: skip
            found += [told] if told else []
    return tuple(found)


def _told(view: View, row: Row[SeveralReadings]) -> Told | None:
    points = _points_in_force(view, row)
    held = [
        one
        for one in view.facts
        if isinstance(one.fact, ReadingFact) and _is_for(row, points, one.fact)
    ]
    header = None
    if isinstance(row.item, FanPinsCheck):
        held, header = _supplies_unplugged(view, row.item, held)
    asked = any(one.answers == f"reading:{row.gid}" for one in held)
    readings = _named(row, points, held)
    wanted = 1 if isinstance(row.item, LineCheck) or asked else ENOUGH
    if len({name for name, _ in readings}) < wanted or not held:
        return None
    last = held[-1].fact
    assert isinstance(last, ReadingFact)  # noqa: S101 - chosen just above
    return Told(row, held[-1], last, readings, header)


def _supplies_unplugged(
    view: View, check: FanPinsCheck, held: list[Held]
) -> tuple[list[Held], bool | None]:
    """Leave out supplies read with the header plugged in, and say how they were read.

    The command is read plugged in, so its own reading says nothing of the header.
    """
    supplies = {pin.name.casefold() for pin in check.pins}
    states = {
        one.address: context_at(view, HEADER, one)
        for one in held
        if isinstance(one.fact, ReadingFact) and one.fact.of.casefold() in supplies
    }
    kept = [one for one in held if states.get(one.address) is not False]
    left = [states[one.address] for one in kept if one.address in states]
    if not left:
        return held, False if states else None
    return kept, True if all(left) else None


def _is_for(
    row: Row[SeveralReadings], points: tuple[str, ...], fact: ReadingFact
) -> bool:
    if fact.baseline or (fact.value is None and not fact.open_line):
        return False
    return fact.of == row.gid or _point(row, points, fact.of) is not None


def _point(row: Row[SeveralReadings], points: tuple[str, ...], of: str) -> str | None:
    """Return the point that a measurand names, whatever its case."""
    if isinstance(row.item, LineCheck):
        return points[0] if of == points[0] or of in row.item.says else None
    named = {point.casefold(): point for point in points}
    if of == "supply":
        return named.get(_SUPPLY_PAIR)
    return named.get(of.casefold())


def _named(
    row: Row[SeveralReadings], points: tuple[str, ...], held: list[Held]
) -> tuple[tuple[str, Quantity | None], ...]:
    """Name every reading; as many unnamed ones as points are taken in their order."""
    facts = [one.fact for one in held if isinstance(one.fact, ReadingFact)]
    unnamed = [fact for fact in facts if fact.of == row.gid]
    several = len(points) > 1
    in_order = (
        dict(zip(map(id, unnamed), points, strict=True))
        if several and len(unnamed) == len(points)
        else {}
    )
    readings = []
    for fact in facts:
        name = in_order.get(id(fact)) or _point(row, points, fact.of)
        if name is None and not several:
            name = points[0]
        if name is not None:
            readings.append((name, fact.value))
    return tuple(readings)
