"""Trains of flashes to counts: by hand, by rule, and whatever their times."""

from __future__ import annotations

import math
from random import Random

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.signals.decode import decode
from assistant.signals.flashes import Flash, flashes_of
from assistant.signals.seen_train import observed
from assistant.signals.taps import likely
from assistant.signals.train_reader import read_train
from tests.evaluation import trains
from tests.flash_trains import Hand, Watching, make_digits, make_train
from tests.scheme_pack import scheme_rows
from tests.signal_rows import group, ids


def seeded(seed: int) -> Random:
    return Random(seed)  # noqa: S311 - no secret, a train made again


def groups_of(
    count: int, groups: int, flash: float = 0.5, pause: float = 2.0
) -> list[float]:
    """Return groups of flashes; `pause` from the last flash to the next first."""
    period = (count - 1) * flash + pause
    return [g * period + n * flash for g in range(groups) for n in range(count)]


def test_three_groups_of_four_are_four_with_their_times() -> None:
    found = read_train([groups_of(4, 3)])

    # By hand: 3 x 0.5 s in a group and 2 s to the next are 3.5 s.
    assert (found.form, found.count, found.groups) == ("groups", 4, (4, 4, 4))
    assert (found.flash_s, found.pause_s, found.period_s) == (0.5, 2.0, 3.5)
    assert found.another_round == ""


def test_a_start_in_the_middle_of_a_group_is_no_other_count() -> None:
    found = read_train([groups_of(6, 3)[4:]])

    assert found.count == 6


def test_a_flash_that_was_missed_inside_a_group_is_counted_in() -> None:
    taps = groups_of(6, 3)
    del taps[9]  # the fourth of the second group

    found = read_train([taps])

    assert found.count == 6
    assert found.groups == (6, 6, 6)


def test_a_first_flash_that_was_missed_shows_by_the_longer_pause() -> None:
    taps = groups_of(6, 4)
    del taps[12]
    del taps[6]

    assert read_train([taps]).count == 6


def test_a_last_group_that_was_not_watched_to_its_end_is_no_other_count() -> None:
    found = read_train([groups_of(4, 3)[:-2]])

    assert found.groups == (4, 4, 2)
    assert likely(found.counts) == (4,)


def test_rounds_are_counted_beside_each_other() -> None:
    # The clock runs on between rounds; the time between them is no pause.
    found = read_train([groups_of(7, 2), [at + 100.0 for at in groups_of(7, 2)]])

    assert found.groups == (7, 7, 7, 7)
    assert found.pause_s == 2.0


def test_one_group_alone_is_not_sure_and_asks_to_watch_on() -> None:
    found = read_train([[0.0, 0.5, 1.0]])

    assert found.form == "unknown"
    assert found.count == 3
    assert found.counts[0].confidence <= 0.5
    assert "watch on" in found.another_round


def test_rounds_of_one_group_each_give_the_longest_for_a_hand_makes_none_up() -> None:
    seven = [0.6 * n for n in range(7)]

    found = read_train([seven, seven[1:], seven])

    assert found.count == 7
    assert 6 in [one.count for one in found.counts]
    assert found.another_round


def test_even_flashing_has_a_rate_and_no_count() -> None:
    found = read_train([[0.5 * n for n in range(12)]])

    assert (found.form, found.count) == ("even", None)
    assert found.rate_hz is not None
    assert found.rate_hz[0] <= 2.0 <= found.rate_hz[1]


def test_lone_flashes_far_apart_are_a_count_of_one_with_their_seconds() -> None:
    found = read_train([[0.0, 5.0, 10.0, 15.0]])

    assert (found.form, found.count, found.period_s) == ("single", 1, 5.0)


def test_taps_made_twice_are_reported_and_not_counted() -> None:
    taps = sorted([*groups_of(3, 3), 0.12, 4.1])

    found = read_train([taps])

    assert (found.count, found.doubled) == (3, 2)


def test_a_lamp_that_is_fast_by_itself_is_not_all_doubles() -> None:
    found = read_train([[0.1 * n for n in range(30)]])

    assert (found.form, found.doubled) == ("even", 0)


def test_quick_and_long_flashes_are_two_digits() -> None:
    # Two quick ones of 0.3 s, three long ones of 1.2 s, 1 s between, 4 s after.
    one = [(0.0, 0.3), (0.6, 0.9), (1.9, 3.1), (3.4, 4.6), (4.9, 6.1)]
    again = [(at + 10.1 * n, off + 10.1 * n) for n in range(3) for at, off in one]

    found = read_train([[Flash(at, off) for at, off in again]])

    assert found.form == "short_long"
    assert found.digits is not None
    assert found.digits.short[0].count == 2
    assert found.digits.long[0].count == 3
    assert found.digits.first == "short"


