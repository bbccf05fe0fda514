"""A question as typed, said in the words of print. Pure.

Used on questions only, and in addition to the words as typed: the manuals do not
say "packs in" or "duff", so `lexicon` leads from talk to print and not back. True
synonyms, which go both ways, stand in `synonyms`.
"""

from __future__ import annotations

import re

from assistant.library.lexicon import lexicon

_WORD = re.compile(r"[^\W_]+")
_APOSTROPHE = re.compile(r"(?<=[^\W\d_])['\u2019](?=[^\W\d_])")


def plain_words(text: str) -> list[str]:
    """Return the words of a text in lower case; "don't" is one word, "dont".

    Examples
    --------
    >>> plain_words("What's P-6?")
    ['whats', 'p', '6']
    """
    return _WORD.findall(_APOSTROPHE.sub("", text.casefold()))


def in_print(text: str) -> tuple[str, tuple[str, ...]]:
    """Say a question in the words of print.

    Returns
    -------
    said : str
        The whole question, its talk replaced; '' when it holds none.
    added : tuple of str
        What took the place of each piece of talk.

    Examples
    --------
    >>> in_print("caps still hot?")
    ('capacitors stays charged live', ('capacitors', 'stays charged live'))
    >>> in_print("308 on it")
    ('308 DC bus voltage on it', ('DC bus voltage',))
    """
    words = plain_words(text)
    said: list[str] = []
    added: list[str] = []
    at = 0
    while at < len(words):
        length, printed = _longest(words, at)
        if not printed:
            said.append(words[at])
            printed = _quantity(words[at], words[at + 1 : at + 2])
        if printed:
            said.append(printed)
            added.append(printed)
        at += length
    return (" ".join(said) if added else ""), tuple(added)


_READINGS = (
    (range(175, 266), "supply voltage V AC"),
    (range(275, 431), "DC bus voltage"),
)
"""What a bare number of volts is on a unit with a 230 V supply: the supply itself,
or what its rectifier makes of it. Common practice, no source."""
_OTHER_UNITS = (
    "ohm ohms kohm k meg psi bar kpa a amps hz rpm minutes min seconds sec g gram "
    "grams kg m metre metres mm c f degrees deg hours days"
)
_NOT_VOLTS = frozenset(_OTHER_UNITS.split())


def _quantity(word: str, following: list[str]) -> str:
    """Return what a reading is of, by its size and unit; '' when it tells nothing."""
    if re.fullmatch(r"\d+k", word) or (word.isdecimal() and following == ["k"]):
        return "sensor resistance kohm"
    if word.isdecimal() and following in (["meg"], ["megs"], ["megohm"]):
        return "to ground Mohm"
    number = re.fullmatch(r"(\d{3})(?:v|vac|vdc)?", word)
    if number is None or set(following) & _NOT_VOLTS:
        return ""
    size = int(number.group(1))
    return next((meaning for sizes, meaning in _READINGS if size in sizes), "")


def _longest(words: list[str], at: int) -> tuple[int, str]:
    known = lexicon()
    for length in range(min(known.longest, len(words) - at), 0, -1):
        printed = known[" ".join(words[at : at + length])]
        if printed:
            return length, printed
    return 1, ""
