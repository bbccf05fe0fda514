"""A reading on its curve as a PNG for the record: the one door to Pillow."""

from __future__ import annotations

import textwrap
from typing import TYPE_CHECKING

from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity
from tui.plain.plot import Scale, scales

if TYPE_CHECKING:
    from pathlib import Path

    from PIL.ImageDraw import ImageDraw

    from assistant.checks.curve import Curve, Point

SIZE = (720, 480)
_LEFT, _TOP, _RIGHT, _BOTTOM = 90, 40, 30, 70
_INK, _PALE, _MARK = (20, 20, 20), (150, 150, 150), (190, 30, 30)
_TICKS = 5
_RADIUS = 6
_NOTE = 100
"""Letters in one line of the note."""


def write_png(
    curve: Curve, path: Path, like: tuple[str, str] = ("", ""), note: str = ""
) -> None:
    """Write a plot as a PNG; the same curve gives the same picture.

    Parameters
    ----------
    curve : Curve
        With at least two points.
    path : Path
        Where it is written; what stands there is replaced.
    like : tuple of str
        Units of x and y as a person wrote them; empty for the usual ones.
    note : str
        One line below the axis, such as the verdict.

    Raises
    ------
    OSError
        When it cannot be written there.
    """
    from PIL import Image, ImageDraw

    picture = Image.new("RGB", SIZE, "white")
    draw = ImageDraw.Draw(picture)
    across, up = scales(curve)
    _axes(draw, curve, (across, up), like)
    for points, colour, wide in (
        (curve.low, _PALE, 1),
        (curve.high, _PALE, 1),
        (curve.line, _INK, 2),
    ):
        if points:
            draw.line([_place(p, across, up) for p in points], fill=colour, width=wide)
    if curve.reading is not None:
        x, y = _place(curve.reading, across, up)
        draw.ellipse(
            (x - _RADIUS, y - _RADIUS, x + _RADIUS, y + _RADIUS), outline=_MARK, width=3
        )
    draw.text((_LEFT, 12), _plain(curve.title), fill=_INK, font_size=16)
    for place, line in enumerate(textwrap.wrap(_plain(note), _NOTE)[:2]):
        draw.text((_LEFT, SIZE[1] - 34 + 16 * place), line, fill=_INK, font_size=12)
    picture.save(path, format="PNG", optimize=True)


def _place(point: Point, across: Scale, up: Scale) -> tuple[float, float]:
    wide, high = SIZE[0] - _LEFT - _RIGHT, SIZE[1] - _TOP - _BOTTOM
    return _LEFT + across.share(point[0]) * wide, _TOP + (1 - up.share(point[1])) * high


def _axes(
    draw: ImageDraw,
    curve: Curve,
    both: tuple[Scale, Scale],
    like: tuple[str, str],
) -> None:
    across, up = both
    right, bottom = SIZE[0] - _RIGHT, SIZE[1] - _BOTTOM
    draw.rectangle((_LEFT, _TOP, right, bottom), outline=_PALE)
    for tick in range(_TICKS):
        share = tick / (_TICKS - 1)
        x, y = _LEFT + share * (right - _LEFT), bottom - share * (bottom - _TOP)
        draw.line((x, bottom, x, bottom + 5), fill=_PALE)
        draw.line((_LEFT - 5, y, _LEFT, y), fill=_PALE)
        told = _amount(across.at(share), curve.x_unit, like[0])
        draw.text((x, bottom + 8), told, fill=_INK, font_size=12, anchor="ma")
        told = _amount(up.at(share), curve.y_unit, like[1])
        draw.text((_LEFT - 8, y), told, fill=_INK, font_size=12, anchor="rm")


def _amount(value: float, unit: str, like: str) -> str:
    return _plain(format_quantity(Quantity(value=value, unit=unit), like=like or None))


def _plain(text: str) -> str:
    """Return a text in the letters that the picture's own face has."""
    for sign, word in (("Ω", "ohm"), ("µ", "u"), ("²", "2"), ("³", "3")):
        text = text.replace(sign, word)
    return text
