"""Waits and the cards of the first minute, as data and as lines."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.dialogue import time_replies
from assistant.dialogue.answer import Statement, WaitShown
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.view import View
from assistant.facts import LampFact
from assistant.rules.kinds import Card
from assistant.timing.kinds import StartUpOrder
from assistant.timing.values import WaitRow, WaitState
from assistant.timing.waits import start_order


def waits(view: View) -> tuple[WaitShown, ...]:
    """Return the waits in force as data."""
    return tuple(_wait(view, state) for state in view.waits_shown)


def _wait(view: View, state: WaitState) -> WaitShown:
    return WaitShown(
        id=state.row.gid,
        name=state.row.wait.name,
        started=state.started.latest if state.started else None,
        earliest=state.earliest,
        usual=state.usual,
        give_up=state.give_up,
        state=state.state,
        sources=view.cite(state.row.gid),
    )


def wait_lines(view: View) -> Iterator[Statement]:
    """Say what is running, what is over, and by which rule."""
    for state in view.waits_shown:
        gid = state.row.gid
        if state.state in ("ready", "overdue") and not _news(view, gid):
            continue
        text = time_replies.waiting(state, view.utc_offset)
        yield computed(text, view.cite(gid))
        if state.state == "start_unknown":
            yield rule(view, gid, time_replies.wait_rule(state))
        if isinstance(state.row.wait, StartUpOrder):
            yield rule(view, gid, time_replies.order_of_start(state.row.wait.order))
            parts = time_replies.times_of_start(start_order(state), view.utc_offset)
            if parts:
                yield computed(parts, view.cite(gid))


def _news(view: View, gid: str) -> bool:
    """Say whether the end of a wait is news, or was asked for."""
    noted = dict(view.state.timers_due)
    told = noted.get(gid, view.state.turn) == view.state.turn
    return told or "ask_wait" in view.acts


def wait_rules(view: View, row: WaitRow) -> Iterator[Statement]:
    """Say a wait's rule where nothing has started it yet."""
    state = WaitState(row, None, None, None, None, "start_unknown")
    yield rule(view, row.gid, time_replies.wait_rule(state))


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
