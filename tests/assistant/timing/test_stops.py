"""Protection stops counted in sliding windows, over uncertain times."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from assistant.timing.moment import Moment
from assistant.timing.spreading import can_be_spread
from assistant.timing.stops import count_stops, spread
from assistant.timing.values import StopCount, StopRow
from tests.wait_rows import NOON, at, counter, minutes

HIGH = "high pressure"
THREE = counter(3, "60 min")


def count(
    moments: Sequence[Moment],
    now: float,
    resets: Sequence[Moment] = (),
    row: StopRow = THREE,
) -> StopCount:
    told = [(HIGH, moment) for moment in moments]
    return count_stops([row], told, NOON + minutes(now), resets)[0]


def test_no_stop_leaves_every_try() -> None:
    found = count([], 0)

    assert (found.low, found.high, found.left, found.state) == (0, 0, 3, "open")
    assert found.oldest_leaves is None


def test_two_of_three_leave_one_until_the_oldest_leaves() -> None:
    found = count([at(0), at(20)], 30)

    assert (found.low, found.high, found.left, found.state) == (2, 2, 1, "open")
    assert found.oldest_leaves == NOON + minutes(60)


def test_the_third_within_the_window_locks_and_stays_locked() -> None:
    stops = [at(0), at(20), at(59)]

    assert count(stops, 59).state == "locked"
    later = count(stops, 600)
    assert (later.state, later.low, later.left) == ("locked", 0, 0)
    assert later.oldest_leaves is None


@pytest.mark.parametrize(
    ("edge", "state"), [("counts", "locked"), ("does_not_count", "open")]
)
def test_a_stop_exactly_at_the_edge_follows_the_documents_rule(
    edge: str, state: str
) -> None:
    row = counter(2, "60 min", edge)

    found = count([at(0), at(60)], 60, row=row)

    assert found.state == state
    assert found.high == (2 if edge == "counts" else 1)


def test_the_window_slides() -> None:
    assert count([at(0), at(61), at(90)], 90).state == "open"
    assert count([at(0), at(61), at(90), at(119)], 119).state == "locked"


def test_uncertain_times_may_or_may_not_lock() -> None:
    found = count([at(-70, 30), at(0), at(5)], 10)

    assert (found.low, found.high, found.state, found.left) == (2, 3, "unknown", 0)


def test_times_that_cannot_be_told_apart_still_lock_for_certain() -> None:
    # Three within two hours, two of them always within one of each other.
    row = counter(2, "60 min")

    found = count([at(0, 120), at(0, 120), at(0, 120)], 120, row=row)

    assert found.state == "locked"


def test_a_reset_clears_what_came_before_it() -> None:
    stops = [at(0), at(10), at(20)]

    assert count(stops, 30, [at(25)]).state == "open"
    assert count(stops, 30, [at(25)]).high == 0
    assert count([*stops, at(26)], 30, [at(25)]).high == 1


def test_a_stop_at_the_very_instant_of_a_reset_is_cleared() -> None:
    assert count([at(10)], 30, [at(10)]).high == 0


def test_an_uncertain_reset_leaves_both_counts() -> None:
    found = count([at(0), at(10), at(20)], 30, [at(5, 30)])

    assert (found.low, found.high) == (0, 2)
    assert found.state == "open"


def test_an_uncertain_reset_may_have_left_the_lock() -> None:
    found = count([at(0), at(10), at(20)], 30, [at(-5, 60)])

    assert found.state == "unknown"


def test_another_protection_does_not_count() -> None:
    told = [("low pressure", at(n)) for n in range(3)]

    assert count_stops([THREE], told, NOON + minutes(5))[0].high == 0


def test_a_counter_that_only_logs_never_locks() -> None:
    row = counter(2, "60 min", unit_action="log_only")

    found = count([at(0), at(1), at(2)], 5, row=row)

    assert (found.state, found.high, found.left) == ("open", 3, 0)


def test_a_time_said_to_reach_past_now_ends_now() -> None:
    found = count([at(0, 90)], 30)

    assert (found.low, found.high) == (1, 1)


def test_spread_places_the_newest_last_and_widens_backwards() -> None:
    moments = spread(3, (480.0, 720.0), at(0, 5))

    assert moments == (
        Moment(earliest=NOON - minutes(24), latest=NOON - minutes(11)),
        Moment(earliest=NOON - minutes(12), latest=NOON - minutes(3)),
        at(0, 5),
    )
    assert spread(2, timedelta(minutes=10), at(0)) == (at(-10), at(0))


spans = st.lists(st.tuples(st.integers(0, 8), st.integers(0, 5)), max_size=4)


def windowed(times: Sequence[int], limit: int, window: int, edge: str) -> bool:
    """Say in the document's words whether any window is filled up to the limit."""
    for first in times:
        near = [
            t for t in times if t >= first and (t - first < window + (edge == "counts"))
        ]
        if len(near) >= limit:
            return True
    return False


