"""What every wait says: its trigger, durations, conditions and way out."""

from __future__ import annotations

from typing import ClassVar, Literal

from pydantic import model_validator

from assistant.record import Box, Item, Mode, Record
from assistant.timing.triggers import Trigger
from assistant.units.quantity import Quantity, Seconds

Operator = Literal["below", "at_most", "at_least", "above"]
OnlyWhen = Literal[
    "call present",
    "no call",
    "compressor running",
    "compressor stopped",
    "off before the outage",
    "running before the outage",
]
"""What must hold for a wait to run at all; said by a person, never taken for met."""


class Condition(Record):
    """A value that a wait looks at.

    `sensor` names it as a reading is named: ``supply``, ``bus``, ``outdoor
    temperature``, ``discharge temperature``.
    """

    sensor: str
    op: Operator
    value: Quantity

    def met_by(self, value: Quantity) -> bool | None:
        """Return whether a value meets it; None where the two cannot be compared."""
        if value.unit != self.value.unit:
            return None
        match self.op:
            case "below":
                return value.value < self.value.value
            case "at_most":
                return value.value <= self.value.value
            case "at_least":
                return value.value >= self.value.value
            case "above":
                return value.value > self.value.value


class WaitBase(Item):
    """What every wait says.

    `minimum`, `usual`, `give_up` count from `trigger`. `conditions` are values that
    must come about as well as the time (`logic: and`) or instead of it (`or`);
    `condition` says in words what cannot be compared. `only_when` must be said for
    the wait to run. `cancelled_by` ends it, `repeats_with` starts it anew.
    `stopped_by` names the protection, as its counter does, whose stop alone starts it.
    `lamp_during` names the signal row shown meanwhile; `bypass` needs its
    `bypass_side_effect`; `follows` says what happens at the end.
    """

    natural_end: ClassVar[tuple[Trigger, ...]] = ()
    """What ends a wait of this kind whether or not the row names it."""

    name: str
    trigger: Trigger
    stopped_by: str | None = None
    minimum: Seconds | None = None
    usual: Seconds | None = None
    give_up: Seconds | None = None
    approx: bool = False
    from_state: str | None = None
    condition: str | None = None
    conditions: tuple[Condition, ...] = ()
    logic: Literal["and", "or"] = "and"
    only_when: tuple[OnlyWhen, ...] = ()
    until_event: str | None = None
    cancelled_by: tuple[Trigger, ...] = ()
    repeats_with: tuple[Trigger, ...] = ()
    bypass: str | None = None
    bypass_side_effect: str | None = None
    can_user_shorten: bool | None = None
    lamp_during: str | None = None
    mode: Mode | None = None
    scope: Box | None = None
    follows: str | None = None
    overdue: str | None = None
    """What to do when `give_up` has passed."""

    @property
    def wanted(self) -> tuple[Condition, ...]:
        """The values that the wait looks at, those of its kind among them."""
        return self.conditions

    @property
    def enders(self) -> tuple[Trigger, ...]:
        """Everything that ends the wait once it has begun."""
        return tuple(dict.fromkeys((*self.natural_end, *self.cancelled_by)))

    @property
    def durations(self) -> tuple[Seconds, ...]:
        """Every duration that says when the wait is over."""
        stated = (self.minimum, self.usual, self.give_up)
        return tuple(one for one in stated if one is not None)

    @model_validator(mode="after")
    def _a_protection_has_its_stop(self) -> WaitBase:
        if self.stopped_by is not None and self.trigger != "protection_stop":
            raise ValueError("`stopped_by` needs `trigger: protection_stop`")
        return self

    @model_validator(mode="after")
    def _either_has_something_to_choose(self) -> WaitBase:
        if self.logic == "or" and not self.wanted:
            raise ValueError("`logic: or` needs a value beside the time")
        return self


def needs_a_length(wait: WaitBase) -> None:
    """Refuse a wait whose kind is nothing without its length.

    Raises
    ------
    ValueError
        When neither `minimum` nor `usual` is stated.
    """
    if wait.minimum is None and wait.usual is None:
        raise ValueError("this kind of wait states its `minimum` or `usual`")
