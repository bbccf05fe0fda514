"""Thermistor laws against figures that makers have published."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from assistant.checks.thermistor import (
    resistance_beta,
    resistance_from_table,
    slope_beta,
    temperature_beta,
    temperature_from_table,
)
from tests.sensor_tables import TABLE_10K

ZERO = 273.15

TABLE_20K = {
    -20: 197.8,
    -15: 148.2,
    -10: 112.1,
    -5: 85.60,
    0: 65.93,
    5: 51.14,
    10: 39.99,
    15: 31.52,
    20: 25.02,
    25: 20.00,
    30: 16.10,
    35: 13.04,
    40: 10.62,
    45: 8.707,
    50: 7.176,
}
"""kohm; 20 kohm at 25 °C, B 3950: Daikin SiUS121632EA thermistor check."""

TABLE_20K_OTHER = {-20: 211.0, 0: 67.2, 20: 25.0, 25: 20.0, 50: 7.2}
"""kohm; the same label in Daikin SiBE12-816_D, p. 261."""

PRINTED_VOLTS = {-20: 4.533, 0: 3.828, 10: 3.328, 25: 2.500, 40: 1.738, 48: 1.400}
"""The same table's voltage over the sensor, 5 V through 10 kohm."""

TABLE_50K = {
    40: 250.4,
    50: 161.2,
    60: 106.6,
    70: 72.2,
    80: 50.0,
    90: 35.3,
    100: 25.4,
    110: 18.6,
    120: 13.9,
}
"""kohm; discharge sensor, 50 kohm at 80 °C, B 4250 +-3 %: Zibro S1731, p. 56."""


def points(table: Mapping[int, float], unit: float) -> list[tuple[float, float]]:
    return [(celsius + ZERO, value * unit) for celsius, value in table.items()]


PUBLISHED_BETA = [
    # Mitsubishi Electric PEA series p. 29: 15 kohm at 0 °C, B 3480; tolerance +-3 %.
    *[
        (15e3, 0, 3480.0, celsius, kohm, 0.02)
        for celsius, kohm in [(0, 15.0), (10, 9.6), (20, 6.3), (25, 5.2), (30, 4.3)]
    ],
    (15e3, 0, 3480.0, 40, 3.0, 0.02),
    # Mitsubishi PCH-2.5 p. 54: 7.465 kohm at 120 °C, B 4057; tolerance +-2 %.
    *[
        (7465.0, 120, 4057.0, celsius, kohm, 0.02)
        for celsius, kohm in [
            (20, 250.0),
            (30, 160.0),
            (40, 104.0),
            (50, 70.0),
            (60, 48.0),
            (70, 34.0),
            (80, 24.0),
            (90, 17.5),
            (100, 13.0),
            (110, 9.8),
        ]
    ],
    # Mitsubishi PEH-P8 p. 44: 17 kohm at 50 °C, B 4150; the last is printed to one
    # digit, which is worth 12 % there.
    (17e3, 50, 4150.0, 0, 180.0, 0.02),
    (17e3, 50, 4150.0, 25, 50.0, 0.02),
    (17e3, 50, 4150.0, 70, 8.0, 0.02),
    (17e3, 50, 4150.0, 90, 4.0, 0.05),
    # Mitsubishi Mr.Slim PLH p. 48: 6.0 kohm at 0 °C, B 3390; printed up to 5 % high.
    *[
        (6e3, 0, 3390.0, celsius, kohm, 0.06)
        for celsius, kohm in [(0, 6.0), (10, 3.9), (20, 2.6), (25, 2.2), (30, 1.8)]
    ],
    (6e3, 0, 3390.0, 40, 1.3, 0.06),
]


@pytest.mark.parametrize(
    ("r0", "t0", "beta", "celsius", "kohm", "share"), PUBLISHED_BETA
)
def test_the_beta_formula_gives_the_printed_resistance(
    r0: float, t0: float, beta: float, celsius: float, kohm: float, share: float
) -> None:
    found = resistance_beta(celsius + ZERO, r0, t0 + ZERO, beta)

    assert found == pytest.approx(kohm * 1e3, rel=share)


