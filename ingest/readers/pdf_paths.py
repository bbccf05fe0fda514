"""Makes rules, fills and pictures of the paths that pdfium gives. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Protocol

from ingest.readers.geometry import Fill, Frame, Rule

THIN = 2.5
"""A filled bar of so many points at most is a rule."""
STRAIGHT = 1.0
SHORT = 2.0
"""Shorter lines are dots and strokes of letters."""
WHITE = 250
GROUND = 0.9
"""A fill over so much of the page is its ground: it has no edges."""

CORNERS = 4

Box = tuple[float, float, float, float]


class Drawn(Protocol):
    """One painted path, its points in the space of the file."""

    @property
    def points(self) -> list[list[tuple[float, float]]]:
        """Each run of straight lines."""

    @property
    def curved(self) -> bool:
        """Whether it has curves."""

    @property
    def stroked(self) -> bool:
        """Whether its line is drawn."""

    @property
    def filled(self) -> bool:
        """Whether its inside is."""

    @property
    def colour(self) -> tuple[int, int, int]:
        """Of the inside."""


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
    for path in paths:
        white = min(path.colour) >= WHITE
        found.ink = found.ink or path.stroked or not white
        if path.stroked:
            found.rules.extend(_strokes(path, frame))
        if path.filled and not white and not path.curved:
            for run in path.points:
                box = _rectangle([frame.see(*point) for point in run])
                if box is not None:
                    _take_fill(box, path, frame, found)
    return found


def _strokes(path: Drawn, frame: Frame) -> Iterator[Rule]:
    for run in path.points:
        seen = [frame.see(*point) for point in run]
        for (x0, y0), (x1, y1) in pairwise(seen):
            wide, high = abs(x1 - x0), abs(y1 - y0)
            if min(wide, high) <= STRAIGHT and max(wide, high) >= SHORT:
                yield Rule(min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1))


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


def _take_fill(box: Box, path: Drawn, frame: Frame, found: Lines) -> None:
    x0, y0, x1, y1 = box
    wide, high = x1 - x0, y1 - y0
    if min(wide, high) <= THIN:
        if max(wide, high) >= SHORT:
            found.rules.append(_middle(box))
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
