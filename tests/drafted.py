"""Makes pages with tables on them, and drafts them, for tests."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.library.types import TableRow
from ingest.drafts.gather import draft_rows
from ingest.drafts.model import DraftRow, PageView

Table = tuple[Sequence[str], Sequence[Sequence[str]]]
"""Column names and rows."""


def page_with(
    *pieces: str | Table, number: int = 3, ocr: bool = False
) -> tuple[PageView, list[TableRow]]:
    """Return a page of lines and tables in the order given, and its table rows."""
    text = ""
    rows: list[TableRow] = []
    tables = 0
    for piece in pieces:
        if isinstance(piece, str):
            text += f"{piece}\n"
            continue
        header, body = piece
        tables += 1
        names = tuple(header) if any(header) else ()
        text += "  ".join(header) + "\n"
        for place, cells in enumerate(body, 1):
            line = "  ".join(cell for cell in cells if cell)
            start = len(text)
            text += f"{line}\n"
            row = TableRow(
                number,
                tables,
                place,
                tuple(cells),
                names,
                start,
                start + len(line),
            )
            rows.append(row)
    return PageView(number, text, ocr, 0.9 if ocr else 1.0), rows


def drafted(*pieces: str | Table, ocr: bool = False) -> list[DraftRow]:
    """Return what is drafted from one page."""
    page, rows = page_with(*pieces, ocr=ocr)
    return draft_rows([page], rows)


def by_id(rows: Sequence[DraftRow]) -> dict[str, DraftRow]:
    """Return rows by their ids."""
    return {row.id: row for row in rows}
