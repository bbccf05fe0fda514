"""Draws the difficult pages whose text stands, written by hand, in `difficult/`.

Each function draws one page the way that real files were seen to do it.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path

from reportlab.lib.colors import Color
from reportlab.lib.pagesizes import A4
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas

from tests.ingest.sample_pdfs import one_page, raw_pdf, stream

LEFT = (
    "16 Water at the coil of the indoor unit",
    "Water that drips from the front of the unit",
    "comes from a drain that is blocked, from a",
    "unit that hangs out of level, or from a coil",
    "that was iced over and thaws. Look at the",
    "tray first, then at the fall of the hose.",
    "A pump that hums and lifts nothing is full",
    "of dirt: clean its strainer.",
)
RIGHT = (
    "17 Noise in the pipes of a long run",
    "A hiss behind the wall is refrigerant that",
    "boils in the pipe. It is heard when the",
    "charge is low, when the pipe is pinched, or",
    "for a minute after each start. A knock at",
    "each start comes from a clamp without its",
    "rubber. Count the knocks and write them",
    "down before a clamp is opened.",
)
TABLE = (
    ("Code", "Meaning", "Plug"),
    ("E1", "Room sensor open", "CN3"),
    ("E2", "Coil sensor open", "CN4"),
    ("E40", "Remote gets no messages", "CN9"),
    ("H11", "Boards do not talk", "X6"),
)


def _canvas(path: Path) -> Canvas:
    canvas = Canvas(str(path), pagesize=A4, invariant=1)
    canvas.setFont("Helvetica", 10)
    return canvas


def _columns(path: Path, order: Sequence[tuple[int, int]]) -> None:
    canvas = _canvas(path)
    canvas.setFont("Helvetica-Bold", 14)
    canvas.drawString(
        60, 780, "Complaints of guests, and what to look at first in each"
    )
    canvas.setFont("Helvetica", 10)
    for side, at in order:
        text = (LEFT, RIGHT)[side][at]
        canvas.drawString((60, 310)[side], 740 - 13 * at, text)
    canvas.drawString(60, 40, "OTTER-7  Page 12")
    canvas.save()


def two_columns(path: Path) -> None:
    """Draw one column after the other."""
    _columns(path, [(side, at) for side in (0, 1) for at in range(len(LEFT))])


def two_columns_line_by_line(path: Path) -> None:
    """Draw across both columns, as some writers do."""
    _columns(path, [(side, at) for at in range(len(LEFT)) for side in (0, 1)])


def turned_table(path: Path) -> None:
    """Draw a ruled landscape table on an upright page."""
    canvas = _canvas(path)
    canvas.translate(400, 100)
    canvas.rotate(90)
    xs, ys = (0, 60, 260, 320), [200 - 20 * at for at in range(len(TABLE) + 1)]
    canvas.grid(list(xs), ys)
    for at, cells in enumerate(TABLE):
        for x, cell in zip(xs, cells, strict=False):
            canvas.drawString(x + 4, ys[at] - 14, cell)
    canvas.drawString(0, 230, "Table 9 Codes")
    canvas.save()


def rotated_page(path: Path) -> None:
    """Give a page that is turned by the file's own mark."""
    canvas = _canvas(path)
    canvas.setPageRotation(90)
    canvas.translate(60, 60)
    canvas.rotate(90)
    for at, line in enumerate(("Isolate both supplies.", "Wait 10 minutes.")):
        canvas.drawString(0, -40 - 14 * at, line)
    canvas.save()


def zebra(path: Path) -> None:
    """Draw a table without rules, every other row on grey."""
    canvas = _canvas(path)
    canvas.drawString(60, 780, "Codes of the display")
    for at, cells in enumerate(TABLE):
        y = 740 - 18 * at
        if at % 2 == 0:
            canvas.setFillColor(Color(0.85, 0.85, 0.85))
            canvas.rect(56, y - 5, 380, 18, stroke=0, fill=1)
            canvas.setFillColor(Color(0, 0, 0))
        for x, cell in zip((60, 140, 380), cells, strict=True):
            canvas.drawString(x, y, cell)
    canvas.save()


