"""Protection stops and resets, as data and as lines."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.dialogue import time_replies
from assistant.dialogue.answer import (
    CountRange,
    Statement,
    StopShown,
)
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.view import View
from assistant.facts import LampFact
from assistant.rules.kinds import Card
from assistant.timing.values import StopCount, StopRow


def stops(view: View) -> tuple[StopShown, ...]:
    """Return the protection-stop counters as data."""
    return tuple(_stop(view, count) for count in view.stops)


def _stop(view: View, count: StopCount) -> StopShown:
    return StopShown(
        id=count.row.gid,
        name=count.row.stop.name,
        count=CountRange(min=count.low, max=count.high),
        limit=count.limit,
        state=count.state,
        left=count.left,
        oldest_leaves=count.oldest_leaves,
        sources=view.cite(count.row.gid),
    )


def stop_lines(view: View) -> Iterator[Statement]:
    """Say how near a lockout the stops told are, and whether the lamp agrees."""
    for count in view.stops:
        yield computed(
            time_replies.counted(count, view.utc_offset), view.cite(count.row.gid)
        )
        match = view.match
        if count.state == "locked" and match is not None and match.verdict == "exact":
            signal = match.candidates[0].row.signal
            if not signal.latched:
                yield computed(time_replies.lockout_conflict(signal.meaning))


def reset_lines(view: View, *, locked: bool) -> Iterator[Statement]:
    """Word the resets of what is locked, the record of what is seen first."""
    if not locked:
        return
    if view.role == "customer":
        yield computed(time_replies.RESET_FOR_TECHNICIAN)
        return
    yield from _card_steps(view, "before_reset")
    said: set[str] = set()
    for row in _locking(view):
        for reset in sorted(row.stop.resets, key=lambda one: one.order):
            text = time_replies.reset_step(reset)
            if text not in said:
                said.add(text)
                yield rule(view, row.gid, text)


def _locking(view: View) -> tuple[StopRow, ...]:
    """Return the counters whose resets apply.

    Those that are locked or that the lamp points to; where there are none, those of
    the pack that the lamp's row stands in.
    """
    named = {count.row.gid for count in view.stops if count.state == "locked"}
    named |= set(view.stops_of_decode)
    rows = tuple(row for row in view.force.stops if row.gid in named)
    if rows or view.match is None:
        return rows
    packs = {one.row.gid.partition("/")[0] for one in view.match.candidates}
    return tuple(row for row in view.force.stops if row.gid.partition("/")[0] in packs)


def _card_steps(view: View, when: str) -> Iterator[Statement]:
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
        yield from _card_steps(view, "first_minute")
