"""Moist air and the air side against published and independent figures."""

from __future__ import annotations

import pytest

from assistant.checks.air import MoistAir, moist_air
from assistant.checks.air_side import capacity, external_static, temperature_split
from assistant.checks.pressure import atmosphere
from tests.saturated import fahrenheit, kelvin

SEA = 101325.0
CFM = 0.3048**3 / 60
BTU_H = 1055.05585262 / 3600
BTU_LB = 2326.0
GRAINS = 7000.0
ZERO = 273.15
DATUM = 0.240 * 32
"""Btu/lb that dry air gains from 0 °F, where the foot-pound tables begin, to 32 °F."""


def state(dry: float, wet: float, air: float = SEA) -> MoistAir:
    return moist_air(kelvin(dry), "wet bulb", kelvin(wet), air)


# 14.696 psia, computed with PsychroLib 2.5.0 in foot-pound units: dry and wet bulb °F,
# humidity ratio, grains, relative humidity %, dew point °F, Btu/lb, ft3/lb.
STATES = """
80 67 0.011169 78.18 51.10 60.32 31.447 13.8494
75 63 0.009532 66.73 51.58 55.98 28.431 13.6856
70 60 0.008740 61.18 56.06 53.63 26.344 13.5406
72 64 0.010899 76.29 65.09 59.64 29.192 13.6383
95 75 0.014065 98.46 39.82 66.76 38.316 14.2995
82 67 0.010708 74.96 45.94 59.16 31.431 13.8906
58 56 0.009081 63.56 88.62 54.66 23.788 13.2410
57 55.5 0.009022 63.15 91.28 54.49 23.480 13.2142
55 54 0.008631 60.42 93.95 53.29 22.569 13.1549
"""


@pytest.mark.parametrize(
    "row",
    [[float(cell) for cell in line.split()] for line in STATES.split("\n") if line],
)
def test_states_by_wet_bulb_are_met(row: list[float]) -> None:
    dry, wet, ratio, grains, relative, dew, enthalpy, volume = row

    found = state(dry, wet)

    assert found.humidity_ratio == pytest.approx(ratio, rel=2e-3)
    assert found.humidity_ratio * GRAINS == pytest.approx(grains, rel=2e-3)
    assert found.relative_humidity * 100 == pytest.approx(relative, abs=0.1)
    assert fahrenheit(found.dew_point) == pytest.approx(dew, abs=0.05)
    assert found.enthalpy / BTU_LB + DATUM == pytest.approx(enthalpy, rel=1.5e-3)
    cubic_feet = found.volume * 0.45359237 / 0.3048**3
    assert cubic_feet == pytest.approx(volume, rel=5e-4)


@pytest.mark.parametrize(
    ("dry", "share", "wet", "dew", "enthalpy"),
    # Computed with PsychroLib 2.5.0.
    [
        (75, 0.50, 62.552, 55.120, 28.107),
        (80, 0.50, 66.662, 59.707, 31.179),
        (95, 0.40, 75.076, 66.892, 38.390),
        (68, 0.30, 51.528, 35.446, 21.052),
    ],
)
def test_states_by_relative_humidity_are_met(
    dry: float, share: float, wet: float, dew: float, enthalpy: float
) -> None:
    found = moist_air(kelvin(dry), "relative humidity", share, SEA)

    assert fahrenheit(found.wet_bulb) == pytest.approx(wet, abs=0.03)
    assert fahrenheit(found.dew_point) == pytest.approx(dew, abs=0.03)
    assert found.enthalpy / BTU_LB + DATUM == pytest.approx(enthalpy, rel=1.5e-3)


@pytest.mark.parametrize(
    ("wet", "enthalpy"),
    # Saturated air, Btu/lb, computed with PsychroLib 2.5.0.
    [
        (50, 20.265),
        (52, 21.396),
        (54, 22.574),
        (56, 23.799),
        (58, 25.077),
        (60, 26.409),
        (62, 27.799),
        (63, 28.517),
        (64, 29.251),
        (65, 30.001),
        (66, 30.768),
        (67, 31.553),
        (68, 32.355),
        (70, 34.015),
        (72, 35.754),
    ],
)
def test_saturated_air_has_the_computed_enthalpy(wet: float, enthalpy: float) -> None:
    found = state(wet, wet)

    assert found.relative_humidity == pytest.approx(1.0, abs=1e-6)
    assert found.enthalpy / BTU_LB + DATUM == pytest.approx(enthalpy, rel=2e-3)


# degC: dry bulb, humidity, then humidity ratio, relative humidity %, dew point degC and
# kJ/kg by PsychroLib 2.5.0; CoolProp 8.0.0's HumidAir is asked below.
SI_BY_WET_BULB = [
    (26.67, 19.44, 0.011159, 51.04, 15.718, 55.291),
    (27.0, 19.0, 0.010450, 46.94, 14.715, 53.823),
    (25.0, 18.0, 0.010018, 50.68, 14.072, 50.670),
]


@pytest.mark.parametrize(
    ("dry", "wet", "ratio", "relative", "dew", "enthalpy"), SI_BY_WET_BULB
)
def test_states_in_si_are_met(
    dry: float, wet: float, ratio: float, relative: float, dew: float, enthalpy: float
) -> None:
    found = moist_air(dry + ZERO, "wet bulb", wet + ZERO, SEA)

    assert found.humidity_ratio == pytest.approx(ratio, abs=2e-6)
    assert found.relative_humidity * 100 == pytest.approx(relative, abs=0.01)
    assert found.dew_point - ZERO == pytest.approx(dew, abs=0.002)
    assert found.enthalpy / 1e3 == pytest.approx(enthalpy, abs=0.005)


