"""Flashes counted over a table's own window."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.signals.seen_train import observed_in_windows
from assistant.signals.taps import likely
from assistant.signals.windows import in_windows, windows_watched

FIVE = [6.0 * group + 0.5 * nth for group in range(4) for nth in range(5)]
"""Five flashes and a pause, four times: 4 x 0.5 s and 4 s are 6 s each."""


def test_windows_hold_the_same_number_from_every_phase() -> None:
    assert [one.count for one in in_windows([FIVE], 6.0)] == [5]
    assert [one.count for one in in_windows([FIVE[3:]], 6.0)] == [5]


def test_a_window_of_another_length_has_no_one_number() -> None:
    found = in_windows([FIVE], 8.0)

    assert len(found) > 1


def test_windows_are_counted_where_they_were_watched_whole() -> None:
    # A flash every 2 s for 21 s: five in each 10 s, and one begun window.
    taps = [2.0 * nth for nth in range(11)]

    assert windows_watched([taps], 10.0) == 2
    assert likely(in_windows([taps], 10.0)) == (5,)


def test_a_hand_that_is_early_moves_no_flash_into_the_window_before() -> None:
    # Two errors of 0.08 s, the bound asked for: late at first, early a period on.
    taps = [at + 0.08 * (-1) ** nth for nth, at in enumerate(FIVE)]

    assert likely(in_windows([taps], 6.0)) == (5,)


def test_a_flash_tapped_twice_is_one_flash_of_its_window() -> None:
    taps = sorted([*FIVE, 6.1])

    assert [one.count for one in in_windows([taps], 6.0)] == [5]


def test_nothing_tapped_is_nothing() -> None:
    nothing: list[list[list[float]]] = [[], [[]], [[], []]]
    for rounds in nothing:
        assert in_windows(rounds, 10.0) == ()
        assert windows_watched(rounds, 10.0) == 0


def test_a_count_over_a_window_is_seen_with_its_seconds_and_how_often() -> None:
    seen = observed_in_windows(in_windows([FIVE], 6.0), 6.0, 3)

    assert (seen.state, seen.count) == ("count", (5,))
    assert (seen.window_s, seen.groups_watched, seen.pause) == (6.0, 3, None)


@pytest.mark.parametrize("times", [[1.0, 0.5], [math.nan], [math.inf], [0.0, math.nan]])
def test_times_that_cannot_be_are_refused(times: list[float]) -> None:
    with pytest.raises(ValueError, match="flash"):
        in_windows([times], 10.0)


@pytest.mark.parametrize("window", [0.0, -1.0, math.nan, math.inf])
def test_a_window_without_length_is_refused(window: float) -> None:
    with pytest.raises(ValueError, match="window"):
        in_windows([[0.0]], window)


@given(
    st.lists(st.lists(st.floats(0, 60), max_size=40).map(sorted), max_size=4),
    st.floats(0.5, 60),
)
def test_any_taps_have_shares_that_stay_shares(
    rounds: list[list[float]], window: float
) -> None:
    shares = [each.confidence for each in in_windows(rounds, window)]

    assert shares == sorted(shares, reverse=True)
    assert all(0 < share < 1 for share in shares)
    assert sum(shares) <= 1


@given(
    st.lists(st.integers(0, 400), min_size=1, max_size=30).map(sorted),
    st.integers(-1000, 1000),
)
def test_when_one_began_to_count_does_not_matter(ticks: list[int], by: int) -> None:
    times = [tick / 8 for tick in ticks]  # eighths add without rounding

    assert in_windows([times], 8.0) == in_windows([[at + by for at in times]], 8.0)
