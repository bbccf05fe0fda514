"""The reader of HTML: its words, headings and tables; no script, style or fetch.

Parsed with the standard library: nothing a page names is ever loaded.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path

from assistant.errors import InputError
from ingest.readers.base import FileFacts, Read
from ingest.readers.sheet import Sheet, from_first, one_line
from ingest.readers.spans import Cell, laid_out
from ingest.readers.text import decode

META_BYTES = 4096
"""How far into a file its encoding is looked for."""
MAX_DEPTH = 8
"""Tables inside tables; what is deeper is read as text of the cell around it."""

_CHARSET = re.compile(rb"""charset\s*=\s*["']?\s*([\w.:-]{1,40})""", re.IGNORECASE)
_XML = re.compile(
    rb"""^\s*<\?xml[^>]{0,100}encoding\s*=\s*["']([\w.:-]{1,40})""", re.IGNORECASE
)
_UNSEEN = frozenset(
    ("script", "style", "template", "noscript", "svg", "math", "object", "select",
     "iframe", "canvas", "audio", "video", "datalist")
)  # fmt: skip
_BLOCKS = frozenset(
    ("address", "article", "aside", "blockquote", "body", "center", "dd", "details",
     "dialog", "div", "dl", "dt", "fieldset", "figcaption", "figure", "footer", "form",
     "header", "hgroup", "hr", "html", "legend", "li", "main", "menu", "nav", "ol", "p",
     "pre", "section", "summary", "ul", "caption")
)  # fmt: skip
_PARTED = frozenset(("p", "div", "ul", "ol", "dl", "section", "article", "blockquote"))
_HEADINGS = frozenset(("h1", "h2", "h3", "h4", "h5", "h6"))
_CELLS = frozenset(("td", "th"))
_GROUPS = frozenset(("thead", "tbody", "tfoot"))
_VOID = frozenset(("br", "hr", "img", "input", "meta", "link", "wbr", "col", "area"))


def read_html(
    path: Path, first: int = 1, password: str | None = None
) -> Iterator[Read]:
    """Read a web page as one page of text with its tables.

    Raises
    ------
    InputError
        It does not decode, or holds no word.
    """
    del password  # a web page has none
    page = _Page()
    page.feed(decode_html(path.read_bytes(), path.name))
    page.close()
    sheet = page.finished()
    if not any(sheet.lines):
        raise InputError(
            f"{path.name}: a web page without words",
            "open it in a browser and print it to PDF, then add that",
        )
    yield FileFacts(1, title=one_line(page.title), author=page.author)
    yield from from_first([sheet], first)


def decode_html(data: bytes, name: str) -> str:
    """Decode by byte-order mark, then by what the page says, then by trying.

    Raises
    ------
    InputError
        Nothing gives mostly printable text.
    """
    said = _XML.search(data[:META_BYTES]) or _CHARSET.search(data[:META_BYTES])
    marked = data.startswith(
        (codecs.BOM_UTF8, codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)
    )
    if said and not marked:
        try:
            return data.decode(_web_name(said[1].decode("ascii")))
        except (LookupError, UnicodeError, ValueError):
            pass  # it says what is not so; the bytes decide
    return decode(data, name)


def _web_name(said: str) -> str:
    """Return the encoding that browsers take for a name.

    The WHATWG encoding standard reads Latin-1 and ASCII as Windows-1252, and a page
    that was read as bytes up to its own name is never UTF-16.

    Raises
    ------
    LookupError
        Python has no such text encoding.
    """
    name = codecs.lookup(said).name
    if name in {"iso8859-1", "ascii"}:
        return "cp1252"
    if name.startswith(("utf-16", "utf-32")):
        return "utf-8"
    return name


@dataclass(slots=True)
class _Table:
    """A table while its tags go by."""

    rows: list[list[Cell]] = field(default_factory=list)
    groups: list[str] = field(default_factory=list)
    group: str = "tbody"
    open: bool = False
    """A cell is being filled."""

    def start_row(self) -> None:
        self.rows.append([])
        self.groups.append(self.group)
        self.open = False

    def start_cell(self, cell: Cell) -> None:
        if not self.rows:
            self.start_row()
        self.rows[-1].append(cell)
        self.open = True

    def headers(self) -> int:
        """Return how many rows at the top name columns: in a head, or all of `th`."""
        found = 0
        for row, group in zip(self.rows, self.groups, strict=True):
            if group != "thead" and not (row and all(cell.head for cell in row)):
                break
            found += 1
        return found if found < len(self.rows) else 0


