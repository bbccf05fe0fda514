"""Waits as values: what is running, and until when."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from assistant.record import UnitMatch
from assistant.timing.kinds import Trigger, Wait
from assistant.timing.moment import Moment


@dataclass(frozen=True, slots=True)
class WaitRow:
    """One written wait with its global id and how it fits the unit."""

    gid: str
    wait: Wait
    unit_match: UnitMatch


@dataclass(frozen=True, slots=True)
class Happening:
    """Something that starts or cancels waits; `at` None is a time not known."""

    trigger: Trigger
    at: Moment | None


@dataclass(frozen=True, slots=True)
class WaitState:
    """One wait in force.

    `earliest`, `usual`, `give_up` are UTC deadlines: "wait at least" is counted from
    the latest believable start, "not longer than" from the earliest.
    """

    row: WaitRow
    started: Moment | None
    earliest: datetime | None
    usual: datetime | None
    give_up: datetime | None
    state: Literal["running", "ready", "overdue", "start_unknown"]
