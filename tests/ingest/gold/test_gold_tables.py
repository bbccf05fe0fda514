"""The gold tables are found as a person reads them."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.ingest.gold.pages import (
    HELD_OUT,
    HERE,
    SETS,
    gold_of,
    scored,
    shapes_of,
    tables_of,
)
from tests.ingest.gold.scoring import Score, score

ALL = {name: maker for part in SETS.values() for name, maker in part.items()}
LEAST_F1, LEAST_LINK = 0.95, 0.93


def test_cells_and_links_reach_what_was_asked_for(tmp_path: Path) -> None:
    total = Score()
    for name, maker in ALL.items():
        total += scored(name, maker, tmp_path)[0]

    assert total.f1 >= LEAST_F1
    assert total.link >= LEAST_LINK


def test_the_held_out_pages_alone_reach_it_too(tmp_path: Path) -> None:
    total = Score()
    for name, maker in HELD_OUT.items():
        total += scored(name, maker, tmp_path)[0]

    assert total.f1 >= LEAST_F1
    assert total.link >= LEAST_LINK


@pytest.mark.parametrize(
    "name",
    [
        "borderless",
        "warning_boxes",
        "ruled_prose",
        "plotted_curve",
        "bar_chart",
        "drawn_parts",
        "blanks_to_fill",
        "contents_with_dots",
        "two_columns_of_text",
        "lamp_panel",
    ],
)
def test_what_is_no_ruled_table_stays_lines(tmp_path: Path, name: str) -> None:
    path = tmp_path / "page.pdf"
    ALL[name](path)

    assert tables_of(shapes_of(path)) == []
    assert gold_of(name) == []


@pytest.mark.parametrize(
    "name", ["full_grid", "thin_bars", "bold_codes", "rotated", "facing_pages"]
)
def test_every_drawing_is_the_same_each_time(tmp_path: Path, name: str) -> None:
    first, second = tmp_path / "1.pdf", tmp_path / "2.pdf"

    ALL[name](first)
    ALL[name](second)

    assert shapes_of(first) == shapes_of(second)


def test_every_written_table_belongs_to_a_page() -> None:
    names = {path.stem.rpartition("-")[0] for path in HERE.glob("*.csv")}

    assert names <= set(ALL)
    assert len(list(HERE.glob("*.csv"))) >= 16


def test_a_cell_in_the_wrong_row_breaks_its_link() -> None:
    gold = [["Code", "Meaning"], ["E1", "fan"], ["E2", "pump"]]
    swapped = [["Code", "Meaning"], ["E1", "pump"], ["E2", "fan"]]

    found = score(swapped, gold)

    assert found.f1 == 1.0
    assert found.link == 0.0


def test_a_lost_and_an_invented_cell_both_cost() -> None:
    gold = [["Code", "Meaning"], ["E1", "fan"]]

    found = score([["Code", "Meaning"], ["E1", "fan of", "pump"]], gold)

    assert (found.found, found.wanted, found.right) == (5, 4, 3)
    assert found.link == 0.0
