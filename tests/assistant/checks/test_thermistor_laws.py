"""Properties of the thermistor laws: inverse pairs, direction, stated range."""

from __future__ import annotations

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from assistant.checks.law import OutOfRangeError
from assistant.checks.thermistor import (
    resistance_beta,
    resistance_from_table,
    slope_beta,
    slope_from_table,
    temperature_beta,
    temperature_from_table,
)

KELVIN = st.floats(min_value=230.0, max_value=420.0)
BETA = st.floats(min_value=2500.0, max_value=4600.0)
OHM = st.floats(min_value=1e3, max_value=1e5)
TABLE = [(273.15, 32654.0), (293.15, 12493.0), (313.15, 5327.0), (321.15, 3889.0)]


@st.composite
def tables(draw: st.DrawFn) -> list[tuple[float, float]]:
    """Draw a falling table with a Beta of its own between each two points."""
    size = draw(st.integers(min_value=2, max_value=8))
    rows = [(draw(st.floats(min_value=230.0, max_value=300.0)), draw(OHM) * 10)]
    for _ in range(size - 1):
        step, beta = draw(st.floats(min_value=2.0, max_value=15.0)), draw(BETA)
        before, ohm = rows[-1]
        rows.append((before + step, resistance_beta(before + step, ohm, before, beta)))
    return rows


@given(KELVIN, OHM, BETA)
def test_beta_and_its_inverse_undo_each_other(
    kelvin: float, r0: float, b: float
) -> None:
    ohm = resistance_beta(kelvin, r0, 298.15, b)
    assume(0.1 <= ohm <= 5e7)

    assert temperature_beta(ohm, r0, 298.15, b) == pytest.approx(kelvin, abs=1e-6)


@given(KELVIN, st.floats(min_value=0.01, max_value=20.0), BETA)
def test_a_warmer_sensor_has_less_resistance(
    kelvin: float, more: float, beta: float
) -> None:
    cold = resistance_beta(kelvin, 1e4, 298.15, beta)

    assert resistance_beta(kelvin + more, 1e4, 298.15, beta) < cold


@given(KELVIN, BETA, st.floats(min_value=0.01, max_value=100.0))
def test_resistance_scales_with_r0(kelvin: float, beta: float, scale: float) -> None:
    one = resistance_beta(kelvin, 1e3, 298.15, beta)
    scaled = resistance_beta(kelvin, 1e3 * scale, 298.15, beta)

    assert scaled == pytest.approx(one * scale)


@given(tables(), st.floats(min_value=0.0, max_value=1.0))
def test_a_table_and_its_inverse_undo_each_other(
    table: list[tuple[float, float]], share: float
) -> None:
    first, last = table[0][0], table[-1][0]
    kelvin = min(first + share * (last - first), last)

    ohm = resistance_from_table(kelvin, table)
    held = min(max(ohm, table[-1][1]), table[0][1])

    assert table[-1][1] * (1 - 1e-9) <= ohm <= table[0][1] * (1 + 1e-9)
    assert temperature_from_table(held, table) == pytest.approx(kelvin, abs=1e-6)


@given(tables(), st.floats(min_value=1e-3, max_value=50.0))
def test_nothing_is_given_outside_the_stated_points(
    table: list[tuple[float, float]], beyond: float
) -> None:
    outside = (table[0][0] - beyond, table[-1][0] + beyond)

    for kelvin in outside:
        with pytest.raises(OutOfRangeError, match="outside"):
            resistance_from_table(kelvin, table)
    for ohm in (table[0][1] * (1 + beyond), table[-1][1] / (1 + beyond)):
        with pytest.raises(OutOfRangeError, match="outside"):
            temperature_from_table(ohm, table)


@given(st.floats(min_value=274.0, max_value=320.0))
def test_between_neighbours_a_table_is_the_beta_of_those_two(kelvin: float) -> None:
    pair = [(273.15, 32654.0), (321.15, 3889.0)]

    slope = slope_from_table(kelvin, pair)

    step = 1e-3
    above, below = (
        resistance_from_table(kelvin + d, pair) for d in (step / 2, -step / 2)
    )
    assert slope == pytest.approx((above - below) / step, rel=1e-5)


def test_the_slope_of_beta_is_its_derivative() -> None:
    step = 1e-3
    above, below = (
        resistance_beta(310.0 + d, 1e4, 298.15, 3950.0) for d in (step / 2, -step / 2)
    )

    assert slope_beta(310.0, 1e4, 298.15, 3950.0) == pytest.approx(
        (above - below) / step, rel=1e-6
    )


def test_a_rising_table_is_read_as_well() -> None:
    rising = [(273.15, 1000.0), (323.15, 1200.0)]

    assert temperature_from_table(
        resistance_from_table(300.0, rising), rising
    ) == pytest.approx(300.0)


@pytest.mark.parametrize(
    ("points", "why"),
    [
        ([(300.0, 1e4)], "two stated points"),
        ([], "two stated points"),
        ([(300.0, 1e4), (300.0, 9e3)], "cold to warm"),
        ([(310.0, 1e4), (300.0, 9e3)], "cold to warm"),
        ([(300.0, 1e4), (310.0, 9e3), (320.0, 9.5e3)], "only"),
        ([(300.0, 1e4), (310.0, 0.0)], "outside"),
        ([(25.0, 1e4), (300.0, 9e3)], "outside"),
    ],
)
def test_what_is_not_one_sensors_table_is_refused(
    points: list[tuple[float, float]], why: str
) -> None:
    with pytest.raises(ValueError, match=why):
        resistance_from_table(305.0, points)


@pytest.mark.parametrize(
    ("ohm", "r0", "t0", "beta"),
    [
        (0.0, 1e4, 298.15, 3950.0),
        (1e9, 1e4, 298.15, 3950.0),
        (1e4, 1e4, 25.0, 3950.0),
        (1e4, 1e4, 298.15, 25.0),
        (0.2, 1e4, 298.15, 3950.0),
        (float("nan"), 1e4, 298.15, 3950.0),
    ],
)
def test_beta_gives_nothing_outside_its_limits(
    ohm: float, r0: float, t0: float, beta: float
) -> None:
    with pytest.raises(OutOfRangeError, match="outside"):
        temperature_beta(ohm, r0, t0, beta)


def test_the_message_names_the_range_in_degrees() -> None:
    with pytest.raises(OutOfRangeError) as caught:
        resistance_from_table(330.0, TABLE)

    assert "56.85 °C is outside 0.00 °C to 48.00 °C" in str(caught.value)
    assert "stated points" in caught.value.hint
