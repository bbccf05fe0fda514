"""Second writer: fpdf2, text in cells that flow, embedded TrueType fonts."""

from __future__ import annotations

from collections.abc import Callable
from datetime import UTC, datetime, time
from io import BytesIO
from pathlib import Path
from typing import Any

import reportlab
from fpdf import FPDF
from fpdf.enums import WrapMode, XPos, YPos
from fpdf.fonts import TTFFont

from kb_samples.making.blocks import (
    Block,
    Caution,
    Columns,
    Contents,
    Cover,
    Document,
    Heading,
    Items,
    Page,
    Para,
    Scan,
    Table,
)
from kb_samples.making.scan import picture_of

FACE = "Vera"
SIZE, LEADING = 9.0, 13.0
MARGIN, TOP, BOTTOM = 60.0, 78.0, 64.0


class Book(FPDF):
    """A document whose running lines come from the page being drawn."""

    def __init__(self, document: Document) -> None:
        super().__init__(orientation="portrait", unit="pt", format="A4")
        self.document = document
        self.current = document.pages[0]
        fonts = Path(reportlab.__file__).parent / "fonts"
        for style, name in (("", "Vera"), ("B", "VeraBd"), ("I", "VeraIt")):
            self.add_font(FACE, style, fonts / f"{name}.ttf")
        self.set_auto_page_break(auto=False)
        self.set_margins(MARGIN, TOP, MARGIN)
        self.set_creation_date(datetime.combine(document.issued, time(8), UTC))
        self.set_title(f"{document.maker} {document.title}")
        self.set_author(document.maker)
        self.set_subject(f"{document.number} Issue {document.revision}")
        self.set_keywords(", ".join(document.keywords))
        self.set_line_width(0.5)

    def header(self) -> None:
        """Print the running head of the page being drawn."""
        if not self.current.label:
            return
        self.set_xy(MARGIN, 36)
        self.set_font(FACE, "B", 7.5)
        self.cell(0, 12, self.document.header, align="L")
        self.set_xy(MARGIN, 36)
        self.set_font(FACE, "", 7.5)
        self.cell(0, 12, self.current.section, align="R")
        self.line(MARGIN, 52, self.w - MARGIN, 52)
        self.set_xy(MARGIN, TOP)

    def foot(self) -> None:
        """Print number, issue and printed page label at the foot.

        Called by hand: the library prints its own footers one page late.
        """
        if not self.current.label:
            return
        self.set_xy(MARGIN, self.h - 44)
        self.set_font(FACE, "", 7.5)
        foot = f"{self.document.number} Issue {self.document.revision}"
        self.cell(0, 12, foot, align="L")
        self.set_xy(MARGIN, self.h - 44)
        self.cell(0, 12, f"Page {self.current.label}", align="R")


