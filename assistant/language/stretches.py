"""Cuts a long text into stretches, so that its length never makes reading slow."""

from __future__ import annotations

LONGEST = 500
"""Letters read at once: longer than anyone tells in one breath."""
READ_AT_MOST = 2500
"""Letters read for facts; what follows is pasted, and kept for the search only."""
_ENDS = (". ", "? ", "! ", "\n")


def stretches(text: str) -> tuple[list[str], str]:
    """Return the stretches to read, and the rest that is only kept.

    A stretch ends after a sentence where one ends in its second half, else at a
    space, else where it must.

    Examples
    --------
    >>> stretches("amber goes 6")
    (['amber goes 6'], '')
    """
    rest, unread = text[:READ_AT_MOST], text[READ_AT_MOST:].strip()
    found: list[str] = []
    while len(rest) > LONGEST:
        cut = _cut(rest)
        found.append(rest[:cut])
        rest = rest[cut:]
    return [*found, rest], unread


def _cut(text: str) -> int:
    half = LONGEST // 2
    sentence = max(text.rfind(end, half, LONGEST) for end in _ENDS)
    space = text.rfind(" ", half, LONGEST)
    place = sentence if sentence > 0 else space
    return place + 1 if place > 0 else LONGEST
