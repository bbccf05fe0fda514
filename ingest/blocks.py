"""Cuts a page into lines that know what they are: heading, table row, prose. Pure."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from enum import Enum
from types import MappingProxyType

from ingest.cleaning import cells
from ingest.headings import is_signal

_LIST_MARK = re.compile(r"^(?:\(?\d{1,2}[.)]|\(?[a-z][.)]|[•●○■▪◦\-–*✓►▶])$")
_LIST_START = re.compile(r"^\s*(?:\(?\d{1,2}[.)]\s|\(?[a-z][.)]\s|[•●○■▪◦\-–*✓►▶]\s)")
_PIPE_RULE = re.compile(r"^[|\s:+-]+$")
LEAST_ROWS = 2
WIDE = 3
GAP = "  "


class Kind(Enum):
    """What a line is."""

    PROSE = "prose"
    ITEM = "item"
    SIGNAL = "signal"
    """The word over a caution, which never parts from it."""
    HEADING = "heading"
    ROW = "row"


@dataclass(frozen=True, slots=True)
class GridRow:
    """What the reader said of a line that is a row of a ruled table."""

    table: int
    """Which of the page's tables, from 0."""
    cells: tuple[str, ...]
    names: tuple[str, ...] = ()
    """Of its columns, where the table has headers."""
    head: bool = False
    """It names columns itself."""


_NO_GRID: Mapping[int, GridRow] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Line:
    """One line of a page that a passage may hold."""

    start: int
    end: int
    text: str
    kind: Kind
    after_blank: bool
    section: str
    """The heading it stands under, its own included."""
    lead: str = ""
    """First line of its table, when that is another line."""
    first_row: bool = False
    grid: GridRow | None = None


@dataclass(frozen=True, slots=True)
class Carried:
    """What one page hands to the next."""

    section: str = ""
    header: str = ""
    """First line of the table that reached the foot of the page."""
    columns: int = 0


def table_cells(line: str) -> list[str]:
    """Return the cells of a table row; one or none when it is no row.

    Examples
    --------
    >>> table_cells("| E4 | sensor |")
    ['E4', 'sensor']
    >>> table_cells("1.  Turn the supply off")
    ['1.  Turn the supply off']
    """
    text = line.strip()
    if text.startswith("|") and text.count("|") >= WIDE:
        return [cell.strip() for cell in text.strip("|").split("|")]
    parts = cells(text)
    if len(parts) == 1 + 1 and _LIST_MARK.match(parts[0]):
        return [text]
    return parts


def lines_of(
    page: str,
    running: frozenset[int],
    headings: Mapping[int, str],
    carried: Carried,
    grid: Mapping[int, GridRow] = _NO_GRID,
) -> tuple[list[Line], Carried]:
    """Return the lines of a page but the running ones, and what goes on from it.

    Parameters
    ----------
    page : str
        The stored text.
    running : frozenset of int
        Indices of its running lines.
    headings : mapping of int to str
        Its headings, by line.
    carried : Carried
        What the page before handed on.
    grid : mapping of int to GridRow, optional
        Its lines that are rows of ruled tables.
    """
    texts = page.split("\n")
    free = _rows(texts, running, {**headings, **dict.fromkeys(grid, "")})
    tables = _tables(texts, free, running, carried) | _grid_leads(grid)
    rows = free | grid.keys()
    section = carried.section
    found: list[Line] = []
    start, blank = 0, True
    for at, text in enumerate(texts):
        end = start + len(text)
        if at not in running and text.strip():
            section = headings.get(at, section)
            lead, first = tables.get(at, ("", False))
            kind = _kind(at, text, rows, headings)
            inner = start + len(text) - len(text.lstrip())
            stop = start + len(text.rstrip())
            found.append(
                Line(inner, stop, text, kind, blank, section, lead, first, grid.get(at))
            )
            blank = False
        elif not text.strip():
            blank = True
        start = end + 1
    return found, _handed_on(found, section, carried)


