"""Gauges and thermometers: what tools can decide, by the worked budget."""

from __future__ import annotations

import pytest

from assistant.checks.instruments import gauge_bound, never_decides
from assistant.checks.registry import run_named
from assistant.checks.uncertainty import expanded

SLOPE = 0.440
"""F a psi of R-410A near 118 psig (CoolProp 8.0.0)."""


def test_the_superheat_budget_is_the_worked_one() -> None:
    # 0.5 % of 500 psi is 2.5 psi, 1.10 F; thermometer 1.0 F; U = 1.72 F.
    pressure = SLOPE * gauge_bound(500.0, 0.5)

    assert pressure == pytest.approx(1.10)
    assert expanded(pressure, 1.0) == pytest.approx(1.72, abs=0.006)


def test_those_tools_leave_next_to_nothing_of_two_degrees() -> None:
    # A band of +-2 F is 4 F wide, 2 U is 3.43 F: 0.57 F are left to accept. Of
    # +-1.5 F nothing is left, whatever is read.
    bounds = (SLOPE * gauge_bound(500.0, 0.5), 1.0)

    assert not never_decides(-2.0, 2.0, *bounds)
    assert 4.0 - 2 * expanded(*bounds) == pytest.approx(0.57, abs=0.01)
    assert never_decides(-1.5, 1.5, *bounds)


def test_it_is_said_before_a_reading_that_the_meter_cannot_decide() -> None:
    told = {"low": "0.62 ohm", "high": "0.68 ohm"}

    usual = run_named("can-decide", told)
    fine = run_named("can-decide", told | {"bound": "0.002 ohm"})

    assert "can never pass" in usual.reason
    assert "they can" in fine.reason
