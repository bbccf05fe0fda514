"""Superheat, subcooling, target superheat and charge against published figures."""

from __future__ import annotations

import math
import statistics

import pytest

from assistant.checks.charge_amount import line_set_charge
from assistant.checks.charging import (
    approach,
    saturation_error,
    subcooling,
    superheat,
)
from assistant.checks.law import OutOfRangeError
from assistant.checks.room_area import (
    ROOM,
    area_from_table,
    largest_charge,
    smallest_area,
)
from assistant.checks.saturation import saturation_temperature
from assistant.checks.target_superheat import NotBySuperheatError, target_superheat
from assistant.checks.uncertainty import expanded
from tests.saturated import PSI, SEA, kelvin

OUNCE_PER_FOOT = 0.45359237 / 16 / 0.3048


@pytest.mark.parametrize(
    ("refrigerant", "gauge", "line", "expected", "by_bubble"),
    # Computed with CoolProp 8.0.0 at sea level, °F; the last is what the wrong column
    # of the chart would give.
    [
        ("R-410A", 118, 52, 12.16, 12.35),
        ("R-410A", 130, 57, 12.05, 12.24),
        ("R-32", 120, 50, 10.41, 10.41),
        ("R-454B", 110, 52, 10.81, 13.48),
        ("R-22", 68.5, 52, 12.04, 12.04),
        ("R-407C", 70, 60, 15.46, 26.45),
        ("R-134a", 35, 48, 8.05, 8.05),
    ],
)
def test_superheat_is_by_the_dew_point(
    refrigerant: str, gauge: float, line: float, expected: float, by_bubble: float
) -> None:
    pressure = gauge * PSI + SEA
    bubble = saturation_temperature(refrigerant, pressure, "bubble")

    found = superheat(refrigerant, pressure, kelvin(line)) * 1.8

    assert found == pytest.approx(expected, abs=0.02)
    assert (kelvin(line) - bubble) * 1.8 == pytest.approx(by_bubble, abs=0.02)


@pytest.mark.parametrize(
    ("refrigerant", "gauge", "line", "expected", "by_dew"),
    [
        ("R-410A", 340, 95, 9.61, 9.82),
        ("R-410A", 365, 100, 9.71, 9.93),
        ("R-32", 330, 92, 8.92, 8.92),
        ("R-454B", 330, 98, 8.02, 10.64),
        ("R-22", 226.4, 100, 10.01, 10.01),
        ("R-407C", 226, 92, 8.16, 17.13),
        ("R-134a", 124.2, 90, 10.02, 10.02),
    ],
)
def test_subcooling_is_by_the_bubble_point(
    refrigerant: str, gauge: float, line: float, expected: float, by_dew: float
) -> None:
    pressure = gauge * PSI + SEA
    dew = saturation_temperature(refrigerant, pressure, "dew")

    found = subcooling(refrigerant, pressure, kelvin(line)) * 1.8

    assert found == pytest.approx(expected, abs=0.02)
    assert (dew - kelvin(line)) * 1.8 == pytest.approx(by_dew, abs=0.02)


@pytest.mark.parametrize(
    ("refrigerant", "gauge", "line", "expected"),
    [("R-410A", 340, 165, 60.18), ("R-32", 350, 190, 84.93)],
)
def test_discharge_superheat_is_as_computed(
    refrigerant: str, gauge: float, line: float, expected: float
) -> None:
    # Computed with CoolProp 8.0.0.
    found = superheat(refrigerant, gauge * PSI + SEA, kelvin(line)) * 1.8

    assert found == pytest.approx(expected, abs=0.02)


def test_the_published_subcooling_of_r407c_is_met() -> None:
    # Liebert: 200 psig is 93 °F by its table, the line at 90 °F has 3 °F; that chart
    # reads 0.5 to 1.15 °F warm.
    found = subcooling("R-407C", 200 * PSI + SEA, kelvin(90)) * 1.8

    assert found == pytest.approx(3.0, abs=1.3)


