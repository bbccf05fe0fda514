"""Tells a list of contents from a table, however it is ruled or banded."""

from __future__ import annotations

import re
from collections.abc import Sequence

from ingest.grids.wording import is_code

LEAST = 3
"""Rows; fewer say nothing."""
_PAGE = re.compile(
    r"(?P<leader>(?:[.·…_] ?){3,})? ?(?:(?P<roman>[ivxlc]+)|(?P<number>\d{1,4}))$"
)
_LEADER = re.compile(r"(?:[.·…_] ?){3,}")


def is_contents(rows: Sequence[Sequence[str]]) -> bool:
    """Return whether rows say on which pages sections stand.

    Each ends in a page number, in rising order, and some of them in a Roman one or
    behind leaders; a code at the beginning of a row makes it a row of a table.

    Parameters
    ----------
    rows : sequence of sequence of str
        What the cells say, without headers.

    Examples
    --------
    >>> is_contents([("Safety", "ii"), ("1 Data", "1"), ("2 Boards", "4")])
    True
    >>> is_contents([("Lamp", "1"), ("Pause", "2"), ("Group", "4")])
    False
    """
    told = [[cell for cell in map(str.strip, row) if cell] for row in rows]
    told = [row for row in told if row]
    if len(told) < LEAST:
        return False
    led = False
    before = 0
    for row in told:
        match = _PAGE.search(row[-1])
        first = row[0].split()[0]
        if match is None or (is_code(first) and not first.isdigit()):
            return False
        alone = match.start() == 0 and len(row) > 1
        leader = bool(match["leader"]) or any(map(_LEADER.search, row[:-1]))
        if not (alone or leader):
            return False
        led = led or leader or match["roman"] is not None
        number = int(match["number"] or 0)
        if match["number"] and number < before:
            return False
        before = max(before, number)
    return led
