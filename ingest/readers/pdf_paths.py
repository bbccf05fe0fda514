"""Makes rules, fills and pictures of the paths that pdfium gives. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from ingest.readers.geometry import Fill, Frame, Rule
from ingest.readers.pdfium_values import Drawn

THIN = 2.5
"""A filled bar of so many points at most is a rule."""
STRAIGHT = 1.0
SHORT = 2.0
"""Shorter lines are dots and strokes of letters, but for rules made of dots."""
DOT_GAP = 4.0
"""Points between two dots of one rule at most."""
DOT_OFF = 0.5
"""Points that they may lie off its line."""
LEAST_DOTS = 6
WHITE = 250
GROUND = 0.9
"""A fill over so much of the page is its ground: it has no edges."""

CORNERS = 4
_ENDS = 2

Box = tuple[float, float, float, float]


@dataclass(slots=True)
class Lines:
    """What the paths of a page come to."""

    rules: list[Rule] = field(default_factory=list)
    fills: list[Fill] = field(default_factory=list)
    ink: bool = False
    """Something is painted that can be seen."""


def lines(paths: Sequence[Drawn], frame: Frame) -> Lines:
    """Return the rules and fills of a page.

    Parameters
    ----------
    paths : sequence of Drawn
        In the order of the file.
    frame : Frame
        How the page is seen.
    """
    found = Lines()
    dots: list[Box] = []
    for path in paths:
        white = min(path.colour) >= WHITE
        found.ink = found.ink or path.stroked or not white
        if path.stroked:
            found.rules.extend(_strokes(path, frame, dots))
        if path.filled and not white and not path.curved:
            for run in path.points:
                box = _rectangle([frame.see(*point) for point in run])
                if box is not None:
                    _take_fill(box, path, frame, (found, dots))
    found.rules.extend(_dotted(dots))
    return found


def _dotted(dots: Sequence[Box]) -> Iterator[Rule]:
    """Give the rules that are made of dots, level ones and upright ones."""
    if len(dots) < LEAST_DOTS:
        return
    for low, high, across in _rows(dots):
        yield Rule(low, across, high, across)
    turned = [(y0, x0, y1, x1) for x0, y0, x1, y1 in dots]
    for low, high, across in _rows(turned):
        yield Rule(across, low, across, high)


def _rows(dots: Sequence[Box]) -> Iterator[tuple[float, float, float]]:
    """Give start, end and height of the level rows of dots."""
    lines: list[list[Box]] = []
    for dot in sorted(dots, key=lambda box: (box[1] + box[3], box[0])):
        last = lines[-1][-1] if lines else dot
        if not lines or _middle_of(dot) - _middle_of(last) > DOT_OFF:
            lines.append([])
        lines[-1].append(dot)
    for line in lines:
        line.sort()
        row = [line[0]]
        for dot in line[1:]:
            if dot[0] - row[-1][2] > DOT_GAP:
                yield from _row(row)
                row = []
            row.append(dot)
        yield from _row(row)


def _row(row: Sequence[Box]) -> Iterator[tuple[float, float, float]]:
    if len({round(dot[0], 1) for dot in row}) >= LEAST_DOTS:
        yield row[0][0], max(dot[2] for dot in row), _middle_of(row[0])


def _middle_of(box: Box) -> float:
    return (box[1] + box[3]) / 2


def _strokes(path: Drawn, frame: Frame, dots: list[Box]) -> Iterator[Rule]:
    """Give the level and upright lines of a path; note those too short for one."""
    for run in path.points:
        seen = [frame.see(*point) for point in run]
        for (x0, y0), (x1, y1) in pairwise(seen):
            wide, high = abs(x1 - x0), abs(y1 - y0)
            if min(wide, high) > STRAIGHT:
                continue
            box = (min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))
            if max(wide, high) >= SHORT:
                yield Rule(*box)
            elif len(seen) == _ENDS:  # a longer path's pieces are a curve or a letter
                dots.append(box)


def _rectangle(points: Sequence[tuple[float, float]]) -> Box | None:
    """Return the box of a run of points when it is an upright rectangle."""
    if not CORNERS <= len(points) <= CORNERS + 2:
        return None
    xs, ys = zip(*points, strict=True)
    box = (min(xs), min(ys), max(xs), max(ys))
    for x, y in points:
        if min(x - box[0], box[2] - x) > STRAIGHT:
            return None
        if min(y - box[1], box[3] - y) > STRAIGHT:
            return None
    return box


def _take_fill(
    box: Box, path: Drawn, frame: Frame, into: tuple[Lines, list[Box]]
) -> None:
    """Note a filled rectangle: a dot, a rule, or a fill and its edges."""
    found, dots = into
    x0, y0, x1, y1 = box
    wide, high = x1 - x0, y1 - y0
    if min(wide, high) <= THIN:
        if max(wide, high) >= SHORT:
            found.rules.append(_middle(box))
        else:
            dots.append(box)
        return
    found.fills.append(Fill(*box, path.colour))
    width, height = frame.size
    if wide * high < GROUND * width * height:
        found.rules += [
            Rule(x0, y0, x1, y0, drawn=False),
            Rule(x0, y1, x1, y1, drawn=False),
            Rule(x0, y0, x0, y1, drawn=False),
            Rule(x1, y0, x1, y1, drawn=False),
        ]


def _middle(box: Box) -> Rule:
    """Return the line along the middle of a thin bar."""
    x0, y0, x1, y1 = box
    if x1 - x0 >= y1 - y0:
        y = (y0 + y1) / 2
        return Rule(x0, y, x1, y)
    x = (x0 + x1) / 2
    return Rule(x, y0, x, y1)
