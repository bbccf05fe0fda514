"""Pages that were drawn and written down after the rules and limits were chosen."""

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
    new_fpdf,
    row,
    set_rows,
)


def bands_with_merged_codes(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 60, "Codes and their causes", bold=True, size=12)
    xs = [50, 110, 320]
    across(pen, 50, 540, [75, 95, 155, 195, 215])
    across(pen, 110, 540, [115, 135, 175])
    row(pen, xs, 78, ["Code", "Possible cause", "How to tell"], bold=True)
    cell(pen, 50, 118, "b7")
    cell(pen, 50, 168, "c2")
    row(pen, xs[1:], 97, ["Float stuck", "Lift it by hand, it must fall"])
    row(pen, xs[1:], 117, ["Drain blocked", "Pour half a litre into the pan"])
    row(pen, xs[1:], 137, ["Pump dead", "12 V at CN9 and no hum"])
    row(pen, xs[1:], 157, ["Plug CN3 loose", "Pull at each wire"])
    row(pen, xs[1:], 177, ["Sensor aged", "Two readings in ice water"])
    row(pen, xs, 197, ["c9", "Board", "When the sensor is proved"])
    pen.save()


def bands_with_groups(path: Path) -> None:
    pen = OperatorPen(path)
    pen.text(60, 60, "Pressures by outdoor temperature", bold=True, size=12)
    across(pen, 60, 520, [74, 110, 128, 146, 164, 182])
    across(pen, 180, 345, [92])
    across(pen, 355, 520, [92])
    pen.text(64, 105, "Outdoor", bold=True)
    pen.text(225, 87, "Cooling kPa", bold=True)
    pen.text(405, 87, "Heating kPa", bold=True)
    for x, said in ((205, "low"), (285, "high"), (375, "low"), (455, "high")):
        pen.text(x, 105, said, bold=True)
    for y, cells in (
        (123, ["-5 C", "690", "1900", "480", "2310"]),
        (141, ["7 C", "760", "2050", "640", "2480"]),
        (159, ["20 C", "820", "2300", "910", "2700"]),
        (177, ["35 C", "905", "2790", "1010", "3050"]),
    ):
        pen.text(64, y, cells[0])
        for x, said in zip((225, 307, 395, 477), cells[1:], strict=True):
            pen.text(x - 5 * len(said), y, said)
    pen.save()


def framed_zebra(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "What the shop keeps", bold=True, size=12)
    xs = [50, 125, 330, 420]
    rows: list[tuple[int, list[str | list[str]]]] = [
        (18, ["Number", "Part", "Fits", "Shelf"]),
        (18, ["MR-118", "Contactor, 24 V coil", "all", "B2"]),
        (
            40,
            [
                "MR-204",
                ["Sensor set, three", "pieces, with clips", "and paste"],
                "30, 42",
                "B3",
            ],
        ),
        (18, ["MR-310", "Float switch", "ceiling", "C1"]),
        (29, ["MR-311", ["Drain pump with hose", "and check valve"], "ceiling", "C1"]),
        (18, ["MR-402", "Display", "wall", "D4"]),
    ]
    y = 75.0
    for at, (high, cells) in enumerate(rows):
        if at == 0 or at % 2 == 0:
            pen.fill(50, y, 450, high, 0.55 if at == 0 else 0.92)
        row(pen, xs, y, cells, bold=at == 0)
        y += high
    across(pen, 50, 500, [75, y])
    down(pen, [50, 500], 75, y)
    pen.save()


