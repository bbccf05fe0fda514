"""Facts as the happenings that start waits."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from functools import partial

from assistant.dialogue.stops_told import only_names
from assistant.facts import HappeningFact, ProtectionStopFact, ResetFact, SettingFact
from assistant.jobs.clock_steps import set_since
from assistant.jobs.fold import Held, JobState
from assistant.timing.moment import Moment
from assistant.timing.values import Happening

OVERLOAD = "overload"
"""The protection that opens by heat and closes by itself once it has cooled."""


def happenings(state: JobState) -> tuple[Happening, ...]:
    """Return what happened, in the order it was told.

    A reset by power also powers the unit up.
    """
    found: list[Happening] = []
    for held in map(partial(_by_both_clocks, state), state.held):
        match held.fact:
            case HappeningFact(trigger=trigger, at=at):
                found.append(Happening(trigger, at))
            case ResetFact(which=which, at=at):
                found.append(Happening("reset", at))
                if which == "power":
                    found.append(Happening("power_on", at))
            case ProtectionStopFact(event=event) if only_names(held):
                found = _named(found, event)
            case ProtectionStopFact() as stop:
                found.extend(_stopped(stop))
            case SettingFact(at=at):
                found.append(Happening("setting_changed", at))
            case _:
                pass
    return tuple(found)


def _stopped(stop: ProtectionStopFact) -> Iterator[Happening]:
    """Yield what a protection stop is besides."""
    yield Happening("protection_stop", stop.at, stop.event)
    yield Happening("compressor_stopped", stop.at)
    if stop.event == OVERLOAD:
        yield Happening("overload_opened", stop.at)


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


def _named(found: list[Happening], event: str | None) -> list[Happening]:
    """Name the protection of the last stop, where it was told before without one."""
    stops = [n for n, one in enumerate(found) if one.trigger == "protection_stop"]
    if not stops or found[stops[-1]].event is not None:
        return found
    place = stops[-1]
    named = replace(found[place], event=event)
    return [*found[:place], named, *found[place + 1 :]]