@pytest.mark.parametrize(("dry", "wet"), [row[:2] for row in SI_BY_WET_BULB])
@pytest.mark.parametrize("air", [SEA, 84e3])
def test_a_second_library_agrees(dry: float, wet: float, air: float) -> None:
    coolprop = pytest.importorskip("CoolProp.CoolProp")
    state_of = ("T", dry + ZERO, "B", wet + ZERO, "P", air)

    found = moist_air(dry + ZERO, "wet bulb", wet + ZERO, air)

    # Real gas against the ideal one: 0.6 % in W, 0.3 % in h, 0.02 K.
    ratio = coolprop.HAPropsSI("W", *state_of)
    assert found.humidity_ratio == pytest.approx(ratio, rel=6e-3)
    enthalpy = coolprop.HAPropsSI("H", *state_of)
    assert found.enthalpy == pytest.approx(enthalpy, rel=3e-3)
    dew = coolprop.HAPropsSI("D", *state_of)
    assert found.dew_point == pytest.approx(dew, abs=0.02)


@pytest.mark.parametrize(
    ("dry", "share", "wet", "dew", "enthalpy"),
    [
        (25, 0.50, 17.889, 13.864, 50.322),
        (30, 0.40, 20.064, 14.936, 57.289),
        (35, 0.40, 23.934, 19.385, 71.473),
    ],
)
def test_states_in_si_by_relative_humidity_are_met(
    dry: float, share: float, wet: float, dew: float, enthalpy: float
) -> None:
    found = moist_air(dry + ZERO, "relative humidity", share, SEA)

    assert found.wet_bulb - ZERO == pytest.approx(wet, abs=0.002)
    assert found.dew_point - ZERO == pytest.approx(dew, abs=0.002)
    assert found.enthalpy / 1e3 == pytest.approx(enthalpy, abs=0.005)


@pytest.mark.parametrize(
    ("celsius", "share", "dew"),
    # Magnus, 17.625 and 243.04 degC, by arithmetic: a quick formula's second opinion.
    [(25, 0.50, 13.858), (20, 0.60, 12.00), (35, 0.40, 19.392)],
)
def test_a_quick_formula_agrees_on_the_dew_point(
    celsius: float, share: float, dew: float
) -> None:
    found = moist_air(celsius + ZERO, "relative humidity", share, SEA)

    assert found.dew_point - ZERO == pytest.approx(dew, abs=0.02)


def test_the_worked_capacity_at_sea_level_is_met() -> None:
    # 1200 cfm, 80/67 to 58/56: 4.5 x 1200 x 7.6588 and its parts, PsychroLib 2.5.0.
    heat = capacity(1200 * CFM, state(80, 67), state(58, 56), SEA, actual=False)

    assert heat.total / BTU_H == pytest.approx(41357.6, rel=1e-3)
    assert heat.sensible / BTU_H == pytest.approx(28512, rel=1e-3)
    assert heat.latent / BTU_H == pytest.approx(11929.7, rel=2e-3)
    assert heat.sensible_share == pytest.approx(0.689, abs=0.002)


def test_the_same_by_the_entering_airs_own_volume_is_less() -> None:
    heat = capacity(1200 * CFM, state(80, 67), state(58, 56), SEA, actual=True)

    assert heat.total / BTU_H == pytest.approx(39816.5, rel=1e-3)


def test_a_small_machine_is_met() -> None:
    # 400 cfm, 75/63 to 56/54.5, PsychroLib 2.5.0.
    heat = capacity(400 * CFM, state(75, 63), state(56, 54.5), SEA, actual=False)

    assert heat.total / BTU_H == pytest.approx(10014.5, rel=2e-3)
    assert heat.sensible / BTU_H == pytest.approx(8208, rel=1e-3)


def test_a_published_ton_is_met() -> None:
    # scribd 263240362: 82/67 to 62 °F at 75 %, 400 cfm: 0.985 ton; 1 % by its own h2.
    leaving = moist_air(kelvin(62), "relative humidity", 0.75, SEA)

    heat = capacity(400 * CFM, state(82, 67), leaving, SEA, actual=True)

    assert heat.total / BTU_H / 12000 == pytest.approx(0.985, rel=0.012)


def test_at_five_thousand_feet_less_air_is_moved() -> None:
    # PsychroLib 2.5.0 at 12.2278 psia: 39 259 Btu/h; sea-level 4.5 would say 47 184.
    air = atmosphere(1524.0)
    entering, leaving = state(80, 67, air), state(58, 56, air)

    heat = capacity(1200 * CFM, entering, leaving, air, actual=False)
    sea = capacity(1200 * CFM, entering, leaving, SEA, actual=False)

    assert heat.total / BTU_H == pytest.approx(39259, rel=2e-3)
    assert sea.total / BTU_H == pytest.approx(47184, rel=2e-3)


def test_a_split_and_a_static_pressure_are_differences() -> None:
    assert temperature_split(299.15, 287.15, heating=False) == pytest.approx(12.0)
    assert temperature_split(293.15, 308.15, heating=True) == pytest.approx(15.0)
    # 0.30 in. supply and -0.20 in. return are 0.50 in. of water, by arithmetic.
    inch = 249.089
    assert external_static(0.30 * inch, -0.20 * inch) == pytest.approx(0.50 * inch)