@pytest.mark.parametrize(
    ("gauge", "wanted", "line"), [(70.0, 10, 51), (61.5, 4, 39), (85.7, 14, 65)]
)
def test_the_required_suction_lines_of_r22_are_met(
    gauge: float, wanted: float, line: float
) -> None:
    # Carrier 38VTA installation, p. 9.
    found = superheat("R-22", gauge * PSI + SEA, kelvin(line)) * 1.8

    assert found == pytest.approx(wanted, abs=0.5)


@pytest.mark.parametrize(
    ("gauge", "wanted", "line"), [(318, 15, 85), (354, 10, 98), (252, 5, 79)]
)
def test_the_required_liquid_lines_of_r410a_are_met(
    gauge: float, wanted: float, line: float
) -> None:
    # Carrier 50XZ, p. 22; the maker allows +-3 °F.
    found = subcooling("R-410A", gauge * PSI + SEA, kelvin(line)) * 1.8

    assert found == pytest.approx(wanted, abs=1.0)


def test_the_approach_is_the_line_over_the_outdoor_air() -> None:
    # Armstrong 4SHP16LT, p. 16: 8 °F for one size.
    assert approach(kelvin(103), kelvin(95)) * 1.8 == pytest.approx(8.0)


def test_the_budget_of_a_superheat_is_as_worked_by_hand() -> None:
    # 0.5 % of a 500 psi gauge and +-1.0 °F: u = 0.858, U = 1.72 °F.
    pressure = 118 * PSI + SEA
    gauge = saturation_error("R-410A", pressure, 2.5 * PSI, liquid=False)

    assert gauge * 1.8 == pytest.approx(1.10, abs=0.005)
    assert expanded(gauge, 1 / 1.8) * 1.8 == pytest.approx(1.72, abs=0.005)


WET_BULBS = range(50, 77, 2)
# Carrier 38VTA installation, p. 9, tables 4 and 5: °F; a dash is "do not charge by
# superheat". 80/70 prints 26, where the degC twin's 13.9 K is 25 °F.
PRINTED = """
55 9 12 14 17 20 23 26 29 32 35 37 40 42 45
60 7 10 12 15 18 21 24 27 30 33 35 38 40 43
65 - 6 10 13 16 19 21 24 27 30 33 36 38 41
70 - - 7 10 13 16 19 21 24 27 30 33 36 39
75 - - - 6 9 12 15 18 21 24 28 31 34 37
80 - - - - 5 8 12 15 18 21 26 28 31 35
85 - - - - - - 8 11 15 19 22 26 30 33
90 - - - - - - 5 9 13 16 20 24 27 31
95 - - - - - - - 6 10 14 18 22 25 29
100 - - - - - - - - 8 12 15 20 23 27
105 - - - - - - - - 5 9 13 17 22 26
110 - - - - - - - - - 6 11 15 20 25
115 - - - - - - - - - - 8 14 18 23
"""
CELLS = [
    (int(line.split()[0]), wet, cell)
    for line in PRINTED.split("\n")
    if line
    for wet, cell in zip(WET_BULBS, line.split()[1:], strict=True)
]


@pytest.mark.parametrize(("outdoor", "wet", "cell"), CELLS)
def test_every_cell_of_the_charging_table_is_met(
    outdoor: int, wet: int, cell: str
) -> None:
    if cell == "-":
        with pytest.raises(NotBySuperheatError, match="not charged by superheat"):
            target_superheat(kelvin(outdoor), kelvin(wet))
    else:
        found = target_superheat(kelvin(outdoor), kelvin(wet)) * 1.8
        assert found == pytest.approx(int(cell), abs=1e-6)


