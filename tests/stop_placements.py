"""Tries every placement of stops told, one microsecond at a time, for tests."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import timedelta
from itertools import product

from hypothesis import settings
from hypothesis import strategies as st

from assistant.timing.moment import Moment
from assistant.timing.stop_values import (
    ResetTold,
    StopCount,
    StopRow,
    StopSeries,
    StopsTold,
)
from assistant.timing.stops import count_stops
from tests.wait_rows import NOON

Span = tuple[int, int]
SPANS = st.lists(st.tuples(st.integers(0, 6), st.integers(0, 3)), max_size=4)
RESET = st.none() | st.tuples(st.integers(0, 7), st.integers(0, 3))
EDGE = st.sampled_from(["counts", "does_not_count"])
NOW = 10
TRIES = settings(max_examples=80)


def us(number: int) -> str:
    """Write microseconds as a pack's duration."""
    return f"{number / 1_000_000:.6f} s"


def when(span: Span) -> Moment:
    """Return a span of microseconds after noon as a moment."""
    return Moment(
        earliest=NOON + timedelta(microseconds=span[0]),
        latest=NOON + timedelta(microseconds=span[0] + span[1]),
    )


def asked(
    rule: StopRow,
    stops: Iterable[StopSeries],
    resets: Sequence[Span] = (),
    **told: object,
) -> StopCount:
    """Return what the counter shows at NOW."""
    everything = StopsTold(
        stops=tuple(stops),
        resets=tuple(ResetTold(when(span), "power") for span in resets),
        **told,  # type: ignore[arg-type]
    )
    return count_stops([rule], everything, NOON + timedelta(microseconds=NOW))[0]


def placements(*groups: Sequence[Span]) -> Iterable[tuple[tuple[int, ...], ...]]:
    """Yield every placement of the spans of each group."""
    ranges = [[range(a, a + w + 1) for a, w in group] for group in groups]
    yield from product(*(product(*group) for group in ranges))


def verdict(locks: set[bool]) -> str:
    """Return what a counter must say of these courses: locked, open, or either."""
    return "unknown" if len(locks) == 2 else "locked" if True in locks else "open"


def filled(times: Sequence[int], limit: int, window: int, edge: str) -> bool:
    """Say whether any window holds `limit` of the times."""
    reach = window if edge == "counts" else window - 1
    return any(
        sum(first <= t <= first + reach for t in times) >= limit for first in times
    )


def after(times: Sequence[int], resets: Sequence[int]) -> list[int]:
    """Return the times after the last reset, in order."""
    return sorted(t for t in times if not resets or t > max(resets))