def test_keys_for_quick_and_long_are_as_good_as_lengths() -> None:
    marks = [False, False, True]
    taps = [
        Flash(8.0 * n + at, long=mark)
        for n in range(3)
        for at, mark in zip((0.0, 0.5, 2.0), marks, strict=True)
    ]

    found = read_train([taps])

    assert found.digits is not None
    assert (found.digits.short[0].count, found.digits.long[0].count) == (2, 1)


def test_a_lamp_lit_from_the_beginning_is_no_flash() -> None:
    found = flashes_of([(0.0, False), (1.0, True), (1.5, False)])

    assert found == (Flash(1.0, 1.5),)


@pytest.mark.parametrize("times", [[1.0, 0.5], [math.nan], [0.0, math.inf]])
def test_times_that_are_none_are_refused(times: list[float]) -> None:
    with pytest.raises(ValueError, match="flash"):
        read_train([times])


def test_nothing_and_lone_taps_are_not_read_as_more() -> None:
    nothing: list[list[list[float]]] = [[], [[]], [[], []]]
    for rounds in nothing:
        assert read_train(rounds).count is None

    assert read_train([[3.0], [9.0]]).form == "unknown"


def test_what_was_tapped_is_decoded_with_the_dissent_kept_lighter() -> None:
    rounds = [groups_of(4, 3), groups_of(4, 2)]

    seen = observed(read_train(rounds))
    match = decode([seen], [group(n) for n in range(1, 9)])

    assert ids(match)[0] == "group-4"
    assert seen.pause == "seen"


def test_digits_that_were_tapped_find_their_row() -> None:
    made = make_digits(seeded(1), 2, 3, Hand())

    seen = observed(read_train(made.rounds))
    told = seen.model_copy(update={"label": ("P1",)})

    assert ids(decode([told], scheme_rows()))[0] == "digits-23"


# A small part of the report of tests/evaluation/trains.py.


@pytest.mark.parametrize("watching", ["two periods", "three groups", "one group"])
def test_exact_trains_are_read_exactly(watching: Watching) -> None:
    tally = trains.counts(40, 3, trains.STEADY, watching)

    assert (tally.right, tally.wrong) == (40, [])


@pytest.mark.parametrize("watching", ["two periods", "three groups", "one group"])
def test_shaky_trains_are_right_and_a_wrong_one_keeps_the_truth(
    watching: Watching,
) -> None:
    tally = trains.counts(60, 3, trains.SHAKY, watching)

    assert tally.holds, tally.wrong


def test_digits_even_blinks_windows_and_doubles_are_read() -> None:
    parts = [
        trains.digits(81, 3, trains.STEADY),
        trains.digits(81, 3, trains.SHAKY),
        trains.even(20, 3, trains.SHAKY),
        trains.windows(40, 3),
        trains.doubles(40, 3),
    ]

    assert [part.name for part in parts if not part.holds] == []


@given(
    count=st.integers(2, 20),
    flash=st.floats(0.3, 1.2),
    longer=st.floats(2.2, 6.0),
    cut=st.integers(0, 19),
)
def test_whole_periods_from_any_flash_give_the_count(
    count: int, flash: float, longer: float, cut: int
) -> None:
    taps = groups_of(count, 4, flash, flash * longer)[cut % count :]

    assert read_train([taps]).count == count


@given(
    count=st.integers(2, 12),
    groups=st.integers(3, 6),
    flash=st.floats(0.4, 1.5),
    longer=st.floats(2.6, 8.0),
    jitter=st.lists(st.floats(-0.1, 0.1), min_size=80, max_size=80),
)
def test_whoever_taps_a_tenth_off_still_gets_the_count(
    count: int, groups: int, flash: float, longer: float, jitter: list[float]
) -> None:
    clean = groups_of(count, groups, flash, flash * longer)
    taps = [at + flash * off for at, off in zip(clean, jitter, strict=False)]

    found = read_train([taps])

    assert found.groups == (count,) * groups
    assert found.count == count


@given(st.lists(st.lists(st.floats(0, 60), max_size=25).map(sorted), max_size=3))
def test_any_times_are_read_and_the_shares_stay_shares(
    rounds: list[list[float]],
) -> None:
    found = read_train(rounds)

    shares = [one.confidence for one in found.counts]
    assert shares == sorted(shares, reverse=True)
    assert all(0 < share < 1 for share in shares)
    assert sum(shares) <= 1 + 1e-9
    assert observed(found).state in ("blink", "count")


@given(seed=st.integers(0, 10_000), by=st.integers(-500, 500))
def test_when_one_began_to_watch_does_not_matter(seed: int, by: int) -> None:
    train = make_train(seeded(seed), 1 + seed % 12, Hand(jitter=0.08, missing=0.05))
    eighths = [[round(at * 8) / 8 for at in times] for times in train.rounds]
    moved = [[at + by for at in times] for times in eighths]

    assert read_train(eighths).counts == read_train(moved).counts
