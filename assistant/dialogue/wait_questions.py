"""What is asked so that a wait can be told: when it began, which length, what value."""

from __future__ import annotations

from collections.abc import Iterable

from assistant.dialogue import replies
from assistant.dialogue.answer import Question
from assistant.dialogue.trigger_words import TIME_QUESTIONS
from assistant.dialogue.view import View
from assistant.timing.lengths import OFF_BEFORE
from assistant.timing.triggers import Trigger
from assistant.timing.values import WaitState
from assistant.timing.wait_kinds.frost import Defrost
from assistant.timing.wait_kinds.starts import RestartDelay, StartDelay

SEVERAL = 2


def wait_questions(view: View) -> Iterable[Question]:
    """Yield what is open about waits, the beginning first."""
    yield from _when_it_began(view)
    for state in view.waits:
        if len(state.choices) >= SEVERAL:
            yield _which_length(state)
    for state in view.waits:
        yield from _which_value(view, state)


def _when_it_began(view: View) -> Iterable[Question]:
    triggers: list[Trigger] = [
        state.row.wait.trigger
        for state in view.waits_shown
        if state.state == "start_unknown"
    ]
    triggers += _ends_of_defrost(view)
    # A reset of unknown time also powers the unit up: asking for it settles both.
    resets_first = sorted(triggers, key=lambda trigger: "reset" not in trigger)
    for trigger in dict.fromkeys(resets_first):
        yield Question(text=TIME_QUESTIONS[trigger], slot=f"time:{trigger}")


def _ends_of_defrost(view: View) -> list[Trigger]:
    """Return the end of a defrost, where what follows it needs its time."""
    ends = [one for one in view.happenings if one.trigger == "defrost_ended"]
    follows = any(
        isinstance(row.wait, Defrost) and (row.wait.after or row.wait.interval)
        for row in view.force.waits
    )
    return ["defrost_ended"] if ends and ends[-1].at is None and follows else []


def _which_length(state: WaitState) -> Question:
    """Ask what decides between the lengths that a wait may have."""
    match state.row.wait:
        case StartDelay():
            text = replies.CONTEXT_QUESTIONS[OFF_BEFORE]
            slot = f"context:{OFF_BEFORE}"
            return Question(text=text, splits=("yes", "no"), slot=slot)
        case RestartDelay():
            return Question(text=replies.ATTEMPT_QUESTION, slot="attempt")
        case _:
            return Question(text=replies.STOP_NUMBER_QUESTION, slot="attempt")


def _which_value(view: View, state: WaitState) -> Iterable[Question]:
    """Ask when a value came back, or what it is once the time is over.

    A wait for a value alone is asked about only where the person asked how long.
    """
    if state.latched == "cannot_tell":
        yield Question(text=TIME_QUESTIONS["value_back"], slot="time:value_back")
    until = state.usual or state.earliest
    early = until > view.now if until else "ask_wait" not in view.acts
    if state.state != "running" or early or not view.works_inside:
        return
    for one in state.open_values:
        if one.told is None:
            sensor = one.condition.sensor
            text = replies.VALUE_QUESTION.format(sensor=sensor)
            yield Question(text=text, slot=f"reading:{sensor}")