def _grid_leads(grid: Mapping[int, GridRow]) -> dict[int, tuple[str, bool]]:
    """Return the lead of every row of a ruled table, and which is its first."""
    found: dict[int, tuple[str, bool]] = {}
    seen: set[int] = set()
    for at, row in sorted(grid.items()):
        lead = "" if row.head else GAP.join(filter(None, row.names))
        found[at] = (lead, row.table not in seen)
        seen.add(row.table)
    return found


def _kind(
    at: int, text: str, rows: frozenset[int], headings: Mapping[int, str]
) -> Kind:
    if at in headings:
        return Kind.HEADING
    if at in rows:
        return Kind.ROW
    if is_signal(text):
        return Kind.SIGNAL
    return Kind.ITEM if _LIST_START.match(text) else Kind.PROSE


def _rows(
    texts: Sequence[str], running: frozenset[int], headings: Mapping[int, str]
) -> frozenset[int]:
    """Return the lines of tables: two rows or more that follow each other.

    A line of one cell between two rows (a group's name, the rest of a cell)
    belongs to the table.
    """
    plain = [at for at, text in enumerate(texts) if at not in running and text.strip()]
    wide = {
        at for at in plain if at not in headings and len(table_cells(texts[at])) > 1
    }
    group: list[int] = []
    found: set[int] = set()
    for place, at in enumerate(plain):
        between = (
            bool(group)
            and at not in headings
            and plain[place - 1] in wide
            and place + 1 < len(plain)
            and plain[place + 1] in wide
        )
        if at in wide or between:
            group.append(at)
            continue
        found.update(group if _is_table(group, wide) else ())
        group = []
    found.update(group if _is_table(group, wide) else ())
    return frozenset(found)


def _is_table(group: Sequence[int], wide: set[int]) -> bool:
    return sum(at in wide for at in group) >= LEAST_ROWS


def _tables(
    texts: Sequence[str],
    rows: frozenset[int],
    running: frozenset[int],
    carried: Carried,
) -> dict[int, tuple[str, bool]]:
    """Return for every row the lead it needs and whether it is its table's first."""
    found: dict[int, tuple[str, bool]] = {}
    seen_any = False
    header, first = "", True
    for at, text in enumerate(texts):
        if at in running or not text.strip():
            continue
        if at not in rows:
            seen_any, first = True, True
            continue
        if first:
            header = text.strip()
            goes_on = not seen_any and _continues(texts, at, rows, carried)
            if goes_on and header != carried.header:
                header = carried.header
                found[at] = (header, False)
            else:
                header = header if is_header(text) else ""
                found[at] = ("", True)
        elif not _PIPE_RULE.match(text):
            found[at] = (header, False)
        seen_any, first = True, False
    return found


def _continues(
    texts: Sequence[str], at: int, rows: frozenset[int], carried: Carried
) -> bool:
    """Whether the table at the head of a page goes on from the page before.

    It has as many columns, and opens with a row of data: one with a figure in it.
    """
    if not any(map(str.isdigit, texts[at])):
        return False
    run = []
    while at in rows:
        run.append(len(table_cells(texts[at])))
        at += 1
    usual = Counter(run).most_common(1)[0][0] if run else 0
    return bool(carried.header) and usual == carried.columns


def is_header(text: str) -> bool:
    """Whether a table's first line names its columns.

    Of two columns, one with a figure is more likely the first pair of a list.
    """
    return len(table_cells(text)) >= WIDE or not any(map(str.isdigit, text))


def _handed_on(found: Sequence[Line], section: str, carried: Carried) -> Carried:
    if not found:
        return Carried(section, carried.header, carried.columns)
    if found[-1].kind is not Kind.ROW or found[-1].grid is not None:
        return Carried(section)
    table = []
    for line in reversed(found):
        if line.kind is not Kind.ROW:
            break
        table.append(line)
        if line.first_row:
            break
    columns = Counter(len(table_cells(line.text)) for line in table).most_common(1)
    first = table[-1]
    header = first.lead
    if first.first_row and is_header(first.text):
        header = first.text.strip()
    return Carried(section, header, columns[0][0])