def bands_between_page_rules(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 40, "Installation and service")
    pen.text(480, 40, "Chapter 7")
    across(pen, 50, 545, [46, 800])
    pen.text(50, 814, "Edition 3")
    pen.text(530, 814, "71")
    pen.text(50, 80, "7.3 Reset of stops", bold=True, size=13)
    pen.text(
        50,
        98,
        "Every stop is kept until it is cleared in the way that the list says. A reset",
    )
    pen.text(
        50,
        110,
        "without a cure brings it back, and the third one in an hour locks the unit.",
    )
    xs = [50, 115, 330]
    ys = [130, 148, 166, 196, 214]
    across(pen, 50, 545, ys)
    rows: Rows = [
        ["Stop", "Cleared by", "Remark"],
        ["R-01", "itself, after 3 min", "counts as one start"],
        [
            "R-04",
            ["power off for one minute", "at the isolator"],
            "not from the remote",
        ],
        ["R-09", "button SB2, held 5 s", "two on older boards"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.text(
        50,
        250,
        "The history is read with button SB1. It shows the newest stop first and keeps",
    )
    pen.text(
        50,
        262,
        "twelve of them; the next one pushes the oldest out, even when it is unread.",
    )
    pen.save()


def grid_with_sections(path: Path) -> None:
    pen = CanvasPen(path)
    xs = [60, 130, 330, 530]
    ys = [80, 98, 116, 134, 152, 170, 188, 206]
    pen.fill(60, 80, 470, 18, 0.75)
    pen.fill(60, 98, 470, 18, 0.85)
    across(pen, 60, 530, ys)
    down(pen, [60, 530], 80, 206)
    for top, low in ((98, 116), (134, 170), (188, 206)):
        down(pen, xs[1:3], top, low)
    pen.text(64, 92, "Table 14: limits of the drive", bold=True)
    row(pen, xs, 98, ["Limit", "What is watched", "Value"], bold=True)
    cell(pen, 60, 116, "Compressor")
    row(pen, xs, 134, ["X1", "Phase current", "17 A for 2 s"])
    pen.fill(332, 155, 60, 12, 0.9)
    row(pen, xs, 152, ["X2", "Heat sink", "92 C"])
    cell(pen, 60, 170, "Fan")
    row(pen, xs, 188, ["X7", "Speed feedback", "below 200 1/min for 15 s"])
    # A second grid close below, with other columns.
    xs, ys = [60, 200, 530], [216, 234, 252, 270]
    grid(pen, xs, ys)
    rows = [
        ["Shown", "Stands for"],
        ["X with a dot", "limit reached once"],
        ["X blinking", "limit reached now"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def cells_as_boxes(path: Path) -> None:
    pdf = new_fpdf()
    pdf.set_font("times", "B", 12)
    pdf.text(50, 60, "Inputs and outputs")
    lefts, widths = [50, 100, 250, 290, 330], [50, 150, 40, 40, 200]
    rows = [
        ("X1:3", "Float switch", "x", "", "opens on high water"),
        ("X1:5", "Remote stop", "x", "", "bridged at works"),
        ("X2:1", "Alarm relay", "", "x", "1 A at 24 V at most"),
    ]
    pdf.set_font("times", "B", 9)
    for left, wide, name in zip(
        lefts, widths, ["Clamp", "Name", "", "", "Remark"], strict=True
    ):
        pdf.rect(left, 75, wide, 45)
        pdf.text(left + 4, 115, name)
    for x, name in ((273, "Input"), (313, "Output")):
        with pdf.rotation(90, x, 116):
            pdf.text(x, 116, name)
    pdf.set_font("times", "", 9)
    for at, cells in enumerate(rows):
        for left, wide, said in zip(lefts, widths, cells, strict=True):
            pdf.rect(left, 120 + 18 * at, wide, 18)
            pdf.text(left + 4, 132 + 18 * at, said)
    pdf.output(str(path))


def facing_pages(path: Path) -> None:
    pen = OperatorPen(path)
    pages = [
        (50, 640, [["Q1-01", "8", "12", "watch"], ["Q1-02", "10", "15", "stop"]]),
        (80, 60, [["Q1-08", "20", "25", "stop"], ["Q2-01", "60", "75", "watch"]]),
        (50, 60, [["Q2-05", "5", "9", "stop"]]),
    ]
    for number, (left, top, rows) in enumerate(pages):
        if number:
            pen.page()
        xs = [left + step for step in (0, 80, 180, 280, 440)]
        end = top + 36 + 18 * len(rows)
        across(pen, xs[0], xs[-1], [top, *range(top + 36, end + 1, 18)])
        across(pen, xs[1], xs[3], [top + 18])
        down(pen, [xs[0], xs[1], xs[3], xs[4]], top, end)
        down(pen, [xs[2]], top + 18, end)
        cell(pen, xs[0], top + 9, "Count")
        cell(pen, xs[1] + 60, top, "Within minutes")
        cell(pen, xs[1], top + 18, "least")
        cell(pen, xs[2], top + 18, "most")
        cell(pen, xs[3], top + 9, "Then")
        for at, cells in enumerate(rows):
            row(pen, xs, top + 36 + 18 * at, cells)
    pen.save()


def ruled_prose(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 60, "Questions from the resort", bold=True, size=12)
    texts = [
        (
            "Why does the unit blow cold at times?",
            "It clears ice from the outdoor coil, for four to nine minutes.",
        ),
        (
            "Why does water run from the outdoor unit?",
            "Ice from the coil melts; the pan lets it out below.",
        ),
        (
            "Why does it start late?",
            "It waits three minutes after each stop for the pressures.",
        ),
        (
            "Why is the light amber?",
            "See the list of lamps; alone it is a reminder of the filter.",
        ),
    ]
    y = 80.0
    for asked, answered in texts:
        pen.line(50, y, 545, y)
        pen.text(50, y + 14, asked, bold=True)
        pen.text(50, y + 28, answered)
        y += 38
    pen.line(50, y, 545, y)
    pen.save()


def plotted_curve(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "Sensor curve", bold=True, size=12)
    grid(pen, list(range(90, 491, 50)), list(range(100, 301, 40)))
    for at in range(9):
        pen.text(85 + 50 * at, 314, str(10 * at))
    for at in range(6):
        pen.text(66, 303 - 40 * at, f"{10 * at} k")
    pen.text(300, 150, "T1 and T2")
    pen.text(140, 260, "T3")
    pen.save()
