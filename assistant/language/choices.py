"""Finds which of the options put a short answer means."""

from __future__ import annotations

import re

from assistant.language.claims import NOT, rx
from assistant.language.lexicon.words import words
from assistant.language.tokens import Tokens, fold

_OTHER = rx(r"(?:the |nah |no )*other(?: one)?")
_NTH = rx(r"(?:the )?(?P<n>first|second|third|fourth|last|former|latter)(?: one)?")
_PLACES = {
    "first": 0,
    "former": 0,
    "second": 1,
    "latter": 1,
    "third": 2,
    "fourth": 3,
    "last": -1,
}
_PAIR = 2
_ALIKE = tuple(
    frozenset(row.split())
    for row in (
        "free freely easy easily loose smooth smoothly spins spin turns turn fine "
        "moves",
        "stuck seized jammed stiff locked binding tight blocked",
        "dirty filthy clogged plugged choked matted caked",
        "clean clear new",
        "frosted frost iced ice icing frozen frosty",
        "warm hot",
        "cold cool chilly",
        "burnt burned scorched charred black brown",
        "corroded corrosion rusty green",
        "running runs run going on works working",
        "off dead stopped nothing none dark",
        "good ok okay fine normal alright well",
        "bad poor wrong worn shot broken failed",
        "same unchanged still again back returns returned",
        "gone cleared clears cured fixed different",
    )
)
_YES = frozenset(words("yes yep yeah yup aye affirmative sure y correct"))
_NO = frozenset(words("no nope nah negative n not never"))
_FILLER = frozenset(words("the a an it is was of to and or in on at i they are be by"))
_NEGATION = rx(NOT)


def chosen(view: Tokens, options: tuple[str, ...]) -> str | None:
    """Return the one option that an answer means, or None when it is not plain.

    Examples
    --------
    >>> from assistant.language.tokens import tokens
    >>> chosen(tokens("spins easy"), ("turns freely", "stuck"))
    'turns freely'
    >>> chosen(tokens("nah other one"), ("indoor", "outdoor"))
    'outdoor'
    """
    return pick(view.folded, options)


def pick(said: str, options: tuple[str, ...]) -> str | None:
    """Return the one option that folded words mean, or None."""
    if not options:
        return None
    folded = said.strip(" .,!?")
    for option in options:
        if fold(option) == folded:
            return option
    return _by_place(folded, options) or _by_words(folded, options)


def _by_place(folded: str, options: tuple[str, ...]) -> str | None:
    if _OTHER.search(folded):
        return options[1] if len(options) == _PAIR else None
    nth = _NTH.fullmatch(folded)
    place = _PLACES[nth["n"]] if nth else None
    if place is None or place >= len(options):
        return None
    return options[place]


def _by_words(folded: str, options: tuple[str, ...]) -> str | None:
    said = set(folded.split()) - _FILLER
    denies = bool(_NEGATION.search(folded)) or bool(said & _NO)
    scores = [_score(said, denies, fold(option)) for option in options]
    best = max(scores)
    if best > 0 and scores.count(best) == 1:
        return options[scores.index(best)]
    if denies and len(options) == _PAIR and min(scores) < best == 0:
        return options[scores.index(best)]
    return _by_polarity(said, denies, options) if best <= 0 else None


def _score(said: set[str], denies: bool, option: str) -> float:
    """Count words in common, or alike; a denial speaks against what it names."""
    words = set(option.split()) - _FILLER
    common = len((said & words) - _NO - _YES)
    alike = sum(
        1
        for group in _ALIKE
        if said & group and words & group and not said & words & group
    )
    refused = bool(_NEGATION.search(option)) or bool(words & _NO)
    total = common + 0.6 * alike
    return total if denies == refused else -total


def _by_polarity(said: set[str], denies: bool, options: tuple[str, ...]) -> str | None:
    """Read a bare yes or no where the options are one."""
    refusing = [
        o for o in options if set(re.findall(r"[a-z]+", fold(o))) & (_NO | {"none"})
    ]
    agreeing = [o for o in options if o not in refusing]
    if len(refusing) != 1 or len(agreeing) != 1:
        return None
    if denies:
        return refusing[0]
    return agreeing[0] if said & _YES else None
