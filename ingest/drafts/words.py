"""Reads one cell or one number word of a printed table. Pure."""

from __future__ import annotations

import re

_SPELLED = (
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
)
NUMBER_WORDS = {word: number for number, word in enumerate(_SPELLED, 1)}
_MOST = 99
_COUNTED = r"(?:flash(?:es)?|blinks?|winks?|times?|pulses?|x|×)"
_DIGITS = re.compile(rf"(\d{{1,3}})\s*{_COUNTED}?", re.IGNORECASE)
_WORD = re.compile(rf"({'|'.join(NUMBER_WORDS)})\s*{_COUNTED}?", re.IGNORECASE)
_BOTH = re.compile(
    rf"({'|'.join(NUMBER_WORDS)}|\d{{1,3}})\s*\((\d{{1,3}}|{'|'.join(NUMBER_WORDS)})\)"
    rf"\s*{_COUNTED}?",
    re.IGNORECASE,
)
_FOOTNOTE = re.compile(r"(\d{1,2})\s*([*†‡]+)")
_NONE = frozenset(("", "-", "–", "—", "?", "�", "n/a", "..."))
DURATION = re.compile(
    r"(?<![\w.])(\d+(?:\.\d+)?)\s*"
    r"(seconds?|secs?|s|minutes?|mins?|min\.|hours?|hrs?|h|days?)(?![\w/])",
    re.IGNORECASE,
)
"""A number and a unit of time."""
REFERENCE = re.compile(r"\b(?:page|section|see|table|chapter|fig|figure)\b", re.I)


def count_of(cell: str) -> tuple[int | None, str]:
    """Return the count that a cell says and, where it says none, why not.

    Examples
    --------
    >>> count_of("4 flashes"), count_of("seven")
    ((4, ''), (7, ''))
    >>> count_of("eight (5)")
    (None, 'words and digits disagree: `eight (5)`')
    >>> count_of("")
    (None, 'the count is not on the page')
    """
    text = cell.strip()
    if text.casefold() in _NONE:
        return None, "the count is not on the page"
    both = _BOTH.fullmatch(text)
    if both:
        first, second = _number(both[1]), _number(both[2])
        if first == second:
            return _in_range(first, text)
        return None, f"words and digits disagree: `{text}`"
    marked = _FOOTNOTE.fullmatch(text)
    if marked:
        return _in_range(int(marked[1]), text)
    found = _DIGITS.fullmatch(text) or _WORD.fullmatch(text)
    if found is None:
        return None, f"`{text}` is no single count"
    return _in_range(_number(found[1]), text)


def _number(word: str) -> int:
    return int(word) if word.isdecimal() else NUMBER_WORDS[word.casefold()]


def _in_range(number: int, text: str) -> tuple[int | None, str]:
    if 1 <= number <= _MOST:
        return number, ""
    return None, f"`{text}` is no count of flashes"


def durations(text: str) -> list[str]:
    """Return the durations in a text as the text writes them.

    Examples
    --------
    >>> durations("6 in 60 minutes, then 3 min.")
    ['60 minutes', '3 min']
    """
    return [f"{found[1]} {found[2].rstrip('.')}" for found in DURATION.finditer(text)]


def slug(text: str, words: int = 4) -> str:
    """Return the first words of a text as part of an id.

    Examples
    --------
    >>> slug("Discharge sensor TH3 open or short")
    'discharge-sensor-th3-open'
    """
    found = re.findall(r"[a-z0-9]+", text.casefold())
    return "-".join(found[:words])[:40].strip("-")


def empty(cell: str) -> bool:
    """Return whether a cell says nothing, or only that it says nothing."""
    return cell.strip().casefold() in _NONE
