"""Which lines are headings, in styled files and in plain text."""

from __future__ import annotations

import pytest

from ingest.headings import Look, could_be, headings
from ingest.readers.base import Prominent

NONE: frozenset[int] = frozenset()


def styled(page: str, *large: str, outline: tuple[str, ...] = ()) -> dict[int, str]:
    look = Look(tuple(Prominent(line, 14, bold=True) for line in large), outline)
    return dict(headings(page, NONE, look, styled=True))


def plain(page: str) -> dict[int, str]:
    return dict(headings(page, NONE, Look(), styled=False))


def test_a_prominent_line_is_a_heading() -> None:
    page = "4.2  Fault codes\nCount the flashes."

    assert styled(page, "4.2  Fault codes") == {0: "4.2 Fault codes"}


def test_a_bookmark_makes_its_line_a_heading_with_or_without_number() -> None:
    page = "4.2 Fault codes\nCount the flashes."

    assert styled(page, outline=("Fault codes",)) == {0: "4.2 Fault codes"}


def test_in_a_styled_file_capitals_alone_make_no_heading() -> None:
    assert styled("DO NOT OPEN THE COVER\nit is live", "Other") == {}


def test_a_running_line_is_no_heading() -> None:
    look = Look((Prominent("Larch manual", 14, bold=True),))

    assert headings("Larch manual\ntext", frozenset((0,)), look, styled=True) == {}


@pytest.mark.parametrize(
    "line",
    [
        "WARNING",
        "Caution:",
        "• Turn the supply off",
        "Reset ... .... 9",
        "It stops, and then it starts again.",
        "Flashes  Meaning  Action",
        "25  10.0",
        "12",
        "x" * 96,
    ],
)
def test_what_cannot_be_a_heading(line: str) -> None:
    assert not could_be(line)


def test_plain_text_tells_headings_by_numbers_capitals_and_lines() -> None:
    page = (
        "# Boathouse notes\n"
        "Some words here.\n"
        "\n"
        "4.2 Counting the flashes\n"
        "Some words here.\n"
        "\n"
        "LEAK ALARM\n"
        "Some words here.\n"
        "\n"
        "Storm days\n"
        "----------\n"
        "Some words here.\n"
        "\n"
        "Before anybody touches a breaker\n"
        "  Film the lights.\n"
    )

    assert list(plain(page).values()) == [
        "Boathouse notes",
        "4.2 Counting the flashes",
        "LEAK ALARM",
        "Storm days",
        "Before anybody touches a breaker",
    ]


def test_steps_of_a_procedure_are_no_headings() -> None:
    page = "1. Turn the supply off\n2. Wait three minutes\n3. Turn it on"

    assert plain(page) == {}
