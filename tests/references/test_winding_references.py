"""Windings and insulation against worked examples and printed answers."""

from __future__ import annotations

import pytest

from assistant.checks.insulation import insulation_at_forty
from assistant.checks.registry import run_named
from assistant.checks.unbalance import unbalance
from assistant.checks.windings import (
    resistance_at,
    single_phase,
    temperature_by_resistance,
)

ZERO = 273.15


@pytest.mark.parametrize(
    ("cold", "at", "hot", "celsius"),
    # K = 234.5, by arithmetic; 83.63 is a textbook's answer (physicsforums 381286).
    [(80.0, 20.0, 100.0, 83.625), (50.0, 20.0, 58.0, 60.72), (2.0, 25.0, 2.6, 102.85)],
)
def test_a_temperature_by_resistance_is_the_worked_one(
    cold: float, at: float, hot: float, celsius: float
) -> None:
    found = temperature_by_resistance(cold, at + ZERO, hot) - ZERO

    assert found == pytest.approx(celsius, abs=0.006)


@pytest.mark.parametrize(
    ("ohms", "at", "wanted", "expected"),
    [
        (0.65, 20.0, 25.0, 0.66277),
        (1.00, 40.0, 20.0, 0.92714),
        (0.90, 60.0, 20.0, 0.77776),
        (1.5, 25.0, 85.0, 1.84682),
    ],
)
def test_a_resistance_at_another_temperature_is_the_worked_one(
    ohms: float, at: float, wanted: float, expected: float
) -> None:
    found = resistance_at(ohms, at + ZERO, wanted + ZERO)

    assert found == pytest.approx(expected, abs=6e-6)


def test_the_coefficient_of_copper_is_the_worked_one() -> None:
    # 1 / 254.5 at 20 C is 0.003929, and 0.003854 at 25 C: arithmetic.
    for celsius, alpha in ((20.0, 0.003929), (25.0, 0.003854)):
        rise = resistance_at(1.0, celsius + ZERO, celsius + 1 + ZERO) - 1
        assert rise == pytest.approx(alpha, abs=6e-7)


@pytest.mark.parametrize(
    ("ohms", "percent"),
    [
        ((0.650, 0.655, 0.648), 0.614),
        ((1.20, 1.21, 1.05), 8.96),
        ((0.50, 0.52, 0.51), 1.96),
    ],
)
def test_a_spread_of_windings_is_the_worked_one(
    ohms: tuple[float, ...], percent: float
) -> None:
    assert 100 * unbalance(*ohms) == pytest.approx(percent, abs=0.006)


def test_the_repair_shops_two_percent_condemns_no_compressor() -> None:
    # 2 % for random windings is EASA AR100, for motor repair shops: without the
    # document's own limit 8.96 % is a figure and no verdict.
    readings = "U-V: 1.20 ohm; V-W: 1.21 ohm; U-W: 1.05 ohm"

    report = run_named(
        "winding-balance", {"readings": readings, "power": "off", "disconnected": "yes"}
    )

    assert report.result == "no_verdict"
    assert report.missing == ("the document's limit",)
    assert report.value == pytest.approx(0.0896, abs=1e-4)


def test_a_tenth_of_an_ohm_resolves_no_small_winding() -> None:
    readings = "U-V: 0.5 ohm; V-W: 0.5 ohm; U-W: 0.5 ohm"
    told = {"readings": readings, "power": "off", "disconnected": "yes"}

    report = run_named("winding-balance", told | {"limit": "2 %"})

    assert report.result == "inconclusive"
    assert "cannot resolve" in report.reason


def test_the_printed_sum_of_a_single_phase_motor_holds() -> None:
    # aircold.fergusonhvac.com tech tip: 11 + 4 = 15 ohm.
    assert single_phase(11.0, 4.0, 15.0) == "sum holds"
    # industrialmonitordirect.com, single-phase article: 0.5, 1.2, 1.7 ohm.
    assert single_phase(0.5, 1.2, 1.7) == "sum holds"
    assert single_phase(11.0, 4.0, 12.0) == "sum does not hold"


def test_an_open_overload_is_waited_for() -> None:
    # Manitowoc QM-30 p. 176: C-S and C-R open while S-R reads is the overload.
    report = run_named(
        "single-phase-windings",
        {"cs": "OL", "cr": "OL", "sr": "15 ohm", "power": "off"},
    )

    assert report.result == "no_verdict"
    assert "cool" in report.reason


@pytest.mark.parametrize(
    ("mega", "celsius", "at_forty"),
    # Halving each 10 K (insulationtesting.com); 15 at 70 C is printed 120
    # (qinstar.in), the rest is arithmetic.
    [
        (200.0, 20.0, 50.0),
        (40.0, 45.0, 56.57),
        (15.0, 70.0, 120.0),
        (3.0, 70.0, 24.0),
        (50.0, 25.0, 17.68),
        (100.0, 0.0, 6.25),
    ],
)
def test_insulation_at_forty_is_the_worked_one(
    mega: float, celsius: float, at_forty: float
) -> None:
    found = insulation_at_forty(mega * 1e6, celsius + ZERO) / 1e6

    assert found == pytest.approx(at_forty, rel=2e-4)


@pytest.mark.parametrize(
    ("limit", "result"),
    # Makers' limits: replace under 0.1 Mohm (Amana AVZC18 p. 11), good over 1 Mohm
    # (Panasonic CU-KS36NKU p. 46), over 2 Mohm (Technibel KAF96R5I p. 30), at least
    # 50 Mohm (Carrier 17/19EX p. 141).
    [("0.1 Mohm", "pass"), ("1 Mohm", "pass"), ("2 Mohm", "fail"), ("50 Mohm", "fail")],
)
def test_one_reading_passes_one_document_and_fails_another(
    limit: str, result: str
) -> None:
    told = {"reading": "1.5 Mohm", "power": "off", "disconnected": "yes"}

    report = run_named("insulation", told | {"vacuum": "no", "low": limit})

    assert report.result == result
