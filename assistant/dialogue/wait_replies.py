"""Wording of waits in force: until when, what is over, what was not said."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from datetime import datetime, timedelta

from assistant.dialogue.trigger_words import TRIGGER_WORDS
from assistant.dialogue.wait_rule_words import bleed_words, bypass_words, value_words
from assistant.timing.defrosts import EntryPart
from assistant.timing.off_times import OffTime
from assistant.timing.start_order import PartNow, PartTimes
from assistant.timing.values import Choice, ConditionState, WaitState
from assistant.timing.wait_kinds.holds import (
    CapacitorBleed,
    Cooling,
    ResetWindow,
    Standby,
)
from assistant.timing.wait_kinds.runs import RunOn
from assistant.timing.wait_kinds.shows import DisplayDelay, HistoryExit, IgnoreWindow
from assistant.timing.wait_kinds.starts import MinimumRun
from assistant.units.quantity import Quantity
from assistant.units.show import format_quantity


def clock(instant: datetime, offset_minutes: int) -> str:
    """Write an instant as local time of day; with seconds where they matter."""
    local = instant + timedelta(minutes=offset_minutes)
    return local.strftime("%H:%M:%S" if local.second else "%H:%M")


def waiting(state: WaitState, offset: int, now: datetime, *, inside: bool) -> str:
    """Say until when to wait and why, judged from the event's own time.

    `inside` says whether the person may work inside the unit.
    """
    parts = [_head(state, offset, now), *_choices(state, offset), *_kind(state, offset)]
    if isinstance(state.row.wait, CapacitorBleed):
        parts.append(bleed_words(state.row.wait, inside=inside))
    if inside or not isinstance(state.row.wait, CapacitorBleed):
        parts.extend(_conditions(state))
    parts.extend(_unsaid(state))
    wait = state.row.wait
    if state.state == "ready" and wait.follows:
        parts.append(f"Next: {wait.follows}.")
    if state.state == "overdue" and wait.overdue:
        unsure = state.latched == "cannot_tell"
        parts.append(f"{'In that case: ' if unsure else ''}{wait.overdue}.")
    parts.extend(bypass_words(wait, inside=inside))
    return " ".join(parts)


def _why(state: WaitState) -> str:
    wait = state.row.wait
    return f"{wait.name}, counted from {TRIGGER_WORDS[wait.trigger]}"


def _head(state: WaitState, offset: int, now: datetime) -> str:
    if state.latched is not None:
        return _latched(state, offset)
    why = _why(state)
    match state.state:
        case "running":
            return _running(state, offset, now)
        case "ready" if isinstance(state.row.wait, CapacitorBleed):
            return f"Off long enough, and read low enough at one place: {why}."
        case "ready":
            return f"The wait is over: {why}."
        case "overdue" if state.give_up is not None:
            return f"Overdue since {clock(state.give_up, offset)}: {why}."
        case _:
            return f"There is a wait, but its start is not known: {why}."


def _running(state: WaitState, offset: int, now: datetime) -> str:
    why = _why(state)
    until = state.usual or state.earliest or state.give_up
    if until is None:
        return f"Waiting: {why}."
    at = clock(until, offset)
    if until <= now:
        return f"The time is over since {at}, the wait is not: {why}."
    if state.usual is None and state.earliest is None:
        return f"At the longest until {at}: {why}."
    return f"Wait until {at}: {why}. Too early to judge before."


def _latched(state: WaitState, offset: int) -> str:
    wait = state.row.wait
    stays = "it does not start again by itself"
    if isinstance(wait, Standby) and wait.survives_restart:
        stays = "power off and on does not clear it"
    if state.latched == "yes" and state.give_up is None:
        return f"No more retries: {_why(state)}; {stays}."
    limit = clock(state.give_up, offset) if state.give_up else "its limit"
    if state.latched == "yes":
        return (
            f"Latched: not back by {limit}, so the trip stays; {stays}: {_why(state)}."
        )
    return (
        f"Whether the value was back by {limit} is not known: {_why(state)}. "
        f"If it was not, the trip stays: {stays}."
    )


def _choices(state: WaitState, offset: int) -> Iterator[str]:
    """Show every length, where it was not said which one applies."""
    if len(state.choices) > 1:
        each = "; ".join(_choice(one, offset) for one in state.choices)
        yield f"Which applies was not said: {each}."
        if state.earliest is not None:
            yield "The longest is counted."
    elif state.choices and state.latched is None:
        yield f"Counted as: {state.choices[0].words}."


def _choice(one: Choice, offset: int) -> str:
    if one.length is None:
        return one.words
    until = f", until {clock(one.over, offset)}" if one.over else ""
    return f"{one.words} {format_quantity(one.length)}{until}"


def _kind(state: WaitState, offset: int) -> Iterator[str]:
    """Say what the kind of wait itself means now."""
    wait = state.row.wait
    if state.state in ("running", "start_unknown"):
        yield from _meanwhile(state)
    if isinstance(wait, Cooling):
        yield f"Only afterwards counts: {wait.before}."
    if isinstance(wait, ResetWindow):
        yield from _window(state, offset)


def _meanwhile(state: WaitState) -> Iterator[str]:
    """Say what holds until the wait is over."""
    match state.row.wait:
        case DisplayDelay():
            yield "Nothing shown before then does not mean that nothing is wrong."
        case HistoryExit():
            yield "What the display shows until then is history, not now."
        case IgnoreWindow() as wait:
            yield f"Until then {wait.input} is not looked at."
        case MinimumRun():
            yield "Until then it keeps running, with or without a call."
        case RunOn() as wait:
            yield f"Until then it is right that this runs on: {wait.part}."
        case _:
            pass


def _window(state: WaitState, offset: int) -> Iterator[str]:
    if state.earliest is None or state.give_up is None:
        return
    first, last = clock(state.earliest, offset), clock(state.give_up, offset)
    match state.state:
        case "overdue":
            yield f"The window to switch on closed at {last}."
        case "ready":
            yield f"Switch on before {last}."
        case _:
            yield f"Switch on between {first} and {last}."


def _conditions(state: WaitState) -> Iterator[str]:
    wait = state.row.wait
    holds = state.open_values if state.state in ("running", "ready") else ()
    if state.state == "start_unknown":
        holds = state.conditions
    lead = "Or as soon as" if wait.logic == "or" else "It needs as well"
    if wait.minimum is None and wait.usual is None:
        lead = "Ends as soon as"
    if holds:
        yield f"{lead}: {'; '.join(_value(one) for one in holds)}."
    if wait.condition and state.state == "ready":
        yield f"Only if: {wait.condition}; that was not judged here."
    elif wait.condition:
        yield f"Condition: {wait.condition}."


def _value(one: ConditionState) -> str:
    text = value_words(one.condition)
    if one.told is None:
        return f"{text} (not told since)"
    return f"{text} (told: {_like(one.told, one.condition.value)}, not met)"


def _like(told: Quantity, wanted: Quantity) -> str:
    return format_quantity(told, like=told.text or wanted.text)


def one_of(waits: Iterable[tuple[str, str]]) -> str:
    """Name waits of which one runs, by the protection that stopped the unit."""
    told = "; ".join(f"{protection}: {name}" for protection, name in waits)
    return f"Which protection stopped it was not said. It decides the wait: {told}."


def _unsaid(state: WaitState) -> Iterator[str]:
    if state.unsaid:
        yield f"It runs only when: {', '.join(state.unsaid)}; that was not said."


def lamp_meanwhile(meaning: str) -> str:
    """Say that a lamp belongs to a wait, and is no fault while it lasts."""
    return f"The lamp for this says: {meaning}. While it lasts that is no fault."


def order_now(parts: Sequence[PartNow], offset: int, standing: dict[str, bool]) -> str:
    """Say which part should be running by now, may be, or cannot be yet.

    `standing` holds what was said of parts: running or not.
    """
    words = []
    for one in parts:
        match one.standing:
            case "should_run" if standing.get(one.part) is False and one.latest:
                late = clock(one.latest, offset)
                words.append(f"{one.part} is late: it should run since {late}")
            case "should_run":
                words.append(f"{one.part} should be running")
            case "may_run":
                words.append(f"{one.part} may be starting")
            case "not_yet" if one.soonest:
                words.append(f"{one.part} not before {clock(one.soonest, offset)}")
            case _:
                words.append(f"{one.part}: its time is not known")
    return f"By now: {'; '.join(words)}." if words else ""


def times_of_start(parts: Sequence[PartTimes], offset: int) -> str:
    """Say from when to when each part starts, where that is known; else nothing."""
    known = []
    for part, soonest, latest in parts:
        times = [clock(at, offset) for at in (soonest, latest) if at is not None]
        if times:
            known.append(f"{part} {' to '.join(dict.fromkeys(times))}")
    return f"By the clock: {'; '.join(known)}." if known else ""


def off_time(one: OffTime) -> str:
    """Say whether the supply was off long enough for what asks for it."""
    name = one.row.wait.name
    low, high = _span(one.shortest), _span(one.longest)
    was = low if low == high else f"{low} to {high}"
    match one.result:
        case "held":
            return f"{name}: off for {was}, as asked. Off that long is not discharged."
        case "too_short":
            return f"{name}: off for {was} only: too short to count."
        case "too_long":
            return f"{name}: off for {was}: longer than asked."
        case "cannot_tell":
            return f"{name}: off for {was}: cannot tell whether it counts."


def _span(length: timedelta) -> str:
    seconds = length.total_seconds()
    if seconds < 1:
        return "0 s"
    return format_quantity(Quantity(value=float(round(seconds)), unit="s"))


def clock_was_set(seconds: float) -> str:
    """Say that the wall clock was set, by how much, and how it is counted with."""
    by = format_quantity(Quantity(value=float(round(abs(seconds))), unit="s"))
    way = "forward" if seconds > 0 else "back"
    return (
        f"The clock of this machine was set {way} by {by} while the job ran. Waits are "
        "counted both ways: at least by the shorter time, at most by the longer."
    )


AFTER_DEFROST = "After the defrost. "
ENDED = "No longer waiting: {name}. What was told ends it."
NEXT_DEFROST = "The next defrost does not begin before {at}."


def entry_now(parts: Sequence[EntryPart]) -> str:
    """Say which conditions of a defrost are met, and which were not told."""
    words = {True: "met", False: "not met", None: "not told"}
    each = ", ".join(f"{part.needs} {words[part.met]}" for part in parts)
    return f"For a defrost to begin: {each}."
