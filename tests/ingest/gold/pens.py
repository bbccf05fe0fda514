"""Three ways to draw on a page: reportlab, fpdf2, and PDF operators written by hand.

All take points from the top left of the page; text stands on the base line at y.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Sequence
from pathlib import Path
from typing import Any, Protocol

from fpdf import FPDF
from pypdf import PdfReader, PdfWriter
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable, SimpleDocTemplate

from tests.ingest.sample_pdfs import raw_pdf, stream

WIDTH, HEIGHT = 595.0, 842.0
Grey = float
Rows = list[list[str | list[str]]]
"""Rows of cells, each a line or several."""


class Pen(Protocol):
    """What a page is drawn with."""

    def text(
        self, x: float, y: float, said: str, *, bold: bool = False, size: float = 9
    ) -> None: ...

    def line(
        self, x0: float, y0: float, x1: float, y1: float, *, dash: float = 0
    ) -> None: ...

    def fill(
        self, x: float, y: float, wide: float, high: float, grey: Grey
    ) -> None: ...

    def page(self) -> None: ...

    def save(self) -> None: ...


class CanvasPen:
    """reportlab: each line a path of its own, text in Helvetica."""

    def __init__(self, path: Path, size: tuple[float, float] = (WIDTH, HEIGHT)) -> None:
        self.canvas = Canvas(str(path), pagesize=size, invariant=1)
        self.high = size[1]

    def text(
        self, x: float, y: float, said: str, *, bold: bool = False, size: float = 9
    ) -> None:
        self.canvas.setFont("Helvetica-Bold" if bold else "Helvetica", size)
        self.canvas.drawString(x, self.high - y, said)

    def line(
        self, x0: float, y0: float, x1: float, y1: float, *, dash: float = 0
    ) -> None:
        self.canvas.setDash(dash, dash) if dash else self.canvas.setDash()
        self.canvas.setLineWidth(0.6)
        self.canvas.line(x0, self.high - y0, x1, self.high - y1)

    def fill(self, x: float, y: float, wide: float, high: float, grey: Grey) -> None:
        self.canvas.setFillGray(grey)
        self.canvas.rect(x, self.high - y - high, wide, high, stroke=0, fill=1)
        self.canvas.setFillGray(0)

    def page(self) -> None:
        self.canvas.showPage()

    def save(self) -> None:
        self.canvas.showPage()
        self.canvas.save()


class FpdfPen:
    """fpdf2, in Times."""

    def __init__(self, path: Path) -> None:
        self.pdf = new_fpdf()
        self.path = path

    def text(
        self, x: float, y: float, said: str, *, bold: bool = False, size: float = 9
    ) -> None:
        self.pdf.set_font("times", "B" if bold else "", size)
        self.pdf.text(x, y, said)

    def line(
        self, x0: float, y0: float, x1: float, y1: float, *, dash: float = 0
    ) -> None:
        self.pdf.set_dash_pattern(dash, dash)
        self.pdf.line(x0, y0, x1, y1)

    def fill(self, x: float, y: float, wide: float, high: float, grey: Grey) -> None:
        self.pdf.set_fill_color(round(255 * grey))
        self.pdf.rect(x, y, wide, high, style="F")

    def page(self) -> None:
        self.pdf.add_page()

    def save(self) -> None:
        self.pdf.output(str(self.path))


def new_fpdf() -> FPDF:
    """Return an empty document in points with one page, always dated alike."""
    pdf = FPDF(unit="pt", format=(WIDTH, HEIGHT))
    pdf.set_creation_date(dt.datetime(2020, 1, 1, tzinfo=dt.UTC))
    pdf.set_margins(50, 60, 50)
    pdf.add_page()
    pdf.set_font("times", size=9)
    return pdf


def headed_fpdf(title: str) -> FPDF:
    """Return a document with a heading, going on in the type of a table."""
    pdf = new_fpdf()
    pdf.set_font("times", "B", 12)
    pdf.write(20, f"{title}\n")
    pdf.set_font("times", size=10)
    return pdf


def put_table(pdf: FPDF, rows: Sequence[Sequence[str]], **look: Any) -> None:
    """Write rows by fpdf2's own table maker."""
    with pdf.table(rows, **look):
        pass  # it is drawn where the block ends


def laid_out(path: Path, *story: Flowable) -> None:
    """Write what reportlab's own page maker makes of tables and paragraphs."""
    SimpleDocTemplate(str(path), pagesize=(WIDTH, HEIGHT), invariant=1).build(
        list(story)
    )


