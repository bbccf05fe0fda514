"""Pages whose tables are ruled, in the styles that makers use."""

from __future__ import annotations

from pathlib import Path

from fpdf.enums import TableBordersLayout

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
    put_table,
    row,
    set_rows,
    turn,
)


def full_grid(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "5.2 Fault codes of the outdoor unit", bold=True, size=13)
    pen.text(50, 78, "Read the display before the power is switched off.")
    xs, ys = [50, 110, 280, 545], [100, 118, 158, 176, 216, 234]
    grid(pen, xs, ys)
    rows: Rows = [
        ["Code", "Meaning", "What to check"],
        [
            "E5-1",
            ["Discharge sensor open", "or not plugged in"],
            [
                "Plug CN4 on the main board, then the resist-",
                "ance of the sensor: 50 kOhm at 25 C.",
                "Look for chafed leads.",
            ],
        ],
        ["E5-2", "Discharge sensor short", "As for E5-1."],
        [
            "P1-05",
            ["Bus voltage low during", "start of compressor"],
            [
                "Supply at the terminals under load;",
                "torque of all terminal screws.",
            ],
        ],
        ["G3", "Fan does not turn", "Obstacles, plug CN7, fan motor."],
    ]
    set_rows(pen, xs, ys, rows)
    pen.text(50, 260, "See page 41 for the order in which boards are changed.")
    pen.save()


