"""Which waits are in force: until when, counted from what happened.

Deadlines are instants in UTC. "Wait at least" counts from the latest believable
start, "not longer than" from the earliest; so neither is ever told too early.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import datetime, timedelta
from typing import Literal

from assistant.record import Mode
from assistant.timing.moment import Moment
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening, WaitRow, WaitState
from assistant.timing.wait_kinds.runs import OrderStep, StartUpOrder
from assistant.units.quantity import Quantity

State = Literal["running", "ready", "overdue", "start_unknown"]
PartTimes = tuple[str, datetime | None, datetime | None]

LISTED_FOR = timedelta(hours=1)
"""How long a wait that is over stays listed."""

IS_ALSO: Mapping[Trigger, Trigger] = {
    "second_reset": "reset",
    "first_start": "power_on",
    "power_restored": "power_on",
    "power_lost": "power_off",
}
"""What a happening counts as where its pack has no row for it by its own name."""
ALWAYS_ALSO: Mapping[Trigger, Trigger] = {"protection_stop": "compressor_stopped"}


def waits_in_force(
    rows: Sequence[WaitRow],
    happenings: Sequence[Happening],
    now: datetime,
    mode: Mode | None = None,
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

    Returns
    -------
    tuple of WaitState
        In the order of `rows`. A wait that has been over for an hour is not listed.
    """
    told = _with_second_resets(happenings)
    own = {(_pack(row), row.wait.trigger) for row in rows}
    states = []
    for row in rows:
        if mode is not None and row.wait.mode not in (None, mode):
            continue
        state = _state(row, told, own, now)
        if state is not None:
            states.append(state)
    return tuple(states)


def _pack(row: WaitRow) -> str:
    return row.gid.partition("/")[0]


def _with_second_resets(happenings: Sequence[Happening]) -> tuple[Happening, ...]:
    """Name every reset after the first a second one: documents ask for more then.

    The first is the earliest told with a time; without times, the first told.
    """
    resets = [one for one in happenings if one.trigger == "reset"]
    if not resets:
        return tuple(happenings)
    first = min(
        enumerate(resets),
        key=lambda entry: (
            entry[1].at is None,
            entry[1].at.latest.timestamp() if entry[1].at else 0,
            entry[0],
        ),
    )[1]
    return tuple(
        Happening("second_reset", one.at)
        if one.trigger == "reset" and one is not first
        else one
        for one in happenings
    )


def _state(
    row: WaitRow,
    told: Sequence[Happening],
    own: set[tuple[str, Trigger]],
    now: datetime,
) -> WaitState | None:
    counted, special = _counted(row, own)
    found, started, place = _last(told, counted)
    if not found:
        return None
    ended = _ended(told, row.wait.cancelled_by, started, place)
    if ended or _replaced(told, special, started, place):
        return None
    if started is None:
        return WaitState(row, None, None, None, None, "start_unknown")
    return _timed(row, started, now)


def _counted(
    row: WaitRow, own: set[tuple[str, Trigger]]
) -> tuple[set[Trigger], tuple[Trigger, ...]]:
    """Return the triggers that start a wait, and those whose own row replaces it."""
    wanted = row.wait.trigger
    counted = {wanted}
    counted.update(one for one, other in ALWAYS_ALSO.items() if other == wanted)
    special = []
    for one, other in IS_ALSO.items():
        if other == wanted and (_pack(row), one) in own:
            special.append(one)
        elif other == wanted:
            counted.add(one)
    return counted, tuple(special)


def _last(
    told: Sequence[Happening], counted: Iterable[Trigger]
) -> tuple[bool, Moment | None, int]:
    """Return whether any happened, when the last did, and its place in the telling.

    With overlapping times the last one lies between the latest of the earliest and
    the latest of the latest. A time not known that was told after all known ones
    leaves the last one unknown.
    """
    wanted = set(counted)
    placed = [(place, one) for place, one in enumerate(told) if one.trigger in wanted]
    if not placed:
        return False, None, -1
    last_place = placed[-1][0]
    if placed[-1][1].at is None:
        return True, None, last_place
    known = [(place, one.at) for place, one in placed if one.at is not None]
    latest = max(at.latest for _, at in known)
    place = max(place for place, at in known if at.latest == latest)
    return (
        True,
        Moment(earliest=max(at.earliest for _, at in known), latest=latest),
        place,
    )


