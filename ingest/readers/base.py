"""What every reader gives: facts of the file first, then its pages in order.

A reader runs in a child process that must start fast: nothing here, nor in a
reader, imports the core's pydantic models, numpy or torch.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from assistant.errors import InputError

MAX_FILE_BYTES = 200_000_000
MAX_PAGES = 3_000
MAX_PAGE_CHARACTERS = 5_000_000
MAX_FILE_CHARACTERS = 50_000_000


class LockedError(InputError):
    """The file is encrypted, and no password or a wrong one was given."""


@dataclass(frozen=True, slots=True)
class FileFacts:
    """What a file says of itself before any page is read."""

    pages: int
    title: str = ""
    subject: str = ""
    author: str = ""
    created: str = ""
    """ISO date, or nothing."""
    outline: tuple[tuple[str, int], ...] = ()
    """Title and physical page of every bookmark, in order."""
    damage: str = ""
    """What is wrong with the file though pages of it can be read."""


@dataclass(frozen=True, slots=True)
class Prominent:
    """A short line set larger than its page, or bold."""

    text: str
    size: float
    """Height in points."""
    bold: bool


@dataclass(frozen=True, slots=True)
class RawRow:
    """One row of a ruled table."""

    line: int
    """The line of the page's text that it is, from 0: its cells, two spaces apart."""
    cells: tuple[str, ...]
    """One a column; what a merged cell says is carried to every row it covers."""


@dataclass(frozen=True, slots=True)
class RawTable:
    """A table whose cells the page's rules, fills or bands part."""

    rows: tuple[RawRow, ...]
    """Its rows in order, header rows first."""
    headers: int
    """How many of them name the columns."""
    columns: tuple[float, ...] = ()
    """Left edge of each column and the right edge of the last, in points."""
    open_top: bool = False
    """It begins the page's text: it may go on from the page before."""
    names: tuple[str, ...] = ()
    """One a column, those of the page before where it goes on; or none."""
    continues: bool = False
    """It goes on from the page before."""


@dataclass(frozen=True, slots=True)
class RawPage:
    """One page as the reader found it, before any cleaning."""

    number: int
    """Physical, from 1."""
    label: str
    """What the file says is printed on it."""
    text: str = ""
    failure: str = ""
    """Why it could not be read; `text` is then empty."""
    drawn: bool = False
    """Pictures or drawings stand on it; only looked for where text is scarce."""
    cover: float = 0.0
    """The share of it that pictures cover."""
    prominent: tuple[Prominent, ...] = ()
    tables: tuple[RawTable, ...] = ()
    raw: str = ""
    """The text before the reader's own repairs, where they changed letters."""
    source: str = ""
    """How the text was got where not from the file itself: `ocr`, or nothing."""
    confidence: float = 0.0
    """Of a page read by OCR: the mean over its letters, 0 to 1."""


Read = FileFacts | RawPage
Reader = Callable[[Path, int, str | None], Iterator[Read]]
"""Path, first page wanted and password in; facts, then pages from `first` out."""
