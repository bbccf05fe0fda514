"""Text to keyword form, the same way for what is stored and for what is asked.

Pure, and total: any text gives a folded text, and any folded text gives an FTS5
expression that SQLite accepts.
"""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable, Mapping, Sequence
from functools import cache

from assistant.library.numbers import digits
from assistant.library.synonyms import STOPWORDS, SYNONYMS, UNITS

MAX_TERMS = 48
"""Distinct terms of one query; more add time and no evidence."""

SHORTEST_INFLECTED = 3

_WORD = re.compile(r"[^\W_]+")
_THOUSANDS = re.compile(r"(?<=\d),(?=\d{3}(?!\d))")
_DECIMAL = re.compile(r"(?<=\d)\.(?=\d)")
_APOSTROPHE = re.compile(r"(?<=[^\W\d_])['\u2019](?=[^\W\d_])")
_QUANTITY = re.compile(
    r"(?<![^\W_])(\d+(?:d\d+)?)"
    r"(v|vac|vdc|a|k|kohm|kω|ω|ohm|mω|hz|s|sec|secs|min|mins|h|hr|hrs|c|f|w|kw|psi"
    r"|kpa|mpa|bar|mm|cm|m|meg|x|st|nd|rd|th)(?![^\W_])"
)


def fold(text: str) -> str:
    """Return the keyword form of a text: words in lower case, one space apart.

    NFKC; number words as digits; a decimal point kept inside its word (``4.7``
    becomes ``4d7``); a unit split from its number; each trade synonym as its
    headword.

    Examples
    --------
    >>> fold("LED blinks six times")
    'lamp flash 6 time'
    >>> fold("46k thermistor on the P.C. Board")
    '46 kohm sensor on the p c board'
    """
    plain = unicodedata.normalize("NFKC", text).casefold()
    plain = unicodedata.normalize("NFKC", plain)
    plain = _APOSTROPHE.sub("", _THOUSANDS.sub("", plain))
    plain = _DECIMAL.sub("d", plain.replace("°", " "))
    plain = _QUANTITY.sub(_spaced, plain)
    return " ".join(_headwords(digits(_WORD.findall(plain))))


def terms(query: str) -> tuple[str, ...]:
    """Return the distinct words of a query that carry something, in order.

    Examples
    --------
    >>> terms("How long does the compressor wait?")
    ('long', 'compressor', 'delay')
    """
    found = dict.fromkeys(
        word
        for word in fold(query).split()
        if word not in STOPWORDS and (len(word) > 1 or word.isdigit())
    )
    return tuple(found)[:MAX_TERMS]


def expression(words: Iterable[str]) -> str:
    """Return an FTS5 expression that any of the words satisfies.

    Every word is quoted; `words` come from `terms`, so none holds a quote.

    Examples
    --------
    >>> expression(["p", "6"])
    '"p" OR "6"'
    """
    return " OR ".join(f'"{word}"' for word in words)


def _spaced(quantity: re.Match[str]) -> str:
    number, unit = quantity.groups()
    return f"{number} {UNITS.get(unit, unit)}"


def _headwords(words: Sequence[str]) -> list[str]:
    table, longest = _table()
    out: list[str] = []
    at = 0
    while at < len(words):
        for length in range(min(longest, len(words) - at), 0, -1):
            head = table.get(tuple(words[at : at + length]))
            if head is not None:
                out.append(head)
                at += length
                break
        else:
            out.append(words[at])
            at += 1
    return out


@cache
def _table() -> tuple[Mapping[tuple[str, ...], str], int]:
    """Every form of every synonym, as its words, with its headword."""
    table: dict[tuple[str, ...], str] = {}
    for head, others in SYNONYMS.items():
        for other in (head, *others):
            words = tuple(digits(other.split()))
            for form in _forms(words[-1]):
                table.setdefault((*words[:-1], form), head)
    for head in SYNONYMS:
        table[(head,)] = head
    return table, max(map(len, table))


def _forms(word: str) -> tuple[str, ...]:
    """Return the word and its plain inflections."""
    if len(word) < SHORTEST_INFLECTED or not word.isalpha():
        return (word,)
    stem = word[:-1] if word.endswith("e") else word
    doubled = stem + stem[-1]
    made = [word, word + "s", stem + "es", stem + "ed", stem + "ing"]
    made += [doubled + "ed", doubled + "ing"]
    if word.endswith("y"):
        made += [word[:-1] + "ies", word[:-1] + "ied"]
    return tuple(made)
