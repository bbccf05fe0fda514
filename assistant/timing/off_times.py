"""How long the supply was off: long enough, too short, too long, or cannot tell."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Literal

from assistant.timing.moment import Moment
from assistant.timing.started import comes_after, last_of
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening, WaitRow
from assistant.timing.wait_kinds.holds import PowerOffHold, ResetWindow

OFF: tuple[Trigger, ...] = ("power_off", "power_lost")
ON: tuple[Trigger, ...] = ("power_on", "power_restored", "first_start")
NOTHING = timedelta(0)
OffResult = Literal["held", "too_short", "too_long", "cannot_tell"]


@dataclass(frozen=True, slots=True)
class OffTime:
    """How an off-time that is over compares with the row that asks for it."""

    row: WaitRow
    shortest: timedelta
    longest: timedelta
    result: OffResult


def between(begin: Moment, end: Moment) -> tuple[timedelta, timedelta]:
    """Return the smallest and the largest believable time from one to the other."""
    shortest = max(NOTHING, end.earliest - begin.latest)
    return shortest, max(NOTHING, end.latest - begin.earliest)


def judge_off_times(
    rows: Sequence[WaitRow], told: Sequence[Happening]
) -> tuple[OffTime, ...]:
    """Return how each off-time told from beginning to end compares with its row.

    "At least" is judged by the smaller believable time, "not longer than" by the
    larger. Rows whose beginning or end was not told with a time have no result.
    """
    found = []
    for row in rows:
        if not isinstance(row.wait, PowerOffHold | ResetWindow):
            continue
        span = _span(told, (row.wait.trigger,))
        if span is not None:
            found.append(_judge(row, *between(*span)))
    return tuple(found)


def was_off_for(told: Sequence[Happening], at_least: timedelta) -> bool | None:
    """Return whether the supply was off at least so long before it came back."""
    span = _span(told, OFF)
    if span is None:
        return None
    shortest, longest = between(*span)
    if shortest >= at_least:
        return True
    return None if longest >= at_least else False


def _span(
    told: Sequence[Happening], starts: tuple[Trigger, ...]
) -> tuple[Moment, Moment] | None:
    """Return when the supply went last, and when it came back after that."""
    found, began, place = last_of(told, starts)
    if not found or began is None:
        return None
    backs = [
        one.at
        for number, one in enumerate(told)
        if one.trigger in ON
        and one.at is not None
        and comes_after(one, number, began, place)
    ]
    first = min(backs, key=lambda at: (at.latest, at.earliest), default=None)
    return (began, first) if first is not None else None


def _judge(row: WaitRow, shortest: timedelta, longest: timedelta) -> OffTime:
    wait = row.wait
    least = timedelta(seconds=wait.minimum.value) if wait.minimum else NOTHING
    most = timedelta(seconds=wait.give_up.value) if wait.give_up else timedelta.max
    if longest < least:
        result: OffResult = "too_short"
    elif shortest > most:
        result = "too_long"
    elif shortest >= least and longest <= most:
        result = "held"
    else:
        result = "cannot_tell"
    return OffTime(row, shortest, longest, result)
