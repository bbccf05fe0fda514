"""Defrost: what lets it begin, what ends it, what follows, what the lamp shows."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import model_validator

from assistant.record import Record
from assistant.timing.triggers import Trigger
from assistant.timing.wait_kinds.base import Condition, WaitBase
from assistant.timing.wait_kinds.runs import OrderStep
from assistant.units.quantity import Kelvins, Quantity, Seconds


class EntryRow(Record):
    """One line of a table of entry by outdoor temperature.

    It holds from `ambient_from` up to, not including, `ambient_below`.
    """

    ambient_from: Kelvins | None = None
    ambient_below: Kelvins | None = None
    coil_at_most: Kelvins
    run: Seconds | None = None


class Entry(Record):
    """What must come about before a defrost begins; all that is stated.

    `run` is the running time added up since the last one; `coil_under_ambient` how
    far the outdoor coil is below the outdoor air; `table` the coil by outdoor air.
    """

    run: Seconds | None = None
    coil_at_most: Kelvins | None = None
    coil_under_ambient: Quantity | None = None
    table: tuple[EntryRow, ...] = ()
    coil: str = "outdoor coil temperature"
    ambient: str = "outdoor temperature"

    @model_validator(mode="after")
    def _states_something(self) -> Entry:
        stated = (self.run, self.coil_at_most, self.coil_under_ambient)
        if not self.table and all(one is None for one in stated):
            raise ValueError("an entry states a running time, a coil or a table")
        under = self.coil_under_ambient
        if under is not None and under.unit != "dK":
            raise ValueError("`coil_under_ambient` is a difference, such as `8 K diff`")
        return self


class Defrost(WaitBase):
    """A defrost: the lamp during it is no fault; it ends by value or time.

    `end_at` ends it by value, `give_up` by time. `interval` is the least time from
    the end of one to the start of the next; `after` what starts when it has ended.
    """

    natural_end: ClassVar[tuple[Trigger, ...]] = ("defrost_ended",)

    kind: Literal["defrost"]
    trigger: Trigger = "defrost_started"
    entry: Entry | None = None
    interval: Seconds | None = None
    end_at: Condition | None = None
    after: tuple[OrderStep, ...] = ()

    @property
    def wanted(self) -> tuple[Condition, ...]:
        """The value that ends it."""
        ends = (self.end_at,) if self.end_at is not None else ()
        return (*ends, *self.conditions)


class OffDefrost(WaitBase):
    """Ice left when heating was stopped by the user is melted before all is off."""

    kind: Literal["off_defrost"]
    trigger: Trigger = "call_ended"
    end_at: Condition | None = None

    @property
    def wanted(self) -> tuple[Condition, ...]:
        """The value that ends it."""
        ends = (self.end_at,) if self.end_at is not None else ()
        return (*ends, *self.conditions)
