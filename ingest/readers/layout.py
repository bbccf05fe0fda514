"""Puts the words of a page into reading order and writes its lines. Pure.

The order in which a file draws its words is kept where it runs down the page, as
most files' does: it knows cells that places alone do not tell. Columns of prose are
read one after the other however they are drawn, stretches that are drawn out of
order are sorted by place, and text that runs in another direction comes last.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from ingest.grids.edges import median
from ingest.grids.model import Table
from ingest.readers.base import RawRow, RawTable
from ingest.readers.geometry import Fill, Rule, Shapes, Word
from ingest.readers.layout_columns import zones
from ingest.readers.layout_pieces import Piece, pieces, spaced_out
from ingest.readers.rows import GAP, MAX_ROW_LINES, Fragment, Row, rows

_Shaped = Word | Rule | Fill
_SAME = 0.5
_INDENT = 0.8
_LEVEL = 0.25
_ALIGNED = 0.8
_LEAST_ROWS = 4
_ROW_STEP = 1.5
_FEW = 3
"""Words in a line, at the median: cells of a table, and not lines of a column."""


@dataclass(frozen=True, slots=True)
class Laid:
    """A page's lines in reading order."""

    lines: tuple[str, ...] = ()
    rows: tuple[Row, ...] = ()
    """The lines that belong to no ruled table, with the look of their pieces."""
    tables: tuple[RawTable, ...] = ()


