"""Taps to counts: trains made by hand and trains made by rule."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.signals.taps import likely, read_taps


def train(
    count: int, groups: int, flash: float = 0.5, pause: float = 2.0, start: float = 0.0
) -> list[float]:
    """Return the times of groups of `count` flashes with a pause between them."""
    period = (count - 1) * flash + pause
    return [
        start + group * period + nth * flash
        for group in range(groups)
        for nth in range(count)
    ]


def test_three_groups_of_four_are_four() -> None:
    found = read_taps([train(4, 3)])

    assert found.groups == (4, 4, 4)
    assert found.pause == "seen"
    assert [each.count for each in found.by_groups] == [4]
    # By hand: 0.5 s from flash to flash, 2 s of pause, 3 x 0.5 + 2 s a group.
    assert (found.flash_s, found.pause_s, found.period_s) == (0.5, 2.0, 3.5)


def test_a_flash_that_was_missed_leaves_both_counts() -> None:
    # Groups of six, the fourth flash of the second one missed: its gap is 1 s.
    taps = train(6, 4)
    del taps[9]

    found = read_taps([taps])

    assert found.groups == (6, 5, 6, 6)
    assert found.by_groups[0].count == 6
    assert likely(found.by_groups) == (5, 6)


def test_a_last_group_that_was_not_watched_to_its_end_is_no_other_count() -> None:
    found = read_taps([train(4, 3)[:-2]])

    assert found.groups == (4, 4, 2)
    assert likely(found.by_groups) == (4,)


def test_even_flashing_has_no_count() -> None:
    found = read_taps([[0.5 * nth for nth in range(12)]])

    assert found.pause == "none"
    assert found.by_groups == ()


def test_one_group_alone_is_a_count_that_is_not_sure() -> None:
    found = read_taps([[0.0, 0.5, 1.0]])

    assert found.pause is None
    assert found.by_groups[0].count == 3
    assert found.by_groups[0].confidence <= 0.5


def test_rounds_are_counted_beside_each_other() -> None:
    # The clock runs on between rounds; the time between them is no pause.
    found = read_taps([train(7, 2), train(7, 2, start=100.0)])

    assert found.groups == (7, 7, 7, 7)
    assert found.pause_s == 2.0


def test_windows_are_counted_where_they_were_watched_whole() -> None:
    # A flash every 2 s for 21 s: five in each 10 s, and one begun window.
    found = read_taps([[2.0 * nth for nth in range(11)]], window_s=10.0)

    assert found.windows == (5, 5)
    assert likely(found.by_window) == (5,)


def test_nothing_tapped_is_nothing() -> None:
    nothing: list[list[list[float]]] = [[], [[]], [[], []]]
    for rounds in nothing:
        found = read_taps(rounds)

        assert (found.taps, found.groups, found.by_groups) == (0, (), ())


@pytest.mark.parametrize("times", [[1.0, 0.5], [math.nan], [math.inf], [0.0, math.nan]])
def test_times_that_are_none_are_refused(times: list[float]) -> None:
    with pytest.raises(ValueError, match="tap"):
        read_taps([times])


@pytest.mark.parametrize("window", [0.0, -1.0, math.nan, math.inf])
def test_a_window_without_length_is_refused(window: float) -> None:
    with pytest.raises(ValueError, match="window"):
        read_taps([[0.0]], window_s=window)


@given(
    count=st.integers(2, 12),
    groups=st.integers(2, 6),
    flash=st.floats(0.2, 1.5),
    longer=st.floats(2.6, 8.0),
    jitter=st.lists(st.floats(-0.1, 0.1), min_size=80, max_size=80),
)
def test_whoever_taps_a_tenth_off_still_gets_the_count(
    count: int, groups: int, flash: float, longer: float, jitter: list[float]
) -> None:
    clean = train(count, groups, flash, flash * longer)
    taps = [at + flash * off for at, off in zip(clean, jitter, strict=False)]

    found = read_taps([taps])

    assert found.groups == (count,) * groups
    assert found.by_groups[0].count == count


@given(
    st.lists(st.lists(st.floats(0, 60), max_size=40).map(sorted), max_size=4),
    st.floats(0.5, 60),
)
def test_any_taps_are_read_without_losing_one(
    rounds: list[list[float]], window: float
) -> None:
    found = read_taps(rounds, window_s=window)

    assert sum(found.groups) == found.taps == sum(map(len, rounds))
    for counts in (found.by_groups, found.by_window):
        shares = [each.confidence for each in counts]
        assert shares == sorted(shares, reverse=True)
        assert all(0 < share < 1 for share in shares)
        assert sum(shares) <= 1


@given(
    st.lists(st.integers(0, 400), min_size=1, max_size=30).map(sorted),
    st.integers(-1000, 1000),
)
def test_when_one_began_to_tap_does_not_matter(ticks: list[int], by: int) -> None:
    times = [tick / 8 for tick in ticks]  # eighths add without rounding

    assert read_taps([times]) == read_taps([[at + by for at in times]])
