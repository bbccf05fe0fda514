"""Fan motors with the driver inside, against published pin tables and speeds."""

from __future__ import annotations

import pytest

from assistant.checks.fan_speed import fan_speed
from assistant.checks.registry import run_named

# Carrier 42QHC009DS p. 33 and the editions beside it.
PINS = "Vs: 280 V to 380 V; Vcc: 14 V to 17.5 V; Vsp: 1 V to 5.6 V"
READ = {"unplugged": "yes", "mains": "yes"}


@pytest.mark.parametrize(
    ("hertz", "pulses", "rpm"),
    # 800 Hz at 12 a turn is 4000 rpm: EMP OP80 p. 12; the rest is arithmetic.
    [
        (800.0, 12, 4000.0),
        (50.0, 4, 750.0),
        (100.0, 4, 1500.0),
        (60.0, 3, 1200.0),
        (80.0, 12, 400.0),
        (36.0, 2, 1080.0),
    ],
)
def test_a_fan_speed_is_the_worked_one(hertz: float, pulses: int, rpm: float) -> None:
    assert 60 * fan_speed(hertz, pulses) == pytest.approx(rpm)


@pytest.mark.parametrize(
    ("readings", "result", "says"),
    [
        ("Vs: 310 V; Vcc: 15.8 V; Vsp: 3.2 V", "pass", "motor's side"),
        ("Vs: 310 V; Vcc: 9.1 V; Vsp: 3.2 V", "fail", "board's side"),
        ("Vs: 310 V; Vcc: 15.8 V; Vsp: 0.1 V", "fail", "board's side"),
        ("Vs: 310 V; Vcc: 15.8 V", "no_verdict", "speed command"),
        ("Vs: 310 V; Vsp: 3.2 V", "no_verdict", "every supply"),
    ],
)
def test_board_or_motor_is_told_by_supplies_and_command(
    readings: str, result: str, says: str
) -> None:
    report = run_named("fan-pins", {"table": PINS, "readings": readings} | READ)

    assert report.result == result
    assert says in report.reason


def test_no_part_is_named_with_the_header_plugged_in() -> None:
    told = {"table": PINS, "readings": "Vs: 310 V; Vcc: 9.1 V; Vsp: 3.2 V"}

    for unplugged in ({}, {"unplugged": "no"}):
        report = run_named("fan-pins", told | {"mains": "yes"} | unplugged)
        assert report.result == "no_verdict"
        assert "header unplugged" in report.missing


def test_two_editions_of_one_pin_differ_and_each_rules_its_own_units() -> None:
    # 14 to 17.5 V (Carrier 42QHC009DS p. 33) and 14 to 14.5 V (40MAQ p. 35, likely a
    # misprint) for the same pin: 16 V passes the one and fails the other.
    readings = "Vs: 310 V; Vcc: 16 V; Vsp: 3.2 V"
    other = PINS.replace("17.5", "14.5")

    first = run_named("fan-pins", {"table": PINS, "readings": readings} | READ)
    second = run_named("fan-pins", {"table": other, "readings": readings} | READ)

    assert (first.result, second.result) == ("pass", "fail")
