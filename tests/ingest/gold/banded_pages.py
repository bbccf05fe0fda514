"""Pages whose tables have horizontal rules only, fills, or nothing at all."""

from __future__ import annotations

from itertools import pairwise
from pathlib import Path

from tests.ingest.gold.pens import (
    CanvasPen,
    FpdfPen,
    Rows,
    across,
    cell,
    headed_fpdf,
    put_table,
    row,
)


def horizontal_rules(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(40, 60, "Valve driver: alarms", bold=True, size=12)
    pen.text(40, 76, "An alarm that is not listed here does not stop the valve.")
    xs = [40, 85, 205, 255, 305, 360, 410, 480]
    rows: Rows = [
        ["Alarm", "Cause", "Lamp", "Relay", "Valve", "Reset", "Acts on", "Delay"],
        ["D01", "Probe S1 broken", "red", "on", "closed", "self", "control", "none"],
        ["D02", "Probe S2 broken", "red", "on", "closed", "self", "control", "none"],
        [
            "D10",
            ["Low superheat for", "longer than set"],
            "red",
            "on",
            "closed",
            "by hand",
            ["control,", "other units"],
            "300 s",
        ],
        ["D11", "Low pressure", "off", "off", "55 %", "self", "control", "300 s"],
        ["D12", "High pressure", "off", "off", "open", "self", "control", "600 s"],
        ["D20", "Valve motor", "red", "on", "as is", "by hand", "all", "none"],
    ]
    heights = [18, 18, 18, 30, 18, 18, 18]
    y = 90.0
    pen.line(40, y, 550, y)
    for at, (cells, high) in enumerate(zip(rows, heights, strict=True)):
        row(pen, xs, y, cells, bold=at == 0)
        y += high
        pen.line(40, y, 550, y)
    pen.text(40, y + 40, "The delay begins anew with every start of the compressor.")
    pen.save()


def zebra_rows(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 60, "Trips of the drive", bold=True, size=12)
    xs = [50, 110, 250]
    rows: Rows = [
        ["Trip", "Name", "What to do"],
        ["T 3", "Earth fault", "Part motor and drive, then measure each alone"],
        ["T 4", "Load share", "Compare the load with the plate"],
        [
            "T 9",
            "Phase lost",
            ["Measure all phases under load; a fuse that", "looks whole may be open"],
        ],
        ["T 14", "Drive hot", "Clean the fins; the room must be below 40 C"],
        ["T 18", "Self-test", "Change the drive"],
        ["T 22", "Clock battery", "No stop; change within the year"],
    ]
    heights = [18, 18, 18, 30, 18, 18, 18]
    y = 76.0
    for at, (cells, high) in enumerate(zip(rows, heights, strict=True)):
        if at == 0:
            pen.fill(50, y, 480, high, 0.6)
        elif at % 2:
            pen.fill(50, y, 480, high, 0.9)
        row(pen, xs, y, cells, bold=at == 0)
        y += high
    pen.text(50, y + 40, "Trips are kept for ten starts.")
    pen.save()


def zebra_cells(path: Path) -> None:
    pdf = headed_fpdf("Part numbers")
    rows = [
        ("Pos.", "Part", "Number", "Pieces"),
        ("101", "Main board", "LK-4410", "1"),
        ("102", "Fan motor", "LK-2203", "2"),
        ("103", "Reactor", "LK-0871", "1"),
        ("104", "Crankcase heater", "LK-0155", "1"),
        ("105", "Sensor set", "LK-3020", "1"),
    ]
    put_table(
        pdf,
        rows,
        borders_layout="NONE",
        cell_fill_color=225,
        cell_fill_mode="ROWS",
        col_widths=(15, 45, 25, 15),
        text_align="LEFT",
    )
    pdf.output(str(path))


def grey_cells(path: Path) -> None:
    pen = CanvasPen(path)
    pen.text(50, 60, "Registers", bold=True, size=12)
    edges = [50, 120, 290, 370, 545]
    rows: Rows = [
        ["Register", "What it holds", "Access", "Unit"],
        ["40001", "Room temperature", "read", "0.1 K"],
        ["40002", "Target", "read, write", "0.5 K"],
        ["40007", ["Code of the last", "fault"], "read", "none"],
        ["40010", "Running hours", "read", "h"],
    ]
    y = 80.0
    for at, cells in enumerate(rows):
        high = 28 if at == 3 else 17
        for left, right in pairwise(edges):
            pen.fill(left, y, right - left - 1.5, high - 1.5, 0.7 if at == 0 else 0.88)
        row(pen, edges, y - 1, cells, bold=at == 0)
        y += high
    pen.save()


def borderless(path: Path) -> None:
    pen = FpdfPen(path)
    pen.text(50, 60, "Weights", bold=True, size=12)
    pen.line(50, 66, 545, 66)
    for at, (what, kilograms) in enumerate(
        [
            ("Outdoor unit, small", "34 kg"),
            ("Outdoor unit, large", "61 kg"),
            ("Wall unit", "11 kg"),
            ("Ceiling unit", "23 kg"),
        ]
    ):
        pen.text(50, 90 + 16 * at, what)
        pen.text(250, 90 + 16 * at, kilograms)
    pen.text(
        50, 200, "Lift the large unit with two people and a strap. Its centre lies"
    )
    pen.text(
        50,
        212,
        "towards the compressor, so that it tips when it is held in the middle.",
    )
    across(pen, 50, 545, [780])
    cell(pen, 50, 782, "Sheet 12")
    pen.save()


def warning_boxes(path: Path) -> None:
    pen = CanvasPen(path)
    for y, said in (
        (80, "Before the cover comes off"),
        (180, "Before the power is on"),
    ):
        across(pen, 50, 545, [y, y + 60])
        pen.line(50, y, 50, y + 60)
        pen.line(545, y, 545, y + 60)
        pen.fill(50, y, 495, 16, 0.8)
        pen.text(56, y + 12, said, bold=True)
        pen.text(
            56, y + 30, "Switch off every supply, the indoor one as well, and lock it."
        )
        pen.text(
            56, y + 44, "Measure at the terminals with a meter that was proved before."
        )
    pen.save()
