"""What long work says of itself; how it looks is decided elsewhere."""

from __future__ import annotations

from dataclasses import dataclass

LEAST_SHARE = 0.01
LEAST_SECONDS = 3.0
"""Before so much is done, an estimate of what is left would mislead."""


@dataclass(frozen=True, slots=True)
class Tally:
    """How far a whole build is, over all its documents."""

    documents: int
    """Documents taken in."""
    of: int
    """Documents to take in."""
    pages: int
    """Pages read."""
    about: int
    """Pages in all: known of the files that were opened, estimated of the rest."""
    passages: int


@dataclass(frozen=True, slots=True)
class Progress:
    """One step of long work: `done` of `total` in `stage`."""

    stage: str
    """look | read | store | embed | ..., a word that a screen may translate."""
    done: int
    total: int
    note: str = ""
    """What is in hand: a document's path."""
    tally: Tally | None = None
    """The whole build, while documents are read and stored."""

    @property
    def finished(self) -> bool:
        """Whether the stage has nothing left to do."""
        return self.done >= self.total


def seconds_left(done: int, total: int, elapsed: float) -> float | None:
    """Return how long the rest takes at the pace so far; None while it is too early.

    Examples
    --------
    >>> seconds_left(25, 100, 60.0)
    180.0
    >>> seconds_left(0, 100, 60.0) is None
    True
    """
    if elapsed < LEAST_SECONDS or done <= LEAST_SHARE * total:
        return None
    return elapsed * max(0, total - done) / done


class Pace:
    """Counts a build's documents and pages, and estimates the pages still shut.

    Parameters
    ----------
    sizes : sequence of int
        Bytes of every file to read, in order.
    """

    def __init__(self, sizes: list[int]) -> None:
        self._shut = dict(enumerate(sizes))
        self._of = len(sizes)
        self._opened = 0
        self._known = 0
        self._documents = 0
        self._pages = 0
        self._passages = 0

    def open(self, at: int, pages: int) -> None:
        """Note that a file was opened, and how many pages it has."""
        self._opened += self._shut.pop(at, 0)
        self._known += pages

    def page(self) -> None:
        """Note a page that was read."""
        self._pages += 1

    def document(self, at: int, passages: int = 0) -> None:
        """Note a document that was stored, or refused."""
        self._shut.pop(at, 0)
        self._documents += 1
        self._passages += passages

    def tally(self) -> Tally:
        """Return the count so far."""
        a_byte = self._known / self._opened if self._opened else 0.0
        about = max(self._pages, round(self._known + a_byte * sum(self._shut.values())))
        return Tally(self._documents, self._of, self._pages, about, self._passages)
