"""Protection stops and lockouts, as data and as lines."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.dialogue import stop_replies
from assistant.dialogue.answer import (
    CountRange,
    LevelCount,
    SourceRef,
    Statement,
    StopShown,
)
from assistant.dialogue.sections.said import computed
from assistant.dialogue.view import View
from assistant.facts import BreakerFact
from assistant.timing.stop_events import resets_of_tiers
from assistant.timing.stop_kinds import Levels, signals_of
from assistant.timing.stop_values import StopCount


def stops(view: View) -> tuple[StopShown, ...]:
    """Return the protection-stop counters as data."""
    return tuple(_stop(view, count) for count in view.stops)


def _stop(view: View, count: StopCount) -> StopShown:
    stop = count.row.stop
    return StopShown(
        id=count.row.gid,
        name=stop.name,
        count=CountRange(min=count.low, max=count.high),
        limit=count.limit,
        state=count.state,
        left=count.left,
        oldest_leaves=count.oldest_leaves,
        sources=view.cite(count.row.gid),
        kind=stop.kind,
        levels=count.levels,
        further=_further(count),
        releases=count.releases,
        latches=count.latches,
        cleared_by=_cleared_by(count),
        conflict=tuple(claim for claim, _ in _against(view, count)),
    )


def _further(count: StopCount) -> tuple[LevelCount, ...]:
    stop = count.row.stop
    if not isinstance(stop, Levels):
        return ()
    return tuple(
        LevelCount(name=level.name, count=CountRange(min=low, max=high), limit=limit)
        for level, (low, high, limit) in zip(stop.levels[1:], count.upper, strict=True)
    )


def _cleared_by(count: StopCount) -> tuple[str, ...]:
    """Return how the levels that may be locked are cleared."""
    if count.state == "open":
        return ()
    tiers = resets_of_tiers(count.row.stop)
    return tuple(
        reset.how
        for level in count.levels
        if level
        for reset in sorted(tiers[level - 1], key=lambda one: one.order)
        if reset.clears_lockout
    )


def stop_lines(view: View) -> Iterator[Statement]:
    """Say how near a lockout the stops told are, and what says otherwise."""
    for count in view.stops:
        cited = view.cite(count.row.gid)
        yield computed(stop_replies.counted(count, view.utc_offset), cited)
        against = _against(view, count)
        if against:
            claims = tuple(claim for claim, _ in against)
            text = stop_replies.conflict(stop_replies.count_claim(count), claims)
            both = (*cited, *(source for _, cites in against for source in cites))
            yield computed(text, both)


def _against(
    view: View, count: StopCount
) -> tuple[tuple[str, tuple[SourceRef, ...]], ...]:
    """Return what says otherwise than a count: the lamp, and the teller's word."""
    if count.state == "unknown" or count.row.stop.unit_action == "log_only":
        return ()
    locked = count.state == "locked"
    told = view.context("locked out")
    found: list[tuple[str, tuple[SourceRef, ...]]] = []
    lamp = _lamp_says(view, count)
    if lamp is not None and lamp[0] is not locked:
        found.append((stop_replies.lamp_claim(lamp[1]), lamp[2]))
    if told is not None and told is not locked:
        word = stop_replies.TOLD_LOCKED if told else stop_replies.TOLD_OPEN
        found.append((word, ()))
    return tuple(found)


def _lamp_says(
    view: View, count: StopCount
) -> tuple[bool, str, tuple[SourceRef, ...]] | None:
    """Return whether the lamp says lockout, where it says anything of this counter.

    A lamp that shows another counter's lockout says nothing of this one.
    """
    match = view.match
    if match is None or match.verdict != "exact" or not view.observations:
        return None
    row = match.candidates[0].row
    pack = count.row.gid.partition("/")[0]
    if row.gid.partition("/")[0] != pack:
        return None
    named = {f"{pack}/{name}" for name in signals_of(count.row.stop)}
    mine = row.gid in named or count.row.gid in view.stops_of_decode
    if row.signal.latched and not mine:
        return None
    return row.signal.latched, row.signal.meaning, view.cite(row.gid)


def breaker_lines(view: View) -> Iterator[Statement]:
    """Say that breaker trips told now are not counted as stops."""
    trips = sum(
        held.fact.count
        for held in view.state.told_now()
        if isinstance(held.fact, BreakerFact)
    )
    if trips:
        yield computed(stop_replies.breaker_trips(trips))
