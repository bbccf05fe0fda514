"""Cells that cover several rows and columns, laid out on a plain grid: pure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from ingest.readers.sheet import one_line

MAX_COLUMNS = 200
MAX_ROWS_DOWN = 2000
"""The longest a cell is carried down; HTML itself allows 65,534."""


@dataclass(slots=True)
class Cell:
    """One cell, its words still coming in."""

    down: int = 1
    """Rows that it covers; 0 is all that follow."""
    across: int = 1
    head: bool = False
    text: list[str] = field(default_factory=list)

    @classmethod
    def of(cls, given: Mapping[str, str], *, head: bool) -> Cell:
        """Return the empty cell of a tag with these attributes."""
        down = _number(given.get("rowspan", ""), 0)
        across = _number(given.get("colspan", ""), 1)
        return cls(min(down, MAX_ROWS_DOWN), min(across, MAX_COLUMNS), head)


@dataclass(frozen=True, slots=True)
class Laid:
    """A table with its cells in their places."""

    cells: list[list[str]]
    """What a merged cell says stands in every row it covers; of several columns,
    a column head stands in each, another cell in the first."""
    shown: list[list[str]]
    """The same, but what covers several columns once."""


def laid_out(rows: Sequence[Sequence[Cell]]) -> Laid:
    """Put the cells of a table in their rows and columns.

    Follows the forming of a table in the HTML standard: a cell takes the first free
    columns of its row, and keeps them in the rows that it covers.
    """
    hanging: dict[int, tuple[int, str]] = {}
    cells: list[list[str]] = []
    shown: list[list[str]] = []
    for at, row in enumerate(rows):
        placed: dict[int, str] = {}
        once: dict[int, str] = {}
        for column, (rest, text) in sorted(hanging.items()):
            placed[column] = once[column] = text
            hanging[column] = (rest - 1, text)
        hanging = {key: value for key, value in hanging.items() if value[0] > 0}
        left = len(rows) - at
        column = 0
        for cell in row:
            while column in placed:
                column += 1
            if column >= MAX_COLUMNS:
                break
            _place(cell, column, placed, hanging, left)
            once[column] = placed[column]
            column += cell.across
        cells.append(_in_order(placed))
        shown.append(_in_order(once))
    return Laid(cells, shown)


def _place(
    cell: Cell,
    column: int,
    placed: dict[int, str],
    hanging: dict[int, tuple[int, str]],
    left: int,
) -> None:
    text = one_line("".join(cell.text))
    down = min(cell.down or left, left)
    for step in range(cell.across):
        if column + step in placed:
            break  # a cell from above reaches into this one; the standard's error
        said = text if not step or cell.head else ""
        placed[column + step] = said
        if down > 1:
            hanging[column + step] = (down - 1, said)


def _in_order(placed: Mapping[int, str]) -> list[str]:
    return [placed.get(column, "") for column in range(max(placed, default=-1) + 1)]


def _number(text: str, least: int) -> int:
    """Return a whole number of an attribute, 1 where it is none."""
    plain = text.strip()
    if not (plain.isascii() and plain.isdecimal()) or len(plain) > len("65534"):
        return 1
    return max(least, int(plain))
