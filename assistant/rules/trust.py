"""How closely a statement is about the unit at hand: which of two is to be trusted.

The order: a matching board mark or serial, then the exact model, a pattern, a series,
a family. It orders what is shown; it takes nothing away. Only a document that names
what it replaces does that.
"""

from __future__ import annotations

from collections.abc import Iterator, Set
from enum import IntEnum

from assistant.record import Scope
from assistant.rules.applicability import Plate, verdicts_of
from assistant.rules.patterns import ANY_ONE, ANY_RUN, DIGIT, can_match


class Trust(IntEnum):
    """How closely; the smallest stands first."""

    BOARD_OR_SERIAL = 0
    EXACT_MODEL = 1
    PATTERN = 2
    SERIES = 3
    FAMILY = 4
    NOT_CONFIRMED = 5


_CLOSEST = frozenset({"board_mark", "board_pn", "firmware", "serial", "settings"})
_WILD = frozenset({ANY_ONE, ANY_RUN, DIGIT})


def trust(pack: tuple[Scope, ...], item: tuple[Scope, ...], plate: Plate) -> Trust:
    """Return how closely an item is about a unit, by its own scope or its pack's.

    Examples
    --------
    >>> plate = Plate(outdoor_model="KX-24", board_mark="orange")
    >>> pack = (Scope(models=("KX-*",)),)
    >>> trust(pack, (), plate).name
    'PATTERN'
    >>> trust(pack, (Scope(board_mark="orange"),), plate).name
    'BOARD_OR_SERIAL'
    >>> trust(pack, (Scope(board_mark="white"),), plate).name
    'NOT_CONFIRMED'
    """
    for scopes in (pack, item):
        if scopes and not list(_confirmed(scopes, plate)):
            return Trust.NOT_CONFIRMED
    found = [*_confirmed(pack, plate), *_confirmed(item, plate)]
    return min(found, default=Trust.NOT_CONFIRMED)


def _confirmed(scopes: tuple[Scope, ...], plate: Plate) -> Iterator[Trust]:
    for scope in scopes:
        verdicts = verdicts_of(scope, plate)
        if verdicts and set(verdicts.values()) == {"confirmed"}:
            yield _closest(scope, verdicts.keys(), plate)


def _closest(scope: Scope, fields: Set[str], plate: Plate) -> Trust:
    if fields & _CLOSEST:
        return Trust.BOARD_OR_SERIAL
    if "models" in fields and scope.models:
        return Trust.EXACT_MODEL if _exactly(scope, plate) else Trust.PATTERN
    return Trust.SERIES if "series" in fields else Trust.FAMILY


def _exactly(scope: Scope, plate: Plate) -> bool:
    """Return whether a model is written out, be it among alternatives in brackets."""
    known = [m for m in (plate.outdoor_model, plate.indoor_model) if m]
    return any(
        can_match(pattern, model)
        for pattern in scope.models
        if not _WILD & set(pattern)
        for model in known
    )