def upright(shapes: Shapes) -> Shapes:
    """Turn a page so that most of its letters stand upright."""
    votes: Counter[int] = Counter()
    for word in shapes.words:
        votes[word.angle] += len(word.text)
    turn = min(votes, key=lambda angle: (-votes[angle], angle)) if votes else 0
    return _turned(shapes, turn // 90) if turn else shapes


def lay_out(shapes: Shapes, tables: Sequence[Table] = ()) -> Laid:
    """Return the lines of an upright page.

    Parameters
    ----------
    shapes : Shapes
        Its words.
    tables : sequence of Table
        The ruled tables on it; their words are told by their cells.
    """
    free, inside = _parted(shapes.words, tables)
    found = spaced_out(pieces((at, word) for at, word in free if word.angle == 0))
    for at, first in sorted(inside.items()):
        found.append(_stand_in(tables[at], at, first))
    found.sort(key=lambda piece: piece.order)
    flow = list(_in_order(found, shapes.width))
    aside = tuple(word for _, word in free if word.angle)
    for angle in sorted({word.angle for word in aside}):
        turned = _turned(Shapes(shapes.width, shapes.height, aside), angle // 90)
        level = [word for word in turned.words if word.angle == 0]
        flow.extend(_in_order(spaced_out(pieces(enumerate(level))), turned.width))
    return _written(flow, tables)


def _parted(
    words: Sequence[Word], tables: Sequence[Table]
) -> tuple[list[tuple[int, Word]], dict[int, int]]:
    """Return the words outside of tables, and each table's first place in order."""
    if not tables:
        return list(enumerate(words)), {}
    boxes = [table.box for table in tables]
    free: list[tuple[int, Word]] = []
    inside: dict[int, int] = {}
    for at, word in enumerate(words):
        x, y = (word.x0 + word.x1) / 2, (word.top + word.bottom) / 2
        for number, (x0, top, x1, bottom) in enumerate(boxes):
            if top <= y <= bottom and x0 <= x <= x1:
                inside.setdefault(number, at)
                break
        else:
            free.append((at, word))
    return free, inside


def _stand_in(table: Table, number: int, order: int) -> Piece:
    box = table.box
    return Piece(
        "", box.x0, box.x1, box.top, 0.0, bold=False, order=order, table=number
    )


def _in_order(found: Sequence[Piece], width: float) -> Iterator[list[Piece]]:
    """Give stretches band by band: columns one after the other, the rest as drawn."""
    for zone in zones(found, width):
        for column in zone:
            yield _sorted(column)


def _sorted(stretch: Sequence[Piece]) -> list[Piece]:
    """Give a stretch as drawn; runs that go back up are put where they stand."""
    runs: list[list[Piece]] = []
    for piece in _across(stretch):
        if not runs or _goes_back(runs[-1], piece):
            runs.append([])
        runs[-1].append(piece)
    if len(runs) > 1 and any(
        _tangled(one, other) for at, one in enumerate(runs) for other in runs[:at]
    ):
        return _by_place(stretch)
    placed: list[list[Piece]] = []
    for run in runs:
        at = len(placed)
        while at and _base(run) < _top(placed[at - 1]):
            at -= 1
        placed.insert(at, run)
    return [piece for run in placed for piece in run]


def _across(stretch: Sequence[Piece]) -> list[Piece]:
    """Put the rows of a table together that is drawn column by column."""
    falls: list[list[Piece]] = []
    for piece in stretch:
        if not falls or falls[-1][-1].y - piece.y > _SAME * piece.size:
            falls.append([])
        falls[-1].append(piece)
    found: list[list[Piece]] = []
    for at, fall in enumerate(falls):
        if at and _beside(falls[at - 1], fall):
            found[-1] = _by_place([*found[-1], *fall])
        else:
            found.append(fall)
    return [piece for group in found for piece in group]


def _beside(left: Sequence[Piece], right: Sequence[Piece]) -> bool:
    """Whether two falls of lines are columns of one table, row beside row.

    The lines of wrapped cells stand closer than rows do.
    """
    if min(len(left), len(right)) < _LEAST_ROWS:
        return False
    if min(each.x0 for each in right) < max(each.x1 for each in left):
        return False
    steps = [below.y - above.y for above, below in pairwise(right)]
    if median(steps) < _ROW_STEP * right[0].size:
        return False
    level = sum(any(abs(p.y - q.y) <= _LEVEL * p.size for q in left) for p in right)
    words = max(median(piece.words for piece in run) for run in (left, right))
    return level >= _ALIGNED * max(len(left), len(right)) and words <= _FEW


def _top(run: Sequence[Piece]) -> float:
    return min(piece.y for piece in run)


def _base(run: Sequence[Piece]) -> float:
    return max(piece.y for piece in run)


def _tangled(one: Sequence[Piece], other: Sequence[Piece]) -> bool:
    """Whether two runs that the file draws apart belong together line by line.

    They stand in each other's way, or side by side as the columns of a table do.
    """
    if _base(one) < _top(other) or _base(other) < _top(one):
        return False
    left, right = sorted((one, other), key=lambda run: min(each.x0 for each in run))
    if min(each.x0 for each in right) < max(each.x1 for each in left):
        return True
    short, long = sorted((one, other), key=len)
    level = sum(any(abs(p.y - q.y) <= _LEVEL * p.size for q in long) for p in short)
    words = max(median(piece.words for piece in run) for run in (one, other))
    return level >= _ALIGNED * len(short) and words <= _FEW


def _goes_back(run: Sequence[Piece], piece: Piece) -> bool:
    """Whether a piece stands above or left of what it follows, and is no next cell."""
    last = run[-1]
    size = max(last.size, piece.size)
    rise = last.y - piece.y
    if rise > _SAME * size:
        right = piece.x0 > last.x0 + _INDENT * size
        return not right or rise > MAX_ROW_LINES * size
    return abs(rise) <= _SAME * size and piece.x0 < last.x0


def _by_place(stretch: Iterable[Piece]) -> list[Piece]:
    """Sort pieces line by line, each line from left to right."""
    found: list[Piece] = []
    line: list[Piece] = []
    for piece in sorted(stretch, key=lambda each: (each.y, each.x0)):
        if line and piece.y - line[0].y > _SAME * max(line[0].size, piece.size):
            found.extend(sorted(line, key=lambda each: each.x0))
            line = []
        line.append(piece)
    found.extend(sorted(line, key=lambda each: each.x0))
    return found


def _written(flow: Iterable[Sequence[Piece]], tables: Sequence[Table]) -> Laid:
    """Write stretches as lines; no row reaches from one into the next."""
    lines: list[str] = []
    kept: list[Row] = []
    told: list[RawTable] = []
    pending: list[Fragment] = []

    def flush() -> None:
        fresh = [row for row in rows(pending) if row.text]
        kept.extend(fresh)
        lines.extend(row.text for row in fresh)
        pending.clear()

    for stretch in flow:
        for piece in stretch:
            if piece.table is None:
                pending.append(
                    Fragment(piece.text, piece.x0, -piece.y, piece.size, piece.bold)
                )
            else:
                flush()
                told.append(_told(tables[piece.table], lines))
        flush()
    return Laid(tuple(lines), tuple(kept), tuple(told))


def _told(table: Table, lines: list[str]) -> RawTable:
    """Write a table's rows, one line each, and tell where.

    What a merged cell says is written once, in the first of the rows it covers, and
    told for all of them.
    """
    opens = not lines
    found: list[RawRow] = []
    heads = 0
    for at, row in enumerate(table.rows):
        own = (cell.text for cell in row if not (cell.carried or cell.covered))
        text = GAP.join(" ".join(part.split()) for part in own if part.strip())
        if text:
            heads += at < table.headers
            found.append(RawRow(len(lines), tuple(cell.text for cell in row)))
            lines.append(text)
    return RawTable(
        tuple(found), heads, table.columns, opens, table.names, table.continues
    )


def _turned(shapes: Shapes, quarters: int) -> Shapes:
    """Turn a page clockwise by quarters, its words' directions with it."""
    if quarters == 0:
        return shapes
    width, height = shapes.width, shapes.height

    def turn(box: _Shaped) -> tuple[float, float, float, float]:
        if quarters == 1:
            return (height - box.bottom, box.x0, height - box.top, box.x1)
        if quarters == 1 + 1:
            return (
                width - box.x1,
                height - box.bottom,
                width - box.x0,
                height - box.top,
            )
        return (box.top, width - box.x1, box.bottom, width - box.x0)

    across = quarters % 2
    return Shapes(
        width=height if across else width,
        height=width if across else height,
        words=tuple(
            Word(
                word.text,
                *turn(word),
                word.size,
                word.bold,
                (word.angle - 90 * quarters) % 360,
                word.symbol,
            )
            for word in shapes.words
        ),
        rules=tuple(Rule(*turn(rule), rule.drawn) for rule in shapes.rules),
        fills=tuple(Fill(*turn(fill), fill.colour) for fill in shapes.fills),
        pictures=tuple(Fill(*turn(fill), fill.colour) for fill in shapes.pictures),
        drawing=shapes.drawing,
    )
