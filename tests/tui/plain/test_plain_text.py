"""Foreign text is literal, safe and wrapped, whatever it holds."""

from __future__ import annotations

import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tui.plain.text import (
    CUT_MARK,
    clean,
    count,
    excerpt,
    excerpt_lines,
    numbers,
    one_line,
    spelled,
    table,
    wrap,
)


@given(st.text())
def test_nothing_a_terminal_acts_on_is_left(text: str) -> None:
    left = clean(text).replace("\n", "")

    assert not [letter for letter in left if unicodedata.category(letter)[0] == "C"]


def test_an_escape_sequence_becomes_its_letters() -> None:
    assert clean("\x1b[31mred\x1b[0m\x07") == "[31mred[0m"


@pytest.mark.parametrize(
    "text", ["[E4] fault code [OFF]", "see [/foo]", "[@click=app.quit]x[/]", "ゼロ 4"]
)
def test_brackets_and_other_scripts_stay_as_they_are(text: str) -> None:
    assert clean(text) == text


def test_typographic_signs_become_plain_ones_and_measures_stay() -> None:
    assert clean("“4–6” kΩ ± 5 °C…") == '"4-6" kΩ ± 5 °C...'


@given(st.text(max_size=300), st.integers(20, 80))
def test_wrapped_lines_fit_and_lose_no_letter(text: str, width: int) -> None:
    lines = wrap(text, width, "* ")

    assert all(len(line) <= width for line in lines)
    told = "".join("".join(lines).split())
    assert told == "".join(("*" + one_line(text)).split())


@given(st.text(max_size=400), st.integers(30, 120))
def test_an_excerpt_is_the_text_s_own_beginning(text: str, length: int) -> None:
    cut = excerpt(text, length)
    whole = one_line(text)

    if whole == cut:
        assert len(whole) <= length
    else:
        assert whole.startswith(cut.removesuffix(f" {CUT_MARK}"))
        assert len(cut) <= length + len(CUT_MARK) + 1


def test_an_excerpt_ends_where_a_sentence_ends() -> None:
    text = "Switch the supply off. Wait for the lamp to go dark. Then measure the bus."

    assert excerpt(text, 60) == (
        "Switch the supply off. Wait for the lamp to go dark. [...]"
    )


PROSE = """\
Remove the service cover on the right; the lamps can be seen without
removing the board cover.
LD1 green  LD2 amber  State of the board and of everything behind it
off  off  No supply at the board
"""


def test_a_line_broken_by_the_page_is_whole_again_and_a_row_stays_a_row() -> None:
    assert excerpt_lines(PROSE, 500) == [
        "Remove the service cover on the right; the lamps can be seen without "
        "removing the board cover.",
        "LD1 green  LD2 amber  State of the board and of everything behind it",
        "off  off  No supply at the board",
    ]


def test_a_passage_is_cut_between_rows_and_marked() -> None:
    rows = [f"{number}  meaning {number}  action" for number in range(9)]

    assert excerpt_lines("\n".join(rows), 60) == [*rows[:3], CUT_MARK]


def test_a_terminal_without_the_sign_gets_the_word() -> None:
    assert spelled("12 kΩ at 25 °C ± 5 %", "ascii") == "12 kohm at 25 deg C +- 5 %"
    assert spelled("12 kΩ", "utf-8") == "12 kΩ"
    assert spelled("ゼロ", "ascii") == "??"


def test_small_words_of_counting() -> None:
    assert (count(1, "page"), count(2, "page")) == ("1 page", "2 pages")
    assert numbers([9, 3, 8, 7, 8]) == "3, 7-9"
    assert numbers([]) == ""


def test_columns_are_aligned_and_the_last_runs_free() -> None:
    assert table([("a", "bb", "long text"), ("ccc", "d", "x")]) == [
        "a    bb  long text",
        "ccc  d   x",
    ]
    assert table([]) == []
