"""The one way text reaches the screen: literal, never markup.

Every text that we did not write ourselves, and every text made with one, goes through
`literal`. Brackets in it are brackets; control characters in it are gone.
"""

from __future__ import annotations

from collections.abc import Iterable

from textual.content import Content

from tui.plain.text import clean


def literal(text: str, style: str = "") -> Content:
    """Return text as content that is shown as it is written.

    Parameters
    ----------
    text : str
        Anything at all.
    style : str
        Of the whole text, such as ``bold``; empty for none.
    """
    content = Content(clean(text))
    return content.stylize(style) if style else content


def stacked(lines: Iterable[Content]) -> Content:
    """Return contents as one, each on a line of its own."""
    return Content("\n").join(lines)


def marked(text: str, start: int, end: int, style: str = "reverse") -> Content:
    """Return literal text with one span of it set off.

    `start` and `end` count in `text`; what `clean` takes out moves them along.
    """
    before = len(clean(text[:start]))
    within = len(clean(text[start:end]))
    return Content(clean(text)).stylize(style, before, before + within)
