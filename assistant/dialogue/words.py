"""Words as the event that holds them: an answer to the open question, or a new turn."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from assistant.checks.kinds import Meter
from assistant.errors import UsageError
from assistant.facts import (
    AttemptFact,
    ContextFact,
    HappeningFact,
    LampFact,
    LookFact,
    ProtectionStopFact,
    ReadingFact,
    ResetDetailFact,
    ResetFact,
    RoleFact,
    TemperatureFact,
    Understood,
    UnitFact,
)
from assistant.jobs.events import Answered, Said
from assistant.jobs.fold import JobState, Open
from assistant.language.understand import PARSER_VERSION

LONGEST_TEXT = 10_000
ANSWERS_SLOT: Mapping[str, tuple[type, ...]] = {
    "unit": (UnitFact,),
    "role": (RoleFact,),
    "time": (HappeningFact, ResetFact),
    "attempt": (AttemptFact,),
    "context": (ContextFact,),
    "look": (LookFact,),
    "unit_of": (ReadingFact,),
    "reading": (ReadingFact,),
    "temperature": (ReadingFact, TemperatureFact),
    "reset_which": (ResetFact,),
    "reset_by": (ResetDetailFact, ResetFact),
    "off_time": (ResetDetailFact, ResetFact),
    "stop_event": (ProtectionStopFact, LampFact),
}
"""Which facts answer a slot; every other slot is answered by a lamp."""


def checked(text: str) -> str:
    """Return the text without outer white space.

    Raises
    ------
    UsageError
        Nothing was said, or more than `LONGEST_TEXT` characters.
    """
    told = text.strip()
    if not told:
        raise UsageError("nothing was said", "Say what the unit does or shows.")
    if len(told) > LONGEST_TEXT:
        raise UsageError(
            f"the text has {len(told)} characters; at most {LONGEST_TEXT} are read",
            "Say it in a few sentences.",
        )
    return told


def with_meter(understood: Understood, meter: Meter | None) -> Understood:
    """Return what was understood, its readings taken with a meter."""
    if meter is None:
        return understood
    facts = tuple(
        fact.model_copy(update={"meter": meter})
        if isinstance(fact, ReadingFact) and fact.meter is None
        else fact
        for fact in understood.facts
    )
    return understood.model_copy(update={"facts": facts})


def told(state: JobState, text: str, understood: Understood) -> Said | Answered:
    """Say whether the words answer the open question or start afresh."""
    question = state.open_question
    if question is not None:
        outcome = _outcome(question, understood)
        if outcome is not None:
            return Answered(
                question=question.event,
                text=text,
                facts=understood.facts,
                acts=understood.acts,
                left_over=understood.left_over,
                outcome=outcome,
                parser=PARSER_VERSION,
            )
    return Said(
        text=text,
        facts=understood.facts,
        acts=understood.acts,
        left_over=understood.left_over,
        parser=PARSER_VERSION,
    )


def _outcome(
    question: Open, understood: Understood
) -> Literal["facts", "dont_know", "skip"] | None:
    slot = question.asked.slot.partition(":")[0]
    kinds = ANSWERS_SLOT.get(slot, (LampFact,))
    if any(isinstance(fact, kinds) for fact in understood.facts):
        return "facts"
    if understood.facts:
        return None
    if "dont_know" in understood.acts:
        return "dont_know"
    return "skip" if "skip" in understood.acts else None
