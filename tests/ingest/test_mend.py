"""A damaged line is taken from the other reading where that has it whole."""

from __future__ import annotations

import pytest

from assistant.library.types import Page, PageStatus
from ingest.quality import DEGREES, doubt, remedies
from ingest.readers.mend import mended

WHOLE = "Count the flashes of the amber lamp"


@pytest.mark.parametrize(
    "damaged",
    [
        WHOLE.replace(" ", ""),
        "eht pmal dna eht draob",
        " ".join(WHOLE.replace(" ", "")),
    ],
)
def test_a_line_is_taken_over_where_its_letters_are_the_same(damaged: str) -> None:
    whole = "board the and lamp the" if damaged.startswith("eht") else WHOLE
    back = damaged[::-1] if damaged.startswith("eht") else whole

    assert mended(["E4", damaged], lambda: [back, "E4"]) == ["E4", back]


def test_a_line_stays_where_the_other_reading_is_damaged_too() -> None:
    glued = WHOLE.replace(" ", "")

    assert mended([glued], lambda: [glued]) == [glued]
    assert mended([glued], lambda: ["Another line"]) == [glued]


def test_a_sound_page_is_not_read_again() -> None:
    def never() -> list[str]:
        raise AssertionError

    assert mended([WHOLE], never) == [WHOLE]


@pytest.mark.parametrize(
    ("line", "doubtful"),
    [
        ("Stops above 650C.", True),
        ("between -10oC and 43 oC", True),
        ("Stops above 65 °C, 650C.", False),
        ("Part P120C, board 220C4", False),
        ("Rev 2.10C", False),
    ],
)
def test_a_degree_sign_that_may_read_as_0_is_told_and_left(
    line: str, *, doubtful: bool
) -> None:
    assert (DEGREES in doubt(line)) is doubtful


def test_what_is_doubtful_on_a_page_has_its_remedy() -> None:
    text = f"{WHOLE.replace(' ', '')}\nStops above 650C."
    page = Page(3, "3", PageStatus.TEXT, text, doubt(text))
    sound = Page(4, "4", PageStatus.TEXT, WHOLE, doubt(WHOLE))

    ways = remedies([page, sound])

    assert page.reason == (
        "its words run together (line 1); its degree signs may read as 0 (line 2)"
    )
    assert list(ways.values()) == [(3,), (3,)]
