"""Repair of characters, joining of torn words."""

from __future__ import annotations

import string
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ingest.cleaning import cells, clean, repair, vocabulary


@pytest.mark.parametrize(
    ("raw", "stored"),
    [
        ("\ufb02ashing, o\ufb00, con\ufb01guration", "flashing, off, configuration"),
        ("\0T\0h\0e\0", "The"),
        ("8\u00a0s \uff25\uff14", "8 s E4"),
        ("25 \u2103, 5 k\u2126", "25 °C, 5 kΩ"),
        ("10\u00b3 Ω, 2\u00bd min, m\u00b2, CO\u2082", "10³ Ω, 2½ min, m², CO₂"),
        ("a\u200bb\u2060c\ufeff", "abc"),
        ("one\r\ntwo\rthree\x0bfour", "one\ntwo\nthree\nfour"),
        ("com\u00ad\npressor, com\ufffe\npressor", "compressor, compressor"),
        ("lone \ud800 half", "lone \ufffd half"),
        ("Reset ............................. 9", "Reset ... 9"),
        ("Reset . . . . . . . . . . 9", "Reset ... 9"),
        ("Name ________________", "Name ___"),
        ("wait... then 0.5 s, see 3.2.1", "wait... then 0.5 s, see 3.2.1"),
        ("end   \nnext", "end\nnext"),
    ],
)
def test_characters_are_put_right(raw: str, stored: str) -> None:
    assert repair(raw) == stored


@given(st.text())
def test_repair_leaves_nothing_to_repair(text: str) -> None:
    once = repair(text)

    assert repair(once) == once
    assert not any(
        unicodedata.category(char) in {"Cc", "Cf", "Cs"}
        for char in once
        if char not in "\n\t"
    )


@given(st.text(alphabet=string.ascii_letters + string.digits + " \n-/°Ω,"))
def test_repair_keeps_every_word_of_plain_text(text: str) -> None:
    assert repair(text).split() == text.split()


def test_a_word_parted_at_a_line_end_is_joined_where_the_whole_is_known() -> None:
    pages = clean(["The com-\npressor stops.", "A compressor hums."])

    assert pages[0] == "The compressor stops."


def test_a_parted_word_that_stands_nowhere_else_stays_as_printed() -> None:
    assert clean(["a two-\nstage valve"]) == ["a two-\nstage valve"]


def test_codes_are_never_joined_over_a_line_end() -> None:
    pages = ["E5-\nlow and E-\n5 and P1-\nlow", "low elow plow e5low"]

    assert clean(pages)[0] == pages[0]


def test_a_capital_behind_the_hyphen_is_a_name_and_stays() -> None:
    assert clean(["North-\nSouth", "northsouth"])[0] == "North-\nSouth"


def test_split_ligatures_are_closed() -> None:
    pages = clean(["The lamp is fl ashing, confi guration", "configuration flashing"])

    assert pages[0] == "The lamp is flashing, configuration"


def test_words_that_only_look_like_split_ligatures_stay_apart() -> None:
    pages = ["turn it off before work, a stiff lever"]

    assert clean(pages) == pages


def test_the_halves_of_a_parted_word_are_not_vocabulary() -> None:
    assert vocabulary(["the elec-\ntrical box"]) == {"the", "box"}


def test_cells_are_parted_by_two_spaces_or_a_tab() -> None:
    assert cells("  4  Discharge sensor\tCN5 ") == ["4", "Discharge sensor", "CN5"]