class _Page(HTMLParser):
    """Collects lines as the tags go by."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self.sheet = Sheet()
        self.title = ""
        self.author = ""
        self.unseen = 0
        self.in_title = False
        self.heading = 0
        self.kept = 0
        """Depth of `pre`, in which white space stays."""
        self.run: list[str] = []
        self.tables: list[_Table] = []
        self.lists: list[int | None] = []

    def finished(self) -> Sheet:
        """Return the sheet, with what was never closed."""
        while self.tables:
            self._end_table()
        self._flush()
        return self.sheet

    # tags

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Open what a tag opens."""
        if tag in _UNSEEN:
            self.unseen += 1
        if self.unseen:
            return
        given = {name: value or "" for name, value in attrs}
        if tag == "meta" and given.get("name", "").lower() == "author":
            self.author = one_line(given.get("content", ""))[:200]
        if tag == "title" and not self.tables:
            self.in_title = True
        elif tag == "br":
            self._say("\n")
        elif tag == "img":
            self._say(given.get("alt", ""))
        elif tag in _HEADINGS or tag in _BLOCKS:
            self._start_block(tag, given)
        else:
            self._start_of_table(tag, given)

    def handle_endtag(self, tag: str) -> None:
        """Close what a tag closes."""
        if tag in _UNSEEN:
            self.unseen = max(0, self.unseen - 1)
        elif self.unseen:
            return
        elif tag == "title":
            self.in_title = False
        elif tag == "table":
            self._end_table()
        elif tag in _CELLS and self.tables:
            self.tables[-1].open = False
        elif tag in _HEADINGS or tag in _BLOCKS:
            self._end_block(tag)

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Take ``<script/>`` as HTML does, and close what may close itself."""
        self.handle_starttag(tag, attrs)
        if tag not in _VOID and self.unseen and tag in {"svg", "math", "object"}:
            self.handle_endtag(tag)

    def handle_data(self, data: str) -> None:
        """Take words to where they stand."""
        if self.unseen:
            return
        if self.in_title:
            self.title = (self.title + data)[:500]
        else:
            self._say(data if self.kept else re.sub(r"\s+", " ", data))

    def _say(self, words: str) -> None:
        """Put words on the page, or in the cell that is open; between cells none."""
        if not self.tables:
            self.run.append(words)
        elif self.tables[-1].open:
            self.tables[-1].rows[-1][-1].text.append(words)

    # blocks

    def _start_block(self, tag: str, given: dict[str, str]) -> None:
        if self._cell_break():
            return
        self._flush()
        if tag in _PARTED:
            self.sheet.blank()
        if tag in _HEADINGS:
            self.heading = int(tag[1])
        elif tag == "pre":
            self.kept += 1
        elif tag in {"ul", "menu"}:
            self.lists.append(None)
        elif tag == "ol":
            start = given.get("start", "")
            self.lists.append(int(start) if start.isdecimal() else 1)
        elif tag == "li":
            self.run.append(self._mark())

    def _end_block(self, tag: str) -> None:
        if self._cell_break():
            return
        self._flush()
        if tag in _HEADINGS:
            self.heading = 0
        elif tag == "pre":
            self.kept = max(0, self.kept - 1)
        elif tag in {"ul", "ol", "menu"} and self.lists:
            self.lists.pop()
        if tag in _PARTED:
            self.sheet.blank()

    def _mark(self) -> str:
        number = self.lists[-1] if self.lists else None
        if number is None:
            return "- "
        self.lists[-1] = number + 1
        return f"{number}. "

    def _cell_break(self) -> bool:
        """Part words inside a cell; whether there is one."""
        if not self.tables:
            return False
        if self.tables[-1].open:
            self.tables[-1].rows[-1][-1].text.append(" ")
        return True

    def _flush(self) -> None:
        text, self.run = "".join(self.run), []
        if self.heading:
            self.sheet.heading(text, self.heading)
            return
        for line in text.split("\n"):
            shown = line.rstrip() if self.kept else one_line(line)
            if shown:
                self.sheet.line(shown)
            elif self.kept:
                self.sheet.blank()

    # tables

    def _start_of_table(self, tag: str, given: dict[str, str]) -> None:
        if tag == "table":
            self._start_table()
        elif self.tables and tag in _GROUPS:
            self.tables[-1].group = tag
        elif self.tables and tag == "tr":
            self.tables[-1].start_row()
        elif self.tables and tag in _CELLS:
            cell = Cell.of(given, head=tag == "th")
            self.tables[-1].start_cell(cell)

    def _start_table(self) -> None:
        if len(self.tables) >= MAX_DEPTH:
            return
        if not self.tables:
            self._flush()
        self.tables.append(_Table())

    def _end_table(self) -> None:
        """Write the table, or, inside a cell, put its words into that cell."""
        if not self.tables:
            return
        table = self.tables.pop()
        laid = laid_out(table.rows)
        if not self.tables:
            self.sheet.table(laid.cells, table.headers(), laid.shown)
        elif self.tables[-1].open:
            words = [" ".join(filter(None, row)) for row in laid.shown]
            self.tables[-1].rows[-1][-1].text.append(" " + " ".join(words) + " ")
