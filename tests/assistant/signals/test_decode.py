"""From what was seen to what it can mean."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.signals.decode import decode
from assistant.signals.observation import Observation
from tests.signal_rows import GREEN, TABLE, amber, grid, group, ids, row, window


def test_a_count_in_the_table_is_exact_with_what_agreed_and_what_was_assumed() -> None:
    match = decode([amber(count=(4,))], TABLE)

    assert match.verdict == "exact"
    assert ids(match) == ["amber-4"]
    assert match.candidates[0].matched == ("state", "count", "colour")
    assert match.candidates[0].assumed == ("pause", "window", "board", "label")


def test_a_count_over_the_documents_own_window_assumes_no_pause() -> None:
    match = decode([amber(count=(4,), window_s=10.0)], TABLE)

    assert "window" in match.candidates[0].matched
    assert "pause" not in match.candidates[0].assumed


def test_a_count_over_another_time_cannot_be_told_yet() -> None:
    match = decode([amber(count=(4,), window_s=20.0)], TABLE)

    assert match.verdict == "not_decodable"
    assert "over 10 s" in match.reason


def test_a_count_outside_the_table_is_never_brought_to_the_nearest_row() -> None:
    match = decode([amber(count=(9,))], TABLE)

    assert match.verdict == "none"
    assert match.candidates == ()
    assert match.question is None
    assert "not in this document" in match.reason
    assert "1-8" in match.reason


def test_a_gap_inside_the_table_is_outside_it_too() -> None:
    match = decode([amber(count=(5,))], [window(4), window(6)])

    assert match.verdict == "none"
    assert "lists 4, 6" in match.reason


def test_six_or_seven_gives_both_and_asks_which() -> None:
    match = decode([amber(count=(6, 7), groups_watched=2)], TABLE)

    assert match.verdict == "several"
    assert sorted(ids(match)) == ["amber-6", "amber-7"]
    assert match.question is not None
    assert match.question.slot == "count"
    assert [answer for answer, _ in match.question.options] == ["6", "7"]
    assert match.question.gain_bits == pytest.approx(1.0)


def test_many_flashes_keep_their_neighbours_lighter() -> None:
    match = decode([amber(count=(7,))], TABLE)

    assert ids(match) == ["amber-7", "amber-6", "amber-8"]
    weights = [candidate.weight for candidate in match.candidates]
    assert weights[0] > weights[1] == weights[2]
    assert "count" in match.candidates[1].assumed


def test_a_neighbour_may_stand_in_another_document_of_the_same_unit() -> None:
    rows = [*TABLE, window(9, document="bulletin")]
    other = [*TABLE, window(9, document="sister's manual", match="possible")]

    assert "amber-9" in ids(decode([amber(count=(8,))], rows))
    assert "amber-9" not in ids(decode([amber(count=(8,))], other))


def test_a_counted_light_is_less_likely_the_flashing_one_of_a_grid() -> None:
    rows = [window(4), grid("coil", LD2="flash", LD1="on")]

    match = decode([Observation(label=("LD2",), state="count", count=(4,))], rows)

    assert ids(match) == ["amber-4", "coil"]
    assert match.candidates[1].weight < match.candidates[0].weight


def test_few_flashes_keep_no_neighbours() -> None:
    assert ids(decode([amber(count=(4,))], TABLE)) == ["amber-4"]


def test_one_group_watched_keeps_neighbours_of_few_flashes_too() -> None:
    match = decode([amber(count=(4,), groups_watched=1)], TABLE)

    assert sorted(ids(match)) == ["amber-3", "amber-4", "amber-5"]
    assert match.verdict == "several"


def test_two_groups_that_agree_settle_a_high_count() -> None:
    assert ids(decode([amber(count=(8,), groups_watched=2)], TABLE)) == ["amber-8"]


def test_a_blink_without_a_number_is_not_decodable_and_asks_how_many() -> None:
    match = decode([amber(state="blink")], TABLE)

    assert match.verdict == "not_decodable"
    assert match.question is not None
    assert match.question.slot == "count"


def test_a_blink_that_may_be_even_asks_for_the_pause_first() -> None:
    rows = [window(3), group(4), row("standby", "even_blink", is_fault=False)]

    match = decode([amber(state="blink")], rows)

    assert match.verdict == "not_decodable"
    assert match.reason == "cannot tell yet: need the pause"
    assert match.question is not None
    assert match.question.slot == "pause"
    options = dict(match.question.options)
    assert options["none"] == ("quellmar/standby",)
    assert options["seen"] == ("quellmar/amber-3", "quellmar/group-4")


def test_a_blink_in_a_table_of_one_row_is_still_not_decodable() -> None:
    for rows in ([window(3)], [row("standby", "even_blink")]):
        match = decode([amber(state="blink")], rows)

        assert match.verdict == "not_decodable"
        assert match.question is not None


def test_a_blink_without_a_pause_is_the_even_blink() -> None:
    rows = [window(3), row("standby", "even_blink", is_fault=False)]

    match = decode([amber(state="blink", pause="none")], rows)

    assert match.verdict == "exact"
    assert ids(match) == ["standby"]
    assert "pause" in match.candidates[0].matched


def test_a_count_with_an_even_blink_on_the_same_lamp_asks_for_the_pause() -> None:
    rows = [group(4), row("standby", "even_blink", is_fault=False)]

    match = decode([amber(count=(4,))], rows)

    assert match.verdict == "several"
    assert ids(match) == ["group-4", "standby"]
    assert match.question is not None
    assert match.question.slot == "pause"


def test_a_count_with_its_pause_leaves_no_even_blink() -> None:
    rows = [group(4), row("standby", "even_blink", is_fault=False)]

    assert ids(decode([amber(count=(4,), pause="seen")], rows)) == ["group-4"]


def test_a_count_outside_the_table_says_what_an_even_blink_would_mean() -> None:
    rows = [group(4), row("standby", "even_blink", is_fault=False)]

    match = decode([amber(count=(20,))], rows)

    assert match.verdict == "none"
    assert "even blink: standby" in match.reason


def test_another_colour_excludes() -> None:
    match = decode([amber(count=(4,), colour=("red",))], TABLE)

    assert match.verdict == "none"


def test_amber_called_yellow_stays_possible_where_no_lamp_is_yellow() -> None:
    match = decode([amber(count=(4,), colour=("yellow",))], TABLE)

    assert ids(match) == ["amber-4"]
    assert "colour" in match.candidates[0].assumed


def test_amber_is_not_yellow_where_the_board_has_both() -> None:
    yellow = window(2, "yellow-2", lamp={"label": "LD5", "colour": "yellow"})

    match = decode([amber(count=(4,), colour=("yellow",))], [*TABLE, yellow])

    assert match.verdict == "none"


def test_another_board_or_box_excludes() -> None:
    assert decode([amber(count=(4,), board=("outdoor fan",))], TABLE).verdict == "none"
    assert decode([amber(count=(4,), box=("indoor",))], TABLE).verdict == "none"
    assert decode([amber(count=(4,), box=("outdoor",))], TABLE).verdict == "exact"
    assert decode([amber(count=(4,), board=("main board",))], TABLE).verdict == "exact"


def test_without_a_colour_every_lamp_stays_and_the_colour_is_asked() -> None:
    rows = [window(4), window(4, "green-4", lamp=GREEN)]

    match = decode([Observation(state="count", count=(4,))], rows)

    assert match.verdict == "several"
    assert match.question is not None
    assert match.question.slot == "colour"
    assert dict(match.question.options)["green"] == ("quellmar/green-4",)


def test_steady_is_not_off_and_neither_is_a_count() -> None:
    rows = [row("lit", "steady"), row("dark", "off"), window(1)]

    assert ids(decode([amber(state="on")], rows)) == ["lit"]
    assert ids(decode([amber(state="off")], rows)) == ["dark"]
    assert ids(decode([amber(count=(1,))], rows)) == ["amber-1"]


def test_with_the_unit_unknown_the_unit_may_be_the_best_question() -> None:
    rows = [
        window(4, f"a{n}", document=f"manual {n}", match="possible") for n in range(4)
    ]

    match = decode([amber(count=(4,))], rows)

    assert match.verdict == "several"
    assert match.question is not None
    assert match.question.slot == "unit"
    assert len(match.question.options) == 4


def test_the_mode_excludes_or_is_assumed() -> None:
    rows = [window(4, "cooling", mode="cool"), window(4, "heating", mode="heat")]

    unknown = decode([amber(count=(4,))], rows)
    heating = decode([amber(count=(4,))], rows, "heat")

    assert unknown.question is not None
    assert unknown.question.slot == "mode"
    assert ids(heating) == ["heating"]
    assert "mode" in heating.candidates[0].matched


counts = st.sets(st.integers(1, 14), min_size=1, max_size=8)


@given(listed=counts, told=st.sets(st.integers(1, 16), min_size=1, max_size=3))
def test_no_count_is_answered_that_was_not_told_or_next_to_it(
    listed: set[int], told: set[int]
) -> None:
    rows = [window(count) for count in sorted(listed)]

    match = decode([amber(count=tuple(sorted(told)), pause="seen")], rows)

    found = {int(name.removeprefix("amber-")) for name in ids(match)}
    assert found & told == listed & told
    assert all(min(abs(count - one) for one in told) <= 1 for count in found)
    assert (match.verdict == "none") == (not listed & told)


@given(listed=counts, told=st.integers(1, 14), extra=st.booleans())
def test_telling_more_never_adds_a_candidate(
    listed: set[int], told: int, extra: bool
) -> None:
    rows = [window(count) for count in sorted(listed)]
    rows += [window(count, f"g-{count}", lamp=GREEN) for count in sorted(listed)]
    rows += [row("standby", "even_blink")]
    less = Observation(state="count", count=(told,))
    more = less.model_copy(
        update={"pause": "seen"} if extra else {"colour": ("amber",)}
    )

    assert set(ids(decode([more], rows))) <= set(ids(decode([less], rows)))


@given(order=st.permutations(range(8)))
def test_the_order_of_rows_changes_nothing(order: list[int]) -> None:
    shuffled = [TABLE[place] for place in order]

    assert decode([amber(count=(7,))], shuffled) == decode([amber(count=(7,))], TABLE)
