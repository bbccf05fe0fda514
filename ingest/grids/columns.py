"""Where columns begin in bands of words that no vertical rule parts."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING, NamedTuple

from ingest.grids.edges import median
from ingest.grids.wording import lines

if TYPE_CHECKING:
    from ingest.readers.geometry import Word

SHARE = 0.55
"""Of the bands: a column's words begin at one place in so many."""
CROSSING = 0.10
"""Of the bands: at most so many may have a word across that place."""
MIN_GAP = 3.0
"""Points, and as a share of the font's height: the usual gap before a column."""
MIN_GAP_EM = 0.4
ALIGNED = 1.5
STEP = 0.5
"""Points between the places that are tried."""
_REACH = 4
"""Steps: no place farther off is aligned."""
APART = 8.0
GUTTER = 7.0
"""Points: a white strip so wide parts columns whose words are centred."""
FILLED = 0.25
"""Of the bands: so many have words on either side of such a strip."""
PHRASE = 0.55
"""Gap between words of one phrase, in heights of the font."""
FEW = 4
"""Fewer bands may have none that crosses; from here on one may."""
OVERHANG = 40.0
"""Points that a heading may begin before its column does."""
LEAD = 2.0
"""Points that the edge of a column stands before its words."""


class Start(NamedTuple):
    """Where a word begins, and the gap before it on its line."""

    x: float
    gap: float
    size: float


Spans = list[tuple[float, float]]


def phrases(line: Sequence[Word]) -> Spans:
    """Return from where to where the phrases of a line reach."""
    found: Spans = []
    for word in line:
        if found and word.x0 - found[-1][1] <= PHRASE * word.size:
            found[-1] = (found[-1][0], max(found[-1][1], word.x1))
        else:
            found.append((word.x0, word.x1))
    return found


def column_edges(
    bands: Sequence[Sequence[Word]], left: float, right: float
) -> list[float]:
    """Return the edges of the columns, the outer ones with them.

    Parameters
    ----------
    bands : sequence of sequence of Word
        The words of each row, in any order.
    left, right : float
        The sides of the table.
    """
    parted = [lines(band) for band in bands if band]
    if not parted:
        return [left, right]
    starts = [list(_starts(band)) for band in parted]
    spans = [[span for line in band for span in phrases(line)] for band in parted]
    words = [[(w.x0, w.x1) for line in band for w in line] for band in parted]
    allowed = max(int(CROSSING * len(parted)), 1 if len(parted) >= FEW else 0)
    found = _aligned(starts, words, allowed)
    found += _gutters(spans, found, allowed)
    first = min(x0 for band in words for x0, _ in band)
    before = min(x1 for band in words for _, x1 in band)
    inner = sorted(x for x in found if x >= before and left < x < right)
    clear = _free(spans, 0, least=MIN_GAP)
    return [left, *_cleared([first, *inner], clear), right]


def _cleared(starts: Sequence[float], clear: Spans) -> list[float]:
    """Return an edge before each start but the first, where nothing is written.

    A heading that is wider than its column may begin before it does.
    """
    found: list[float] = []
    for before, x in pairwise(starts):
        strips = [
            strip
            for strip in clear
            if strip[0] > before and x - OVERHANG <= strip[1] <= x + ALIGNED
        ]
        low, high = max(strips, key=lambda strip: strip[1], default=(x - LEAD, x))
        found.append(high - min(LEAD, (high - low) / 2))
    return found


def _starts(band: Sequence[Sequence[Word]]) -> Iterator[Start]:
    for line in band:
        end = float("-inf")
        for word in line:
            if word.x0 - end > MIN_GAP * MIN_GAP_EM:
                yield Start(word.x0, word.x0 - end, word.size)
            end = max(end, word.x1)


