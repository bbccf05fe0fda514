"""Tells a page of words from a blank, a picture, and text that is no words: pure.

Cautious on purpose: a page that is called unreadable drops out of search, so a
doubtful one stays in.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from types import MappingProxyType

from assistant.library.types import Page, PageStatus
from ingest.readers.legible import CUT, Fault, faults_of_lines, unreadable

SCARCE = 10
"""Fewer letters and digits than this under a picture are no text of a page."""
SCAN_SCARCE = 50
"""Under a picture that covers half the page, so many are a stamp or a page number."""
SCAN_COVER = 0.5
SCAN = "a scanned page without text"
DRAWING = "a picture or drawing without text"
EMPTY = "nothing on it"
DEGREES = "its degree signs may read as 0"
_OCR = "read it by OCR (faultleaf[ocr]), or ask for a copy with text"
REMEDIES: Mapping[str, str] = MappingProxyType(
    {
        SCAN: _OCR,
        DRAWING: "look at the page itself; its drawing cannot be searched",
        DEGREES: "take its temperatures from the page itself: 650C may be 65 °C",
        CUT: "fetch the document again; this copy of it ends before the page",
        EMPTY: "nothing to do; if the paper has text here, scan it again",
        Fault.MOJIBAKE: _OCR,
        Fault.SPLIT: "print the file to a new PDF, or " + _OCR,
        Fault.CIPHER: _OCR,
        Fault.REVERSED: "print the file to a new PDF, or " + _OCR,
        Fault.GLUED: "search by codes and single words; phrases may be missed",
    }
)
"""What a person can do about each reason that `judge` or `doubt` gives."""
RETRY = "print the file to a new PDF and add that, or ask the maker for another copy"
"""For a page that the reader failed on."""
_DEGREES = re.compile(r"(?<![\w.,-])-?\d{1,3} ?[oO]C\b|(?<![\w.,-])-?\d{2}0 ?C\b")


def remedy_of(reason: str) -> str:
    """Return what can be done about a page, by the reason that was given.

    Examples
    --------
    >>> remedy_of("nothing on it but running lines")
    'nothing to do; if the paper has text here, scan it again'
    """
    if "OCR" in reason:  # it was tried
        return "look at the page itself, or ask for a copy with text"
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


def doubt(text: str) -> str:
    r"""Return what is doubtful about a page that is text; nothing where nothing is.

    Said with the lines it was seen on. Nothing is changed: 650C may be 65 °C, and
    may be what is printed.

    Examples
    --------
    >>> doubt("Lamp\nStops above 650C.")
    'its degree signs may read as 0 (line 2)'
    """
    found: dict[str, list[int]] = {}
    for at, fault in sorted(faults_of_lines(text).items()):
        found.setdefault(fault.value, []).append(at + 1)
    if "°" not in text:
        for at, line in enumerate(text.split("\n"), start=1):
            if _DEGREES.search(line):
                found.setdefault(DEGREES, []).append(at)
    return "; ".join(
        f"{said} ({'line' if len(on) == 1 else 'lines'} {', '.join(map(str, on))})"
        for said, on in found.items()
    )


def remedies(pages: Iterable[Page]) -> dict[str, tuple[int, ...]]:
    """Return what can be done about pages, and which pages by their numbers.

    Blank ones need nothing; of those that are text, only what is doubtful is told.
    """
    found: dict[str, tuple[int, ...]] = {}
    for page in pages:
        if page.status is PageStatus.BLANK:
            continue
        if page.status is PageStatus.TEXT and not page.reason:
            continue
        parts = [page.reason] if "OCR" in page.reason else page.reason.split("; ")
        for way in {remedy_of(part) or RETRY: None for part in parts}:
            found[way] = (*found.get(way, ()), page.number)
    return found


def unreadable_lines(text: str) -> frozenset[int]:
    """Return the lines of a readable page that are no words all the same.

    They are no headings, and nothing is read out of them.
    """
    lost = {Fault.MOJIBAKE, Fault.SPLIT, Fault.REVERSED}
    return frozenset(at for at, fault in faults_of_lines(text).items() if fault in lost)
