"""What was told of stops, resets and runs, as the events one counter reads."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from itertools import product

from assistant.timing.believable import Event
from assistant.timing.moment import Moment
from assistant.timing.reset_taking import takings
from assistant.timing.stop_kinds import Levels, PerDevice, Reset, Stop, events_of
from assistant.timing.stop_machine import Maybe, StopData
from assistant.timing.stop_plans import TICKS, Plan
from assistant.timing.stop_values import (
    GoodRun,
    Range,
    StopRow,
    StopSeries,
    StopsTold,
    Taking,
)
from assistant.timing.zones import Span

_START = datetime(1970, 1, 1, tzinfo=UTC)
_TICK = timedelta(microseconds=1)
MOST_COUNTS = 12
"""Combinations of doubtful numbers that are each followed."""


def tick(at: datetime) -> int:
    """Return an instant as whole microseconds since 1970."""
    return (at - _START) // _TICK


def time_of(at: int) -> datetime:
    """Return the instant of a tick."""
    return _START + at * _TICK


def span_of(moment: Moment, now: int) -> Span:
    """Return a moment as a span that does not reach beyond now."""
    return min(tick(moment.earliest), now), min(tick(moment.latest), now)


def resets_of_tiers(stop: Stop) -> tuple[tuple[Reset, ...], ...]:
    """Return the resets of each level; a counter without levels has one."""
    if isinstance(stop, Levels):
        return tuple(level.resets for level in stop.levels)
    return (stop.resets,)


def takings_of(stop: Stop, told: StopsTold) -> tuple[tuple[Taking, ...], ...]:
    """Return for each level, for each told reset, whether it took."""
    return tuple(takings(resets, told.resets) for resets in resets_of_tiers(stop))


def counted_by(
    row: StopRow, told: Sequence[StopSeries], unnamed: Collection[str]
) -> tuple[StopSeries, ...]:
    """Return the stops that a counter counts, or may count.

    `unnamed` are the counters for which a stop of no named protection counts.
    """
    names = {_folded(event) for event in events_of(row.stop)}
    return tuple(
        one
        for one in told
        if (_folded(one.event) in names if one.event else row.gid in unnamed)
        and _keys(row.stop, _key_names(row.stop), one)
    )


def timelines(
    row: StopRow, plan: Plan, series: Sequence[StopSeries], told: StopsTold, now: int
) -> Iterator[tuple[Event, ...]]:
    """Yield the events of each believable number of stops; the last is now."""
    common = (*_resets(row, told, now), *_between(plan, told, now))
    present = Event("now", (now, now), told.running)
    for counts in _counts(series):
        events: list[Event] = []
        for group, (one, count) in enumerate(zip(series, counts, strict=True)):
            data = _together(_data(row.stop, plan, one, group), told)
            events += _series(one, count, data, now, len(events))
        yield (*events, *common, present)


def _counts(series: Sequence[StopSeries]) -> list[tuple[int, ...]]:
    ways = list(product(*(sorted(set(one.count)) for one in series)))
    if len(ways) <= MOST_COUNTS:
        return ways
    return [tuple(min(s.count) for s in series), tuple(max(s.count) for s in series)]


def _series(
    one: StopSeries, count: int, data: StopData, now: int, first: int
) -> Iterator[Event]:
    last = span_of(one.last, now)
    floor = tick(one.since) if one.since else 0
    if one.apart is None:
        early = min(floor, last[0])
        for _ in range(count - 1):
            yield Event("stop", (early, last[1]), data)
        yield Event("stop", last, data)
        return
    short, long = (round(seconds * TICKS) for seconds in sorted(one.apart))
    for back in reversed(range(count)):
        span = (max(last[0] - back * long, 0), max(last[1] - back * short, 0))
        oldest = back == count - 1
        after = None if oldest else first + count - back - 2
        yield Event("stop", span, data, after, (short, long))


def _data(stop: Stop, plan: Plan, one: StopSeries, group: int) -> StopData:
    run = plan.run
    anew = run is not None and one.ran is not None and one.ran[0] * TICKS >= run
    return StopData(
        counts=_within(plan, one.ran),
        keys=_keys(stop, _key_names(stop), one),
        group=group,
        in_a_row=one.in_a_row,
        one_call=one.one_call,
        anew=anew and not one.in_a_row,
    )


def _together(data: StopData, told: StopsTold) -> StopData:
    if not (told.in_a_row or told.one_call):
        return data
    return replace(
        data,
        group=0,
        in_a_row=told.in_a_row or data.in_a_row,
        one_call=told.one_call or data.one_call,
    )


def _within(plan: Plan, ran: Range | None) -> Maybe:
    if plan.within is None:
        return "yes"
    if ran is None:
        return "maybe"
    if ran[1] * TICKS <= plan.within:
        return "yes"
    return "no" if ran[0] * TICKS > plan.within else "maybe"


def _key_names(stop: Stop) -> tuple[str, ...]:
    if isinstance(stop, PerDevice):
        return stop.devices
    if getattr(stop, "same_cause_required", False):
        return events_of(stop)
    return ()


def _keys(stop: Stop, names: Sequence[str], one: StopSeries) -> tuple[int, ...]:
    """Return which of the separate counts a stop may belong to; none is no count."""
    told = one.device if isinstance(stop, PerDevice) else one.event
    if not names:
        return (0,)
    if told is None:
        return tuple(range(len(names)))
    return tuple(n for n, name in enumerate(names) if _folded(name) == _folded(told))


def _resets(row: StopRow, told: StopsTold, now: int) -> Iterator[Event]:
    by_tier = takings_of(row.stop, told)
    for number, reset in enumerate(told.resets):
        took = tuple(tier[number].took for tier in by_tier)
        if set(took) != {"no"}:
            yield Event("reset", span_of(reset.at, now), took)


def _between(plan: Plan, told: StopsTold, now: int) -> Iterator[Event]:
    """Yield what lies between stops and matters to this plan."""
    for run in told.good if plan.chained else ():
        clears = _clears(plan, run)
        if clears != "no":
            yield Event("good", span_of(run.at, now), clears)
    for call in told.calls if plan.per_call else ():
        yield Event("call", span_of(call, now))
    for start in told.starts if plan.latch is not None else ():
        yield Event("start", span_of(start, now))


def _clears(plan: Plan, good: GoodRun) -> Maybe:
    """Return whether a good run begins a count anew; days are in the times alone."""
    ways: list[Maybe] = []
    if plan.run is not None:
        if good.ran is None:
            ways.append("maybe")
        else:
            short, long = (round(seconds * TICKS) for seconds in good.ran)
            ways.append(_reaches(short, long, plan.run))
    if plan.cycles is not None:
        done = good.cycles
        ways.append(_reaches(min(done), max(done), plan.cycles) if done else "maybe")
    if "yes" in ways:
        return "yes"
    return "maybe" if "maybe" in ways else "no"


def _reaches(low: int, high: int, needed: int) -> Maybe:
    if low >= needed:
        return "yes"
    return "maybe" if high >= needed else "no"


def _folded(name: str | None) -> str:
    return " ".join((name or "").casefold().split())