def _aligned(
    starts: Sequence[Sequence[Start]], words: Sequence[Spans], allowed: int
) -> list[float]:
    """Return where words begin in enough bands, the commonest place first."""
    need = SHARE * len(starts)
    ranked = sorted(((n, -x) for x, n in _votes(starts).items()), reverse=True)
    every = sorted(start for band in starts for start in band)
    xs = [start.x for start in every]
    found: list[float] = []
    for count, negative in ranked:
        if count < need:
            break
        x = -negative
        if any(abs(x - other) < APART for other in found):
            continue
        # One half more on either side: the slice may not round where a start is near.
        low, high = bisect_left(xs, x - ALIGNED - STEP), bisect_right(xs, x + ALIGNED)
        near = [start for start in every[low : high + 1] if abs(start.x - x) <= ALIGNED]
        exact = min(start.x for start in near)
        if _parts(near) and _crossings(words, exact) <= allowed:
            found.append(exact)
    return found


def _votes(starts: Sequence[Sequence[Start]]) -> dict[float, int]:
    """Return the places where words begin, and how many bands have one near each."""
    places = {round(start.x / STEP) for band in starts for start in band}
    found = dict.fromkeys(places, 0)
    for band in starts:
        near: set[int] = set()
        for x in {start.x for start in band}:
            at = round(x / STEP)
            near.update(
                place
                for place in range(at - _REACH, at + _REACH + 1)
                if place * STEP - ALIGNED <= x <= place * STEP + ALIGNED
            )
        for place in near & places:
            found[place] += 1
    return {place * STEP: count for place, count in found.items()}


def _parts(near: Sequence[Start]) -> bool:
    """Whether the gap before a place is more than a space."""
    gaps = [start.gap for start in near if start.gap != float("inf")]
    if not gaps:
        return True
    size = median(start.size for start in near)
    return median(gaps) > max(MIN_GAP, MIN_GAP_EM * size)


def _crossings(spans: Sequence[Spans], x: float) -> int:
    return sum(
        any(x0 < x - ALIGNED and x1 > x + ALIGNED for x0, x1 in band) for band in spans
    )


def _gutters(
    spans: Sequence[Spans], known: Sequence[float], allowed: int
) -> list[float]:
    """Return where words begin after white strips that no known column explains."""
    free = _free(spans, allowed)
    found: list[float] = []
    edges = sorted(known)
    for low, high in free:
        if any(low - ALIGNED <= x <= high + APART for x in edges):
            continue
        before = max((x for x in edges + found if x < low), default=float("-inf"))
        after = min((x for x in edges if x > high), default=float("inf"))
        if _filled(spans, before, low) and _filled(spans, high, after):
            found.append(high)
    return found


def _filled(spans: Sequence[Spans], low: float, high: float) -> bool:
    some = sum(
        any(x0 >= low - ALIGNED and x1 <= high + ALIGNED for x0, x1 in band)
        for band in spans
    )
    return some >= max(FILLED * len(spans), 2)


def _free(spans: Sequence[Spans], allowed: int, *, least: float = GUTTER) -> Spans:
    """Return the strips, wide enough, that at most `allowed` bands write in."""
    events: list[tuple[float, int]] = []
    for band in spans:
        for x0, x1 in _united(band):
            events += [(x0, 1), (x1, -1)]
    found: Spans = []
    depth, since = 0, float("-inf")
    for x, step in sorted(events, key=lambda event: (event[0], -event[1])):
        if step > 0 and depth <= allowed < depth + step:
            if x - since >= least and since != float("-inf"):
                found.append((since, x))
        elif step < 0 and depth > allowed >= depth + step:
            since = x
        depth += step
    return found


def _united(band: Spans) -> Spans:
    found: Spans = []
    for x0, x1 in sorted(band):
        if found and x0 <= found[-1][1]:
            found[-1] = (found[-1][0], max(found[-1][1], x1))
        else:
            found.append((x0, x1))
    return found


def crosses(band: Sequence[Word], x: float) -> bool:
    """Whether some phrase of a band reaches over the edge of a column.

    Parameters
    ----------
    band : sequence of Word
        The words of the row.
    x : float
        The edge.
    """
    for line in lines(band):
        for x0, x1 in phrases(line):
            if x0 < x - ALIGNED and x1 > x + ALIGNED + LEAD:
                begins = any(abs(word.x0 - LEAD - x) <= ALIGNED for word in line)
                if not begins:
                    return True
    return False
