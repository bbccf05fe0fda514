"""The page numbers as printed: from the file's labels, else from its feet. Pure."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Sequence

from ingest.running import numbers_of

LEAST_PAGES = 3
_ROMAN_END = re.compile(r"(?:^|\s)([ivxl]{1,6})\s*$|^\s*([ivxl]{1,6})(?=\s)")


def printed_labels(
    labels: Sequence[str],
    texts: Sequence[str],
    running: Sequence[frozenset[int]],
) -> list[str]:
    """Return what is printed on each page as its number; nothing where nothing is.

    The file's own labels stand. Where it has none (they count from 1), the number
    in the running lines does, if it keeps one distance to the physical page; the
    pages before page 1 then have the small Roman number that stands on them.

    Parameters
    ----------
    labels : sequence of str
        The file's labels.
    texts : sequence of str
        The pages as stored.
    running : sequence of frozenset of int
        Indices of each page's running lines.
    """
    plain = [str(number) for number in range(1, len(labels) + 1)]
    if list(labels) != plain:
        return list(labels)
    lines = [
        [text.split("\n")[at] for at in sorted(found)]
        for text, found in zip(texts, running, strict=True)
    ]
    distance = _distance(lines)
    if not distance:
        return plain
    return [
        str(number + distance) if number + distance > 0 else _roman(lines[number - 1])
        for number in range(1, len(labels) + 1)
    ]


def _distance(lines: Sequence[Sequence[str]]) -> int:
    """Return how far printed numbers lie from physical ones; 0 when not agreed."""
    votes: Counter[int] = Counter()
    for number, feet in enumerate(lines, start=1):
        found = [numbers_of(line) for line in feet]
        printed = {each for numbers in found for each in (*numbers[:1], *numbers[-1:])}
        votes.update(each - number for each in printed)
    if not votes:
        return 0
    # Of equal votes the smaller distance: years and model numbers lie far off.
    distance, agreed = min(votes.items(), key=lambda vote: (-vote[1], abs(vote[0])))
    told = sum(1 for feet in lines if feet)
    return distance if agreed >= max(LEAST_PAGES, told / 2) else 0


def _roman(feet: Iterable[str]) -> str:
    for line in feet:
        if match := _ROMAN_END.search(line):
            return match[1] or match[2]
    return ""
