"""Codes are found however they are written, and only where they are."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.library.codes import codes_in, counts_in, loose_codes_in, normal


@pytest.mark.parametrize("written", ["P6", "P-6", "P 6", "(P6)", "p6", "'P-6'", "P.6"])
def test_one_code_in_every_spelling(written: str) -> None:
    assert codes_in(f"shows {written} now") == ("P6",)


def test_a_code_is_not_a_longer_code() -> None:
    assert "E4" not in codes_in("E40 and E41")
    assert codes_in("E4.") == ("E4",)


@pytest.mark.parametrize(
    "text",
    [
        "wait 3 min at 240VAC, 60 Hz, 10k, 46kohm, 1st and 2nd, 12.5 A",
        "a 4 is seen, I 5 of them",
        "step 6 of page 12",
        "",
    ],
)
def test_quantities_and_plain_numbers_are_no_codes(text: str) -> None:
    assert codes_in(text) == ()


def test_a_number_is_a_code_where_the_text_says_so() -> None:
    assert codes_in("fault code 54 on the remote") == ("54",)
    assert codes_in("Error No. 12") == ("12",)


def test_part_numbers_give_their_parts() -> None:
    assert codes_in("KT42-OU36, A1/A3") == (
        "A1",
        "A1A3",
        "A3",
        "KT42",
        "KT42OU36",
        "OU36",
    )


def test_what_is_typed_loosely_may_be_a_code() -> None:
    assert loose_codes_in("whats p nine mean") == ("P9",)
    assert loose_codes_in("have a 4 here") == ()


@pytest.mark.parametrize(
    ("text", "lead", "counts"),
    [
        ("6 flashes then dark", "", ("#6",)),
        ("flashes six times", "", ("#6",)),
        ("four quick amber winks", "", ("#4",)),
        ("LD2 blinks amber 9 times", "", ("#9",)),
        ("4 discharge sensor\n11 fan motor", "Flashes Meaning", ("#11", "#4")),
        ("Flashes | Meaning\n3 | coil", "", ("#3",)),
        ("wait 3 min before the lamp flashes", "", ()),
        ("4 screws\n5 washers", "Item Part", ()),
    ],
)
def test_counts_of_flashes(text: str, lead: str, counts: tuple[str, ...]) -> None:
    assert counts_in(text, lead) == counts


@given(st.text())
def test_any_text_gives_codes_in_normal_form(text: str) -> None:
    for code in codes_in(text):
        assert code == normal(code)
    counts_in(text, text)
    loose_codes_in(text)
