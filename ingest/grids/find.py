"""All tables of one page that rules or fills part."""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import replace
from typing import TYPE_CHECKING

from ingest.grids.bands import is_strip, lattices, stacks
from ingest.grids.build import build
from ingest.grids.edges import TOLERANCE, Edge, Group, edges, groups, snapped
from ingest.grids.lattice import Lattice, lattice
from ingest.grids.model import Box, Style, Table
from ingest.grids.spread import Spread
from ingest.grids.uncut import row_cuts

if TYPE_CHECKING:
    from ingest.readers.geometry import Shapes

MOST_PARTS = 4
"""Tables that one grid may hold side by side."""

MOST_EDGES = 1_000
"""Of a kind, collinear ones joined; a page with more is a drawing."""
MOST_CELLS = 10_000
"""Of one lattice; more is squared paper."""
FRAME = 3
"""Rules of a kind: with fewer, they are a frame, and fills part the cells."""
SECTION = 36.0
"""Points: a row with the name of a section is no higher."""
SHORT = 0.2
"""Of the table: edges of fills that part less of it are marks inside cells."""


def find_tables(shapes: Shapes) -> tuple[Table, ...]:
    """Return the tables of a page, from the top, then from the left.

    Words that no rule and no fill parts make no table: they stay lines.

    Parameters
    ----------
    shapes : Shapes
        What stands on the page, upright.
    """
    if not shapes.rules or not shapes.words:
        return ()
    known = frozenset(word.text.lower().strip(".,;:()") for word in shapes.words)
    spread = Spread(shapes.words)
    across, down = edges(shapes.rules)
    if max(len(across), len(down)) > MOST_EDGES:
        return ()
    touching = groups(across, down)
    strips = [group for group in touching if is_strip(group)]
    found: list[Table] = []
    for group in _sections(touching):
        if not is_strip(group):
            found += _ruled(group, shapes, spread, known)
    for stack in stacks(strips):
        style = Style.BANDS if stack.drawn else Style.ZEBRA
        for grid in lattices(stack, spread):
            found += _built(grid, style, shapes, spread, known)
    return tuple(_outermost(sorted(found, key=lambda t: (t.box.top, t.box.x0))))


def _outermost(tables: Sequence[Table]) -> list[Table]:
    """Leave out tables that stand inside another one."""
    kept: list[Table] = []
    for table in sorted(tables, key=lambda t: -len(t.rows) * len(t.columns)):
        x = (table.box.x0 + table.box.x1) / 2
        y = (table.box.top + table.box.bottom) / 2
        if not any(_holds(other.box, x, y) for other in kept):
            kept.append(table)
    return sorted(kept, key=lambda t: (t.box.top, t.box.x0))


def _holds(box: Box, x: float, y: float) -> bool:
    return box.x0 <= x <= box.x1 and box.top <= y <= box.bottom


def _ruled(
    group: Group, shapes: Shapes, spread: Spread, known: Collection[str]
) -> list[Table]:
    """Return the tables of edges that cross, open sides closed."""
    group = Group(
        _lasting(group.across, group.right - group.left),
        _lasting(group.down, group.bottom - group.top),
    )
    xs = snapped({edge.at for edge in group.down} | {group.left, group.right})
    ys = snapped({edge.at for edge in group.across} | {group.top, group.bottom})
    if min(len(xs), len(ys)) <= 1 or len(xs) * len(ys) > MOST_CELLS:
        return []
    cuts = row_cuts(xs, ys, spread)
    across = [*group.across, *(Edge(y, xs[0], xs[-1], drawn=False) for y in cuts)]
    grid = lattice(xs, sorted([*ys, *cuts]), across, group.down)
    style = Style.RULED if _closed(group) else Style.OPEN
    if not group.drawn:
        style = Style.ZEBRA
    return _built(grid, style, shapes, spread, known)


def _sections(touching: Sequence[Group]) -> list[Group]:
    """Join open grids that only a row over all columns keeps apart."""
    found: list[Group] = []
    for group in touching:
        last = found[-1] if found else None
        if last is not None and _goes_on(last, group):
            last.across.extend(group.across)
            last.down.extend(group.down)
        else:
            found.append(Group(list(group.across), list(group.down)))
    for group in found:
        group.across.sort()
        group.down.sort()
    return found


def _goes_on(last: Group, group: Group) -> bool:
    """Whether a grid without outer sides has the columns of the one above it."""
    gap = group.top - last.bottom
    if not (last.down and group.down and 0 <= gap <= SECTION):
        return False
    xs, others = ({round(e.at) for e in g.down if e.drawn} for g in (last, group))
    if not (xs and others):
        return False
    return (
        abs(last.left - group.left) <= TOLERANCE
        and abs(last.right - group.right) <= TOLERANCE
        and min(xs | others) - last.left > TOLERANCE
        and last.right - max(xs | others) > TOLERANCE
        and (xs <= others or others <= xs)
    )


def _lasting(lines: Sequence[Edge], length: float) -> list[Edge]:
    """Leave out edges of small fills in a cell: marked words, lamps, buttons."""
    drawn = sum(edge.drawn for edge in lines)
    if drawn < FRAME:
        return list(lines)
    reach: dict[float, float] = {}
    for edge in lines:
        longer = length if edge.drawn else edge.high - edge.low
        reach[edge.at] = reach.get(edge.at, 0.0) + longer
    return [edge for edge in lines if reach[edge.at] >= SHORT * length]


def _closed(group: Group) -> bool:
    """Whether edges run along all four sides."""
    if not group.across or not group.down:
        return False
    return (
        group.down[0].at - group.left <= TOLERANCE
        and group.right - group.down[-1].at <= TOLERANCE
        and group.across[0].at - group.top <= TOLERANCE
        and group.bottom - group.across[-1].at <= TOLERANCE
    )


def _built(
    grid: Lattice,
    style: Style,
    shapes: Shapes,
    spread: Spread,
    known: Collection[str],
) -> list[Table]:
    box = Box(grid.xs[0], grid.ys[0], grid.xs[-1], grid.ys[-1])
    table = build(grid, spread.within(box).words, shapes.fills, style, known)
    return [] if table is None else _side_by_side(table)


def _side_by_side(table: Table) -> list[Table]:
    """Part a grid whose column names repeat into the tables that it holds."""
    count = len(table.names)
    for parts in range(MOST_PARTS, 1, -1):
        step, rest = divmod(count, parts)
        if rest or step <= 1 or len(set(table.names[:step])) == 1:
            continue
        if table.names[:step] * parts == table.names and all(table.names):
            return [_part(table, at, at + step) for at in range(0, count, step)]
    return [table]


def _part(table: Table, first: int, last: int) -> Table:
    rows = [row[first:last] for row in table.rows]
    while len(rows) > table.headers and not any(cell.text for cell in rows[-1]):
        rows.pop()
    columns = table.columns[first : last + 1]
    box = Box(columns[0], table.box.top, columns[-1], rows[-1][0].box.bottom)
    return replace(
        table,
        box=box,
        columns=columns,
        rows=tuple(rows),
        names=table.names[first:last],
    )
