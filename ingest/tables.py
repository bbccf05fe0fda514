"""The rows of the tables on a page, cell by cell: pure."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.library.types import TableRow
from ingest.blocks import GridRow, Kind, Line, is_header, table_cells


def table_rows(number: int, lines: Sequence[Line]) -> list[TableRow]:
    """Return the rows below the headers of a page's tables.

    Parameters
    ----------
    number : int
        The physical page.
    lines : sequence of Line
        Its lines, in order.
    """
    found: list[TableRow] = []
    table, row = 0, 0
    header: tuple[str, ...] = ()
    before: Line | None = None
    for line in lines:
        if line.grid is not None:
            fresh = before is None or before.grid is None
            if fresh or (
                before and before.grid and before.grid.table != line.grid.table
            ):
                table, row = table + 1, 0
            if not line.grid.head:
                row += 1
                found.append(_ruled(line, line.grid, (number, table, row)))
        elif line.kind is Kind.ROW:
            opens = line.first_row or before is None or before.kind is not Kind.ROW
            opens = opens or (before is not None and before.grid is not None)
            if opens:
                table, row = table + 1, 0
                header = _cells(line.lead)
            if line.first_row and is_header(line.text):
                header = _cells(line.text)
            else:
                row += 1
                cells = _cells(line.text)
                found.append(
                    TableRow(number, table, row, cells, header, line.start, line.end)
                )
        before = line
    return found


def _ruled(line: Line, grid: GridRow, place: tuple[int, int, int]) -> TableRow:
    return TableRow(*place, grid.cells, grid.names, line.start, line.end)


def _cells(line: str) -> tuple[str, ...]:
    return tuple(table_cells(line)) if line else ()
