"""Resets: how a lockout ends, and whether one that was done took."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from assistant.dialogue import reset_replies
from assistant.dialogue.answer import Question, Statement
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.sections.times import card_steps
from assistant.dialogue.stops_told import resets_told
from assistant.dialogue.view import View
from assistant.facts import ResetDetailFact, ResetFact
from assistant.timing.stop_events import resets_of_tiers, takings_of
from assistant.timing.stop_kinds import Levels, Reset
from assistant.timing.stop_values import StopRow, Taking

_SAYS_LITTLE = ("other_reset", "lamp_only", "which_unknown", "order")
"""Reasons that say nothing where it is not known what was locked."""
_QUESTIONS = {
    "which_unknown": "reset_by",
    "supplies_unknown": "context:supplies off together",
}


def reset_lines(view: View, *, locked: bool) -> Iterator[Statement]:
    """Word the resets of what is locked, the record of what is seen first."""
    if not locked:
        return
    if view.role == "customer":
        yield computed(reset_replies.RESET_FOR_TECHNICIAN)
        return
    steps = tuple(card_steps(view, "before_reset"))
    yield from steps or (computed(reset_replies.EVIDENCE_FIRST),)
    said: set[str] = set()
    for row in _locking(view):
        for text in _worded(view, row):
            if text not in said:
                said.add(text)
                yield rule(view, row.gid, text)


def _worded(view: View, row: StopRow) -> Iterator[str]:
    levels = getattr(row.stop, "levels", ())
    for number, resets in enumerate(resets_of_tiers(row.stop)):
        if number + 1 not in _levels(view, row):
            continue
        of = levels[number].name if levels else ""
        orders = sorted({reset.order for reset in resets})
        for reset in sorted(resets, key=lambda one: one.order):
            step = orders.index(reset.order) + 1 if len(orders) > 1 else 0
            yield reset_replies.reset_step(reset, of=of, step=step)


def _levels(view: View, row: StopRow) -> tuple[int, ...]:
    """Return the levels that may be locked: by count, by the lamp, else all."""
    for count in view.stops:
        if count.row.gid == row.gid and count.state != "open":
            return count.levels
    every = tuple(range(1, len(resets_of_tiers(row.stop)) + 1))
    if not isinstance(row.stop, Levels) or view.match is None:
        return every
    pack = row.gid.partition("/")[0]
    shown = {candidate.row.gid for candidate in view.match.candidates}
    by_lamp = tuple(
        number
        for number, level in enumerate(row.stop.levels, start=1)
        if level.signal and f"{pack}/{level.signal}" in shown
    )
    return by_lamp or every


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


def taken_lines(view: View) -> Iterator[Statement]:
    """Say whether the reset told or spoken of in this turn took."""
    now = view.state.told_now()
    spoken = any(isinstance(held.fact, ResetFact | ResetDetailFact) for held in now)
    answered = any(held.answers == "context:supplies off together" for held in now)
    if not (spoken or answered):
        return
    said: set[str] = set()
    told_of = _told_of(view)
    for row, taking in _last_takings(view):
        if not told_of and taking.why in _SAYS_LITTLE:
            continue
        text = reset_replies.reset_taken(taking)
        if text not in said:
            said.add(text)
            yield computed(text, view.cite(row.gid))


def _last_takings(view: View) -> Iterator[tuple[StopRow, Taking]]:
    """Yield what the last reset came to, for each counter that it matters to."""
    for row in _touched(view):
        by_level = takings_of(row.stop, view.stops_told)
        levels = _levels(view, row) if isinstance(row.stop, Levels) else (1,)
        for level in levels:
            if level and by_level[level - 1]:
                yield row, by_level[level - 1][-1]


def _touched(view: View) -> tuple[StopRow, ...]:
    """Return the counters told of, or that the lamp points to; else the unit's own."""
    named = _told_of(view)
    rows = tuple(row for row in view.force.stops if row.gid in named)
    sure = tuple(row for row in view.force.stops if row.unit_match == "confirmed")
    return rows or sure


def _told_of(view: View) -> frozenset[str]:
    return view.stops_touched | set(view.stops_of_decode)


def reset_questions(view: View) -> Iterable[Question]:
    """Ask what would tell whether the last reset took."""
    if not resets_told(view.state):
        return
    for _, taking in _last_takings(view):
        if taking.took != "maybe" or taking.reset is None:
            continue
        yield from _question(taking, taking.reset)


def _question(taking: Taking, reset: Reset) -> Iterator[Question]:
    match taking.why:
        case "which_unknown":
            yield Question(text=reset_replies.WHICH, slot=_QUESTIONS[taking.why])
        case "supplies_unknown":
            yield Question(
                text=reset_replies.SUPPLIES,
                splits=("yes", "no"),
                slot=_QUESTIONS[taking.why],
            )
        case "off_unknown":
            since = reset.counted_from
            yield Question(text=reset_replies.HOW_LONG[since], slot=f"off_time:{since}")
        case _:
            return
