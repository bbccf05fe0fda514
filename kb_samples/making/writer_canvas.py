"""First writer: reportlab, every line placed by hand on a canvas, core fonts."""

from __future__ import annotations

import re
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import Any

from reportlab import rl_config
from reportlab.lib.pagesizes import A4
from reportlab.lib.utils import ImageReader
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas

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

WIDTH, HEIGHT = A4
LEFT, RIGHT, TOP, BOTTOM = 56.0, 56.0, 74.0, 62.0
PLAIN, BOLD, SLANTED = "Helvetica", "Helvetica-Bold", "Helvetica-Oblique"
SIZE, LEADING = 10.2, 13.6
PAD = 3.5
BREAK = re.compile(r" +(?!(?:°C|V|A|K|s|ohm|kohm|Mohm|minutes?|seconds)\b)|(?<!\d) +")
ROMAN = ("i", "ii", "iii", "iv", "v", "vi")


def wrap(text: str, font: str, size: float, width: float) -> list[str]:
    """Break `text` into lines no wider than `width`, never between value and unit."""
    lines: list[str] = []
    line = ""
    for word in BREAK.split(text):
        longer = f"{line} {word}".strip()
        if line and stringWidth(longer, font, size) > width:
            lines.append(line)
            line = word
        else:
            line = longer
    return [*lines, line] if line or not lines else lines


class Sheet:
    """One page being filled from the top; `y` is the next baseline's upper edge."""

    def __init__(self, canvas: Canvas, left: float, width: float, y: float) -> None:
        self.canvas = canvas
        self.left = left
        self.width = width
        self.y = y

    def line(self, text: str, x: float, font: str = PLAIN, size: float = SIZE) -> None:
        """Draw one line at `x`, its baseline `size` below `y`; `y` stays."""
        self.canvas.setFont(font, size)
        self.canvas.drawString(x, self.y - size, text)

    def row(self, cells: list[tuple[float, str]], font: str = PLAIN) -> None:
        """Draw several strings on one baseline in one text object."""
        text = self.canvas.beginText()
        text.setFont(font, SIZE)
        for x, string in cells:
            text.setTextOrigin(x, self.y - SIZE)
            text.textOut(string)
        self.canvas.drawText(text)

    def lines(self, text: str, indent: float = 0.0, font: str = PLAIN) -> None:
        """Draw wrapped text and move down."""
        for part in wrap(text, font, SIZE, self.width - indent):
            self.line(part, self.left + indent, font)
            self.y -= LEADING

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
        """Draw a section title, level 1 with a rule under it."""
        size = 14.0 if block.level == 1 else 11.0
        self.y -= 2 if block.level == 1 else 4
        self.line(block.text, self.left, BOLD, size)
        self.y -= size + 6
        if block.level == 1:
            self.canvas.line(self.left, self.y, self.left + self.width, self.y)
            self.y -= 8

    def para(self, block: Para) -> None:
        """Draw a paragraph."""
        self.lines(block.text)
        self.y -= 5

    def items(self, block: Items) -> None:
        """Draw a list with its numbers or dashes hanging."""
        for number, text in enumerate(block.lines, 1):
            mark = f"{number}." if block.numbered else "-"
            first, *rest = wrap(text, PLAIN, SIZE, self.width - 22)
            self.row([(self.left + 4, mark), (self.left + 22, first)])
            self.y -= LEADING
            for part in rest:
                self.line(part, self.left + 22)
                self.y -= LEADING
            self.y -= 2
        self.y -= 4

    def caution(self, block: Caution) -> None:
        """Draw a framed remark."""
        parts = wrap(block.text, PLAIN, SIZE, self.width - 16)
        height = LEADING * (len(parts) + 1) + 8
        self.canvas.rect(self.left, self.y - height, self.width, height)
        self.y -= 4
        self.line(block.word, self.left + 8, BOLD)
        self.y -= LEADING
        for part in parts:
            self.line(part, self.left + 8)
            self.y -= LEADING
        self.y -= 11

    def table(self, block: Table) -> None:
        """Draw a table row by row, line by line across the cells."""
        if block.title:
            self.lines(block.title, font=BOLD)
            self.y -= 1
        total = sum(block.widths)
        widths = [self.width * part / total for part in block.widths]
        top = self.y
        self._row(block.head, widths, BOLD, ruled=block.ruled)
        for row in block.rows:
            self._row(row, widths, PLAIN, ruled=block.ruled)
        if block.ruled:
            self._uprights(widths, top)
        self.y -= 9

    def _row(
        self, row: tuple[str, ...], widths: list[float], font: str, *, ruled: bool
    ) -> None:
        cells = [
            wrap(text, font, SIZE, width - 2 * PAD)
            for text, width in zip(row, widths, strict=True)
        ]
        count = max(len(cell) for cell in cells)
        if ruled:
            self.canvas.line(self.left, self.y, self.left + self.width, self.y)
            self.y -= 2
        for index in range(count):
            x, strings = self.left, []
            for cell, width in zip(cells, widths, strict=True):
                if index < len(cell) and cell[index]:
                    strings.append((x + PAD, cell[index]))
                x += width
            self.row(strings, font)
            self.y -= LEADING
        self.y -= 2 if ruled else 0

    def _uprights(self, widths: list[float], top: float) -> None:
        self.canvas.line(self.left, self.y, self.left + self.width, self.y)
        x = self.left
        for width in [*widths, 0.0]:
            self.canvas.line(x, top, x, self.y)
            x += width

    def columns(self, block: Columns) -> None:
        """Draw the left column to its end, then the right one beside it."""
        gutter = 18.0
        half = (self.width - gutter) / 2
        ends = []
        for index, blocks in enumerate((block.left, block.right)):
            part = Sheet(self.canvas, self.left + index * (half + gutter), half, self.y)
            for inner in blocks:
                part.draw(inner)
            ends.append(part.y)
        self.y = min(ends)

    def contents(self, block: Contents) -> None:
        """Draw contents lines with dot leaders."""
        for text, number in block.lines:
            end = self.left + self.width
            dots = end - 24 - self.left - stringWidth(text, PLAIN, SIZE) - 6
            count = int(dots / stringWidth(".", PLAIN, SIZE))
            self.line(f"{text} {'.' * count} {number}", self.left)
            self.y -= LEADING + 3

    def cover(self, block: Cover) -> None:
        """Draw the cover: a bar, the titles, the list of models."""
        self.canvas.rect(self.left, self.y - 6, self.width, 6, fill=1)
        self.y -= 60
        for text, font, size in (
            (block.maker, BOLD, 26.0),
            (block.title, BOLD, 20.0),
            (block.subtitle, PLAIN, 13.0),
        ):
            self.line(text, self.left, font, size)
            self.y -= size + 16
        self.y -= 30
        self.line("Models", self.left, BOLD, 11)
        self.y -= 18
        for model in block.models:
            self.lines(model)
        self.y -= 40
        for text in block.lines:
            self.lines(text)

    def scan(self, block: Scan) -> None:
        """Place the picture of a typed sheet over the page."""
        image = ImageReader(BytesIO(picture_of(block.lines)))
        self.canvas.drawImage(image, 0, 0, WIDTH, HEIGHT)


