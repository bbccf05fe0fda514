"""A page put together line by line, by the readers of formats without pages."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from ingest.readers.base import (
    MAX_PAGE_CHARACTERS,
    Prominent,
    RawPage,
    RawRow,
    RawTable,
)

TEXT_SIZE = 10.0
"""Points that running text is said to have, where the format tells no height."""
HEADING_STEP = 2.0
DEEPEST = 6
GAP = "  "
"""Between two cells of a row, as everywhere in stored text."""


@dataclass(slots=True)
class Sheet:
    """One page in the making."""

    lines: list[str] = field(default_factory=list)
    prominent: list[Prominent] = field(default_factory=list)
    tables: list[RawTable] = field(default_factory=list)

    def line(self, text: str) -> None:
        """Add a line as it is, but for white space behind it."""
        self.lines.append(text.rstrip())

    def blank(self) -> None:
        """Part what follows from what stands above, once."""
        if self.lines and self.lines[-1]:
            self.lines.append("")

    def heading(self, text: str, level: int) -> None:
        """Add a heading, 1 the highest, with room around it."""
        plain = one_line(text)
        if not plain:
            return
        self.blank()
        self.lines.append(plain)
        size = TEXT_SIZE + HEADING_STEP * (DEEPEST + 1 - min(level, DEEPEST))
        self.prominent.append(Prominent(plain, size, bold=True))
        self.blank()

    def table(
        self,
        rows: Sequence[Sequence[str]],
        headers: int,
        shown: Sequence[Sequence[str]] | None = None,
    ) -> None:
        """Add a table, one line a row; rows without a word are left out.

        Parameters
        ----------
        rows : sequence of sequence of str
            Every cell, with what merged cells say carried to all they cover.
        headers : int
            How many rows at the top name the columns.
        shown : sequence of sequence of str, optional
            The cells as the lines show them, where that is fewer.
        """
        width = max(map(len, rows), default=0)
        kept: list[RawRow] = []
        heads = 0
        self.blank()
        for at, (row, seen) in enumerate(zip(rows, shown or rows, strict=True)):
            cells = [one_line(cell) for cell in row]
            if not any(cells):
                continue
            heads += at < headers
            kept.append(RawRow(len(self.lines), (*cells, *[""] * (width - len(cells)))))
            self.lines.append(GAP.join(filter(None, map(one_line, seen))))
        if kept:
            opens = kept[0].line == 0
            self.tables.append(RawTable(tuple(kept), heads, open_top=opens))
        self.blank()

    def page(self, number: int) -> RawPage:
        """Return what was put together as a page, or why it is none."""
        while self.lines and not self.lines[-1]:
            self.lines.pop()
        text = "\n".join(self.lines)
        if len(text) > MAX_PAGE_CHARACTERS:
            failure = f"more than {MAX_PAGE_CHARACTERS} characters on one page"
            return RawPage(number, str(number), failure=failure)
        return RawPage(
            number,
            str(number),
            text,
            prominent=tuple(self.prominent),
            tables=tuple(self.tables),
        )


def one_line(text: str) -> str:
    r"""Return the text with every run of white space as one space.

    Examples
    --------
    >>> one_line(" E4 \n  open ")
    'E4 open'
    """
    return " ".join(text.split())


def from_first(pages: Sequence[Sheet], first: int) -> Iterator[RawPage]:
    """Give the pages from `first` on, counted from 1."""
    for number, sheet in enumerate(pages[first - 1 :], start=first):
        yield sheet.page(number)
