"""Saturation against published charts and cards."""

from __future__ import annotations

import pytest

from assistant.checks.saturation import (
    Side,
    saturation_pressure,
    saturation_temperature,
)
from tests.saturated import BOTH, SEA, degrees, fahrenheit, psig, rows


def within_one_fahrenheit(
    refrigerant: str, gauge: float, printed: float, side: Side = "bubble"
) -> bool:
    return abs(degrees(refrigerant, gauge, side) - printed) <= 1.0


# Unitary maker's R-410A chart, °F and psig: Lennox/Allied 4SHP18LT p. 15 and Allied Air
# 4SCU16LT p. 14.
R410A_UNITARY = """
32 100.8
40 118.0
50 142.2
60 169.6
70 200.6
80 235.3
90 274.1
100 317.2
110 365.0
120 417.7
130 475.6
140 539.0
150 608.1
"""


@pytest.mark.parametrize(("chart", "gauge"), rows(R410A_UNITARY))
def test_the_unitary_makers_chart_of_r410a_is_met(chart: float, gauge: float) -> None:
    for side in BOTH:
        assert within_one_fahrenheit("R-410A", gauge, chart, side)


# Carrier 38HDF table 4, psig and °F.
R410A_SECOND = """
12 -37.7
20 -26.9
30 -15.8
40 -6.5
120 40.5
130 44.7
140 48.7
220 75.5
234 79.5
318 100.2
340 105.1
420 120.7
440 124.2
540 140.4
"""


@pytest.mark.parametrize(("gauge", "chart"), rows(R410A_SECOND))
def test_a_second_makers_chart_of_r410a_is_met(gauge: float, chart: float) -> None:
    assert within_one_fahrenheit("R-410A", gauge, chart)


def test_a_meter_makers_card_of_r410a_is_met_to_its_own_error() -> None:
    # "AZ20" on scribd 35524704, °F to psig; the card is 1.3 °F off at -40 °F.
    card = {-40: 11.6, -20: 26.9, -10: 36.8, 0: 48.6, 10: 62.3, 20: 78.3}

    for chart, gauge in card.items():
        slack = 1.4 if chart == -40 else 1.0
        assert abs(degrees("R-410A", gauge, "bubble") - chart) <= slack


# Fujitsu AUXB12GA p. 223, R-410A, °C to MPa, liquid and gas.
FUJITSU = """
10 0.993 0.993
20 1.353 1.348
30 1.796 1.788
40 2.332 2.323
50 2.974 2.963
60 3.735 3.725
"""


@pytest.mark.parametrize(("celsius", "liquid", "gas"), rows(FUJITSU))
def test_a_megapascal_table_that_is_gauge_is_not_absolute(
    celsius: float, liquid: float, gas: float
) -> None:
    found = saturation_temperature("R-410A", liquid * 1e6 + 101325.0, "bubble")
    wrong = saturation_temperature("R-410A", liquid * 1e6, "bubble")

    assert found - 273.15 == pytest.approx(celsius, abs=1 / 1.8)
    assert abs(wrong - 273.15 - celsius) > 1.2
    gas_found = saturation_temperature("R-410A", gas * 1e6 + 101325.0, "dew")
    assert gas_found - 273.15 == pytest.approx(celsius, abs=1 / 1.8)


# R-32, °C to bar absolute: allchemi.com, refrigerants, appendix 9.
R32_BAR = """
-50 1.106
-40 1.777
-30 2.737
-20 4.060
-10 5.831
0 8.139
10 11.081
20 14.759
30 19.283
40 24.781
50 31.403
"""


@pytest.mark.parametrize(("celsius", "bar"), rows(R32_BAR))
def test_a_public_table_of_r32_is_met(celsius: float, bar: float) -> None:
    found = saturation_pressure("R-32", celsius + 273.15, "dew")

    assert found == pytest.approx(bar * 1e5, rel=0.005)


# R-454B, °F to psig bubble (S29a, a public table, its name withheld, is no test): the
# one article seen that is named, learnmetrics.com/r454b-pt-chart-pressure-temperature.
def test_the_named_article_on_r454b_is_met() -> None:
    assert fahrenheit(saturation_temperature("R-454B", SEA, "bubble")) == pytest.approx(
        -59.5, abs=0.5
    )
    assert psig("R-454B", -40.0, "dew") == pytest.approx(8.8, abs=0.5)
    assert within_one_fahrenheit("R-454B", 581.4, 150.0)


