"""The kinds of protection-stop counter and of reset that a pack may write."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import Field, model_validator

from assistant.record import Item, Record
from assistant.units.quantity import Seconds

ResetName = Literal[
    "power", "button", "remote", "history", "thermostat", "test_pins", "device"
]
"""`thermostat`: the call off and on; `test_pins`: pins bridged that the document
names for it; `device`: a cut-out that is reset by hand where it sits."""
Limit = Annotated[int, Field(ge=1)]
Edge = Literal["counts", "does_not_count"]
"""Whether a stop exactly one window ago still counts."""


class Reset(Record):
    """How a lockout or lamp is cleared, and what that erases.

    Resets of one `order` are alternatives; where several orders are written, each
    comes after one of the order before. `together` says that all supplies are off at
    the same time: one by one, or with one left on, it does not reset.
    """

    name: ResetName
    order: int = 1
    scope: str | None = None
    """Such as "all supplies together"."""
    together: bool = False
    off_at_least: Seconds | None = None
    off_at_most: Seconds | None = None
    counted_from: Literal["power_off", "lamp_dark"] = "power_off"
    clears: Literal["lamp", "lockout", "both"] = "both"
    how: str
    evidence_lost: str

    @property
    def clears_lockout(self) -> bool:
        """Whether it ends a lockout; erasing the history alone never does."""
        return self.clears == "lockout" or (
            self.clears == "both" and self.name != "history"
        )


class Clearing(Record):
    """What makes a count in a row begin again; any one that is written does.

    `run` of the unit without a stop, so many `good_cycles`, or `days` without one.
    """

    run: Seconds | None = None
    good_cycles: Annotated[int, Field(ge=1)] | None = None
    days: Annotated[int, Field(ge=1)] | None = None

    @model_validator(mode="after")
    def _says_something(self) -> Clearing:
        if self.run is None and self.good_cycles is None and self.days is None:
            raise ValueError("say `run`, `good_cycles` or `days`")
        return self


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

    @model_validator(mode="after")
    def _a_lockout_has_a_way_out(self) -> StopBase:
        if self.unit_action == "lockout" and not self._ends():
            raise ValueError("a lockout names its reset or its release")
        return self

    def _ends(self) -> bool:
        return bool(self.resets or self.release)


class CountedBase(StopBase):
    """A counter with a limit that a window, or a rule for clearing, may bound.

    With neither, it counts until it is reset.
    """

    limit: Limit
    window: Seconds | None = None
    edge: Edge | None = None
    clears_after: Clearing | None = None

    @model_validator(mode="after")
    def _bounded_once(self) -> CountedBase:
        if (self.window is None) != (self.edge is None):
            raise ValueError("`window` and `edge` are written together")
        if self.window is not None and self.clears_after is not None:
            raise ValueError("a count is in a `window` or `clears_after`, not both")
        return self


class SlidingWindow(StopBase):
    """Locks on the `limit`-th stop within any `window`.

    `edge` says whether a stop exactly `window` ago still counts.
    """

    kind: Literal["sliding_window"]
    limit: Limit
    window: Seconds
    edge: Edge


class Consecutive(StopBase):
    """Locks on the `limit`-th stop in a row; `clears_after` begins the row anew."""

    kind: Literal["consecutive"]
    limit: Limit
    clears_after: Clearing


class WithinStart(CountedBase):
    """Counts only stops that come at most `within` after a start.

    With `in_a_row`, a stop that comes later begins the count anew.
    """

    kind: Literal["within_start"]
    within: Seconds
    in_a_row: bool = False


class PerCall(StopBase):
    """Locks on the `limit`-th stop of one call; a new call counts anew."""

    kind: Literal["per_call"]
    limit: Limit


class FailedStarts(CountedBase):
    """Counts starts that failed, not stops of a unit that ran."""

    kind: Literal["failed_starts"]
    event: str = "failed start"


class Level(Record):
    """One level of a lockout, with a lamp and a way out of its own.

    The first counts stops, each further one the lockouts of the level below it.
    """

    name: str
    limit: Limit
    window: Seconds
    edge: Edge
    signal: str | None = None
    resets: tuple[Reset, ...] = ()
    release: str | None = None
    release_after: Seconds | None = None


class Levels(StopBase):
    """Several levels of lockout; after each lockout the level's count begins anew."""

    kind: Literal["levels"]
    levels: Annotated[tuple[Level, ...], Field(min_length=2)]

    @model_validator(mode="after")
    def _resets_stand_in_the_levels(self) -> Levels:
        if self.resets or self.release or self.signal:
            raise ValueError("`signal`, `resets` and `release` stand in each level")
        return self

    def _ends(self) -> bool:
        return all(
            level.resets or level.release or level.release_after is not None
            for level in self.levels
        )


