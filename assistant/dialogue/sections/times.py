"""Cards for a moment of the call: the first minute, and before a reset."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.dialogue.answer import Statement
from assistant.dialogue.sections.said import rule
from assistant.dialogue.view import View
from assistant.facts import LampFact
from assistant.rules.kinds import Card


def card_steps(view: View, when: str) -> Iterator[Statement]:
    """Say the steps of every card for this moment."""
    for row in view.force.procedures:
        if isinstance(row.item, Card) and row.item.when == when:
            for step in row.item.steps:
                yield rule(view, row.gid, step)


def first_minute(view: View) -> Iterator[Statement]:
    """Show the card for the first minute on site, in the first turn of a job.

    Where the lamps were already reported it is too late for it.
    """
    told = any(isinstance(held.fact, LampFact) for held in view.state.held)
    if view.state.turn == 1 and not told:
        yield from card_steps(view, "first_minute")
