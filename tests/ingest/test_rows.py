"""Fragments with positions become table rows."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from ingest.readers.rows import Fragment, is_gap, rows


def at(text: str, x: float, y: float, size: float = 10) -> Fragment:
    return Fragment(text, x, y, size)


def texts(*fragments: Fragment) -> list[str]:
    return [row.text for row in rows(fragments)]


def test_cells_on_one_baseline_are_one_row() -> None:
    found = texts(
        at("25", 60, 500), at("10.0", 160, 500), at("1.65", 260, 500), at("30", 60, 486)
    )

    assert found == ["25  10.0  1.65", "30"]


def test_a_wrapped_cell_in_the_middle_stays_in_its_row() -> None:
    found = texts(
        at("3", 60, 500),
        at("Discharge sensor out of", 160, 500),
        at("range", 160, 488),
        at("CN5", 400, 500),
        at("4", 60, 470),
    )

    assert found == ["3  Discharge sensor out of range  CN5", "4"]


def test_a_row_label_that_is_centred_beside_a_wrapped_cell_joins_it() -> None:
    found = texts(
        at("3", 60, 494),
        at("Discharge sensor out of", 160, 500),
        at("range", 160, 488),
        at("CN5", 400, 494),
    )

    assert found == ["3  Discharge sensor out of range  CN5"]


def test_a_wrapped_first_cell_is_gathered_when_its_neighbour_tells() -> None:
    found = texts(
        at("Heading", 60, 540),
        at("Outdoor fan", 60, 500),
        at("motor", 60, 488),
        at("no pulses", 200, 500),
    )

    assert found == ["Heading", "Outdoor fan motor  no pulses"]


def test_a_row_drawn_line_by_line_keeps_words_in_their_cells() -> None:
    found = texts(
        at("3", 60, 500),
        at("Sensor out", 160, 500),
        at("Check plug", 400, 500),
        at("of range", 160, 488),
        at("CN5", 400, 488),
    )

    assert found == ["3  Sensor out of range  Check plug CN5"]


def test_lines_of_prose_stay_lines() -> None:
    prose = [at(f"line {n}", 60, 500 - 12 * n) for n in range(4)]

    assert texts(*prose) == ["line 0", "line 1", "line 2", "line 3"]


def test_an_indented_line_below_is_no_cell() -> None:
    assert texts(at("Remedy:", 60, 500), at("seat the plug", 90, 488)) == [
        "Remedy:",
        "seat the plug",
    ]


def test_the_next_column_of_a_page_is_no_row() -> None:
    left = [at(f"left {n}", 60, 700 - 12 * n) for n in range(40)]
    right = [at(f"right {n}", 320, 700 - 12 * n) for n in range(40)]

    assert texts(*left, *right) == [fragment.text for fragment in (*left, *right)]


def test_a_step_and_its_number_are_one_line() -> None:
    found = texts(
        at("1.", 60, 500), at("Switch off every", 80, 500), at("supply.", 80, 488)
    )

    assert found == ["1.  Switch off every supply."]


def test_a_word_space_is_no_gap_and_a_column_is() -> None:
    left = at("Outdoor", 60, 500)

    assert not is_gap(left, at("unit", 60 + 10 * 4.3, 500))
    assert is_gap(left, at("VEH-O26", 234, 500))


@given(
    st.lists(
        st.builds(
            Fragment,
            st.text(alphabet="abc 1", max_size=8),
            st.floats(0, 600),
            st.floats(0, 800),
            st.floats(1, 40),
        )
    )
)
def test_no_word_is_lost_or_moved_to_another_page(fragments: list[Fragment]) -> None:
    given_words = sorted(word for each in fragments for word in each.text.split())

    found = sorted(word for row in rows(fragments) for word in row.text.split())

    assert found == given_words
