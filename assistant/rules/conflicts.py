"""Rows of two documents that say something else about one thing: parallel claims.

Which of them holds for the unit is decided by a plate or label item where one is
stated; where none is, both are shown and the reader decides. Nothing is replaced
because it is older: only a document that names what it replaces does that.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from itertools import combinations

from assistant.checks.kinds import CheckBase
from assistant.record import Item
from assistant.timing.stop_kinds import StopBase
from assistant.timing.wait_kinds.base import WaitBase

Key = tuple[object, ...]
_ABOUT: Mapping[type[Item], tuple[str, ...]] = {
    WaitBase: (
        *("kind", "trigger", "mode", "scope", "condition", "from_state"),
        *("only_when", "until_event"),
    ),
    StopBase: ("event", "kind", "devices"),
    CheckBase: ("kind", "sensor", "points", "mode", "quantity"),
}
"""Family -> fields that say what a row is about; those a kind lacks are left out."""
_NOT_SAID = frozenset(
    {"id", "applies_to", "source", "note", "name", "says", "ask", "minutes", "steps"}
    | {"causes", "signal", "lamp_during", "cautions", "outcomes", "follows", "overdue"}
    | {"allowed_for", "requires", "needs", "approx", "text"}
)
"""Links and wording: what two documents may say otherwise and mean the same."""


def parallel(rows: Iterable[tuple[str, Item, str]]) -> Iterator[tuple[str, str]]:
    """Yield pairs of rows that are about one thing and say something else of it.

    Parameters
    ----------
    rows : iterable of (str, Item, str)
        Global id, row, and the document it stands in.

    Yields
    ------
    tuple of str, str
        Two global ids, the smaller first. Rows of one document are compared only
        where each is narrowed to other units: a table for each size.
    """
    about: dict[Key, list[tuple[str, Item, str]]] = defaultdict(list)
    for gid, item, document in rows:
        for subject in subjects(item):
            about[subject].append((gid, item, document))
    for held in about.values():
        for one, other in combinations(sorted(held, key=lambda row: row[0]), 2):
            apart = one[2] != other[2] or one[1].applies_to != other[1].applies_to
            if apart and said(one[1]) != said(other[1]):
                yield one[0], other[0]


def subjects(item: Item) -> Iterator[Key]:
    """Yield what a row is about, as a key; nothing for rows that are only links.

    A row with a name of its own is about that; two documents seldom name alike, so
    the fields that say it are what counts.
    """
    for family, fields in _ABOUT.items():
        if isinstance(item, family):
            yield (family.__name__, *(_plain(getattr(item, f, None)) for f in fields))


def _plain(value: object) -> object:
    return " ".join(value.casefold().split()) if isinstance(value, str) else value


def said(item: Item) -> Mapping[str, object]:
    """Return what a row says: figures and conduct, however they are written."""
    return {
        name: _figure(value)
        for name, value in vars(item).items()
        if name not in _NOT_SAID and value not in (None, (), "")
    }


def _figure(value: object) -> object:
    """Return a quantity without the text it was written as; `3 min` is `180 s`."""
    if isinstance(value, tuple):
        return tuple(_figure(one) for one in value)
    number, unit = getattr(value, "value", None), getattr(value, "unit", None)
    return (number, unit) if unit is not None else _plain(value)
