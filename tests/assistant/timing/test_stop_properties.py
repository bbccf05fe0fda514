"""Every counter against every placement tried, one microsecond at a time.

The oracles below count a list of plain whole numbers as the document's sentence says;
they know nothing of spans, courses or bounds.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from datetime import timedelta
from itertools import permutations, product

from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.timing.moment import Moment
from assistant.timing.stop_values import (
    GoodRun,
    ResetTold,
    StopCount,
    StopRow,
    StopSeries,
    StopsTold,
)
from assistant.timing.stops import count_stops
from tests.stop_rows import ANY_POWER, row
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