class FirstAuto(CountedBase):
    """Starts again by itself after a stop, until the `limit`-th: that stays off.

    With `same_cause_required` each of `events` is counted alone.
    """

    kind: Literal["first_auto"]
    limit: Annotated[int, Field(ge=2)] = 2
    retry_after: Seconds
    same_cause_required: bool
    events: tuple[str, ...] = ()
    """All protections that the rule is about; none is `event` alone."""


class PerDevice(CountedBase):
    """Counts each of `devices` alone; `retry_after` is the pause before a restart."""

    kind: Literal["per_device"]
    devices: Annotated[tuple[str, ...], Field(min_length=1)]
    retry_after: Seconds | None = None


class DurationLatch(StopBase):
    """Latches when the unit has not recovered `within` so long of its stop."""

    kind: Literal["duration_latch"]
    within: Seconds


class UntilPowerOff(StopBase):
    """Stays off from the `limit`-th stop until the power has been off."""

    kind: Literal["until_power_off"]
    limit: Limit = 1

    @model_validator(mode="after")
    def _only_power_ends_it(self) -> UntilPowerOff:
        if any(reset.name != "power" for reset in self.resets):
            raise ValueError("only a reset by power ends this kind")
        return self

    def _ends(self) -> bool:
        return bool(self.resets)


class AutoRelease(CountedBase):
    """A lockout that ends by itself: after a time, or when the cause is gone."""

    kind: Literal["auto_release"]
    release_after: Seconds | None = None
    release_when: str | None = None

    def _ends(self) -> bool:
        return self.release_after is not None or self.release_when is not None


class LogOnly(StopBase):
    """Only keeps a history: the unit runs on, however many there are.

    `limit` is the count from which the history shows it.
    """

    kind: Literal["log_only"]
    unit_action: Literal["log_only"] = "log_only"
    limit: Limit = 1
    window: Seconds | None = None
    edge: Edge = "counts"


Stop = Annotated[
    SlidingWindow
    | Consecutive
    | WithinStart
    | PerCall
    | FailedStarts
    | Levels
    | FirstAuto
    | PerDevice
    | DurationLatch
    | UntilPowerOff
    | AutoRelease
    | LogOnly,
    Field(discriminator="kind"),
]
"""Any row of `stops.yaml`."""


def resets_at(item: StopBase) -> Iterator[tuple[tuple[str | int, ...], Reset]]:
    """Yield every reset of a counter with where it is written, levels included."""
    for place, reset in enumerate(item.resets):
        yield ("resets", place), reset
    for number, level in enumerate(getattr(item, "levels", ())):
        for place, reset in enumerate(level.resets):
            yield ("levels", number, "resets", place), reset


def events_of(item: StopBase) -> tuple[str, ...]:
    """Return the protections that a counter counts."""
    return getattr(item, "events", ()) or (item.event,)


def signals_of(item: StopBase) -> tuple[str, ...]:
    """Return the signal rows that show a counter's lockout, lowest level first."""
    levels = [level.signal for level in getattr(item, "levels", ())]
    return tuple(name for name in (item.signal, *levels) if name)
