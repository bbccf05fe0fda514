"""Which first rows of a table are its headers, and what its columns are called."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from ingest.grids.lattice import Region
from ingest.grids.wording import is_code

MOST = 3
"""Rows that a header may have."""
LONG = 60
"""Characters: an unmarked header has no longer cell."""
Colour = tuple[int, int, int] | None


@dataclass(frozen=True, slots=True)
class Piece:
    """One merged or plain cell, as far as headers ask."""

    region: Region
    text: str
    bold: bool


@dataclass(frozen=True, slots=True)
class Looks:
    """A whole table, as far as headers ask."""

    pieces: tuple[Piece, ...]
    """Sorted by row and column."""
    colours: tuple[Colour, ...]
    """The fill behind each row."""
    columns: int


def count_headers(looks: Looks) -> int:
    """Return how many of the first rows name the columns.

    A header row is bold or filled as the rows below are not, or is the one row above
    the codes; a code at its beginning makes it data.
    """
    rows = len(looks.colours)
    count = 0
    while count < min(MOST, rows - 1) and _is_header(looks, count):
        count = max(count + 1, _reach(looks, count))
    if count >= rows:
        return 0
    return count


def _row(looks: Looks, row: int) -> list[Piece]:
    return [p for p in looks.pieces if p.region.row == row and p.text]


def _reach(looks: Looks, row: int) -> int:
    """Return the row after those that a header row with groups reaches into."""
    here = [piece.region for piece in looks.pieces if piece.region.row == row]
    grouped = any(1 < r.column_end - r.column < looks.columns for r in here)
    if not grouped:
        return row + 1
    return min(max(region.row_end for region in here), MOST)


def _is_header(looks: Looks, row: int) -> bool:
    pieces = _row(looks, row)
    if not pieces or is_code(pieces[0].text):
        return False
    if _is_section(looks, pieces, row):
        return row + 1 < len(looks.colours) - 1 and _is_header(looks, row + 1)
    if _marked(looks, pieces, row):
        return len(pieces) > 1
    return row == 0 and _plain_header(looks, pieces)


def _is_section(looks: Looks, pieces: Sequence[Piece], row: int) -> bool:
    """Whether a row is one cell over all columns: a title, or a part's name."""
    here = [piece.region for piece in looks.pieces if piece.region.row == row]
    return len(pieces) == 1 and any(
        r.column == 0 and r.column_end == looks.columns for r in here
    )


def _marked(looks: Looks, pieces: Sequence[Piece], row: int) -> bool:
    below = [p for p in looks.pieces if p.text and p.region.row > row]
    if all(piece.bold for piece in pieces):
        plain = sum(not piece.bold for piece in below)
        if plain * 3 >= len(below):
            return True
    colour = looks.colours[row]
    others = Counter(looks.colours[row + 1 :])
    return colour is not None and others[colour] * 4 < sum(others.values())


def _plain_header(looks: Looks, pieces: Sequence[Piece]) -> bool:
    """Whether a first row that nothing marks stands over codes and has none."""
    if any(is_code(piece.text) or len(piece.text) > LONG for piece in pieces):
        return False
    filled = sum(piece.region.column_end - piece.region.column for piece in pieces)
    if filled < looks.columns:
        return False
    body = [p for p in looks.pieces if p.region.row > 0 and p.text]
    for column in range(looks.columns):
        cells = [p for p in body if p.region.column == column]
        codes = sum(is_code(p.text.split()[0]) for p in cells)
        if cells and codes * 2 > len(cells):
            return True
    return False


def column_names(looks: Looks, headers: int) -> tuple[str, ...]:
    """Return what each column is called, "Group: Column" under a shared cell.

    Parameters
    ----------
    looks : Looks
        The table.
    headers : int
        How many of its rows are headers.
    """
    if not headers:
        return ()
    names: list[list[str]] = [[] for _ in range(looks.columns)]
    for piece in looks.pieces:
        region = piece.region
        wide = region.column_end - region.column
        if region.row >= headers or not piece.text:
            continue
        if wide == looks.columns and headers > 1:
            continue  # the table's title names no column
        for column in range(region.column, region.column_end):
            names[column].append(piece.text)
    return tuple(": ".join(parts) for parts in names)
