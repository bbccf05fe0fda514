"""Counters in a window against every placement tried, a microsecond at a time.

The oracles count a list of plain whole numbers as the document's sentence says; they
know nothing of spans, courses or bounds.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import product

from hypothesis import given
from hypothesis import strategies as st

from assistant.timing.stop_values import StopSeries
from tests.stop_placements import (
    EDGE,
    NOW,
    RESET,
    SPANS,
    TRIES,
    Span,
    after,
    asked,
    filled,
    placements,
    us,
    verdict,
    when,
)
from tests.stop_rows import ANY_POWER, row


@TRIES
@given(SPANS, st.integers(1, 4), st.integers(1, 6), EDGE, RESET)
def test_a_sliding_window_agrees_with_every_placement(
    spans: list[Span], limit: int, window: int, edge: str, reset: Span | None
) -> None:
    resets = [reset] if reset else []
    reach = window if edge == "counts" else window - 1
    seen = set()
    for stops, clear in placements(spans, resets):
        left = after(stops, clear)
        locked = filled(left, limit, window, edge)
        seen.add((locked, limit if locked else sum(t >= NOW - reach for t in left)))

    rule = row(
        "sliding_window", limit=limit, window=us(window), edge=edge, resets=(ANY_POWER,)
    )
    found = asked(rule, (StopSeries("high pressure", when(s)) for s in spans), resets)

    assert found.exact
    assert found.state == verdict({locked for locked, _ in seen})
    assert (found.low, found.high) == (
        min(count for _, count in seen),
        max(count for _, count in seen),
    )


@TRIES
@given(
    st.integers(1, 4),
    st.tuples(st.integers(0, 4), st.integers(0, 3)),
    st.tuples(st.integers(4, 8), st.integers(0, 2)),
    st.integers(1, 4),
    st.integers(1, 6),
    RESET,
)
def test_stops_told_with_their_distance_keep_it(
    count: int, apart: Span, last: Span, limit: int, window: int, reset: Span | None
) -> None:
    """Oracle: the newest, and each distance between two, are tried one by one."""
    gaps = range(apart[0], apart[0] + apart[1] + 1)
    locks = set()
    for newest in range(last[0], last[0] + last[1] + 1):
        for between in product(gaps, repeat=count - 1):
            times = [newest]
            for gap in between:
                times.append(times[-1] - gap)
            for cleared in _instants(reset):
                left = after(times, cleared)
                locks.add(filled(left, limit, window, "counts"))

    rule = row("sliding_window", limit=limit, window=us(window), resets=(ANY_POWER,))
    told = StopSeries(
        "high pressure",
        when(last),
        count=(count,),
        apart=(apart[0] / 1e6, (apart[0] + apart[1]) / 1e6),
    )

    resets = [reset] if reset else []
    assert asked(rule, [told], resets).state == verdict(locks)


def _instants(span: Span | None) -> list[list[int]]:
    return [[at] for at in range(span[0], sum(span) + 1)] if span else [[]]


def by_levels(
    times: Sequence[int], first: tuple[int, int], second: tuple[int, int]
) -> tuple[int, int]:
    """Return the level that is locked and the soft lockouts that still count."""
    level = 0
    stops: list[int] = []
    soft: list[int] = []
    for at in times:
        if level == 2:
            break
        level = 0
        stops = [t for t in [*stops, at] if at - t <= first[1]]
        if len(stops) >= first[0]:
            level, stops = 1, []
            soft = [t for t in [*soft, at] if at - t <= second[1]]
            if len(soft) >= second[0]:
                level = 2
    if level == 2:
        return level, second[0]
    return level, sum(NOW - t <= second[1] for t in soft)


@TRIES
@given(
    st.lists(st.tuples(st.integers(0, 7), st.integers(0, 2)), max_size=5),
    st.tuples(st.integers(1, 2), st.integers(1, 6)),
    st.tuples(st.integers(1, 3), st.integers(1, 8)),
)
def test_two_levels_agree_with_every_placement(
    spans: list[Span], first: tuple[int, int], second: tuple[int, int]
) -> None:
    seen = {by_levels(sorted(stops), first, second) for (stops,) in placements(spans)}

    rule = row("levels", levels=_levels(first, second))
    found = asked(rule, (StopSeries("head pressure", when(span)) for span in spans))

    assert found.levels == tuple(sorted({level for level, _ in seen}))
    soft = [count for _, count in seen]
    assert found.upper == ((min(soft), max(soft), second[0]),)


def _levels(
    first: tuple[int, int], second: tuple[int, int]
) -> tuple[dict[str, object], ...]:
    return tuple(
        {
            "name": name,
            "limit": limit,
            "window": us(window),
            "edge": "counts",
            "resets": (ANY_POWER | {"name": reset},),
        }
        for name, reset, (limit, window) in (
            ("soft", "remote", first),
            ("hard", "power", second),
        )
    )


@TRIES
@given(SPANS, st.integers(1, 3), st.integers(1, 5), st.integers(1, 6))
def test_a_lockout_that_ends_by_itself_agrees_with_every_placement(
    spans: list[Span], limit: int, window: int, release: int
) -> None:
    locks = set()
    for (stops,) in placements(spans):
        held: list[int] = []
        ends = -1
        for at in sorted(stops):
            if at < ends:
                continue
            held = [t for t in [*held, at] if at - t <= window - 1]
            if len(held) >= limit:
                ends, held = at + release, []
        locks.add(ends > NOW)

    rule = row(
        "auto_release", limit=limit, window=us(window), release_after=us(release)
    )
    found = asked(rule, (StopSeries("freeze protection", when(s)) for s in spans))

    assert found.state == verdict(locks)


DEVICES = st.sampled_from(["fan 1", "fan 2", None])


@TRIES
@given(
    st.lists(st.tuples(st.integers(0, 6), st.integers(0, 2), DEVICES), max_size=4),
    st.integers(1, 3),
    st.integers(1, 5),
)
def test_devices_not_named_may_be_either(
    told: list[tuple[int, int, str | None]], limit: int, window: int
) -> None:
    """Oracle: also three of two unnamed devices lock one of them for certain."""
    locks = set()
    ways = [["fan 1", "fan 2"] if name is None else [name] for _, _, name in told]
    for (stops,) in placements([(early, wide) for early, wide, _ in told]):
        for names in product(*ways):
            by_fan = [
                [at for at, name in zip(stops, names, strict=True) if name == fan]
                for fan in ("fan 1", "fan 2")
            ]
            locks.add(any(filled(times, limit, window, "counts") for times in by_fan))

    rule = row("per_device", limit=limit, window=us(window))
    stops_told = (
        StopSeries("fan stop", when((early, wide)), device=name)
        for early, wide, name in told
    )

    assert asked(rule, stops_told).state == verdict(locks)
