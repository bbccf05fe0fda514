"""Tells a page of words from a blank, a picture, and text that is no words: pure.

Cautious on purpose: a page that is called unreadable drops out of search, so a
doubtful one stays in.
"""

from __future__ import annotations

from assistant.library.types import PageStatus
from ingest.readers.legible import unreadable

SCARCE = 10
"""Fewer letters and digits than this under a picture are no text of a page."""


def judge(text: str, running: frozenset[int], *, drawn: bool) -> tuple[PageStatus, str]:
    """Return how well a page was read, and why it is not text.

    Parameters
    ----------
    text : str
        The page as stored.
    running : frozenset of int
        Indices of its running lines; they are no text of their own.
    drawn : bool
        Pictures or drawings stand on it.
    """
    lines = text.split("\n")
    own = "\n".join(line for at, line in enumerate(lines) if at not in running)
    if sum(map(str.isalnum, own)) < SCARCE and drawn:
        return PageStatus.PICTURE, "a picture or drawing without text"
    if not own.strip():
        return PageStatus.BLANK, "nothing on it" + (
            " but running lines" if text.strip() else ""
        )
    reason = unreadable(own)
    return (PageStatus.UNREADABLE, reason) if reason else (PageStatus.TEXT, "")