def _ended(
    told: Sequence[Happening],
    enders: Sequence[Trigger],
    started: Moment | None,
    place: int,
) -> bool:
    """Return whether something ended the wait for certain after it started.

    At one and the same instant, and where a time is not known, the order told
    decides.
    """
    for number, one in enumerate(told):
        if one.trigger not in enders:
            continue
        if started is None or one.at is None or one.at == started:
            if number > place:
                return True
        elif one.at.earliest >= started.latest:
            return True
    return False


def _replaced(
    told: Sequence[Happening],
    special: Sequence[Trigger],
    started: Moment | None,
    place: int,
) -> bool:
    """Return whether a more special happening, with its own row, has taken over."""
    for number, one in enumerate(told):
        if one.trigger not in special:
            continue
        if started is None or one.at is None:
            taken = number > place
        elif one.at == started or one.at.earliest >= started.latest:
            taken = True
        else:
            taken = one.at.latest >= started.earliest and number > place
        if taken:
            return True
    return False


def _timed(row: WaitRow, started: Moment, now: datetime) -> WaitState | None:
    wait = row.wait
    earliest = _after(started.latest, wait.minimum)
    usual = _after(started.latest, wait.usual)
    give_up = _after(started.earliest, wait.give_up)
    if isinstance(wait, StartUpOrder) and not (earliest or usual or give_up):
        earliest, give_up = _whole_order(wait, started)
    over = earliest or usual or give_up
    if over is None:
        return WaitState(row, started, None, None, None, "running")
    state: State = "running"
    if now >= over and (earliest is not None or give_up is None or now > give_up):
        state = "overdue" if give_up is not None and now > give_up else "ready"
    end = max(over, give_up) if give_up is not None else over
    if state != "running" and now - end > LISTED_FOR:
        return None
    return WaitState(row, started, earliest, usual, give_up, state)


def _after(start: datetime, by: Quantity | None) -> datetime | None:
    return None if by is None else start + timedelta(seconds=by.value)


def _whole_order(
    wait: StartUpOrder, started: Moment
) -> tuple[datetime | None, datetime | None]:
    """Return when the last part runs at the soonest, and by when it should."""
    soonest = [time for _, time, _ in _parts(wait, _fixed(started.latest)) if time]
    slowest = [time for _, _, time in _parts(wait, started) if time]
    return max(soonest, default=None), max(slowest, default=None)


def _fixed(at: datetime) -> Moment:
    return Moment(earliest=at, latest=at)


def start_order(state: WaitState) -> tuple[PartTimes, ...]:
    """Return for each part of a start-up order when it starts, soonest and latest.

    Both are None where the start of the wait, or the part's own time, is not known;
    a wait that is no start-up order has no parts.
    """
    wait = state.row.wait
    if not isinstance(wait, StartUpOrder):
        return ()
    if state.started is None:
        return tuple((step.part, None, None) for step in wait.order)
    return _parts(wait, state.started)


def _parts(wait: StartUpOrder, started: Moment) -> tuple[PartTimes, ...]:
    times: dict[str, tuple[datetime | None, datetime | None]] = {
        "trigger": (started.earliest, started.latest)
    }
    for step in wait.order:
        soonest, latest = times.get(step.after, (None, None))
        times[step.part] = (_soonest(step, soonest), _latest(step, latest))
    return tuple((step.part, *times[step.part]) for step in wait.order)


def _soonest(step: OrderStep, base: datetime | None) -> datetime | None:
    if base is None or step.earliest is None:
        return base
    return base + timedelta(seconds=step.earliest.value)


def _latest(step: OrderStep, base: datetime | None) -> datetime | None:
    if base is None or step.latest is None:
        return None
    return base + timedelta(seconds=step.latest.value)
