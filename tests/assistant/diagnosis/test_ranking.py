"""Weights of causes against sums done by hand."""

from __future__ import annotations

from math import isclose, log2

from hypothesis import given
from hypothesis import strategies as st

from assistant.diagnosis.choice import Option, choose
from assistant.diagnosis.ranking import (
    NONE_OF_THESE,
    Evidence,
    Suspect,
    entropy,
    expected_fall,
    rank,
    weights,
)

TWO = (Suspect("p/sensor", "common"), Suspect("p/board", "rare"))


def test_start_weights_are_six_three_and_one_with_one_for_the_open_cause() -> None:
    found = weights(
        [
            Suspect("p/a", "common"),
            Suspect("p/b", "occasional"),
            Suspect("p/c", "rare"),
        ],
        [],
    )

    assert found == {"p/a": 6 / 11, "p/b": 3 / 11, "p/c": 1 / 11, NONE_OF_THESE: 1 / 11}


def test_a_strong_outcome_moves_a_cause_sixfold() -> None:
    # By hand: sensor 6 x 6 = 36, board 1 / 6, open 1; the sum is 37 + 1/6.
    failed = Evidence("p/ohms", "fail", {"p/sensor": 6.0, "p/board": 1 / 6})

    found = weights(TWO, [failed])

    assert isclose(found["p/sensor"], 36 / (37 + 1 / 6))
    assert isclose(found["p/board"], (1 / 6) / (37 + 1 / 6))


def test_an_outcome_against_the_leader_changes_the_order() -> None:
    # By hand: sensor 6 / 6 = 1, board 1 x 6 = 6.
    passed = Evidence("p/ohms", "pass", {"p/sensor": 1 / 6, "p/board": 6.0})

    order = [one.cause for one in rank(TWO, [passed])]

    assert order == ["p/board", "p/sensor"]


def test_two_candidates_share_what_points_to_their_causes() -> None:
    halves = [Suspect("p/a", "common", 0.5), Suspect("p/b", "common", 0.5)]

    found = weights(halves, [])

    assert found == {"p/a": 3 / 7, "p/b": 3 / 7, NONE_OF_THESE: 1 / 7}


def test_a_cause_named_by_both_candidates_gets_both_shares() -> None:
    both = [Suspect("p/a", "common", 0.5), Suspect("p/a", "common", 0.5)]

    assert weights(both, [])["p/a"] == 6 / 7


def test_standings_follow_the_share_of_the_top_weight() -> None:
    three = [
        Suspect("p/a", "common"),
        Suspect("p/b", "occasional"),
        Suspect("p/c", "rare"),
    ]

    assert [(one.cause, one.standing) for one in rank(three, [])] == [
        ("p/a", "most likely"),
        ("p/b", "possible"),
        ("p/c", "less likely"),
    ]


def test_equal_weights_are_ordered_by_id() -> None:
    equal = [Suspect("p/z", "common"), Suspect("p/a", "common")]

    assert [one.cause for one in rank(equal, [])] == ["p/a", "p/z"]


def test_nothing_suspected_ranks_nothing() -> None:
    assert rank([], []) == ()


def test_a_check_that_tells_nothing_gains_nothing() -> None:
    flat = expected_fall({"a": 0.5, "b": 0.5}, [{}, {}])

    assert isclose(flat, 0.0, abs_tol=1e-12)


def test_the_expected_fall_of_a_strong_check_is_the_sum_done_by_hand() -> None:
    # Two causes, one half each. Pass: a x 1/6, b x 6; fail the reverse.
    # Under a: P(fail) = 6 / (6 + 1/6) = 36/37. By symmetry each result has chance 1/2
    # and leaves 36/37 against 1/37.
    left = -(36 / 37) * log2(36 / 37) - (1 / 37) * log2(1 / 37)
    outcomes = [{"a": 6.0, "b": 1 / 6}, {"a": 1 / 6, "b": 6.0}]

    assert isclose(expected_fall({"a": 0.5, "b": 0.5}, outcomes), 1 - left)


@given(st.dictionaries(st.sampled_from("abcde"), st.floats(0.01, 10), min_size=1))
def test_entropy_is_never_negative_nor_above_the_log_of_the_number(
    raw: dict[str, float],
) -> None:
    total = sum(raw.values())
    bits = entropy({name: value / total for name, value in raw.items()})

    assert -1e-9 <= bits <= log2(len(raw)) + 1e-9


STRONG = ({"p/sensor": 6.0, "p/board": 1 / 6}, {"p/sensor": 1 / 6, "p/board": 6.0})


def test_a_look_goes_before_a_sharper_live_check() -> None:
    by_cause = weights(TWO, [])
    mild = ({"p/sensor": 2.0}, {"p/sensor": 0.5})
    options = [
        Option("p/live", "live", 1, STRONG),
        Option("p/look", "look", 10, mild),
    ]

    chosen = choose(by_cause, options)

    assert chosen is not None
    assert chosen.check == "p/look"


def test_a_level_is_left_when_nothing_in_it_tells() -> None:
    options = [
        Option("p/look", "look", 1, ({}, {})),
        Option("p/live", "live", 5, STRONG),
    ]

    chosen = choose(weights(TWO, []), options)

    assert chosen is not None
    assert chosen.check == "p/live"


def test_inside_a_level_the_quicker_of_two_equal_checks_goes_first() -> None:
    options = [
        Option("p/slow", "power_off", 9, STRONG),
        Option("p/quick", "power_off", 3, STRONG),
    ]

    chosen = choose(weights(TWO, []), options)

    assert chosen is not None
    assert chosen.check == "p/quick"


def test_the_check_that_the_document_names_goes_first() -> None:
    options = [
        Option("p/look", "look", 1, STRONG),
        Option("p/named", "live", 5, STRONG),
    ]

    chosen = choose(weights(TWO, []), options, follow_on="p/named")

    assert chosen is not None
    assert (chosen.check, chosen.named_by_document) == ("p/named", True)


def test_no_check_is_chosen_when_none_tells() -> None:
    assert choose(weights(TWO, []), [Option("p/x", "look", 1, ({}, {}))]) is None
