"""Cuts stored pages into passages, the spans that are searched and shown: pure.

A passage is a span of one page, exactly as stored. Cuts stand where the sense
allows: before a heading or a table first, then at paragraphs, rows, sentences and
line ends; among all ways to cut a page the cheapest is taken.
"""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from assistant.library.texts import embedded_text
from assistant.library.types import Passage
from ingest.blocks import Kind, Line

Count = Callable[[str], int]
"""Tokens of a text, special tokens included."""

LEAST = 90
"""Sought, not forced: a short section or a page's rest may be shorter."""
MOST = 220
CEILING = 248
"""With heading, lead and special tokens; the model's contract is 250."""
LEAD_MOST = 60
SECTION_MOST = 40

_SENTENCE = re.compile(r"(?<=[.!?])[\"')\]]*\s+(?=[A-Z0-9\"'(\[•])")
_SENTENCE_END = re.compile(r"[.!?:][\"')\]]*$")

# What a cut costs at each kind of place; a passage that falls short costs up to
# SHORT. Set by hand on service-manual pages: sense before even lengths.
AT_HEADING = 0.0
AT_TABLE = 0.05
AT_BLANK = 0.1
AT_PARAGRAPH = 0.2
AT_ROW = 0.25
AT_SENTENCE = 0.35
AT_LINE = 0.8
IN_WORDS = 1.5
BEHIND_HEADING = 2.0
SHORT = 1.0
ANY = 0.05
HEADING_INSIDE = 0.8
"""So that a short section stands alone: on the tuning half of the sample questions
that puts the right page among the first three by vectors for 76 %, shared passages
for 65 %."""
MIXED = 0.25
"""Prose and table rows in one passage, but for the heading above a table."""


@dataclass(frozen=True, slots=True)
class Unit:
    """The smallest span that is kept whole, and what a cut before it costs."""

    start: int
    end: int
    tokens: int
    cut: float
    kind: Kind
    section: str
    lead: str


def passages(
    number: int, page: str, lines: Sequence[Line], count: Count
) -> list[Passage]:
    """Cut one page.

    Parameters
    ----------
    number : int
        The physical page.
    page : str
        Its text as stored.
    lines : sequence of Line
        Its lines but the running ones, in order.
    count : callable
        Tokens of a text, special tokens included.

    Returns
    -------
    list of Passage
        In order, without overlap; every line given is in one of them. None has
        more than `CEILING` tokens with what is embedded around it.
    """
    units = list(_units(page, lines, count))
    found: list[Passage] = []
    for first, last in _best(units, _Prefix(count)):
        found.extend(_fitting(number, page, units[first:last], count))
    return found


class _Prefix:
    """Tokens that heading and lead take of a passage's room."""

    def __init__(self, count: Count) -> None:
        self._count = count
        self._empty = count("")
        self._known: dict[tuple[str, str], int] = {}

    def __call__(self, unit: Unit) -> int:
        key = (unit.section, unit.lead)
        if key not in self._known:
            around = "\n".join(part for part in key if part)
            self._known[key] = self._count(around) - self._empty if around else 0
        return self._known[key] + self._empty


def _units(page: str, lines: Sequence[Line], count: Count) -> Iterator[Unit]:
    empty = count("")
    full = max((line.end - line.start for line in lines), default=0)
    before: Line | None = None
    for line in lines:
        section = line.section if count(line.section) <= SECTION_MOST else ""
        lead = line.lead if count(line.lead) <= LEAD_MOST else ""
        cut = _cost(before, line, full)
        for start, end in _pieces(page, line, count):
            tokens = max(0, count(page[start:end]) - empty)
            yield Unit(start, end, tokens, cut, line.kind, section, lead)
            whole = _SENTENCE_END.search(page[:end][-4:]) is not None
            cut = AT_SENTENCE if whole else IN_WORDS
        before = line


def _cost(before: Line | None, line: Line, full: int) -> float:
    """Return what a cut between two lines costs; `full` is a whole line's length."""
    if before is None:
        return 0.0
    if before.kind in _HOLDS or before.first_row:
        return BEHIND_HEADING
    if line.kind is Kind.HEADING:
        return AT_HEADING
    if (line.kind is Kind.ROW) != (before.kind is Kind.ROW) or line.first_row:
        return AT_TABLE
    if line.after_blank or line.kind is Kind.SIGNAL:
        return AT_BLANK
    return _cost_inside(before, line, full)


