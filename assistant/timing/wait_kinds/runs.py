"""What starts after what, and what runs on after its call has ended."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from assistant.record import Record
from assistant.timing.triggers import Trigger
from assistant.timing.wait_kinds.base import WaitBase, needs_a_length
from assistant.units.quantity import Seconds


class OrderStep(Record):
    """One part of a start-up order and how long after `after` it starts."""

    part: str
    after: str
    """`trigger`, or the part it follows."""
    earliest: Seconds | None = None
    latest: Seconds | None = None


class StartUpOrder(WaitBase):
    """Which part starts first, and how long after which event."""

    kind: Literal["startup_order"]
    order: Annotated[tuple[OrderStep, ...], Field(min_length=2)]

    @property
    def durations(self) -> tuple[Seconds, ...]:
        """The order's own lengths, and by when each part should run."""
        latest = (step.latest for step in self.order)
        return (*super().durations, *(one for one in latest if one is not None))


class RunOn(WaitBase):
    """A part runs on after the call: it pumps down, drains or clears the air."""

    kind: Literal["run_on"]
    trigger: Trigger = "call_ended"
    part: str
    purpose: Literal["pump_down", "drain", "purge"]


class BlowerDelay(WaitBase):
    """The indoor blower follows the call, or stays on after it, by so long."""

    kind: Literal["blower_delay"]
    turns: Literal["on", "off"]
    part: str = "indoor fan"

    @model_validator(mode="after")
    def _has_a_length(self) -> BlowerDelay:
        needs_a_length(self)
        return self
