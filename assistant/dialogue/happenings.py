"""Facts as the happenings that start waits and fill counters."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from datetime import timedelta
from functools import partial

from assistant.facts import HappeningFact, ProtectionStopFact, ResetFact, SettingFact
from assistant.jobs.clock_steps import set_since
from assistant.jobs.fold import Held, JobState
from assistant.timing.moment import Moment
from assistant.timing.stops import spread
from assistant.timing.values import Happening, StopRow


def happenings(state: JobState) -> tuple[Happening, ...]:
    """Return what happened, in the order it was told.

    The second reset of a job is a `second_reset`: documents ask for a longer wait
    then. A reset by power also powers the unit up.
    """
    found: list[Happening] = []
    count = 0
    for held in map(partial(_by_both_clocks, state), state.held):
        match held.fact:
            case HappeningFact(trigger=trigger, at=at):
                found.append(Happening(trigger, at))
            case ResetFact(which=which, at=at):
                count += 1
                found.append(Happening("reset" if count == 1 else "second_reset", at))
                if which == "power":
                    found.append(Happening("power_on", at))
            case ProtectionStopFact(at=at):
                found.append(Happening("protection_stop", at))
                found.append(Happening("compressor_stopped", at))
            case SettingFact(at=at):
                found.append(Happening("setting_changed", at))
            case _:
                pass
    return tuple(found)


def _by_both_clocks(state: JobState, held: Held) -> Held:
    """Widen a time told before the wall clock was set: it is counted both ways.

    Elapsed by the wall and elapsed by the steady seconds are both believable then;
    the time is moved so that now less it spans the two.
    """
    by = set_since(state.clock_steps, held.turn)
    at = held.fact.at
    if not by or at is None:
        return held
    shift = timedelta(seconds=by)
    none = timedelta(0)
    moment = Moment(
        earliest=at.earliest + min(none, shift), latest=at.latest + max(none, shift)
    )
    return replace(held, fact=held.fact.model_copy(update={"at": moment}))


def resets(state: JobState) -> tuple[Moment, ...]:
    """Return when the unit was reset, where that is known."""
    return tuple(
        held.fact.at
        for held in state.of(ResetFact)
        if isinstance(held.fact, ResetFact) and held.fact.at is not None
    )


def stop_events(
    state: JobState, rows: Sequence[StopRow], counted: Sequence[str]
) -> tuple[tuple[str, Moment], ...]:
    """Return each protection stop told, with its time, under the event it counts for.

    A stop whose protection was not named counts for the rows in `counted` (those the
    lamp points to); where the lamp points to none and only one row exists, for that.
    """
    unnamed = {row.stop.event for row in rows if row.gid in counted}
    if not unnamed and len(rows) == 1:
        unnamed = {rows[0].stop.event}
    told: list[tuple[str, Moment]] = []
    for held in state.of(ProtectionStopFact):
        fact = held.fact
        if not isinstance(fact, ProtectionStopFact):
            continue
        events = [fact.event] if fact.event else sorted(unnamed)
        told.extend(
            (event, moment) for event in events for moment in _moments(held, fact)
        )
    return tuple(told)


def _moments(held: Held, fact: ProtectionStopFact) -> tuple[Moment, ...]:
    last = fact.at or Moment(earliest=held.noted, latest=held.noted)
    count = min(fact.count)
    if count == 1:
        return (last,)
    if fact.apart_s is None:
        return ()
    return spread(count, fact.apart_s, last)
