"""Saturation against the pinned CoolProp."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from importlib import import_module
from pathlib import Path

import pytest

from assistant.checks.pressure import absolute, atmosphere
from assistant.checks.refrigerants import REFRIGERANTS
from assistant.checks.saturation import (
    Side,
    kelvin_per_pascal,
    saturation_pressure,
    saturation_temperature,
)
from tests.saturated import BOTH, PSI, SEA, fahrenheit, psig, rows

# psig at 14.6959 psia, computed with CoolProp 8.0.0 (pseudo-pure R-410A, R-407C; the
# phase envelope of R-454B). Columns: R-410A bubble and dew, R-32, R-454B bubble and
# dew, R-22, R-134a, R-407C bubble and dew.
MASTER_COLUMNS: tuple[tuple[str, Side], ...] = (
    ("R-410A", "bubble"),
    ("R-410A", "dew"),
    ("R-32", "bubble"),
    ("R-454B", "bubble"),
    ("R-454B", "dew"),
    ("R-22", "dew"),
    ("R-134a", "dew"),
    ("R-407C", "bubble"),
    ("R-407C", "dew"),
)
MASTER = """
-20 26.34 26.19 26.81 24.75 22.69 10.21 -1.80 13.74 6.47
0 48.44 48.22 49.25 45.91 42.91 24.03 6.48 29.49 19.44
10 62.43 62.17 63.48 59.31 55.73 32.84 11.93 39.53 27.89
20 78.67 78.36 80.02 74.84 70.63 43.10 18.43 51.22 37.87
30 97.38 97.01 99.09 92.73 87.80 54.96 26.09 64.73 49.57
40 118.79 118.36 120.95 113.19 107.49 68.56 35.05 80.24 63.16
50 143.15 142.64 145.85 136.45 129.90 84.07 45.44 97.91 78.83
60 170.71 170.12 174.05 162.74 155.29 101.64 57.41 117.94 96.81
70 201.74 201.06 205.83 192.31 183.91 121.44 71.11 140.52 117.29
80 236.51 235.74 241.48 225.41 216.02 143.63 86.69 165.83 140.50
90 275.34 274.46 281.32 262.31 251.92 168.40 104.32 194.07 166.69
95 296.37 295.44 302.91 282.26 271.38 181.80 113.95 209.36 180.97
100 318.53 317.56 325.67 303.27 291.90 195.91 124.16 225.47 196.10
105 341.88 340.85 349.65 325.37 313.54 210.76 134.96 242.41 212.11
110 366.45 365.37 374.88 348.61 336.32 226.37 146.38 260.23 229.02
120 419.47 418.31 429.34 398.61 385.53 259.96 171.17 298.57 265.75
130 478.03 476.84 489.48 453.64 439.98 296.89 198.72 340.74 306.63
140 542.63 541.50 555.77 514.05 500.16 337.38 229.23 386.98 352.04
"""


@pytest.mark.parametrize("row", rows(MASTER), ids=lambda row: f"{row[0]:g}F")
def test_every_cell_of_the_computed_psig_table_is_met(row: list[float]) -> None:
    for (refrigerant, side), printed in zip(MASTER_COLUMNS, row[1:], strict=True):
        found = psig(refrigerant, row[0], side)

        assert found == pytest.approx(printed, abs=0.006), (refrigerant, side)


# kPa absolute, computed with CoolProp 8.0.0: R-410A bubble and dew, R-32, R-454B bubble
# and dew, R-22, R-134a, R-407C bubble and dew; first column degC.
MASTER_KPA = """
-40 175.5 174.8 177.4 169.0 159.6 105.2 51.2 120.3 85.7
-20 400.7 399.3 405.8 384.8 365.5 245.3 132.7 279.9 214.7
-10 574.6 572.7 582.6 551.2 524.9 354.8 200.6 404.7 319.8
0 800.7 798.1 813.1 767.4 732.4 498.0 292.8 567.9 460.7
5 936.2 933.2 951.4 896.9 857.0 584.1 349.7 666.0 546.9
10 1088.3 1084.8 1106.9 1042.1 997.0 680.9 414.6 776.4 644.9
20 1447.5 1442.9 1474.6 1384.6 1328.0 910.0 571.7 1037.6 880.3
30 1889.1 1883.4 1927.5 1804.8 1736.0 1191.9 770.2 1359.0 1175.8
40 2425.6 2418.6 2478.3 2313.6 2232.6 1533.6 1016.6 1748.9 1541.2
50 3071.1 3063.0 3141.2 2922.7 2831.6 1942.7 1317.9 2215.9 1987.6
55 3439.8 3431.6 3519.9 3269.0 3174.5 2175.1 1491.5 2481.2 2245.3
60 3842.6 3834.8 3933.2 3645.6 3549.8 2427.5 1681.8 2769.4 2528.6
"""


@pytest.mark.parametrize("row", rows(MASTER_KPA), ids=lambda row: f"{row[0]:g}C")
def test_every_cell_of_the_computed_kpa_table_is_met(row: list[float]) -> None:
    for (refrigerant, side), printed in zip(MASTER_COLUMNS, row[1:], strict=True):
        found = saturation_pressure(refrigerant, row[0] + 273.15, side) / 1e3

        assert found == pytest.approx(printed, abs=0.06), (refrigerant, side)


@pytest.mark.parametrize(
    ("refrigerant", "megapascal", "glide"),
    # Computed with CoolProp 8.0.0.
    [
        ("R-410A", 1.0, 0.11),
        ("R-410A", 2.5, 0.12),
        ("R-454B", 1.0, 1.50),
        ("R-454B", 2.5, 1.44),
        ("R-407C", 1.0, 5.63),
        ("R-407C", 2.5, 4.18),
    ],
)
def test_the_glide_is_as_computed(
    refrigerant: str, megapascal: float, glide: float
) -> None:
    bubble, dew = (
        saturation_temperature(refrigerant, megapascal * 1e6, side) for side in BOTH
    )

    assert dew - bubble == pytest.approx(glide, abs=0.006)


@pytest.mark.parametrize(
    ("refrigerant", "gauge", "side", "feet", "printed"),
    # Computed with CoolProp 8.0.0 and PsychroLib 2.5.0.
    [
        ("R-410A", 118, "dew", 0, 39.84),
        ("R-410A", 118, "dew", 5000, 38.75),
        ("R-410A", 118, "dew", 7000, 38.35),
        ("R-410A", 340, "bubble", 0, 104.61),
        ("R-410A", 340, "bubble", 5000, 104.09),
        ("R-410A", 340, "bubble", 7000, 103.90),
        ("R-134a", 10, "dew", 0, 6.66),
        ("R-134a", 10, "dew", 5000, 2.08),
        ("R-134a", 10, "dew", 7000, 0.34),
    ],
)
def test_altitude_moves_the_saturation_temperature(
    refrigerant: str, gauge: float, side: Side, feet: float, printed: float
) -> None:
    air = atmosphere(feet * 0.3048)
    found = saturation_temperature(refrigerant, absolute(gauge * PSI, air), side)

    assert fahrenheit(found) == pytest.approx(printed, abs=0.02)


@pytest.mark.parametrize(
    ("gauge", "side", "slope"),
    # °F for each psi, computed with CoolProp 8.0.0.
    [(118, "dew", 0.440), (340, "bubble", 0.210)],
)
def test_the_slope_of_r410a_is_as_computed(
    gauge: float, side: Side, slope: float
) -> None:
    found = kelvin_per_pascal("R-410A", gauge * PSI + SEA, side) * 1.8 * PSI

    assert found == pytest.approx(slope, abs=0.001)


@pytest.fixture(scope="module")
def tables() -> Iterator[object]:
    """Return the script that made the committed tables, with the pinned CoolProp."""
    coolprop = pytest.importorskip("CoolProp")
    assert coolprop.__version__ == "8.0.0"
    folder = str(Path(__file__).parents[1] / "evaluation")
    sys.path.insert(0, folder)
    yield import_module("saturation_tables")
    sys.path.remove(folder)


@pytest.mark.parametrize("refrigerant", REFRIGERANTS)
@pytest.mark.parametrize(("side", "quality"), [("bubble", 0), ("dew", 1)])
def test_no_call_fails_and_all_are_within_a_ten_thousandth_of_coolprop(
    tables: object, refrigerant: str, side: Side, quality: int
) -> None:
    pressure = tables.source(refrigerant, quality)  # type: ignore[attr-defined]

    for tenth in range(-400, 651, 7):
        kelvins = tenth / 10 + 273.15
        expected = pressure(kelvins)
        assert saturation_pressure(refrigerant, kelvins, side) == pytest.approx(
            expected, rel=1e-4
        )
        assert saturation_temperature(refrigerant, expected, side) == pytest.approx(
            kelvins, abs=0.005
        )


def test_the_committed_table_is_what_its_script_makes(tables: object) -> None:
    written = tables.TARGET.read_text("utf-8")  # type: ignore[attr-defined]

    assert written == tables.module()  # type: ignore[attr-defined]


def test_an_independent_fit_agrees_over_its_range() -> None:
    # ln(p/kPa) = c0 + c1/T + c2 ln T + c3 T, fitted with NumPy to CoolProp 8.0.0 with
    # the largest error printed beside it.
    from math import exp, log

    fits = {
        ("R-32", "dew"): (100.27615, -4561.57, -14.95061, 0.025618654, 0.00046),
        ("R-410A", "bubble"): (110.98749, -4827.3814, -16.845862, 0.0288359, 0.00061),
        ("R-410A", "dew"): (114.02525, -4900.8731, -17.38906, 0.029843942, 0.00080),
        ("R-454B", "bubble"): (
            93.102585,
            -4397.1219,
            -13.653976,
            0.022834796,
            0.00029,
        ),
        ("R-454B", "dew"): (113.33453, -4884.0092, -17.292838, 0.029856205, 0.00067),
        ("R-22", "dew"): (88.423851, -4402.4354, -12.769193, 0.020279795, 0.00016),
        ("R-134a", "dew"): (108.77726, -5286.0595, -16.114763, 0.024377129, 0.00012),
        ("R-407C", "bubble"): (
            87.869901,
            -4375.1132,
            -12.662721,
            0.020235701,
            0.00013,
        ),
        ("R-407C", "dew"): (133.43557, -5737.7464, -20.574346, 0.03340841, 0.00054),
    }
    for (refrigerant, side), (c0, c1, c2, c3, error) in fits.items():
        for celsius in range(-40, 61, 4):
            t = celsius + 273.15
            fitted = exp(c0 + c1 / t + c2 * log(t) + c3 * t) * 1e3
            found = saturation_pressure(refrigerant, t, side)  # type: ignore[arg-type]
            assert found == pytest.approx(fitted, rel=error * 1.05)


@pytest.mark.parametrize("refrigerant", REFRIGERANTS)
def test_scipy_draws_the_same_cubic(refrigerant: str) -> None:
    interpolate = pytest.importorskip("scipy.interpolate")
    from math import exp

    from assistant.checks.saturation_table import BUBBLE, LOWEST, STEP

    logs, slopes = BUBBLE[refrigerant]
    inverse = [1 / (LOWEST + row * STEP) for row in range(len(logs))]
    spline = interpolate.CubicHermiteSpline(inverse[::-1], logs[::-1], slopes[::-1])

    for tenth in range(-590, 655, 37):
        t = tenth / 10 + 273.15
        assert saturation_pressure(refrigerant, t, "bubble") == pytest.approx(
            exp(float(spline(1 / t))), rel=1e-10
        )
