"""Start-up orders: when each part starts, and which should be running by now."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Literal

from assistant.timing.moment import Moment
from assistant.timing.values import WaitState
from assistant.timing.wait_kinds.frost import Defrost
from assistant.timing.wait_kinds.runs import OrderStep, StartUpOrder

PartTimes = tuple[str, datetime | None, datetime | None]
PartStanding = Literal["not_yet", "may_run", "should_run", "unknown"]


@dataclass(frozen=True, slots=True)
class PartNow:
    """One part of an order, its times and how it should stand now."""

    part: str
    soonest: datetime | None
    latest: datetime | None
    standing: PartStanding


def start_order(state: WaitState) -> tuple[PartTimes, ...]:
    """Return for each part of a start-up order when it starts, soonest and latest.

    Both are None where the start of the wait, or the part's own time, is not known;
    a wait that is no start-up order has no parts.
    """
    wait = state.row.wait
    if not isinstance(wait, StartUpOrder):
        return ()
    return times_of(wait.order, state.started)


def times_of(
    steps: Sequence[OrderStep], started: Moment | None
) -> tuple[PartTimes, ...]:
    """Return when each part starts, soonest and latest, from an uncertain start."""
    if started is None:
        return tuple((step.part, None, None) for step in steps)
    times: dict[str, tuple[datetime | None, datetime | None]] = {
        "trigger": (started.earliest, started.latest)
    }
    for step in steps:
        soonest, latest = times.get(step.after, (None, None))
        times[step.part] = (_soonest(step, soonest), _latest(step, latest))
    return tuple((step.part, *times[step.part]) for step in steps)


def parts_now(state: WaitState, now: datetime) -> tuple[PartNow, ...]:
    """Return which parts should run by now, may run, or cannot run yet.

    ``should_run`` only past the latest time from the latest believable start;
    ``not_yet`` only before the soonest from the earliest.
    """
    return tuple(
        PartNow(part, soonest, latest, _standing(soonest, latest, now))
        for part, soonest, latest in _of(state)
    )


def _of(state: WaitState) -> tuple[PartTimes, ...]:
    wait = state.row.wait
    if isinstance(wait, Defrost) and state.state != "start_unknown":
        return ()
    return start_order(state)


def _standing(
    soonest: datetime | None, latest: datetime | None, now: datetime
) -> PartStanding:
    if latest is not None and now >= latest:
        return "should_run"
    if soonest is None:
        return "unknown"
    return "not_yet" if now < soonest else "may_run"


def whole_order(
    wait: StartUpOrder, started: Moment
) -> tuple[datetime | None, datetime | None]:
    """Return when the last part runs at the soonest, and by when it should."""
    fixed = Moment(earliest=started.latest, latest=started.latest)
    soonest = [time for _, time, _ in times_of(wait.order, fixed) if time]
    slowest = [time for _, _, time in times_of(wait.order, started) if time]
    whole = len(slowest) == len(wait.order)
    return max(soonest, default=None), max(slowest) if whole else None


def _soonest(step: OrderStep, base: datetime | None) -> datetime | None:
    if base is None or step.earliest is None:
        return base
    return base + timedelta(seconds=step.earliest.value)


def _latest(step: OrderStep, base: datetime | None) -> datetime | None:
    if base is None or step.latest is None:
        return None
    return base + timedelta(seconds=step.latest.value)
