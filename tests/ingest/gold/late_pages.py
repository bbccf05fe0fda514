"""Pages laid out by the writers' own table makers, drawn last of all."""

from __future__ import annotations

from pathlib import Path

from fpdf.fonts import FontFace
from reportlab.lib import colors
from reportlab.lib.styles import getSampleStyleSheet
from reportlab.platypus import Paragraph, Spacer, Table

from tests.ingest.gold.pens import (
    CanvasPen,
    OperatorPen,
    across,
    cell,
    down,
    grid,
    headed_fpdf,
    laid_out,
    new_fpdf,
    put_table,
    row,
)

BODY = getSampleStyleSheet()["BodyText"]


def boxed_and_spanned(path: Path) -> None:
    rows = [
        ["Code", "Seen on", "", "What it means"],
        ["", "wall", "board", ""],
        ["W4-0", "yes", "5 x red", Paragraph("Current sensor out of range", BODY)],
        [
            "W4-1",
            "yes",
            "6 x red",
            Paragraph(
                "Current sensor not at zero while the "
                "compressor rests; the board is to be changed",
                BODY,
            ),
        ],
        ["W9", "no", "7 x red", Paragraph("Pipe sensors crossed", BODY)],
    ]
    table = Table(rows, colWidths=[60, 60, 70, 220])
    table.setStyle(
        [
            ("GRID", (0, 0), (-1, -1), 0.5, colors.black),
            ("SPAN", (0, 0), (0, 1)),
            ("SPAN", (1, 0), (2, 0)),
            ("SPAN", (3, 0), (3, 1)),
            ("ALIGN", (0, 0), (2, -1), "CENTER"),
            ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
            ("BACKGROUND", (0, 0), (-1, 1), colors.lightgrey),
        ]
    )
    laid_out(path, Paragraph("Codes W", BODY), Spacer(1, 10), table)


def lines_below(path: Path) -> None:
    rows = [
        ["Step", "Do", "Should read", "If not"],
        ["1", "Pull plug CN7, measure 1 to 3", "290 to 330 V DC", "board"],
        ["2", "Measure 4 to 3", "15 V DC", "board"],
        ["3", "Turn the fan by hand, 6 to 3", "0 and 15 V in turn", "motor"],
        ["4", "Plug in again, start", "turns within 20 s", "motor, board"],
    ]
    table = Table(rows, colWidths=[40, 190, 110, 90], hAlign="LEFT")
    table.setStyle(
        [
            ("LINEABOVE", (0, 0), (-1, 0), 1.2, colors.black),
            ("LINEBELOW", (0, 0), (-1, -1), 0.4, colors.grey),
            ("FONTNAME", (0, 0), (-1, 0), "Helvetica-Bold"),
        ]
    )
    laid_out(path, Paragraph("Fan motor", BODY), table, Paragraph("End.", BODY))


def backgrounds(path: Path) -> None:
    rows = [
        ["Address", "Name", "From", "To"],
        ["0x10", "Cooling target", "16", "31"],
        ["0x11", "Heating target", "10", "30"],
        ["0x12", "Louvre", "1", "5"],
        ["0x20", "Compressor speed", "0", "7200"],
        ["0x21", "Fan speed", "0", "1050"],
    ]
    table = Table(rows, colWidths=[70, 200, 60, 60])
    table.setStyle(
        [
            ("ROWBACKGROUNDS", (0, 1), (-1, -1), [colors.whitesmoke, colors.white]),
            ("BACKGROUND", (0, 0), (-1, 0), colors.darkgrey),
            ("ALIGN", (2, 0), (3, -1), "RIGHT"),
        ]
    )
    laid_out(path, Paragraph("Addresses", BODY), Spacer(1, 8), table)


def columns_ruled_only(path: Path) -> None:
    pdf = headed_fpdf("Codes of the cassette")
    put_table(
        pdf,
        [
            ("Code", "Meaning", "Unit"),
            ("V01", "Louvre does not find its end", "runs on"),
            ("V02", "Panel without power", "stops"),
            ("V05", "Filter lift blocked or its cord is off the drum", "runs on"),
            ("V11", "Eye dirty", "runs on"),
        ],
        col_widths=(15, 40, 45),
        borders_layout="NO_HORIZONTAL_LINES",
        text_align="LEFT",
    )
    pdf.output(str(path))


