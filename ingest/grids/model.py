"""What a found table is: cells in rows, the columns' edges, how many rows head it."""

from __future__ import annotations

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple


class Box(NamedTuple):
    """A rectangle in points, from the top left of the upright page."""

    x0: float
    top: float
    x1: float
    bottom: float


class Style(StrEnum):
    """What parts the cells of a table."""

    RULED = "ruled"
    OPEN = "open sides"
    """Ruled, but at some outer side."""
    BANDS = "bands"
    """Horizontal rules only; columns stand where words begin."""
    ZEBRA = "zebra"
    """Fills behind some rows or cells, no rules."""


@dataclass(frozen=True, slots=True)
class Cell:
    """What one row says in one column."""

    text: str
    box: Box
    """Of the whole cell, merged parts with it."""
    carried: bool = False
    """It was written in a row above, which its merged cell covers too."""
    covered: bool = False
    """A cell to the left reaches over it; the text stands there."""


@dataclass(frozen=True, slots=True)
class Table:
    """A table; each row has one cell a column."""

    box: Box
    columns: tuple[float, ...]
    """Left edge of each column, and the right edge of the last."""
    rows: tuple[tuple[Cell, ...], ...]
    headers: int
    """How many of the first rows name the columns."""
    style: Style
    names: tuple[str, ...] = ()
    """One a column, "Group: Column" where two rows name it; none without headers."""
    continues: bool = False
    """It goes on from the page before, and may have its names from there."""
