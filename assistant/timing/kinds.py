"""The kinds of protection-stop counter that a pack may write."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from assistant.record import Item, Record
from assistant.units.quantity import Seconds


class Reset(Record):
    """How a lockout or lamp is cleared, and what that erases."""

    name: Literal["power", "button", "remote", "history"]
    order: int = 1
    scope: str | None = None
    """Such as "all supplies together"."""
    off_at_least: Seconds | None = None
    off_at_most: Seconds | None = None
    counted_from: Literal["power_off", "lamp_dark"] = "power_off"
    how: str
    evidence_lost: str


class StopBase(Item):
    """What every protection-stop counter says."""

    name: str
    event: str
    """The protection that stops, e.g. `high pressure`."""
    signal: str | None = None
    """The row shown once locked."""
    unit_action: Literal["lockout", "log_only"] = "lockout"
    resets: tuple[Reset, ...] = ()
    release: str | None = None
    causes: tuple[str, ...] = ()
    count_clears: str | None = None


class SlidingWindow(StopBase):
    """Locks on the `limit`-th stop within any `window`.

    `edge` says whether a stop exactly `window` ago still counts.
    """

    kind: Literal["sliding_window"]
    limit: Annotated[int, Field(ge=1)]
    window: Seconds
    edge: Literal["counts", "does_not_count"]

    @model_validator(mode="after")
    def _a_lockout_has_a_way_out(self) -> SlidingWindow:
        if self.unit_action == "lockout" and not self.resets and not self.release:
            raise ValueError("a lockout names its reset or its release")
        return self


Stop = SlidingWindow
"""Any row of `stops.yaml`."""
