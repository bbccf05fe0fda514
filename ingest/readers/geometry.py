"""What stands where on a page, whoever read it: words, rules, fills, pictures.

All boxes are in points as the page is looked at: its rotation already undone, the
origin at the top left, `top` smaller than `bottom`.
"""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Word:
    """A run of characters without white space, in the order of the file."""

    text: str
    x0: float
    top: float
    x1: float
    bottom: float
    size: float
    """Height of its font."""
    bold: bool = False
    angle: int = 0
    """Its reading direction, degrees anticlockwise in steps of 90: 0 is upright."""
    symbol: bool = False
    """Codes of the private-use area were read as the letters that they stand for."""


@dataclass(frozen=True, slots=True)
class Rule:
    """A horizontal or vertical line, or the edge of a fill."""

    x0: float
    top: float
    x1: float
    bottom: float
    drawn: bool = True
    """Whether it is a line of its own, and not only the edge of a coloured fill."""


@dataclass(frozen=True, slots=True)
class Fill:
    """A filled rectangle that is not white."""

    x0: float
    top: float
    x1: float
    bottom: float
    colour: tuple[int, int, int]


@dataclass(frozen=True, slots=True)
class Shapes:
    """Everything on one page."""

    width: float
    height: float
    words: tuple[Word, ...] = ()
    rules: tuple[Rule, ...] = ()
    fills: tuple[Fill, ...] = ()
    pictures: tuple[Fill, ...] = ()
    """The boxes that pictures cover; their colour means nothing."""
    drawing: bool = False
    """So many segments that they are a drawing: `rules` then leaves them out."""
