"""Painted paths become rules; short ones only where they stand in a row."""

from __future__ import annotations

from ingest.readers.geometry import Frame, Rule
from ingest.readers.pdf_paths import lines
from ingest.readers.pdfium_values import Drawn

PAGE = Frame(0, 0, 600, 800)


def dot(x: float, y: float, *, wide: float = 1.0, high: float = 1.0) -> Drawn:
    corners = [(x, y), (x + wide, y), (x + wide, y + high), (x, y + high), (x, y)]
    return Drawn([corners], False, False, True, (0, 0, 0))


def stroke(x: float, y: float, length: float) -> Drawn:
    return Drawn([[(x, y), (x + length, y)]], False, True, False, (0, 0, 0))


def test_dots_in_a_level_row_are_one_rule() -> None:
    found = lines([dot(100 + 3 * at, 500) for at in range(50)], PAGE)

    assert found.rules == [Rule(100, 299.5, 248, 299.5)]


def test_dots_one_under_the_other_are_one_rule() -> None:
    found = lines([dot(100, 500 - 3 * at) for at in range(50)], PAGE)

    assert found.rules == [Rule(100.5, 299, 100.5, 447)]


def test_short_strokes_in_a_row_are_one_rule() -> None:
    found = lines([stroke(100 + 2.5 * at, 500, 1) for at in range(40)], PAGE)

    assert found.rules == [Rule(100, 300, 198.5, 300)]


def test_a_gap_parts_a_row_of_dots_into_two_rules() -> None:
    paths = [dot(x + 3 * at, 500) for x in (100, 300) for at in range(20)]

    assert [(rule.x0, rule.x1) for rule in lines(paths, PAGE).rules] == [
        (100, 158),
        (300, 358),
    ]


def test_a_few_dots_are_no_rule() -> None:
    assert lines([dot(100 + 3 * at, 500) for at in range(5)], PAGE).rules == []


def test_dots_that_stand_anywhere_are_no_rule() -> None:
    paths = [dot(40 + 37 * at % 500, 60 + 53 * at % 700) for at in range(60)]

    assert lines(paths, PAGE).rules == []
