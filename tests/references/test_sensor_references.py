"""Sensor formulas, Steinhart-Hart and dividers against independent figures."""

from __future__ import annotations

import math
from collections.abc import Mapping

import pytest

from assistant.checks.divider import divider_voltage
from assistant.checks.steinhart import (
    resistance_steinhart,
    steinhart_fit,
    temperature_steinhart,
)
from assistant.checks.thermistor import (
    resistance_beta,
    resistance_from_table,
    temperature_beta,
    temperature_from_table,
)
from tests.sensor_tables import TABLE_10K

ZERO = 273.15

# By arithmetic from the Beta formula: °C to kohm for one label after the other.
BY_BETA: list[tuple[float, float, float, dict[float, float]]] = [
    (
        10e3,
        25,
        3950,
        {
            -20: 105.3847,
            -10: 58.2457,
            0: 33.6206,
            10: 20.1746,
            20: 12.5353,
            25: 10.0,
            30: 8.0371,
            40: 5.3015,
            50: 3.5882,
            60: 2.4862,
            80: 1.2703,
            100: 0.6975,
        },
    ),
    (
        15e3,
        0,
        3480,
        {
            -20: 41.042,
            -10: 24.342,
            0: 15.0,
            10: 9.565,
            20: 6.289,
            25: 5.154,
            30: 4.251,
            40: 2.947,
        },
    ),
    (
        7465,
        120,
        4057,
        {
            20: 252.23,
            30: 159.78,
            40: 104.22,
            50: 69.79,
            60: 47.88,
            70: 33.58,
            80: 24.02,
            90: 17.51,
            100: 12.98,
            110: 9.77,
        },
    ),
    (17e3, 50, 4150, {0: 178.39, 25: 49.90, 50: 17.0, 70: 8.04, 90: 4.13}),
    (6e3, 0, 3390, {0: 6.0, 10: 3.87, 20: 2.57, 25: 2.12, 30: 1.76, 40: 1.23}),
]


@pytest.mark.parametrize(
    ("r0", "t0", "beta", "celsius", "kohm"),
    [
        (r0, t0, beta, celsius, kohm)
        for r0, t0, beta, column in BY_BETA
        for celsius, kohm in column.items()
    ],
)
def test_the_beta_formula_gives_the_worked_column(
    r0: float, t0: float, beta: float, celsius: float, kohm: float
) -> None:
    found = resistance_beta(celsius + ZERO, r0, t0 + ZERO, beta)

    assert found / 1e3 == pytest.approx(kohm, abs=0.006, rel=2e-4)


def test_an_offset_of_273_moves_a_resistance_by_a_third_of_a_percent_at_most() -> None:
    # Some manuals write 273 for 273.15; the effect is stated as up to 0.3 %.
    exact = resistance_beta(253.15, 10e3, 298.15, 3950.0)
    printed = resistance_beta(253.0, 10e3, 298.0, 3950.0)

    assert printed / exact == pytest.approx(1.0, abs=0.003)


@pytest.mark.parametrize(
    ("celsius", "kohm"),
    # 10 kohm at 25 °C, B 3435, printed beside its maker's table: Daikin SiMX042215E
    # p. 90; the formula by arithmetic.
    [(-20, 77.52), (0, 28.70), (25, 10.0), (50, 4.10)],
)
def test_a_second_label_by_beta(celsius: float, kohm: float) -> None:
    found = resistance_beta(celsius + ZERO, 10e3, 25 + ZERO, 3435.0)

    assert found / 1e3 == pytest.approx(kohm, abs=0.006)


# kohm, Daikin SiMX042215E p. 90.
TABLE_3435 = {
    -20: 73.4,
    -15: 57.0,
    -10: 44.7,
    -5: 35.3,
    0: 28.2,
    5: 22.6,
    10: 18.3,
    15: 14.8,
    20: 12.1,
    25: 10.0,
    30: 8.2,
    35: 6.9,
    40: 5.8,
    45: 4.9,
    50: 4.1,
}


def test_beta_misses_that_makers_table_by_a_kelvin_when_cold() -> None:
    read = temperature_beta(TABLE_3435[-20] * 1e3, 10e3, 25 + ZERO, 3435.0)

    assert read - ZERO - -20 == pytest.approx(1.02, abs=0.02)


def test_the_tables_own_points_are_met() -> None:
    rows = [(celsius + ZERO, kohm * 1e3) for celsius, kohm in TABLE_3435.items()]

    for kelvin, ohm in rows:
        assert resistance_from_table(kelvin, rows) == pytest.approx(ohm)
        assert temperature_from_table(ohm, rows) == pytest.approx(kelvin)


@pytest.mark.parametrize(
    ("cold", "warm", "beta"),
    # Effective B between two rows of makers' tables, by arithmetic.
    [
        ((0, 65.93), (25, 20.00), 3885.8),  # Daikin SiUS121632EA
        ((25, 20.00), (50, 7.176), 3950.2),
        ((0, 32.654), (25, 10.0), 3855.0),  # Carrier 30HX, table 39B
        ((25, 10.0), (48, 3.889), 3931.8),
    ],
)
def test_the_effective_b_of_two_rows_reads_one_from_the_other(
    cold: tuple[float, float], warm: tuple[float, float], beta: float
) -> None:
    t0, t = cold[0] + ZERO, warm[0] + ZERO

    assert math.log(cold[1] / warm[1]) / (1 / t0 - 1 / t) == pytest.approx(
        beta, abs=0.06
    )
    assert resistance_beta(t, cold[1] * 1e3, t0, beta) == pytest.approx(
        warm[1] * 1e3, rel=1e-4
    )


