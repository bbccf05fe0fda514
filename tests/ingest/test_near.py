"""Near copies: found exactly as a comparison of every pair finds them."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from ingest.near import NEAR, near_pairs

_PIECES = st.frozensets(st.integers(0, 12).map(str), min_size=1, max_size=10)
_SHELVES = st.dictionaries(st.sampled_from("abcdefg"), _PIECES, max_size=6)


@given(_SHELVES)
def test_every_near_pair_is_found_and_no_other(
    units: dict[str, frozenset[str]],
) -> None:
    expected = [
        (one, other)
        for one, other in combinations(sorted(units), 2)
        for shared in [len(units[one] & units[other])]
        if shared >= NEAR * min(len(units[one]), len(units[other]))
    ]

    assert [(each.one, each.other) for each in near_pairs(units)] == expected


@given(_SHELVES)
def test_asked_about_one_document_only_its_pairs_are_given(
    units: dict[str, frozenset[str]],
) -> None:
    whole = near_pairs(units)

    for name in units:
        wanted = [each for each in whole if name in (each.one, each.other)]
        assert list(near_pairs(units, [name])) == wanted


def test_a_document_that_stands_whole_in_a_longer_one_is_near() -> None:
    (pair,) = near_pairs({"long": frozenset("abcdefghij"), "part": frozenset("abc")})

    assert (pair.share_of_one, pair.share_of_other) == (0.3, 1.0)