def ligatures(path: Path) -> None:
    """Set ligatures as single characters, one apart from its word."""
    pdfmetrics.registerFont(TTFont("Vera", "Vera.ttf"))
    canvas = _canvas(path)
    canvas.setFont("Vera", 10)
    for at, line in enumerate(
        (
            "The lamp is \ufb02ashing while the \ufb01lter runs.",
            "A \ufb02 ashing lamp is counted; a fi lter is cleaned.",
            "Turn it off before the flow stops.",
        )
    ):
        canvas.drawString(60, 780 - 14 * at, line)
    canvas.save()


def hyphens(path: Path) -> None:
    """Part words and codes at line ends."""
    canvas = _canvas(path)
    for at, line in enumerate(
        (
            "The compressor starts last. Listen to the com-",
            "pressor, then look at fault E5-",
            "1 and at the plug P1-05. A two-",
            "stage valve is not fitted.",
        )
    ):
        canvas.drawString(60, 780 - 14 * at, line)
    canvas.save()


def symbol_font(path: Path) -> None:
    """Show codes in a font whose characters lie in the private-use area."""
    codes = {65 + at: char for at, char in enumerate("E7PS-trHi 0")}
    lines = b"\n".join(
        b"<%02X> <F0%02X>" % (code, ord(char)) for code, char in codes.items()
    )
    cmap = (
        b"/CIDInit /ProcSet findresource begin 12 dict begin begincmap\n"
        b"1 begincodespacerange <00> <FF> endcodespacerange\n"
        b"%d beginbfchar\n%s\nendbfchar endcmap end end" % (len(codes), lines)
    )
    fonts = (
        b"<< /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> "
        b"/F2 << /Type /Font /Subtype /Type1 /BaseFont /Courier /ToUnicode 5 0 R >> "
        b">> >>"
    )
    text = (
        b"BT /F2 12 Tf 60 700 Td (AB) Tj /F1 12 Tf 80 0 Td (Fan motor locked) Tj ET "
        b"BT /F2 12 Tf 60 680 Td (CDEFG) Tj /F1 12 Tf 80 0 Td (Drive tripped) Tj ET"
    )
    path.write_bytes(raw_pdf([*one_page(stream(text), fonts), stream(cmap)]))


def drawn_out_of_order(path: Path) -> None:
    """Draw the foot first and the paragraphs from the last to the first."""
    canvas = _canvas(path)
    canvas.drawString(60, 40, "OTTER-7  Page 3")
    for top, lines in (
        (600, ("Third: switch on.",)),
        (660, ("Second: wait", "a minute.")),
    ):
        for at, line in enumerate(lines):
            canvas.drawString(60, top - 14 * at, line)
    canvas.drawString(60, 720, "First: switch off.")
    canvas.save()


def table_by_columns(path: Path) -> None:
    """Draw a table without rules column by column."""
    canvas = _canvas(path)
    for column, x in enumerate((60, 140, 380)):
        for at, cells in enumerate(TABLE):
            canvas.drawString(x, 740 - 18 * at, cells[column])
    canvas.save()


def raised(path: Path) -> None:
    """Raise figures and footnote marks; lower one."""
    canvas = _canvas(path)
    text = canvas.beginText(60, 780)
    for part, size, rise in (
        ("Insulation above 10", 10, 0),
        ("6", 6, 4),
        (" ohm, code E3", 10, 0),
        ("1", 6, 4),
        (" shown.", 10, 0),
    ):
        text.setFont("Helvetica", size)
        text.setRise(rise)
        text.textOut(part)
    canvas.drawText(text)
    canvas.save()


def spaced_letters(path: Path) -> None:
    """Set a heading letter by letter, and one down the margin."""
    canvas = _canvas(path)
    x = 60.0
    for char in "WARNING SIGNS":
        if char != " ":
            canvas.drawString(x, 780, char)
        x += 14
    canvas.drawString(60, 760, "Keep hands out of the fan.")
    for at, char in enumerate("DANGER"):
        canvas.drawString(40, 700 - 11 * at, char)
    canvas.save()


PAGES: dict[str, Callable[[Path], None]] = {
    "two-columns": two_columns,
    "two-columns-line-by-line": two_columns_line_by_line,
    "turned-table": turned_table,
    "rotated-page": rotated_page,
    "zebra": zebra,
    "ligatures": ligatures,
    "hyphens": hyphens,
    "symbol-font": symbol_font,
    "drawn-out-of-order": drawn_out_of_order,
    "table-by-columns": table_by_columns,
    "raised": raised,
    "spaced-letters": spaced_letters,
}
