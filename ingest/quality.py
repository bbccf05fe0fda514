"""Tells a page of words from a blank, a picture, and text that is no words: pure.

Cautious on purpose: a page that is called unreadable drops out of search, so a
doubtful one stays in.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from assistant.library.types import PageStatus
from ingest.readers.legible import Fault, faults_of_lines, unreadable

SCARCE = 10
"""Fewer letters and digits than this under a picture are no text of a page."""
SCAN_SCARCE = 50
"""Under a picture that covers half the page, so many are a stamp or a page number."""
SCAN_COVER = 0.5
SCAN = "a scanned page without text"
DRAWING = "a picture or drawing without text"
EMPTY = "nothing on it"
_OCR = "read it by OCR (faultleaf[ocr]), or ask for a copy with text"
REMEDIES: Mapping[str, str] = MappingProxyType(
    {
        SCAN: _OCR,
        DRAWING: "look at the page itself; its drawing cannot be searched",
        EMPTY: "nothing to do; if the paper has text here, scan it again",
        Fault.MOJIBAKE: _OCR,
        Fault.SPLIT: "print the file to a new PDF, or " + _OCR,
        Fault.CIPHER: _OCR,
        Fault.REVERSED: "print the file to a new PDF, or " + _OCR,
        Fault.GLUED: "search by codes and single words; phrases may be missed",
    }
)
"""What a person can do about each reason that `judge` gives."""


def remedy_of(reason: str) -> str:
    """Return what can be done about a page, by the reason that was given.

    Examples
    --------
    >>> remedy_of("nothing on it but running lines")
    'nothing to do; if the paper has text here, scan it again'
    """
    return next((way for said, way in REMEDIES.items() if reason.startswith(said)), "")


def judge(
    text: str, running: frozenset[int], *, drawn: bool, cover: float = 0.0
) -> tuple[PageStatus, str]:
    """Return how well a page was read, and why it is not text.

    Parameters
    ----------
    text : str
        The page as stored.
    running : frozenset of int
        Indices of its running lines; they are no text of their own.
    drawn : bool
        Pictures or drawings stand on it.
    cover : float, optional
        The share of it that pictures cover.
    """
    lines = text.split("\n")
    own = "\n".join(line for at, line in enumerate(lines) if at not in running)
    written = sum(map(str.isalnum, own))
    if written < SCAN_SCARCE and cover >= SCAN_COVER:
        return PageStatus.PICTURE, SCAN
    if written < SCARCE and drawn:
        return PageStatus.PICTURE, DRAWING
    if not own.strip():
        return PageStatus.BLANK, EMPTY + (" but running lines" if text.strip() else "")
    reason = unreadable(own)
    return (PageStatus.UNREADABLE, reason) if reason else (PageStatus.TEXT, "")


def unreadable_lines(text: str) -> frozenset[int]:
    """Return the lines of a readable page that are no words all the same.

    They are no headings, and nothing is read out of them.
    """
    lost = {Fault.MOJIBAKE, Fault.SPLIT, Fault.REVERSED}
    return frozenset(at for at, fault in faults_of_lines(text).items() if fault in lost)