@pytest.mark.parametrize(
    ("label", "other"),
    # R25 with R85, LG service manuals: 10k and 1.07k, 5k and 535, 200k and 28k.
    [(10e3, 1.07e3), (5e3, 535.0), (200e3, 28e3)],
)
def test_two_printed_points_make_a_table(label: float, other: float) -> None:
    rows = [(25 + ZERO, label), (85 + ZERO, other)]

    assert temperature_from_table(other, rows) - ZERO == pytest.approx(85)
    assert label > resistance_from_table(50 + ZERO, rows) > other


TABLE_20K = {
    -20: 197800,
    -10: 112100,
    0: 65930,
    10: 39990,
    20: 25020,
    25: 20000,
    30: 16100,
    40: 10620,
    50: 7176,
}
"""ohm; Daikin SiUS121632EA."""
TABLE_100K = {
    -20.5556: 1145306,
    -10.56: 632442,
    2.78: 302466,
    10.56: 201971,
    15: 161700,
    25: 100000,
    35: 63491,
    45: 41303,
    55: 27481,
    65: 18670,
    75: 12932,
    85: 9121,
}
"""ohm; BAPI 100K, scribd 686712107."""

FITS = [
    # The three points, then a, b and c as solved with NumPy, and the worst miss in K.
    (
        TABLE_10K,
        (-20, 25, 48),
        (1.1255825319e-3, 2.3467303165e-4, 8.57724089e-8),
        0.011,
    ),
    (TABLE_20K, (-20, 25, 50), (9.599170447e-4, 2.350327872e-4, 6.841697782e-8), 0.031),
    (
        TABLE_100K,
        (-20.5556, 25, 85),
        (8.266404509e-4, 2.088685270e-4, 8.03980876e-8),
        0.005,
    ),
]


@pytest.mark.parametrize(("table", "three", "expected", "miss"), FITS)
def test_steinhart_hart_gives_the_solved_coefficients(
    table: Mapping[float, float],
    three: tuple[float, ...],
    expected: tuple[float, ...],
    miss: float,
) -> None:
    points = [(celsius + ZERO, float(table[celsius])) for celsius in three]

    assert steinhart_fit(points) == pytest.approx(expected, rel=2e-5)
    for celsius, ohm in table.items():
        if three[0] <= celsius <= three[-1]:
            found = temperature_steinhart(float(ohm), points) - ZERO
            assert found == pytest.approx(celsius, abs=miss)
            back = resistance_steinhart(found + ZERO, points)
            assert back == pytest.approx(ohm, rel=1e-9)


def test_a_linear_solver_gives_the_same_coefficients() -> None:
    numpy = pytest.importorskip("numpy")
    points = [(t + ZERO, float(TABLE_10K[t])) for t in (-10, 20, 45)]
    logs = [math.log(r) for _, r in points]

    solved = numpy.linalg.solve(
        [[1.0, log, log**3] for log in logs], [1 / t for t, _ in points]
    )

    assert steinhart_fit(points) == pytest.approx(tuple(solved), rel=1e-7)


@pytest.mark.parametrize(
    ("celsius", "volts"),
    # The same manual's printed column, 5 V through 10 kohm, to the millivolt.
    [
        (-20, 4.533),
        (0, 3.828),
        (10, 3.328),
        (25, 2.500),
        (40, 1.738),
        (48, 1.400),
        (-30, 4.733),
        (-10, 4.235),
        (20, 2.777),
        (30, 2.231),
        (45, 1.521),
    ],
)
def test_the_printed_voltage_of_a_divider_is_met(celsius: int, volts: float) -> None:
    found = divider_voltage(float(TABLE_10K[celsius]), 5.0, 10e3, "ground")

    assert found == pytest.approx(volts, abs=0.0016)


@pytest.mark.parametrize(
    ("kohm", "volts"),
    # Zibro S1731 p. 56, 5 V logic, the sensor to the supply: the voltage rises when it
    # is warmed. Its fixed resistor is not printed; 47 kohm is what its rows give.
    [
        (250.4, 0.79),
        (161.2, 1.13),
        (106.6, 1.53),
        (72.2, 1.97),
        (50.0, 2.42),
        (35.3, 2.85),
        (25.4, 3.24),
        (18.6, 3.58),
        (13.9, 3.86),
    ],
)
def test_a_discharge_sensor_to_the_supply_rises_when_warmed(
    kohm: float, volts: float
) -> None:
    found = divider_voltage(kohm * 1e3, 5.0, 47e3, "supply")

    assert found == pytest.approx(volts, abs=0.02)


def test_a_reading_of_8_kohm_has_the_worked_range() -> None:
    # 10 kohm / B 3950 read 8.00 kohm +-(0.9 % + 1 digit of 10 ohm): by arithmetic.
    bound = 8000 * 0.009 + 10

    found = [
        temperature_beta(ohm, 10e3, 298.15, 3950.0) - ZERO
        for ohm in (8000, 8000 + bound, 8000 - bound)
    ]

    assert found == pytest.approx([30.108, 29.871, 30.347], abs=0.006)
