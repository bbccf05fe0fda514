"""Tells text that is made of words from text that only looks like it: pure.

Cautious on purpose: a doubtful page stays text.
"""

from __future__ import annotations

import re

BROKEN_SHARE = 0.15
"""Of the visible characters: replacement, private-use and unassigned ones."""
SPLIT_SHARE = 0.6
SPLIT_LEAST = 40
CIPHER_LEAST = 60
CIPHER_VOWELS = 0.25
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


def unreadable(text: str) -> str:
    """Return why a text is not made of words, or nothing when it may be."""
    if _broken(text):
        return "its font gives no readable characters"
    if _split(text):
        return "its letters stand apart"
    if _cipher(text):
        return "its font gives the wrong letters"
    return ""


def _broken(text: str) -> bool:
    visible = [char for char in text if not char.isspace()]
    bad = sum(char == "\ufffd" or not char.isprintable() for char in visible)
    named = sum(map(len, _GLYPH_NAMES.findall(text)))
    return bad + named > BROKEN_SHARE * len(visible)


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