def thin_bars(path: Path) -> None:
    pen = OperatorPen(path)
    pen.text(60, 70, "Settings of the wall controller", bold=True, size=12)
    xs, ys = [60, 120, 330, 420, 520], [90, 108, 126, 144, 162, 180]
    grid(pen, xs, ys)
    rows = [
        ["No.", "Setting", "Range", "At works"],
        ["F01", "Room sensor offset", "-3 to +3 K", "0 K"],
        ["F02", "Least time off", "2 to 10 min", "3 min"],
        ["F03", "Filter reminder", "0 to 999 h", "250 h"],
        ["F10", "Restart after power loss", "on, off", "on"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def merged_rows(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "Lamp LD3 (amber)", bold=True, size=12)
    xs = [50, 120, 290, 545]
    ys = [80, 98, 116, 134, 152, 170, 188]
    down(pen, xs, 80, 188)
    across(pen, 50, 545, [80, 98, 152, 188])
    across(pen, 120, 545, [116, 134, 170])
    row(pen, xs, ys[0], ["Flashes", "Cause", "Remedy"], bold=True)
    cell(pen, 50, 116, "4")
    cell(pen, 50, 161, "7")
    row(pen, xs[1:], ys[1], ["Plug of the sensor loose", "Seat it, look at the pins"])
    row(pen, xs[1:], ys[2], ["Sensor out of range", "Measure, compare with table 9"])
    row(pen, xs[1:], ys[3], ["Main board", "Change when all else is proved"])
    row(pen, xs[1:], ys[4], ["Coil dirty", "Clean from the inside out"])
    row(pen, xs[1:], ys[5], ["Fan slow", "Measure the speed feedback"])
    pen.save()


def merged_header(path: Path) -> None:
    pdf = new_fpdf()
    pdf.set_font("times", size=10)
    pdf.write(14, "Sensor values by temperature\n\n")
    rows = [
        ("T1", "0 C", "31.8", "33.6", "1.9"),
        ("T2", "10 C", "19.3", "20.5", "1.7"),
        ("T3", "25 C", "9.8", "10.2", "1.3"),
        ("T4", "40 C", "5.2", "5.5", "1.0"),
    ]
    with pdf.table(col_widths=(12, 22, 22, 22, 22), num_heading_rows=2) as table:
        first = table.row()
        first.cell("Point", rowspan=2)
        first.cell("Temperature", rowspan=2)
        first.cell("Resistance kOhm", colspan=2, align="C")
        first.cell("Signal V", rowspan=2)
        second = table.row()
        second.cell("lowest")
        second.cell("highest")
        for cells in rows:
            table.row(cells)
    pdf.output(str(path))


def open_sides(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(70, 64, "Protection stops", bold=True, size=12)
    xs, ys = [70, 130, 300, 500], [84, 102, 120, 150, 168]
    across(pen, 70, 500, ys)
    down(pen, xs[1:3], 84, 168)
    rows: Rows = [
        ["Stop", "Because", "Comes back"],
        ["PC01", "Discharge over 115 C", "below 95 C, after 3 min"],
        ["PC02", ["Current over limit for", "more than 8 s"], "after 3 min"],
        ["PC05", "Low pressure switch", "after power off and on"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def no_outer_rules(path: Path) -> None:
    pen = OperatorPen(path)
    pen.text(70, 64, "Terminals of the indoor board", bold=True, size=12)
    xs, ys = [70, 140, 260, 500], [80, 98, 116, 134, 152]
    across(pen, 70, 500, ys[1:-1])
    down(pen, xs[1:-1], 80, 152)
    rows = [
        ["Plug", "Colour", "Leads to"],
        ["CN2", "white", "float switch of the pan"],
        ["CN5", "blue", "louvre motor, 12 V"],
        ["CN11", "red", "liquid line sensor"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def repeated_columns(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "Short list of codes", bold=True, size=12)
    xs, ys = [50, 95, 295, 340, 545], [80, 98, 116, 134, 152]
    grid(pen, xs, ys)
    rows = [
        ["Code", "Meaning", "Code", "Meaning"],
        ["Y2", "Board memory", "K3", "Liquid sensor"],
        ["Y5", "Water in the pan", "K7", "Gas sensor"],
        ["Y8", "Indoor fan", "", ""],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def two_beside(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 60, "Switch SW1", bold=True, size=11)
    pen.text(310, 60, "Switch SW2", bold=True, size=11)
    for left, cells in (
        (
            50,
            [
                ["Pin", "On", "Off"],
                ["1", "heat pump", "cooling only"],
                ["2", "long pipe", "short pipe"],
                ["3", "test", "normal"],
            ],
        ),
        (
            310,
            [
                ["Code", "Board", "Supply"],
                ["K12", "fan board", "16 V"],
                ["K15", "main board", "310 V"],
                ["K20", "display", "5 V"],
            ],
        ),
    ):
        xs, ys = [left, left + 40, left + 130, left + 220], [72, 90, 108, 126, 144]
        grid(pen, xs, ys)
        set_rows(pen, xs, ys, cells)
    pen.save()


def over_pages_with_header(path: Path) -> None:
    pdf = new_fpdf()
    pdf.set_y(690)
    pdf.set_font("times", size=10)
    pdf.write(14, "Service log codes\n")
    rows = [
        ("L01", "Defrost ended by time", "not a fault when below -10 C"),
        ("L02", "Defrost ended by heat", "usual"),
        ("L07", "Oil return run", "10 min every 8 h of slow running"),
        ("L08", "Base heater on", "only below 2 C"),
        ("L11", "Supply dipped", "look at L12 as well"),
        ("L12", "Supply was lost", "time of the loss is stored"),
        ("L20", "Forced stop by contact", "open contact 7-8"),
    ]
    put_table(
        pdf, [("Entry", "What was noted", "Remark"), *rows], col_widths=(12, 35, 53)
    )
    pdf.output(str(path))


def over_pages_bare(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 690, "Numbers of the indoor settings", bold=True, size=12)
    xs = [50, 110, 320, 545]
    pages = [
        (
            710,
            [
                ["Menu", "What it sets", "Values"],
                ["21", "Fan speed when satisfied", "0 off, 1 low, 2 as set"],
                ["22", "Height of the ceiling", "0 low, 1 high"],
                ["23", "Filter kind", "0 mesh, 1 fine"],
            ],
            True,
        ),
        (
            60,
            [
                ["24", "Drain pump with heating", "0 no, 1 yes"],
                ["25", "Outdoor air damper", "0 none, 1 fitted"],
                ["31", "Room sensor", "0 return air, 1 wall"],
            ],
            False,
        ),
    ]
    for top, rows, headed in pages:
        ys = [top + 18 * at for at in range(len(rows) + 1)]
        grid(pen, xs, ys)
        for at, (y, cells) in enumerate(zip(ys, rows, strict=False)):
            row(pen, xs, y, cells, bold=headed and at == 0)
        if headed:
            pen.page()
    pen.text(50, 140, "The menu closes by itself after one minute.")
    pen.save()


def rotated(path: Path) -> None:
    pen = CanvasPen(path, (842, 595))
    pen.text(60, 60, "Wide list: what each board reports", bold=True, size=12)
    xs, ys = [60, 130, 320, 520, 640, 780], [80, 98, 116, 134, 152]
    grid(pen, xs, ys)
    rows = [
        ["Code", "Board", "Meaning", "Stored", "Clears"],
        ["N2-01", "outdoor main", "no reply from inverter", "yes", "power"],
        ["N2-03", "indoor main", "no reply from outdoor", "no", "itself"],
        ["N7-10", "branch box", "other indoor unit stopped", "no", "itself"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()
    # The sheet is stored upright, its contents lying on their side, and turned to view.
    turn(path, 270, 90)


def empty_cells(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "Alarm bits", bold=True, size=12)
    xs, ys = [50, 100, 250, 320, 390, 460, 545], [80, 98, 116, 134, 152, 170]
    grid(pen, xs, ys)
    rows = [
        ["Bit", "Alarm", "Stop", "Lamp", "Relay", "Note"],
        ["B00", "Sensor A", "x", "", "", ""],
        ["B01", "Sensor B", "", "x", "", "delayed"],
        ["B02", "", "", "", "", ""],
        ["B03", "Supply", "x", "x", "x", ""],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def dashed(path: Path) -> None:
    pen = OperatorPen(path)
    pen.text(60, 60, "Waits", bold=True, size=12)
    xs, ys = [60, 130, 330, 520], [80, 98, 116, 134, 152]
    for y in ys:
        pen.line(60, y, 520, y, dash=2.5 if y in (98, 134) else 4)
    down(pen, xs, 80, 152, dash=3)
    rows = [
        ["Wait", "Begins with", "Lasts"],
        ["W1", "power on", "3 min"],
        ["W2", "compressor stop", "3 min, at most 5 min"],
        ["W3", "change of mode", "50 s"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def dotted(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "Checks before start", bold=True, size=12)
    xs, ys = [60, 130, 330, 520], [80, 98, 116, 134, 152]
    grid(pen, xs, ys, dash=1)
    rows = [
        ["Check", "Of what", "Must be"],
        ["S-01", "earth to line", "over 1 MOhm"],
        ["S-02", "supply", "207 to 253 V"],
        ["S-03", "pipe length", "5 to 30 m"],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def double_rules(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "Charge by pipe", bold=True, size=12)
    xs, ys = [60, 160, 300, 430], [80, 100, 120, 140, 160]
    for shift in (0, 2):
        across(pen, 60 + shift, 430 + shift, [y + shift for y in ys])
        down(pen, [x + shift for x in xs], 80 + shift, 160 + shift)
    row(
        pen,
        [x + 2 for x in xs],
        82,
        ["Model", "Up to 15 m", "Each metre more"],
        bold=True,
    )
    row(pen, [x + 2 for x in xs], 102, ["GV-26", "no more", "20 g"])
    row(pen, [x + 2 for x in xs], 122, ["GV-35", "no more", "20 g"])
    row(pen, [x + 2 for x in xs], 142, ["GV-50", "150 g", "30 g"])
    pen.save()


def bold_codes(path: Path) -> None:
    pdf = new_fpdf()
    pdf.set_font("times", "B", 12)
    pdf.write(20, "Signals of the two lamps\n")
    rows = [
        ("7F", "Lamp 1 on, lamp 2 off", "Inverter too hot \xb1 5 K"),
        ("8C", "Lamp 1 off, lamp 2 on", "No pulses from the meter"),
        (
            "9A-2",
            "Both on",
            "Board must be changed when it stays after a restart with all "
            "plugs but the supply pulled",
        ),
    ]
    pdf.set_font("times", size=10)
    with pdf.table(
        col_widths=(10, 35, 55),
        borders_layout=TableBordersLayout.ALL,
        first_row_as_headings=False,
    ) as table:
        head = table.row()
        pdf.set_font(style="B")
        for said in ("Shown", "Lamps", "Meaning"):
            head.cell(said)
        for code, lamps, meaning in rows:
            pdf.set_font(style="B")
            line = table.row()
            line.cell(code)
            pdf.set_font(style="")
            line.cell(lamps)
            line.cell(meaning)
    pdf.output(str(path))
