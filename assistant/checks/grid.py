"""A table with two temperatures: bilinear between stated cells, never beyond."""

from __future__ import annotations

from bisect import bisect_right
from itertools import pairwise

from assistant.checks.law import Law, Limit, OutOfRangeError, stated
from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity

AXIS = Limit("temperature of an axis", 223.15, 343.15, "K")
Cells = tuple[tuple[float | None, ...], ...]

GRID = Law(
    name="table of two temperatures",
    formula="bilinear between the four stated cells around a point",
    source="interpolation between printed cells; the table is the document's own",
    limits=(AXIS,),
    note="Not extrapolated. A cell left blank means that the document refuses there.",
)


@stated(GRID)
def from_grid(
    rows: tuple[float, ...],
    columns: tuple[float, ...],
    cells: Cells,
    row: float,
    column: float,
) -> float:
    """Return the value of a table between its cells.

    Parameters
    ----------
    rows : tuple of float
        Temperatures of the rows, rising, [K].
    columns : tuple of float
        Temperatures of the columns, rising, [K].
    cells : tuple of tuple of (float or None)
        One tuple a row; None is a blank, [any unit].
    row : float
        Where to read, [K].
    column : float
        Where to read, [K].

    Returns
    -------
    float
        Value, [unit of `cells`].

    Raises
    ------
    OutOfRangeError
        Outside the table, beside a blank cell, or for a table that is none.

    Examples
    --------
    >>> cells = ((1.0, 2.0), (3.0, 4.0))
    >>> from_grid((290.0, 300.0), (300.0, 310.0), cells, 295.0, 305.0)
    2.5
    """
    _whole(rows, columns, cells)
    top, down = _between(rows, row, "row")
    left, along = _between(columns, column, "column")
    total = 0.0
    for i, j, weight in (
        (top, left, (1 - down) * (1 - along)),
        (top, left + 1, (1 - down) * along),
        (top + 1, left, down * (1 - along)),
        (top + 1, left + 1, down * along),
    ):
        if weight == 0:
            continue
        cell = cells[i][j]
        if cell is None:
            raise OutOfRangeError(
                "the document leaves the cell there blank",
                "it refuses this pair of temperatures; nothing is put in its place",
            )
        total += weight * cell
    return total


def _whole(rows: tuple[float, ...], columns: tuple[float, ...], cells: Cells) -> None:
    for axis in (rows, columns):
        if len(axis) < 2 or any(b <= a for a, b in pairwise(axis)):  # noqa: PLR2004
            raise OutOfRangeError("an axis has two temperatures or more, rising")
        for temperature in axis:
            AXIS.hold(temperature)
    if len(cells) != len(rows) or any(len(line) != len(columns) for line in cells):
        raise OutOfRangeError("the table has not one cell for each row and column")


def _between(axis: tuple[float, ...], at: float, name: str) -> tuple[int, float]:
    if not axis[0] <= at <= axis[-1]:
        shown = [
            format_quantity(Quantity(value=value, unit="K"))
            for value in (at, axis[0], axis[-1])
        ]
        raise OutOfRangeError(
            f"{name} at {shown[0]} is outside the table's {shown[1]} to {shown[2]}",
            "a table is not extrapolated",
        )
    index = min(bisect_right(axis, at), len(axis) - 1) - 1
    return index, (at - axis[index]) / (axis[index + 1] - axis[index])
