"""Cuts the characters that pdfium gives into words with their places."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import TYPE_CHECKING

from ingest.readers.geometry import Frame, Word
from ingest.readers.pdfium_values import Run, Style

if TYPE_CHECKING:
    from ingest.readers.pdfium import OpenPage

ASCENT, DESCENT = 0.8, 0.2
"""A word's box stands so far over and under its base line, in heights of its font:
alike for all fonts, so that the base line can be told from the box."""
HYPHENS = "\x02\ufffe\u00ad"
"""What pdfium gives for the hyphen at a line's end."""
UP, OVER = 90, 180
"""Reading directions, degrees anticlockwise."""
RAISED = 0.15
SMALL = 0.8
OFF_LINE = 0.6
_WORD = re.compile(rf"[^\s\x00{HYPHENS}]+[{HYPHENS}]?|[{HYPHENS}]")
_ODD = re.compile(f"[{HYPHENS}\uf020-\uf07e]")
_PRIVATE = re.compile("[\uf020-\uf07e]")
_SUPERSCRIPTS = str.maketrans("0123456789+-", "⁰¹²³⁴⁵⁶⁷⁸⁹⁺⁻")


def words(page: OpenPage, frame: Frame) -> tuple[Word, ...]:
    """Return the words of a page in the order of the file.

    Parameters
    ----------
    page : OpenPage
        What pdfium gives.
    frame : Frame
        How the page is seen.
    """
    text = page.text()
    spans = [match.span() for match in _WORD.finditer(text)]
    odd = bool(_ODD.search(text))
    found: list[Word] = []
    # What is level, most words, is made in this loop: calls would cost the most.
    level: Style | None = None
    over = under = 0.0
    upright, size, bold = frame.turns == 0, 0.0, False
    x0, y0 = frame.left, frame.top
    for (start, end), run in zip(spans, page.runs(spans), strict=True):
        left, _, right, _, _, y, away, style = run
        if style is not level and upright and style.a > abs(style.b):
            level, size, bold = style, style.size, style.font.bold
            over, under = ASCENT * size, DESCENT * size
        if style is not level or away > OFF_LINE * size:
            found.extend(_words(page, frame, text, (start, end), run))
            continue
        said = text[start:end]
        if odd or said[-1].isdigit():
            said, symbol = _shown(page, text, (start, end))
        else:
            symbol = False
        y = y0 - y
        top, bottom = y - over, y + under
        word = Word(said, left - x0, top, right - x0, bottom, size, bold, 0, symbol)
        found.append(word)
    return tuple(found)


def _words(
    page: OpenPage, frame: Frame, text: str, span: tuple[int, int], run: Run
) -> Iterator[Word]:
    """Give the word of a span; its parts where it leaves its line."""
    start, end = span
    if run.away <= OFF_LINE * run.style.size:
        yield _word(page, frame, text, span, run)
        return
    cuts = [at for at in range(start + 1, end) if _leaves(page, at, run.style)]
    parts = list(zip([start, *cuts], [*cuts, end], strict=True))
    for part, placed in zip(parts, page.runs(parts), strict=True):
        yield _word(page, frame, text, part, placed)


def _leaves(page: OpenPage, at: int, style: Style) -> bool:
    """Whether a character stands off the line of the one before it."""
    (x0, y0), (x1, y1) = page.origin(at - 1), page.origin(at)
    across = (y1 - y0) * style.a - (x1 - x0) * style.b
    return abs(across) > OFF_LINE * max(style.size, 1.0)


def _word(
    page: OpenPage, frame: Frame, text: str, span: tuple[int, int], run: Run
) -> Word:
    shown, symbol = _shown(page, text, span)
    size, style = run.style.size, run.style
    angle = frame.angle(style.a, style.b)
    x, y = frame.see(run.x, run.y)
    over, under = ASCENT * size, DESCENT * size
    left, top, right, bottom = frame.see_box(*run[:4])
    if angle == 0:
        top, bottom = y - over, y + under
    elif angle == UP:
        left, right = x - over, x + under
    elif angle == OVER:
        top, bottom = y - under, y + over
    else:
        left, right = x - under, x + over
    return Word(shown, left, top, right, bottom, size, style.font.bold, angle, symbol)


def _shown(page: OpenPage, text: str, span: tuple[int, int]) -> tuple[str, bool]:
    """Return what a span says, and whether codes of a symbol font were read."""
    start, end = span
    run = text[start:end]
    if run[-1] in HYPHENS:
        run = run[:-1] + "-"
    symbol = False
    if _PRIVATE.search(run):
        read = [_letter(page, char, start + at) for at, char in enumerate(run)]
        symbol, run = "".join(read) != run, "".join(read)
    if len(run) > 1 and run[-1].isdigit():
        run = _raised(page, run, start)
    return run, symbol


def _letter(page: OpenPage, char: str, at: int) -> str:
    """Read a code of the private-use area, but for fonts of pictures."""
    if not _PRIVATE.match(char) or page.style(at).font.symbols:
        return char
    return chr(ord(char) - 0xF000)


def _raised(page: OpenPage, run: str, start: int) -> str:
    """Keep 10³ from reading 103: small digits over the line stay raised."""
    size = page.style(start).size
    last = start + len(run) - 1
    if page.style(last).size > SMALL * size:
        return run
    cut = len(run)
    while cut > 1 and page.style(start + cut - 1).size <= SMALL * size:
        cut -= 1
    (x0, y0), (x1, y1) = page.origin(start), page.origin(last)
    style = page.style(start)
    rise = (y1 - y0) * style.a - (x1 - x0) * style.b
    if rise < RAISED * size:
        return run
    return run[:cut] + run[cut:].translate(_SUPERSCRIPTS)
