"""Rules to edges, and edges to the groups that touch each other."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, NamedTuple

if TYPE_CHECKING:
    from ingest.readers.geometry import Rule

TOLERANCE = 3.0
"""Points: what is nearer is the same line, or touches it."""
WIDEST = 5.0
"""Points that the lines taken for one may lie apart in all: a double rule."""
DASH = 15.0
"""Points: a shorter piece may be a dash, with a longer gap after it."""
DASH_GAP = 7.0


class Edge(NamedTuple):
    """A line at one coordinate, from `low` to `high` on the other axis."""

    at: float
    low: float
    high: float
    drawn: bool
    """Some part of it is a rule, and not only the edge of a fill."""


@dataclass(slots=True)
class Group:
    """Edges that touch each other, directly or by others."""

    across: list[Edge] = field(default_factory=list)
    """Horizontal ones, from the top."""
    down: list[Edge] = field(default_factory=list)
    """Vertical ones, from the left."""

    @property
    def left(self) -> float:
        """The leftmost point."""
        return min([e.low for e in self.across] + [e.at for e in self.down])

    @property
    def right(self) -> float:
        """The rightmost point."""
        return max([e.high for e in self.across] + [e.at for e in self.down])

    @property
    def top(self) -> float:
        """The topmost point."""
        return min([e.at for e in self.across] + [e.low for e in self.down])

    @property
    def bottom(self) -> float:
        """The lowest point."""
        return max([e.at for e in self.across] + [e.high for e in self.down])

    @property
    def drawn(self) -> bool:
        """Whether any edge is a rule of its own."""
        return any(e.drawn for e in self.across) or any(e.drawn for e in self.down)


def median(values: Iterable[float]) -> float:
    """Return the middle of some values, of an even number the mean of two.

    Its own, because the standard library's loads more than a reader has time for.

    >>> median([3.0, 1.0, 2.0]), median([1.0, 2.0])
    (2.0, 1.5)
    """
    found = sorted(values)
    half = len(found) // 2
    return found[half] if len(found) % 2 else (found[half - 1] + found[half]) / 2


def clusters(values: Iterable[float]) -> list[list[float]]:
    """Part values where they leave the tolerance; each part is one line.

    >>> clusters([10.0, 40.0, 11.5])
    [[10.0, 11.5], [40.0]]
    """
    found: list[list[float]] = []
    for value in sorted(values):
        if (
            found
            and value - found[-1][-1] <= TOLERANCE
            and value - found[-1][0] <= WIDEST
        ):
            found[-1].append(value)
        else:
            found.append([value])
    return found


def snapped(values: Iterable[float]) -> list[float]:
    """Return one value for each part, its middle."""
    return [(part[0] + part[-1]) / 2 for part in clusters(values)]


def nearest(places: Sequence[float], value: float) -> int:
    """Return the index of the place that lies nearest."""
    at = bisect_left(places, value)
    if at == 0:
        return 0
    if at == len(places):
        return at - 1
    return at if places[at] - value < value - places[at - 1] else at - 1


def edges(rules: Iterable[Rule]) -> tuple[list[Edge], list[Edge]]:
    """Return the horizontal and the vertical edges, collinear pieces joined.

    Parameters
    ----------
    rules : iterable of Rule
        As the page has them.
    """
    across, down = [], []
    for rule in rules:
        if rule.x1 - rule.x0 >= rule.bottom - rule.top:
            y = (rule.top + rule.bottom) / 2
            across.append(Edge(y, rule.x0, rule.x1, rule.drawn))
        else:
            x = (rule.x0 + rule.x1) / 2
            down.append(Edge(x, rule.top, rule.bottom, rule.drawn))
    return merged(across), merged(down)


def merged(pieces: Sequence[Edge]) -> list[Edge]:
    """Join pieces of one line that touch, overlap or follow each other as dashes."""
    places = snapped({piece.at for piece in pieces})
    lines: list[list[Edge]] = [[] for _ in places]
    for piece in pieces:
        lines[nearest(places, piece.at)].append(piece)
    return [
        edge
        for at, line in zip(places, lines, strict=True)
        for edge in _joined(at, sorted(line, key=lambda piece: piece[1:]))
    ]


def _joined(at: float, line: Sequence[Edge]) -> Iterable[Edge]:
    low, high, drawn, last = line[0].low, line[0].high, line[0].drawn, line[0]
    for piece in line[1:]:
        short = max(piece.high - piece.low, last.high - last.low) <= DASH
        if piece.low <= high + (DASH_GAP if short else TOLERANCE):
            high, drawn = max(high, piece.high), drawn or piece.drawn
        else:
            yield Edge(at, low, high, drawn)
            low, high, drawn = piece.low, piece.high, piece.drawn
        last = piece
    yield Edge(at, low, high, drawn)


def groups(across: Sequence[Edge], down: Sequence[Edge]) -> list[Group]:
    """Return the edges that touch each other, group by group, from the top.

    Parameters
    ----------
    across, down : sequence of Edge
        Horizontal and vertical ones, sorted by where they are.
    """
    parent = list(range(len(across) + len(down)))

    def root(at: int) -> int:
        while parent[at] != at:
            parent[at] = at = parent[parent[at]]
        return at

    places = [edge.at for edge in across]
    for number, edge in enumerate(down, start=len(across)):
        at = bisect_left(places, edge.low - TOLERANCE)
        while at < len(places) and places[at] <= edge.high + TOLERANCE:
            if across[at].low - TOLERANCE <= edge.at <= across[at].high + TOLERANCE:
                parent[root(at)] = root(number)
            at += 1
    found: dict[int, Group] = {}
    for at, edge in enumerate(across):
        found.setdefault(root(at), Group()).across.append(edge)
    for at, edge in enumerate(down, start=len(across)):
        found.setdefault(root(at), Group()).down.append(edge)
    return sorted(found.values(), key=lambda group: (group.top, group.left))
