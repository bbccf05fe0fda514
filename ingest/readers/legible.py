"""Tells text that is made of words from text that only looks like it: pure.

Cautious on purpose: a doubtful page stays text.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from enum import StrEnum
from itertools import pairwise

BROKEN_SHARE = 0.15
"""Of the visible characters: replacement, private-use and unassigned ones."""
SPLIT_SHARE = 0.6
SPLIT_LEAST = 40
CIPHER_LEAST = 60
CIPHER_VOWELS = 0.25
LEAST_LINE = 4
LINE_BROKEN = 0.3
LINE_SINGLES, LINE_SPLIT = 6, 0.8
LINE_REVERSED = 2
FEW = 4
GLUED_LEAST, GLUED_SHARE = 3, 0.3
REVERSED_LEAST, REVERSED_MORE = 4, 3
_GLUED = re.compile(r"[A-Za-z]{26,}")
# Only words that no language of these manuals knows the other way round.
_WHOLE = ("the", "and", "with", "that", "this", "from", "when", "nicht", "und")
_FORWARDS = re.compile(rf"\b(?:{'|'.join(_WHOLE)})\b", re.IGNORECASE)
_REVERSED = re.compile(
    rf"\b(?:{'|'.join(word[::-1] for word in _WHOLE)})\b", re.IGNORECASE
)
_GLYPH_NAMES = re.compile(r"(?:/[Gg]\d{1,5}|\(cid:\d+\))")
_WORDS = re.compile(r"[^\W\d_]+")
_LONG_LATIN = re.compile(r"\b[a-zA-Z]?[a-z]{3,}\b")
_VOWELS = frozenset("aeiouyäöüàâéèêëîïôùûáíóúåæøœ")
_FUNCTION_WORDS = re.compile(
    r"\b(?:the|and|of|to|in|is|for|with|on|or|if"  # English
    r"|der|die|das|und|ist|nicht|mit|von|auf"  # German
    r"|de|het|een|en|van|op|te|voor"  # Dutch
    r"|le|la|les|des|et|du|est|pour|dans"  # French
    r"|el|los|las|del|que|por|con|para"  # Spanish
    r"|il|di|che|per|non|una"  # Italian
    r"|nie|na|do|jest|się)\b",  # Polish
    re.IGNORECASE,
)

CUT = "it lies behind the place where the file is cut off"


class Fault(StrEnum):
    """What is wrong with a text; its value says so after "the text of ..."."""

    MOJIBAKE = "its font gives no readable characters"
    SPLIT = "its letters stand apart"
    CIPHER = "its font gives the wrong letters"
    GLUED = "its words run together"
    REVERSED = "its letters run backwards"


LOSING = (Fault.MOJIBAKE, Fault.SPLIT, Fault.CIPHER, Fault.REVERSED)
"""Nothing is found in a page of these; glued words still tell their codes."""


def unreadable(text: str) -> str:
    """Return why a text is not made of words, or nothing when it may be."""
    fault = fault_of(text)
    return fault.value if fault in LOSING else ""


def fault_of(text: str) -> Fault | None:
    """Return what is wrong with the text of a page, the worst first."""
    tests = (
        (Fault.MOJIBAKE, _broken),
        (Fault.SPLIT, _split),
        (Fault.CIPHER, _cipher),
        (Fault.REVERSED, _reversed),
        (Fault.GLUED, _glued),
    )
    return next((fault for fault, test in tests if test(text)), None)


def faults_of_lines(text: str) -> Mapping[int, Fault]:
    """Return the lines of a page that are no words, by index.

    Fewer things can be told of a line than of a page: a cipher cannot.
    """
    found: dict[int, Fault] = {}
    for at, line in enumerate(text.split("\n")):
        fault = _fault_of_line(line)
        if fault is not None:
            found[at] = fault
    return found


def _fault_of_line(line: str) -> Fault | None:
    if len(line.strip()) >= LEAST_LINE and _broken(line, LINE_BROKEN):
        return Fault.MOJIBAKE
    tokens = line.split()
    singles = [token for token in tokens if len(token) == 1 and token.isalpha()]
    steps = {ord(b) - ord(a) for a, b in pairwise(singles)}
    lower = sum(map(str.islower, singles))
    apart = len(singles) >= LINE_SINGLES and len(singles) > LINE_SPLIT * len(tokens)
    if apart and lower >= len(singles) / 2 and steps != {1}:
        return Fault.SPLIT
    if _backwards(line) >= LINE_REVERSED and not _FORWARDS.search(line):
        return Fault.REVERSED
    return Fault.GLUED if len(tokens) <= FEW and _long(line) else None


def _long(text: str) -> list[str]:
    """Return the runs of letters that no word is as long as."""
    return [word for word in _GLUED.findall(text) if not word.isupper()]


def _glued(text: str) -> bool:
    letters = sum(map(str.isalpha, text))
    long = _long(text)
    return len(long) >= GLUED_LEAST and sum(map(len, long)) > GLUED_SHARE * letters


def _backwards(text: str) -> int:
    return len(_REVERSED.findall(text))


def _reversed(text: str) -> bool:
    back = _backwards(text)
    return back >= REVERSED_LEAST and back > REVERSED_MORE * len(
        _FORWARDS.findall(text)
    )


def _broken(text: str, share: float = BROKEN_SHARE) -> bool:
    if _sound(text):
        return False
    visible = [char for char in text if not char.isspace()]
    bad = sum(char == "\ufffd" or not char.isprintable() for char in visible)
    named = sum(map(len, _GLYPH_NAMES.findall(text)))
    return bad + named > share * len(visible)


def _sound(text: str) -> bool:
    """Whether there is nothing to count: most pages."""
    shown = text.replace("\n", "").replace("\t", "")
    return (
        "\ufffd" not in text
        and shown.isprintable()
        and "(cid:" not in text
        and (_GLYPH_NAMES.search(text) is None)
    )


def _split(text: str) -> bool:
    """Single lower-case letters in runs; tables of A, B, C are upper case."""
    words = _WORDS.findall(text)
    singles = sum(len(word) == 1 and word.islower() for word in words)
    return len(words) >= SPLIT_LEAST and singles > SPLIT_SHARE * len(words)


def _cipher(text: str) -> bool:
    """Latin words without one function word and with hardly a vowel."""
    words = _LONG_LATIN.findall(text)
    if len(words) < CIPHER_LEAST or _FUNCTION_WORDS.search(text):
        return False
    letters = "".join(words).lower()
    vowels = sum(char in _VOWELS for char in letters)
    return vowels < CIPHER_VOWELS * len(letters)
