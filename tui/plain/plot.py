"""A reading on its curve as plain lines, from 40 columns up. Pure."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity
from tui.plain.text import wrap

if TYPE_CHECKING:
    from assistant.checks.curve import Curve, Point

NARROWEST = 40
WIDEST = 72
HEIGHT = 14
_LOG_FROM = 8.0
"""Ratio of the largest to the smallest value from which the scale is by its logarithm,
so that both ends of a sensor's curve can be told apart."""
_LINE, _LIMIT, _READING = ".", ":", "X"
_LABEL = 10


@dataclass(frozen=True, slots=True)
class Scale:
    """Where a value stands between two ends, 0 to 1."""

    low: float
    high: float
    by_log: bool

    def share(self, value: float) -> float:
        """Return the share of the way; beyond an end, the end."""
        if self.by_log:
            value, low, high = (math.log(max(v, self.low)) for v in self._with(value))
        else:
            value, low, high = self._with(value)
        if high == low:
            return 0.0
        return min(max((value - low) / (high - low), 0.0), 1.0)

    def at(self, share: float) -> float:
        """Return the value at a share of the way."""
        if self.by_log:
            return float(self.low * (self.high / self.low) ** share)
        return self.low + share * (self.high - self.low)

    def _with(self, value: float) -> tuple[float, float, float]:
        return value, self.low, self.high


def scales(curve: Curve) -> tuple[Scale, Scale]:
    """Return the scales of x and y that hold the curve, its limits and the reading."""
    points = [*curve.line, *curve.low, *curve.high]
    if curve.reading is not None:
        points.append(curve.reading)
    x_low, x_high = _ends([x for x, _ in points])
    y_low, y_high = _ends([y for _, y in points])
    by_log = y_low > 0 and y_high / y_low >= _LOG_FROM
    return Scale(x_low, x_high, by_log=False), Scale(y_low, y_high, by_log)


def plot_lines(curve: Curve, width: int, like: tuple[str, str] = ("", "")) -> list[str]:
    """Return a plot as lines of at most `width` columns.

    Parameters
    ----------
    curve : Curve
        With at least two points.
    width : int
        Columns; under 40 it is drawn for 40.
    like : tuple of str
        Units of x and y as a person wrote them; empty for the usual ones.
    """
    columns = min(max(width, NARROWEST), WIDEST) - _LABEL - 2
    across, up = scales(curve)
    cells = [[" "] * columns for _ in range(HEIGHT)]
    for mark, points in (
        (_LIMIT, (*curve.low, *curve.high)),
        (_LINE, curve.line),
        (_READING, () if curve.reading is None else (curve.reading,)),
    ):
        for point in points:
            row, column = _cell(point, across, up, columns)
            cells[row][column] = mark
    lines = [_labelled(row, cells[row], up, curve, like[1]) for row in range(HEIGHT)]
    left, right = (_amount(end, curve.x_unit, like[0]) for end in _of(across))
    foot = left + right.rjust(columns - len(left))
    legend = f"{_LINE} curve" + (f"  {_LIMIT} limits" if curve.low else "")
    legend += f"  {_READING} reading" if curve.reading is not None else ""
    return [
        *wrap(curve.title, max(width, NARROWEST)),
        *lines,
        " " * _LABEL + " +" + "-" * columns,
        " " * (_LABEL + 2) + foot,
        legend + (" (log scale)" if up.by_log else ""),
    ]


def _of(scale: Scale) -> tuple[float, float]:
    return scale.low, scale.high


def _ends(values: list[float]) -> tuple[float, float]:
    return min(values), max(values)


def _cell(point: Point, across: Scale, up: Scale, columns: int) -> tuple[int, int]:
    x, y = point
    column = round(across.share(x) * (columns - 1))
    row = HEIGHT - 1 - round(up.share(y) * (HEIGHT - 1))
    return row, column


def _labelled(row: int, cells: list[str], up: Scale, curve: Curve, like: str) -> str:
    label = ""
    if row in {0, HEIGHT // 2, HEIGHT - 1}:
        share = 1 - row / (HEIGHT - 1)
        label = _amount(up.at(share), curve.y_unit, like)
    return f"{label:>{_LABEL}} |{''.join(cells)}".rstrip()


def _amount(value: float, unit: str, like: str) -> str:
    shown = format_quantity(Quantity(value=value, unit=unit), like=like or None)
    return shown.replace(" absolute", "")[:_LABEL]
