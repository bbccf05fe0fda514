"""Tables of bands: horizontal rules only, or fills behind some of the rows."""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import TYPE_CHECKING

from ingest.grids.columns import ALIGNED, LEAD, column_edges, crosses, phrases
from ingest.grids.edges import TOLERANCE, Edge, Group, median, snapped
from ingest.grids.lattice import Lattice, lattice
from ingest.grids.model import Box
from ingest.grids.spread import Spread, middle, place
from ingest.grids.wording import lines

if TYPE_CHECKING:
    from ingest.readers.geometry import Word

LEAST = 3
"""Bands with words; fewer are no table."""
FAR = 3.0
"""Strips farther apart than so many of their heights do not belong together."""
FAR_POINTS = 60.0
PROSE = 0.5
"""Of the width: two lines alone that run on so far are a paragraph, not a row."""
INDENT = 15.0
"""Points: a paragraph's lines begin so far from each other at most."""
ROOMY = 1.5
"""Of the usual height: a higher band with one phrase in it is a caption."""
EMPTY = 24.0
"""Points: a higher band without words parts two tables."""
TALL = 2.5
"""Heights of a line: a first or last band with so much room and one cell is outside."""


@dataclass(slots=True)
class Stack:
    """Strips of one width, one below the other."""

    left: float
    right: float
    across: list[Edge] = field(default_factory=list)
    down: list[Edge] = field(default_factory=list)

    @property
    def drawn(self) -> bool:
        """Whether rules part the rows."""
        return any(edge.drawn for edge in self.across)


def inner(group: Group) -> list[Edge]:
    """Return the vertical edges of a group that are not its sides."""
    left, right = group.left + TOLERANCE, group.right - TOLERANCE
    return [edge for edge in group.down if left < edge.at < right]


def is_strip(group: Group) -> bool:
    """Whether no vertical rule parts a group into columns."""
    return bool(group.across) and not any(edge.drawn for edge in inner(group))


def stacks(groups: Sequence[Group]) -> list[Stack]:
    """Lay strips of one width together, from the top.

    Parameters
    ----------
    groups : sequence of Group
        Those that are strips, from the top.
    """
    found: list[Stack] = []
    ends: list[tuple[float, float]] = []  # bottom, and the height of the last strip
    rest: list[Group] = []
    for group in groups:
        at = _home(found, ends, group)
        lone = len(group.across) == 1 and not group.down
        if at is None and lone and any(_within(stack, group) for stack in found):
            rest.append(group)
            continue
        if at is None:
            found.append(Stack(group.left, group.right))
            ends.append((group.bottom, group.bottom - group.top))
            at = len(found) - 1
        stack = found[at]
        stack.across += group.across
        stack.down += group.down
        ends[at] = (group.bottom, max(ends[at][1], group.bottom - group.top))
    _take_parts(found, rest)
    return found


def _home(
    found: Sequence[Stack], ends: Sequence[tuple[float, float]], group: Group
) -> int | None:
    for at in reversed(range(len(found))):
        stack, (bottom, height) = found[at], ends[at]
        same = (
            abs(stack.left - group.left) <= TOLERANCE
            and abs(stack.right - group.right) <= TOLERANCE
        )
        lone = not group.down or height <= TOLERANCE
        far = float("inf") if lone else max(FAR * height, FAR_POINTS)
        if same and group.top - bottom <= far:
            return at
    return None


def _within(stack: Stack, group: Group) -> bool:
    return stack.left - TOLERANCE <= group.left and (
        group.right <= stack.right + TOLERANCE
    )


def _take_parts(found: Sequence[Stack], rest: Iterable[Group]) -> None:
    """Give rules that part only some columns to the stack that they lie in."""
    for group in rest:
        y = group.across[0].at
        for stack in found:
            tops = [edge.at for edge in stack.across]
            if _within(stack, group) and min(tops) < y < max(tops):
                stack.across += group.across
                break