@pytest.mark.parametrize(
    ("outdoor", "wet", "target"),
    # Bilinear between the printed cells, by hand.
    [(95, 67, 12.0), (90, 63, 7.0), (88, 65, 11.8), (75, 62, 15.0)],
)
def test_between_cells_the_table_is_bilinear(
    outdoor: float, wet: float, target: float
) -> None:
    found = target_superheat(kelvin(outdoor), kelvin(wet)) * 1.8

    assert found == pytest.approx(target, abs=1e-6)


@pytest.mark.parametrize(
    ("outdoor", "wet"), [(105, 60), (82, 59), (88, 61), (67, 51), (112, 69)]
)
def test_a_dash_beside_the_point_is_never_interpolated(
    outdoor: float, wet: float
) -> None:
    with pytest.raises(NotBySuperheatError):
        target_superheat(kelvin(outdoor), kelvin(wet))


@pytest.mark.parametrize(("outdoor", "wet"), [(54, 60), (116, 76), (70, 49), (70, 77)])
def test_beyond_the_charging_table_nothing_is_stated(
    outdoor: float, wet: float
) -> None:
    with pytest.raises(OutOfRangeError, match="is outside"):
        target_superheat(kelvin(outdoor), kelvin(wet))


def test_a_rule_of_thumb_differs_from_the_table_as_published() -> None:
    # (3 WB - 80 - ODB) / 2, a trade forum; mean, spread and extremes by arithmetic.
    apart = [
        (3 * wet - 80 - outdoor) / 2 - int(cell)
        for outdoor, wet, cell in CELLS
        if cell != "-"
    ]

    assert len(apart) == 118
    assert statistics.mean(apart) == pytest.approx(-0.46, abs=0.01)
    assert statistics.pstdev(apart) == pytest.approx(1.56, abs=0.01)
    assert (min(apart), max(apart)) == (-6.5, 3.0)


@pytest.mark.parametrize(
    ("length", "free", "rate", "ounces"),
    # Unico IS36G p. 10 (0.16 oz/ft), ICP H4H4 p. 12 (0.6 oz/ft): feet and ounces.
    [(60, 40, 0.16, 3.2), (25, 15, 0.6, 6.0)],
)
def test_line_set_charges_are_met_in_ounces(
    length: float, free: float, rate: float, ounces: float
) -> None:
    found = line_set_charge(
        length * 0.3048, free * 0.3048, rate * OUNCE_PER_FOOT, gives=False
    )

    assert found / (0.45359237 / 16) == pytest.approx(ounces)


def test_a_line_set_of_r32_is_met_in_grams() -> None:
    # 12 g/m for 1/4 in. (RG10A remote/installation p. 41), 12 m with 7.5 m free.
    assert line_set_charge(12.0, 7.5, 0.012, gives=False) == pytest.approx(0.054)


def test_a_short_line_set_gives_charge_back_only_where_the_document_says_so() -> None:
    assert line_set_charge(5.0, 7.5, 0.020, gives=False) == 0.0
    assert line_set_charge(5.0, 7.5, 0.020, gives=True) == pytest.approx(-0.050)


@pytest.mark.parametrize(
    ("grams", "ounces"),
    # Exact conversions, by arithmetic; 0.42 and 0.69 are printed truncated.
    [
        (12, 0.1290),
        (15, 0.1613),
        (20, 0.2150),
        (24, 0.2580),
        (30, 0.3225),
        (40, 0.4301),
        (65, 0.6988),
    ],
)
def test_rates_in_grams_a_metre_convert(grams: float, ounces: float) -> None:
    assert grams / 1e3 / OUNCE_PER_FOOT == pytest.approx(ounces, abs=5e-5)


R32 = 0.307


@pytest.mark.parametrize(
    ("area", "kilograms"),
    # Panasonic WH-ADC0309K3E5, tables I to III: R-32, h0 = 0.6 m.
    [
        (1, 0.138),
        (4, 0.553),
        (6, 0.829),
        (7, 0.907),
        (8, 0.970),
        (10, 1.084),
        (20, 1.533),
        (30, 1.877),
        (45, 2.299),
    ],
)
def test_the_printed_charge_of_a_room_is_met(area: float, kilograms: float) -> None:
    assert largest_charge(area, R32, 0.6) == pytest.approx(kilograms, abs=6e-4)


