"""Which facts of a turn replace earlier ones, and by what they are replaced."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.dialogue.observations import overlay
from assistant.facts import (
    ContextFact,
    Fact,
    HappeningFact,
    LampFact,
    ReadingFact,
    ResetFact,
    TemperatureFact,
    UnitFact,
)
from assistant.jobs.events import Answered, Corrected, Entered, Said
from assistant.jobs.fold import Held, JobState
from assistant.rules.applicability import laid_over

COMPLETING = ("unit_of:", "time:", "temperature:")
"""Slots whose answer completes an earlier fact instead of adding one."""


KINDS = frozenset({"voltage", "resistance", "current", "temperature", "pressure"})
"""Measurands that name no point: only what kind of reading was meant."""


def corrections(state: JobState) -> tuple[Corrected, ...]:
    """Return the corrections that the present turn makes.

    Facts told with the act `correct`, and answers that complete an earlier fact,
    are laid over what they mend. A new fact that mends one is withdrawn itself, so
    that it does not count twice.
    """
    words = state.words
    if words is None or not _mends(words, state):
        return ()
    mended: list[Corrected] = []
    for held in state.told_now():
        old = _target(state.held, held)
        if old is None:
            continue
        mended.append(
            Corrected(event=held.event, index=held.index, fact=None),
        )
        mended.append(
            Corrected(event=old.event, index=old.index, fact=_laid_over(old, held))
        )
    return tuple(mended)


def _mends(words: Said | Answered | Entered, state: JobState) -> bool:
    if isinstance(words, Entered):
        return False
    slots = {held.answers for held in state.told_now()}
    completing = any(slot.startswith(COMPLETING) for slot in slots)
    return "correct" in words.acts or completing


def _target(held: Sequence[Held], new: Held) -> Held | None:
    """Find the latest earlier fact that the new one speaks of."""
    for old in reversed(held):
        if old.turn < new.turn and _same_thing(old.fact, new.fact):
            return old
    return None


def _same_thing(old: Fact, new: Fact) -> bool:
    match old, new:
        case ReadingFact(), ReadingFact():
            return new.of in ("", old.of) or _same_kind(old, new)
        case ReadingFact(), TemperatureFact():
            return old.at_temperature is None
        case UnitFact(), UnitFact():
            told = new.plate.model_dump(exclude_none=True).keys()
            return bool(told & old.plate.model_dump(exclude_none=True).keys())
        case ContextFact(), ContextFact():
            return old.name == new.name
        case HappeningFact(), HappeningFact():
            return old.trigger == new.trigger
        case ResetFact(), HappeningFact():
            return new.trigger in ("reset", "second_reset") and old.at is None
        case _:
            return old.kind == new.kind


def _same_kind(old: ReadingFact, new: ReadingFact) -> bool:
    """Say whether the new one names only what kind of reading is meant: "volts"."""
    both = old.value is not None and new.value is not None
    return both and new.of in KINDS and old.value.unit == new.value.unit  # type: ignore[union-attr]


def _laid_over(old: Held, new: Held) -> Fact:
    match old.fact, new.fact:
        case LampFact() as before, LampFact() as after:
            return _lamp(before, after)
        case ReadingFact() as before, ReadingFact() as after:
            return _reading(before, after)
        case ReadingFact() as before, TemperatureFact(value=value):
            return before.model_copy(update={"at_temperature": value})
        case UnitFact() as before, UnitFact() as after:
            plate = laid_over(before.plate, after.plate)
            return after.model_copy(update={"plate": plate})
        case ResetFact() as before, HappeningFact(at=at):
            return before.model_copy(update={"at": at})
        case _, after:
            return after


def _lamp(before: LampFact, after: LampFact) -> LampFact:
    kept = "correction" if after.observation.state in ("count", "blink") else ""
    seen = overlay(before.observation, after.observation, kept)
    return after.model_copy(update={"observation": seen})


def _reading(before: ReadingFact, after: ReadingFact) -> ReadingFact:
    told = {
        name: value
        for name in ("value", "at_temperature", "power_state", "at")
        if (value := getattr(after, name)) is not None
    }
    if after.value is not None or after.open_line:
        told |= {"readings_possible": (), "open_line": after.open_line}
    return before.model_copy(update={**told, "words": after.words or before.words})
