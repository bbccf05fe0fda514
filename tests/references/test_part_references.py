"""Capacitors, coils, modules, reactors and lines against published figures."""

from __future__ import annotations

import pytest

from assistant.checks.capacitance import running_capacitance
from assistant.checks.diodes import phases_alike
from assistant.checks.line_behaviour import behaviour
from assistant.checks.registry import run_named

BENCH = {"power": "off", "disconnected": "yes"}


@pytest.mark.parametrize(
    ("amps", "volts", "hertz", "micro"),
    # 8.3 A at 295.4 V is printed as 74.5 uF (trade training on run capacitors); the
    # rest is arithmetic.
    [
        (8.3, 295.4, 60.0, 74.53),
        (4.2, 370.0, 60.0, 30.11),
        (1.45, 350.0, 60.0, 10.99),
        (4.0, 382.0, 60.0, 27.78),
        (5.0, 400.0, 50.0, 39.79),
    ],
)
def test_a_running_capacitance_is_the_worked_one(
    amps: float, volts: float, hertz: float, micro: float
) -> None:
    found = 1e6 * running_capacitance(amps, volts, hertz)

    assert found == pytest.approx(micro, abs=0.006)


def test_the_trades_constants_are_the_laws() -> None:
    # 2652 at 60 Hz in trade use; 2652.58 and 3183.10 by arithmetic.
    for hertz, constant in ((60.0, 2652.58), (50.0, 3183.10)):
        found = 1e6 * 100 * running_capacitance(1.0, 100.0, hertz)
        assert found == pytest.approx(constant, abs=0.006)


def test_the_training_example_is_too_close_to_call() -> None:
    # The page calls 74.5 uF out of 70 uF +-6 % by 0.3 uF; with clamp and meter at
    # 1 % + 3 digits no one can say so.
    report = run_named(
        "capacitor",
        {"amps": "8.3 A", "volts": "295.4 V", "frequency": "60 Hz", "rated": "70 uF"},
    )

    assert report.high == pytest.approx(74.2e-6)
    assert report.value == pytest.approx(74.53e-6, abs=6e-9)
    assert report.result == "inconclusive"


@pytest.mark.parametrize(
    ("rated", "tolerance", "low", "high"),
    [
        ("45 uF", "6 %", 42.3, 47.7),
        ("5 uF", "6 %", 4.70, 5.30),
        ("35 uF", "5 %", 33.25, 36.75),
    ],
)
def test_a_printed_tolerance_is_the_worked_band(
    rated: str, tolerance: str, low: float, high: float
) -> None:
    told = BENCH | {"discharged": "yes", "reading": rated}

    report = run_named("capacitor", told | {"rated": rated, "tolerance": tolerance})

    assert report.low == pytest.approx(low * 1e-6)
    assert report.high == pytest.approx(high * 1e-6)
    assert report.result == "pass"


@pytest.mark.parametrize(
    ("low", "high", "reading", "result"),
    # Expansion valve coils, Fujitsu General assist 6000276914: 12 V type 42 to 50,
    # 24 V type 183 to 191 ohm; a good 12 V coil is no good 24 V one.
    [
        ("42 ohm", "50 ohm", "46.0 ohm", "pass"),
        ("183 ohm", "191 ohm", "46.0 ohm", "fail"),
        ("183 ohm", "191 ohm", "OL", "fail"),
        ("42 ohm", "50 ohm", "0.1 ohm", "fail"),
    ],
)
def test_a_valve_coil_is_judged_by_its_own_document(
    low: str, high: str, reading: str, result: str
) -> None:
    report = run_named("coil", BENCH | {"low": low, "high": high, "reading": reading})

    assert report.result == result


def test_a_warm_coil_is_brought_to_the_documents_temperature() -> None:
    # Solenoid resistance rises about 4 % in 10 C (Genie service manual 7-2).
    band = {"low": "45 ohm", "high": "47 ohm", "stated_at": "20 C"}
    fine = {"percent": "0.1 %", "digits": "1", "resolution": "0.1 ohm"}
    told = BENCH | band | fine | {"reading": "47.8 ohm", "temperature": "30 C"}

    report = run_named("coil", told)

    assert report.value == pytest.approx(47.8 / 1.0393, rel=1e-4)
    assert report.result == "pass"


@pytest.mark.parametrize(
    ("volts", "found"),
    # Fujitsu General assist 6000276917: 0.4 V each; 0 V short; OL both ways open.
    [
        ((0.4, 0.4, 0.4), "alike"),
        ((0.4, 0.0, 0.4), "short"),
        ((0.4, None, 0.4), "open"),
        ((0.4, 0.55, 0.4), "differ"),
    ],
)
def test_module_diodes_are_told_as_the_note_tells_them(
    volts: tuple[float | None, ...], found: str
) -> None:
    assert phases_alike(volts) == found


def test_an_analogue_meters_polarity_is_not_taken_for_granted() -> None:
    # Analogue leads are the other way round: Hitachi RAS-E08H2A p. 87.
    told = BENCH | {"readings": "U: 0.4 V; V: 0.4 V; W: 0.4 V", "dead": "yes"}

    digital = run_named("module-diodes", told | {"meter": "digital"})
    analogue = run_named("module-diodes", told | {"meter": "analogue"})
    untold = run_named("module-diodes", told)

    assert digital.result == "pass"
    assert analogue.result == untold.result == "no_verdict"


def test_a_reactor_fails_only_when_open_or_by_its_document() -> None:
    # Midea MTIU-18HWFN1 p. 153: about 0 ohm, open is bad.
    opened = run_named("reactor", BENCH | {"reading": "OL"})
    unknown = run_named("reactor", BENCH | {"reading": "0.4 ohm"})

    assert opened.result == "fail"
    assert unknown.result == "no_verdict"


@pytest.mark.parametrize(
    ("volts", "seen"),
    # Midea MTIU-18HWFN1 p. 153: healthy -50 to +50 V, only positive swings point
    # outdoors, a constant value indoors. FDT125VNP p. 47 calls 0 to 20 V healthy.
    [
        ((-50.0, 3.0, 48.0), "swings"),
        ((1.0, 14.0, 48.0), "one-sided"),
        ((24.0, 24.1, 24.0), "constant"),
        ((0.0, 0.0, 0.1), "nothing"),
    ],
)
def test_a_lines_movement_is_named_as_the_documents_name_it(
    volts: tuple[float, ...], seen: str
) -> None:
    assert behaviour(*volts) == seen


def test_one_lines_movement_is_healthy_in_one_family_and_not_in_another() -> None:
    told = {"readings": "1 V; 14 V; 19 V", "mains": "yes"}

    untold = run_named("communication-line", told)
    swinging = run_named("communication-line", told | {"healthy": "swings"})
    single = run_named("communication-line", told | {"healthy": "one-sided"})

    assert untold.result == "no_verdict"
    assert swinging.result == "fail"
    assert single.result == "pass"
    assert all("mains" in r.reason for r in (untold, swinging, single))