def header_ruled_only(path: Path) -> None:
    pdf = headed_fpdf("Torques")
    put_table(
        pdf,
        [
            ("Flare nut", "Torque", "Spanner"),
            ("6.35 mm", "14 to 18 Nm", "17"),
            ("9.52 mm", "34 to 42 Nm", "22"),
            ("12.7 mm", "49 to 61 Nm", "26"),
        ],
        col_widths=(40, 30, 30),
        borders_layout="HORIZONTAL_LINES",
        text_align="LEFT",
    )
    pdf.output(str(path))


def fills_and_sections(path: Path) -> None:
    pdf = new_fpdf()
    pdf.set_font("times", size=10)
    head = FontFace(emphasis="BOLD", fill_color=(40, 60, 110), color=(255, 255, 255))
    with pdf.table(
        col_widths=(14, 43, 43),
        borders_layout="INTERNAL",
        headings_style=head,
        text_align="LEFT",
    ) as table:
        table.row(("Lamp", "State", "Say to the caller"))
        line = table.row()
        line.cell("Board OB-2 (blue label)", colspan=3)
        for cells in [
            ("D1", "even, slow", "The unit is ready."),
            (
                "D1",
                "even, fast",
                "It counts down three minutes; nothing is to be done.",
            ),
        ]:
            table.row(cells)
        line = table.row()
        line.cell("Board OB-3", colspan=3)
        table.row(("D4", "dark", "Look at the breaker, once."))
    pdf.output(str(path))


def three_merged_levels(path: Path) -> None:
    pen = OperatorPen(path)
    xs = [50, 110, 220, 330, 545]
    ys = [80 + 18 * at for at in range(8)]
    across(pen, 50, 545, [ys[0], ys[1], ys[5], ys[7]])
    across(pen, 110, 545, [ys[3], ys[6]])
    across(pen, 220, 545, [ys[2], ys[4]])
    down(pen, xs, ys[0], ys[-1])
    row(pen, xs, ys[0], ["System", "Stop", "Count", "Action"], bold=True)
    cell(pen, 50, ys[2] + 9, "Circuit 1")
    cell(pen, 50, ys[5] + 9, "Circuit 2")
    cell(pen, 110, ys[1] + 9, "HP-1")
    cell(pen, 110, ys[3] + 9, "LP-1")
    row(pen, xs[1:], ys[5], ["HP-2"])
    row(pen, xs[1:], ys[6], ["LP-2"])
    for at, (count, action) in enumerate(
        [
            ("1 to 3", "starts again by itself"),
            ("4", "locked, power off to clear"),
            ("1 or 2", "starts again after 6 min"),
            ("3", "locked, power off to clear"),
            ("1", "locked"),
            ("1", "locked"),
        ]
    ):
        row(pen, xs[2:], ys[at + 1], [count, action])
    pen.save()


def wide_and_tight(path: Path) -> None:
    pen = CanvasPen(path)
    names = ["Sw.", "1", "2", "3", "4", "5", "6", "7", "8", "Address"]
    rows = [
        ["a", "ON", "", "", "", "", "", "", "", "1"],
        ["b", "", "ON", "", "", "", "", "", "", "2"],
        ["c", "ON", "ON", "", "", "", "", "", "", "3"],
        ["d", "", "", "ON", "", "", "ON", "", "", "36"],
    ]
    xs = [60, 90, *[90 + 18 * at for at in range(1, 9)], 300]
    ys = [80 + 13 * at for at in range(6)]
    grid(pen, xs, ys)
    for y, cells in zip(ys, [names, *rows], strict=False):
        for x, said in zip(xs, cells, strict=False):
            pen.text(x + 1.5, y + 10, said, size=8, bold=y == ys[0])
    pen.save()


def drawn_parts(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "How the boards are joined", bold=True, size=12)
    for x, y, said in (
        (60, 90, "Filter board"),
        (240, 90, "Main board"),
        (420, 90, "Fan board"),
        (240, 200, "Display"),
    ):
        across(pen, x, x + 100, [y, y + 40])
        down(pen, [x, x + 100], y, y + 40)
        pen.text(x + 20, y + 24, said)
    across(pen, 160, 240, [110])
    across(pen, 340, 420, [110])
    down(pen, [290], 130, 200)
    pen.text(180, 106, "CN1")
    pen.text(360, 106, "CN7")
    pen.text(295, 170, "CN12")
    pen.save()
