"""The set that was scored once: nothing was changed after it."""

from __future__ import annotations

from pathlib import Path

from reportlab.lib import colors
from reportlab.platypus import Table

from tests.ingest.gold.pens import (
    CanvasPen,
    FpdfPen,
    OperatorPen,
    across,
    cell,
    down,
    grid,
    laid_out,
    new_fpdf,
    put_table,
    row,
    set_rows,
    turn,
)


def heavy_bars(path: Path) -> None:
    pen = OperatorPen(path)
    pen.text(50, 60, "9.1 Stops of the water side", bold=True, size=13)
    pen.fill(50, 76, 490, 2, 0.0)
    pen.fill(50, 104, 490, 2, 0.0)
    pen.fill(50, 182, 490, 2, 0.0)
    down(pen, [115, 250, 400], 76, 184)
    across(pen, 115, 540, [144])
    across(pen, 50, 540, [164])
    cell(pen, 50, 78, ["Stop /", "warning"], bold=True)
    row(pen, [115, 250, 400], 83, ["Cause", "Seen by", "Cleared"], bold=True)
    cell(pen, 50, 124, "E-03")
    row(
        pen,
        [115, 250, 400],
        110,
        [["Flow below 8 l/min", "for 15 s"], "flow switch", "by itself"],
    )
    row(pen, [115, 250, 400], 146, ["Strainer blocked", "flow falls slowly", "button"])
    row(
        pen,
        [50, 115, 250, 400],
        165,
        ["E-11", "Water at 3 C", "sensor TW2", "power off"],
    )
    pen.save()


def bands_with_shared_remedy(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 60, "Lights of the remote", bold=True, size=12)
    across(pen, 50, 520, [72, 92, 142, 162, 182])
    across(pen, 50, 300, [112])
    row(pen, [50, 120, 300], 74, ["Light", "Means", "Do"], bold=True)
    row(pen, [50, 120], 94, ["P-1", "no answer of unit 1"])
    row(pen, [50, 120], 117, ["P-2", "no answer of unit 2"])
    cell(pen, 300, 106, "Check the line, then the unit")
    row(pen, [50, 120, 300], 144, ["P-5", "address twice", "Set another address"])
    row(pen, [50, 120, 300], 164, ["P-8", "clock lost", "Set the clock"])
    pen.save()


def filled_head_striped(path: Path) -> None:
    rows = [
        ["Reading", "Good", "", "Doubtful"],
        ["", "from", "to", ""],
        ["Subcooling K", "4", "9", "below 3, over 12"],
        ["Superheat K", "3", "8", "below 2, over 12"],
        ["Air drop K", "8", "13", "below 6"],
        ["Current A", "3.1", "7.8", "over 9"],
    ]
    table = Table(rows, colWidths=[110, 60, 60, 150])
    table.setStyle(
        [
            ("SPAN", (0, 0), (0, 1)),
            ("SPAN", (1, 0), (2, 0)),
            ("SPAN", (3, 0), (3, 1)),
            ("BACKGROUND", (0, 0), (-1, 1), colors.grey),
            ("ROWBACKGROUNDS", (0, 2), (-1, -1), [colors.white, colors.lightgrey]),
            ("BOX", (0, 0), (-1, -1), 0.8, colors.black),
            ("LINEAFTER", (0, 0), (-2, -1), 0.3, colors.grey),
            ("FONTNAME", (0, 0), (-1, 1), "Helvetica-Bold"),
        ]
    )
    laid_out(path, table)


def grid_over_pages(path: Path) -> None:
    pdf = new_fpdf()
    pdf.set_y(720)
    pdf.set_font("times", size=10)
    rows = [
        ("AL-1", "Battery of the logger", "change within a month"),
        ("AL-2", "Memory of the logger full", "read it out, it goes on by itself"),
        ("AL-6", "Logger without time", "set the time"),
        ("AL-7", "Two loggers with one number", "give one another number"),
    ]
    put_table(
        pdf,
        [("Alarm", "What is wrong", "What to do"), *rows],
        col_widths=(15, 40, 45),
        repeat_headings=0,
        text_align="LEFT",
    )
    pdf.output(str(path))


def turned_bands(path: Path) -> None:
    pen = CanvasPen(path, (842, 595))
    pen.text(60, 50, "Cable sheet", bold=True, size=12)
    xs = [60, 130, 290, 420, 560]
    rows = [
        ["Cable", "From", "To", "Wires", "Longest"],
        ["C-01", "isolator", "outdoor unit", "3 x 2.5", "as calculated"],
        ["C-02", "outdoor unit", "indoor unit", "4 x 1.5", "50 m"],
        ["C-07", "indoor unit", "wall panel", "2 x 0.75", "200 m"],
    ]
    across(pen, 60, 760, [70 + 20 * at for at in range(5)])
    set_rows(pen, xs, [71 + 20 * at for at in range(4)], rows)
    pen.save()
    turn(path, 90, 270)


def two_columns_of_text(path: Path) -> None:
    pen = FpdfPen(path)
    pen.fill(40, 40, 515, 24, 0.85)
    pen.text(46, 56, "Care between seasons", bold=True, size=12)
    down(pen, [297], 80, 220)
    for left, lines in (
        (
            46,
            [
                "Rinse the coil in spring.",
                "Look at the feet of the unit.",
                "Cut plants back.",
            ],
        ),
        (
            305,
            [
                "Cover nothing in winter.",
                "Leave the supply on, so that",
                "the oil stays warm.",
            ],
        ),
    ):
        for at, said in enumerate(lines):
            pen.text(left, 96 + 14 * at, said)
    across(pen, 40, 555, [230, 800])
    pen.save()


def lamp_panel(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "The panel", bold=True, size=12)
    pen.fill(60, 80, 300, 90, 0.9)
    for at, said in enumerate(["POWER", "TIMER", "FILTER"]):
        pen.fill(90 + 90 * at, 100, 14, 14, 0.3)
        pen.text(82 + 90 * at, 130, said)
    across(pen, 60, 360, [80, 170])
    down(pen, [60, 360], 80, 170)
    pen.text(60, 200, "The three lights stand in one line below the louvre.")
    pen.save()


def spec_grid(path: Path) -> None:
    pen = FpdfPen(path)
    xs, ys = [50, 190, 270, 400, 530], [80, 98, 116, 134, 152]
    grid(pen, [50, 190, 270, 530], ys)
    down(pen, [400], 80, 134)
    rows = [
        ["Item", "Unit", "BV-25", "BV-35"],
        ["Cooling", "kW", "2.5", "3.5"],
        ["Fuse", "A", "10", "16"],
        ["Refrigerant", "kg", "0.85, R-32 in both"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()
