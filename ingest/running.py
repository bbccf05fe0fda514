"""Finds running heads and feet: lines that repeat at the edges of pages. Pure.

They stay in the stored page; passages only leave them out.
"""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from ingest.cleaning import cells, is_row

EDGE_LINES = 3
"""So many lines at the top and at the bottom of a page may run."""
LEAST_PAGES = 3
LEAST_SHARE = 0.2
LONG_CELL = 10
"""Letters by which one cell of a line is enough to know it again."""
COUNTED_SHARE = 0.8
"""Of the pages with such a line, those on which its number counts the pages."""
TWICE = 1.5
"""Lines alike but for their numbers, on a page: more are rows of a table."""
NUMBERINGS = 2
"""Front matter and body are often numbered apart."""
TABLE_LINES = 3
_NUMBER = re.compile(r"\d+(?:[.,]\d+)+|\d+|\b[ivxl]{1,6}\b")
_ROMAN = {"i": 1, "v": 5, "x": 10, "l": 50}


@dataclass(frozen=True, slots=True)
class _Sight:
    """One line, or one end of it, as it stands on one page."""

    page: int
    exact: str
    numbers: tuple[int, ...]


def running_lines(pages: Sequence[str]) -> list[frozenset[int]]:
    """Return, for each page, the indices of its running heads and feet.

    A line runs when it, or its first or last long cell, stands among the outer
    lines of at least three pages and a fifth of them: word for word, or with a
    number that counts the pages. Rows of figures do not count pages, so they stay.
    Only lines without a gap to the page's edge run.
    """
    filled = [_filled(page) for page in pages]
    sights: defaultdict[str, list[_Sight]] = defaultdict(list)
    for number, lines in enumerate(filled):
        for _, text in dict.fromkeys(lines[:EDGE_LINES] + lines[-EDGE_LINES:]):
            for key, sight in _sights(number, text):
                sights[key].append(sight)
    least = max(LEAST_PAGES, LEAST_SHARE * sum(1 for lines in filled if lines))
    runs = {key for key, seen in sights.items() if _repeats(seen, least)}
    found = [frozenset(_edges(lines, runs)) for lines in filled]
    # Pages that are all alike have no heads: what would be left of them?
    left = any(len(lines) > len(run) for lines, run in zip(filled, found, strict=True))
    return found if left else [frozenset() for _ in pages]


def numbers_of(line: str) -> tuple[int, ...]:
    """Return the whole numbers of a line, Roman ones included, decimals not.

    Examples
    --------
    >>> numbers_of("VSM-1407 Rev. C  iv")
    (1407, 4)
    """
    return tuple(
        int(found) if found.isdigit() else _from_roman(found)
        for found in _NUMBER.findall(line.lower())
        if found.isdigit() or found.isalpha()
    )


def _from_roman(word: str) -> int:
    values = [_ROMAN[sign] for sign in word]
    return sum(
        -value if value < max(values[at:]) else value for at, value in enumerate(values)
    )


def _sights(page: int, line: str) -> Iterator[tuple[str, _Sight]]:
    """Give what a line can be known by: all of it, and its long ends."""
    folded = " ".join(line.lower().split())
    parts = cells(line.lower())
    ends = {parts[0], parts[-1]} if len(parts) > 1 else set()
    long = {cell for cell in ends if sum(map(str.isalpha, cell)) >= LONG_CELL}
    for words in sorted({folded, *long}):
        yield _key(words), _Sight(page, words, numbers_of(words))


def _key(words: str) -> str:
    return _NUMBER.sub("#", words)


def _repeats(seen: Sequence[_Sight], least: float) -> bool:
    """Whether enough pages have the line, alike or counting them."""
    pages = len({sight.page for sight in seen})
    if pages < least:
        return False
    if len({sight.exact for sight in seen}) == 1:
        return True
    if len(seen) > TWICE * pages:
        return False
    places = min(len(sight.numbers) for sight in seen)
    return any(_counts(seen, place) for place in range(-places, 0))


def _counts(seen: Sequence[_Sight], place: int) -> bool:
    steps = Counter(sight.numbers[place] - sight.page for sight in seen)
    common = sum(count for _, count in steps.most_common(NUMBERINGS) if count > 1)
    return common >= COUNTED_SHARE * len(seen)


def _filled(page: str) -> list[tuple[int, str]]:
    return [(at, line) for at, line in enumerate(page.split("\n")) if line.strip()]


def _edges(lines: Sequence[tuple[int, str]], runs: set[str]) -> list[int]:
    """Walk in from both edges of a page, as far as lines run."""
    top = 0
    while top < min(EDGE_LINES, len(lines)) and _runs(lines, top, runs):
        top += 1
    bottom = len(lines)
    least = max(top, len(lines) - EDGE_LINES)
    while bottom > least and _runs(lines, bottom - 1, runs):
        bottom -= 1
    return [at for at, _ in (*lines[:top], *lines[bottom:])]


def _runs(lines: Sequence[tuple[int, str]], index: int, runs: set[str]) -> bool:
    """Whether a line runs; a table's head that is repeated does not."""
    here = lines[index : index + TABLE_LINES]
    if runs.isdisjoint(key for key, _ in _sights(0, here[0][1])):
        return False
    table = len(here) == TABLE_LINES and all(is_row(text) for _, text in here)
    return not table or bool(numbers_of(here[0][1]))
