"""Whether two statements of `applies_to` can speak of one unit."""

from __future__ import annotations

from itertools import product

from assistant.record import Scope
from assistant.rules import ranges
from assistant.rules.fittings import compare_settings
from assistant.rules.patterns import overlap
from assistant.rules.plates import COMPARED, compare_words
from assistant.rules.serials import serial_ends, version_ends

_COMPARED = {**COMPARED, "unit_role": compare_words}


def apart(one: Scope, other: Scope) -> bool:
    """Return whether no unit fits both scopes.

    Examples
    --------
    >>> apart(Scope(settings=("SW1 on",)), Scope(settings=("SW1 off",)))
    True
    >>> apart(Scope(board_mark="orange"), Scope(models=("QM-24",)))
    False
    """
    return (
        any(_words_apart(name, one, other) for name in _COMPARED)
        or _models_apart(one, other)
        or _made_apart(one, other)
        or _equipped_apart(one, other)
    )


def _words_apart(name: str, one: Scope, other: Scope) -> bool:
    mine, theirs = getattr(one, name), getattr(other, name)
    return bool(mine and theirs) and _COMPARED[name](mine, theirs) == "excluded"


def _models_apart(one: Scope, other: Scope) -> bool:
    boards = one.board_pn and other.board_pn
    if boards and not _share(one.board_pn, other.board_pn):
        return True
    if not one.models or not other.models:
        return False
    # A pattern for the indoor unit and one for the outdoor unit may both fit.
    same_role = one.unit_role == other.unit_role is not None
    return same_role and not _share(one.models, other.models)


def _share(mine: tuple[str, ...], theirs: tuple[str, ...]) -> bool:
    return any(overlap(a, b) for a, b in product(mine, theirs))


def _made_apart(one: Scope, other: Scope) -> bool:
    mine, theirs = one.firmware, other.firmware
    if mine is not None and theirs is not None:
        versions = version_ends(mine), version_ends(theirs)
        if ranges.apart(*versions):
            return True
    a, b = one.serial, other.serial
    if a is None or b is None or (a.format, a.prefix) != (b.format, b.prefix):
        return False
    return ranges.apart(serial_ends(a), serial_ends(b))


def _equipped_apart(one: Scope, other: Scope) -> bool:
    told = ", ".join(other.settings)
    if one.settings and compare_settings(one.settings, told) == "excluded":
        return True
    there, missing = set(one.fitted), set(one.not_fitted)
    return bool(there & set(other.not_fitted) or missing & set(other.fitted))
