"""Waits as values: what is running, and until when."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime
from types import MappingProxyType
from typing import Literal

from assistant.record import UnitMatch
from assistant.timing.moment import Moment
from assistant.timing.triggers import Trigger
from assistant.timing.wait_kinds.base import Condition
from assistant.timing.wait_kinds.every import Wait
from assistant.units.quantity import Quantity

Standing = Literal["running", "ready", "overdue", "start_unknown"]
Latched = Literal["yes", "cannot_tell"]


@dataclass(frozen=True, slots=True)
class WaitRow:
    """One written wait with its global id and how it fits the unit."""

    gid: str
    wait: Wait
    unit_match: UnitMatch


@dataclass(frozen=True, slots=True)
class Happening:
    """Something that starts or cancels waits; `at` None is a time not known.

    `event` is the protection that stopped the unit, None where it was not named.
    """

    trigger: Trigger
    at: Moment | None
    event: str | None = None


@dataclass(frozen=True, slots=True)
class ValueTold:
    """A value that was read: of what, and when."""

    sensor: str
    value: Quantity
    at: Moment


@dataclass(frozen=True, slots=True)
class Known:
    """What else was said that a wait depends on; what is missing was not said.

    `attempts` are the restarts it may be (1 is the first), none when not told;
    `said` the yes-or-no of `OnlyWhen`.
    """

    attempts: tuple[int, ...] = ()
    said: Mapping[str, bool] = field(default_factory=lambda: MappingProxyType({}))
    values: tuple[ValueTold, ...] = ()


NOTHING_KNOWN = Known()


@dataclass(frozen=True, slots=True)
class ConditionState:
    """A value that a wait looks at; `met` None where it was not told since."""

    condition: Condition
    met: bool | None
    told: Quantity | None = None


@dataclass(frozen=True, slots=True)
class Choice:
    """One of several lengths that a wait may have; `over` None: no restart at all."""

    words: str
    length: Quantity | None
    over: datetime | None = None


@dataclass(frozen=True, slots=True)
class WaitState:
    """One wait in force.

    `earliest`, `usual`, `give_up` are UTC deadlines: "wait at least" is counted from
    the latest believable start, "not longer than" from the earliest. Where it is not
    known which of several lengths applies, `earliest` is the longest and `choices`
    has each. `unsaid` names what must hold for the wait to run and was not said.
    """

    row: WaitRow
    started: Moment | None
    earliest: datetime | None
    usual: datetime | None
    give_up: datetime | None
    state: Standing
    conditions: tuple[ConditionState, ...] = ()
    choices: tuple[Choice, ...] = ()
    unsaid: tuple[str, ...] = ()
    latched: Latched | None = None

    @property
    def open_values(self) -> tuple[ConditionState, ...]:
        """The values not known to be met, where they hold the wait up."""
        if self.row.wait.logic == "or" and any(one.met for one in self.conditions):
            return ()
        return tuple(one for one in self.conditions if one.met is not True)
