"""The lines of a passage that are embedded beside the whole of it. Pure.

One row of a table, or one sentence, drowns in the vector of a passage of two
hundred tokens. Its own vector, under the heading, is near to a question about
just that row.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from assistant.library.types import Passage

SHORTEST = 9
"""Characters of a line worth a vector."""

_TABLE = re.compile(r"\S(?: {2,}|\t| \| )\S")
_SENTENCE_END = re.compile(r"(?<=[.:!?])\s+|\n(?=[-\u2022\d(])")
_LINE_END = re.compile(r"\n")


def line_spans(passage: Passage) -> Iterator[tuple[int, int]]:
    """Yield the spans, within the passage's text, of its rows or sentences.

    Nothing when the passage is one line: the whole of it has a vector already.

    Examples
    --------
    >>> passage = Passage(1, 0, 30, "The fan starts. The lamp stays lit.")
    >>> [passage.text[a:b] for a, b in line_spans(passage)]
    ['The fan starts.', 'The lamp stays lit.']
    """
    text = passage.text
    table = passage.lead or _TABLE.search(text)
    breaks = (_LINE_END if table else _SENTENCE_END).finditer(text)
    spans = []
    start = 0
    for stop, following in [*((b.start(), b.end()) for b in breaks), (len(text),) * 2]:
        if len(text[start:stop].strip()) >= SHORTEST:
            spans.append((start, stop))
        start = following
    if len(spans) > 1:
        yield from spans


def line_text(section: str, line: str) -> str:
    r"""Return what is embedded for a line: its heading, then the line, on one line.

    Examples
    --------
    >>> line_text("Lamp table", "4   sensor\n out of range")
    'Lamp table: 4 sensor out of range'
    """
    plain = " ".join(line.split())
    heading = " ".join(section.split())
    return f"{heading}: {plain}" if heading and heading != plain else plain
