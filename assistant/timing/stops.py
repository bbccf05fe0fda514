"""Counts protection stops in sliding windows over every believable time."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import UTC, datetime, timedelta
from typing import Literal

from assistant.timing.kinds import SlidingWindow
from assistant.timing.moment import Moment
from assistant.timing.spreading import can_be_spread
from assistant.timing.values import StopCount, StopRow

State = Literal["locked", "open", "unknown"]
Span = tuple[int, int]
"""Earliest and latest instant, microseconds since 1970."""

_START = datetime(1970, 1, 1, tzinfo=UTC)
_TICK = timedelta(microseconds=1)


def count_stops(
    rows: Sequence[StopRow],
    stops: Sequence[tuple[str, Moment]],
    now: datetime,
    resets: Sequence[Moment] = (),
) -> tuple[StopCount, ...]:
    """Return what each counter shows now.

    Parameters
    ----------
    rows : sequence of StopRow
        The counters that apply to the unit.
    stops : sequence of (str, Moment)
        The protection that stopped, under the counter's `event`, and when.
    now : datetime
        The instant asked about; no stop lies after it.
    resets : sequence of Moment
        When the unit was reset. A stop at the very instant of a reset is cleared.

    Returns
    -------
    tuple of StopCount
        In the order of `rows`. `locked` holds for every believable placement of the
        times, `open` for none, `unknown` for some. A counter that only logs is open.
    """
    return tuple(_count(row, stops, now, resets) for row in rows)


def spread(
    count: int, spacing: timedelta | tuple[float, float], last: Moment
) -> tuple[Moment, ...]:
    """Return the moments of `count` stops, `spacing` apart, the newest at `last`.

    Parameters
    ----------
    count : int
        How many stops.
    spacing : timedelta or (float, float)
        The time between two, or its smallest and largest believable value [s].
    last : Moment
        When the newest was.

    Returns
    -------
    tuple of Moment
        Oldest first; the further back, the wider.

    Examples
    --------
    >>> from datetime import datetime, timezone
    >>> noon = datetime(2026, 5, 4, 12, tzinfo=timezone.utc)
    >>> at = Moment(earliest=noon, latest=noon)
    >>> [str(m.earliest.time()) for m in spread(3, (600.0, 900.0), at)]
    ['11:30:00', '11:45:00', '12:00:00']
    >>> [str(m.latest.time()) for m in spread(3, (600.0, 900.0), at)]
    ['11:40:00', '11:50:00', '12:00:00']
    """
    if isinstance(spacing, timedelta):
        low = high = spacing
    else:
        low, high = (timedelta(seconds=one) for one in sorted(spacing))
    return tuple(
        Moment(earliest=last.earliest - back * high, latest=last.latest - back * low)
        for back in reversed(range(count))
    )


def _micro(at: datetime) -> int:
    return (at - _START) // _TICK


def _time(micro: int) -> datetime:
    return _START + micro * _TICK


def _span(moment: Moment, now: int) -> Span:
    """Return a moment as a span that does not reach beyond now."""
    earliest, latest = _micro(moment.earliest), _micro(moment.latest)
    return min(earliest, now), min(latest, now)


def _count(
    row: StopRow,
    stops: Sequence[tuple[str, Moment]],
    now: datetime,
    resets: Sequence[Moment],
) -> StopCount:
    rule = row.stop
    end = _micro(now)
    spans = [
        _span(at, end)
        for event, at in stops
        if event.strip().casefold() == rule.event.strip().casefold()
    ]
    cleared = _last([_span(at, end) for at in resets])
    may = _after(spans, cleared[0] if cleared else None)
    must = [span for span in spans if cleared is None or span[0] > cleared[1]]
    reach = _reach(rule)
    high = sum(latest >= end - reach for _, latest in may)
    low = sum(earliest >= end - reach for earliest, _ in must)
    state = _judge(rule, may, must, reach)
    leaves = None
    if high and state != "locked":
        oldest = min(latest for _, latest in may if latest >= end - reach)
        leaves = _time(oldest + round(rule.window.value * 1_000_000))
    left = 0 if state != "open" else max(0, rule.limit - high)
    return StopCount(row, low, high, rule.limit, state, left, leaves)


def _reach(rule: SlidingWindow) -> int:
    """Return the largest distance at which two stops stand in one window."""
    window = round(rule.window.value * 1_000_000)
    return window if rule.edge == "counts" else window - 1


def _last(spans: Sequence[Span]) -> Span | None:
    """Return when the last of several happened."""
    if not spans:
        return None
    return max(span[0] for span in spans), max(span[1] for span in spans)


def _after(spans: Sequence[Span], cleared: int | None) -> list[Span]:
    """Return the part of each span after the earliest believable reset."""
    if cleared is None:
        return list(spans)
    return [(max(span[0], cleared + 1), span[1]) for span in spans if span[1] > cleared]


def _judge(
    rule: SlidingWindow, may: Sequence[Span], must: Sequence[Span], reach: int
) -> State:
    """Say whether the limit was reached in some window since the last reset.

    Most: slide a window along the latest ends and count the spans that reach into
    it. Least: ask whether the stops that surely count can be placed so that every
    window holds fewer than the limit.
    """
    if rule.unit_action == "log_only":
        return "open"
    most = max(
        (
            sum(early <= start + reach and late >= start for early, late in may)
            for _, start in may
        ),
        default=0,
    )
    if most < rule.limit:
        return "open"
    if len(must) >= rule.limit and not can_be_spread(must, rule.limit, reach + 1):
        return "locked"
    return "unknown"
