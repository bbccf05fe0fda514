"""What the screen shows of a job: values made in the worker, read by the panes."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from assistant.dialogue.answer import Answer, SourceRef, WaitShown

SHORT = 6
"""Last characters of a job's id that tell it from others on one desk."""


@dataclass(frozen=True, slots=True)
class Spoken:
    """One turn: what was typed or entered, and the answer."""

    at: datetime
    words: str
    answer: Answer | None
    before: Answer | None = None
    """The answer shown just before, so that standing cautions are not repeated."""


@dataclass(frozen=True, slots=True)
class JobView:
    """How one job stands."""

    job: str
    answer: Answer
    at: datetime
    role: str = ""
    plate: tuple[tuple[str, str], ...] = ()
    context: tuple[str, ...] = ()
    question: str = ""
    options: tuple[str, ...] = ()
    acknowledged: tuple[str, ...] = ()
    turns: int = 0
    ended: bool = False


@dataclass(frozen=True, slots=True)
class JobLine:
    """One job in the list, with its timers."""

    job: str
    unit: str
    site: str
    state: Literal["open", "parked", "closed"]
    last: datetime
    waits: tuple[WaitShown, ...] = ()
    acknowledged: tuple[str, ...] = ()
    events: int = 0
    """How many were noted; the same number is the same job."""

    @property
    def name(self) -> str:
        """What tells the job from others: unit, place, end of its id."""
        parts = (self.unit or "unit not known", self.site, self.job[-SHORT:])
        return " ".join(filter(None, parts))


def over(line: JobLine) -> tuple[WaitShown, ...]:
    """Return the waits of a job that are over and were not acknowledged."""
    return tuple(
        wait
        for wait in line.waits
        if wait.state in ("ready", "overdue") and wait.id not in line.acknowledged
    )


def running(line: JobLine) -> tuple[WaitShown, ...]:
    """Return the waits of a job that run towards a known end, the next one first."""
    ends = [
        (end, wait.id, wait)
        for wait in line.waits
        if wait.state == "running" and (end := end_of(wait)) is not None
    ]
    return tuple(wait for _, _, wait in sorted(ends, key=lambda each: each[:2]))


def end_of(wait: WaitShown) -> datetime | None:
    """Return when a wait is ready; of one without that, when to give up."""
    return wait.usual or wait.earliest or wait.give_up


def over_since(wait: WaitShown) -> datetime | None:
    """Return since when a wait is ready or, past its longest time, overdue."""
    return wait.give_up if wait.state == "overdue" else end_of(wait)


def ordered(lines: Iterable[JobLine]) -> tuple[JobLine, ...]:
    """Return jobs: those with an ended wait on top, the longest ended first.

    Then open ones, parked ones, closed ones; the one worked on last first.
    """
    ranks = {"open": 1, "parked": 2, "closed": 3}

    def place(line: JobLine) -> tuple[int, float, str]:
        ended = [since for wait in over(line) if (since := over_since(wait))]
        if ended:
            return (0, min(ended).timestamp(), line.job)
        return (ranks[line.state], -line.last.timestamp(), line.job)

    return tuple(sorted(lines, key=place))


def looks_due(lines: Iterable[JobLine], looked: datetime, now: datetime) -> bool:
    """Say whether some timer came to an instant that changes how it stands.

    Also when the clock went back since they were looked at.
    """
    if now < looked - timedelta(seconds=1):
        return True
    marks = (
        mark
        for line in lines
        for wait in line.waits
        for mark in (wait.earliest, wait.usual, wait.give_up)
    )
    return any(mark is not None and looked < mark <= now for mark in marks)


def sources_of(answer: Answer) -> tuple[SourceRef, ...]:
    """Return every place an answer cites that can be opened, each once, in order."""
    told = [source for each in answer.statements for source in each.sources]
    for group in (answer.decodes, answer.waits, answer.stops, answer.verdicts):
        for each in group:
            told += getattr(each, "sources", ())
            for candidate in getattr(each, "candidates", ()):
                told += candidate.sources
    if answer.next_check:
        told += answer.next_check.sources
    seen: dict[tuple[str, int, str], SourceRef] = {}
    for source in told:
        if source.document_id:
            seen.setdefault((source.document_id, source.page, source.quote), source)
    return tuple(seen.values())
