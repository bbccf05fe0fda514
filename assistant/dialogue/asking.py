"""The one question asked back, chosen in a fixed order of importance."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass

from assistant.checks.kinds import ChargeCheck
from assistant.checks.reading import AT_PORT
from assistant.dialogue import claims, replies, signal_replies, stop_replies
from assistant.dialogue.answer import Question
from assistant.dialogue.diagnosing import Diagnosis
from assistant.dialogue.judging import readings
from assistant.dialogue.sections.resets import reset_questions
from assistant.dialogue.sections.signals import shown_in_turn
from assistant.dialogue.view import View
from assistant.dialogue.wait_questions import wait_questions
from assistant.facts import ComplaintFact, LampFact, ReadingFact, UnitFact
from assistant.timing.stop_kinds import events_of
from assistant.units.show import format_quantity

ASKED_AT_MOST = 2
"""A question that brought nothing twice is not put a third time."""


@dataclass(frozen=True, slots=True)
class Asking:
    """What questions are chosen from."""

    view: View
    diagnosis: Diagnosis
    locked: bool

    @property
    def checks(self) -> tuple[str, ...]:
        """Checks that were done."""
        return tuple(done.check for done in self.diagnosis.done)


def next_question(view: View, diagnosis: Diagnosis, *, locked: bool) -> Question | None:
    """Return the most important question that is open and still worth asking.

    The order: which of two readings was meant; which unit; what splits the decode;
    what else a display shows in turn; what a wait needs; what tells whether a reset
    took or a count stands; what a verdict still needs; what the lamp does (before any
    reset); who is at the unit.
    """
    asking = Asking(view, diagnosis, locked)
    order: tuple[Callable[[Asking], Iterable[Question]], ...] = (
        _which_reading,
        _how_exactly,
        _which_unit,
        _what_splits,
        _what_else_shows,
        _about_waits,
        _which_protection,
        _how_it_was_reset,
        _what_lay_between,
        _what_is_missing,
        _what_the_lamp_does,
        _who_is_there,
    )
    for source in order:
        for question in source(asking):
            if _worth_asking(view, question.slot):
                return question
    return None


def _worth_asking(view: View, slot: str) -> bool:
    asked = sum(1 for earlier in view.state.asked if earlier.slot == slot)
    return slot not in view.state.declined and asked < ASKED_AT_MOST


def _which_reading(asking: Asking) -> Iterable[Question]:
    for reading in readings(asking.view):
        fact = reading.fact
        if fact.value is None and fact.readings_possible:
            yield Question(
                text=replies.ambiguous(fact.of, fact.readings_possible),
                splits=tuple(format_quantity(q) for q in fact.readings_possible),
                slot=f"unit_of:{fact.of}",
            )


def _how_exactly(asking: Asking) -> Iterable[Question]:
    """Ask for the figure of a reading that was told only roughly."""
    exact: set[str] = set()
    for held in reversed(asking.view.facts):
        fact = held.fact
        if not isinstance(fact, ReadingFact):
            continue
        if fact.rough and fact.of not in exact:
            near = tuple(format_quantity(q) for q in fact.rough)
            text = replies.exactly(fact.of, near)
            yield Question(text=text, slot=f"reading:{fact.of}")
        exact.add(fact.of)


def _which_unit(asking: Asking) -> Iterable[Question]:
    view = asking.view
    pairs = claims.touched(view, asking.checks)
    deciding = claims.deciding(view, pairs)
    for item in deciding:
        answers = claims.options(view, pairs, item)
        yield Question(
            text=replies.deciding(deciding, answers),
            splits=answers or deciding,
            slot=f"unit:{item}",
        )
    named = view.plate.outdoor_model or view.plate.indoor_model
    if named is None and _something_to_decide(view):
        yield Question(text=replies.UNIT_QUESTION, splits=_families(view), slot="unit")


def _something_to_decide(view: View) -> bool:
    """Say whether a lamp, a call, a reading or a wait makes the unit matter."""
    told = any(
        isinstance(held.fact, LampFact | ComplaintFact | ReadingFact | UnitFact)
        for held in view.state.held
    )
    return told or bool(view.waits) or bool(view.stops)


def _families(view: View) -> tuple[str, ...]:
    patterns = [
        pattern
        for pack in view.knowledge.packs
        for scope in pack.head.applies_to
        for pattern in scope.models
    ]
    return tuple(dict.fromkeys(patterns))


def _what_splits(asking: Asking) -> Iterable[Question]:
    match = asking.view.match
    if match is not None and match.question is not None and asking.view.observations:
        yield Question(
            text=replies.split_question(match.question),
            splits=tuple(option for option, _ in match.question.options),
            slot=match.question.slot,
        )


def _what_else_shows(asking: Asking) -> Iterable[Question]:
    if shown_in_turn(asking.view):
        yield Question(text=signal_replies.CODES_QUESTION, slot="codes")


def _about_waits(asking: Asking) -> Iterable[Question]:
    return wait_questions(asking.view)


def _which_protection(asking: Asking) -> Iterable[Question]:
    """Ask which protection stopped it, where several count and none was named."""
    view = asking.view
    unnamed = any(one.event is None for one in view.stops_told.stops)
    if unnamed and not view.stops_touched and len(view.force.stops) > 1:
        yield Question(
            text=stop_replies.WHICH_PROTECTION,
            splits=tuple(
                dict.fromkeys(
                    name for row in view.force.stops for name in events_of(row.stop)
                )
            ),
            slot="stop_event",
        )


def _how_it_was_reset(asking: Asking) -> Iterable[Question]:
    return reset_questions(asking.view)


def _what_lay_between(asking: Asking) -> Iterable[Question]:
    """Ask what settles a count in a row, or of one call."""
    for count in asking.view.stops:
        name = stop_replies.settled_by(count)
        if name is not None and asking.view.context(name) is None:
            yield Question(
                text=replies.CONTEXT_QUESTIONS[name],
                splits=("yes", "no"),
                slot=f"context:{name}",
            )


def _what_is_missing(asking: Asking) -> Iterable[Question]:
    for done in asking.diagnosis.unsettled:
        for name in done.missing:
            text = replies.CONTEXT_QUESTIONS.get(name)
            if name.startswith("reading "):
                point = name.removeprefix("reading ")
                yield Question(text=replies.point(point), slot=f"reading:{point}")
            if name.startswith("mode "):
                yield Question(text=replies.MODE_QUESTION, slot="mode")
            if name == AT_PORT:
                text = _port_question(asking.view, done.check) or text
            if text is None:
                continue
            slot = {
                "temperature at the sensor": f"temperature:{done.check}",
                "temperature at the coil": f"temperature:{done.check}",
                "mains at the terminals": "reading:supply",
            }.get(name, f"context:{name}")
            yield Question(text=text, slot=slot)


def _port_question(view: View, gid: str) -> str | None:
    """Name the port that a charge check is stated for."""
    row = view.force.check(gid)
    if row is None or not isinstance(row.item, ChargeCheck):
        return None
    return replies.gauge_port(row.item.port)


def _what_the_lamp_does(asking: Asking) -> Iterable[Question]:
    view = asking.view
    if asking.locked and not view.observations:
        yield Question(text=replies.EVIDENCE_QUESTION, slot="state")
    complained = any(isinstance(held.fact, ComplaintFact) for held in view.state.held)
    lamps = any(isinstance(held.fact, LampFact) for held in view.state.held)
    if complained and not lamps:
        yield Question(text=replies.LAMP_QUESTION, slot="state")


def _who_is_there(asking: Asking) -> Iterable[Question]:
    diagnosis = asking.diagnosis
    if asking.view.state.role is None and diagnosis.held_back is not None:
        yield Question(
            text=replies.ROLE_QUESTION,
            splits=("customer", "maintenance", "technician", "licensed technician"),
            slot="role",
        )
