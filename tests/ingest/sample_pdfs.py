"""Small PDFs with known pages, made by two writers, whole and damaged."""

from __future__ import annotations

import io
import zlib
from collections.abc import Sequence
from pathlib import Path

from fpdf import FPDF
from pypdf import PdfReader, PdfWriter
from reportlab.lib.pagesizes import A4
from reportlab.pdfgen.canvas import Canvas

HEAD = "Larch service manual"


def canvas_pdf(
    path: Path,
    pages: Sequence[Sequence[str]],
    *,
    title: str = "",
    author: str = "",
    running: bool = False,
) -> Path:
    """Write pages of lines with reportlab, one text object a line."""
    canvas = Canvas(str(path), pagesize=A4, invariant=1)
    canvas.setTitle(title)
    canvas.setAuthor(author)
    for number, lines in enumerate(pages, start=1):
        if running:
            canvas.drawString(60, 810, HEAD)
            canvas.drawString(280, 30, f"{number + 4}")
        for at, line in enumerate(lines):
            canvas.drawString(60, 780 - 14 * at, line)
        canvas.showPage()
    canvas.save()
    return path


def table_pdf(path: Path, rows: Sequence[Sequence[str]]) -> Path:
    """Write one table with fpdf2, its long cells wrapped."""
    pdf = FPDF()
    pdf.add_page()
    pdf.set_font("helvetica", size=10)
    with pdf.table(col_widths=(15, 55, 30)) as table:
        for cells in rows:
            row = table.row()
            for cell in cells:
                row.cell(cell)
    pdf.output(str(path))
    return path


def encrypted_pdf(path: Path, password: str, algorithm: str = "AES-256") -> Path:
    """Write a one-page PDF that a password opens."""
    plain = canvas_pdf(path.with_suffix(".plain"), [["The bus is 320 V."]])
    writer = PdfWriter(clone_from=PdfReader(plain))
    writer.encrypt(password, "owner", algorithm=algorithm)
    writer.write(path)
    plain.unlink()
    return path


def raw_pdf(objects: Sequence[bytes]) -> bytes:
    """Return a PDF of hand-written objects, numbered from 1; the first is the root."""
    out = io.BytesIO()
    out.write(b"%PDF-1.7\n")
    places = []
    for number, body in enumerate(objects, start=1):
        places.append(out.tell())
        out.write(b"%d 0 obj\n" % number + body + b"\nendobj\n")
    start = out.tell()
    out.write(b"xref\n0 %d\n0000000000 65535 f \n" % (len(objects) + 1))
    for place in places:
        out.write(b"%010d 00000 n \n" % place)
    out.write(b"trailer\n<< /Size %d /Root 1 0 R >>\n" % (len(objects) + 1))
    out.write(b"startxref\n%d\n%%%%EOF\n" % start)
    return out.getvalue()


def stream(data: bytes, extra: bytes = b"") -> bytes:
    """Return a stream object, packed."""
    packed = zlib.compress(data, 9)
    head = b"<< /Length %d /Filter /FlateDecode %s >>" % (len(packed), extra)
    return head + b"\nstream\n" + packed + b"\nendstream"


def one_page(contents: bytes, resources: bytes = b"<< >>") -> list[bytes]:
    """Return the objects of a one-page PDF; further objects start at 5."""
    return [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] /Contents 4 0 R "
        b"/Resources " + resources + b" >>",
        contents,
    ]
