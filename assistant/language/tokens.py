"""A text as folded words, each with the span it came from.

Every matcher reads `Tokens.folded`: lower case, contractions opened, short forms
and synonyms as one word, number words as digits, units apart from numbers,
punctuation as words of their own. A match there leads back to the exact words.
"""

from __future__ import annotations

import re
import unicodedata
from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

from assistant.language.lexicon.numbers import LONGEST_NUMBER, SHORT_ORDINALS
from assistant.language.lexicon.spelling import UNIT_SUFFIXES, WORDS
from assistant.language.mending import mended
from assistant.language.numbers import digits
from assistant.language.pieces import Piece

MASK = "~"
"""Stands for letters that a matcher has taken."""
_RAW = re.compile(r"[^\W_]+(?:['’.,:/\-‐–][^\W_]+)*|[^\w\s]|\n")
_TIME = re.compile(r"([0-9]{1,2}[:.][0-5][0-9])(am|pm)|([0-9]{1,2}:[0-5][0-9])")
_THOUSANDS = re.compile(r"([0-9]{1,3}(?:,[0-9]{3})+(?:\.[0-9]+)?)(\D*)")
_DECIMAL = re.compile(r"([0-9]+(?:[.,][0-9]+)?)([^\W0-9_.,]*)")
_CODE = re.compile(r"[a-z]{1,4}-[0-9][a-z0-9\-]*|[a-z0-9]+(?:-[a-z0-9]+)+")
_PART = re.compile(r"[^\W_]+|[.,:/\-‐–]")
_APOSTROPHES = str.maketrans("", "", "'’")
_KEPT = {
    ",": ",", ";": ",", "(": ",", ")": ",", "—": ",", "–": ",", "-": ",",
    ".": ".", "!": "!", "?": "?", "\n": ".", ":": ",", "…": ".",
    "&": "and", "=": "is", "+": "+", "/": "/", "%": "%", "~": "about",
    "\u03a9": "ohm", "\u2126": "ohm",
}  # fmt: skip
"""Single signs that mean something; all others are dropped."""


@dataclass(frozen=True, slots=True)
class Tokens:
    """A text, its folded form and the way back.

    Attributes
    ----------
    source : str
        As it was written.
    folded : str
        The pieces joined by one space; taken letters are `MASK`.
    pieces : tuple of Piece
        Folded words with spans of `source`.
    offsets : tuple of int
        Where each piece starts in `folded`.
    """

    source: str
    folded: str
    pieces: tuple[Piece, ...]
    offsets: tuple[int, ...]

    def span(self, start: int, end: int) -> tuple[int, int]:
        """Return the span of `source` behind a span of `folded`."""
        first, last = self._index(start), self._index(max(start, end - 1))
        return self.pieces[first].start, self.pieces[last].end

    def words(self, start: int, end: int) -> str:
        """Return the exact words behind a span of `folded`."""
        begin, stop = self.span(start, end)
        return self.source[begin:stop]

    def without(self, spans: Iterable[tuple[int, int]]) -> Tokens:
        """Return the same tokens with the letters in `spans` of `folded` masked."""
        letters = list(self.folded)
        for start, end in spans:
            for at in range(start, end):
                if letters[at] != " ":
                    letters[at] = MASK
        return replace(self, folded="".join(letters))

    def clause(self, at: int) -> tuple[int, int]:
        """Return the bounds in `folded` of the clause around a place."""
        return _around(_CLAUSE_END, self.folded, at)

    def sentence(self, at: int) -> tuple[int, int]:
        """Return the bounds in `folded` of the sentence around a place."""
        return _around(_SENTENCE_END, self.folded, at)

    def untaken(self) -> str:
        """Return the words of `source` that no mask covers, without punctuation."""
        kept: list[str] = []
        last = -1
        for piece, at in zip(self.pieces, self.offsets, strict=True):
            letter = self.folded[at]
            if letter == MASK or not (letter.isalnum() or letter == "-"):
                continue
            if piece.start > last:
                kept.append(self.source[piece.start : piece.end])
                last = piece.start
        return " ".join(kept)

    def _index(self, at: int) -> int:
        return max(0, bisect_right(self.offsets, at) - 1)


_CLAUSE_END = re.compile(r"(?: |^)(?:[,.!?]|but|though|and|then|now|while)(?= |$)")
_SENTENCE_END = re.compile(r"(?: |^)[.!?](?= |$)")


@lru_cache(maxsize=64)
def _ends(ends: re.Pattern[str], folded: str) -> tuple[list[int], list[int]]:
    found = [match.span() for match in ends.finditer(folded)]
    return [start for start, _ in found], [end for _, end in found]


