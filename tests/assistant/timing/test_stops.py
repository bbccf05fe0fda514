"""Protection stops counted in sliding windows, over uncertain times."""

from __future__ import annotations

from collections.abc import Sequence

import pytest
from hypothesis import given
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
from tests.stop_rows import counter
from tests.wait_rows import NOON, at, minutes

HIGH = "high pressure"
THREE = counter(3, "60 min")


def count(
    moments: Sequence[Moment],
    now: float,
    resets: Sequence[Moment] = (),
    row: StopRow = THREE,
) -> StopCount:
    told = StopsTold(
        stops=tuple(StopSeries(HIGH, moment) for moment in moments),
        resets=tuple(ResetTold(moment, "power") for moment in resets),
    )
    return count_stops([row], told, NOON + minutes(now))[0]


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
    assert (later.state, later.low, later.left) == ("locked", 3, 0)
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
    told = StopsTold(tuple(StopSeries("low pressure", at(n)) for n in range(3)))

    assert count_stops([THREE], told, NOON + minutes(5))[0].high == 0


def test_a_counter_that_only_logs_never_locks() -> None:
    row = counter(2, "60 min", unit_action="log_only")

    found = count([at(0), at(1), at(2)], 5, row=row)

    assert (found.state, found.high, found.left) == ("open", 3, 0)


def test_a_time_said_to_reach_past_now_ends_now() -> None:
    found = count([at(0, 90)], 30)

    assert (found.low, found.high) == (1, 1)


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