# R-22, °F to psig: Carrier 38VTA installation p. 9, row of 0 °F superheat.
R22_MAKER = """
35 61.5
37 64.2
39 67.1
41 70.0
43 73.0
45 76.0
47 79.2
49 82.4
51 85.7
"""
# R-22, °F to psig: a meter maker's card, scribd 35524704.
R22_CARD = """
-40 0.5
-30 4.9
-20 10.1
-10 16.5
0 24.0
2 25.6
10 32.8
16 38.7
20 43.0
22 45.3
"""
# R-134a, °F to psig: the same card.
R134A_CARD = """
0 6.5
4 8.5
8 10.8
10 12.0
12 13.1
16 15.7
20 18.4
22 19.9
"""


@pytest.mark.parametrize(
    ("refrigerant", "chart", "gauge", "slack"),
    [
        *(("R-22", *row, 0.11) for row in rows(R22_MAKER)),
        *(("R-22", *row, 0.12) for row in rows(R22_CARD)),
        *(("R-134a", *row, 0.08) for row in rows(R134A_CARD)),
    ],
)
def test_charts_of_single_fluids_are_met_in_psi(
    refrigerant: str, chart: float, gauge: float, slack: float
) -> None:
    assert psig(refrigerant, chart, "dew") == pytest.approx(gauge, abs=slack)


# R-134a, °F to psig in whole psi: Chevrolet 1998 P12, section 22.
R134A_VEHICLE = """
20 18
30 26
40 35
50 45
60 57
70 71
80 87
90 104
100 124
110 147
120 171
130 199
140 229
150 263
"""


@pytest.mark.parametrize(("chart", "gauge"), rows(R134A_VEHICLE))
def test_a_vehicle_makers_whole_psi_of_r134a_are_met(
    chart: float, gauge: float
) -> None:
    assert psig("R-134a", chart, "dew") == pytest.approx(gauge, abs=0.63)


def test_a_poor_table_of_r134a_is_met_only_roughly() -> None:
    # Suzuki 2006 Reno, kPa gauge: 3 kPa low below 20 °C, 9 kPa high at 60 °C.
    poor = {0: 188.2, 10: 309.6, 20: 467.7, 25: 567.5, 40: 916.4, 60: 1589.6}

    for celsius, gauge in poor.items():
        found = saturation_pressure("R-134a", celsius + 273.15, "dew") / 1e3 - 101.325
        assert found == pytest.approx(gauge, abs=10.0)


# R-407C, "subcooling only", °F to psig: Liebert R-407C tables.
R407C_LIEBERT = """
36 73
40 79
45 87
50 96
60 116
70 138
76 153
94 203
100 222
104 236
110 257
116 279
120 294
122 302
"""


@pytest.mark.parametrize(("chart", "gauge"), rows(R407C_LIEBERT))
def test_the_subcooling_table_of_r407c_is_met(chart: float, gauge: float) -> None:
    assert degrees("R-407C", gauge, "bubble") == pytest.approx(chart, abs=1.3)


def test_misprints_of_a_chart_stand_out_against_the_curve() -> None:
    # The unitary makers' R-410A chart prints 184.3 at 65 °F (smooth value 184.6) and
    # 290.3 at 94 °F (290.8); their neighbours follow the dew curve to 0.4 or 0.5 psi.
    for degrees_printed, printed, smooth in ((65, 184.3, 184.6), (94, 290.3, 290.8)):
        found = psig("R-410A", degrees_printed, "dew")

        assert abs(found - smooth) < abs(found - printed)
        assert found - smooth == pytest.approx(0.45, abs=0.25)


def test_a_data_set_of_a_code_repository_is_not_met() -> None:
    # One said 170.8 "psig" at 40 "°F" for R-410A: neither that, nor psia, nor degC.
    found = psig("R-410A", 40.0, "dew")

    assert abs(found - 170.8) > 40
    assert abs(found + 14.696 - 170.8) > 30
    assert abs(psig("R-410A", 40 * 1.8 + 32, "dew") - 170.8) > 100
