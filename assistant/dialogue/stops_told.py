"""Facts as what the counters of protection stops rest on."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from datetime import UTC, datetime, timedelta

from assistant.facts import (
    ContextFact,
    Fact,
    GoodRunFact,
    HappeningFact,
    ProtectionStopFact,
    ResetDetailFact,
    ResetFact,
    Supplies,
)
from assistant.jobs.fold import Held, JobState
from assistant.timing.moment import Moment
from assistant.timing.off_times import between
from assistant.timing.stop_values import (
    GoodRun,
    ResetTold,
    StopRow,
    StopSeries,
    StopsTold,
)

LONG_AGO = datetime(1970, 1, 1, tzinfo=UTC)


def stops_told(state: JobState, *, running: bool | None = None) -> StopsTold:
    """Return the stops, resets, runs, calls and starts of a job.

    Breaker trips are none of them. A stop of no told time counts as of when it was
    told. A reset, run, call or start of no told time was before it was told, and
    after every stop that an earlier turn told.

    Parameters
    ----------
    state : JobState
        The job.
    running : bool or None
        Whether the unit runs now, where that is known.
    """
    return StopsTold(
        stops=_stops(state),
        resets=(*(told for _, told in resets_told(state)), *_outages(state)),
        good=tuple(
            GoodRun(_when(state, held), fact.ran_s, fact.cycles)
            for held in state.of(GoodRunFact)
            if isinstance(fact := held.fact, GoodRunFact)
        ),
        calls=_happened(state, "call_for_run"),
        starts=_happened(state, "compressor_started"),
        running=running,
        in_a_row=_said(state, "stops in a row"),
        one_call=_said(state, "stops in one call"),
    )


def resets_told(state: JobState) -> tuple[tuple[Held, ResetTold], ...]:
    """Return each reset with what was told of it then and later, oldest first."""
    found: list[tuple[Held, ResetTold]] = []
    for held in state.held:
        fact = held.fact
        if isinstance(fact, ResetFact):
            if found and _dates_the_last(held):
                found[-1] = (found[-1][0], replace(found[-1][1], at=_when(state, held)))
            else:
                found.append((held, _reset(state, held, fact)))
        elif found:
            found[-1] = (found[-1][0], _told_later(found[-1][1], fact))
    return tuple(found)


def _outages(state: JobState) -> tuple[ResetTold, ...]:
    """Return each cut of the supply that ended, as the reset by power it may be."""
    found: list[ResetTold] = []
    gone: Moment | None = None
    for held in state.of(HappeningFact):
        fact = held.fact
        if not isinstance(fact, HappeningFact) or fact.at is None:
            continue
        if fact.trigger == "power_lost":
            gone = fact.at
        elif fact.trigger == "power_restored" and gone is not None:
            off = tuple(span.total_seconds() for span in between(gone, fact.at))
            found.append(ResetTold(fact.at, "power", (off[0], off[1]), "power_off"))
            gone = None
    return tuple(found)


def unnamed_for(rows: Sequence[StopRow], pointed_to: Collection[str]) -> frozenset[str]:
    """Return the counters that a stop of no named protection counts for.

    Those the lamp points to; where it points to none and there is one only, that.
    """
    events = {row.stop.event for row in rows if row.gid in pointed_to}
    if not events and len(rows) == 1:
        events = {rows[0].stop.event}
    return frozenset(row.gid for row in rows if row.stop.event in events)


def only_names(held: Held) -> bool:
    """Say whether a stop only names the protection of one that was told before."""
    fact = held.fact
    if held.answers != "stop_event" or not isinstance(fact, ProtectionStopFact):
        return False
    bare = fact.count == (1,) and fact.at is None and fact.ran_s is None
    return bare and fact.apart_s is None


def _dates_the_last(held: Held) -> bool:
    return held.answers.startswith("time:") and held.answers.endswith("reset")


def _reset(state: JobState, held: Held, fact: ResetFact) -> ResetTold:
    return ResetTold(
        at=_when(state, held),
        which=fact.which,
        off=fact.off_s,
        off_from=fact.off_from,
        supplies=fact.supplies,
        cleared=fact.cleared,
    )


def _told_later(reset: ResetTold, fact: Fact) -> ResetTold:
    match fact:
        case ResetDetailFact():
            return replace(
                reset,
                which=fact.which or reset.which,
                off=fact.off_s or reset.off,
                off_from=fact.off_from if fact.off_s else reset.off_from,
                supplies=fact.supplies or reset.supplies,
                cleared=reset.cleared if fact.cleared is None else fact.cleared,
            )
        case ContextFact(name="supplies off together", value=value):
            how: Supplies = "together" if value else "one_by_one"
            return replace(reset, supplies=reset.supplies or how)
        case _:
            return reset


def _stops(state: JobState) -> tuple[StopSeries, ...]:
    found: list[StopSeries] = []
    for held in state.of(ProtectionStopFact):
        fact = held.fact
        if not isinstance(fact, ProtectionStopFact):
            continue
        last = fact.at or Moment(earliest=held.noted, latest=held.noted)
        if found and held.answers == "time:protection_stop" and fact.at:
            found[-1] = replace(found[-1], last=last)
            continue
        if found and only_names(held):
            found[-1] = replace(found[-1], event=fact.event)
            continue
        found.append(
            StopSeries(
                event=fact.event,
                last=last,
                count=fact.count,
                apart=fact.apart_s,
                since=_since(fact, last),
                ran=fact.ran_s,
                in_a_row=fact.in_a_row,
                one_call=fact.one_call,
                device=fact.device,
            )
        )
    return tuple(found)


def _since(fact: ProtectionStopFact, last: Moment) -> datetime | None:
    bounds = [fact.since.earliest] if fact.since else []
    if fact.within_s is not None:
        bounds.append(last.earliest - timedelta(seconds=fact.within_s))
    return max(bounds, default=None)


def _said(state: JobState, name: str) -> bool:
    said = [
        held.fact.value
        for held in state.of(ContextFact)
        if isinstance(held.fact, ContextFact) and held.fact.name == name
    ]
    return bool(said) and said[-1]


def _happened(state: JobState, trigger: str) -> tuple[Moment, ...]:
    return tuple(
        _when(state, held)
        for held in state.of(HappeningFact)
        if isinstance(held.fact, HappeningFact) and held.fact.trigger == trigger
    )


def _when(state: JobState, held: Held) -> Moment:
    if held.fact.at is not None:
        return held.fact.at
    earlier = [
        stop.noted for stop in state.of(ProtectionStopFact) if stop.turn < held.turn
    ]
    beside = any(stop.turn == held.turn for stop in state.of(ProtectionStopFact))
    after = max(earlier) if earlier and not beside else LONG_AGO
    just_after = after + timedelta.resolution
    return Moment(earliest=min(just_after, held.noted), latest=held.noted)
