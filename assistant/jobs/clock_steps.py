"""A wall clock that was set while a job ran, found from the job's own events."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from assistant.jobs.events import SteadyMark

SHOWN_FROM_S = 5.0
"""Seconds by which two clocks may differ before it is said, and counted with."""


@dataclass(frozen=True, slots=True)
class Reading:
    """Both clocks of a machine at one event."""

    machine: str
    wall: datetime
    steady: SteadyMark | None


@dataclass(frozen=True, slots=True)
class ClockStep:
    """The wall clock was set by `seconds`, positive when forward, after a turn."""

    turn: int
    seconds: float


def step_between(before: Reading, after: Reading) -> float | None:
    """Return by how many seconds the wall clock was set between two events.

    With steady seconds of one program run it is what the wall clock moved beyond
    them. Without, only a wall clock that went back shows: by at least so much. None
    where nothing shows, or no more than `SHOWN_FROM_S`.

    Examples
    --------
    >>> from datetime import UTC
    >>> at = datetime(2026, 5, 4, 12, tzinfo=UTC)
    >>> early = Reading("M", at, SteadyMark(run="r", seconds=10.0))
    >>> step_between(early, Reading("M", at, SteadyMark(run="r", seconds=70.0)))
    -60.0
    """
    if before.machine != after.machine:
        return None
    moved = (after.wall - before.wall).total_seconds()
    old, new = before.steady, after.steady
    if old is not None and new is not None and old.run == new.run:
        by = moved - (new.seconds - old.seconds)
    else:
        by = min(moved, 0.0)
    return by if abs(by) > SHOWN_FROM_S else None


def set_since(steps: Sequence[ClockStep], turn: int) -> float:
    """Return by how many seconds the clock was set after a turn, all in all."""
    return sum(step.seconds for step in steps if step.turn >= turn)
