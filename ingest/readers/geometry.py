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


@dataclass(frozen=True, slots=True)
class Matrix:
    """An affine map, written as in PDF 32000-1, 8.3.4: x' = a x + c y + e."""

    a: float = 1.0
    b: float = 0.0
    c: float = 0.0
    d: float = 1.0
    e: float = 0.0
    f: float = 0.0

    def apply(self, x: float, y: float) -> tuple[float, float]:
        """Return where a point lands."""
        return (
            self.a * x + self.c * y + self.e,
            self.b * x + self.d * y + self.f,
        )

    def then(self, outer: Matrix) -> Matrix:
        """Return this map with another one after it."""
        return Matrix(
            self.a * outer.a + self.b * outer.c,
            self.a * outer.b + self.b * outer.d,
            self.c * outer.a + self.d * outer.c,
            self.c * outer.b + self.d * outer.d,
            *outer.apply(self.e, self.f),
        )

    def unit_box(self) -> tuple[float, float, float, float]:
        """Return left, bottom, right and top of the unit square, mapped."""
        corners = [self.apply(x, y) for x in (0, 1) for y in (0, 1)]
        xs, ys = zip(*corners, strict=True)
        return min(xs), min(ys), max(xs), max(ys)


@dataclass(frozen=True, slots=True)
class Frame:
    """The box of a page in the space of its file, and how it is turned to be seen."""

    left: float
    bottom: float
    right: float
    top: float
    turns: int = 0
    """Quarter turns clockwise (/Rotate over 90)."""

    @property
    def size(self) -> tuple[float, float]:
        """Width and height as the page is looked at."""
        width, height = self.right - self.left, self.top - self.bottom
        return (height, width) if self.turns % 2 else (width, height)

    def see(self, x: float, y: float) -> tuple[float, float]:
        """Return where a point of the file is seen, from the top left."""
        if self.turns == 0:
            return x - self.left, self.top - y
        if self.turns == 1:
            return y - self.bottom, x - self.left
        if self.turns == 1 + 1:
            return self.right - x, y - self.bottom
        return self.top - y, self.right - x

    def see_box(
        self, left: float, bottom: float, right: float, top: float
    ) -> tuple[float, float, float, float]:
        """Return left, top, right and bottom of a box as it is seen."""
        if self.turns == 0:
            x, y = self.left, self.top
            return left - x, y - top, right - x, y - bottom
        x0, y0 = self.see(left, bottom)
        x1, y1 = self.see(right, top)
        return min(x0, x1), min(y0, y1), max(x0, x1), max(y0, y1)

    def angle(self, a: float, b: float) -> int:
        """Return the reading direction of a line that runs along (a, b).

        Degrees anticlockwise as seen, in steps of 90.
        """
        if self.turns == 0 and a > abs(b):
            return 0
        turned = (a, b)
        for _ in range(self.turns):
            turned = (turned[1], -turned[0])
        dx, dy = turned
        if abs(dx) >= abs(dy):
            return 0 if dx >= 0 else 180
        return 90 if dy > 0 else 270