def lattices(stack: Stack, words: Spread) -> list[Lattice]:
    """Return the tables that a stack holds, cut at paragraphs between its strips.

    Parameters
    ----------
    stack : Stack
        Strips of one width.
    words : Spread
        Of the page.
    """
    ys = snapped({edge.at for edge in stack.across})
    if len(ys) < LEAST:
        return []
    step = max(low - high for high, low in pairwise(ys))
    own = words.within(Box(stack.left, ys[0] - step, stack.right, ys[-1] + step))
    found = []
    for part in _unbroken(stack, ys, own):
        made = _table(stack, part, own)
        if made is not None:
            found.append(made)
    return found


def _unbroken(stack: Stack, ys: Sequence[float], words: Spread) -> list[list[float]]:
    bands = words.bands(ys)
    usual = median(low - high for high, low in pairwise(ys))
    parts: list[list[float]] = [[ys[0]]]
    first: list[str] = []
    for at, band in enumerate(bands):
        height = ys[at + 1] - ys[at]
        after = _said(bands[at + 1]) if at + 1 < len(bands) else []
        again = bool(first) and first == after
        if _breaks(stack, band, height, usual) or (again and _single(band)):
            parts.append([])
            first = after
        elif not first:
            first = _said(band)
        parts[-1].append(ys[at + 1])
    return [part for part in parts if len(part) > 1]


def _said(band: Sequence[Word]) -> list[str]:
    return [word.text for word in band]


def _single(band: Sequence[Word]) -> bool:
    """Whether a band is one line of one phrase: a caption, or a section's name."""
    rows = lines(band)
    return len(rows) == 1 and len(phrases(rows[0])) == 1


def _breaks(stack: Stack, band: Sequence[Word], height: float, usual: float) -> bool:
    """Whether a band is a paragraph, a caption or a gap between two tables."""
    if not band:
        return height > EMPTY
    if _single(band):
        return height > max(TALL * band[0].size, ROOMY * usual)
    rows = [phrases(line) for line in lines(band)]
    starts = [x0 for spans in rows for x0, _ in spans]
    if len(starts) > len(rows) or max(starts) - min(starts) > INDENT:
        return False
    width = stack.right - stack.left
    return sum(spans[0][1] - spans[0][0] > PROSE * width for spans in rows) > 1


def _table(stack: Stack, ys: Sequence[float], words: Spread) -> Lattice | None:
    wide = stack.right - stack.left - 2 * TOLERANCE
    full = [edge.at for edge in stack.across if edge.high - edge.low >= wide]
    rules = sum(any(abs(y - at) <= TOLERANCE for at in full) for y in ys)
    if rules < LEAST and not _inner_edges(stack, ys):
        return None
    places = list(ys)
    xs = _xs(stack, places, words)
    places = _extended(stack, _trimmed(places, xs, words), words)
    if len(_told(places, words)) < LEAST:
        return None
    by_words = not _inner_edges(stack, places)
    if by_words:
        xs = _xs(stack, places, words)
    if len(xs) <= len((stack.left, stack.right)):
        return None
    across = [edge for edge in stack.across if places[0] <= edge.at <= places[-1]]
    down = [edge for edge in stack.down if edge.low < places[-1]]
    if not by_words:
        xs = snapped({stack.left, stack.right, *(edge.at for edge in down)})
    grid = lattice(xs, places, across, [] if by_words else down)
    _open_walls(grid, words)
    _join_groups(grid, across, words)
    return grid


def _told(ys: Sequence[float], words: Spread) -> list[list[Word]]:
    return [band for band in words.bands(ys) if band]


def _inner_edges(stack: Stack, ys: Sequence[float]) -> list[float]:
    left, right = stack.left + TOLERANCE, stack.right - TOLERANCE
    return [
        edge.at
        for edge in stack.down
        if left < edge.at < right and edge.low < ys[-1] and edge.high > ys[0]
    ]


def _xs(stack: Stack, ys: Sequence[float], words: Spread) -> list[float]:
    edges = _inner_edges(stack, ys)
    if edges:
        return snapped({stack.left, stack.right, *edges})
    return column_edges(_told(ys, words), stack.left, stack.right)


