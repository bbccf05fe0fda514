"""A third set, drawn after the second had been scored and learnt from."""

from __future__ import annotations

from pathlib import Path

from tests.ingest.gold.pens import (
    CanvasPen,
    FpdfPen,
    OperatorPen,
    across,
    cell,
    down,
    grid,
    row,
    set_rows,
)


def captions_between(path: Path) -> None:
    pen = FpdfPen(path)
    for top, caption, rows in (
        (
            70,
            "Table 3: sensor S1",
            [
                ["Code", "Limit", "Delay"],
                ["N1", "below -40 C", "10 s"],
                ["N2", "above 120 C", "10 s"],
                ["N3", "jumps by 20 K", "1 s"],
            ],
        ),
        (
            190,
            "Table 4: sensor S2",
            [
                ["Code", "Limit", "Delay"],
                ["N5", "below -40 C", "30 s"],
                ["N6", "above 90 C", "30 s"],
                ["N7", "jumps by 9 K", "3 s"],
            ],
        ),
    ):
        pen.text(60, top, caption, bold=True, size=11)
        ys = [top + 8 + 18 * at for at in range(5)]
        across(pen, 60, 400, ys)
        set_rows(pen, [60, 130, 300], ys, rows)
    pen.save()


def column_of_text(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "Notes on stops", bold=True, size=12)
    ys = [76, 94, 134, 163, 203]
    across(pen, 50, 545, ys)
    row(pen, [50, 110], 76, ["Stop", "What happened, and what to do"], bold=True)
    row(
        pen,
        [50, 110],
        94,
        [
            "Y1",
            [
                "The level in the pan rose while the pump was "
                "running. Look at the hose for a dip",
                "and at the valve in it, then pour water in and "
                "time the pump: one litre a minute",
                "at least.",
            ],
        ],
    )
    row(
        pen,
        [50, 110],
        134,
        [
            "Y4",
            [
                "The panel was opened while the unit ran. Close "
                "it; there is no other reset and the",
                "unit goes on after two minutes.",
            ],
        ],
    )
    row(
        pen,
        [50, 110],
        163,
        [
            "Y6-2",
            [
                "The board got no word from the panel for ten "
                "minutes. Measure the voltage between",
                "the two wires at the panel, 12 to 16 V, and swap "
                "the wires when a test on a short",
                "cable works.",
            ],
        ],
    )
    pen.save()


def frame_round_all(path: Path) -> None:
    pen = OperatorPen(path)
    across(pen, 40, 555, [40, 800])
    down(pen, [40, 555], 40, 800)
    pen.text(60, 70, "Form 8: settings at hand-over", bold=True, size=12)
    xs, ys = [60, 110, 300, 390, 520], [84, 104, 124, 144, 164]
    pen.fill(60, 84, 460, 20, 0.8)
    grid(pen, xs, ys)
    rows = [
        ["Item", "Setting", "At works", "Set to"],
        ["G-11", "Pipe length over 20 m", "no", ""],
        ["G-12", "Fan at rest when heating", "off", ""],
        ["G-20", "Clock", "24 h", ""],
    ]
    set_rows(pen, xs, ys, rows)
    pen.save()


def header_in_two_words(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "Wires between the units", bold=True, size=12)
    ys = [74, 104, 122, 140, 158, 176]
    across(pen, 50, 500, ys)
    for x, lines in (
        (54, ["Wire"]),
        (148, ["Voltage", "to wire 2"]),
        (268, ["Resistance at rest,", "plugs pulled"]),
        (410, ["Used", "for"]),
    ):
        for at, said in enumerate(lines):
            pen.text(x, 86 + 11 * at, said, bold=True)
    for y, cells in zip(
        ys[1:],
        [
            ["1", "230 V", "over 1 MOhm", "supply"],
            ["2", "0 V", "0 Ohm", "neutral"],
            ["3", "12 to 28 V, moving", "8 to 12 kOhm", "signal"],
            ["E", "0 V", "over 1 MOhm", "earth"],
        ],
        strict=False,
    ):
        for x, said in zip((54, 140, 280, 410), cells, strict=True):
            pen.text(x, y + 12, said)
    pen.save()


def zebra_long_and_short(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 56, "Questions at the desk", bold=True, size=12)
    rows: list[tuple[int, list[str | list[str]]]] = [
        (16, ["Asked", "Why", "Leads to"]),
        (16, ["K-1", "Which light, which colour?", "table 3"]),
        (
            38,
            [
                "K-2",
                [
                    "How often does it blink before",
                    "the long pause, counted twice",
                    "over?",
                ],
                "table 4",
            ],
        ),
        (16, ["K-3", "Since when?", "waits"]),
        (27, ["K-4", ["Was the power off since,", "and for how long?"], "waits"]),
        (16, ["K-5", "Who is there?", "roles"]),
    ]
    y = 70.0
    for at, (high, cells) in enumerate(rows):
        if at % 2:
            pen.fill(50, y, 420, high, 0.93)
        row(pen, [50, 110, 360], y, cells, bold=at == 0)
        y += high
    pen.save()


def merged_to_the_right(path: Path) -> None:
    pen = CanvasPen(path)
    xs, ys = [50, 120, 230, 340, 450], [80, 98, 116, 134, 152]
    grid(pen, [50, 120, 450], ys)
    down(pen, [230, 340], 80, 116)
    down(pen, [340], 134, 152)
    row(pen, xs, 80, ["Mode", "Low", "Middle", "High"], bold=True)
    row(pen, xs, 98, ["M1", "420 1/min", "560 1/min", "710 1/min"])
    cell(pen, 50, 116, "M2")
    cell(pen, 230, 116, "as the board wants")
    cell(pen, 50, 134, "M3")
    cell(pen, 150, 134, "500 1/min")
    cell(pen, 340, 134, "900 1/min")
    pen.save()


def bar_chart(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(60, 60, "Power by speed", bold=True, size=12)
    across(pen, 90, 400, [100, 140, 180, 220, 260])
    for at, high in enumerate((40, 70, 95, 130)):
        pen.fill(110 + 70 * at, 260 - high, 40, high, 0.5)
        pen.text(115 + 70 * at, 256 - high, f"{high * 10} W")
        pen.text(118 + 70 * at, 274, f"S{at + 1}")
    pen.save()


def forms_side_by_side(path: Path) -> None:
    pen = FpdfPen(path)
    for left, title, code in ((40, "Wall units", "WA"), (305, "Ceiling units", "CE")):
        pen.text(left, 62, title, bold=True)
        xs, ys = [left, left + 70, left + 130], [70, 88, 106, 124, 142]
        across(pen, left, left + 250, ys)
        rows = [
            ["Code", "Stops", "Remark"],
            [f"{code}-1", "yes", "filter missing"],
            [f"{code}-2", "no", "fan worn"],
            [f"{code}-3", "yes", "panel open"],
        ]
        set_rows(pen, xs, ys, rows)
    pen.save()
