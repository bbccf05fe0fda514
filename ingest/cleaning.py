"""Raw page text becomes the page text that is stored: pure.

What is repaired stays repaired for good: the stored page is the cleaned one, and
every passage is a span of it. Running heads and feet stay in the page; passages
only leave them out.
"""

from __future__ import annotations

import re
import unicodedata
from collections import Counter
from collections.abc import Iterable, Sequence

EDGE_LINES = 3
"""So many lines at the top and at the bottom may be running ones."""
RUNNING_PAGES = 3
RUNNING_SHARE = 0.2
TABLE_LINES = 3
LONG_CELL = 10
"""Letters by which one cell of a line is enough to know it again."""

_KEEP = ("<super>", "<sub>", "<fraction>")
"""Folded, `10³` would read 103 and `2½` 21⁄2: these stay as they are."""
_FORMAT_ALLOWED = "\n\t"
_LIGATURE = re.compile(r"\b([A-Za-z]*(?:ffi|ffl|ff|fi|fl)) ([a-z]+)")
_BARE = ("ffi", "ffl", "ff", "fi", "fl")
_HYPHEN = re.compile(r"\b([^\W\d_]+)-\n([^\W\d_]+)\b(?![-\d])")
_LEADER = re.compile(r"((?:[.] ?){3}|_{3})[._ ]*[._](?: |$)?", re.MULTILINE)
_WORD = re.compile(r"[^\W\d_]+")
_DIGITS = re.compile(r"\d+")
_ROMAN_END = re.compile(r"\b[ivxlc]{1,6}$|^[ivxlc]{1,6}\b")


def repair(text: str) -> str:
    r"""Return the text with its characters put right, line by line the same.

    Compatibility forms are folded (NFKC) except superscripts, subscripts and
    fractions; control and invisible characters go; lone surrogates become U+FFFD;
    the dots that lead to a page number, or lines to write on, are shortened.

    Examples
    --------
    >>> repair("\ufb02ash\x00ing 10³ Ω\u200b")
    'flashing 10³ Ω'
    """
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    text = text.replace("\x0b", "\n").replace("\x0c", "\n").replace("\u2028", "\n")
    text = text.replace("\u00ad\n", "").replace("\ufffe\n", "").replace("\x02\n", "")
    signs = set(text)
    text = text.translate({ord(sign): _kept(sign) for sign in signs})
    keep = "".join(filter(_stays, sorted(signs)))
    parts = re.split(f"([{re.escape(keep)}])", text) if keep else [text]
    whole = "".join(part if part and part in keep else _folded(part) for part in parts)
    lines = _LEADER.sub(r"\1 ", whole).split("\n")
    return "\n".join(line.rstrip() for line in lines)


def _stays(char: str) -> bool:
    return unicodedata.decomposition(char).startswith(_KEEP)


def _folded(run: str) -> str:
    return unicodedata.normalize("NFKC", run)


def _kept(char: str) -> str:
    if char in _FORMAT_ALLOWED:
        return char
    category = unicodedata.category(char)
    if category in {"Cc", "Cf", "Cn"}:
        return ""
    return "\ufffd" if category == "Cs" else char


def vocabulary(pages: Iterable[str]) -> frozenset[str]:
    """Return every word of the document, lower case, that is only letters.

    The halves of a word parted at a line end are not in it.
    """
    words: set[str] = set()
    for page in pages:
        whole = _HYPHEN.sub(" ", page)
        words.update(match.lower() for match in _WORD.findall(whole))
    return frozenset(words)


def join(text: str, known: frozenset[str]) -> str:
    r"""Close words that the setting tore apart, where the document knows the whole.

    `fl ashing` and `elec-` / `trical` are joined only when `flashing` and
    `electrical` stand elsewhere; never across digits, so codes stay as printed.

    Examples
    --------
    >>> join("the elec-\ntrical box, E5-\nlow", frozenset({"electrical"}))
    'the electrical box, E5-\nlow'
    """

    def ligature(match: re.Match[str]) -> str:
        left, right = match.groups()
        whole = (left + right).lower()
        bare = left.lower() in _BARE and right not in known
        return left + right if whole in known or bare else match[0]

    def hyphen(match: re.Match[str]) -> str:
        left, right = match.groups()
        whole = left + right
        fits = right[0].islower() and whole.lower() in known
        return whole if fits else match[0]

    return _HYPHEN.sub(hyphen, _LIGATURE.sub(ligature, text))


def clean(pages: Sequence[str]) -> list[str]:
    """Return the pages of a document as they are stored."""
    repaired = [repair(page) for page in pages]
    known = vocabulary(repaired)
    return [join(page, known) for page in repaired]


def mask(line: str) -> str:
    """Return a line with its numbers hidden, so that page numbers agree.

    Examples
    --------
    >>> mask("Service manual   Page 12")
    'service manual page #'
    """
    folded = " ".join(line.lower().split())
    return _ROMAN_END.sub("#", _DIGITS.sub("#", folded))


def running_lines(pages: Sequence[str]) -> list[frozenset[int]]:
    """Return, for each page, the indices of its running heads and feet.

    A line runs when, numbers aside, it or its first or last long cell stands among
    the outer lines of at least three pages and a fifth of them (the other cell may
    name the chapter). Only lines without a gap to the page's edge count.
    """
    filled = [_filled(page) for page in pages]
    counts: Counter[str] = Counter()
    for lines in filled:
        edge = lines[:EDGE_LINES] + lines[-EDGE_LINES:]
        counts.update({key for _, text in edge for key in _keys(text)})
    least = max(RUNNING_PAGES, RUNNING_SHARE * sum(1 for lines in filled if lines))
    runs = {text for text, count in counts.items() if count >= least}
    return [frozenset(_edges(lines, runs)) for lines in filled]


def _keys(line: str) -> set[str]:
    """Return what a line can be known by as running: all of it, or a long end."""
    parts = cells(line)
    ends = {parts[0], parts[-1]} if len(parts) > 1 else set()
    long = {mask(cell) for cell in ends if sum(map(str.isalpha, cell)) >= LONG_CELL}
    return {mask(line), *long}


def _filled(page: str) -> list[tuple[int, str]]:
    return [(at, line) for at, line in enumerate(page.split("\n")) if line.strip()]


def _edges(lines: list[tuple[int, str]], runs: set[str]) -> Iterable[int]:
    """Walk in from both edges of a page, as far as lines run."""
    top = 0
    while top < min(EDGE_LINES, len(lines)) and _runs(lines, top, runs):
        top += 1
    bottom = len(lines)
    while bottom > max(top, len(lines) - EDGE_LINES) and _runs(lines, bottom - 1, runs):
        bottom -= 1
    return [at for at, _ in (*lines[:top], *lines[bottom:])]


def _runs(lines: list[tuple[int, str]], index: int, runs: set[str]) -> bool:
    """Whether a line runs; the head of a table goes on to run on every page."""
    here = lines[index : index + TABLE_LINES]
    if runs.isdisjoint(_keys(here[0][1])):
        return False
    table = len(here) == TABLE_LINES and all(is_row(text) for _, text in here)
    return not table or bool(_DIGITS.search(here[0][1]))


def is_row(line: str) -> bool:
    """Whether a line is set in cells: parted by two spaces or tabs at least."""
    return len(cells(line)) > 1


def cells(line: str) -> list[str]:
    """Return the cells of a line.

    Examples
    --------
    >>> cells("4  Discharge sensor  CN5")
    ['4', 'Discharge sensor', 'CN5']
    """
    return [cell for cell in re.split(r" {2,}|\t+", line.strip()) if cell]