def turn(path: Path, stored: int, viewed: int) -> None:
    """Turn a page's contents one way, and the page another to be viewed."""
    writer = PdfWriter(clone_from=PdfReader(path))
    page = writer.pages[0]
    page.rotate(stored)
    page.transfer_rotation_to_content()
    page.rotate(viewed)
    writer.write(path)


class OperatorPen:
    """Operators by hand: y grows upwards through a matrix, rules are thin bars."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.pages: list[list[str]] = [[]]

    def text(
        self, x: float, y: float, said: str, *, bold: bool = False, size: float = 9
    ) -> None:
        font = "F2" if bold else "F1"
        said = said.replace("\\", "\\\\").replace("(", "\\(").replace(")", "\\)")
        self._put(
            f"BT /{font} {size:g} Tf 1 0 0 1 {x:g} {HEIGHT - y:g} Tm ({said}) Tj ET"
        )

    def line(
        self, x0: float, y0: float, x1: float, y1: float, *, dash: float = 0
    ) -> None:
        across = y0 == y1
        at, end = (x0, x1) if across else (y0, y1)
        while at < end:
            step = min(dash or end - at, end - at)
            if across:
                self._bar(at, y0 - 0.4, step, 0.8)
            else:
                self._bar(x0 - 0.4, at, 0.8, step)
            at += 2 * dash if dash else step

    def _bar(self, x: float, y: float, wide: float, high: float) -> None:
        # Half scale inside a saved state: the matrix has to be followed.
        self._put(
            f"q 0.5 0 0 0.5 0 {HEIGHT:g} cm {2 * x:g} {-2 * (y + high):g} "
            f"{2 * wide:g} {2 * high:g} re f Q"
        )

    def fill(self, x: float, y: float, wide: float, high: float, grey: Grey) -> None:
        self._put(f"{grey:g} g {x:g} {HEIGHT - y - high:g} {wide:g} {high:g} re f 0 g")

    def _put(self, operators: str) -> None:
        self.pages[-1].append(operators)

    def page(self) -> None:
        self.pages.append([])

    def save(self) -> None:
        count = len(self.pages)
        kids = " ".join(f"{5 + 2 * at} 0 R" for at in range(count))
        objects = [
            b"<< /Type /Catalog /Pages 2 0 R >>",
            b"<< /Type /Pages /Kids [%b] /Count %d /MediaBox [0 0 595 842] "
            b"/Resources << /Font << /F1 3 0 R /F2 4 0 R >> >> >>"
            % (kids.encode(), count),
            b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>",
            b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica-Bold >>",
        ]
        for at, page in enumerate(self.pages):
            objects.append(
                b"<< /Type /Page /Parent 2 0 R /Contents %d 0 R >>" % (6 + 2 * at)
            )
            objects.append(stream("\n".join(page).encode("latin-1")))
        self.path.write_bytes(raw_pdf(objects))


def cell(
    pen: Pen,
    x: float,
    y: float,
    said: str | Sequence[str],
    *,
    bold: bool = False,
    step: float = 11,
) -> None:
    """Write the lines of a cell whose top left corner is given."""
    for at, line in enumerate([said] if isinstance(said, str) else said):
        pen.text(x + 4, y + 11 + at * step, line, bold=bold)


def row(
    pen: Pen,
    xs: Sequence[float],
    y: float,
    cells: Sequence[str | Sequence[str]],
    *,
    bold: bool = False,
) -> None:
    """Write the cells of a row, each at the left of its column."""
    for x, said in zip(xs, cells, strict=False):
        cell(pen, x, y, said, bold=bold)


def across(
    pen: Pen, x0: float, x1: float, ys: Sequence[float], *, dash: float = 0
) -> None:
    """Draw horizontal lines."""
    for y in ys:
        pen.line(x0, y, x1, y, dash=dash)


def down(
    pen: Pen, xs: Sequence[float], y0: float, y1: float, *, dash: float = 0
) -> None:
    """Draw vertical lines."""
    for x in xs:
        pen.line(x, y0, x, y1, dash=dash)


def grid(
    pen: Pen, xs: Sequence[float], ys: Sequence[float], *, dash: float = 0
) -> None:
    """Draw every line of a grid."""
    across(pen, xs[0], xs[-1], ys, dash=dash)
    down(pen, xs, ys[0], ys[-1], dash=dash)


def set_rows(
    pen: Pen,
    xs: Sequence[float],
    ys: Sequence[float],
    cells: Sequence[Sequence[str | Sequence[str]]],
) -> None:
    """Write rows from the top, the first one bold."""
    for at, (y, line) in enumerate(zip(ys, cells, strict=False)):
        row(pen, xs, y, line, bold=at == 0)
