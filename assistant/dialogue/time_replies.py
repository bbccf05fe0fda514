"""Wording of waits, with their times of day."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime, timedelta

from assistant.timing.kinds import OrderStep
from assistant.timing.values import WaitState
from assistant.timing.waits import PartTimes
from assistant.units.show import format_quantity

TIME_QUESTIONS = {
    "power_on": "When was the power put on?",
    "first_start": "When was it started for the first time?",
    "power_lost": "When did the power go?",
    "power_restored": "When did the power come back?",
    "power_off": "When was the power cut?",
    "lamp_dark": "When did the lamp on that board go dark?",
    "call_for_run": "When did the call for cooling or heating start?",
    "compressor_started": "When did the compressor start?",
    "compressor_stopped": "When did the compressor stop?",
    "protection_stop": "When did it stop last?",
    "reset": "When was it reset?",
    "second_reset": "When was it reset the second time?",
    "defrost_started": "When did the defrost begin?",
    "setting_changed": "When was the setting changed?",
}


TRIGGER_WORDS = {
    "power_on": "power-up",
    "first_start": "the first start",
    "power_lost": "the power going",
    "power_restored": "the power coming back",
    "power_off": "the power being cut",
    "lamp_dark": "the lamp going dark",
    "call_for_run": "the call",
    "compressor_started": "the compressor's start",
    "compressor_stopped": "the compressor's stop",
    "protection_stop": "the protection stop",
    "reset": "the reset",
    "second_reset": "the second reset",
    "defrost_started": "the start of defrost",
    "setting_changed": "the change of setting",
}


def clock(instant: datetime, offset_minutes: int) -> str:
    """Write an instant as local time of day; with seconds where they matter."""
    local = instant + timedelta(minutes=offset_minutes)
    return local.strftime("%H:%M:%S" if local.second else "%H:%M")


def waiting(state: WaitState, offset: int) -> str:
    """Say until when to wait and why, judged from the event's own time."""
    wait = state.row.wait
    why = f"{wait.name}, counted from {TRIGGER_WORDS[wait.trigger]}"
    until = state.usual or state.earliest or state.give_up
    match state.state:
        case "running" if until is not None:
            text = (
                f"Wait until {clock(until, offset)}: {why}. Too early to judge before."
            )
        case "ready":
            text = f"The wait is over: {why}."
        case "overdue" if state.give_up is not None:
            text = f"Overdue since {clock(state.give_up, offset)}: {why}."
        case _:
            text = f"There is a wait, but its start is not known: {why}."
    if wait.condition:
        text += f" Condition: {wait.condition}."
    if state.state == "ready" and wait.follows:
        text += f" Next: {wait.follows}."
    if state.state == "overdue" and wait.overdue:
        text += f" {wait.overdue}."
    if wait.bypass and wait.bypass_side_effect:
        text += f" ({wait.bypass}; side effect: {wait.bypass_side_effect}.)"
    return text


def wait_rule(state: WaitState) -> str:
    """Say a wait's rule without its times."""
    wait = state.row.wait
    named = (("at least", wait.minimum), ("usually", wait.usual))
    times = [f"{word} {format_quantity(q)}" for word, q in named if q is not None]
    if wait.give_up is not None:
        times.append(f"not longer than {format_quantity(wait.give_up)}")
    about = "about " if wait.approx else ""
    return f"{wait.name}: {about}{', '.join(times)} from {TRIGGER_WORDS[wait.trigger]}."


def order_of_start(steps: Sequence[OrderStep]) -> str:
    """Say which part starts first and how long after what."""
    parts = []
    for step in steps:
        times = [
            format_quantity(q) for q in (step.earliest, step.latest) if q is not None
        ]
        after = step.after.replace("_", " ")
        gap = f" {' to '.join(times)} after {after}" if times else f" after {after}"
        parts.append(f"{step.part}{gap}")
    return f"Start-up order: {'; then '.join(parts)}."


def times_of_start(parts: Sequence[PartTimes], offset: int) -> str:
    """Say from when to when each part starts, where that is known; else nothing."""
    known = []
    for part, soonest, latest in parts:
        times = [clock(at, offset) for at in (soonest, latest) if at is not None]
        if times:
            known.append(f"{part} {' to '.join(dict.fromkeys(times))}")
    return f"By the clock: {'; '.join(known)}." if known else ""
