"""Waits for a value, for a release, for cooling, or with the supply off."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import Field, model_validator

from assistant.timing.triggers import Trigger
from assistant.timing.wait_kinds.base import Condition, WaitBase, needs_a_length
from assistant.units.quantity import Quantity, Seconds, Volts

LOWEST_LIMIT_V = 50.0
"""A charge is measured down to the lower of the document's limit and this (volts)."""


class Standby(WaitBase):
    """Waits until a value is back, e.g. the supply within its band.

    With `latches`, a value that is not back by `give_up` makes the trip stay; with
    `survives_restart` even through power off and on, until `cleared_by`.
    """

    natural_end: ClassVar[tuple[Trigger, ...]] = ("value_back",)

    kind: Literal["standby"]
    sensor: str = "supply"
    condition_low: Quantity | None = None
    condition_high: Quantity | None = None
    latches: bool = False
    survives_restart: bool = False
    cleared_by: tuple[Trigger, ...] = ()

    @property
    def wanted(self) -> tuple[Condition, ...]:
        """The band as values, and what else is written."""
        band: list[Condition] = []
        if self.condition_low is not None:
            low = self.condition_low
            band.append(Condition(sensor=self.sensor, op="at_least", value=low))
        if self.condition_high is not None:
            high = self.condition_high
            band.append(Condition(sensor=self.sensor, op="at_most", value=high))
        return (*band, *self.conditions)

    @model_validator(mode="after")
    def _a_latch_has_its_time(self) -> Standby:
        if self.latches and self.give_up is None:
            raise ValueError("`latches` needs `give_up`: the time after which it does")
        if not self.latches and (self.survives_restart or self.cleared_by):
            raise ValueError("`survives_restart` and `cleared_by` need `latches: true`")
        return self


class ValueAndTime(WaitBase):
    """Waits for a value and a time, or for whichever comes first."""

    kind: Literal["value_and_time"]
    conditions: Annotated[tuple[Condition, ...], Field(min_length=1)]

    @model_validator(mode="after")
    def _has_a_time_too(self) -> ValueAndTime:
        needs_a_length(self)
        return self


class SoftStop(WaitBase):
    """Stops, then starts by itself so many times; the stop after that stays."""

    natural_end: ClassVar[tuple[Trigger, ...]] = ("compressor_started",)

    kind: Literal["soft_stop"]
    trigger: Trigger = "protection_stop"
    retries: Annotated[int, Field(ge=1)] = 1

    @model_validator(mode="after")
    def _has_a_length(self) -> SoftStop:
        needs_a_length(self)
        return self


class AutoRelease(WaitBase):
    """A lock that opens by itself after a time."""

    kind: Literal["auto_release"]
    trigger: Trigger = "protection_stop"

    @model_validator(mode="after")
    def _has_a_length(self) -> AutoRelease:
        needs_a_length(self)
        return self


class SelfReset(WaitBase):
    """A protector, such as a transformer's, closes again once it has cooled."""

    kind: Literal["self_reset"]
    trigger: Trigger = "overload_opened"
    device: str


class Cooling(WaitBase):
    """Something must cool before a measurement of it counts."""

    natural_end: ClassVar[tuple[Trigger, ...]] = ("compressor_started",)

    kind: Literal["cooling"]
    trigger: Trigger = "compressor_stopped"
    before: str
    """What counts only afterwards, such as ``an ohm reading of the windings``."""


class CapacitorBleed(WaitBase):
    """Charge goes by itself after power off; the meter decides, never the time.

    The bus must read at or below the lower of `below` and 50 V.
    """

    natural_end: ClassVar[tuple[Trigger, ...]] = (
        "power_on",
        "power_restored",
    )

    kind: Literal["capacitor_bleed"]
    trigger: Literal["power_off", "lamp_dark"] = "power_off"
    below: Volts
    at: str = "bus"
    """What is measured, as a reading is named."""

    @property
    def wanted(self) -> tuple[Condition, ...]:
        """The voltage to measure, and what else is written."""
        limit = min(self.below.value, LOWEST_LIMIT_V)
        volts = Quantity(value=limit, unit="V")
        return (Condition(sensor=self.at, op="at_most", value=volts), *self.conditions)

    @model_validator(mode="after")
    def _minutes_and_volts(self) -> CapacitorBleed:
        needs_a_length(self)
        if self.logic == "or":
            raise ValueError("a charge is gone by time and by volts, never by either")
        return self


class PowerOffHold(WaitBase):
    """Power stays off so long before it is restored, for a reset to take."""

    natural_end: ClassVar[tuple[Trigger, ...]] = (
        "power_on",
        "power_restored",
    )

    kind: Literal["power_off_hold"]


class ResetWindow(WaitBase):
    """Power is off longer than `minimum` and less than `give_up`, for a reset to take.

    Counted from power off or from the lamp going dark.
    """

    natural_end: ClassVar[tuple[Trigger, ...]] = (
        "power_on",
        "power_restored",
    )

    kind: Literal["reset_window"]
    trigger: Literal["power_off", "lamp_dark"] = "power_off"
    minimum: Seconds
    give_up: Seconds
