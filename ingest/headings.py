"""Finds the headings on the pages of a document: pure.

An outline and the height of the letters decide where the file has them; plain
text is judged by its numbers, capitals and underlines.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from ingest.cleaning import cells, repair
from ingest.readers.base import Prominent

LONGEST = 95
_NUMBERED = re.compile(r"^(?:\d{1,2}(?:\.\d{1,2})+\.?|[A-Z]\.\d{1,2})\s+\S*[^\W\d_]{3}")
_CHAPTER = re.compile(r"^(?:\d{1,2}\.?|[A-Z]\.|Chapter \d+|Section \d+)\s+[A-Z]\w{2}")
_MARKDOWN = re.compile(r"^#{1,6}\s+(.+?)\s*#*$")
_UNDERLINE = re.compile(r"^(=|-|~){4,}$")
_LEADER = re.compile(r"\.{4}|(?:\. ){3}|_{4}|-{4}")
_BULLET = re.compile(r"^[•●○■▪◦\-–*✓►▶]")
_NUMBER_CELL = re.compile(r"^(?:\d{1,2}(?:\.\d{1,2})*\.?|[A-Z](?:\.\d{1,2})*\.?)$")
_LETTERS = re.compile(r"[^\W\d_]{3}")
_SIGNALS = frozenset(
    ("warning", "caution", "danger", "note", "notice", "important", "attention")
)
CAPITALS = 4


@dataclass(frozen=True, slots=True)
class Look:
    """What the reader said of how one page looks."""

    prominent: tuple[Prominent, ...] = ()
    outline: tuple[str, ...] = ()
    """Bookmarks that lead to this page."""


def headings(
    page: str, running: frozenset[int], look: Look, *, styled: bool
) -> Mapping[int, str]:
    """Return the heading of every line that is one, by line index.

    Parameters
    ----------
    page : str
        The stored text.
    running : frozenset of int
        Lines that are never headings.
    look : Look
        Prominent lines and bookmarks of this page.
    styled : bool
        The document tells heights and weights, so letters alone do not count.
    """
    lines = page.split("\n")
    prominent = {_plain(line.text) for line in look.prominent}
    outline = {_plain(title) for title in look.outline}
    found: dict[int, str] = {}
    for at, line in enumerate(lines):
        if at in running or not could_be(line):
            continue
        plain = _plain(line)
        set_apart = plain in prominent or plain in outline or _ends_as(plain, outline)
        if set_apart or (not styled and _written_as_heading(lines, at)):
            found[at] = _shown(line)
    return found


def could_be(line: str) -> bool:
    """Whether a line has the shape of a heading: short, worded, no sentence."""
    text = line.strip()
    parts = cells(text)
    worded = bool(_LETTERS.search(text)) and len(text) <= LONGEST
    one = len(parts) == 1 or (
        len(parts) == 1 + 1 and bool(_NUMBER_CELL.match(parts[0]))
    )
    return (
        worded
        and one
        and not text.endswith((".", ",", ";"))
        and not _LEADER.search(text)
        and not _BULLET.match(text)
        and not is_signal(text)
    )


def is_signal(line: str) -> bool:
    """Whether a line is only the signal word over a caution.

    Examples
    --------
    >>> is_signal("WARNING:")
    True
    """
    return line.strip(" :!").lower() in _SIGNALS


def _written_as_heading(lines: Sequence[str], at: int) -> bool:
    """Whether a line of plain text says by its letters that it is a heading."""
    text = lines[at].strip()
    below = lines[at + 1].strip() if at + 1 < len(lines) else ""
    if _MARKDOWN.match(text) or (_UNDERLINE.match(below) and len(text) > 1):
        return True
    if _NUMBERED.match(text) and not text.endswith(":"):
        return True
    if _stands_over(lines, at):
        return True
    letters = [char for char in text if char.isalpha()]
    if len(letters) >= CAPITALS and all(map(str.isupper, letters)):
        return " " in text or _alone(lines, at)
    return bool(_CHAPTER.match(text)) and _alone(lines, at)


def _alone(lines: Sequence[str], at: int) -> bool:
    above = lines[at - 1].strip() if at else ""
    below = lines[at + 1].strip() if at + 1 < len(lines) else ""
    return not above and not below


def _stands_over(lines: Sequence[str], at: int) -> bool:
    """Whether a line starts a paragraph at the edge and the next is indented."""
    below = lines[at + 1] if at + 1 < len(lines) else ""
    return (
        not (at and lines[at - 1].strip())
        and not lines[at][0].isspace()
        and bool(below.strip())
        and below[0].isspace()
    )


def _ends_as(plain: str, outline: set[str]) -> bool:
    """Whether a line is a bookmark but for the number that only one of them has."""
    bare = _without_number(plain)
    return bool(bare) and any(bare == _without_number(title) for title in outline)


def _without_number(plain: str) -> str:
    return re.sub(r"^[\d.]+\s+", "", plain)


def _plain(text: str) -> str:
    return " ".join(repair(text).lower().split())


def _shown(line: str) -> str:
    text = " ".join(line.split())
    markdown = _MARKDOWN.match(text)
    return markdown[1] if markdown else text
