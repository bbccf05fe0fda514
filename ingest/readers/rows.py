"""Lines with positions become text in which a table's row is one line.

A PDF draws a table cell by cell, and a wrapped cell line by line, so that plain
extraction gives a column of fragments. The order of the words is left as drawn;
only the white space between them is chosen: two spaces between the cells of one
row, one space inside a wrapped cell, a line end everywhere else.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field

GAP = "  "
"""What stands between two cells of one row."""
MAX_ROW_LINES = 8
"""A next cell that starts more lines higher is another column of the page."""
_SAME = 0.5
_INDENT = 0.8
_LEADING = 2.4


@dataclass(frozen=True, slots=True)
class Fragment:
    """One extracted line: text, start, height in points, weight."""

    text: str
    x: float
    y: float
    size: float
    bold: bool = False


@dataclass(slots=True)
class Row:
    """The cells of one row, left to right, each a list of wrapped lines."""

    cells: list[list[Fragment]] = field(default_factory=list)

    @property
    def last(self) -> Fragment:
        """The fragment taken in last at the right-hand cell."""
        return self.cells[-1][-1]

    @property
    def fragments(self) -> list[Fragment]:
        """Every fragment of the row."""
        return [fragment for cell in self.cells for fragment in cell]

    @property
    def text(self) -> str:
        """The row as one line."""
        cells = (
            " ".join(part.text.strip() for part in cell).strip() for cell in self.cells
        )
        return GAP.join(cell for cell in cells if cell)


def rows(fragments: Iterable[Fragment]) -> list[Row]:
    """Group fragments, in drawing order, into rows."""
    found: list[Row] = []
    for fragment in fragments:
        if not fragment.text.strip():
            continue
        if not found or not _takes(found, fragment):
            found.append(Row([[fragment]]))
    return found


def _takes(found: list[Row], fragment: Fragment) -> bool:
    """Put the fragment into the last row if it belongs there."""
    row = found[-1]
    if _next_cell(row, fragment):
        _gather_wrapped_first_cell(found, fragment)
        row.cells.append([fragment])
        return True
    cell = _wrapped_cell(row, fragment)
    if cell is None:
        return False
    cell.append(fragment)
    return True


def _next_cell(row: Row, fragment: Fragment) -> bool:
    last = row.last
    height = max(last.size, fragment.size)
    rise = fragment.y - last.y
    return (
        fragment.x > last.x + _INDENT * height
        and -_SAME * height <= rise <= MAX_ROW_LINES * height
    )


def _wrapped_cell(row: Row, fragment: Fragment) -> list[Fragment] | None:
    """Return the cell of which the fragment is a further line, if any.

    The left-hand cell never takes one here: a line at the left edge is far more
    often the next row. Where it was a wrapped cell after all, the next cell's
    height tells, see `_gather_wrapped_first_cell`.
    """
    height = max(row.last.size, fragment.size)
    for cell in row.cells[1:]:
        drop = cell[-1].y - fragment.y
        if (
            abs(cell[0].x - fragment.x) <= _INDENT * height
            and _SAME * height < drop <= _LEADING * height
        ):
            return cell
    return None


def _gather_wrapped_first_cell(found: list[Row], fragment: Fragment) -> None:
    """Pull in the earlier lines of a first cell when the second stands beside them."""
    row = found[-1]
    while len(found) > 1 and len(row.cells) == 1:
        above = found[-2]
        first = row.cells[0][0]
        size = max(first.size, fragment.size)
        if (
            len(above.cells) > 1
            or abs(above.last.x - first.x) > _INDENT * size
            or not _SAME * size < above.last.y - first.y <= _LEADING * size
            or above.last.y > fragment.y + _SAME * size
        ):
            return
        row.cells[0][:0] = above.cells[0]
        del found[-2]


def is_gap(left: Fragment, right: Fragment) -> bool:
    """Whether more than a word's space lies between two pieces of one line.

    Widths are not known, only guessed from the letters; the longer the left piece,
    the wider the gap must be.
    """
    text = left.text.rstrip()
    end = left.x + left.size * sum(map(_advance, text))
    slack = _GAP_LEAST + _GAP_GROWS * len(text)
    return right.x - end > slack * max(left.size, right.size)


_GAP_LEAST = 0.8
_GAP_GROWS = 0.05
_NARROW = frozenset("ijltfrI.,;:'|!()[]/- ")
_WIDE = frozenset("mwMW@%")


def _advance(char: str) -> float:
    """Return a common width of a character, in heights of its font.

    Rounded from the published metrics of Helvetica (Adobe core 14 fonts).
    """
    if char in _NARROW:
        return 0.28
    if char in _WIDE:
        return 0.85
    return 0.68 if char.isupper() else 0.55