@pytest.mark.parametrize(
    ("kilograms", "area"),
    [
        (1.86, 29.44),
        (1.90, 30.72),
        (2.00, 34.04),
        (2.10, 37.53),
        (2.20, 41.19),
        (2.30, 45.02),
    ],
)
def test_the_printed_room_of_a_charge_is_met(kilograms: float, area: float) -> None:
    assert smallest_area(kilograms, R32, 0.6) == pytest.approx(area, abs=0.02)


def test_at_six_times_the_limit_no_room_is_asked_for() -> None:
    # 1.842 kg of R-32; printed as 1.84 kg with the 28.81 m2 that the formula gives.
    assert smallest_area(1.842, R32, 0.6) == 0.0
    assert smallest_area(1.843, R32, 0.6) == pytest.approx(28.9, abs=0.05)


def test_small_rooms_follow_the_second_line_of_the_rule() -> None:
    # The two lines cross at 6.156 m2, by arithmetic.
    crossing = (2.5 / 0.75) ** 2 * math.sqrt(R32)

    assert crossing == pytest.approx(6.156, abs=1e-3)
    assert largest_charge(6.0, R32, 0.6) == pytest.approx(0.75 * R32 * 0.6 * 6.0)
    assert largest_charge(6.3, R32, 0.6) < 0.75 * R32 * 0.6 * 6.3


@pytest.mark.parametrize(
    ("kilograms", "lfl", "height", "area"),
    # By arithmetic from the first line alone; the second line asks for more on a wall.
    [
        (2.0, 0.307, 1.8, 3.78),
        (2.3, 0.307, 1.8, 5.00),
        (2.0, 0.307, 2.2, 2.53),
        (2.0, 0.296, 1.8, 4.144),
    ],
)
def test_at_other_heights_the_larger_of_both_lines_counts(
    kilograms: float, lfl: float, height: float, area: float
) -> None:
    second = kilograms / (0.75 * lfl * height)

    found = smallest_area(kilograms, lfl, height)

    assert found == pytest.approx(max(area, second), abs=0.006)
    assert found >= area - 0.006


def test_two_printed_limits_of_one_refrigerant_ask_for_two_rooms() -> None:
    # R-454B: 0.296 (UL 60335-2-40) and 0.3526 (ASHRAE 34 addendum f, secondary).
    assert smallest_area(3.0, 0.296, 0.6) > 1.2 * smallest_area(3.0, 0.3526, 0.6)
    assert "document" in ROOM.note


def test_the_makers_table_takes_the_higher_row() -> None:
    # Panasonic WH-ADC0309K3E5, p. 242: 1.85 kg counts as 1.86 kg.
    rows = [(1.84, 28.81), (1.86, 29.44), (1.90, 30.72), (2.00, 34.04)]

    assert area_from_table(1.85, rows) == 29.44
    assert area_from_table(1.90, rows) == 30.72
    with pytest.raises(OutOfRangeError):
        area_from_table(2.05, rows)


def test_a_misprint_of_the_metric_twin_is_not_followed() -> None:
    # Carrier 38TUA p. 10, table 6 prints 7.8 K at 24 °C outdoors and 20 °C wet bulb,
    # between 11.7 and 15.6; the table in °F gives 24 °F there, 13.3 K.
    found = target_superheat(24 + 273.15, 20 + 273.15)

    assert found == pytest.approx(13.3, abs=0.5)
    assert abs(found - 7.8) > 5


def test_a_cell_that_differs_from_its_twin_is_kept_as_printed() -> None:
    # 80/70 °F prints 26 °F; the degC twin says 13.9 K, which is 25 °F.
    assert target_superheat(kelvin(80), kelvin(70)) * 1.8 == pytest.approx(26.0)
