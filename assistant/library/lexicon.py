"""Workshop talk as data: what is typed, and the words the literature has for it.

The entries stand in ``talk_words/*.txt``, a file to a part of the trade: a line
``phrase|phrase = words of print``, phrases in lower case without punctuation. They
are common practice of Britain, Australia and North America, without a source. A
phrase that stands for itself is no talk, and no form of any: "main" of "mains".
"""

from __future__ import annotations

import pkgutil
from collections.abc import Iterable, Iterator, Mapping
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
SHORTEST_START = 2
"""Letters of a word that its stem keeps at least."""
_VOWELS = frozenset("aeiouy")
_KEPT_DOUBLE = frozenset("lsfz")


class Lexicon:
    """Phrases of talk with the words of print for them.

    Forms of a phrase are known by its stems. Those are worked out only for phrases
    that begin as a phrase asked for does: a question has few words, and the lexicon
    is made at every start of the program.

    Parameters
    ----------
    entries : mapping of str to str
        Phrase to words of print. A phrase whose words of print are itself is kept
        from being taken for a form of another one.
    """

    def __init__(self, entries: Mapping[str, str]) -> None:
        self.entries = entries
        longest = max((phrase.count(" ") for phrase in entries), default=-1) + 1
        self.longest = longest + 1
        """Words of the longest phrase, with room for fillers."""
        self._begun: dict[str, list[str]] = {}
        for phrase in entries:
            self._begun.setdefault(_start(phrase), []).append(phrase)
        self._forms: dict[str, Mapping[str, str]] = {}

    def __getitem__(self, phrase: str) -> str:
        """Return the words of print for a phrase as typed; '' when it has none.

        Examples
        --------
        >>> lexicon = Lexicon({"kicks in": "starts", "mains": "supply", "main": "main"})
        >>> lexicon["kicks in"], lexicon["kicking it in"], lexicon["kicks"]
        ('starts', 'starts', '')
        >>> lexicon["mains"], lexicon["main"]
        ('supply', '')
        """
        printed = self.entries.get(phrase, "")
        if printed and printed != phrase:
            return printed
        start = _start(phrase)
        if start not in self._forms:
            self._forms[start] = self._forms_of(self._begun.get(start, ()))
        return self._forms[start].get(stems(phrase), "")

    def _forms_of(self, phrases: Iterable[str]) -> Mapping[str, str]:
        """Return print by stems, fillers left out, where one meaning is left."""
        meanings: dict[str, set[str]] = {}
        for phrase in phrases:
            printed = self.entries[phrase]
            meaning = "" if printed == phrase else printed
            meanings.setdefault(stems(phrase), set()).add(meaning)
        return {key: min(found) for key, found in meanings.items() if len(found) == 1}


def _start(phrase: str) -> str:
    """Return the letters that all forms of a phrase have in common: see `stem`."""
    return phrase[:SHORTEST_START].partition(" ")[0]


@cache
def lexicon() -> Lexicon:
    """Return the whole lexicon that comes with the program."""
    return Lexicon(dict(entries()))


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
        if bare != word and len(bare) >= SHORTEST_START and _VOWELS & set(bare):
            return _undoubled(bare)
    return word.removesuffix("e")


def _undoubled(bare: str) -> str:
    if len(bare) == SHORTEST_START:
        return bare
    if bare[-1] == bare[-2] and bare[-1] not in _KEPT_DOUBLE:
        return bare[:-1]
    return bare.removesuffix("e")
