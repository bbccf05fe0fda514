"""The standard atmosphere against published and computed figures."""

from __future__ import annotations

import pytest

from assistant.checks.pressure import atmosphere
from tests.saturated import PSI


@pytest.mark.parametrize(
    ("feet", "psia"),
    # Computed with PsychroLib 2.5.0; 6000, 7000 and 8000 ft are printed in HVAC Design
    # Guide table 6a as 11.78, 11.34 and 10.92 psia.
    [
        (0, 14.696),
        (1000, 14.1727),
        (2000, 13.6645),
        (3000, 13.1712),
        (5000, 12.2278),
        (5280, 12.1002),
        (6000, 11.7771),
        (7000, 11.3399),
        (8000, 10.9160),
        (10000, 10.1066),
    ],
)
def test_the_standard_atmosphere_is_met(feet: float, psia: float) -> None:
    assert atmosphere(feet * 0.3048) / PSI == pytest.approx(psia, rel=1e-4)


@pytest.mark.parametrize(
    ("metres", "pascal"), [(1000, 89874.5), (2000, 79495.1), (3000, 70108.4)]
)
def test_the_standard_atmosphere_is_met_in_pascal(metres: float, pascal: float) -> None:
    assert atmosphere(metres) == pytest.approx(pascal, rel=1e-5)
