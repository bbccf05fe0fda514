"""Rows that two or more lamps make up together."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from assistant.record import Box, Record
from assistant.signals.kinds.base import (
    Count,
    Lamp,
    Level,
    Phase,
    RateClass,
    SignalBase,
)
from assistant.signals.kinds.states import Rate
from assistant.units.quantity import Seconds

CellState = Literal["on", "off", "flash", "slow", "fast", "flicker", "count", "any"]


class LampState(Record):
    """One lamp of a grid row; `any` is the document's own "does not matter"."""

    lamp: Lamp
    state: CellState
    count: Count | None = None


class SeveralLamps(SignalBase):
    """A row of a lamp grid: each lamp on, off or flashing."""

    kind: Literal["several_lamps"]
    lamps: Annotated[tuple[LampState, ...], Field(min_length=2)]
    legend_source: str | None = None
    """Where the document explains its glyphs."""


class WeightedLamp(Record):
    """A lamp that stands for a number where it is lit."""

    lamp: Lamp
    weight: Annotated[int, Field(ge=1)]


class WeightedLamps(SignalBase):
    """Lamps that add up to `number`; only where the document states the weights."""

    kind: Literal["weighted_lamps"]
    lamps: Annotated[tuple[WeightedLamp, ...], Field(min_length=2)]
    number: Annotated[int, Field(ge=0)]
    weights_stated: Literal[True]

    @model_validator(mode="after")
    def _one_way_to_show_it(self) -> WeightedLamps:
        if self.lit() is None:
            raise ValueError(f"the weights cannot show {self.number} in one way only")
        return self

    def lit(self) -> tuple[bool, ...] | None:
        """Return which lamps are lit, or None where none or several ways show it."""
        ways: list[tuple[int, tuple[bool, ...]]] = [(0, ())]
        for entry in self.lamps:
            ways = [
                (total + entry.weight * on, (*lit, bool(on)))
                for total, lit in ways
                for on in (0, 1)
                if total + entry.weight * on <= self.number
            ]
        found = [lit for total, lit in ways if total == self.number]
        return found[0] if len(found) == 1 else None


class PhasePair(SignalBase):
    """Lamps that blink at the same moment or take turns."""

    kind: Literal["phase_pair"]
    lamps: Annotated[tuple[Lamp, ...], Field(min_length=2)]
    phase: Phase
    rate_class: RateClass | None = None
    rate: Rate | None = None


class BankCount(SignalBase):
    """The state of one lamp picks the bank, the flashes of the other the row in it."""

    kind: Literal["bank_count"]
    bank_emitter: Lamp
    bank_state: Literal["on", "off", "flash"]
    count_emitter: Lamp
    count: Count
    window: Seconds | None = None
    pause: Seconds | None = None


class FlickerCount(SignalBase):
    """One lamp flickers while the other counts; a button swaps to the detail.

    Which lamp does which selects the group. The same look means another thing on the
    `detail` level, which `entry_action` brings up.
    """

    kind: Literal["flicker_count"]
    flicker_emitter: Lamp
    count_emitter: Lamp
    count: Count
    display_level: Level
    entry_action: str | None = None


class TensUnits(SignalBase):
    """Two lamps count tens and units of `number`, one after the other.

    For the unit named by `applies_to_unit` the document may add an `offset`: then the
    lamps show number and offset together, and the sum is shown with the candidate.
    """

    kind: Literal["tens_units"]
    tens_emitter: Lamp
    units_emitter: Lamp
    number: Annotated[int, Field(ge=1, le=99)]
    offset: Annotated[int, Field(ge=0, le=98)] = 0
    applies_to_unit: Box | None = None
    digit_gap: Seconds | None = None
    repeat_gap: Seconds | None = None

    @model_validator(mode="after")
    def _two_digits(self) -> TensUnits:
        if self.shown > 99:  # noqa: PLR2004 - two digits
            raise ValueError(f"{self.number} and {self.offset} make more than 99")
        return self

    @property
    def shown(self) -> int:
        """The number that the lamps count."""
        return self.number + self.offset


TogetherSignal = (
    SeveralLamps | WeightedLamps | PhasePair | BankCount | FlickerCount | TensUnits
)