def _trimmed(ys: list[float], xs: Sequence[float], words: Spread) -> list[float]:
    """Leave off first and last bands that hold a heading or a foot line."""
    while len(ys) > 1 and _outside(ys[:2], xs, words):
        del ys[0]
    while len(ys) > 1 and _outside(ys[-2:], xs, words):
        del ys[-1]
    return ys


def _outside(ys: Sequence[float], xs: Sequence[float], words: Spread) -> bool:
    (band,) = words.bands(ys)
    if not band:
        return True
    rows = lines(band)
    spans = [span for line in rows for span in phrases(line)]
    if len({place(xs, x0 + LEAD) for x0, _ in spans}) > 1:
        return False
    reach = max(place(xs, x1) for _, x1 in spans)
    size = median(word.size for word in band)
    return ys[1] - ys[0] > TALL * size * len(rows) or reach > len(rows) > 1


def _extended(stack: Stack, ys: list[float], words: Spread) -> list[float]:
    """Take in a first or last row that no edge closes, when it keeps the columns."""
    if len(ys) < LEAST:
        return ys
    columns = len(_xs(stack, ys, words))
    heights = [low - high for high, low in pairwise(ys)]
    step = min(median(heights), 2 * min(heights))
    for edge, outer in ((ys[-1], ys[-1] + step), (ys[0], ys[0] - step)):
        row = words.between(*sorted((edge, outer)))
        longer = sorted([*ys, outer])
        xs = _xs(stack, longer, words) if row else []
        if len(xs) == columns and _keeps(row, xs, _told(ys, words)):
            ys = longer
    return ys


def _keeps(
    row: Sequence[Word], xs: Sequence[float], bands: Sequence[Sequence[Word]]
) -> bool:
    """Whether a row begins its columns just where the bands do, most of them."""
    firsts: dict[int, float] = {}
    for word in row:
        column = place(xs, word.x0 + LEAD)
        firsts[column] = min(word.x0, firsts.get(column, word.x0))
    if -1 in firsts or any(crosses(row, x) for x in xs[1:-1]):
        return False
    usual = sorted(word.x0 for band in bands for word in band)
    hits = 0
    for x in firsts.values():
        at = bisect_left(usual, x - ALIGNED)
        hits += at < len(usual) and usual[at] <= x + ALIGNED
    columns = len(xs) - 1
    if LEAST <= columns == len(firsts) and len(lines(row)) == 1:
        return True
    return hits == len(firsts) and len(firsts) * 2 > columns and len(firsts) > 1


def _open_walls(grid: Lattice, words: Spread) -> None:
    """Wall off the columns in rows that have no wall, but where words reach over."""
    bands = words.bands(grid.ys)
    for row, band in enumerate(bands):
        if any(grid.right[row][:-1]):
            continue
        for column, x in enumerate(grid.xs[1:-1]):
            grid.right[row][column] = not crosses(band, x)
    for row, walls in enumerate(grid.below[:-1]):
        if not any(walls):
            grid.below[row] = [True] * grid.columns


def _join_groups(grid: Lattice, across: Sequence[Edge], words: Spread) -> None:
    """Join the cells over a rule that underlines a group of columns."""
    bands = words.bands(grid.ys)
    full = grid.xs[-1] - grid.xs[0] - 2 * TOLERANCE
    for edge in across:
        row = min(range(len(grid.ys)), key=lambda at: abs(grid.ys[at] - edge.at)) - 1
        if row != 0 or edge.high - edge.low >= full:
            continue
        columns = [
            column
            for column in range(grid.columns)
            if edge.low - TOLERANCE <= (grid.xs[column] + grid.xs[column + 1]) / 2
            and (grid.xs[column] + grid.xs[column + 1]) / 2 <= edge.high + TOLERANCE
        ]
        used = {place(grid.xs, middle(word)[0]) for word in bands[row]}
        if len(columns) > 1 and len(used.intersection(columns)) == 1:
            for column in columns[:-1]:
                grid.right[row][column] = False