@settings(max_examples=80)
@given(
    spans=spans,
    limit=st.integers(1, 4),
    window=st.integers(1, 6),
    edge=st.sampled_from(["counts", "does_not_count"]),
    reset=st.none() | st.tuples(st.integers(0, 8), st.integers(0, 4)),
    now=st.integers(0, 14),
)
def test_counts_and_state_agree_with_every_placement_tried(
    spans: list[tuple[int, int]],
    limit: int,
    window: int,
    edge: str,
    reset: tuple[int, int] | None,
    now: int,
) -> None:
    """Oracle: whole minutes suffice, for every bound is a whole minute or its edge."""
    told = [(min(e, now), min(e + w, now)) for e, w in spans]
    clear = [reset] if reset else []
    lows, locks = set(), set()
    choices = [range(early, late + 1) for early, late in told]
    when = [range(min(e, now), min(e + w, now) + 1) for e, w in clear]
    for placed in product(*choices, *when):
        cleared = placed[len(told)] if clear else -1
        times = [t for t in placed[: len(told)] if t > cleared]
        lows.add(sum(now - t < window + (edge == "counts") for t in times))
        locks.add(windowed(times, limit, window, edge))

    row = counter(limit, f"{window} min", edge)
    found = count(
        [at(e, w) for e, w in spans], now, [at(e, w) for e, w in clear], row=row
    )

    assert (found.low, found.high) == (min(lows), max(lows))
    state = "unknown" if len(locks) == 2 else "locked" if True in locks else "open"
    # Whole minutes cannot show a placement between them: only there may the exact
    # answer be wider than the oracle's.
    assert found.state in (state, "unknown")
    if edge == "counts":
        assert (found.state == "open") == (state == "open")


@settings(max_examples=80)
@given(
    spans=st.lists(st.tuples(st.integers(0, 7), st.integers(0, 6)), max_size=4),
    limit=st.integers(2, 4),
    apart=st.integers(1, 6),
)
def test_spreading_agrees_with_every_placement_tried(
    spans: list[tuple[int, int]], limit: int, apart: int
) -> None:
    told = [(early, early + wide) for early, wide in spans]
    expected = False
    for placed in product(*(range(e, late + 1) for e, late in told)):
        times = sorted(placed)
        gaps = [times[n + limit - 1] - times[n] for n in range(len(times) - limit + 1)]
        expected = expected or all(gap >= apart for gap in gaps)

    assert can_be_spread(told, limit, apart) == expected


@given(
    stops=st.lists(st.integers(0, 100), max_size=6),
    limit=st.integers(1, 4),
    extra=st.integers(0, 100),
)
def test_one_more_stop_never_lowers_a_count(
    stops: list[int], limit: int, extra: int
) -> None:
    row = counter(limit, "30 min")

    fewer = count([at(n) for n in stops], 100, row=row)
    more = count([at(n) for n in [*stops, extra]], 100, row=row)

    assert more.high >= fewer.high
    assert more.left <= fewer.left
    if fewer.state == "locked":
        assert more.state == "locked"
