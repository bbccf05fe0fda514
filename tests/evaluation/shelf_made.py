"""Shelves of any size, made by a script: manuals with tables, notes, repeated text."""

from __future__ import annotations

import random
from pathlib import Path

from fpdf import FPDF
from reportlab.lib import colors
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import getSampleStyleSheet
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
