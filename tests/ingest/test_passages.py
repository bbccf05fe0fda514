"""Passages: exact spans, no word lost, never too long, cut where sense allows."""

from __future__ import annotations

import itertools
import re

from hypothesis import given
from hypothesis import strategies as st

from assistant.library.texts import embedded_text
from assistant.library.types import Passage
from ingest.blocks import Carried, lines_of
from ingest.passages import CEILING, LEAST, MOST, passages

NONE: frozenset[int] = frozenset()
FRESH = Carried()
LIMIT = 250
"""Tokens a passage may have with all around it."""


def count(text: str) -> int:
    """Count words and signs, and two for the ends, as the tokenizer roughly does."""
    return len(re.findall(r"\w+|[^\w\s]", text)) + 2


def cut(
    page: str, heads: dict[int, str] | None = None, carried: Carried = FRESH
) -> list[Passage]:
    lines, _ = lines_of(page, NONE, heads or {}, carried)
    return passages(1, page, lines, count)


def sentences(number: int, words: int = 12) -> str:
    return "\n".join(
        f"Sentence {n} of this page says " + "word " * (words - 7) + "here."
        for n in range(number)
    )


lines_of_text = st.lists(
    st.text(alphabet="abcDEF 0123.:-/|•\t", max_size=90), max_size=60
).map("\n".join)


@given(lines_of_text, st.sampled_from([count, len, lambda t: len(t.split())]))
def test_nothing_is_lost_doubled_or_too_long(page: str, counter: object) -> None:
    assert callable(counter)
    lines, _ = lines_of(page, NONE, {}, Carried("A heading"))

    found = passages(3, page, lines, counter)

    for passage in found:
        assert passage.page == 3
        assert page[passage.start : passage.end] == passage.text
        assert passage.text == passage.text.strip()
        assert counter(embedded_text(passage)) <= LIMIT
    assert all(a.end <= b.start for a, b in itertools.pairwise(found))
    assert "".join("".join(p.text.split()) for p in found) == "".join(page.split())


def test_an_ordinary_page_gives_passages_of_the_agreed_size() -> None:
    found = cut(sentences(40))

    sizes = [count(passage.text) for passage in found]
    assert all(LEAST <= size <= MOST for size in sizes)
    assert all(passage.text.endswith("here.") for passage in found)


def test_a_cut_stands_before_a_heading() -> None:
    page = f"{sentences(9)}\nReset of the board\n{sentences(9)}"

    found = cut(page, {9: "Reset of the board"})

    assert found[1].text.startswith("Reset of the board")
    assert found[1].section == "Reset of the board"
    assert found[0].section == ""


def test_a_section_with_something_to_say_stands_alone() -> None:
    page = f"One\n{sentences(4)}\nTwo\n{sentences(4)}"

    found = cut(page, {0: "One", 5: "Two"})

    assert [passage.section for passage in found] == ["One", "Two"]


def test_sections_of_a_line_share_a_passage() -> None:
    page = "One\nFirst words.\nTwo\nSecond words."

    assert len(cut(page, {0: "One", 2: "Two"})) == 1


def test_a_caution_keeps_its_signal_word() -> None:
    page = (
        f"{sentences(12)}\nWARNING\nThe bus is live for ten minutes.\n{sentences(12)}"
    )

    (holder,) = [each for each in cut(page) if "WARNING" in each.text]

    assert "WARNING\nThe bus is live" in holder.text


def test_a_long_table_is_cut_at_rows_and_repeats_its_first_line() -> None:
    rows = [f"{n}  Sensor {n} of the outdoor board is open  CN{n}" for n in range(60)]
    page = "\n".join(["Flashes  Meaning  Plug", *rows])

    found = cut(page)

    assert len(found) > 2
    assert [passage.lead for passage in found] == [
        "",
        *["Flashes  Meaning  Plug"] * (len(found) - 1),
    ]
    lines = page.split("\n")
    assert all(line in lines for each in found for line in each.text.split("\n"))
    assert all(count(embedded_text(each)) <= CEILING for each in found)


def test_prose_and_table_are_parted_when_both_are_long_enough() -> None:
    rows = [f"{n}  Sensor {n} of the outdoor board is open  CN{n}" for n in range(12)]
    table = "\n".join(["Flashes  Meaning  Plug", *rows])

    found = cut(f"{sentences(10)}\n{table}")

    assert found[1].text == table


def test_one_endless_line_is_cut_between_words() -> None:
    page = " ".join(f"word{n}" for n in range(1200))

    found = cut(page)

    assert all(count(passage.text) <= MOST for passage in found)
    assert " ".join(passage.text for passage in found) == page


def test_a_heading_too_long_to_repeat_is_left_out() -> None:
    heading = "a b c d e f g h i j k l m n o p q r s t u v w x y z " * 2

    found = cut(sentences(20), carried=Carried(section=heading))

    assert {passage.section for passage in found} == {""}


def test_a_page_of_nothing_gives_no_passage() -> None:
    assert cut(" \n\n ") == []
