"""Workshop talk as data: what is typed, and the words the literature has for it.

The entries stand in ``talk_words/*.txt``, a file to a part of the trade: a line
``phrase|phrase = words of print``, phrases in lower case without punctuation. They
are common practice of Britain, Australia and North America, without a source. A
phrase that stands for itself is no talk, and no form of any: "main" of "mains".
"""

from __future__ import annotations

import pkgutil
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache

FILES = (
    "complaints",
    "data",
    "lamps",
    "measuring",
    "parts",
    "plain",
    "power",
    "refrigerant",
    "running",
    "spelling",
    "trouble",
    "waits",
    "work",
)
_PASSED_OVER = "the a an my me this that these those its it our your"
FILLERS = frozenset(_PASSED_OVER.split())
"""Words that may stand inside a phrase, or be left out of it."""
SHORTEST_STEM = 3
_VOWELS = frozenset("aeiouy")
_KEPT_DOUBLE = frozenset("lsfz")


@dataclass(frozen=True, slots=True)
class Lexicon:
    """Phrases of talk with the words of print for them.

    Build it with `made_of`.
    """

    exact: Mapping[str, str]
    loose: Mapping[str, str]
    """By the stems of a phrase, fillers left out; only where one meaning is left."""
    longest: int
    """Words of the longest phrase, with room for fillers."""

    def __getitem__(self, phrase: str) -> str:
        """Return the words of print for a phrase as typed; '' when it has none.

        Examples
        --------
        >>> lexicon = made_of({"kicks in": "starts"})
        >>> lexicon["kicks in"], lexicon["kicking it in"], lexicon["kicks"]
        ('starts', 'starts', '')
        """
        return self.exact.get(phrase) or self.loose.get(stems(phrase), "")


def made_of(entries: Mapping[str, str]) -> Lexicon:
    """Make a lexicon of phrases and their words of print.

    A phrase whose words of print are itself is kept from being taken for a form of
    another one.

    Examples
    --------
    >>> known = made_of({"mains": "supply", "main": "main"})
    >>> known["mains"], known["main"]
    ('supply', '')
    """
    meanings: dict[str, set[str]] = {}
    exact = {
        phrase: printed for phrase, printed in entries.items() if phrase != printed
    }
    for phrase in entries:
        meanings.setdefault(stems(phrase), set()).add(exact.get(phrase, ""))
    loose = {key: min(found) for key, found in meanings.items() if len(found) == 1}
    longest = max((len(phrase.split()) for phrase in entries), default=0)
    return Lexicon(exact, loose, longest + 1)


@cache
def lexicon() -> Lexicon:
    """Return the whole lexicon that comes with the program."""
    return made_of(dict(entries()))


def entries() -> Iterator[tuple[str, str]]:
    """Yield every phrase with its words of print, in order of the files."""
    for file in FILES:
        data = pkgutil.get_data(__package__, f"talk_words/{file}.txt") or b""
        for line in data.decode("utf-8").splitlines():
            said, equals, printed = line.partition(" = ")
            if equals and not line.startswith("#"):
                yield from ((phrase, printed) for phrase in said.split("|"))


def stems(phrase: str) -> str:
    """Return the stems of a phrase, without fillers at its inside.

    Its first and its last word always count, so that the same phrase with words
    around it is another.

    Examples
    --------
    >>> stems("popping the breakers")
    'pop breaker'
    """
    first, *rest = phrase.split() or [""]
    last = rest[-1:]
    inside = [word for word in rest[:-1] if word not in FILLERS]
    return " ".join(map(stem, (first, *inside, *last)))


@cache
def stem(word: str) -> str:
    """Return a word without its plain ending, so that its forms are alike.

    Examples
    --------
    >>> stem("tripping"), stem("tripped"), stem("wires"), stem("wiring")
    ('trip', 'trip', 'wir', 'wir')
    >>> stem("bleed"), stem("glass"), stem("string"), stem("bus")
    ('bleed', 'glass', 'string', 'bus')
    """
    if len(word) <= SHORTEST_STEM or word.endswith(("ss", "eed", "us")):
        return word
    for ending in ("ing", "ed", "es", "s"):
        bare = word.removesuffix(ending)
        if bare != word and len(bare) >= SHORTEST_STEM - 1 and _VOWELS & set(bare):
            return _undoubled(bare)
    return word.removesuffix("e")


def _undoubled(bare: str) -> str:
    if bare[-1] == bare[-2] and bare[-1] not in _KEPT_DOUBLE:
        return bare[:-1]
    return bare.removesuffix("e")