@pytest.mark.parametrize(
    ("ohm", "celsius"),
    # 10 kohm at 25 °C, B 3950; computed by hand arithmetic from the formula.
    [(1000, 87.72), (5000, 41.46), (10000, 25.00), (20000, 10.177), (32650, 0.554)],
)
def test_the_inverse_gives_the_worked_temperature(ohm: float, celsius: float) -> None:
    found = temperature_beta(ohm, 10e3, 25 + ZERO, 3950.0)

    assert found - ZERO == pytest.approx(celsius, abs=0.006)


def test_a_3950_sensor_falls_by_4_44_percent_a_kelvin_at_25_degrees() -> None:
    # By arithmetic: B over the square of 298.15 K.
    assert slope_beta(298.15, 1.0, 298.15, 3950.0) == pytest.approx(-0.0444, abs=5e-5)


@pytest.mark.parametrize(
    "table", [points(TABLE_20K, 1e3), points(TABLE_10K, 1), points(TABLE_50K, 1e3)]
)
def test_a_published_table_is_met_at_each_of_its_own_points(
    table: list[tuple[float, float]],
) -> None:
    for kelvin, ohm in table:
        assert resistance_from_table(kelvin, table) == pytest.approx(ohm)
        assert temperature_from_table(ohm, table) == pytest.approx(kelvin)


@pytest.mark.parametrize(
    ("table", "unit", "kelvin"),
    # Every other row left out and read back from its neighbours. 10 K apart, the
    # error of ln R over 1/T stays under a tenth of a kelvin on a sound table; the
    # discharge table is printed to three digits.
    [(TABLE_20K, 1e3, 0.1), (TABLE_10K, 1.0, 0.2), (TABLE_50K, 1e3, 0.3)],
)
def test_a_row_left_out_is_found_again_between_its_neighbours(
    table: Mapping[int, float], unit: float, kelvin: float
) -> None:
    rows = points(table, unit)

    for before, row, after in zip(rows, rows[1:], rows[2:], strict=False):
        found = temperature_from_table(row[1], [before, after])
        assert found == pytest.approx(row[0], abs=kelvin)


@pytest.mark.parametrize("celsius", list(PRINTED_VOLTS))
def test_the_printed_divider_voltage_follows_from_the_table(celsius: int) -> None:
    ohm = resistance_from_table(celsius + ZERO, points(TABLE_10K, 1))

    assert 5 * ohm / (ohm + 10e3) == pytest.approx(PRINTED_VOLTS[celsius], abs=0.001)


def test_between_points_ln_r_over_the_inverse_temperature_is_used() -> None:
    # Worked by arithmetic from the 20 kohm table; a straight line would give
    # 23.008 °C and 22.510 kohm.
    table = points({20: 25.02, 25: 20.00}, 1e3)

    assert temperature_from_table(22e3, table) - ZERO == pytest.approx(22.851, abs=1e-3)
    assert resistance_from_table(22.5 + ZERO, table) == pytest.approx(22348, abs=1)


def test_beta_misses_the_same_makers_table_by_what_is_known_at_minus_20() -> None:
    # The formula from the label is 6.6 % above this edition's table, 1.03 K.
    formula = resistance_beta(-20 + ZERO, 20e3, 25 + ZERO, 3950.0)

    assert formula / 197.8e3 == pytest.approx(1.066, abs=0.002)
    read_back = temperature_beta(197.8e3, 20e3, 25 + ZERO, 3950.0)
    assert read_back - ZERO - -20 == pytest.approx(1.03, abs=0.01)


def test_two_editions_of_one_label_differ_by_about_a_kelvin_when_cold() -> None:
    first = points(TABLE_20K, 1e3)
    other = TABLE_20K_OTHER[-20] * 1e3

    assert other / (TABLE_20K[-20] * 1e3) == pytest.approx(1.067, abs=0.001)
    warmer = temperature_from_table(TABLE_20K[-15] * 1e3, first)
    assert warmer - ZERO == pytest.approx(-15)
    with pytest.raises(ValueError, match="outside"):
        temperature_from_table(other, first)


@pytest.mark.parametrize(
    ("celsius", "kohm"),
    # Beta 4250 from 50 kohm at 80 °C, by arithmetic: -7.1 % to +5.7 % off the table.
    [(40, 232.58), (60, 102.98), (100, 26.23), (120, 14.70)],
)
def test_beta_of_the_discharge_sensor_is_the_worked_value(
    celsius: float, kohm: float
) -> None:
    found = resistance_beta(celsius + ZERO, 50e3, 80 + ZERO, 4250.0)

    assert found == pytest.approx(kohm * 1e3, abs=6.0)
