"""Which waits are in force: until when, counted from what happened.

Deadlines are instants in UTC. "Wait at least" counts from the latest believable
start, "not longer than" from the earliest; so neither is ever told too early.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, timedelta

from assistant.record import Mode
from assistant.timing.conditions import conditions_since, satisfied
from assistant.timing.latches import latch
from assistant.timing.lengths import choices
from assistant.timing.moment import Moment
from assistant.timing.off_times import was_off_for
from assistant.timing.start_order import whole_order
from assistant.timing.started import (
    Own,
    counted,
    ended,
    last_of,
    of_its_protection,
    own_triggers,
    replaced,
    second_within,
    stopped_by_it,
    with_second_resets,
)
from assistant.timing.values import (
    NOTHING_KNOWN,
    Choice,
    Happening,
    Known,
    Standing,
    WaitRow,
    WaitState,
)
from assistant.timing.wait_kinds.holds import Standby
from assistant.timing.wait_kinds.runs import StartUpOrder
from assistant.timing.wait_kinds.starts import Preheat
from assistant.units.quantity import Quantity

LISTED_FOR = timedelta(hours=1)
"""How long a wait that is over stays listed."""
LISTED_FOR_VALUE = timedelta(hours=24)
"""How long one stays listed whose time is over, but whose value was not told."""


def waits_in_force(
    rows: Sequence[WaitRow],
    happenings: Sequence[Happening],
    now: datetime,
    mode: Mode | None = None,
    known: Known = NOTHING_KNOWN,
) -> tuple[WaitState, ...]:
    """Return each wait that something has started and nothing has ended.

    Parameters
    ----------
    rows : sequence of WaitRow
        The waits that apply to the unit.
    happenings : sequence of Happening
        What happened, in the order told; a time may be unknown.
    now : datetime
        The instant asked about.
    mode : Mode, optional
        The unit's mode; a wait written for another one is left out.
    known : Known
        What else was said: attempts, yes-or-no, values read.

    Returns
    -------
    tuple of WaitState
        In the order of `rows`. A wait that has been over for an hour is not listed.
    """
    told = with_second_resets(happenings)
    own = own_triggers(rows, told)
    states = []
    for row in rows:
        if mode is not None and row.wait.mode not in (None, mode):
            continue
        state = _state(row, told, own, now, known)
        if state is not None:
            states.append(state)
    return tuple(states)


def _state(
    row: WaitRow, told: Sequence[Happening], own: Own, now: datetime, known: Known
) -> WaitState | None:
    starts, special = counted(row, own)
    told = of_its_protection(row, told)
    found, started, place = last_of(told, starts)
    if not found or _ruled_out(row, told, known):
        return None
    if replaced(told, special, started, place):
        return None
    state = _begun(row, told, started, place, now, known)
    return replace(state, unsaid=_unsaid(row, told, known)) if state else None


def _begun(
    row: WaitRow,
    told: Sequence[Happening],
    started: Moment | None,
    place: int,
    now: datetime,
    known: Known,
) -> WaitState | None:
    wait = row.wait
    if isinstance(wait, Standby) and wait.latches and started is not None:
        return _latching(row, wait, told, (started, place), now, known)
    if ended(told, wait.enders, started, place):
        return None
    if started is None:
        states = conditions_since(wait, None, ())
        open_choices = choices(row, known, told)
        return WaitState(
            row, None, None, None, None, "start_unknown", states, open_choices
        )
    return _timed(row, started, now, known, choices(row, known, told))


def _latching(
    row: WaitRow,
    wait: Standby,
    told: Sequence[Happening],
    start: tuple[Moment, int],
    now: datetime,
    known: Known,
) -> WaitState | None:
    started, place = start
    held = latch(wait, told, started, place, now)
    if held == "ended":
        return None
    state = _timed(row, started, now, known, ())
    if state is not None and (held == "open" or state.state == "ready"):
        return state
    give_up = _after(started.earliest, wait.give_up)
    values = conditions_since(wait, started, known.values)
    return WaitState(
        row,
        started,
        None,
        None,
        give_up,
        "overdue",
        values,
        latched="yes" if held == "yes" else "cannot_tell",
    )


def _ruled_out(row: WaitRow, told: Sequence[Happening], known: Known) -> bool:
    """Return whether something said rules the wait out."""
    said = [known.said.get(need) for need in row.wait.only_when]
    if False in said or second_within(row, told) is False:
        return True
    return _warmed_long_enough(row, told) is False


def _unsaid(row: WaitRow, told: Sequence[Happening], known: Known) -> tuple[str, ...]:
    """Return what must hold for the wait to run, and was not said."""
    needs: list[str] = [
        need for need in row.wait.only_when if known.said.get(need) is None
    ]
    if second_within(row, told) is None:
        needs.append("soon after the first reset")
    if _warmed_long_enough(row, told) is None:
        needs.append("off long enough before")
    if stopped_by_it(row, told) is None:
        needs.append(f"stopped by {row.wait.stopped_by}")
    return tuple(needs)


def _warmed_long_enough(row: WaitRow, told: Sequence[Happening]) -> bool | None:
    wait = row.wait
    if not isinstance(wait, Preheat) or wait.after_off_for is None:
        return True
    return was_off_for(told, wait.after_off_for)


def _timed(
    row: WaitRow,
    started: Moment,
    now: datetime,
    known: Known,
    lengths: tuple[Choice, ...],
) -> WaitState | None:
    wait = row.wait
    earliest = _after(started.latest, wait.minimum)
    usual = _after(started.latest, wait.usual)
    give_up = _after(started.earliest, wait.give_up)
    if isinstance(wait, StartUpOrder) and not (earliest or usual or give_up):
        earliest, give_up = whole_order(wait, started)
    if lengths:
        lengths = tuple(
            replace(one, over=_after(started.latest, one.length)) for one in lengths
        )
        earliest = max((one.over for one in lengths if one.over), default=None)
        usual = None
    state = WaitState(
        row,
        started,
        earliest,
        usual,
        give_up,
        "running",
        conditions_since(wait, started, known.values),
        lengths,
    )
    if lengths and all(one.length is None for one in lengths):
        return replace(state, state="overdue", latched="yes")
    return _judged(state, now)


def _judged(state: WaitState, now: datetime) -> WaitState | None:
    """Say whether the wait runs, is over or overdue; None where it is long over."""
    over = state.earliest or state.usual or state.give_up
    if over is None and not state.conditions:
        return state
    standing = _standing(state, now)
    ends = [one for one in (state.earliest or state.usual, state.give_up) if one]
    listed = LISTED_FOR_VALUE if standing == "running" else LISTED_FOR
    if ends and now - max(ends) > listed:
        return None
    return replace(state, state=standing)


def _standing(state: WaitState, now: datetime) -> Standing:
    if state.give_up is not None and now > state.give_up and not _value_came(state):
        return "overdue"
    time_up = state.earliest or state.usual
    passed = time_up is not None and now >= time_up
    if not state.conditions:
        return "ready" if passed else "running"
    met = satisfied(state.conditions, state.row.wait.logic)
    if state.row.wait.logic == "or":
        return "ready" if passed or met else "running"
    return "ready" if met and (passed or time_up is None) else "running"


def _value_came(state: WaitState) -> bool:
    """Return whether the wait is for values only, and they came."""
    timed = state.earliest or state.usual
    came = bool(state.conditions) and satisfied(state.conditions, state.row.wait.logic)
    return came and timed is None


def _after(start: datetime, by: Quantity | None) -> datetime | None:
    return None if by is None else start + timedelta(seconds=by.value)
