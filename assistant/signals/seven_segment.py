"""Characters that look alike on a seven-segment display."""

from __future__ import annotations

import re
from itertools import product

_SHAPES = {
    "0": "0",
    "O": "0o",
    "D": "0d",
    "Q": "09",
    "1": "1",
    "I": "1",
    "L": "1L",
    "5": "5",
    "S": "5",
    "6": "6",
    "B": "68",
    "G": "69",
    "8": "8",
    "9": "9",
    "U": "U",
    "V": "U",
    "2": "2",
    "Z": "2",
    "4": "4",
    "Y": "4Y",
    "H": "H",
    "X": "H",
    "K": "H",
}
"""Character -> shapes it is drawn as or read as; others have a shape of their own.
A capital stands for its small letter too: `b` is drawn like 6, `B` like 8."""

_DROPPED = re.compile(r"[\s\-\u2010-\u2015._/]+")


def plain_code(code: str) -> str:
    """Return a code folded for comparison: no spaces or hyphens, one case.

    Examples
    --------
    >>> plain_code("p-6")
    'P6'
    """
    return _DROPPED.sub("", code).upper()


def shapes(code: str) -> frozenset[str]:
    """Return every way a code can be drawn; codes that look alike share one.

    Examples
    --------
    >>> sorted(shapes("E5")), shapes("E0") & shapes("Eo")
    (['E5'], frozenset({'E0'}))
    """
    drawn = [_SHAPES.get(sign, sign) for sign in plain_code(code)]
    return frozenset("".join(chosen) for chosen in product(*drawn))


def look_alike(one: str, other: str) -> bool:
    """Return whether two codes can be drawn the same.

    Examples
    --------
    >>> look_alike("E0", "Eo"), look_alike("b6", "66"), look_alike("E4", "E6")
    (True, True, False)
    """
    mine, theirs = plain_code(one), plain_code(other)
    return len(mine) == len(theirs) and all(
        set(_SHAPES.get(a, a)) & set(_SHAPES.get(b, b))
        for a, b in zip(mine, theirs, strict=True)
    )
