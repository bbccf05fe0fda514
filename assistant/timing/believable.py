"""Plays events of uncertain times in every order and at every distance they can have.

The events are placed from the earliest to the latest. A machine says what may follow
when one more event has come, and under which bounds on the distances; the bounds are
kept exactly. What the machine no longer looks back at is left out of them, and courses
that cannot be told apart any more are followed once.
"""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass
from typing import Generic, Protocol, TypeVar

from assistant.timing.zones import ORIGIN, Difference, Span, Zone

State = TypeVar("State", bound=Hashable)
MOST_COURSES = 3_000
"""Courses followed before the question is left open."""
_FIRST = ("good", "start", "call", "stop", "reset", "now")
"""Which of two events at one instant comes first: a good run is over when its stop
counts, a new call counts its own stop, and a reset clears a stop of its instant."""


@dataclass(frozen=True, slots=True)
class Event:
    """One event: what it is, when it may have been, and what the machine reads.

    One that is `after` another follows it by `gap`, and its time is bound to it.
    """

    what: str
    span: Span
    data: Hashable = None
    after: int | None = None
    gap: Span = (0, 0)


class Machine(Protocol[State]):
    """A rule as states: what holds before all, what may follow, what is looked at."""

    def begin(self) -> State:
        """Return the state before any event."""
        ...

    def step(
        self, state: State, events: Sequence[Event], at: int
    ) -> Iterable[tuple[tuple[Difference, ...], State]]:
        """Yield the states that event `at` may lead to, each with its bounds."""
        ...

    def live(self, state: State) -> tuple[int, ...]:
        """Return the events whose times the state still looks back at."""
        ...


@dataclass(frozen=True, slots=True)
class _Course(Generic[State]):
    """How far the events were placed (a bit for each), and what holds then."""

    state: State
    placed: int
    last: int
    zone: Zone


def courses(
    events: Sequence[Event], machine: Machine[State]
) -> tuple[tuple[State, Zone], ...] | None:
    """Return every state that some placement of the events ends in.

    Parameters
    ----------
    events : sequence of Event
        The last is ``now``; no span reaches beyond it. An event that is `after`
        another stands behind it in the sequence.
    machine : Machine
        The rule.

    Returns
    -------
    tuple of (state, Zone) or None
        With the times that the state still looks back at; None where there are so
        many courses that not all were followed.
    """
    first = _Course(machine.begin(), 0, ORIGIN, Zone())
    seen: set[_Course[State]] = {first}
    waiting = [first]
    ended: list[tuple[State, Zone]] = []
    while waiting:
        course = waiting.pop()
        if course.placed == (1 << len(events)) - 1:
            ended.append((course.state, course.zone))
            continue
        for further in _further(course, events, machine):
            if further not in seen:
                seen.add(further)
                waiting.append(further)
        if len(seen) > MOST_COURSES:
            return None
    return tuple(ended)


def _further(
    course: _Course[State], events: Sequence[Event], machine: Machine[State]
) -> Iterable[_Course[State]]:
    for at in _next(course, events):
        zone = _with(course, events, at)
        for bounds, state in machine.step(course.state, events, at) if zone else ():
            kept = zone.within(bounds) if zone is not None else None
            if kept is not None:
                placed = course.placed | 1 << at
                names = {*machine.live(state), at, *_leaders(events, placed)}
                yield _Course(state, placed, at, kept.only(names))


def _next(course: _Course[State], events: Sequence[Event]) -> list[int]:
    """Return which events may come next: of two alike, the one that closes first.

    Exchanging two alike whose spans are both no later leaves both in their spans; not
    so where another event is bound to one of them, or it to another.
    """
    bound = {event.after for event in events}
    left = [at for at in range(len(events)) if not course.placed >> at & 1]
    # What is surely over before another begins is placed before it.
    over = min(events[at].span[1] for at in left)
    free = [
        at
        for at in left
        if events[at].span[0] <= over and _is_free(events[at], course.placed)
    ]
    if len(left) > 1:
        free = [at for at in free if events[at].what != "now"]
    return [
        at
        for at in free
        if not any(
            other != at
            and not {other, at} & bound
            and _comes_before(events[other], other, events[at], at)
            for other in free
        )
    ]


def _is_free(event: Event, placed: int) -> bool:
    return event.after is None or bool(placed >> event.after & 1)


def _comes_before(one: Event, at: int, other: Event, beside: int) -> bool:
    follows = one.after is not None or other.after is not None
    if follows or (one.what, one.data) != (other.what, other.data):
        return False
    no_later = one.span[0] <= other.span[0] and one.span[1] <= other.span[1]
    return no_later and (one.span != other.span or at < beside)


def _leaders(events: Sequence[Event], placed: int) -> Iterable[int]:
    """Yield the placed events that one not yet placed is bound to."""
    for at, event in enumerate(events):
        waits = event.after is not None and not placed >> at & 1
        if waits and event.after is not None and placed >> event.after & 1:
            yield event.after


def _with(course: _Course[State], events: Sequence[Event], at: int) -> Zone | None:
    event = events[at]
    zone = course.zone.placed(at, event.span)
    bounds: list[Difference] = []
    if course.last != ORIGIN:
        before = events[course.last].what
        apart = int(_FIRST.index(event.what) < _FIRST.index(before))
        bounds.append((course.last, at, -apart))
    if event.after is not None:
        short, long = event.gap
        bounds += [(at, event.after, long), (event.after, at, -short)]
    return zone.within(bounds)
