"""Pages that are hard to read give the text that a person reads on them.

The texts in `difficult/` were typed from the pages as they are seen.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from ingest.cleaning import clean
from ingest.readers.base import RawPage
from ingest.readers.pdf import read_pdf
from tests.ingest.difficult_pages import PAGES

GOLD = Path(__file__).parent / "difficult"


def page_of(path: Path) -> RawPage:
    _, page = read_pdf(path)
    assert isinstance(page, RawPage)
    return page


@pytest.mark.parametrize("name", sorted(PAGES))
def test_a_difficult_page_reads_as_a_person_reads_it(name: str, tmp_path: Path) -> None:
    path = tmp_path / "page.pdf"
    PAGES[name](path)

    (text,) = clean([page_of(path).text])

    assert text + "\n" == (GOLD / f"{name}.txt").read_text(encoding="utf-8")


def test_every_gold_text_has_its_page() -> None:
    assert {path.stem for path in GOLD.glob("*.txt")} == set(PAGES)


@pytest.mark.parametrize("name", ["turned-table", "zebra"])
def test_the_rows_of_a_parted_table_are_told_with_their_columns(
    name: str, tmp_path: Path
) -> None:
    path = tmp_path / "page.pdf"
    PAGES[name](path)

    page = page_of(path)

    (table,) = page.tables
    lines = page.text.split("\n")
    assert table.names == ("Code", "Meaning", "Plug")
    assert [row.cells[0] for row in table.rows] == ["Code", "E1", "E2", "E40", "H11"]
    assert [lines[row.line].split("  ")[0] for row in table.rows] == [
        row.cells[0] for row in table.rows
    ]


def test_the_letters_of_the_file_are_kept_where_they_were_read_otherwise(
    tmp_path: Path,
) -> None:
    path = tmp_path / "page.pdf"
    PAGES["symbol-font"](path)

    assert "\uf045\uf037" in page_of(path).raw
    PAGES["zebra"](path)
    assert page_of(path).raw == ""
