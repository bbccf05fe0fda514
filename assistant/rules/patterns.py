"""Model patterns: ``*`` any run, ``#`` a digit, ``?`` any character, ``AB(C,D)12``.

A pattern and what was read off a plate are both lists of tokens, so a worn plate
(``KX-2?``) or a half-known model (``4T*``) can be compared as well.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import product

ANY_RUN = "*"
DIGIT = "#"
ANY_ONE = "?"
_DROPPED = re.compile(r"[\s\-\u2010-\u2015\u2212_./]+")
_BRACKETS = re.compile(r"\(([^()]*)\)")
MOST_ALTERNATIVES = 500


def normal(text: str) -> str:
    """Return a model number folded for comparison: no spaces, no hyphens, one case.

    Examples
    --------
    >>> normal("kx-24 a")
    'KX24A'
    """
    return _DROPPED.sub("", text).upper()


def pattern_mistake(pattern: str) -> str | None:
    """Return what is wrong with a written pattern, or None.

    Examples
    --------
    >>> pattern_mistake("AB(C,D12")
    'a bracket is not closed, or stands inside another'
    """
    if not normal(pattern).strip("*?()|,"):
        return "names no model"
    rest = _BRACKETS.sub("", pattern)
    if "(" in rest or ")" in rest:
        return "a bracket is not closed, or stands inside another"
    if "," in rest:
        return "a comma outside brackets; write one model an entry"
    if _count(pattern) > MOST_ALTERNATIVES:
        return f"spells more than {MOST_ALTERNATIVES} models"
    return None


def _count(pattern: str) -> int:
    total = 1
    for inside in _BRACKETS.findall(pattern):
        total *= inside.count(",") + 1
    return total


@lru_cache(maxsize=4096)
def spelled_out(pattern: str) -> tuple[str, ...]:
    """Return the bracket-free forms of a pattern, folded.

    Examples
    --------
    >>> spelled_out("ab(c,d)-12")
    ('ABC12', 'ABD12')
    """
    if pattern_mistake(pattern) is not None:
        return ()
    parts = _BRACKETS.split(pattern)
    choices = [
        part.split(",") if place % 2 else [part] for place, part in enumerate(parts)
    ]
    return tuple(normal("".join(chosen)) for chosen in product(*choices))


def can_match(pattern: str, model: str) -> bool:
    """Return whether some text is spelled by both `pattern` and `model`.

    `model` may hold ``*`` and ``?`` for what could not be read; without them this is
    whether the model fits the pattern.

    Examples
    --------
    >>> can_match("KX(24,36)*", "kx-24a"), can_match("KX-#4", "KX A4")
    (True, False)
    >>> can_match("KX-24", "KX-2?"), can_match("KX-24", "4T*")
    (True, False)
    """
    read = normal(model)
    return any(_both(form, read) for form in spelled_out(pattern))


def fully_read(model: str) -> bool:
    """Return whether nothing of the model is left open."""
    return ANY_RUN not in model and ANY_ONE not in model


def overlap(one: str, other: str) -> bool:
    """Return whether two patterns share a model."""
    return any(_both(a, b) for a in spelled_out(one) for b in spelled_out(other))


@lru_cache(maxsize=8192)
def _both(one: str, other: str) -> bool:
    """Return whether two token strings spell a common text.

    Row by row over `one`, keeping which prefixes of `other` it can agree with.
    """
    row = [True]
    row.extend(row[-1] and token == ANY_RUN for token in other)
    for mine in one:
        start = row[0] and mine == ANY_RUN
        new = [start]
        for place, theirs in enumerate(other, start=1):
            skip_theirs = theirs == ANY_RUN and new[place - 1]
            skip_mine = mine == ANY_RUN and (row[place] or new[place - 1])
            keep_theirs = theirs == ANY_RUN and row[place]
            step = row[place - 1] and _share(mine, theirs)
            new.append(skip_theirs or skip_mine or keep_theirs or step)
        row = new
    return row[-1]


def _share(mine: str, theirs: str) -> bool:
    if ANY_ONE in (mine, theirs) or ANY_RUN in (mine, theirs):
        return True
    if DIGIT in (mine, theirs):
        return all(token == DIGIT or token.isdigit() for token in (mine, theirs))
    return mine == theirs
