"""A reading on its curve: as lines in a narrow terminal, and as a picture."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image

from assistant.checks.curve import Curve, saturation_curve, sensor_curve
from assistant.checks.kinds import BetaSensor, ResistanceTable
from tui.plain.picture import SIZE, write_png
from tui.plain.plot import HEIGHT, Scale, plot_lines, scales


def beta() -> BetaSensor:
    return BetaSensor.model_validate(
        {
            "kind": "beta",
            "id": "coil",
            "name": "coil sensor",
            "role": "coil",
            "tolerance": "10 %",
            "r0": "10 kohm",
            "t0": "25 °C",
            "beta": "3950 K",
        }
    )


def tabled() -> ResistanceTable:
    rows = [("0 °C", "600 kohm"), ("40 °C", "110 kohm"), ("80 °C", "26 kohm")]
    return ResistanceTable.model_validate(
        {
            "kind": "resistance_table",
            "id": "discharge",
            "name": "discharge sensor",
            "role": "discharge",
            "table": "discharge",
            "points": tuple({"temperature": t, "resistance": r} for t, r in rows),
        }
    )


def body(lines: list[str]) -> list[str]:
    return [line.partition("|")[2] for line in lines[1 : HEIGHT + 1]]


def place(lines: list[str]) -> tuple[int, int]:
    """Return row and column of the reading."""
    found = [
        (row, line.index("X")) for row, line in enumerate(body(lines)) if "X" in line
    ]
    assert len(found) == 1
    return found[0]


@pytest.mark.parametrize("width", [20, 40, 61, 80, 200])
def test_no_line_is_wider_than_asked_or_the_narrowest(width: int) -> None:
    lines = plot_lines(sensor_curve(beta(), 298.15, 10e3), width)

    assert max(map(len, lines)) <= max(width, 40)
    assert len(lines) == HEIGHT + 4


def test_a_good_reading_lies_on_the_curve_and_a_bad_one_beside_it() -> None:
    good, bad = (
        place(plot_lines(sensor_curve(beta(), 298.15, ohms), 60))
        for ohms in (10e3, 40e3)
    )

    assert good[1] == bad[1]
    assert bad[0] < good[0] - 2
    empty = plot_lines(sensor_curve(beta(), None, None), 60)
    assert not any("X" in line for line in body(empty))


def test_the_curve_of_a_sensor_falls_from_left_to_right() -> None:
    rows: list[int] = []
    lines = body(plot_lines(sensor_curve(beta(), None, None), 60))
    for column in range(max(map(len, lines))):
        marked = [r for r, line in enumerate(lines) if line[column : column + 1] == "."]
        rows += marked[:1]

    assert rows == sorted(rows)
    assert rows[0] <= 1
    assert rows[-1] >= HEIGHT - 2


def test_a_tables_curve_ends_where_its_points_end() -> None:
    curve = sensor_curve(tabled(), None, None)

    assert curve.line[0] == pytest.approx((273.15, 600e3))
    assert curve.line[-1] == pytest.approx((353.15, 26e3))
    assert curve.low == ()


def test_limits_are_drawn_where_the_document_states_a_tolerance() -> None:
    with_limits = plot_lines(sensor_curve(beta(), None, None), 40)
    without = plot_lines(sensor_curve(tabled(), None, None), 40)

    assert any(":" in line for line in body(with_limits))
    assert not any(":" in line for line in body(without))
    assert "limits" in with_limits[-1]


def test_ends_are_told_in_the_units_that_were_typed() -> None:
    curve = saturation_curve("R-410A", "dew", 284.26, 915e3)

    shown = plot_lines(curve, 60, ("°F", "psia"))

    assert "°F" in shown[-2]
    assert "psia" in shown[1]


@given(st.floats(0.1, 1e6), st.floats(1.0, 1e3), st.floats(-0.5, 1.5))
def test_a_scale_there_and_back_is_itself(low: float, ratio: float, at: float) -> None:
    for by_log in (False, True):
        scale = Scale(low, low * (1 + ratio), by_log)
        share = min(max(at, 0.0), 1.0)

        assert scale.share(scale.at(share)) == pytest.approx(share, abs=1e-6)
        assert scale.share(low / 2) == 0.0
        assert scale.share(low * (1 + ratio) * 2) == 1.0


def test_a_flat_curve_is_drawn_without_a_scale() -> None:
    flat = Curve("flat", "K", "ohm", ((1.0, 5.0), (2.0, 5.0)))

    across, up = scales(flat)

    assert (across.share(1.5), up.share(5.0)) == (0.5, 0.0)
    assert len(plot_lines(flat, 40)) == HEIGHT + 4


def test_the_picture_shows_the_reading_where_it_is(tmp_path: Path) -> None:
    places = []
    for name, ohms in (("good", 10e3), ("bad", 40e3)):
        path = tmp_path / f"{name}.png"
        write_png(sensor_curve(beta(), 298.15, ohms), path, note="Ω" * 300)
        with Image.open(path) as picture:
            assert (picture.size, picture.format) == (SIZE, "PNG")
            pixels = picture.convert("RGB").tobytes()
        red = [
            (at // 3 % SIZE[0], at // 3 // SIZE[0])
            for at in range(0, len(pixels), 3)
            if pixels[at : at + 3] == bytes((190, 30, 30))
        ]
        places.append(tuple(sum(axis) / len(red) for axis in zip(*red, strict=True)))
    (x, good), (x_bad, bad) = places
    assert x == pytest.approx(x_bad, abs=0.5)
    assert bad < good - 20


def test_the_same_curve_gives_the_same_picture(tmp_path: Path) -> None:
    curve = saturation_curve("R-32", "dew", 290.0, 1e6)
    first, second = tmp_path / "a.png", tmp_path / "b.png"

    write_png(curve, first)
    write_png(curve, second)

    assert first.read_bytes() == second.read_bytes()
