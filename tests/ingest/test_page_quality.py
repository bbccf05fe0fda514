"""Blank, picture, unreadable or text: and doubtful pages stay text."""

from __future__ import annotations

import pytest

from assistant.library.types import PageStatus
from ingest.quality import judge
from ingest.readers.legible import unreadable

NONE: frozenset[int] = frozenset()
PROSE = (
    "Count the flashes of the amber lamp in a window of ten seconds and write them "
    "down with the time before the supply is switched off for a reset of the board."
)


def shifted(text: str, by: int = 3) -> str:
    """Cipher the letters as a font without its table does."""
    return "".join(
        chr((ord(char.lower()) - 97 + by) % 26 + 97) if char.isalpha() else char
        for char in text
    )


@pytest.mark.parametrize(
    ("text", "running", "drawn", "status"),
    [
        ("", NONE, False, PageStatus.BLANK),
        (" \n ", NONE, False, PageStatus.BLANK),
        ("", NONE, True, PageStatus.PICTURE),
        ("31", NONE, True, PageStatus.PICTURE),
        ("Larch manual\n31", frozenset((0, 1)), True, PageStatus.PICTURE),
        ("Larch manual\n31", frozenset((0, 1)), False, PageStatus.BLANK),
        ("Notes", NONE, False, PageStatus.TEXT),
        ("This page is left blank.", NONE, True, PageStatus.TEXT),
        (PROSE, NONE, True, PageStatus.TEXT),
    ],
)
def test_a_page_is_judged_by_what_is_its_own(
    text: str, running: frozenset[int], drawn: bool, status: PageStatus
) -> None:
    found, reason = judge(text, running, drawn=drawn)

    assert found is status
    assert bool(reason) is (status is not PageStatus.TEXT)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("\ufffd\ufffd\ue012\ue013 board \ufffd\ufffd", "no readable characters"),
        ("/G21/G34/G55 /G21/G03/G44", "no readable characters"),
        ("(cid:12)(cid:44)(cid:3) (cid:7)", "no readable characters"),
        (" ".join(PROSE), "letters stand apart"),
        (shifted(PROSE + PROSE + PROSE), "wrong letters"),
    ],
)
def test_text_that_is_no_words_is_named(text: str, said: str) -> None:
    assert said in unreadable(text)


@pytest.mark.parametrize(
    "text",
    [
        PROSE,
        "A B C D E F G H I J K L M N O P Q R S T U V W X Y Z " * 4,
        "x y\n1 2\n3 4\n" * 3,
        "PWM LED CN5 TH3 VSP GND VCC 63H LD2 " * 20,
        "Zähle die Blinkzeichen der gelben Lampe im Fenster von zehn Sekunden. " * 4,
        "Проверьте напряжение на клеммах перед сбросом. " * 4,
        "25  10.0  1.65\n30  8.1  1.40\n" * 20,
        "strength rhythms lynx",
    ],
)
def test_odd_but_readable_text_stays(text: str) -> None:
    assert unreadable(text) == ""
