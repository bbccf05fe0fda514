"""Counters by runs, calls and causes against every placement tried.

The oracles count a list of plain whole numbers as the document's sentence says; they
know nothing of spans, courses or bounds.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import permutations, product

from hypothesis import given
from hypothesis import strategies as st

from assistant.timing.stop_values import GoodRun, StopSeries
from tests.stop_placements import (
    NOW,
    RESET,
    SPANS,
    TRIES,
    Span,
    after,
    asked,
    placements,
    us,
    verdict,
    when,
)
from tests.stop_rows import ANY_POWER, row


def in_a_row(
    times: Sequence[int],
    goods: Sequence[int],
    run: int,
    fine: Sequence[bool],
    limit: int,
) -> tuple[bool, int]:
    """Count as the document says; `fine` tells whether a long gap was a good run."""
    count, locked = 0, False
    for place, at in enumerate(times):
        before = times[place - 1] if place else None
        if before is not None and at - before >= run and fine[place]:
            count = 0
        if any((before is None or before < g) and g <= at for g in goods):
            count = 0
        count += 1
        locked = locked or count >= limit
    if times and NOW - times[-1] >= run and fine[-1]:
        count = 0
    if times and any(g > times[-1] for g in goods):
        count = 0
    return locked, limit if locked else count


@TRIES
@given(SPANS, st.integers(1, 4), st.integers(1, 5), RESET, RESET)
def test_a_count_in_a_row_agrees_with_every_placement_and_every_run(
    spans: list[Span], limit: int, run: int, reset: Span | None, good: Span | None
) -> None:
    resets, goods = [reset] if reset else [], [good] if good else []
    seen = set()
    for stops, clear, ran in placements(spans, resets, goods):
        times = after(stops, clear)
        for fine in product([True, False], repeat=len(times) + 1):
            seen.add(in_a_row(times, ran, run, fine, limit))

    rule = row(
        "consecutive", limit=limit, clears_after={"run": us(run)}, resets=(ANY_POWER,)
    )
    found = asked(
        rule,
        (StopSeries("low pressure", when(span)) for span in spans),
        resets,
        good=tuple(GoodRun(when(span), ran=(1.0, 1.0)) for span in goods),
    )

    assert found.state == verdict({locked for locked, _ in seen})
    assert found.low == min(count for _, count in seen)
    assert found.high == max(count for _, count in seen)


@TRIES
@given(SPANS, st.integers(1, 3), st.lists(st.integers(0, 8), max_size=2))
def test_a_count_of_one_call_agrees_with_every_untold_call(
    spans: list[Span], limit: int, calls: list[int]
) -> None:
    """Oracle: before the first call that was told, a call may begin at any stop."""
    locks = set()
    for (stops,) in placements(spans):
        times = sorted(stops)
        for untold in product([True, False], repeat=len(times)):
            count, locked = 0, False
            for place, at in enumerate(times):
                before = times[place - 1] if place else -1
                known = any(call <= at for call in calls)
                begun = any(before < call <= at for call in calls)
                count = 0 if begun or (untold[place] and not known) else count
                count += 1
                locked = locked or count >= limit
            locks.add(locked)

    rule = row("per_call", limit=limit)
    found = asked(
        rule,
        (StopSeries("limit switch", when(span)) for span in spans),
        calls=tuple(when((call, 0)) for call in calls),
    )

    assert found.state == verdict(locks)


@TRIES
@given(
    st.lists(
        st.tuples(st.integers(0, 6), st.integers(0, 2), st.integers(0, 6)), max_size=4
    ),
    st.integers(1, 3),
    st.booleans(),
)
def test_stops_soon_after_a_start_agree_with_every_length_of_run(
    told: list[tuple[int, int, int]], limit: int, row_only: bool
) -> None:
    """Each ran `told` to `told` + 1 microseconds; up to 3 is soon after the start."""
    locks = set()
    runs = [(ran, ran + 1) for _, _, ran in told]
    for (stops,) in placements([(early, wide) for early, wide, _ in told]):
        for lengths in product(*runs):
            count, locked = 0, False
            for _, ran in sorted(
                zip(stops, lengths, strict=True), key=lambda one: one[0]
            ):
                soon = ran <= 3
                count = count + 1 if soon else 0 if row_only else count
                locked = locked or count >= limit
            locks.add(locked)
            if row_only:
                locks |= _ties(stops, lengths, limit)

    rule = row("within_start", limit=limit, within=us(3), in_a_row=row_only)
    stops_told = (
        StopSeries("overcurrent", when((early, wide)), ran=(ran / 1e6, (ran + 1) / 1e6))
        for early, wide, ran in told
    )

    assert asked(rule, stops_told).state == verdict(locks)


def _ties(stops: Sequence[int], lengths: Sequence[int], limit: int) -> set[bool]:
    """Return the verdicts of each order of stops told for the very same instant."""
    found = set()
    for order in permutations(range(len(stops))):
        if [stops[n] for n in order] != sorted(stops):
            continue
        count, locked = 0, False
        for n in order:
            count = count + 1 if lengths[n] <= 3 else 0
            locked = locked or count >= limit
        found.add(locked)
    return found


@TRIES
@given(SPANS, st.integers(1, 9), st.sampled_from([True, False, None]))
def test_a_latch_agrees_with_every_placement(
    spans: list[Span], within: int, running: bool | None
) -> None:
    locks = set()
    for (stops,) in placements(spans):
        late = bool(stops) and NOW - max(stops) > within
        locks |= {False} if running or not late else {True}
        if late and running is None:
            locks.add(False)

    rule = row("duration_latch", within=us(within))
    found = asked(
        rule,
        (StopSeries("low voltage", when(span)) for span in spans),
        running=running,
    )

    assert found.state == verdict(locks or {False})


@TRIES
@given(
    st.lists(
        st.tuples(
            st.integers(0, 6),
            st.integers(0, 2),
            st.sampled_from(["discharge temperature", "module temperature"]),
        ),
        max_size=4,
    ),
    st.booleans(),
)
def test_the_second_of_the_same_cause_stays_off(
    told: list[tuple[int, int, str]], same: bool
) -> None:
    names = [name for _, _, name in told]
    most = max((names.count(name) for name in names), default=0)
    expected = most >= 2 if same else len(names) >= 2

    rule = row("first_auto", same_cause_required=same)
    found = asked(rule, (StopSeries(name, when((e, w))) for e, w, name in told))

    assert found.state == ("locked" if expected else "open")