def _around(ends: re.Pattern[str], folded: str, at: int) -> tuple[int, int]:
    starts, stops = _ends(ends, folded)
    before = bisect_right(stops, at)
    after = bisect_left(starts, at)
    return (
        stops[before - 1] if before else 0,
        starts[after] if after < len(starts) else len(folded),
    )


@lru_cache(maxsize=512)
def tokens(source: str) -> Tokens:
    """Fold a text.

    Examples
    --------
    >>> tokens("It's 46k, I blinked twenty-one times").folded
    'it is 46 k , i flashed 21 times'
    """
    folded = tuple(digits([*_pieces(source)]))
    offsets: list[int] = []
    at = 0
    for piece in folded:
        offsets.append(at)
        at += len(piece.text) + 1
    joined = " ".join(piece.text for piece in folded)
    return Tokens(source, joined, folded, tuple(offsets))


@lru_cache(maxsize=8192)
def fold(text: str) -> str:
    """Return the folded form of a short text, such as a pack's own word."""
    return tokens(text).folded


def _pieces(source: str) -> Iterator[Piece]:
    last = ""
    for found in _RAW.finditer(source):
        for piece in _folded(found[0], found.start(), source):
            if piece.text == last and not piece.text.isalnum() and len(last) == 1:
                continue
            last = piece.text
            yield piece


def _folded(raw: str, start: int, source: str) -> Iterator[Piece]:
    if len(raw) == 1 and not raw.isalnum():
        sign = "minus" if _is_minus(raw, start, source) else _KEPT.get(raw)
        if sign:
            yield Piece(sign, start, start + 1)
        return
    low = unicodedata.normalize("NFKC", raw).lower()
    if len(low) != len(raw):
        yield from _word(low.translate(_APOSTROPHES), start, start + len(raw))
        return
    yield from _number(low, start) or _compound(low, start)


def _is_minus(raw: str, start: int, source: str) -> bool:
    before = source[start - 1 : start]
    after = source[start + 1 : start + 2]
    return raw in "-−–" and after.isdigit() and (not before or before.isspace())


def _number(low: str, start: int) -> list[Piece]:
    end = start + len(low)
    time = _TIME.fullmatch(low)
    if time:
        clock = (time[1] or time[3]).replace(".", ":")
        cut = start + len(clock)
        half = [Piece(time[2], cut, end)] if time[2] else []
        return [Piece(clock, start, cut), *half]
    found = _THOUSANDS.fullmatch(low) or _DECIMAL.fullmatch(low)
    if not found or found[2] not in UNIT_SUFFIXES | {""}:
        return []
    if len(found[1]) > LONGEST_NUMBER:
        return [Piece("longnumber", start, end)]
    whole = bool(_THOUSANDS.fullmatch(low))
    value = found[1].replace(",", "" if whole else ".")
    cut = start + len(found[1])
    return [Piece(value, start, cut), *_word(found[2], cut, end)]


def _compound(low: str, start: int) -> Iterator[Piece]:
    """Yield the parts of a word with signs inside; codes and models stay whole."""
    if "'" in low or "’" in low:
        yield from _apostrophe(low, start)
        return
    has_both = any(c.isdigit() for c in low) and any(c.isalpha() for c in low)
    if has_both and _CODE.fullmatch(low) and not re.fullmatch(r"[0-9]+-[a-z]+", low):
        yield Piece(low, start, start + len(low))
        return
    for part in _PART.finditer(low):
        begin, end = start + part.start(), start + part.end()
        if part[0].isalnum():
            yield from _number(part[0], begin) or list(_word(part[0], begin, end))
        elif part[0] in "-‐–":
            around = low[part.start() - 1] + low[part.end()]
            if around.isdigit():
                yield Piece("-", begin, end)
        else:
            yield Piece(_KEPT[part[0]], begin, end)


def _apostrophe(low: str, start: int) -> Iterator[Piece]:
    plain = low.translate(_APOSTROPHES)
    end = start + len(low)
    if plain not in WORDS and low[1:].endswith(("'s", "’s")):
        yield from _compound(low[:-2].translate(_APOSTROPHES), start)
        yield Piece("is", end - 2, end)
        return
    yield from _word(plain, start, end)


def _word(low: str, start: int, end: int) -> Iterator[Piece]:
    if not low:
        return
    plain = SHORT_ORDINALS.get(low, low)
    for text in WORDS.get(plain) or WORDS.get(mended(plain)) or (mended(plain),):
        yield Piece(text, start, end)
