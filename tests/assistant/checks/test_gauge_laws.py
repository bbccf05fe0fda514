"""Properties of the laws of gauges, sensors and air: inverse, order, units, ranges."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.checks.air import moist_air
from assistant.checks.air_side import capacity
from assistant.checks.charge_amount import line_set_charge
from assistant.checks.charging import subcooling, superheat
from assistant.checks.divider import divider_slope, divider_voltage
from assistant.checks.law import OutOfRangeError
from assistant.checks.pressure import absolute, atmosphere, gauge
from assistant.checks.refrigerants import REFRIGERANTS, refrigerant_named
from assistant.checks.registry import run_named
from assistant.checks.room_area import largest_charge, smallest_area
from assistant.checks.saturation import (
    Side,
    saturation_pressure,
    saturation_temperature,
)
from assistant.checks.saturation_table import BUBBLE, DEW, LOWEST, STEP
from assistant.checks.steinhart import resistance_steinhart, temperature_steinhart
from assistant.checks.target_superheat import NotBySuperheatError, target_superheat
from assistant.checks.thermistor import resistance_beta

fluids = st.sampled_from(REFRIGERANTS)
sides: st.SearchStrategy[Side] = st.sampled_from(["bubble", "dew"])
saturated = st.floats(215.0, 338.15)
TABLE = [(253.15, 97060.0), (298.15, 10000.0), (321.15, 3889.0)]


@given(fluids, sides, saturated)
def test_saturation_there_and_back_is_itself(
    fluid: str, side: Side, temperature: float
) -> None:
    pressure = saturation_pressure(fluid, temperature, side)

    found = saturation_temperature(fluid, pressure, side)

    assert found == pytest.approx(temperature, abs=1e-9)


@given(fluids, sides, saturated, saturated)
def test_a_warmer_fluid_has_the_higher_pressure(
    fluid: str, side: Side, first: float, second: float
) -> None:
    low, high = sorted((first, second))
    pressures = [saturation_pressure(fluid, t, side) for t in (low, high)]

    assert pressures[0] <= pressures[1]
    assert high - low < 1e-9 or pressures[0] < pressures[1]


@given(fluids, saturated)
def test_liquid_never_boils_above_the_dew_point(fluid: str, temperature: float) -> None:
    bubble, dew = (
        saturation_pressure(fluid, temperature, side) for side in ("bubble", "dew")
    )

    assert bubble >= dew * (1 - 1e-9)


@pytest.mark.parametrize("fluid", REFRIGERANTS)
def test_the_rows_of_a_table_are_monotone_and_smooth(fluid: str) -> None:
    for logs, slopes in (BUBBLE[fluid], DEW[fluid]):
        inverse = [1 / (LOWEST + row * STEP) for row in range(len(logs))]
        secants = [
            (logs[row + 1] - logs[row]) / (inverse[row + 1] - inverse[row])
            for row in range(len(logs) - 1)
        ]
        # Both end slopes of a cubic within three secants keep it monotone (Fritsch
        # and Carlson 1980).
        for row, secant in enumerate(secants):
            assert secant < 0
            for slope in slopes[row : row + 2]:
                assert 0 < slope / secant < 3
        steps = [b - a for a, b in itertools.pairwise(logs)]
        assert all(a > b > 0 for a, b in itertools.pairwise(steps))


@given(fluids, st.sampled_from([LOWEST - 0.01, 339.16, 0.0, math.nan, math.inf]))
def test_outside_the_table_there_is_no_pressure(fluid: str, temperature: float) -> None:
    with pytest.raises(OutOfRangeError):
        saturation_pressure(fluid, temperature, "dew")


@given(fluids, st.sampled_from([0.0, 100.0, 1e4, 4.99e6, 6e6, math.nan]))
def test_no_temperature_lies_outside_the_table(fluid: str, pressure: float) -> None:
    try:
        found = saturation_temperature(fluid, pressure, "dew")
    except OutOfRangeError:
        return
    assert LOWEST <= found <= 339.15


@pytest.mark.parametrize("name", REFRIGERANTS)
def test_every_spelling_of_a_refrigerant_is_known(name: str) -> None:
    plain = name.replace("-", "")

    for spelled in (plain, plain.lower(), plain[1:], f" {name} ", name.lower()):
        assert refrigerant_named(spelled) == name


@given(st.floats(0.0, 5000.0), st.floats(-40e3, 5e6))
def test_gauge_and_absolute_are_inverse(altitude: float, pressure: float) -> None:
    air = atmosphere(altitude)

    assert gauge(absolute(pressure, air), air) == pytest.approx(pressure, abs=1e-6)


def test_below_a_perfect_vacuum_there_is_nothing() -> None:
    with pytest.raises(ValueError, match="perfect vacuum"):
        absolute(-101e3, 84e3)


@given(st.floats(0.0, 3000.0), st.floats(1.0, 3000.0))
def test_higher_up_the_air_is_thinner(altitude: float, more: float) -> None:
    assert atmosphere(altitude + more) < atmosphere(altitude)


@given(fluids, st.floats(280.0, 320.0), st.floats(0.0, 20.0))
def test_superheat_and_subcooling_grow_apart(
    fluid: str, temperature: float, apart: float
) -> None:
    vapour = saturation_pressure(fluid, temperature, "dew")
    liquid = saturation_pressure(fluid, temperature, "bubble")

    assert superheat(fluid, vapour, temperature + apart) == pytest.approx(
        apart, abs=1e-6
    )
    assert subcooling(fluid, liquid, temperature - apart) == pytest.approx(
        apart, abs=1e-6
    )


@given(st.floats(55.0, 115.0), st.floats(50.0, 76.0))
def test_a_target_superheat_is_one_of_the_tables_or_none(
    outdoor: float, wet: float
) -> None:
    try:
        found = target_superheat((outdoor + 459.67) / 1.8, (wet + 459.67) / 1.8)
    except NotBySuperheatError:
        return
    assert 5.0 - 1e-6 <= found * 1.8 <= 45.0 + 1e-6


@given(
    st.floats(100.0, 1e6), st.floats(1e3, 1e5), st.sampled_from(["ground", "supply"])
)
def test_the_slope_of_a_divider_is_that_of_its_voltage(
    resistance: float, fixed: float, to: str
) -> None:
    volts = divider_voltage(resistance, 5.0, fixed, to)  # type: ignore[arg-type]
    step = resistance * 1e-6
    more = divider_voltage(resistance + step, 5.0, fixed, to)  # type: ignore[arg-type]

    assert 0 < volts < 5
    slope = divider_slope(resistance, 5.0, fixed, to)  # type: ignore[arg-type]
    assert (more - volts) / step == pytest.approx(slope, rel=1e-3)


@given(st.floats(254.0, 321.0))
def test_steinhart_there_and_back_is_itself(temperature: float) -> None:
    resistance = resistance_steinhart(temperature, TABLE)

    assert temperature_steinhart(resistance, TABLE) == pytest.approx(temperature)


@given(st.floats(255.0, 320.0), st.floats(2500.0, 4500.0))
def test_steinhart_through_three_points_of_beta_is_beta(
    temperature: float, beta: float
) -> None:
    points = [
        (t, resistance_beta(t, 1e4, 298.15, beta)) for t in (253.15, 290.0, 322.0)
    ]
    resistance = resistance_beta(temperature, 1e4, 298.15, beta)

    assert temperature_steinhart(resistance, points) == pytest.approx(
        temperature, abs=1e-6
    )


@pytest.mark.parametrize(
    "points",
    [
        TABLE[:2],
        [*TABLE, (330.0, 3000.0)],
        [TABLE[1], TABLE[0], TABLE[2]],
        [(253.15, 9.0e4), (298.15, 1.0e4), (321.15, 2.0e4)],
    ],
)
def test_steinhart_needs_three_points_in_order(
    points: list[tuple[float, float]],
) -> None:
    with pytest.raises(ValueError, match="point"):
        temperature_steinhart(1e4, points)


@given(st.floats(0.0, 100.0), st.floats(0.0, 100.0), st.floats(0.0, 0.1))
def test_a_line_set_gives_back_only_where_told(
    length: float, free: float, rate: float
) -> None:
    kept = line_set_charge(length, free, rate, gives=False)
    exact = line_set_charge(length, free, rate, gives=True)

    assert kept >= 0
    assert kept == max(0.0, exact)


@given(st.floats(1.0, 500.0), st.floats(0.1, 0.5), st.floats(0.6, 2.5))
def test_a_room_of_its_own_charge_is_just_large_enough(
    area: float, lfl: float, height: float
) -> None:
    charge = largest_charge(area, lfl, height)
    if not 0.01 <= charge <= 80:
        return

    found = smallest_area(charge, lfl, height)

    assert found == 0.0 or found == pytest.approx(area)


@given(st.floats(253.0, 318.0), st.floats(0.05, 1.0), st.floats(70e3, 102e3))
def test_air_by_any_of_its_humidities_is_the_same_air(
    dry: float, share: float, air: float
) -> None:
    state = moist_air(dry, "relative humidity", share, air)

    assert state.dew_point <= state.wet_bulb + 0.01 <= dry + 0.02
    wet = min(state.wet_bulb, dry)
    again = moist_air(dry, "wet bulb", wet, air)
    # The library stops its search for a wet bulb at 0.001 K.
    assert again.enthalpy == pytest.approx(state.enthalpy, abs=60)
    dew = moist_air(dry, "dew point", min(state.dew_point, dry), air)
    assert dew.humidity_ratio == pytest.approx(state.humidity_ratio, rel=5e-3)


@given(st.floats(0.1, 2.0), st.floats(70e3, 102e3))
def test_air_that_does_not_change_gives_nothing_up(flow: float, air: float) -> None:
    state = moist_air(300.0, "relative humidity", 0.5, air)

    for actual in (True, False):
        heat = capacity(flow, state, state, air, actual=actual)
        assert (heat.total, heat.sensible, heat.latent) == (0.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("name", "first", "second"),
    [
        (
            "superheat",
            {"refrigerant": "R-32", "pressure": "120 psig", "line": "50 °F"},
            {"refrigerant": "r32", "pressure": "827.37 kPa", "line": "10 °C"},
        ),
        (
            "saturation",
            {"refrigerant": "R-22", "pressure": "10 bar"},
            {"refrigerant": "R-22", "pressure": "1 MPa gauge"},
        ),
        (
            "air-capacity",
            {
                "airflow": "1200 cfm",
                "dry_bulb_in": "80 °F",
                "wet_bulb_in": "67 °F",
                "dry_bulb_out": "58 °F",
                "wet_bulb_out": "56 °F",
            },
            {
                "airflow": "0.566337 m3/s",
                "dry_bulb_in": "26.6667 °C",
                "wet_bulb_in": "19.4444 °C",
                "dry_bulb_out": "14.4444 °C",
                "wet_bulb_out": "13.3333 °C",
            },
        ),
        (
            "line-set-charge",
            {"length": "60 ft", "free": "40 ft", "rate": "0.16 oz/ft"},
            {"length": "18.288 m", "free": "12.192 m", "rate": "14.8816 g/m"},
        ),
        (
            "static-pressure",
            {"supply": "0.3 inwc", "return": "-0.2 inwc"},
            {"supply": "74.7267 Pa", "return": "-49.8178 Pa"},
        ),
    ],
)
def test_the_units_typed_do_not_change_the_figure(
    name: str, first: dict[str, str], second: dict[str, str]
) -> None:
    figures = [run_named(name, given).value for given in (first, second)]

    assert figures[0] == pytest.approx(figures[1], rel=2e-4)
