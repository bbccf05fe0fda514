"""Joins words into pieces of lines: a cell, or a line of a column. Pure."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

from ingest.readers.geometry import Word
from ingest.readers.pdf_words import DESCENT

CELL_GAP = 1.0
"""Heights of the font: more than a word's space lies between two cells."""
MARK_GAP = 0.4
"""So much more than a word's space stands behind the mark of a list's item."""
_LEVEL = 0.35
_BACK = 0.3
SPACED_GAP, SPACED_WORDS = 1.6, 2.2
"""Single letters stand so far apart at most, in one word and between two."""
LEAST_SPACED = 4
"""So many letters that stand apart at one pitch are a word."""
_PITCH = 0.25
_TOUCH = 0.12


_MARK = re.compile(r"^(?:\(?\d{1,2}[.)]|\(?[a-z][.)]|[•●○■▪◦–*✓►▶\-\uf0b7])$")


@dataclass(frozen=True, slots=True)
class Piece:
    """Words that follow each other on one line, without a column's gap."""

    text: str
    x0: float
    x1: float
    y: float
    """Its base line, downwards from the top."""
    size: float
    bold: bool
    order: int
    """Of its first word, in the order of the file."""
    table: int | None = None
    """It stands for a whole ruled table."""
    words: int = 1


def pieces(words: Iterable[tuple[int, Word]]) -> list[Piece]:
    """Return the pieces of level words, given with their order in the file."""
    found: list[Piece] = []
    group: list[Word] = []
    start = 0
    base = size = end = 0.0
    for at, word in words:
        now, most = _base(word), max(size, word.size)
        gap = word.x0 - end
        if group and (
            abs(now - base) > _LEVEL * most
            or gap < -_BACK * most
            or gap > _most(group, word) * most
            or _is_marked(group, word)
        ):
            found.extend(_closed_group(group, start))
            group = []
        if not group:
            start = at
        group.append(word)
        base, size, end = now, word.size, word.x1
    if group:
        found.extend(_closed_group(group, start))
    return found


def _closed_group(group: list[Word], order: int) -> Iterator[Piece]:
    """Give the piece of a group; its letters one by one where they make no word."""
    if _apart(group) or all(
        right.x0 - left.x1 <= CELL_GAP * max(left.size, right.size)
        for left, right in pairwise(group)
    ):
        yield _piece(group, order)
        return
    part = [group[0]]
    for at, word in enumerate(group[1:], start=1):
        if word.x0 - part[-1].x1 > CELL_GAP * max(word.size, part[-1].size):
            yield _piece(part, order + at - len(part))
            part = []
        part.append(word)
    yield _piece(part, order + len(group) - len(part))


def _apart(group: Sequence[Word]) -> bool:
    """Whether a group is the letters of spaced words, and no row of single letters."""
    if len(group) < LEAST_SPACED:
        return False
    if any(len(word.text) > 1 or not word.text.isalpha() for word in group):
        return False
    return {ord(b.text) - ord(a.text) for a, b in pairwise(group)} != {1}


def _base(word: Word) -> float:
    return word.bottom - DESCENT * word.size


def _most(group: Sequence[Word], word: Word) -> float:
    """Return how far from a group a word may stand, in heights of the font."""
    if len(word.text) > 1 or any(len(each.text) > 1 for each in reversed(group)):
        return CELL_GAP
    return SPACED_WORDS if len(group) >= LEAST_SPACED else SPACED_GAP


def _is_marked(group: Sequence[Word], word: Word) -> bool:
    """Whether a word hangs behind the number or bullet of its item."""
    gap = word.x0 - group[-1].x1
    return len(group) == 1 and gap > MARK_GAP * word.size and is_mark(group[0].text)


def is_mark(text: str) -> bool:
    """Whether a piece is only the number or bullet of an item."""
    return bool(_MARK.match(text))


def _piece(group: Sequence[Word], order: int) -> Piece:
    level = _usual(group)
    size = round(level.size, 1)
    return Piece(
        text=_text(group),
        x0=group[0].x0,
        x1=max(word.x1 for word in group),
        y=_base(level),
        size=size,
        bold=all(word.bold for word in group),
        order=order,
        words=len(group),
    )


def _usual(group: Sequence[Word]) -> Word:
    """Return the first word of the height that most letters have."""
    first = group[0]
    if all(word.size == first.size for word in group):
        return first
    sizes: Counter[float] = Counter()
    for word in group:
        sizes[round(word.size, 1)] += len(word.text)
    size, _ = sizes.most_common(1)[0]
    return next(word for word in group if round(word.size, 1) == size)


def _text(group: Sequence[Word]) -> str:
    """Write the words of a piece; letters that are set apart are closed."""
    if not _apart(group):
        return " ".join(word.text for word in group)
    pairs = list(pairwise(group))
    gaps = [right.x0 - left.x1 for left, right in pairs]
    usual = sorted(gaps)[len(gaps) // 2]
    parts = [group[0].text]
    for gap, word in zip(gaps, group[1:], strict=True):
        wide = gap > usual + max(_PITCH * word.size, usual)
        parts.append(f" {word.text}" if wide else word.text)
    return "".join(parts)


def spaced_out(found: Iterable[Piece]) -> list[Piece]:
    """Close words whose letters stand one under the other.

    They are drawn one after the other, each alone on its line, at one distance of
    little more than their height.
    """
    kept: list[Piece] = []
    stack: list[Piece] = []
    for piece in found:
        if stack and not _under(stack, piece):
            kept.extend(_closed(stack))
            stack = []
        stack.append(piece)
    kept.extend(_closed(stack))
    return kept


def _under(stack: Sequence[Piece], piece: Piece) -> bool:
    last = stack[-1]
    if not (_letter(last) and _letter(piece)):
        return False
    middle = abs((piece.x0 + piece.x1) - (last.x0 + last.x1)) / 2
    drop = piece.y - last.y
    steady = (
        len(stack) == 1 or abs(drop - (last.y - stack[-2].y)) <= _TOUCH * piece.size
    )
    return middle <= _LEVEL * piece.size and 0 < drop <= 1.3 * piece.size and steady


def _letter(piece: Piece) -> bool:
    return len(piece.text) == 1 and piece.text.isalpha()


def _closed(stack: Sequence[Piece]) -> list[Piece]:
    if len(stack) < LEAST_SPACED:
        return list(stack)
    word = "".join(piece.text for piece in stack)
    steps = {ord(right) - ord(left) for left, right in pairwise(word)}
    if steps == {1}:
        return list(stack)
    return [replace(stack[0], text=word, x1=max(each.x1 for each in stack))]
