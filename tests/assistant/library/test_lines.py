"""Lines of a passage: rows or sentences, found again in their text."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from assistant.library.lines import SHORTEST, line_spans, line_text
from tests.literature import whole

TABLE = "Flashes  Meaning\n4  Discharge sensor TH3\n5  High pressure switch"


def lines(text: str, lead: str = "") -> list[str]:
    passage = whole(1, text, lead=lead)
    return [text[start:stop] for start, stop in line_spans(passage)]


def test_a_table_is_cut_at_its_rows() -> None:
    assert lines(TABLE) == TABLE.split("\n")
    assert lines("4 sensor one\n5 switch two", lead="Flashes Meaning") == [
        "4 sensor one",
        "5 switch two",
    ]


def test_prose_is_cut_at_its_sentences_and_steps() -> None:
    text = (
        "The fan starts first. The compressor\nfollows later.\n- Wait a while\n1. Look"
    )

    assert lines(text) == [
        "The fan starts first.",
        "The compressor\nfollows later.",
        "- Wait a while",
    ]


def test_one_line_needs_no_vector_of_its_own() -> None:
    assert lines("The fan starts first") == []


def test_a_line_is_embedded_under_its_heading() -> None:
    assert line_text("", "a  row") == "a row"
    assert line_text("Faults", "Faults") == "Faults"


@given(st.text(alphabet="ab .:\n|-1", max_size=120))
def test_spans_are_in_order_and_long_enough(text: str) -> None:
    end = 0
    for start, stop in line_spans(whole(1, text)):
        assert end <= start < stop <= len(text)
        assert len(text[start:stop].strip()) >= SHORTEST
        end = stop
