"""What held while a reading was taken: each reading belongs to a state of its own."""

from __future__ import annotations

from assistant.dialogue.view import View
from assistant.facts import ContextFact, ReadingFact
from assistant.jobs.fold import Held


def context_at(view: View, name: str, reading: Held) -> bool | None:
    """Return what was so while a reading was taken; None when it is not known.

    What was told with it or before it counts, and not what changed afterwards. A plain
    yes or no to the question about it counts first: "power is off now" is no answer
    for a reading taken before. Where nothing was told before, the
    first thing told after it is taken to be about it.

    Parameters
    ----------
    view : View
        The job.
    name : str
        A yes-or-no about the unit.
    reading : Held
        The reading.
    """
    told = [
        (held, held.fact.value)
        for held in view.facts
        if isinstance(held.fact, ContextFact) and held.fact.name == name
    ]
    answered = [
        value
        for held, value in told
        if held.turn > reading.turn
        and held.answers == f"context:{name}"
        and _is_plain(held)
        and _last_reading_before(view, held.turn) == reading.turn
    ]
    if answered:
        return answered[-1]
    before = [value for held, value in told if held.turn <= reading.turn]
    if before:
        return before[-1]
    return told[0][1] if told else None


def _is_plain(held: Held) -> bool:
    return len(held.fact.words.split()) == 1


def _last_reading_before(view: View, turn: int) -> int:
    return max(
        (
            held.turn
            for held in view.facts
            if isinstance(held.fact, ReadingFact) and held.turn < turn
        ),
        default=-1,
    )
