"""Rows of a table whose columns are ruled and whose rows are not."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from ingest.grids.model import Box
from ingest.grids.spread import Spread
from ingest.grids.wording import is_code, lines

LEAST = 3
"""Codes below each other; fewer may share what stands beside them."""
LEVEL = 2.0
"""Points that the words of one row may stand higher or lower."""


def row_cuts(xs: Sequence[float], ys: Sequence[float], words: Spread) -> list[float]:
    """Return the heights that part the rows of a table without rules between them.

    A row begins with each line of the first column, when those lines are codes and
    something stands beside each of them. Else there are none.

    Parameters
    ----------
    xs : sequence of float
        The edges of the columns.
    ys : sequence of float
        The heights of the rules: at most a header and one body are parted.
    words : Spread
        Of the page.
    """
    if len(ys) > LEAST or len(xs) < LEAST:
        return []
    body = Box(xs[0], ys[-2], xs[-1], ys[-1])
    first = lines(words.within(body._replace(x1=xs[1])).words)
    codes = [line for line in first if is_code(" ".join(w.text for w in line))]
    headed = len(ys) < LEAST and first[:1] != codes[:1]
    if len(codes) < LEAST or len(first) != len(codes) + headed:
        return []
    floors = [line[0].bottom for line in first]
    beside = [w.bottom for w in words.within(body._replace(x0=xs[1])).words]
    if not all(any(abs(b - floor) <= LEVEL for b in beside) for floor in floors):
        return []
    tops = [min(word.top for word in line) for line in first]
    return _between(tops, beside, first[0][0].size)


def _between(
    tops: Sequence[float], floors: Sequence[float], size: float
) -> list[float]:
    """Return a height over each row but the first, clear of what ends above it."""
    found = []
    for before, top in pairwise(tops):
        above = [floor for floor in floors if before < floor <= top + size / LEAST]
        found.append((max(above, default=top) + top) / 2)
    return found
