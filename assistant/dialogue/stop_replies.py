"""Wording of protection stops: counts, lockouts, and claims that disagree."""

from __future__ import annotations

from datetime import datetime

from assistant.dialogue.wait_replies import clock
from assistant.facts import ContextName
from assistant.timing.stop_kinds import (
    AutoRelease,
    Clearing,
    Consecutive,
    DurationLatch,
    FirstAuto,
    Levels,
    LogOnly,
    PerCall,
    PerDevice,
    Stop,
    UntilPowerOff,
    WithinStart,
)
from assistant.timing.stop_values import StopCount
from assistant.units.show import format_quantity

NO_TESTS = "Find the cause; do not use them as tests."


def counted(count: StopCount, offset: int) -> str:
    """Say what a protection-stop counter shows.

    Parameters
    ----------
    count : StopCount
        As counted.
    offset : int
        Minutes of local time over UTC.
    """
    stop = count.row.stop
    head = f"{stop.name}: {_seen(count)}"
    if isinstance(stop, LogOnly) or stop.unit_action == "log_only":
        return f"{head}: only kept in the history, the unit is not locked by it."
    if isinstance(stop, DurationLatch):
        return f"{head}: {_latch(count, offset)}"
    match count.state:
        case "locked":
            text = f"{head}: by the rule it is locked out{_level(count)}."
            if count.releases is not None:
                text += f" It ends by itself {_when(count.releases, offset)}."
            return text
        case "unknown":
            return f"{head}: cannot tell whether it is locked out; {_wanted(count)}."
        case "open":
            return f"{head}: {_open(count, offset)}"


def _seen(count: StopCount) -> str:
    stop = count.row.stop
    seen = _range(count.low, count.high)
    text = f"{seen} of {count.limit} {_what(stop)}"
    if count.keys:
        text += f", {' or '.join(count.keys)}"
    if isinstance(stop, Levels):
        for (low, high, limit), level, below in zip(
            count.upper, stop.levels[1:], stop.levels, strict=False
        ):
            window = format_quantity(level.window)
            text += (
                f"; {_range(low, high)} of {limit} times {below.name} within {window} "
                f"({level.name})"
            )
    return text


def _range(low: int, high: int) -> str:
    return str(low) if low == high else f"{low} to {high}"


def _what(stop: Stop) -> str:
    """Name what is counted, and over which stretch."""
    match stop:
        case DurationLatch():
            return f"stops (latches unless back within {format_quantity(stop.within)})"
        case Consecutive():
            return f"stops in a row ({clearing(stop.clears_after)})"
        case WithinStart():
            row = " in a row" if stop.in_a_row else ""
            return (
                f"stops{row}, each at most {format_quantity(stop.within)} from a start"
            )
        case PerCall():
            return "stops in one call (a new call counts anew)"
        case Levels():
            first = stop.levels[0]
            return f"stops within {format_quantity(first.window)} ({first.name})"
        case UntilPowerOff():
            return "stops until the power has been off"
        case _:
            return f"{_unit(stop)}{_stretch(stop)}"


def _unit(stop: Stop) -> str:
    match stop:
        case FirstAuto(same_cause_required=True):
            return "stops of the same cause"
        case PerDevice():
            return "stops of one device"
        case _:
            return "failed starts" if stop.kind == "failed_starts" else "stops"


def _stretch(stop: Stop) -> str:
    window = getattr(stop, "window", None)
    if window is not None:
        return f" within {format_quantity(window)}"
    clears = getattr(stop, "clears_after", None)
    return f" in a row ({clearing(clears)})" if clears is not None else ""


def clearing(rule: Clearing) -> str:
    """Say what begins a count in a row anew."""
    ways = []
    if rule.run is not None:
        ways.append(f"a run of {format_quantity(rule.run)} without a stop")
    if rule.good_cycles is not None:
        many = "" if rule.good_cycles == 1 else "s"
        ways.append(f"{rule.good_cycles} good cycle{many}")
    if rule.days is not None:
        many = "" if rule.days == 1 else "s"
        ways.append(f"{rule.days} day{many} without one")
    return f"counts anew after {' or '.join(ways)}"


def _level(count: StopCount) -> str:
    stop = count.row.stop
    if not isinstance(stop, Levels):
        return ""
    names = [stop.levels[level - 1].name for level in count.levels if level]
    return f" ({' or '.join(names)})"


def _open(count: StopCount, offset: int) -> str:
    text = f"not locked; {count.left} left before lockout."
    if count.oldest_leaves is not None:
        text += f" The oldest leaves at {clock(count.oldest_leaves, offset)}."
    if count.releases is not None and count.high:
        text += f" It starts again by itself {_when(count.releases, offset)}."
    return f"{text} {NO_TESTS}"


def _latch(count: StopCount, offset: int) -> str:
    if count.state == "locked":
        return "by the rule it has latched."
    if count.state == "unknown":
        return (
            "cannot tell whether it has latched; say when it stopped, and whether it "
            "ran again."
        )
    if count.latches is None:
        return f"not latched. {NO_TESTS}"
    when = _when(count.latches, offset)
    return f"not latched; it latches {when} unless it is back by then."


def _when(between: tuple[datetime, datetime], offset: int) -> str:
    first, last = (clock(at.replace(microsecond=0), offset) for at in between)
    return f"at {first}" if first == last else f"between {first} and {last}"


def _wanted(count: StopCount) -> str:
    """Say what would settle it."""
    match count.row.stop:
        case Consecutive():
            return "say whether it ran well in between, and the times"
        case PerCall():
            return "say whether they were all in one call"
        case WithinStart():
            return "say how long after a start each came"
        case PerDevice():
            return "say which device each was, and the times"
        case AutoRelease(release_when=text) if text:
            return f"it ends by itself when {text}"
        case _:
            return "say the times"


def settled_by(count: StopCount) -> ContextName | None:
    """Return what a yes or no would tell of an unknown count."""
    if count.state != "unknown":
        return None
    match count.row.stop:
        case PerCall():
            return "stops in one call"
        case Consecutive():
            return "stops in a row"
        case stop if getattr(stop, "clears_after", None) is not None:
            return "stops in a row"
        case _:
            return None


def conflict(count: str, claims: tuple[str, ...]) -> str:
    """Put claims that disagree side by side; none is taken over the others."""
    others = "; ".join(claims)
    return (
        f"Conflict, both shown: by the count, {count}; {others}. Neither is taken over "
        "the other: look at the lamp again, and check the times told."
    )


def count_claim(count: StopCount) -> str:
    """Say in a few words what the count comes to."""
    stop = count.row.stop
    seen = f"{_range(count.low, count.high)} of {count.limit}"
    word = "locked out" if count.state == "locked" else "not locked"
    return f"{stop.name} stand at {seen}, {word}"


def lamp_claim(meaning: str) -> str:
    """Say what the lamp says."""
    return f"the lamp says {meaning}"


WHICH_PROTECTION = (
    "Which protection stopped it, by the lamp or the display: high pressure, "
    "overcurrent, another? Each is counted alone."
)
TOLD_LOCKED = "you say it is locked out"
TOLD_OPEN = "you say it is not locked out"


def breaker_trips(count: int) -> str:
    """Say that breaker trips are something else than protection stops."""
    trips = "trip is" if count == 1 else "trips are"
    return (
        f"The breaker {trips} not counted as protection stops: a breaker is not the "
        "unit's own protection. Say apart how often the unit stopped by itself."
    )
