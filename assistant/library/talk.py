"""A question as typed, said in the words of print. Pure.

Used on questions only, and in addition to the words as typed: the manuals do not
say "packs in" or "duff", so `lexicon` leads from talk to print and not back. True
synonyms, which go both ways, stand in `synonyms`.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.library.lexicon import Lexicon, lexicon

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


def in_print(text: str, known: Lexicon | None = None) -> tuple[str, tuple[str, ...]]:
    """Say a question in the words of print.

    Parameters
    ----------
    known : Lexicon, optional
        The talk that is understood; the program's own when not given.

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
    said: list[str] = []
    added: list[str] = []
    words = plain_words(text)
    at = 0
    for phrase, printed in _pieces(words, known or lexicon()):
        at += len(phrase)
        meaning = printed
        if not printed:
            meaning = _quantity(phrase[0], words[at : at + 1])
            said.extend(phrase)
        if meaning:
            said.append(meaning)
            added.append(meaning)
    return (" ".join(said) if added else ""), tuple(added)


def heard(text: str, known: Lexicon) -> tuple[str, ...]:
    """Return the phrases of talk in a text, as typed.

    Examples
    --------
    >>> heard("the caps are toast", lexicon())
    ('caps', 'toast')
    """
    pieces = _pieces(plain_words(text), known)
    return tuple(" ".join(phrase) for phrase, printed in pieces if printed)


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


def _pieces(words: list[str], known: Lexicon) -> Iterator[tuple[list[str], str]]:
    """Yield the words in pieces, the longest phrases first, with their print."""
    at = 0
    while at < len(words):
        for length in range(min(known.longest, len(words) - at), 0, -1):
            phrase = words[at : at + length]
            printed = known[" ".join(phrase)]
            if printed or length == 1:
                yield phrase, printed
                at += length
                break
