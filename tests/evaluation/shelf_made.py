"""Shelves of any size, made by a script: manuals with tables, notes, repeated text."""

from __future__ import annotations

import random
from pathlib import Path

from fpdf import FPDF
from reportlab.lib import colors
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import getSampleStyleSheet
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import (
    Flowable,
    PageBreak,
    Paragraph,
    SimpleDocTemplate,
    Spacer,
    Table,
    TableStyle,
)

from tests.ingest.sample_pdfs import canvas_pdf

_THINGS = (
    *("sensor", "compressor", "fan", "board", "valve", "relay", "plug", "lamp"),
    *("fuse", "coil", "motor", "filter", "inverter", "reactor", "bridge", "switch"),
    *("thermistor", "terminal", "connector", "drain", "float"),
)
_DOES = ("opens", "closes", "reads", "warms", "cools", "trips", "holds", "starts")
ROWS = 14


def sentence(chance: random.Random) -> str:
    """Return a sentence that hardly ever comes twice."""
    one, two, three = chance.sample(_THINGS, 3)
    does, then = chance.sample(_DOES, 2)
    number, limit = chance.randrange(10_000), chance.randrange(10_000)
    return (
        f"The {one} {number} {does} before the {two} {then}, and the {three} stays "
        f"below {limit} ohm."
    )


def manuals(folder: Path, many: int, pages: int) -> list[Path]:
    """Write manuals of two writers: on every page text, and a ruled table."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for number in range(many):
        chance = random.Random(number)  # noqa: S311 - a seed, no secret
        path = folder / f"manual-{number:02}.pdf"
        write = _flowing if number % 2 else _placed
        write(path, pages, chance)
        made.append(path)
    return made


def kerned(folder: Path, many: int, pages: int) -> list[Path]:
    """Write manuals as layout programs do: every letter placed, and ruled tables."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for number in range(many):
        chance = random.Random(number)  # noqa: S311 - a seed, no secret
        made.append(folder / f"kerned-{number:02}.pdf")
        canvas = Canvas(str(made[-1]), pagesize=A4, invariant=1)
        for page in range(pages):
            lines = [f"{page + 1}. Section {page + 1}"]
            lines += [sentence(chance) for _ in range(20)]
            for at, line in enumerate(lines):
                _kern(canvas, line, 60, 780 - 14 * at, chance)
            for at, cells in enumerate(_cells(chance)):
                y = 460 - 16 * at
                for x, wide, cell in zip(
                    (60, 100, 300), (40, 200, 240), cells, strict=True
                ):
                    canvas.rect(x, y, wide, 16)
                    _kern(canvas, cell, x + 4, y + 4, chance)
            canvas.showPage()
        canvas.save()
    return made


def _kern(canvas: Canvas, line: str, x: float, y: float, chance: random.Random) -> None:
    """Set a line as pairs of letters with a little space taken or given between."""
    parts = [line[at : at + 2] for at in range(0, len(line), 2)]
    shown = " ".join(f"({part}) {chance.randrange(-20, 20)}" for part in parts)
    canvas.addLiteral(f"BT 1 0 0 1 {x} {y} Tm /F1 9 Tf [{shown}] TJ ET")


def _cells(chance: random.Random) -> list[list[str]]:
    head = ["Code", "Meaning", "What to do"]
    rows = [
        [f"E{n}", sentence(chance)[:38], sentence(chance)[:44]] for n in range(ROWS)
    ]
    return [head, *rows]


def _flowing(path: Path, pages: int, chance: random.Random) -> None:
    style = getSampleStyleSheet()
    story: list[Flowable] = []
    for page in range(pages):
        story.append(Paragraph(f"{page + 1}. Section {page + 1}", style["Heading2"]))
        for _ in range(5):
            told = " ".join(sentence(chance) for _ in range(4))
            story += [Paragraph(told, style["BodyText"]), Spacer(1, 6)]
        ruled = TableStyle([("GRID", (0, 0), (-1, -1), 0.5, colors.black)])
        story += [Table(_cells(chance), style=ruled), PageBreak()]
    SimpleDocTemplate(str(path), pagesize=A4, invariant=1).build(story)


def _placed(path: Path, pages: int, chance: random.Random) -> None:
    pdf = FPDF()
    pdf.set_auto_page_break(auto=False)
    for page in range(pages):
        pdf.add_page()
        pdf.set_font("helvetica", style="B", size=13)
        pdf.cell(
            0, 10, f"{page + 1}. Section {page + 1}", new_x="LMARGIN", new_y="NEXT"
        )
        pdf.set_font("helvetica", size=9)
        for _ in range(5):
            pdf.multi_cell(0, 4, " ".join(sentence(chance) for _ in range(4)))
            pdf.ln(2)
        with pdf.table(col_widths=(10, 40, 50), line_height=5) as table:
            for cells in _cells(chance):
                row = table.row()
                for cell in cells:
                    row.cell(cell)
    pdf.output(str(path))


def notes(folder: Path, many: int) -> list[Path]:
    """Write so many one-page documents, PDF and text by turns."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for number in range(many):
        chance = random.Random(number)  # noqa: S311 - a seed, no secret
        lines = [f"Note {number}", *(sentence(chance) for _ in range(8))]
        path = folder / f"note-{number:03}.txt"
        if number % 2:
            path = canvas_pdf(path.with_suffix(".pdf"), [lines])
        else:
            path.write_text("\n".join(lines), encoding="utf-8")
        made.append(path)
    return made


def shelf(folder: Path, documents: int, pages: int, repeated: float) -> list[Path]:
    """Write documents of which a share of the pages stands in another one already.

    Parameters
    ----------
    documents, pages : int
        How many, and pages of each.
    repeated : float
        The share, from 0 to 1.
    """
    folder.mkdir(parents=True, exist_ok=True)
    chance = random.Random(5)  # noqa: S311 - a seed, no secret
    total = documents * pages
    own = total - round(total * repeated)
    made = [_page_lines(number, chance) for number in range(own)]
    # Each of the first pages again, in its order, behind all that are new.
    whole = [made[at] if at < own else made[at - own] for at in range(total)]
    return [
        canvas_pdf(folder / f"manual-{at:02}.pdf", whole[at * pages : (at + 1) * pages])
        for at in range(documents)
    ]


def _page_lines(number: int, chance: random.Random) -> list[str]:
    body = [sentence(chance) for _ in range(12)]
    return [f"{number + 1}. Section {number + 1}", *body]
