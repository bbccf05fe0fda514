"""Running heads and feet are known; rows of figures and headings are left alone."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from ingest.running import numbers_of, running_lines

NONE: frozenset[int] = frozenset()


def body(about: str) -> str:
    return f"Text of {about} about its own part\nand more of {about}"


def test_heads_and_feet_run_whatever_their_page_number() -> None:
    pages = [
        f"Larch manual\n{body(chr(96 + n))}\nPage {n + 4} of 9" for n in range(1, 6)
    ]

    assert running_lines(pages) == [frozenset((0, 3))] * 5


def test_a_head_that_names_the_chapter_still_runs() -> None:
    pages = [
        f"LARCH Handbook for Service  {chapter}\n{body(chapter)}"
        for chapter in ("Safety", "Reset", "Lamps", "Fans")
    ]

    assert running_lines(pages) == [frozenset((0,))] * 4


def test_roman_front_matter_and_arabic_pages_run_together() -> None:
    numbers = ("i", "ii", "iii", "1", "2", "3", "4")
    pages = [f"{body('abcdefg'[at])}\n{n}" for at, n in enumerate(numbers)]

    assert running_lines(pages) == [frozenset((2,))] * 7


def test_two_pages_are_too_few_to_run() -> None:
    assert running_lines(["Head\none", "Head\ntwo"]) == [NONE] * 2


def test_rows_of_figures_at_the_edges_of_pages_do_not_run() -> None:
    rows = [f"{t}  {99 - t * 1.5:.1f}  {t * 0.07:.2f}" for t in range(40)]
    pages = ["\n".join(rows[at : at + 10]) for at in range(0, 40, 10)]

    assert running_lines(pages) == [NONE] * 4


def test_a_table_head_that_is_repeated_does_not_run() -> None:
    pages = [
        f"Flashes  Meaning  Action\n{n}  sensor {x}  CN{n}\n{n}1  fan  CN\nend {x}"
        for n, x in ((1, "a"), (2, "b"), (3, "c"), (4, "d"))
    ]

    assert running_lines(pages) == [NONE] * 4


def test_a_repeated_line_in_the_middle_of_the_page_does_not_run() -> None:
    pages = [
        "\n".join([f"top {n}", f"own {n}", f"more {n}", "NOTE", f"a {n}"]) + f"\nb {n}"
        f"\nc {n}\nd {n}"
        for n in ("oak", "elm", "ash", "fir")
    ]

    assert running_lines(pages) == [NONE] * 4


def test_pages_that_are_all_alike_keep_their_lines() -> None:
    assert running_lines(["The bus is 320 V."] * 4) == [NONE] * 4


def test_roman_numbers_are_read() -> None:
    assert numbers_of("ii iv ix xiv xl") == (2, 4, 9, 14, 40)


@given(st.lists(st.text(alphabet="ab1 \nxi"), max_size=8))
def test_only_lines_with_text_at_the_edges_run(pages: list[str]) -> None:
    found = running_lines(pages)

    assert len(found) == len(pages)
    for page, lines in zip(pages, found, strict=True):
        filled = [at for at, line in enumerate(page.split("\n")) if line.strip()]
        assert lines <= set(filled[:3] + filled[-3:])
