"""From a lattice and the words on it to a table."""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Sequence
from typing import TYPE_CHECKING

from ingest.grids.contents import is_contents
from ingest.grids.headers import Colour, Looks, Piece, column_names, count_headers
from ingest.grids.lattice import Lattice, Region, regions
from ingest.grids.model import Box, Cell, Style, Table
from ingest.grids.spread import middle, place
from ingest.grids.wording import cell_text

if TYPE_CHECKING:
    from ingest.readers.geometry import Fill, Word

NARROW = 8.0
"""Points: a column without words is a gap between double rules or fills."""
FILLED = 0.12
"""Of the cells: with fewer that say something it is a plot, or squared paper."""
BROKEN = 0.25
"""Of the lattice: with more outside of closed cells it is a drawing of boxes."""
LOW = 6.0
"""Points: the same for a row."""


def without_gaps(grid: Lattice, words: Sequence[Word]) -> Lattice:
    """Take out rows and columns that are too thin to hold words, and hold none."""
    spots = [middle(word) for word in words]
    used = {place(grid.xs, x) for x, _ in spots}
    for column in reversed(range(grid.columns)):
        thin = grid.xs[column + 1] - grid.xs[column] < NARROW
        if thin and column not in used and grid.columns > 1:
            _drop_column(grid, column)
    used = {place(grid.ys, y) for _, y in spots}
    for row in reversed(range(grid.rows)):
        thin = grid.ys[row + 1] - grid.ys[row] < LOW
        if thin and row not in used and grid.rows > 1:
            _drop_row(grid, row)
    return grid


def _drop_column(grid: Lattice, column: int) -> None:
    del grid.xs[column if column + 1 == grid.columns else column + 1]
    for walls in grid.right:
        wall = walls.pop(column)
        if column > 0:
            walls[column - 1] = walls[column - 1] or wall
    for walls in grid.below:
        del walls[column]


def _drop_row(grid: Lattice, row: int) -> None:
    del grid.ys[row if row + 1 == grid.rows else row + 1]
    gone = grid.below.pop(row)
    del grid.right[row]
    if row > 0:
        above = grid.below[row - 1]
        grid.below[row - 1] = [a or b for a, b in zip(above, gone, strict=True)]


def build(
    grid: Lattice,
    words: Sequence[Word],
    fills: Sequence[Fill],
    style: Style,
    known: Collection[str],
) -> Table | None:
    """Return the table that a lattice makes of words, if it is one.

    Parameters
    ----------
    grid : Lattice
        Rows, columns and walls.
    words : sequence of Word
        Those in its box.
    fills : sequence of Fill
        Of the page.
    style : Style
        What parted the cells.
    known : collection of str
        Words of the page in small letters, for what is cut at a line's end.
    """
    grid = without_gaps(grid, words)
    found, broken = regions(grid)
    if broken > BROKEN:
        return None
    pieces = _pieces(grid, found, words, known)
    if not _is_table(grid, pieces):
        return None
    colours = tuple(_row_colour(grid, row, fills) for row in range(grid.rows))
    looks = Looks(tuple(pieces), colours, grid.columns)
    headers = count_headers(looks)
    names = column_names(looks, headers)
    box = Box(grid.xs[0], grid.ys[0], grid.xs[-1], grid.ys[-1])
    rows = _rows(grid, pieces)
    if is_contents([[cell.text for cell in row] for row in rows[headers:]]):
        return None
    return Table(box, tuple(grid.xs), rows, headers, style, names)


def _pieces(
    grid: Lattice,
    found: Sequence[Region],
    words: Sequence[Word],
    known: Collection[str],
) -> list[Piece]:
    owner: dict[tuple[int, int], int] = {}
    for number, region in enumerate(found):
        for row in range(region.row, region.row_end):
            for column in range(region.column, region.column_end):
                owner[row, column] = number
    inside: list[list[Word]] = [[] for _ in found]
    for word in words:
        x, y = middle(word)
        spot = (place(grid.ys, y), place(grid.xs, x))
        if spot in owner:
            inside[owner[spot]].append(word)
    return [
        Piece(region, cell_text(own, known), bool(own) and all(w.bold for w in own))
        for region, own in zip(found, inside, strict=True)
    ]


def _is_table(grid: Lattice, pieces: Sequence[Piece]) -> bool:
    """Whether two rows at least have words in two columns or more."""
    told = [piece.region for piece in pieces if piece.text]
    columns = {region.column for region in told}
    filled = Counter(row for r in told for row in range(r.row, r.row_end))
    several = sum(count > 1 for count in filled.values())
    return (
        min(several, len(columns)) > 1
        and len(filled) * 3 >= grid.rows
        and len(told) >= FILLED * len(pieces)
    )


def _row_colour(grid: Lattice, row: int, fills: Sequence[Fill]) -> Colour:
    """Return the fill behind the first and last cell of a row, if it is one."""
    y = (grid.ys[row] + grid.ys[row + 1]) / 2
    first = (grid.xs[0] + grid.xs[1]) / 2
    last = (grid.xs[-2] + grid.xs[-1]) / 2
    here, there = _colour(fills, first, y), _colour(fills, last, y)
    return here if here == there else None


def _colour(fills: Sequence[Fill], x: float, y: float) -> Colour:
    for fill in reversed(fills):
        if fill.x0 <= x <= fill.x1 and fill.top <= y <= fill.bottom:
            return fill.colour
    return None


def _rows(grid: Lattice, pieces: Sequence[Piece]) -> tuple[tuple[Cell, ...], ...]:
    made: list[list[Cell | None]] = [[None] * grid.columns for _ in range(grid.rows)]
    for piece in pieces:
        region = piece.region
        box = Box(
            grid.xs[region.column],
            grid.ys[region.row],
            grid.xs[region.column_end],
            grid.ys[region.row_end],
        )
        for row in range(region.row, region.row_end):
            carried = row > region.row
            made[row][region.column] = Cell(piece.text, box, carried=carried)
            for column in range(region.column + 1, region.column_end):
                made[row][column] = Cell("", box, carried=carried, covered=True)
    return tuple(tuple(cell for cell in row if cell is not None) for row in made)
