"""What the door to pdfium gives of a page: plain values, and nothing of pdfium."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple


@dataclass(frozen=True, slots=True)
class Font:
    """What is asked of a font."""

    bold: bool
    symbols: bool
    """Its codes are pictures and stand for no letters."""


@dataclass(frozen=True, slots=True)
class Style:
    """How the characters of one text object are set."""

    size: float
    """Height of the font on the page, in points."""
    a: float
    b: float
    """Direction of the line, in the space of the file."""
    font: Font


class Run(NamedTuple):
    """Where a word stands, in the space of the file."""

    left: float
    low: float
    right: float
    high: float
    """Of its loose character boxes."""
    x: float
    y: float
    """Where its first character stands on the base line."""
    away: float
    """How far its last character may lie off the line of the first."""
    style: Style


@dataclass(frozen=True, slots=True)
class Picture:
    """A page as it is drawn, row by row from the top left."""

    width: int
    height: int
    grey: bytearray
    """One byte a pixel, 255 is white."""


@dataclass(slots=True)
class Drawn:
    """One painted path, its points in the space of the file."""

    points: list[list[tuple[float, float]]]
    """Each run of straight lines, curves left out."""
    curved: bool
    stroked: bool
    filled: bool
    colour: tuple[int, int, int]


@dataclass(slots=True)
class Objects:
    """What stands on a page beside its text."""

    paths: list[Drawn] = field(default_factory=list)
    pictures: list[tuple[float, float, float, float]] = field(default_factory=list)
    """Left, bottom, right and top, in the space of the file."""
    shaded: bool = False
    drawing: bool = False
    """Some path, or all together, have more segments than a table has."""
    segments: int = 0
    seen: int = 0
