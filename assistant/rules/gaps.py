"""Finds what a table of lamps could show and has no row for."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Hashable, Iterator, Mapping, Sequence
from itertools import pairwise, product

from assistant.rules.examples import in_words
from assistant.rules.mistakes import Mistake, PackLines
from assistant.rules.pack import Pack
from assistant.rules.pairs import conditions
from assistant.signals.cells import Together, cells_of
from assistant.signals.kinds import (
    BankCount,
    Beeps,
    CountPerWindow,
    FlickerCount,
    GroupThenPause,
    Lamp,
    LampState,
    SeveralLamps,
    Signal,
)
from assistant.signals.observation import Observation
from assistant.signals.sights import cell_sight

FEWEST_ROWS = 3
"""Rows that make a table in which one can be left out."""
MOST_SIGHTS = 64
"""Combinations of lamps up to which a grid is looked through for what is missing."""
FULL = 0.75
"""Share of all combinations from which a grid is taken for one that lists them all."""
_TOLD = "whoever sees it is told that it is not in this document"
Counting = CountPerWindow | GroupThenPause | Beeps | BankCount | FlickerCount


def find_gaps(pack: Pack, lines: PackLines) -> Iterator[Mistake]:
    """Yield counts and combinations of lamps that a table leaves out, as warnings.

    A list with more holes than rows is no table: it picks single counts out.
    """
    counts: dict[Hashable, list[Counting]] = defaultdict(list)
    grids: dict[Hashable, list[SeveralLamps]] = defaultdict(list)
    for row in pack.rows:
        held = (row.kind, row.applies_to, conditions(row))
        if isinstance(row, Counting):
            counts[(*held, *_beside(row))].append(row)
        elif isinstance(row, SeveralLamps):
            lamps = frozenset(cell.lamp for cell in row.lamps)
            grids[(*held, lamps)].append(row)
    for table in counts.values():
        yield from _counts_left_out(table, lines)
    for grid in grids.values():
        yield from _sights_left_out(grid, lines)


def _beside(row: Counting) -> tuple[Hashable, ...]:
    """Return what tells the tables of counts of one kind apart."""
    match row:
        case BankCount():
            return (row.bank_emitter, row.bank_state, row.count_emitter)
        case FlickerCount():
            return (row.flicker_emitter, row.count_emitter, row.display_level)
        case Beeps():
            return (row.buzzer,)
        case _:
            return (row.lamp,)


def _counts_left_out(table: Sequence[Counting], lines: PackLines) -> Iterator[Mistake]:
    rows: Mapping[int, Signal] = {row.count: row for row in reversed(table)}
    counts = sorted(rows)
    missing = counts[-1] - counts[0] + 1 - len(counts)
    if len(counts) < FEWEST_ROWS or missing >= len(counts):
        return
    for before, after in pairwise(counts):
        if after == before + 1:
            continue
        first, last = before + 1, after - 1
        run = f"{first}" if first == last else f"{first} to {last}"
        file, line = lines.place(rows[after].id)
        told = (
            f"the table leaves out {run}: {_counted(table[0], first)} has no row, "
            f"though {before} (line {lines.place(rows[before].id)[1]}) and {after} "
            "have one"
        )
        yield Mistake(file, line, told, _TOLD, "warning")


def _counted(row: Counting, count: int) -> str:
    """Return a count on the lamps of a row, in words."""
    if isinstance(row, Together):
        other = row.model_copy(update={"count": count})
        return _words([cell for cell in cells_of(other) if cell.state != "any"])
    lamp = row.buzzer if isinstance(row, Beeps) else row.lamp
    seen = Observation(state="count", count=(count,))
    if isinstance(row, Beeps):
        seen = Observation(state="count", count=(count,), emitter="buzzer")
    return in_words([seen], lamp or Lamp())


def _words(cells: Sequence[LampState]) -> str:
    seen = [cell_sight(cell, cell) for cell in cells]
    return in_words([one for one in seen if one is not None])


def _sights_left_out(
    grid: Sequence[SeveralLamps], lines: PackLines
) -> Iterator[Mistake]:
    """Yield the few combinations that a grid which lists nearly all leaves out.

    Only of lamps that are lit or dark: where some flash, makers leave out what their
    boards never show.
    """
    lamps = [cell.lamp for cell in grid[0].lamps]
    listed = [{cell.lamp: _doing(cell) for cell in row.lamps} for row in grid]
    states = [sorted({row[lamp] for row in listed} - {_ANY}) for lamp in lamps]
    if any(doing not in _STILL for held in states for doing in held):
        return
    whole = [dict(zip(lamps, sight, strict=True)) for sight in _few(states)]
    left = [sight for sight in whole if not any(_fits(sight, row) for row in listed)]
    enough = len(whole) - len(left) >= max(FEWEST_ROWS, FULL * len(whole))
    if not left or not enough:
        return
    first, last = (lines.place(row.id) for row in (grid[0], grid[-1]))
    for sight in left:
        cells = [
            LampState(lamp=lamp, state=state, count=count or None)  # type: ignore[arg-type]
            for lamp, (state, count) in sight.items()
        ]
        told = (
            f"the lamps from line {first[1]} to line {last[1]} leave out: "
            f"{_words(cells)} has no row"
        )
        yield Mistake(*last, told, _TOLD, "warning")


Doing = tuple[str, int]
_ANY: Doing = ("any", 0)
_STILL: frozenset[Doing] = frozenset({("on", 0), ("off", 0)})


def _doing(cell: LampState) -> Doing:
    return (cell.state, cell.count or 0)


def _few(states: Sequence[Sequence[Doing]]) -> Iterator[tuple[Doing, ...]]:
    """Yield every combination, where there are few enough of them."""
    number = 1
    for held in states:
        number *= len(held)
    if 1 < number <= MOST_SIGHTS:
        yield from product(*states)


def _fits(sight: Mapping[Lamp, Doing], row: Mapping[Lamp, Doing]) -> bool:
    return all(row[lamp] in (doing, _ANY) for lamp, doing in sight.items())
