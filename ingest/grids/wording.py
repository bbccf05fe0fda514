"""Words to lines, and lines to the text of a cell."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from itertools import pairwise
from operator import attrgetter
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from ingest.readers.geometry import Word

SAME_LINE = 0.5
"""Share of the lower word's height that words of one line have in common."""
NO_SPACE = 0.08
"""Gap, in heights of the font, up to which two pieces are one word."""
OVERLAP = -0.2
LONGEST_CODE = 11
_HALF_TURN, _QUARTER = 180, 90
_BY_BASE, _BY_LEFT = attrgetter("bottom", "x0"), attrgetter("x0")
_CODE = re.compile(
    r"(?=\D{0,5}\d)[A-Za-z]{0,3}[-./]?\d{1,5}(?:[-./]?[A-Z0-9]{1,4}){0,2}"
)
_CODE_HYPHEN = re.compile(r"(?:^|\s)(?:[A-Z]{1,3}\d*|\d+|[A-Za-z]+\d+)-$")
_DIGITS = re.compile(r"\d")


def is_code(text: str) -> bool:
    """Tell a code from a name: E5-1, P1-05, 42 or H6, not Code.

    >>> is_code("E5-1"), is_code("P1-05"), is_code("Code")
    (True, True, False)
    """
    return len(text) <= LONGEST_CODE and _CODE.fullmatch(text) is not None


def lines(words: Sequence[Word]) -> list[list[Word]]:
    """Part upright words into lines, from the top, each from the left."""
    if len(words) <= 1:
        return [list(words)] if words else []
    found: list[list[Word]] = []
    floors: list[tuple[float, float]] = []
    for word in sorted(words, key=_BY_BASE):
        if found:
            top, bottom = floors[-1]
            over, under = word.top, word.bottom
            if over == top and under == bottom:
                found[-1].append(word)
                continue
            shared = min(under, bottom) - max(over, top)
            if shared >= SAME_LINE * min(under - over, bottom - top):
                found[-1].append(word)
                floors[-1] = (min(top, over), max(bottom, under))
                continue
        found.append([word])
        floors.append((word.top, word.bottom))
    for line in found:
        line.sort(key=_BY_LEFT)
    return found


def cell_text(words: Sequence[Word], known: Collection[str] = ()) -> str:
    """Return what a cell says, its lines joined.

    Parameters
    ----------
    words : sequence of Word
        Those that stand in it.
    known : collection of str
        Words of the page, in small letters: one cut at a line's end is joined
        without its hyphen only where the whole is among them. A code keeps it.
    """
    if not words:
        return ""
    if len(words) == 1:
        return words[0].text.lstrip()
    turned = {word.angle for word in words}
    if len(turned) == 1 and turned != {0}:
        return " ".join(word.text for word in _turned(words, turned.pop()))
    said = ""
    for line in lines(words):
        said = _append(said, _line_text(line), known)
    return said


def _turned(words: Sequence[Word], angle: int) -> list[Word]:
    """Order words that stand on end, or on their heads."""
    if angle == _HALF_TURN:
        return sorted(words, key=lambda word: (-round(word.bottom), -word.x1))
    if angle == _QUARTER:
        return sorted(words, key=lambda word: (round(word.x1), -word.bottom))
    return sorted(words, key=lambda word: (-round(word.x0), word.top))


def _line_text(line: Sequence[Word]) -> str:
    said = line[0].text
    for before, word in pairwise(line):
        gap = (word.x0 - before.x1) / (word.size or 1.0)
        said += ("" if OVERLAP < gap < NO_SPACE else " ") + word.text
    return said


def _append(said: str, line: str, known: Collection[str]) -> str:
    if not said.endswith("-") or said[-2:-1] in ("", " "):
        return f"{said} {line}".lstrip()
    if _CODE_HYPHEN.search(said) and (line[0].isdigit() or line[0].isupper()):
        return said + line
    if not line[0].islower():
        return f"{said} {line}"
    whole = said.rsplit(maxsplit=1)[-1][:-1] + line.split(maxsplit=1)[0]
    if _DIGITS.search(whole) or whole.lower().strip(".,;:()") not in known:
        return said + line
    return said[:-1] + line
