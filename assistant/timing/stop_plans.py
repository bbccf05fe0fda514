"""What each kind of counter comes to: limits, windows, and what begins a count anew."""

from __future__ import annotations

from dataclasses import dataclass, replace

from assistant.timing.stop_kinds import (
    AutoRelease,
    Clearing,
    Consecutive,
    CountedBase,
    DurationLatch,
    Edge,
    FailedStarts,
    FirstAuto,
    Level,
    Levels,
    LogOnly,
    PerCall,
    PerDevice,
    SlidingWindow,
    Stop,
    UntilPowerOff,
    WithinStart,
)
from assistant.units.quantity import Quantity

TICKS = 1_000_000
"""Ticks in a second: all instants and bounds are whole microseconds."""
DAY = 86_400 * TICKS


@dataclass(frozen=True, slots=True)
class Tier:
    """One level: how many lock, and how far apart the first and last may be.

    `reach` None is without a window. `limit` None never locks. Its lockout ends by
    itself after `release`, or may do so at any time.
    """

    limit: int | None
    reach: int | None
    release: int | None = None
    may_release: bool = False


@dataclass(frozen=True, slots=True)
class Plan:
    """A counter as the machine counts; durations in ticks.

    Attributes
    ----------
    tiers : tuple of Tier
        The first counts stops, each further one the lockouts below it.
    run, days : int or None
        A run, or a time without a stop, so long begins the count anew.
    cycles : int or None
        So many good cycles do.
    per_call : bool
        A new call does.
    within : int or None
        Only stops at most so long after a start count.
    late_clears : bool
        A stop that comes later begins the count anew.
    latch : int or None
        Locks when the unit has not recovered so long after its stop.
    keys : tuple of str
        Devices or protections that are each counted alone; empty is all in one.
    """

    tiers: tuple[Tier, ...]
    run: int | None = None
    days: int | None = None
    cycles: int | None = None
    per_call: bool = False
    within: int | None = None
    late_clears: bool = False
    latch: int | None = None
    keys: tuple[str, ...] = ()

    @property
    def chained(self) -> bool:
        """Whether something between two stops may begin the count anew."""
        told = (self.run, self.days, self.cycles)
        return self.per_call or any(one is not None for one in told)


def ticks(quantity: Quantity) -> int:
    """Return a duration in ticks."""
    return round(quantity.value * TICKS)


def plan_of(stop: Stop) -> Plan:
    """Return what a counter comes to.

    Examples
    --------
    >>> written = {"id": "x", "kind": "per_call", "name": "x", "event": "e",
    ...            "limit": 4, "release": "a new call"}
    >>> plan_of(PerCall.model_validate(written)).tiers
    (Tier(limit=4, reach=None, release=None, may_release=False),)
    """
    plan = _plan(stop)
    if stop.unit_action == "log_only":
        return replace(plan, tiers=(Tier(None, plan.tiers[0].reach),), latch=None)
    return plan


def _plan(stop: Stop) -> Plan:
    match stop:
        case SlidingWindow():
            return Plan((_tier(stop.limit, stop.window, stop.edge),))
        case LogOnly():
            return Plan((_tier(None, stop.window, stop.edge),))
        case Consecutive():
            return _cleared(Plan((Tier(stop.limit, None),)), stop.clears_after)
        case PerCall():
            return Plan((Tier(stop.limit, None),), per_call=True)
        case Levels():
            tiers = [
                _released(_tier(one.limit, one.window, one.edge), one)
                for one in stop.levels
            ]
            return Plan(tuple(tiers))
        case DurationLatch():
            return Plan((Tier(None, None),), latch=ticks(stop.within))
        case UntilPowerOff():
            return Plan((Tier(stop.limit, None),))
        case _:
            return _counted(stop)


def _counted(
    stop: WithinStart | FailedStarts | FirstAuto | PerDevice | AutoRelease,
) -> Plan:
    plan = _bounded(stop)
    match stop:
        case WithinStart():
            late = stop.in_a_row
            return replace(plan, within=ticks(stop.within), late_clears=late)
        case FirstAuto() if stop.same_cause_required and stop.events:
            return replace(plan, keys=stop.events)
        case PerDevice():
            return replace(plan, keys=stop.devices)
        case AutoRelease():
            may = stop.release_when is not None
            return replace(plan, tiers=(_released(plan.tiers[0], stop, may=may),))
        case _:
            return plan


def _bounded(stop: CountedBase) -> Plan:
    plan = Plan((_tier(stop.limit, stop.window, stop.edge),))
    return _cleared(plan, stop.clears_after) if stop.clears_after else plan


def _tier(limit: int | None, window: Quantity | None, edge: Edge | None) -> Tier:
    """Return the largest distance at which two stops stand in one window."""
    if window is None:
        return Tier(limit, None)
    return Tier(limit, ticks(window) - int(edge == "does_not_count"))


def _released(tier: Tier, by: AutoRelease | Level, *, may: bool = False) -> Tier:
    after = ticks(by.release_after) if by.release_after is not None else None
    return replace(tier, release=after, may_release=may)


def _cleared(plan: Plan, by: Clearing) -> Plan:
    run = ticks(by.run) if by.run is not None else None
    days = by.days * DAY if by.days is not None else None
    return replace(plan, run=run, days=days, cycles=by.good_cycles)
