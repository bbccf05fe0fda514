"""A list of contents is no table, and a table of numbers is no list of contents."""

from __future__ import annotations

import pytest

from ingest.grids.contents import is_contents

LED = [("1 Data ........ 3", ""), ("2 Boards ...... 5", ""), ("3 Lamps ... 9", "")]
ROMAN = [("Preface", "i"), ("Working safely", "ii"), ("1 Data", "1")]


@pytest.mark.parametrize(
    "rows",
    [
        LED,
        ROMAN,
        [("1", "Data", "..... 3"), ("2", "Boards", "..... 5"), ("3", "Lamps", "... 9")],
        [("Data .....", "3"), ("Boards ....", "5"), ("Lamps ....", "5")],
    ],
)
def test_rows_that_end_in_rising_pages_are_contents(
    rows: list[tuple[str, ...]],
) -> None:
    assert is_contents(rows)


@pytest.mark.parametrize(
    "rows",
    [
        [("E1", "Sensor open", "3"), ("E2", "Sensor short", "5"), ("E3", "Fan", "9")],
        [("Lamp", "1"), ("Pause", "2"), ("Group", "3")],  # numbers without a sign
        [("E1 ....", "3"), ("E2 ....", "5"), ("E3 ....", "9")],  # codes
        [("Data ...", "9"), ("Boards ...", "5"), ("Lamps ...", "3")],  # falling
        ROMAN[:2],
        [("Grade", "iv"), ("Kind", "mixed"), ("Size", "12")],
        [("Count ... of 3", "3 A"), ("Count ... of 4", "4 A"), ("x", "5 A")],
    ],
)
def test_other_rows_are_not(rows: list[tuple[str, ...]]) -> None:
    assert not is_contents(rows)