_HOLDS = (Kind.HEADING, Kind.SIGNAL)
SHORT_LINE = 0.8


def _cost_inside(before: Line, line: Line, full: int) -> float:
    """Return what a cut costs between two lines of one table or text."""
    if line.kind is Kind.ROW:
        return AT_ROW
    if line.kind is Kind.ITEM:
        return AT_PARAGRAPH
    if _SENTENCE_END.search(before.text.rstrip()) is None:
        return AT_LINE
    short = before.end - before.start < SHORT_LINE * full
    return AT_PARAGRAPH if short else AT_SENTENCE


def _pieces(page: str, line: Line, count: Count) -> Iterator[tuple[int, int]]:
    """Part a line at its sentences, and what is still too long at its words."""
    starts = [line.start]
    if line.kind not in {Kind.ROW, Kind.HEADING}:
        found = _SENTENCE.finditer(page, line.start, line.end)
        starts += [match.end() for match in found]
    for start, end in zip(starts, [*starts[1:], line.end], strict=True):
        yield from _halved(page, start, start + len(page[start:end].rstrip()), count)


def _halved(page: str, start: int, end: int, count: Count) -> Iterator[tuple[int, int]]:
    """Part a span near its middle until each part fits a passage with its prefix."""
    if start >= end:
        return
    room = CEILING - LEAD_MOST - SECTION_MOST
    if end - start == 1 or count(page[start:end]) <= room:
        yield start, end
        return
    middle = (start + end) // 2
    gap = max(page.rfind(" ", start, middle + 1), page.rfind("\t", start, middle + 1))
    cut = gap if gap > start else middle
    yield from _halved(page, start, cut, count)
    resumed = cut + len(page[cut:end]) - len(page[cut:end].lstrip())
    yield from _halved(page, resumed, end, count)


def _best(units: Sequence[Unit], prefix: _Prefix) -> list[tuple[int, int]]:
    """Return the cheapest cutting, as index ranges (shortest path over the cuts)."""
    cheapest = [0.0] + [math.inf] * len(units)
    came_from = [0] * (len(units) + 1)
    for first in range(len(units)):
        tokens = prefix(units[first])
        inside = 0.0
        for last in range(first + 1, len(units) + 1):
            unit = units[last - 1]
            tokens += unit.tokens
            if tokens > MOST and last > first + 1:
                break
            if last > first + 1:
                inside += _inside(units[last - 2], unit)
            cut = units[last].cut if last < len(units) else 0.0
            cost = cheapest[first] + ANY + inside + cut + _short(tokens)
            if cost < cheapest[last]:
                cheapest[last], came_from[last] = cost, first
    ranges: list[tuple[int, int]] = []
    last = len(units)
    while last:
        ranges.append((came_from[last], last))
        last = came_from[last]
    return ranges[::-1]


def _inside(before: Unit, unit: Unit) -> float:
    """Return what it costs to have this unit behind that one in a passage."""
    if before.kind is Kind.HEADING:
        return 0.0
    if unit.kind is Kind.HEADING:
        return HEADING_INSIDE
    return MIXED if (unit.kind is Kind.ROW) != (before.kind is Kind.ROW) else 0.0


def _short(tokens: int) -> float:
    return SHORT * (max(0, LEAST - tokens) / LEAST) ** 2


def _fitting(
    number: int, page: str, units: Sequence[Unit], count: Count
) -> Iterator[Passage]:
    """Give the passage, halved where its pieces together count more than apart."""
    first, start, end = units[0], units[0].start, units[-1].end
    passage = Passage(number, start, end, page[start:end], first.section, first.lead)
    if count(embedded_text(passage)) <= CEILING:
        yield passage
    elif len(units) > 1:
        middle = len(units) // 2
        yield from _fitting(number, page, units[:middle], count)
        yield from _fitting(number, page, units[middle:], count)
    else:
        yield Passage(number, start, end, page[start:end])
