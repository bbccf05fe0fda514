"""Sentences of a page, without its tables, each with its words as printed. Pure."""

from __future__ import annotations

import re
from collections.abc import Sequence

from assistant.library.types import TableRow
from ingest.drafts.model import PageView

_END = re.compile(r"(?<=[.;!?])\s+(?=[A-Z(\"'])")
_BULLET = re.compile(r"^(?:[-•*]|\(?\d{1,2}[).])\s+")
_SHORTEST, _LONGEST = 12, 400
FULL_LINE = 60
"""Characters from which a line was probably broken by the page's width."""


def sentences(page: PageView, rows: Sequence[TableRow]) -> list[str]:
    """Return the sentences of a page outside its tables, white space folded.

    Every one is a run of the page's own words: it can be quoted as it is.
    """
    found: list[str] = []
    for piece in _pieces(page.text, [r for r in rows if r.page == page.number]):
        for block in _blocks(piece):
            for sentence in _END.split(block):
                folded = _BULLET.sub("", " ".join(sentence.split()))
                if _SHORTEST <= len(folded) <= _LONGEST:
                    found.append(folded)
    return list(dict.fromkeys(found))


def _pieces(text: str, rows: Sequence[TableRow]) -> list[str]:
    """Return the page's text between its tables."""
    pieces, at = [], 0
    for row in sorted(rows, key=lambda row: row.start):
        if row.start >= at and row.end > row.start:
            pieces.append(text[at : row.start])
            at = row.end
    return [*pieces, text[at:]]


def _blocks(text: str) -> list[str]:
    """Return lines drawn together where the page's width broke a sentence."""
    blocks: list[str] = []
    open_line = False
    for line in text.splitlines():
        stripped = line.strip()
        if not stripped:
            open_line = False
            continue
        starts = _BULLET.match(stripped) is not None
        if open_line and not starts:
            blocks[-1] = f"{blocks[-1]} {stripped}"
        else:
            blocks.append(stripped)
        ended = stripped.endswith((".", ":", "!", "?"))
        open_line = not ended and (open_line or len(stripped) >= FULL_LINE)
        open_line = open_line or len(stripped) >= FULL_LINE
    return blocks
