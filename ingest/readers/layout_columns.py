"""Finds where a page is set in columns of prose. Pure.

A table without rules has gutters too; columns of prose have lines that fill them,
of several words, and one piece a line.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from itertools import pairwise

from ingest.grids.edges import median
from ingest.readers.layout_pieces import Piece, is_mark

LEAST_LINES = 4
"""Of a column of prose."""
LEAST_WORDS = 3.0
"""Median of its lines."""
FULL = 0.7
FULL_SHARE = 0.35
"""So many of its lines reach so far across it."""
STRICT_LINES, STRICT_WORDS, STRICT_SHARE = 6, 4.0, 0.55
"""Where the file draws line by line across the gutter, as it draws a table."""
ACROSS = 0.5
LEAST_WIDTH = 0.18
"""Of a column, in widths of the page."""
BESIDE = 0.3
"""More lines than this share that are cut in pieces: a table."""
ALIKE = 3.0
"""Points by which the left edges of a column's lines differ at most."""
MOST_EDGES = 4
_GUTTER = 1.0
EDGE_PIECES = 4
"""Of the line that a page's head or foot is."""
APART = 2.2
"""Heights of the font between it and the columns."""

Zone = list[list[Piece]]
"""The columns of a band of the page, left to right."""


def zones(found: Sequence[Piece], width: float) -> Iterator[Zone]:
    """Give the bands of a page from top to bottom, each as its columns.

    Parameters
    ----------
    found : sequence of Piece
        In the order of the file.
    width : float
        Of the page, in points.
    """
    for edge in _edges(found):
        bands = _bands(found, edge, width)
        if len(bands) > 1 or len(bands[0]) > 1:
            for band in bands:
                for column in band if len(band) > 1 else [band[0]]:
                    yield from _within(column, band, width)
            return
    yield [list(found)]


def _within(column: list[Piece], band: Zone, width: float) -> Iterator[Zone]:
    """Give a column, or the columns that it has itself."""
    if len(band) > 1 and len(column) >= LEAST_LINES:
        yield from zones(column, width)
    else:
        yield [column]


def _edges(found: Sequence[Piece]) -> list[float]:
    """Return the left edges at which many pieces start, but for the page's own."""
    if not found:
        return []
    votes: Counter[int] = Counter(round(piece.x0 / ALIKE) for piece in found)
    first = min(votes)
    common = [
        (votes[at] + votes[at + 1], at)
        for at in votes
        if at > first + 1 and votes[at] + votes[at + 1] >= LEAST_LINES
    ]
    best = sorted(common, key=lambda vote: (-vote[0], vote[1]))[:MOST_EDGES]
    return [at * ALIKE - ALIKE for _, at in best]


def _bands(found: Sequence[Piece], edge: float, width: float) -> list[Zone]:
    """Cut the page where a piece crosses the edge; keep prose on both sides apart."""
    crossing = sorted(
        (piece for piece in found if piece.x0 < edge < piece.x1), key=lambda p: p.y
    )
    limits = [piece.y for piece in crossing]
    between: list[list[Piece]] = [[] for _ in range(len(limits) + 1)]
    for piece in found:
        if not piece.x0 < edge < piece.x1:
            between[sum(limit < piece.y for limit in limits)].append(piece)
    bands: list[Zone] = []
    plain: list[Piece] = []
    for at, stretch in enumerate(between):
        head, body, foot = _peeled(stretch)
        left = [piece for piece in body if piece.x1 <= edge]
        right = [piece for piece in body if piece.x0 >= edge]
        if _are_columns(left, right, width):
            plain.extend(head)
            if plain:
                bands.append([_as_drawn(plain)])
            bands.append([left, right])
            plain = list(foot)
        else:
            plain.extend(stretch)
        plain.extend(crossing[at : at + 1])
    if plain:
        bands.append([_as_drawn(plain)])
    return bands or [[[]]]


def _peeled(
    stretch: Sequence[Piece],
) -> tuple[list[Piece], list[Piece], list[Piece]]:
    """Part the first and last line that stand off the rest: a page's head and foot."""
    down = sorted(stretch, key=lambda piece: piece.y)
    first, last = 0, len(down)
    for at in range(1, min(len(down), EDGE_PIECES + 1)):
        if down[at].y - down[at - 1].y > APART * down[at - 1].size:
            first = at
            break
    for at in range(len(down) - 1, max(first, len(down) - EDGE_PIECES - 1), -1):
        if down[at].y - down[at - 1].y > APART * down[at].size:
            last = at
            break
    return down[:first], down[first:last], down[last:]


def _as_drawn(stretch: Sequence[Piece]) -> list[Piece]:
    return sorted(stretch, key=lambda piece: piece.order)


def _are_columns(left: Sequence[Piece], right: Sequence[Piece], width: float) -> bool:
    across = _drawn_across(left, right)
    if not all(_is_prose(side, width, strict=across) for side in (left, right)):
        return False
    gutter = min(piece.x0 for piece in right) - max(piece.x1 for piece in left)
    size = median(piece.size for piece in left)
    top = max(min(p.y for p in left), min(p.y for p in right))
    bottom = min(max(p.y for p in left), max(p.y for p in right))
    return gutter >= _GUTTER * size and bottom > top


def _drawn_across(left: Sequence[Piece], right: Sequence[Piece]) -> bool:
    """Whether the file goes from side to side as it goes down."""
    sides = [(piece.order, 0) for piece in left] + [(p.order, 1) for p in right]
    order = [side for _, side in sorted(sides)]
    changes = sum(one != other for one, other in pairwise(order))
    return changes > ACROSS * min(len(left), len(right)) + 1


def _is_prose(side: Sequence[Piece], width: float, *, strict: bool) -> bool:
    lines = [piece for piece in side if piece.table is None and not is_mark(piece.text)]
    if len(lines) < (STRICT_LINES if strict else LEAST_LINES):
        return False
    least, most = min(p.x0 for p in lines), max(p.x1 for p in lines)
    wide = most - least
    if wide < LEAST_WIDTH * width:
        return False
    words = median(piece.words for piece in lines)
    if words < (STRICT_WORDS if strict else LEAST_WORDS):
        return False
    full = sum(piece.x1 - piece.x0 >= FULL * wide for piece in lines)
    levels = Counter(round(piece.y / 2) for piece in lines)
    beside = sum(count for count in levels.values() if count > 1)
    share = STRICT_SHARE if strict else FULL_SHARE
    return full >= share * len(lines) and beside <= BESIDE * len(lines)
