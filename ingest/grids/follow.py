"""Tables that go on over pages: their names carried, repeated headers known as such."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import replace

from ingest.grids.edges import TOLERANCE
from ingest.grids.model import Table


def continued(pages: Iterable[Sequence[Table]]) -> list[tuple[Table, ...]]:
    """Return the tables of each page, those that go on marked and named.

    The first tables of a page go on from the last ones of the page before when their
    columns are as wide, and they have no header of their own or the same again.

    Parameters
    ----------
    pages : iterable of sequence of Table
        Those of each page, from the top, pages in order.
    """
    found: list[tuple[Table, ...]] = []
    before: tuple[Table, ...] = ()
    for tables in pages:
        made = tuple(_followed(table, before, tables) for table in tables)
        found.append(made)
        before = made
    return found


def _followed(table: Table, before: Sequence[Table], beside: Sequence[Table]) -> Table:
    if not _begins(table, beside):
        return table
    for last in reversed(before):
        if _ends(last, before) and _same_columns(last, table):
            made = follow(last, table)
            if made.continues:
                return made
    return table


def _begins(table: Table, beside: Sequence[Table]) -> bool:
    """Whether no other table of its page stands over it."""
    return not any(other.box.bottom <= table.box.top for other in beside)


def _ends(table: Table, beside: Sequence[Table]) -> bool:
    return not any(other.box.top >= table.box.bottom for other in beside)


def _same_columns(one: Table, other: Table) -> bool:
    """Whether the columns are equally wide: margins of facing pages may differ."""
    if len(one.columns) != len(other.columns):
        return False
    shift = other.columns[0] - one.columns[0]
    return all(
        abs(b - a - shift) <= TOLERANCE
        for a, b in zip(one.columns, other.columns, strict=True)
    )


def follow(last: Table, table: Table) -> Table:
    """Return a table as the one that goes on from `last`; unchanged if it cannot.

    Parameters
    ----------
    last : Table
        The last one of the page before.
    table : Table
        The first one of the page, with columns as wide.
    """
    heads = [_texts(last, row) for row in range(last.headers)]
    rows = len(table.rows)
    again = bool(heads) and heads == [
        _texts(table, row) for row in range(min(len(heads), rows))
    ]
    if again and rows > len(heads):
        return replace(table, headers=len(heads), names=last.names, continues=True)
    if table.headers == 0 or not last.names:
        named = table.names or last.names
        return replace(table, names=named, continues=table.headers == 0)
    return table


def _texts(table: Table, row: int) -> tuple[str, ...]:
    return tuple("".join(cell.text.lower().split()) for cell in table.rows[row])
