"""What each counter of protection stops shows, over every believable time."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from assistant.timing.believable import courses
from assistant.timing.stop_events import (
    counted_by,
    span_of,
    tick,
    time_of,
    timelines,
)
from assistant.timing.stop_kinds import LogOnly, Stop
from assistant.timing.stop_machine import State as Tallies
from assistant.timing.stop_machine import StopMachine, Tally
from assistant.timing.stop_plans import Plan, Tier, plan_of, ticks
from assistant.timing.stop_values import (
    State,
    StopCount,
    StopRow,
    StopSeries,
    StopsTold,
)
from assistant.timing.zones import Span, Zone


@dataclass(frozen=True, slots=True)
class _End:
    """One believable end of all that was told, of the fullest count."""

    level: int
    count: int
    upper: tuple[int, ...]
    oldest: int | None
    """The latest tick at which the oldest that still counts may have been."""
    lock: Span | None
    key: int = 0


def count_stops(
    rows: Sequence[StopRow],
    told: StopsTold,
    now: datetime,
    unnamed: Collection[str] = (),
) -> tuple[StopCount, ...]:
    """Return what each counter shows now.

    Parameters
    ----------
    rows : sequence of StopRow
        The counters that apply to the unit.
    told : StopsTold
        Stops, resets, runs, calls and starts. Breaker trips are none of them.
    now : datetime
        The instant asked about; nothing lies after it.
    unnamed : collection of str
        The global ids of the counters that stops of no named protection count for.

    Returns
    -------
    tuple of StopCount
        In the order of `rows`. `locked` holds for every believable course of what
        was told, `open` for none, `unknown` for some. A stop at the very instant of
        a reset is cleared; one that only logs is open.
    """
    return tuple(
        _count(row, counted_by(row, told.stops, unnamed), told, tick(now))
        for row in rows
    )


def limit_of(stop: Stop) -> int:
    """Return the number of stops that locks a counter's first level."""
    levels = getattr(stop, "levels", ())
    limit: int = levels[0].limit if levels else getattr(stop, "limit", 1)
    return limit


def _count(
    row: StopRow, series: Sequence[StopSeries], told: StopsTold, now: int
) -> StopCount:
    plan = plan_of(row.stop)
    ends = _ends(row, plan, series, told, now)
    limit = limit_of(row.stop)
    if ends is None:
        most = sum(max(one.count) for one in series)
        levels = tuple(range(len(plan.tiers) + 1))
        return StopCount(row, 0, most, limit, "unknown", 0, None, levels, exact=False)
    low, high = (edge(_shown(end, limit) for end in ends) for edge in (min, max))
    state = _state(ends)
    counts_down = state == "open" and plan.latch is None and _locks(row.stop)
    return StopCount(
        row,
        low,
        high,
        limit,
        state,
        left=max(0, limit - high) if counts_down else 0,
        oldest_leaves=_leaves(ends, plan.tiers[0], row.stop),
        levels=tuple(sorted({end.level for end in ends})),
        upper=_upper(ends, plan),
        releases=_releases(ends, plan) or _retries(row.stop, state, high, series, now),
        latches=_latches(plan, state, high, series, now),
        keys=tuple(
            name
            for number, name in enumerate(plan.keys)
            if any(end.key == number and (end.level or end.count) for end in ends)
        ),
    )


def _locks(stop: Stop) -> bool:
    return stop.unit_action == "lockout" and not isinstance(stop, LogOnly)


def _shown(end: _End, limit: int) -> int:
    return limit if end.level else end.count


def _state(ends: Sequence[_End]) -> State:
    locked = {end.level > 0 for end in ends}
    if len(locked) > 1:
        return "unknown"
    return "locked" if True in locked else "open"


def _ends(
    row: StopRow, plan: Plan, series: Sequence[StopSeries], told: StopsTold, now: int
) -> tuple[_End, ...] | None:
    machine = StopMachine(plan)
    found: dict[_End, None] = {}
    for events in timelines(row, plan, series, told, now):
        ended = courses(events, machine)
        if ended is None:
            return None
        for state, zone in ended:
            found[_end(state, zone, plan)] = None
    return tuple(found) or (_End(0, 0, (0,) * (len(plan.tiers) - 1), None, None),)


def _end(state: Tallies, zone: Zone, plan: Plan) -> _End:
    """Reduce separate counts to the fullest: it is what locks next, or has."""
    key, fullest = max(
        enumerate(state), key=lambda one: (one[1].level, one[1].count, -one[0])
    )
    held = fullest.pending[0]
    upper = tuple(
        _at_level(fullest, level, tier)
        for level, tier in enumerate(plan.tiers[1:], start=1)
    )
    return _End(
        level=fullest.level,
        count=fullest.count,
        upper=upper,
        oldest=zone.span(held[0])[1] if held else None,
        lock=zone.span(fullest.lock) if fullest.lock is not None else None,
        key=key,
    )


def _at_level(tally: Tally, level: int, tier: Tier) -> int:
    locked = tally.level > level and tier.limit is not None
    return tier.limit if locked and tier.limit else len(tally.pending[level])


def _leaves(ends: Iterable[_End], tier: Tier, stop: Stop) -> datetime | None:
    oldest = [end.oldest for end in ends if end.oldest is not None and not end.level]
    if tier.reach is None or not oldest:
        return None
    edge = getattr(stop, "edge", None) or stop.levels[0].edge  # type: ignore[union-attr]
    return time_of(max(oldest) + tier.reach + int(edge == "does_not_count"))


def _upper(ends: Sequence[_End], plan: Plan) -> tuple[tuple[int, int, int], ...]:
    return tuple(
        (
            min(end.upper[n] for end in ends),
            max(end.upper[n] for end in ends),
            tier.limit or 1,
        )
        for n, tier in enumerate(plan.tiers[1:])
    )


def _releases(ends: Sequence[_End], plan: Plan) -> tuple[datetime, datetime] | None:
    spans = [
        (end.lock[0] + after, end.lock[1] + after)
        for end in ends
        if end.level and end.lock is not None
        for after in (plan.tiers[end.level - 1].release or 0,)
    ]
    return _range(spans)


def _retries(
    stop: Stop, state: State, high: int, series: Sequence[StopSeries], now: int
) -> tuple[datetime, datetime] | None:
    pause = getattr(stop, "retry_after", None)
    if pause is None or state != "open" or high == 0:
        return None
    return _newest(series, ticks(pause), now)


def _latches(
    plan: Plan, state: State, high: int, series: Sequence[StopSeries], now: int
) -> tuple[datetime, datetime] | None:
    if plan.latch is None or state != "open" or high == 0:
        return None
    return _newest(series, plan.latch, now)


def _newest(
    series: Sequence[StopSeries], later: int, now: int
) -> tuple[datetime, datetime] | None:
    """Return when the newest stop was, so much later."""
    spans = [span_of(one.last, now) for one in series]
    if not spans:
        return None
    first, last = (max(span[n] for span in spans) for n in (0, 1))
    return time_of(first + later), time_of(last + later)


def _range(spans: Sequence[Span]) -> tuple[datetime, datetime] | None:
    if not spans:
        return None
    return time_of(min(s[0] for s in spans)), time_of(max(s[1] for s in spans))
