"""How long the supply was off: long enough, too short, too long, or cannot tell."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import timedelta
from typing import Literal

from assistant.timing.moment import Moment
from assistant.timing.started import comes_after, last_of
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening, WaitRow
from assistant.timing.wait_kinds.holds import PowerOffHold, ResetWindow
from assistant.units.quantity import Quantity

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


def compared(
    shortest: float, longest: float, least: Quantity | None, most: Quantity | None
) -> OffResult:
    """Return how a time off between two believable lengths [s] meets what is asked.

    Examples
    --------
    >>> compared(60.0, 90.0, Quantity(value=75.0, unit="s"), None)
    'cannot_tell'
    """
    low = least.value if least is not None else 0.0
    high = most.value if most is not None else math.inf
    if longest < low:
        return "too_short"
    if shortest > high:
        return "too_long"
    return "held" if shortest >= low and longest <= high else "cannot_tell"


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


def was_off_for(told: Sequence[Happening], at_least: Quantity) -> bool | None:
    """Return whether the supply was off at least so long before it came back."""
    span = _span(told, OFF)
    if span is None:
        return None
    shortest, longest = (length.total_seconds() for length in between(*span))
    result = compared(shortest, longest, at_least, None)
    return None if result == "cannot_tell" else result == "held"


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
    low, high = shortest.total_seconds(), longest.total_seconds()
    result = compared(low, high, row.wait.minimum, row.wait.give_up)
    return OffTime(row, shortest, longest, result)
