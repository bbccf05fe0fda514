"""Protection stops as told, and what each counter comes to, as values."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from assistant.record import UnitMatch
from assistant.timing.moment import Moment
from assistant.timing.stop_kinds import Reset, ResetName, Stop

State = Literal["locked", "open", "unknown"]
Range = tuple[float, float]
"""Smallest and largest believable value."""


@dataclass(frozen=True, slots=True)
class StopRow:
    """One written stop counter with its global id and how it fits the unit."""

    gid: str
    stop: Stop
    unit_match: UnitMatch


@dataclass(frozen=True, slots=True)
class StopSeries:
    """Stops told in one breath.

    Attributes
    ----------
    event : str or None
        The protection that stopped; None where it was not named.
    last : Moment
        When the newest was.
    count : tuple of int
        How many; several where the teller was not sure.
    apart : (float, float) or None
        The time between two [s]; None where it was not told.
    since : datetime or None
        None of them was before; None is no bound.
    ran : (float, float) or None
        How long after a start each came [s].
    in_a_row, one_call : bool
        Told to be without a good run, or without a new call, in between.
    device : str or None
        The device that stopped.
    """

    event: str | None
    last: Moment
    count: tuple[int, ...] = (1,)
    apart: Range | None = None
    since: datetime | None = None
    ran: Range | None = None
    in_a_row: bool = False
    one_call: bool = False
    device: str | None = None


@dataclass(frozen=True, slots=True)
class ResetTold:
    """A reset that was done.

    `off` is how long the power was off [s], counted from `off_from`; `supplies` how
    they were switched; `cleared` what was seen to come of it. None is not told.
    """

    at: Moment
    which: ResetName | None = None
    off: Range | None = None
    off_from: Literal["power_off", "lamp_dark"] | None = None
    supplies: Literal["together", "one_by_one", "one_left_on"] | None = None
    cleared: bool | None = None


@dataclass(frozen=True, slots=True)
class GoodRun:
    """The unit ran without a stop: how long [s], or how many whole cycles."""

    at: Moment
    ran: Range | None = None
    cycles: tuple[int, ...] = ()


@dataclass(frozen=True, slots=True)
class StopsTold:
    """Everything told that counters of protection stops rest on."""

    stops: tuple[StopSeries, ...] = ()
    resets: tuple[ResetTold, ...] = ()
    good: tuple[GoodRun, ...] = ()
    calls: tuple[Moment, ...] = ()
    starts: tuple[Moment, ...] = ()
    running: bool | None = None
    """Whether the unit runs now."""
    in_a_row: bool = False
    one_call: bool = False
    """Told of all stops together, not only of each series."""


Took = Literal["yes", "no", "maybe"]
Why = Literal[
    "took",
    "not_cleared",
    "other_reset",
    "lamp_only",
    "one_left_on",
    "one_by_one",
    "too_short",
    "too_long",
    "which_unknown",
    "supplies_unknown",
    "off_unknown",
    "order",
]


@dataclass(frozen=True, slots=True)
class Taking:
    """Whether a told reset took, why, and by which written reset."""

    took: Took
    why: Why
    reset: Reset | None = None


@dataclass(frozen=True, slots=True)
class StopCount:
    """One counter: how many stops stand in it, and what that means.

    Attributes
    ----------
    low, high : int
        Bounds of the count over all believable times; a lockout counts in full.
    state : str
        `locked` holds for every believable course, `open` for none, `unknown` for
        some.
    left : int
        How many more stops lock it at the most careful reading; 0 unless open.
    oldest_leaves : datetime or None
        When the oldest has surely left the window; None without a window.
    levels : tuple of int
        The levels that may be locked; 0 is none.
    upper : tuple of (int, int, int)
        For each further level: bounds of the lockouts in its window, and its limit.
    releases : (datetime, datetime) or None
        When a lockout, or the pause after a stop, ends by itself.
    latches : (datetime, datetime) or None
        When it latches, unless the unit has recovered.
    keys : tuple of str
        The devices or protections, counted alone, that it may be about.
    exact : bool
        Whether every course was followed.
    """

    row: StopRow
    low: int
    high: int
    limit: int
    state: State
    left: int
    oldest_leaves: datetime | None
    levels: tuple[int, ...] = (0,)
    upper: tuple[tuple[int, int, int], ...] = ()
    releases: tuple[datetime, datetime] | None = None
    latches: tuple[datetime, datetime] | None = None
    keys: tuple[str, ...] = ()
    exact: bool = True

    @property
    def stands(self) -> bool:
        """Whether anything may stand in it."""
        return self.high > 0 or any(high for _, high, _ in self.upper)
