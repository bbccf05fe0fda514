"""A folded word and where it came from."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Piece:
    """One folded word, with its span in the source text."""

    text: str
    start: int
    end: int
