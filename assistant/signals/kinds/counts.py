"""Rows of one lamp or buzzer whose flashes or beeps are counted."""

from __future__ import annotations

from typing import Literal

from pydantic import model_validator

from assistant.signals.kinds.base import Count, DigitCount, Lamp, SignalBase
from assistant.units.quantity import Ratio, Seconds


class CountPerWindow(SignalBase):
    """`count` flashes every `window`; the pause is implied."""

    kind: Literal["count_per_window"]
    lamp: Lamp
    count: Count
    window: Seconds


class GroupThenPause(SignalBase):
    """`count` flashes, then a dark `pause`, again and again."""

    kind: Literal["group_then_pause"]
    lamp: Lamp
    count: Count
    on: Seconds | None = None
    off: Seconds | None = None
    pause: Seconds | None = None
    tolerance: Ratio | None = None
    """By how much the printed times may be off."""


class ShortLong(SignalBase):
    """`short` quick flashes and `long` slow ones: two digits of one code.

    `digit_order` says which come first. `digit_gap` parts the digits, `repeat_gap` the
    repeats.
    """

    kind: Literal["short_long"]
    lamp: Lamp
    short: DigitCount
    long: DigitCount
    digit_order: Literal["short_first", "long_first"] = "short_first"
    short_on: Seconds | None = None
    long_on: Seconds | None = None
    digit_gap: Seconds | None = None
    repeat_gap: Seconds | None = None

    @model_validator(mode="after")
    def _something_flashes(self) -> ShortLong:
        if self.short + self.long == 0:
            raise ValueError("`short` and `long` are both 0: nothing would flash")
        return self


class Beeps(SignalBase):
    """`count` beeps of a buzzer, every `window` or with a `pause` between groups."""

    kind: Literal["beeps"]
    buzzer: Lamp | None = None
    count: Count
    window: Seconds | None = None
    pause: Seconds | None = None


CountSignal = CountPerWindow | GroupThenPause | ShortLong | Beeps
