"""The words of a page by height, so that a band of them is cut out at once."""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import TYPE_CHECKING

from ingest.grids.model import Box

if TYPE_CHECKING:
    from ingest.readers.geometry import Word


def place(places: Sequence[float], value: float) -> int:
    """Return the step between two places that a value lies in; -1 outside.

    >>> place([10.0, 20.0, 40.0], 25.0), place([10.0, 20.0, 40.0], 9.0)
    (1, -1)
    """
    at = bisect_right(places, value) - 1
    return at if 0 <= at < len(places) - 1 else -1


def middle(word: Word) -> tuple[float, float]:
    """Return the middle of a word."""
    return (word.x0 + word.x1) / 2, (word.top + word.bottom) / 2


class Spread:
    """Words sorted by the height of their middle.

    Parameters
    ----------
    words : iterable of Word
        In any order.
    """

    def __init__(self, words: Iterable[Word]) -> None:
        self.words = sorted(words, key=lambda word: (word.top + word.bottom, word.x0))
        self._ys = [(word.top + word.bottom) / 2 for word in self.words]

    def between(self, top: float, bottom: float) -> list[Word]:
        """Return the words whose middle lies so high, from the top."""
        return self.words[bisect_left(self._ys, top) : bisect_left(self._ys, bottom)]

    def within(self, box: Box) -> Spread:
        """Return the words whose middle lies in a box."""
        return Spread(
            word
            for word in self.between(box.top, box.bottom)
            if box.x0 <= (word.x0 + word.x1) / 2 <= box.x1
        )

    def bands(self, ys: Sequence[float]) -> list[list[Word]]:
        """Return the words between each height and the next."""
        cuts = [bisect_left(self._ys, y) for y in ys]
        return [self.words[first:last] for first, last in pairwise(cuts)]
