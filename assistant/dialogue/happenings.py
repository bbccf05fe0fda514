"""Facts as the happenings that start waits."""

from __future__ import annotations

from assistant.dialogue.stops_told import only_names
from assistant.facts import HappeningFact, ProtectionStopFact, ResetFact, SettingFact
from assistant.jobs.fold import JobState
from assistant.timing.values import Happening


def happenings(state: JobState) -> tuple[Happening, ...]:
    """Return what happened, in the order it was told.

    The second reset of a job is a `second_reset`: documents ask for a longer wait
    then. A reset by power also powers the unit up.
    """
    found: list[Happening] = []
    count = 0
    for held in state.held:
        match held.fact:
            case HappeningFact(trigger=trigger, at=at):
                found.append(Happening(trigger, at))
            case ResetFact(which=which, at=at):
                count += 1
                found.append(Happening("reset" if count == 1 else "second_reset", at))
                if which == "power":
                    found.append(Happening("power_on", at))
            case ProtectionStopFact() if only_names(held):
                pass
            case ProtectionStopFact(at=at):
                found.append(Happening("protection_stop", at))
                found.append(Happening("compressor_stopped", at))
            case SettingFact(at=at):
                found.append(Happening("setting_changed", at))
            case _:
                pass
    return tuple(found)
