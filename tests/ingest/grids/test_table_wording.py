"""Words of a cell come out in reading order, codes whole."""

from __future__ import annotations

import pytest

from ingest.grids.wording import cell_text, is_code, lines
from ingest.readers.geometry import Word


def word(
    text: str, x: float, top: float, *, wide: float | None = None, angle: int = 0
) -> Word:
    end = x + (wide if wide is not None else 5.0 * len(text))
    return Word(text, x, top, end, top + 10, 10, angle=angle)


def test_lines_run_from_the_top_and_each_from_the_left() -> None:
    words = [word("second", 10, 22), word("b", 40, 10), word("a", 10, 11)]

    assert [[w.text for w in line] for line in lines(words)] == [["a", "b"], ["second"]]


@pytest.mark.parametrize(
    ("first", "second", "known", "said"),
    [
        ("E5-", "1", (), "E5-1"),
        ("P1-", "05", ("p105",), "P1-05"),
        ("tempera-", "ture", ("temperature",), "temperature"),
        ("over-", "current", (), "over-current"),
        ("Check -", "then", (), "Check - then"),
        ("up to 30", "minutes", (), "up to 30 minutes"),
    ],
)
def test_a_cut_word_is_joined_only_where_the_page_knows_it(
    first: str, second: str, known: tuple[str, ...], said: str
) -> None:
    pieces = [
        *(word(text, 10 + 30 * at, 10) for at, text in enumerate(first.split())),
        word(second, 10, 22),
    ]

    assert cell_text(pieces, known) == said


def test_pieces_that_touch_are_one_word() -> None:
    assert cell_text([word("E5", 10, 10), word("-1", 20.2, 10)]) == "E5-1"


@pytest.mark.parametrize(
    ("angle", "tops", "said"),
    [(90, (60, 40, 20), "a b c"), (270, (20, 40, 60), "a b c")],
)
def test_words_on_end_are_read_along_their_line(
    angle: int, tops: tuple[float, ...], said: str
) -> None:
    words = [
        word(text, 10, top, wide=10, angle=angle)
        for text, top in zip("abc", tops, strict=True)
    ]

    assert cell_text(words[::-1]) == said


@pytest.mark.parametrize("text", ["E5-1", "P1-05", "42", "H6", "A07", "40001", "PC01"])
def test_codes_are_told_from_names(text: str) -> None:
    assert is_code(text)


@pytest.mark.parametrize("text", ["Code", "Meaning", "No.", "", "8 s after the start"])
def test_names_are_no_codes(text: str) -> None:
    assert not is_code(text)
