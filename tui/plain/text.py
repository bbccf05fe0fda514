"""Foreign text made safe for a terminal, and wrapped to it. Pure."""

from __future__ import annotations

import re
import textwrap
import unicodedata
from collections.abc import Iterable, Sequence

LEAST_WIDTH = 20
_PLAINER = str.maketrans(
    {
        "\u2018": "'",
        "\u2019": "'",
        "\u201a": "'",
        "\u201c": '"',
        "\u201d": '"',
        "\u201e": '"',
        "\u2010": "-",
        "\u2011": "-",
        "\u2012": "-",
        "\u2013": "-",
        "\u2014": "-",
        "\u2212": "-",
        "\u2022": "*",
        "\u2026": "...",
        "\u00a0": " ",
        "\u202f": " ",
        "\u2009": " ",
        "\ufb01": "fi",
        "\ufb02": "fl",
        "\u2126": "Ω",
        "\u03bc": "µ",
    }
)
_SPELLED = {
    "°": "deg ",
    "Ω": "ohm",
    "±": "+-",
    "µ": "u",
    "²": "2",
    "³": "3",
    "√": "sqrt ",
    "≤": "<=",
    "≥": ">=",
    "×": "x",
    "Δ": "delta ",
}
"""What a terminal without the sign gets to see."""
_SENTENCE_END = re.compile(r"(?<=[.!?;:])\s")
CUT_MARK = "[...]"
FULL_LINE = 60
"""Characters from which a line may have been broken by the page's width."""


def clean(text: str) -> str:
    """Return text without anything a terminal would act on.

    Control and format characters go, save the line break; typographic quotes,
    dashes and spaces become plain ones. Brackets and letters of any script stay.
    """
    plainer = text.translate(_PLAINER).replace("\t", " ").replace("\r\n", "\n")
    return "".join(
        letter
        for letter in plainer
        if letter == "\n" or unicodedata.category(letter)[0] != "C"
    )


def one_line(text: str) -> str:
    """Return cleaned text with every run of white space as one space."""
    return " ".join(clean(text).split())


def spelled(text: str, encoding: str) -> str:
    """Return text that `encoding` can carry: signs spelled out, the rest as ``?``."""
    try:
        text.encode(encoding)
    except UnicodeEncodeError:
        for sign, word in _SPELLED.items():
            text = text.replace(sign, word)
        return text.encode(encoding, "replace").decode(encoding)
    return text


def wrap(text: str, width: int, first: str = "", rest: str | None = None) -> list[str]:
    """Return `text` in lines of at most `width`, long words broken.

    Parameters
    ----------
    text : str
        Foreign or ours; it is cleaned and its white space folded.
    width : int
        Columns.
    first, rest : str
        What the first and the further lines begin with; `rest` defaults to spaces
        of the length of `first`.
    """
    further = " " * len(first) if rest is None else rest
    return textwrap.wrap(
        one_line(text),
        max(width, LEAST_WIDTH),
        initial_indent=first,
        subsequent_indent=further,
        break_on_hyphens=False,
    ) or [first.rstrip()]


def excerpt(text: str, length: int) -> str:
    """Return at most `length` characters, cut at a sentence end and marked.

    Without a sentence end in reach the cut is at a word. The text's own words are
    never changed.
    """
    whole = one_line(text)
    if len(whole) <= length:
        return whole
    ends = [found.start() for found in _SENTENCE_END.finditer(whole, 0, length)]
    fitting = [end for end in ends if end >= length // 3]
    cut = fitting[-1] if fitting else whole.rfind(" ", 0, length)
    return f"{whole[: cut if cut > 0 else length]} {CUT_MARK}"


def excerpt_lines(text: str, length: int) -> list[str]:
    """Return the lines of a passage, cut like `excerpt` after `length` characters.

    Lines stay lines, for a table's rows are lines, and so do the gaps in them.
    """
    lines = _paragraphs(clean(text).splitlines())
    kept: list[str] = []
    left = length
    for line in lines:
        if len(line) > left:
            begun = excerpt(line, left)
            whole_sentence = begun.endswith(CUT_MARK) and _SENTENCE_END.search(begun)
            return [*kept, begun if whole_sentence or not kept else CUT_MARK]
        kept.append(line)
        left -= len(line)
    return kept


def _paragraphs(lines: Iterable[str]) -> list[str]:
    """Draw lines together that a page's width broke; a row of a table stays alone."""
    found: list[str] = []
    for line in (each.strip() for each in lines):
        before = found[-1] if found else ""
        if not line:
            continue
        broken = len(before) >= FULL_LINE and not before.endswith((".", ":", ";"))
        if broken and "  " not in line and "  " not in before:
            found[-1] = f"{before} {line}"
        else:
            found.append(line)
    return found


def wrap_kept(text: str, width: int, indent: str) -> list[str]:
    """Return one line of a passage in lines of `width`, the gaps in it kept."""
    return textwrap.wrap(
        text,
        max(width, LEAST_WIDTH),
        initial_indent=indent,
        subsequent_indent=indent + "  ",
        break_on_hyphens=False,
    )


def table(rows: Iterable[Sequence[str]], gap: int = 2) -> list[str]:
    """Return rows as lines with aligned columns, the last one ragged."""
    cells = [[one_line(cell) for cell in row] for row in rows]
    if not cells:
        return []
    widths = [
        max(len(row[column]) for row in cells) for column in range(len(cells[0]) - 1)
    ]
    return [
        "".join(
            cell.ljust(width + gap) for cell, width in zip(row, widths, strict=False)
        )
        + row[-1]
        for row in cells
    ]


def count(number: int, one: str, many: str = "") -> str:
    """Return ``1 page`` or ``2 pages``."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def numbers(pages: Iterable[int]) -> str:
    """Return page numbers with runs drawn together: ``3, 7-9``."""
    runs: list[list[int]] = []
    for page in sorted(set(pages)):
        if runs and page == runs[-1][-1] + 1:
            runs[-1].append(page)
        else:
            runs.append([page])
    return ", ".join(
        str(run[0]) if len(run) == 1 else f"{run[0]}-{run[-1]}" for run in runs
    )
