"""Words with places become lines in reading order; none is lost."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from ingest.readers.geometry import Frame, Matrix, Shapes, Word
from ingest.readers.layout import lay_out, upright


def word(text: str, x: float, top: float, size: float = 10, angle: int = 0) -> Word:
    return Word(text, x, top, x + 5 * len(text), top + size, size, angle=angle)


def line(text: str, x: float, top: float) -> list[Word]:
    found = []
    for part in text.split():
        found.append(word(part, x, top))
        x = found[-1].x1 + 3
    return found


def lines(*words: Word) -> list[str]:
    return list(lay_out(Shapes(600, 800, words)).lines)


def test_words_of_one_line_are_parted_by_one_space_and_cells_by_two() -> None:
    near = line("Room sensor", 60, 100)

    assert lines(*near, word("CN3", near[-1].x1 + 30, 100)) == ["Room sensor  CN3"]


def test_text_in_another_direction_comes_last_in_its_own_order() -> None:
    up = [
        Word("to", 20, 360, 30, 370, 10, angle=90),
        Word("Keep", 20, 375, 30, 395, 10, angle=90),
    ]

    found = lines(*line("Wear gloves at the coil.", 60, 100), up[1], up[0])

    assert found == ["Wear gloves at the coil.", "Keep to"]


def test_a_landscape_page_is_turned_upright_with_everything_on_it() -> None:
    turned = upright(Shapes(600, 800, (word("Table", 100, 200, angle=90),)))

    assert (turned.width, turned.height) == (800, 600)
    assert [(each.angle, each.x0, each.top) for each in turned.words] == [(0, 590, 100)]


def test_a_step_hangs_together_though_its_number_stands_apart() -> None:
    words = [
        word("2.", 60, 100),
        *line("Lock and tag", 80, 100),
        *line("each isolator.", 80, 113),
    ]

    assert lines(*words) == ["2.  Lock and tag each isolator."]


def test_columns_of_single_letters_stay_cells() -> None:
    cells = [word(char, 60 + 18 * at, 100) for at, char in enumerate("UVWX")]

    assert lines(*cells) == ["U  V  W  X"]


def test_page_boxes_are_seen_from_the_top_left_whatever_their_turn() -> None:
    # Corner points by hand: a page of 100 x 200 whose lower left corner is (10, 20).
    for turns, seen in ((0, (0, 200)), (1, (0, 0)), (2, (100, 0)), (3, (200, 100))):
        assert Frame(10, 20, 110, 220, turns).see(10, 20) == seen


def test_text_on_a_turned_page_is_upright_where_the_turn_undoes_it() -> None:
    assert Frame(0, 0, 100, 200, 1).angle(0, 1) == 0
    assert Frame(0, 0, 100, 200, 0).angle(0, 1) == 90
    assert Frame(0, 0, 100, 200, 2).angle(1, 0) == 180


def test_maps_follow_each_other() -> None:
    moved = Matrix(e=10, f=5).then(Matrix(a=2, d=2))

    assert moved.apply(1, 1) == (22, 12)
    assert moved.unit_box() == pytest.approx((20, 10, 22, 12))


places = st.builds(
    word,
    st.text(alphabet="abcE1.-", min_size=1, max_size=6),
    st.integers(0, 500).map(float),
    st.integers(0, 700).map(float),
    st.sampled_from((6.0, 10.0, 18.0)),
    st.sampled_from((0, 0, 0, 90, 180, 270)),
)


@given(st.lists(places, max_size=25))
def test_no_letter_is_lost_or_made(words: list[Word]) -> None:
    found = lay_out(upright(Shapes(600, 800, tuple(words))))

    given_letters = sorted("".join(each.text for each in words))
    assert sorted("".join("".join(found.lines).split())) == given_letters
