"""Waits as data and as lines: what runs, what is over, what was judged too early."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.dialogue import wait_replies
from assistant.dialogue.answer import (
    Statement,
    WaitChoice,
    WaitCondition,
    WaitPart,
    WaitShown,
)
from assistant.dialogue.sections.said import computed, rule
from assistant.dialogue.view import View
from assistant.dialogue.wait_rule_words import (
    needs_hands_inside,
    order_of_start,
    value_words,
    wait_rule,
)
from assistant.language.wait_subjects import wait_subjects
from assistant.rules.inforce import resolve
from assistant.signals.kinds import Signal
from assistant.timing.defrosts import after_defrost, entry_parts
from assistant.timing.off_times import judge_off_times
from assistant.timing.start_order import parts_now, start_order
from assistant.timing.values import WaitRow, WaitState
from assistant.timing.wait_kinds.frost import Defrost
from assistant.timing.wait_kinds.runs import StartUpOrder

PARTS = {
    "compressor": "compressor running",
    "outdoor fan": "outdoor fan running",
    "indoor fan": "indoor fan running",
}
"""Part of a start-up order to the yes-or-no that tells of it."""
COMMON = 2
"""Rank of rules that are common practice."""


def waits(view: View) -> tuple[WaitShown, ...]:
    """Return the waits in force as data."""
    return tuple(_wait(view, state) for state in view.waits_shown)


def _wait(view: View, state: WaitState) -> WaitShown:
    wait = state.row.wait
    signal = _lamp(view, state.row)
    bypass = bool(wait.bypass and wait.bypass_side_effect and view.works_inside)
    return WaitShown(
        id=state.row.gid,
        name=wait.name,
        started=state.started.latest if state.started else None,
        earliest=state.earliest,
        usual=state.usual,
        give_up=state.give_up,
        state=state.state,
        sources=view.cite(state.row.gid),
        kind=wait.kind,
        latched=state.latched,
        conditions=tuple(
            WaitCondition(text=value_words(one.condition), met=one.met)
            for one in state.conditions
        ),
        either=wait.logic == "or",
        choices=tuple(
            WaitChoice(text=one.words, over=one.over) for one in state.choices
        ),
        parts=tuple(
            WaitPart(
                part=one.part,
                soonest=one.soonest,
                latest=one.latest,
                standing=one.standing,
            )
            for one in parts_now(state, view.now)
        ),
        unsaid=state.unsaid,
        bypass=wait.bypass if bypass else None,
        bypass_side_effect=wait.bypass_side_effect if bypass else None,
        lamp_during=signal.meaning if signal else None,
    )


def wait_lines(view: View) -> Iterator[Statement]:
    """Say what is running, what is over, and by which rule."""
    undecided = [state for state in view.waits_shown if _by_a_protection(state)]
    if len(undecided) > 1:
        yield _one_of(view, undecided)
    for state in view.waits_shown:
        gid = state.row.gid
        if len(undecided) > 1 and state in undecided:
            continue
        if state.state in ("ready", "overdue") and not _news(view, state):
            continue
        yield computed(
            wait_replies.waiting(
                state, view.utc_offset, view.now, inside=view.works_inside
            ),
            view.cite(gid),
        )
        if state.state == "start_unknown":
            yield rule(view, gid, wait_rule(state.row.wait, inside=view.works_inside))
        if isinstance(state.row.wait, StartUpOrder):
            yield from _order_lines(view, state, state.row.wait)
        yield from _lamp_lines(view, state)
    yield from _clock_lines(view)
    yield from _ended_lines(view)
    yield from _after_lines(view)
    yield from _off_time_lines(view)
    yield from _entry_lines(view)


def _by_a_protection(state: WaitState) -> bool:
    """Say whether a wait is for the stop of a protection that was not named."""
    return bool(state.row.wait.stopped_by) and bool(state.unsaid)


def _one_of(view: View, states: Sequence[WaitState]) -> Statement:
    """Name waits of which the protection that stopped the unit chooses one."""
    waits = [(str(state.row.wait.stopped_by), state.row.wait.name) for state in states]
    sources = [source for state in states for source in view.cite(state.row.gid)]
    return computed(wait_replies.one_of(waits), tuple(dict.fromkeys(sources)))


def _clock_lines(view: View) -> Iterator[Statement]:
    """Say that a clock was set while waits ran, as soon as it shows or when asked."""
    steps = view.state.clock_steps
    if not steps or not view.waits:
        return
    if steps[-1].turn >= view.state.turn - 1 or "ask_wait" in view.acts:
        yield computed(wait_replies.clock_was_set(steps[-1].seconds))


def _ended_lines(view: View) -> Iterator[Statement]:
    """Name the waits that something told in this turn has ended."""
    still = {state.row.gid for state in view.waits}
    for state in view.waits_before:
        if state.row.gid not in still:
            text = wait_replies.ENDED.format(name=state.row.wait.name)
            yield computed(text, view.cite(state.row.gid))


def _order_lines(
    view: View, state: WaitState, wait: StartUpOrder
) -> Iterator[Statement]:
    gid = state.row.gid
    yield rule(view, gid, order_of_start(wait))
    times = wait_replies.times_of_start(start_order(state), view.utc_offset)
    if times:
        yield computed(times, view.cite(gid))
    told = {
        part: running
        for part, name in PARTS.items()
        if (running := view.context(name)) is not None
    }
    if state.started is not None:
        parts = parts_now(state, view.now)
        yield computed(
            wait_replies.order_now(parts, view.utc_offset, told), view.cite(gid)
        )


def _lamp_lines(view: View, state: WaitState) -> Iterator[Statement]:
    """Say that the lamp of a running wait is no fault, where its row says so."""
    signal = _lamp(view, state.row)
    if signal is None or signal.is_fault or state.state != "running":
        return
    if _newly_begun(view, state) or "ask_wait" in view.acts:
        yield rule(view, state.row.gid, wait_replies.lamp_meanwhile(signal.meaning))


def _newly_begun(view: View, state: WaitState) -> bool:
    """Say whether what started the wait, or a lamp, was told in this turn."""
    trigger = state.row.wait.trigger
    told = [held.fact for held in view.state.told_now()]
    return view.told_lamp_now or any(
        getattr(fact, "trigger", None) == trigger for fact in told
    )


def _lamp(view: View, row: WaitRow) -> Signal | None:
    if row.wait.lamp_during is None:
        return None
    gid = resolve(row.wait.lamp_during, row.gid)
    return next((one.signal for one in view.force.signals if one.gid == gid), None)


def _news(view: View, state: WaitState) -> bool:
    """Say whether the end of a wait is news, or was asked for."""
    gid = state.row.gid
    noted = dict(view.state.timers_due)
    told = noted.get(gid, view.state.turn) == view.state.turn
    told = told or "ask_wait" in view.acts or state.latched is not None
    return told or _told_of_parts(view, state)


def _told_of_parts(view: View, state: WaitState) -> bool:
    """Say whether this turn told of a part of a start-up order: running or not."""
    names = {getattr(held.fact, "name", None) for held in view.state.told_now()}
    return isinstance(state.row.wait, StartUpOrder) and bool(
        names & set(PARTS.values())
    )


def _after_lines(view: View) -> Iterator[Statement]:
    """Say what follows a defrost that was told to be over."""
    for one in after_defrost(view.force.waits, view.happenings):
        gid = one.row.gid
        times = wait_replies.times_of_start(one.parts, view.utc_offset)
        if times and any(late is None or late >= view.now for _, _, late in one.parts):
            yield computed(wait_replies.AFTER_DEFROST + times, view.cite(gid))
        if one.next_at is not None and one.next_at > view.now:
            soonest = wait_replies.clock(one.next_at, view.utc_offset)
            yield computed(wait_replies.NEXT_DEFROST.format(at=soonest), view.cite(gid))


def _off_time_lines(view: View) -> Iterator[Statement]:
    """Judge an off-time in the turn in which it was told, or when asked for."""
    told = any(
        getattr(held.fact, "trigger", None) in _POWER for held in view.state.told_now()
    )
    if told or "ask_wait" in view.acts:
        for one in judge_off_times(view.force.waits, view.happenings):
            yield computed(wait_replies.off_time(one), view.cite(one.row.gid))


_POWER = frozenset(
    {"power_on", "power_off", "power_lost", "power_restored", "lamp_dark"}
)


def _entry_lines(view: View) -> Iterator[Statement]:
    """Say which conditions of a defrost are met, where defrost was asked about."""
    if "ask_wait" not in view.acts or "defrost" not in view.text.casefold():
        return
    for row in view.force.waits:
        wait = row.wait
        if isinstance(wait, Defrost) and wait.entry is not None:
            parts = entry_parts(wait.entry, view.known.values)
            yield computed(wait_replies.entry_now(parts), view.cite(row.gid))


def asked_rules(view: View) -> Iterator[Statement]:
    """Say the rules of the waits that were asked about and that nothing has started.

    A question that names no kind is about every wait, where none is in force.
    """
    subjects = wait_subjects(view.text)
    shown = {state.row.gid for state in view.waits_shown}
    if shown and not subjects:
        return
    for row in view.force.waits:
        wanted = row.wait.kind in subjects if subjects else not shown
        if wanted and row.gid not in shown and _sure(view, row):
            yield from wait_rules(view, row)


def _sure(view: View, row: WaitRow) -> bool:
    """Say whether a rule is for this unit; what is common practice is for any."""
    return row.unit_match == "confirmed" or view.force.rank(row.gid) == COMMON


def wait_rules(view: View, row: WaitRow) -> Iterator[Statement]:
    """Say a wait's rule where nothing has started it yet."""
    if needs_hands_inside(row.wait) and not view.works_inside:
        return
    yield rule(view, row.gid, wait_rule(row.wait, inside=view.works_inside))
    if isinstance(row.wait, StartUpOrder):
        yield rule(view, row.gid, order_of_start(row.wait))
