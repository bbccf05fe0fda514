"""Rows of one lamp that is lit, dark or blinking without a count."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Record, Source
from assistant.signals.kinds.base import Lamp, RateClass, SignalBase
from assistant.units.quantity import Seconds

Hertz = Annotated[float, Field(gt=0, le=50, strict=False)]


class Steady(SignalBase):
    """The lamp is on and does not change."""

    kind: Literal["steady"]
    lamp: Lamp


class Off(SignalBase):
    """The lamp is dark."""

    kind: Literal["off"]
    lamp: Lamp


class Heartbeat(SignalBase):
    """The lamp grows bright and dim in turn and never goes dark."""

    kind: Literal["heartbeat"]
    lamp: Lamp
    period: Seconds | None = None


class EvenBlink(SignalBase):
    """The lamp blinks evenly, with no pause between groups."""

    kind: Literal["even_blink"]
    lamp: Lamp
    on: Seconds | None = None
    off: Seconds | None = None


class Rate(Record):
    """How fast a blink is, by the document's own definition.

    Either `hz_low` to `hz_high` (blinks in a second), or `on` and `off`. `defined_in`
    is the footnote that says so; without a definition the class is only a word.
    """

    hz_low: Hertz | None = None
    hz_high: Hertz | None = None
    on: Seconds | None = None
    off: Seconds | None = None
    defined_in: Source | None = None

    def band(self) -> tuple[float, float] | None:
        """Return the lowest and highest blinks in a second, or None if not defined.

        Examples
        --------
        >>> Rate(on="0.2 s", off="0.3 s").band(), Rate().band()
        ((2.0, 2.0), None)
        """
        if self.on is not None and self.off is not None:
            hertz = round(1 / (self.on.value + self.off.value), 9)
            return (hertz, hertz)
        low, high = self.hz_low or self.hz_high, self.hz_high or self.hz_low
        return None if low is None or high is None else (low, high)


class RateBlink(SignalBase):
    """The lamp blinks evenly, and how fast it does is the message."""

    kind: Literal["rate_blink"]
    lamp: Lamp
    rate_class: RateClass
    rate: Rate | None = None


class SingleFlash(SignalBase):
    """One flash every `window`: slower than an even blink, and no count."""

    kind: Literal["single_flash"]
    lamp: Lamp
    window: Seconds
    on: Seconds | None = None


class AnalogRate(SignalBase):
    """The faster `shows` is, the faster the lamp blinks: never read as a count."""

    kind: Literal["analog_rate"]
    lamp: Lamp
    shows: str


StateSignal = (
    Steady | Off | Heartbeat | EvenBlink | RateBlink | SingleFlash | AnalogRate
)
