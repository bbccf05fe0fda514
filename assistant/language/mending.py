"""Puts a misspelt word of the trade right when one letter is off."""

from __future__ import annotations

from assistant.language.lexicon.spelling import SHORTEST_MENDED, WELL_SPELLED
from assistant.language.lexicon.words import words

_LONGEST = 16
_PAIR = 2
_KNOWN = frozenset(WELL_SPELLED)
_NEAR_WORDS = frozenset(
    words("""
    starter stopper stopped sensors flasher started locker supplies boarding
    cooking heating display displays breakers indoors outdoors licenses orange
    trapped tripper heaters cooling cooler heater pressures burring turning burn
    looked socked rocked docked mocked gauged stead steadily unlocked booked
    resister sending bending finding minding stripped clipped swapped snapped
    """)
)
"""Real words one letter away from a listed one; they are left alone."""


def _without_one(word: str) -> set[str]:
    return {word[:at] + word[at + 1 :] for at in range(len(word))}


def _index() -> dict[str, str]:
    shapes: dict[str, str] = {}
    for word in sorted(_KNOWN):
        for shape in {word} | _without_one(word):
            shapes.setdefault(shape, word)
    return shapes


_SHAPES = _index()


def _transposed(one: str, other: str) -> bool:
    differ = [at for at, (a, b) in enumerate(zip(one, other, strict=True)) if a != b]
    return (
        len(differ) == _PAIR
        and differ[1] == differ[0] + 1
        and one[differ[0]] == other[differ[1]]
        and one[differ[1]] == other[differ[0]]
    )


def mended(word: str) -> str:
    """Return the word of the trade one letter away, else the word itself.

    One letter too many, one missing, or two neighbours exchanged; another letter
    in place of one is not mended, since "cooking" is not "cooling".

    Examples
    --------
    >>> mended("compresor"), mended("flahsing"), mended("cooking")
    ('compressor', 'flashing', 'cooking')
    """
    plain = word.isascii() and word.isalpha()
    if not plain or not SHORTEST_MENDED - 1 <= len(word) <= _LONGEST:
        return word
    if word in _KNOWN or word in _NEAR_WORDS:
        return word
    for shape in [word, *sorted(_without_one(word))]:
        near = _SHAPES.get(shape)
        if near is None:
            continue
        if abs(len(near) - len(word)) == 1 or (
            len(near) == len(word) and _transposed(near, word)
        ):
            return near
    return word
