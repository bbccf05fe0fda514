"""Stored charge against worked examples, and the limits that are in print."""

from __future__ import annotations

import pytest

from assistant.checks.order import discharge_limit
from assistant.checks.registry import run_named
from assistant.checks.stored_charge import discharge_time, stored_energy, voltage_left

# uF, kohm, then seconds 325 to 60 V, 325 to 50 V, 390 to 50 V, 390 to 10 V: arithmetic.
TIMES = [
    (680, 47, (54.0, 59.8, 65.6, 117.1)),
    (680, 220, (252.7, 280.0, 307.3, 548.1)),
    (1360, 100, (229.8, 254.6, 279.4, 498.2)),
    (2040, 100, (344.7, 381.8, 419.0, 747.4)),
    (2040, 220, (758.2, 840.1, 921.9, 1644.2)),
    (3000, 100, (506.8, 561.5, 616.2, 1099.1)),
]
ENDS = ((325.0, 60.0), (325.0, 50.0), (390.0, 50.0), (390.0, 10.0))


@pytest.mark.parametrize(("micro", "kilo", "seconds"), TIMES)
def test_a_discharge_time_is_the_worked_one(
    micro: float, kilo: float, seconds: tuple[float, ...]
) -> None:
    found = [discharge_time(micro * 1e-6, kilo * 1e3, *ends) for ends in ENDS]

    assert found == pytest.approx(seconds, abs=0.051)


@pytest.mark.parametrize(
    ("micro", "volts", "joules"),
    [
        (680, 325, 35.9),
        (680, 390, 51.7),
        (2040, 325, 107.7),
        (2040, 390, 155.1),
        (3000, 390, 228.1),
        (2040, 50, 2.55),
    ],
)
def test_a_stored_energy_is_the_worked_one(
    micro: float, volts: float, joules: float
) -> None:
    assert stored_energy(micro * 1e-6, volts) == pytest.approx(joules, abs=0.051)


@pytest.mark.parametrize(
    ("bleed", "left"),
    # After ten minutes, 2040 uF from 390 V; 1 Mohm is what leaks past a failed bleed.
    [(100e3, 20.6), (220e3, 102.4), (1e6, 290.6)],
)
def test_ten_minutes_prove_nothing(bleed: float, left: float) -> None:
    assert voltage_left(2040e-6, bleed, 390.0, 600.0) == pytest.approx(left, abs=0.051)


def test_the_lower_of_the_document_and_fifty_volts_is_the_limit() -> None:
    # 29 CFR 1910.333(a)(1): 50 V; IEC 60204-1 allows 60 V, and does not raise it.
    assert discharge_limit(60.0) == 50.0
    assert discharge_limit(10.0) == 10.0


@pytest.mark.parametrize("name", ["bus-discharge", "stored-energy"])
def test_an_estimate_never_becomes_a_verdict(name: str) -> None:
    given = {"capacitance": "680 uF"}
    given |= (
        {"voltage": "1 V"}
        if name == "stored-energy"
        else {"bleed": "1 ohm", "start": "51 V"}
    )

    report = run_named(name, given)

    assert report.result is None
    assert "measured at every marked bank" in report.reason
    assert "safe" not in report.reason
