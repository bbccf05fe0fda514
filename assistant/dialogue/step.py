"""The pure heart of a conversation: one event in, a new situation and effects out.

A turn runs through its stages: words or entered facts come in; corrections are
noted; readings get their results, each noted; the literature is searched; the answer
is composed, its question noted before it is shown. Same events, same library, same
packs: same answer, to the byte.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from assistant.dialogue.answer import Answer
from assistant.dialogue.compose import compose, wants_literature
from assistant.dialogue.corrections import corrections
from assistant.dialogue.diagnosing import slot_of
from assistant.dialogue.judging import results
from assistant.dialogue.knowledge import Knowledge
from assistant.dialogue.view import View
from assistant.facts import BypassFact, HazardFact
from assistant.jobs.events import (
    Answered,
    Asked,
    Body,
    Entered,
    Event,
    Found,
    Said,
    TimerDue,
    Undone,
)
from assistant.jobs.fold import JobState, fold

Stage = Literal["idle", "mending", "judging", "searching", "closing"]
SHORTEST_QUERY = 2
"""Words a text needs to be worth a search."""


@dataclass(frozen=True, slots=True)
class Note:
    """Append this to the job."""

    body: Body


@dataclass(frozen=True, slots=True)
class SearchFor:
    """Search the literature for these words, in what applies to the unit."""

    query: str


@dataclass(frozen=True, slots=True)
class Reply:
    """Show this answer: everything it rests on is noted."""

    answer: Answer


Effect = Note | SearchFor | Reply


@dataclass(frozen=True, slots=True)
class Situation:
    """A job in the middle of a turn."""

    state: JobState
    knowledge: Knowledge
    stage: Stage = "idle"
    outstanding: int = 0
    """Notes that this stage still waits to see appended."""
    answer: Answer | None = None


def step(situation: Situation, event: Event) -> tuple[Situation, tuple[Effect, ...]]:
    """Take one event in.

    Parameters
    ----------
    situation : Situation
        After all earlier events.
    event : Event
        The next event of the job.

    Returns
    -------
    situation, effects
        What to do now, in order. Effects of kind `Note` and `SearchFor` come back as
        events; a turn ends with a `Reply`.
    """
    situation = replace(situation, state=fold(situation.state, event))
    if isinstance(event.body, Said | Answered | Entered):
        return _take_in(situation)
    if situation.stage == "searching" and isinstance(event.body, Found):
        return _close(situation)
    if situation.outstanding > 1:
        return replace(situation, outstanding=situation.outstanding - 1), ()
    if situation.outstanding == 1:
        return _go_on(replace(situation, outstanding=0))
    return situation, ()


def present(situation: Situation) -> Answer:
    """Compute the answer as it stands, without a new turn."""
    return compose(_view(situation))


def _view(situation: Situation) -> View:
    now = situation.state.now
    if now is None:
        raise ValueError("a job without events has no view")
    return View(situation.state, situation.knowledge, now)


def _take_in(situation: Situation) -> tuple[Situation, tuple[Effect, ...]]:
    notes: list[Effect] = [Note(body) for body in newly_due(_view(situation))]
    notes.extend(Note(body) for body in _undone(situation.state))
    notes.extend(Note(body) for body in corrections(situation.state))
    if notes:
        return _noting(situation, "mending", notes)
    return _judge(situation)


def newly_due(view: View) -> tuple[TimerDue, ...]:
    """Return the waits that came to their end and were not noted yet."""
    return tuple(
        TimerDue(wait=state.row.gid, due=over)
        for state in view.waits
        if (over := state.usual or state.earliest or state.give_up) is not None
        and state.state in ("ready", "overdue")
        and (state.row.gid, over) not in view.state.ends_noted
    )


def _noting(
    situation: Situation, stage: Stage, notes: list[Effect]
) -> tuple[Situation, tuple[Effect, ...]]:
    return replace(situation, stage=stage, outstanding=len(notes)), tuple(notes)


def _undone(state: JobState) -> tuple[Undone, ...]:
    """Withdraw the facts of the turn before, where the words ask for it."""
    words = state.words
    if not isinstance(words, Said | Answered) or "undo" not in words.acts:
        return ()
    earlier = [held.event for held in state.held if held.turn < state.turn]
    return (Undone(event=earlier[-1]),) if earlier else ()


def _go_on(situation: Situation) -> tuple[Situation, tuple[Effect, ...]]:
    if situation.stage == "mending":
        return _judge(situation)
    if situation.stage == "judging":
        return _search(situation)
    answer = situation.answer
    done = replace(situation, stage="idle", answer=None)
    return done, (Reply(answer),) if answer is not None else ()


def _judge(situation: Situation) -> tuple[Situation, tuple[Effect, ...]]:
    notes: list[Effect] = [Note(done) for done in results(_view(situation))]
    if notes:
        return _noting(situation, "judging", notes)
    return _search(situation)


def _search(situation: Situation) -> tuple[Situation, tuple[Effect, ...]]:
    query = _query(situation.state)
    if query is None or not wants_literature(_view(situation)):
        return _close(situation)
    return replace(situation, stage="searching"), (SearchFor(query),)


def _query(state: JobState) -> str | None:
    """Return what to search for; an answer to a question is no search."""
    words = state.words
    if not isinstance(words, Said):
        return None
    if {"off_topic", "greet", "undo"} & set(words.acts):
        return None
    told = state.told_now()
    if any(isinstance(held.fact, HazardFact | BypassFact) for held in told):
        return None
    return words.text if len(words.text.split()) >= SHORTEST_QUERY else None


def _close(situation: Situation) -> tuple[Situation, tuple[Effect, ...]]:
    view = _view(situation)
    answer = compose(view)
    asked = _asked(view, answer)
    if asked is None:
        return replace(situation, stage="idle"), (Reply(answer),)
    closing = replace(situation, answer=answer)
    return _noting(closing, "closing", [Note(asked)])


def _asked(view: View, answer: Answer) -> Asked | None:
    """Return what is asked: the question, else the next check's own."""
    if answer.question is not None:
        question = answer.question
        return Asked(slot=question.slot, text=question.text, options=question.splits)
    check = answer.next_check
    row = view.force.check(check.id) if check else None
    if check is None or row is None:
        return None
    options = getattr(row.item, "options", ())
    return Asked(slot=slot_of(row), text=check.ask, options=options)
