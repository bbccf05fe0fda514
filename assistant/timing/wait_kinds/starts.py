"""Waits before the compressor may start, and how long it then must run."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import Field, model_validator

from assistant.timing.triggers import Trigger
from assistant.timing.wait_kinds.base import WaitBase, needs_a_length
from assistant.units.quantity import Seconds


class StartDelay(WaitBase):
    """Held back after power-up, a reset or a call.

    `if_off_before` is the shorter delay of a unit that was off before the outage.
    """

    kind: Literal["start_delay"]
    if_off_before: Seconds | None = None

    @model_validator(mode="after")
    def _the_other_delay_is_shorter(self) -> StartDelay:
        longest = self.usual or self.minimum
        if self.if_off_before is None:
            return self
        if longest is None or self.if_off_before.value >= longest.value:
            raise ValueError("`if_off_before` is shorter than `minimum` and `usual`")
        return self


class MinimumOff(WaitBase):
    """The compressor stays off at least so long after it stopped."""

    natural_end: ClassVar[tuple[Trigger, ...]] = ("compressor_started",)

    kind: Literal["minimum_off"]


class MinimumRun(WaitBase):
    """The compressor runs at least so long once started, call or no call."""

    natural_end: ClassVar[tuple[Trigger, ...]] = ("compressor_stopped",)

    kind: Literal["minimum_run"]
    trigger: Trigger = "compressor_started"

    @model_validator(mode="after")
    def _has_a_length(self) -> MinimumRun:
        needs_a_length(self)
        return self


class RestartDelay(WaitBase):
    """A delay before a restart that gets shorter or longer from attempt to attempt.

    `by_attempt` lists the delay before the first restart, the second, and so on;
    `then` says what follows the last one listed.
    """

    natural_end: ClassVar[tuple[Trigger, ...]] = ("compressor_started",)

    kind: Literal["restart_delay"]
    trigger: Trigger = "compressor_stopped"
    by_attempt: Annotated[tuple[Seconds, ...], Field(min_length=2)]
    then: Literal["repeats", "no_retry"] | None = None

    @property
    def durations(self) -> tuple[Seconds, ...]:
        """Every duration that says when the wait is over."""
        return self.by_attempt

    @model_validator(mode="after")
    def _the_list_stands_alone(self) -> RestartDelay:
        if self.minimum is not None or self.usual is not None:
            raise ValueError("`by_attempt` stands instead of `minimum` and `usual`")
        return self


class Preheat(WaitBase):
    """The compressor is warmed before it may start.

    `after_off_for`: only where the supply was off at least so long.
    """

    kind: Literal["preheat"]
    trigger: Trigger = "power_on"
    after_off_for: Seconds | None = None

    @model_validator(mode="after")
    def _has_a_length(self) -> Preheat:
        if not self.wanted:
            needs_a_length(self)
        return self


class ResetDelay(WaitBase):
    """Held back after a reset; a second one within `within` of the first is longer."""

    kind: Literal["reset_delay"]
    trigger: Literal["reset", "second_reset"] = "reset"
    within: Seconds | None = None

    @model_validator(mode="after")
    def _within_is_of_a_second_one(self) -> ResetDelay:
        if self.within is not None and self.trigger != "second_reset":
            raise ValueError("`within` counts from the first reset to a second one")
        return self
