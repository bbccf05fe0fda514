"""Number words to digits: "fifty four" is 54, "nine point eight" is 9.8."""

from __future__ import annotations

import re

from assistant.language.lexicon.numbers import (
    ONE_COUNTED_BY,
    ONE_COUNTS,
    ONE_POINTS,
    SMALL,
    TENS,
)
from assistant.language.pieces import Piece

_NUMBER = re.compile(r"[0-9]+(?:\.[0-9]+)?")
_HUNDRED = 100
_ENDS = frozenset(",.!?")


def digits(pieces: list[Piece]) -> list[Piece]:
    """Return the pieces with number words, points and minus signs written out."""
    out: list[Piece] = []
    at = 0
    while at < len(pieces):
        taken, piece = _number(pieces, at)
        at += taken
        if piece is None:
            piece = pieces[at - 1]
        elif _joins_sign(out, piece):
            sign = out.pop()
            piece = Piece("-" + piece.text, sign.start, piece.end)
        out.append(piece)
    return out


def _joins_sign(out: list[Piece], piece: Piece) -> bool:
    return bool(out) and out[-1].text == "minus" and piece.text[0] != "-"


def _number(pieces: list[Piece], at: int) -> tuple[int, Piece | None]:
    taken, value = _whole(pieces, at)
    if value is None:
        return 1, None
    end = at + taken
    if end + 1 < len(pieces) and pieces[end].text == "point":
        more, fraction = _whole(pieces, end + 1)
        if fraction is not None and fraction.isdigit() and value.isdigit():
            last = pieces[end + more]
            return taken + 1 + more, Piece(
                f"{value}.{fraction}", pieces[at].start, last.end
            )
    return taken, Piece(value, pieces[at].start, pieces[end - 1].end)


def _whole(pieces: list[Piece], at: int) -> tuple[int, str | None]:
    word = pieces[at].text
    following = pieces[at + 1].text if at + 1 < len(pieces) else ""
    if _NUMBER.fullmatch(word):
        return 1, word
    if word in TENS:
        unit = SMALL.get(following, 0)
        if 0 < unit < SMALL["ten"]:
            return 2, str(TENS[word] + unit)
        return 1, str(TENS[word])
    if word == "one" and not _is_number(pieces, at, following):
        return 1, None
    if word in SMALL:
        if following == "hundred":
            return _hundreds(pieces, at)
        return 1, str(SMALL[word])
    return 1, None


def _hundreds(pieces: list[Piece], at: int) -> tuple[int, str]:
    value, taken = _HUNDRED * SMALL[pieces[at].text], 2
    if at + taken < len(pieces) and pieces[at + taken].text == "and":
        taken += 1
    if at + taken < len(pieces):
        more, rest = _whole(pieces, at + taken)
        if rest is not None and rest.isdigit() and int(rest) < _HUNDRED:
            return taken + more, str(value + int(rest))
    return 2, str(value)


def _is_number(pieces: list[Piece], at: int, following: str) -> bool:
    """Tell whether "one" counts: "one flash", "just one"; not "the red one"."""
    before = pieces[at - 1].text if at else ""
    if before in ONE_POINTS:
        return False
    alone = len(pieces) == 1
    last = not following or following in _ENDS
    return alone or following in ONE_COUNTS or (last and before in ONE_COUNTED_BY)
