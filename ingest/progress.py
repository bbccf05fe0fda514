"""What long work says of itself; how it looks is decided elsewhere."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Progress:
    """One step of long work: `done` of `total` in `stage`."""

    stage: str
    """look | read | store | embed | ..., a word that a screen may translate."""
    done: int
    total: int
    note: str = ""
    """What is in hand: a document's path."""

    @property
    def finished(self) -> bool:
        """Whether the stage has nothing left to do."""
        return self.done >= self.total
