"""A lattice of rows and columns, the walls in it, and the cells that they close in."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from ingest.grids.edges import Edge, nearest

COVER = 0.5
"""Share of a side that an edge covers to be a wall of it."""


class Region(NamedTuple):
    """A cell, maybe merged: first row and column, and those after the last."""

    row: int
    column: int
    row_end: int
    column_end: int


@dataclass(slots=True)
class Lattice:
    """Rows and columns, and which neighbours are walled off from each other."""

    xs: list[float]
    ys: list[float]
    right: list[list[bool]]
    """[row][column]: a wall to the right of that place."""
    below: list[list[bool]]
    """[row][column]: a wall below that place."""

    @property
    def rows(self) -> int:
        """How many rows there are."""
        return len(self.ys) - 1

    @property
    def columns(self) -> int:
        """How many columns there are."""
        return len(self.xs) - 1


def lattice(
    xs: Sequence[float],
    ys: Sequence[float],
    across: Sequence[Edge],
    down: Sequence[Edge],
) -> Lattice:
    """Set the walls of a lattice from edges.

    Parameters
    ----------
    xs, ys : sequence of float
        The lines of the lattice, at least two of each.
    across, down : sequence of Edge
        What lies on those lines.
    """
    made = Lattice(list(xs), list(ys), [], [])
    made.right = [[False] * made.columns for _ in range(made.rows)]
    made.below = [[False] * made.columns for _ in range(made.rows)]
    for edge in down:
        column = nearest(xs, edge.at) - 1
        if 0 <= column < made.columns:
            for row in _covered(ys, edge):
                made.right[row][column] = True
    for edge in across:
        row = nearest(ys, edge.at) - 1
        if 0 <= row < made.rows:
            for column in _covered(xs, edge):
                made.below[row][column] = True
    return made


def _covered(places: Sequence[float], edge: Edge) -> range:
    """Return the steps between places that an edge covers well enough."""
    first = max(bisect_left(places, edge.low) - 1, 0)
    last = min(bisect_left(places, edge.high), len(places) - 1)
    while first < last and _cover(places, first, edge) < COVER:
        first += 1
    while last > first and _cover(places, last - 1, edge) < COVER:
        last -= 1
    return range(first, last)


def _cover(places: Sequence[float], step: int, edge: Edge) -> float:
    low, high = places[step], places[step + 1]
    return (min(high, edge.high) - max(low, edge.low)) / ((high - low) or 1.0)


def regions(grid: Lattice) -> tuple[list[Region], float]:
    """Return the cells, row by row, and the share of the lattice that is none.

    Every place belongs to exactly one cell.
    Where walls leave a shape that is no rectangle, what lies inside its box is taken
    in if all of it does, and the shape is cut into its rows if not.
    """
    owner = _flooded(grid)
    for _ in range(grid.rows):
        if not _swallow(owner):
            break
    found, broken = _rectangles(owner)
    return found, broken / (grid.rows * grid.columns)


def _flooded(grid: Lattice) -> list[list[int]]:
    owner = [[-1] * grid.columns for _ in range(grid.rows)]
    number = 0
    for row in range(grid.rows):
        for column in range(grid.columns):
            if owner[row][column] < 0:
                _flood(grid, owner, (row, column), number)
                number += 1
    return owner


def _flood(
    grid: Lattice, owner: list[list[int]], start: tuple[int, int], number: int
) -> None:
    waiting = [start]
    while waiting:
        row, column = waiting.pop()
        if owner[row][column] >= 0:
            continue
        owner[row][column] = number
        if column + 1 < grid.columns and not grid.right[row][column]:
            waiting.append((row, column + 1))
        if column > 0 and not grid.right[row][column - 1]:
            waiting.append((row, column - 1))
        if row + 1 < grid.rows and not grid.below[row][column]:
            waiting.append((row + 1, column))
        if row > 0 and not grid.below[row - 1][column]:
            waiting.append((row - 1, column))


def _boxes(owner: list[list[int]]) -> dict[int, Region]:
    found: dict[int, Region] = {}
    for row, line in enumerate(owner):
        for column, number in enumerate(line):
            box = found.get(number)
            found[number] = (
                Region(row, column, row + 1, column + 1)
                if box is None
                else Region(
                    min(box.row, row),
                    min(box.column, column),
                    max(box.row_end, row + 1),
                    max(box.column_end, column + 1),
                )
            )
    return found


def _inside(inner: Region, outer: Region) -> bool:
    return (
        inner.row >= outer.row
        and inner.column >= outer.column
        and inner.row_end <= outer.row_end
        and inner.column_end <= outer.column_end
    )


def _swallow(owner: list[list[int]]) -> bool:
    """Give holes to the shape around them; return whether there were any."""
    boxes = _boxes(owner)
    changed = False
    for number, box in boxes.items():
        places = [
            (row, column)
            for row in range(box.row, box.row_end)
            for column in range(box.column, box.column_end)
        ]
        guests = {owner[row][column] for row, column in places} - {number}
        if guests and all(_hole(boxes[guest], box) for guest in guests):
            for row, column in places:
                owner[row][column] = number
            changed = True
    return changed


def _hole(inner: Region, outer: Region) -> bool:
    """Whether a box lies inside another one and is no whole row or column of it."""
    return (
        _inside(inner, outer)
        and (inner.row_end - inner.row < outer.row_end - outer.row)
        and (inner.column_end - inner.column < outer.column_end - outer.column)
    )


def _rectangles(owner: list[list[int]]) -> tuple[list[Region], int]:
    found: list[Region] = []
    broken = 0
    for number, box in _boxes(owner).items():
        own = [
            sum(other == number for other in owner[row][box.column : box.column_end])
            for row in range(box.row, box.row_end)
        ]
        if sum(own) == len(own) * (box.column_end - box.column):
            found.append(box)
            continue
        broken += sum(own)
        for row in range(box.row, box.row_end):
            found += _runs(owner[row], number, row)
    return sorted(found), broken


def _runs(line: Sequence[int], number: int, row: int) -> list[Region]:
    found: list[Region] = []
    for column, owner in enumerate(line):
        if owner != number:
            continue
        if found and found[-1].column_end == column:
            found[-1] = found[-1]._replace(column_end=column + 1)
        else:
            found.append(Region(row, column, row + 1, column + 1))
    return found
