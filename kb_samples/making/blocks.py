"""What a page of literature consists of, whichever writer draws it."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import date


@dataclass(frozen=True)
class Heading:
    """A numbered section title (level 1) or a title inside a section (level 2)."""

    text: str
    level: int = 1


@dataclass(frozen=True)
class Para:
    """A paragraph of running text."""

    text: str


@dataclass(frozen=True)
class Items:
    """A list; `numbered` ones are steps in order."""

    lines: tuple[str, ...]
    numbered: bool = False


@dataclass(frozen=True)
class Caution:
    """A framed remark under a signal word: DANGER, WARNING, CAUTION, NOTE."""

    word: str
    text: str


@dataclass(frozen=True)
class Table:
    """A table; `widths` are relative, `ruled` draws the grid."""

    title: str
    head: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]
    widths: tuple[float, ...]
    ruled: bool = True


@dataclass(frozen=True)
class Columns:
    """Two columns side by side, each with its own blocks."""

    left: tuple[Block, ...]
    right: tuple[Block, ...]


@dataclass(frozen=True)
class Contents:
    """Lines of a contents page with the printed page number at the right."""

    lines: tuple[tuple[str, str], ...]


@dataclass(frozen=True)
class Cover:
    """The first page: who, what, for which models."""

    maker: str
    title: str
    subtitle: str
    models: tuple[str, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True)
class Scan:
    """A page that exists as a picture only; `lines` are what the picture shows."""

    lines: tuple[str, ...]


Block = Heading | Para | Items | Caution | Table | Columns | Contents | Cover | Scan


@dataclass(frozen=True)
class Page:
    """One sheet: the printed label (empty on covers) and what stands on it."""

    label: str
    blocks: tuple[Block, ...]
    section: str = ""


@dataclass(frozen=True)
class Document:
    """A whole document with what its cover and its file say about it.

    `labels` writes the printed numbers into the file as page labels; `outline`
    writes the level 1 headings as bookmarks.
    """

    file: str
    maker: str
    title: str
    number: str
    revision: str
    issued: date
    models: tuple[str, ...]
    pages: tuple[Page, ...]
    header: str
    labels: bool = False
    outline: bool = False
    keywords: tuple[str, ...] = field(default=())


def table(
    title: str,
    head: tuple[str, ...],
    rows: tuple[tuple[str, ...], ...],
    widths: tuple[float, ...],
    *,
    ruled: bool = True,
) -> Table:
    """Build a table after checking that every row is as wide as its head.

    Raises
    ------
    ValueError
        When a row or the widths do not fit the head; names the row.
    """
    if len(widths) != len(head):
        raise ValueError(f"{title!r}: {len(widths)} widths for {len(head)} columns")
    for row in rows:
        if len(row) != len(head):
            raise ValueError(f"{title!r}: row {row!r} does not fit {head!r}")
    return Table(title, head, rows, widths, ruled)