def _running_lines(canvas: Canvas, document: Document, page: Page) -> None:
    sheet = Sheet(canvas, LEFT, WIDTH - LEFT - RIGHT, HEIGHT - 40)
    sheet.line(document.header, LEFT, SLANTED, 8.5)
    if page.section:
        sheet.canvas.drawRightString(WIDTH - RIGHT, HEIGHT - 48.5, page.section)
    canvas.line(LEFT, HEIGHT - 54, WIDTH - RIGHT, HEIGHT - 54)
    canvas.setFont(PLAIN, 8.5)
    canvas.drawString(LEFT, 34, f"{document.number} Rev. {document.revision}")
    canvas.drawCentredString(WIDTH / 2, 34, page.label)


def _labels(canvas: Canvas, document: Document) -> None:
    roman = 1 + sum(1 for page in document.pages if page.label in ROMAN)
    canvas.addPageLabel(0, style="ROMAN_LOWER", start=1)
    canvas.addPageLabel(roman, style="ARABIC", start=1)


def _page(canvas: Canvas, document: Document, page: Page) -> None:
    sheet = Sheet(canvas, LEFT, WIDTH - LEFT - RIGHT, HEIGHT - TOP)
    scanned = isinstance(page.blocks[0], Scan)
    if page.label and not scanned:
        _running_lines(canvas, document, page)
    for block in page.blocks:
        if document.outline and isinstance(block, Heading) and block.level == 1:
            canvas.bookmarkPage(block.text)
            canvas.addOutlineEntry(block.text, block.text, level=0)
        sheet.draw(block)
    if sheet.y < BOTTOM:
        raise ValueError(
            f"{document.file} page {page.label or 'cover'}: "
            f"{BOTTOM - sheet.y:.0f} points too long"
        )
    canvas.showPage()


def write(document: Document, path: Path) -> None:
    """Write `document` as a PDF at `path`, the same bytes every time.

    Raises
    ------
    ValueError
        When a page does not fit on its sheet; names the page and the excess.
    """
    # Streams stay binary, as in most files of the trade, and not in base 85.
    rl_config.useA85 = 0
    canvas = Canvas(str(path), pagesize=A4, invariant=1)
    canvas.setTitle(f"{document.maker} {document.title}")
    canvas.setAuthor(document.maker)
    canvas.setSubject(f"{document.number} Rev. {document.revision}")
    canvas.setKeywords(", ".join(document.keywords))
    canvas.setLineWidth(0.6)
    if document.labels:
        _labels(canvas, document)
    for page in document.pages:
        canvas.setLineWidth(0.6)
        _page(canvas, document, page)
    canvas.save()
