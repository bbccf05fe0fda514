"""Meter bounds and decision rules against published examples."""

from __future__ import annotations

import pytest

from assistant.checks.uncertainty import expanded, guarded, meter_bound
from assistant.checks.verdict import Result

BOUNDS = [
    # reading, percent, digits, resolution, bound; source of the printed range
    (120.0, 0.7, 2, 0.1, 1.04),  # electrical-contractor.net posts/31601
    (2.000, 0.08, 2, 0.001, 0.0036),  # victorruoshui.com
    (2.000, 0.5, 3, 0.001, 0.013),  # gvda-instrument 69432302
    (100.0, 1.0, 2, 0.1, 1.2),  # gvda-instrument 87246271
    (100.0, 0.8, 2, 0.1, 1.0),  # gvda-instrument 102737741
    (5.02, 2.0, 3, 0.01, 0.1304),  # 51a.net
    (325.0, 0.5, 2, 0.1, 1.825),  # arithmetic
    (0.65, 0.9, 3, 0.01, 0.0359),  # arithmetic, rounded
]


@pytest.mark.parametrize(
    ("reading", "percent", "digits", "resolution", "bound"), BOUNDS
)
def test_a_meter_bound_is_the_printed_one(
    reading: float, percent: float, digits: int, resolution: float, bound: float
) -> None:
    found = meter_bound(reading, percent, digits, resolution)

    assert found == pytest.approx(bound, rel=2e-3)


GUARD_ROWS: list[tuple[float, float, float, float, float, float, Result]] = [
    # 230 V - 10 %: lower limit 207.0 V, meter 1.0 % + 3 digits of 0.1 V.
    # y, a, u, U, TL + U, TL - U, verdict: arithmetic after ILAC-G8:09/2019, w = U
    (210.5, 2.405, 1.389, 2.777, 209.78, 204.22, "pass"),
    (209.9, 2.399, 1.385, 2.770, 209.77, 204.23, "pass"),
    (207.4, 2.374, 1.371, 2.741, 209.74, 204.26, "inconclusive"),
    (206.0, 2.360, 1.363, 2.725, 209.73, 204.27, "inconclusive"),
    (203.0, 2.330, 1.345, 2.690, 209.69, 204.31, "fail"),
]


@pytest.mark.parametrize("row", GUARD_ROWS)
def test_each_row_of_the_worked_guard_band_is_met(
    row: tuple[float, float, float, float, float, float, Result],
) -> None:
    y, a, u, wide, above, below, verdict = row

    bound = meter_bound(y, 1.0, 3, 0.1)
    spread = expanded(bound)

    assert bound == pytest.approx(a, abs=5e-4)
    assert spread / 2 == pytest.approx(u, abs=1e-3)
    assert spread == pytest.approx(wide, abs=1e-3)
    assert 207.0 + spread == pytest.approx(above, abs=6e-3)
    assert 207.0 - spread == pytest.approx(below, abs=6e-3)
    assert guarded(y, 207.0, None, spread) == verdict


@pytest.mark.parametrize(
    ("value", "verdict"),
    # Limits +-3.0 µm, U 1.0 µm: 1.7 conforms, 2.5 is in the grey zone, as published
    # on talalspecialbolt.com's ILAC-G8 page; 4.1 follows from the rule.
    [(1.7, "pass"), (2.5, "inconclusive"), (4.1, "fail")],
)
def test_a_published_tolerance_with_guard_bands_is_met(
    value: float, verdict: Result
) -> None:
    assert guarded(value, -3.0, 3.0, 1.0) == verdict


def test_two_bounds_combine_as_in_the_worked_superheat_budget() -> None:
    # Gauge 1.10 °F and thermometer 1.0 °F: u 0.858, U 1.72 °F, by arithmetic.
    spread = expanded(1.10, 1.0)

    assert spread / 2 == pytest.approx(0.858, abs=1e-3)
    assert spread == pytest.approx(1.72, abs=5e-3)


@pytest.mark.parametrize("value", [-2.0, 0.0, 1.9])
def test_a_two_degree_band_is_never_passed_with_such_tools(value: float) -> None:
    # The same budget against +-1.7 °F, a band narrower than 2 U.
    assert guarded(value, -1.7, 1.7, expanded(1.10, 1.0)) == "inconclusive"
