"""The words that the packs in force add to what the parser understands."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.checks.kinds import (
    LineCheck,
    LookCheck,
    SeveralReadings,
    ThermistorCheck,
)
from assistant.dialogue.several import points_of
from assistant.dialogue.view import View
from assistant.facts import ReadingFact
from assistant.jobs.fold import JobState
from assistant.language.vocabulary import Pending, Vocabulary
from assistant.rules.kinds import StopCall
from assistant.signals.cells import lamps_of
from assistant.signals.kinds import DisplayCode, Lamp, MainSubCode
from assistant.timing.stop_kinds import PerDevice, events_of
from assistant.units.show import format_quantity


def vocabulary(view: View) -> Vocabulary:
    """Collect models, lamps, sensors, checks and dangers named by the packs."""
    force = view.force
    lamps = _lamps(view)
    scopes = view.knowledge.scopes
    return Vocabulary(
        models=tuple(
            dict.fromkeys(
                pattern
                for pack in view.knowledge.packs
                for scope in pack.head.applies_to
                for pattern in scope.models
            )
        ),
        sensors=tuple((row.item.role, row.item.says) for row in force.sensors),
        checks=(
            *(
                (row.gid, (row.item.name, *row.item.says))
                for row in force.checks
                if not isinstance(row.item, ThermistorCheck)
                and (row.unit_match == "confirmed" or row.pack_kind != "maker")
            ),
            *((point, (point,)) for point in _points(view)),
        ),
        options=tuple(
            (row.gid, row.item.options)
            for row in force.checks
            if isinstance(row.item, LookCheck)
            and (row.unit_match == "confirmed" or row.pack_kind != "maker")
        ),
        labels=_names(
            (
                *(lamp.label for lamp in lamps),
                *(f"{lamp.role} light" for lamp in lamps if lamp.role),
            )
        ),
        boards=_names(lamp.board for lamp in lamps),
        colours=_names(lamp.colour for lamp in lamps),
        stop_phrases=tuple(
            (row.gid, row.item.phrases)
            for row in force.cautions
            if isinstance(row.item, StopCall)
        ),
        codes=tuple(
            dict.fromkeys(
                row.signal.code
                for row in force.signals
                if isinstance(row.signal, DisplayCode | MainSubCode)
            )
        ),
        protection_events=tuple(
            dict.fromkeys(name for row in force.stops for name in events_of(row.stop))
        ),
        devices=tuple(
            (name, row.stop.event)
            for row in force.stops
            if isinstance(row.stop, PerDevice)
            for name in row.stop.devices
        ),
        series=_names(scope.series for scope in scopes),
        families=_names(scope.family for scope in scopes),
        fittings=_names(
            part for scope in scopes for part in (*scope.fitted, *scope.not_fitted)
        ),
    )


def _points(view: View) -> tuple[str, ...]:
    """Return what the readings of checks with several of them are called."""
    return _names(
        point
        for row in view.force.checks
        if isinstance(row.item, SeveralReadings) and not isinstance(row.item, LineCheck)
        for point in points_of(row.item)
    )


def _names(names: Iterable[str | None]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(name for name in names if name))


def _lamps(view: View) -> tuple[Lamp, ...]:
    return tuple(lamp for row in view.force.signals for lamp in lamps_of(row.signal))


def pending(state: JobState) -> Pending | None:
    """Return the open question as the parser needs it."""
    readings = [held.fact for held in state.held if isinstance(held.fact, ReadingFact)]
    last = readings[-1] if readings else None
    asked = state.open_question.asked if state.open_question else None
    if asked is None and last is None:
        return None
    value = last.value if last else None
    return Pending(
        slot=asked.slot if asked else "",
        options=asked.options if asked else (),
        last_reading_of=last.of if last else None,
        last_reading=format_quantity(value) if value else "",
    )