class Flow:
    """A column of the page into which blocks flow."""

    def __init__(self, book: Book, left: float, width: float) -> None:
        self.book = book
        self.left = left
        self.width = width

    def text(self, text: str, *, style: str = "", indent: float = 0.0) -> None:
        """Set wrapped text in the column and move below it."""
        self.book.set_font(FACE, style, SIZE)
        self.book.set_x(self.left + indent)
        self.book.multi_cell(
            self.width - indent,
            LEADING,
            text,
            align="L",
            new_x=XPos.LEFT,
            new_y=YPos.NEXT,
            wrapmode=WrapMode.WORD,
        )

    def draw(self, block: Block) -> None:
        """Draw a block and move down past it."""
        drawers: dict[type[Any], Callable[[Any], None]] = {
            Heading: self.heading,
            Para: self.para,
            Items: self.items,
            Caution: self.caution,
            Table: self.table,
            Columns: self.columns,
            Contents: self.contents,
            Cover: self.cover,
            Scan: self.scan,
        }
        drawers[type(block)](block)

    def heading(self, block: Heading) -> None:
        """Set a title, level 1 on a grey bar."""
        size = 12.5 if block.level == 1 else 9.8
        self.book.set_font(FACE, "B", size)
        self.book.set_fill_color(222)
        self.book.set_x(self.left)
        self.book.cell(
            self.width,
            size + 8,
            block.text,
            fill=block.level == 1,
            new_x=XPos.LEFT,
            new_y=YPos.NEXT,
        )
        self.book.ln(4 if block.level == 1 else 1)

    def para(self, block: Para) -> None:
        """Set a paragraph."""
        self.text(block.text)
        self.book.ln(5)

    def items(self, block: Items) -> None:
        """Set a list; steps carry their number in brackets."""
        for number, text in enumerate(block.lines, 1):
            mark = f"({number})" if block.numbered else "•"
            self.book.set_font(FACE, "", SIZE)
            self.book.set_x(self.left)
            self.book.cell(20, LEADING, mark)
            self.text(text, indent=22)
            self.book.ln(2)
        self.book.ln(3)

    def caution(self, block: Caution) -> None:
        """Set a remark between two heavy rules."""
        book = self.book
        book.line(self.left, book.get_y(), self.left + self.width, book.get_y())
        book.ln(3)
        self.text(block.word, style="B")
        self.text(block.text)
        book.ln(3)
        book.line(self.left, book.get_y(), self.left + self.width, book.get_y())
        book.ln(7)

    def table(self, block: Table) -> None:
        """Set a table cell by cell, each ruled cell with its own box."""
        if block.title:
            self.text(block.title, style="B")
            self.book.ln(1)
        total = sum(block.widths)
        widths = [self.width * part / total for part in block.widths]
        self._row(block.head, widths, "B", ruled=block.ruled)
        for row in block.rows:
            self._row(row, widths, "", ruled=block.ruled)
        self.book.ln(8)

    def _row(
        self, row: tuple[str, ...], widths: list[float], style: str, *, ruled: bool
    ) -> None:
        book = self.book
        book.set_font(FACE, style, SIZE)
        counts = [
            self._count(text, width) for text, width in zip(row, widths, strict=True)
        ]
        height = LEADING * max(counts) + (3 if ruled else 0)
        top, x = book.get_y(), self.left
        for text, width in zip(row, widths, strict=True):
            if ruled:
                book.rect(x, top, width, height)
            book.set_xy(x, top + (1.5 if ruled else 0))
            if text:
                book.multi_cell(width, LEADING, text, align="L")
            x += width
        book.set_xy(self.left, top + height)

    def _count(self, text: str, width: float) -> int:
        lines = self.book.multi_cell(width, LEADING, text, dry_run=True, output="LINES")
        return len(lines) if isinstance(lines, list) else 1

    def columns(self, block: Columns) -> None:
        """Set two columns, the left one first."""
        gutter = 16.0
        half = (self.width - gutter) / 2
        top = self.book.get_y()
        ends = []
        for index, blocks in enumerate((block.left, block.right)):
            self.book.set_y(top)
            flow = Flow(self.book, self.left + index * (half + gutter), half)
            for inner in blocks:
                flow.draw(inner)
            ends.append(self.book.get_y())
        self.book.set_y(max(ends))

    def contents(self, block: Contents) -> None:
        """Set contents lines, the number at the right edge."""
        self.book.set_font(FACE, "", SIZE)
        for text, number in block.lines:
            self.book.set_x(self.left)
            self.book.cell(self.width - 40, LEADING + 4, text)
            self.book.cell(
                40, LEADING + 4, number, align="R", new_x=XPos.LEFT, new_y=YPos.NEXT
            )

    def cover(self, block: Cover) -> None:
        """Set the cover page."""
        self.book.set_y(150)
        for text, style, size in (
            (block.title, "B", 22.0),
            (block.subtitle, "", 12.0),
            (block.maker, "B", 16.0),
        ):
            self.book.set_font(FACE, style, size)
            self.book.set_x(self.left)
            self.book.cell(
                self.width, size + 14, text, new_x=XPos.LEFT, new_y=YPos.NEXT
            )
        self.book.ln(30)
        for text in (*block.models, "", *block.lines):
            self.text(text or " ")

    def scan(self, block: Scan) -> None:
        """Place the picture of a typed sheet over the page."""
        self.book.image(BytesIO(picture_of(block.lines)), 0, 0, self.book.w)


def _page(book: Book, document: Document, page: Page) -> None:
    book.current = page
    book.add_page()
    flow = Flow(book, MARGIN, book.w - 2 * MARGIN)
    book.set_y(TOP)
    for block in page.blocks:
        if document.outline and isinstance(block, Heading) and block.level == 1:
            book.start_section(block.text, strict=False)
        flow.draw(block)
    excess = book.get_y() - (book.h - BOTTOM)
    if excess > 0:
        raise ValueError(
            f"{document.file} page {page.label or 'cover'}: "
            f"{excess:.0f} points too long"
        )
    book.foot()


def write(document: Document, path: Path) -> None:
    """Write `document` as a PDF at `path`, the same bytes every time.

    Raises
    ------
    ValueError
        When a page does not fit on its sheet; names the page and the excess.
    """
    book = Book(document)
    for page in document.pages:
        _page(book, document, page)
    book.output(str(path))
    for font in book.fonts.values():
        if isinstance(font, TTFFont):
            font.close()  # else its file stays open until it is collected
