"""How well found tables match tables that a person wrote down."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from difflib import SequenceMatcher

LONG = 25
"""Characters from which a cell may differ a little."""
ALIKE = 0.92
_SPACES = re.compile(r"[\s\-\u2010-\u2015]+")

Rows = Sequence[Sequence[str]]


@dataclass(frozen=True)
class Score:
    """Counts, so that the scores of tables add up."""

    found: int = 0
    wanted: int = 0
    right: int = 0
    pairs: int = 0
    linked: int = 0

    def __add__(self, other: Score) -> Score:
        return Score(
            self.found + other.found,
            self.wanted + other.wanted,
            self.right + other.right,
            self.pairs + other.pairs,
            self.linked + other.linked,
        )

    @property
    def f1(self) -> float:
        """Of cells: twice the right ones over all that were found and wanted."""
        both = self.found + self.wanted
        return 2 * self.right / both if both else 1.0

    @property
    def link(self) -> float:
        """Share of (code, other cell of its row) that stand in one found row."""
        return self.linked / self.pairs if self.pairs else 1.0


def plain(text: str) -> str:
    """Return a cell without white space and hyphens."""
    return _SPACES.sub("", text)


def alike(one: str, other: str) -> bool:
    """Whether two plain cells say the same; long ones nearly."""
    if one == other:
        return True
    if min(len(one), len(other)) < LONG:
        return False
    return SequenceMatcher(None, one, other, autojunk=False).ratio() >= ALIKE


def score(found: Rows, wanted: Rows) -> Score:
    """Compare one found table with the one that a person wrote.

    Parameters
    ----------
    found, wanted : sequence of sequence of str
        Rows of cells; the first cell of a wanted row below the first is its code.
    """
    have = [[plain(cell) for cell in row if plain(cell)] for row in found]
    want = [[plain(cell) for cell in row if plain(cell)] for row in wanted]
    cells = [cell for row in have for cell in row]
    pool = Counter(cells)
    right = sum(_take(pool, cell) for row in want for cell in row)
    pairs = linked = 0
    for row in want[1:]:
        rows = [set(line) for line in have if row[0] in line]
        for other in row[1:]:
            pairs += 1
            linked += any(_holds(line, other) for line in rows)
    return Score(len(cells), sum(map(len, want)), right, pairs, linked)


def _take(pool: Counter[str], cell: str) -> bool:
    names = [cell, *pool]
    for name in names:
        if pool[name] > 0 and alike(name, cell):
            pool[name] -= 1
            return True
    return False


def _holds(line: set[str], cell: str) -> bool:
    return any(alike(each, cell) for each in line)
