"""A fourth set, drawn after the third had been scored and learnt from."""

from __future__ import annotations

from pathlib import Path

from tests.ingest.gold.pens import (
    CanvasPen,
    FpdfPen,
    OperatorPen,
    Rows,
    across,
    cell,
    down,
    grid,
    row,
    set_rows,
)


def beside_prose(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(40, 60, "Codes of the drain", bold=True, size=11)
    ys = [70, 88, 106, 136, 154]
    across(pen, 40, 285, ys)
    rows: Rows = [
        ["Code", "Cause", "Then"],
        ["dr1", "float up", "pump runs"],
        ["dr2", ["float up for", "4 min"], "stop"],
        ["dr4", "float wire open", "stop"],
    ]
    set_rows(pen, [40, 90, 200], ys, rows)
    for at, said in enumerate(
        [
            "The pan is emptied by a small pump.",
            "It starts with cooling, and runs on",
            "for three minutes after it. When the",
            "float rises at rest the pump starts",
            "by itself, also with heating.",
            "Water in the pan is no fault; water",
            "that does not fall is one.",
        ]
    ):
        pen.text(310, 74 + 12 * at, said)
    pen.save()


def bands_over_pages(path: Path) -> None:
    pen = CanvasPen(path)
    pages = [
        (
            700,
            [
                ["Point", "Between", "Should be"],
                ["M1", "L and N", "207 to 253 V"],
                ["M2", "P and M", "290 to 350 V"],
                ["M3", "5 and 6", "15 V"],
            ],
        ),
        (
            70,
            [
                ["Point", "Between", "Should be"],
                ["M4", "7 and 6", "5 V"],
                ["M7", "U and V", "equal to V and W"],
            ],
        ),
    ]
    for number, (top, rows) in enumerate(pages):
        if number:
            pen.page()
        pen.text(60, 40, "Measuring points")
        ys = [top + 17 * at for at in range(len(rows) + 1)]
        across(pen, 60, 430, ys)
        set_rows(pen, [60, 120, 260], ys, rows)
        pen.text(480, 820, f"{number + 33}")
    pen.save()


def lamps_in_cells(path: Path) -> None:
    pen = CanvasPen(path)
    xs, ys = [60, 120, 170, 220, 500], [80, 98, 140, 158]
    grid(pen, xs, ys)
    rows: Rows = [
        ["Fault", "LD1", "LD2", "Look at"],
        ["27-A", "", "off", ["- both ends of the cable", "- plug CN30", "- board"]],
        ["27-B", "on", "", "- fuse F2"],
    ]
    set_rows(pen, xs, ys, rows)
    for x, y in ((124, 104), (174, 145)):
        pen.fill(x, y, 9, 9, 0.3)
    pen.save()


def zebra_numbers(path: Path) -> None:
    pen = OperatorPen(path)
    pen.text(60, 60, "Sensor TH4", bold=True, size=12)
    for x, said in ((64, "Temp."), (150, "kOhm"), (240, "Volt"), (330, "Note")):
        pen.text(x, 90, said, bold=True)
    for at, cells in enumerate(
        [
            ("-20 C", "97.4", "4.52", ""),
            ("0 C", "32.7", "3.83", "ice water"),
            ("25 C", "10.0", "2.50", ""),
            ("60 C", "2.5", "1.00", ""),
            ("90 C", "0.92", "0.42", "limit"),
        ]
    ):
        y = 97 + 15 * at
        if at % 2 == 0:
            pen.fill(60, y, 340, 15, 0.9)
        for x, said in zip((92, 172, 260), cells, strict=False):
            pen.text(x - 4.4 * len(said), y + 11, said)
        pen.text(330, y + 11, cells[3])
    pen.save()


def framed_dots(path: Path) -> None:
    pen = OperatorPen(path)
    across(pen, 60, 500, [80, 180])
    down(pen, [60, 500], 80, 180)
    for y in (100, 120, 140, 160):
        pen.line(60, y, 500, y, dash=1.5)
    row(pen, [60, 140, 330], 82, ["Key", "Pressed for", "Does"], bold=True)
    row(pen, [60, 140, 330], 102, ["SB1", "1 s", "shows the next fault"])
    row(pen, [60, 140, 330], 122, ["SB1", "5 s", "clears the history"])
    row(pen, [60, 140, 330], 142, ["SB2", "1 s, unit at rest", "test run"])
    row(pen, [60, 140, 330], 162, ["SB1+SB2", "10 s", "settings of the works"])
    pen.save()


def grey_sections(path: Path) -> None:
    pen = FpdfPen(path)
    xs = [50, 130, 330, 520]
    ys = [80, 98, 116, 134, 152, 170, 188]
    for y, grey in ((80, 0.6), (98, 0.85), (152, 0.85)):
        pen.fill(50, y, 470, 18, grey)
    across(pen, 50, 520, ys)
    down(pen, [50, 520], 80, 188)
    for top, low in ((80, 98), (116, 152), (170, 188)):
        down(pen, xs[1:3], top, low)
    row(pen, xs, 80, ["Number", "Name", "From works"], bold=True)
    cell(pen, 50, 98, "Heating")
    row(pen, xs, 116, ["H-01", "Highest water", "55 C"])
    row(pen, xs, 134, ["H-02", "Night lowering", "4 K"])
    cell(pen, 50, 152, "Hot water")
    row(pen, xs, 170, ["W-01", "Tank", "48 C"])
    pen.save()


def blanks_to_fill(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "Hand-over", bold=True, size=12)
    for at, said in enumerate(["Unit", "Serial number", "Charge added", "Date"]):
        pen.text(60, 100 + 24 * at, said)
        pen.line(160, 102 + 24 * at, 400, 102 + 24 * at)
    pen.text(60, 220, "The form stays with the unit.")
    pen.save()


def contents_with_dots(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "Contents", bold=True, size=12)
    pen.line(60, 66, 500, 66)
    for at, (said, page) in enumerate(
        [("1 Before work", "3"), ("2 Lamps", "9"), ("3 Codes", "14"), ("4 Parts", "40")]
    ):
        y = 90 + 16 * at
        pen.text(60, y, said)
        pen.line(150, y, 470, y, dash=1)
        pen.text(480, y, page)
    pen.line(60, 160, 500, 160)
    pen.save()
