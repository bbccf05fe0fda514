"""Damage of pages and of single lines is named, and each has its remedy."""

from __future__ import annotations

import pytest

from assistant.library.types import PageStatus
from ingest.quality import (
    DEGREES,
    DRAWING,
    EMPTY,
    REMEDIES,
    SCAN,
    judge,
    remedy_of,
    unreadable_lines,
)
from ingest.readers.legible import CUT, Fault, fault_of, faults_of_lines

NONE: frozenset[int] = frozenset()
PROSE = (
    "Count the flashes of the amber lamp and write them down with the time.\n"
    "This is done before the supply is switched off, and again when the board\n"
    "starts from the first lamp that is lit."
)
GLUED = "\n".join(line.replace(" ", "") for line in PROSE.split("\n"))
BACK = "\n".join(line[::-1] for line in PROSE.split("\n"))


@pytest.mark.parametrize(
    ("text", "fault"),
    [
        (PROSE, None),
        (GLUED, Fault.GLUED),
        (BACK, Fault.REVERSED),
        ("\ufffd\ue045 \ufffd\ue046 lamp", Fault.MOJIBAKE),
        (" ".join(PROSE), Fault.SPLIT),
        ("Drehzahlüberwachungseinrichtung der Außeneinheit prüfen", None),
        ("https://example.org/AVeryLongAddressWithoutAnySpaceInIt and text", None),
    ],
)
def test_what_is_wrong_with_a_page_is_named(text: str, fault: Fault | None) -> None:
    assert fault_of(text) is fault


@pytest.mark.parametrize(
    ("line", "fault"),
    [
        ("\ufffd\ufffd\ufffd Lamp \ufffd\ufffd\ufffd", Fault.MOJIBAKE),
        ("C o u n t t h e l a m p", Fault.SPLIT),
        ("pmal eht dna draob eht", Fault.REVERSED),
        ("Countthelampsandwritethemdown", Fault.GLUED),
        ("A B C D E F G H", None),
        ("L N E U V W T", None),
        ("21  12  E5  5E", None),
        ("the lamp and the board", None),
        ("a b c d e f g", None),
    ],
)
def test_a_damaged_line_is_found_on_a_sound_page(
    line: str, fault: Fault | None
) -> None:
    found = faults_of_lines(f"{PROSE}\n{line}")

    assert found == ({3: fault} if fault else {})
    assert unreadable_lines(f"{PROSE}\n{line}") == (
        frozenset((3,)) if fault and fault is not Fault.GLUED else NONE
    )


def test_glued_words_stay_in_search_and_backward_ones_do_not() -> None:
    assert judge(GLUED, NONE, drawn=False)[0] is PageStatus.TEXT
    assert judge(BACK, NONE, drawn=False) == (PageStatus.UNREADABLE, Fault.REVERSED)


@pytest.mark.parametrize(
    ("text", "drawn", "cover", "reason"),
    [
        ("", True, 0.97, SCAN),
        ("Page 12 of the archive", True, 0.6, SCAN),
        ("", True, 0.2, DRAWING),
        ("", False, 0.0, EMPTY),
        (PROSE, True, 0.97, ""),
    ],
)
def test_a_page_without_text_is_scan_drawing_or_empty(
    text: str, drawn: bool, cover: float, reason: str
) -> None:
    assert judge(text, NONE, drawn=drawn, cover=cover)[1] == reason


def test_every_reason_says_what_can_be_done() -> None:
    reasons = [SCAN, DRAWING, EMPTY, DEGREES, CUT, *Fault]

    assert set(REMEDIES) == set(reasons)
    assert all(len(remedy_of(reason)) > 20 for reason in reasons)
    assert remedy_of("objects nested too deeply") == ""
