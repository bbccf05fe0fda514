"""Readings of which all is known get pass, fail or inconclusive."""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.checks.judge import ReadingFor, judge
from assistant.checks.kinds import Check, Meter, Sensor
from assistant.checks.verdict import Verdict
from assistant.units.parse import parse_quantity

MakeCheck = Callable[..., Check]
READY = {"sensor unplugged": True, "power off": True}


def told(value: str | None, **more: Any) -> ReadingFor:
    """Return a reading; every text but the power state is a quantity."""
    more = {
        key: parse_quantity(item)
        if isinstance(item, str) and key != "power_state"
        else item
        for key, item in more.items()
    }
    return ReadingFor(value=None if value is None else parse_quantity(value), **more)


@pytest.mark.parametrize(
    ("value", "result"),
    # 10 kohm at 25 °C +-10 %: 9.0 to 11.0 kohm. Bench meter at 10 kohm: a = 52 ohm;
    # thermometer 0.5 K x 4.44 %/K = 222 ohm; U = 2 sqrt((52^2 + 222^2) / 3) = 263 ohm.
    [
        ("10 kohm", "pass"),
        ("10.7 kohm", "pass"),
        ("10.8 kohm", "inconclusive"),
        ("11.2 kohm", "inconclusive"),
        ("11.3 kohm", "fail"),
        ("8.70 kohm", "fail"),
        ("8.80 kohm", "inconclusive"),
        ("9.30 kohm", "pass"),
    ],
)
def test_a_sensor_is_judged_with_a_guard_band(
    value: str, result: str, make_check: MakeCheck, coil: Sensor, bench: Meter
) -> None:
    reading = told(value, at_temperature="25 °C")

    verdict = judge(make_check("thermistor"), reading, coil, READY, bench)

    assert verdict.result == result
    assert (verdict.low, verdict.high) == pytest.approx((9000.0, 11000.0))
    assert verdict.expected == pytest.approx(10000.0)
    assert verdict.uncertainty == pytest.approx(263.0, rel=0.03)
    assert verdict.unit == "ohm"
    assert "B (1/T - 1/T0)" in verdict.formula
    assert verdict.source


def test_what_is_assumed_of_the_meter_is_said(
    make_check: MakeCheck, coil: Sensor, bench: Meter
) -> None:
    reading = told("10 kohm", at_temperature="25 °C")

    without = judge(make_check("thermistor"), reading, coil, READY, None)
    with_one = judge(make_check("thermistor"), reading, coil, READY, bench)

    assert "1 % + 3 digits of 10 Ω are assumed" in without.reason
    assert "thermometer is taken as good to 1 K" in without.reason
    assert "assumed" not in with_one.reason
    assert "thermometer is taken as good to 0.5 K" in with_one.reason


def test_a_meter_described_for_volts_is_not_used_for_ohms(
    make_check: MakeCheck, coil: Sensor
) -> None:
    volts = Meter.model_validate({"percent": 0.1, "digits": 1, "resolution": "0.1 V"})
    reading = told("10 kohm", at_temperature="25 °C")

    verdict = judge(make_check("thermistor"), reading, coil, READY, volts)

    assert "the meter's figures are for V" in verdict.reason


def test_a_band_narrower_than_the_uncertainty_is_never_passed(
    make_check: MakeCheck, coil: Sensor
) -> None:
    tight = coil.model_copy(update={"tolerance": parse_quantity("2 %")})
    reading = told("10 kohm", at_temperature="25 °C")

    verdict = judge(make_check("thermistor"), reading, tight, READY, None)

    assert verdict.result == "inconclusive"
    assert "too close to call with this meter" in verdict.reason
    assert "narrower than twice the uncertainty" in verdict.reason


def test_a_gross_reading_fails_and_is_questioned_but_not_mended(
    make_check: MakeCheck, tabled: Sensor
) -> None:
    reading = told("400 ohm", at_temperature="40 °C")

    verdict = judge(make_check("thermistor"), reading, tabled, READY, None)

    assert (verdict.result, verdict.value) == ("fail", 400.0)
    assert "far from the 110.0 kΩ expected" in verdict.reason
    assert "taken as told" in verdict.reason


@pytest.mark.parametrize(
    ("limits", "reading", "word"),
    [
        ({"open_above": "500 kohm"}, told("900 kohm", at_temperature="25 °C"), "open"),
        (
            {"open_above": "500 kohm"},
            told(None, at_temperature="25 °C", open_line=True),
            "open",
        ),
        ({}, told(None, at_temperature="25 °C", open_line=True), "open"),
        ({"short_below": "100 ohm"}, told("2 ohm", at_temperature="25 °C"), "shorted"),
    ],
)
def test_open_and_shorted_follow_the_makers_thresholds(
    limits: dict[str, str],
    reading: ReadingFor,
    word: str,
    make_check: MakeCheck,
    coil: Sensor,
) -> None:
    stated = {name: parse_quantity(text) for name, text in limits.items()}
    sensor = coil.model_copy(update=stated)

    verdict = judge(make_check("thermistor"), reading, sensor, READY, None)

    assert verdict.result == "fail"
    assert verdict.reason.startswith(word)


def test_thresholds_judge_a_sensor_whose_tolerance_is_not_stated(
    make_check: MakeCheck, coil: Sensor
) -> None:
    stated = {"tolerance": None, "short_below": parse_quantity("100 ohm")}
    sensor = coil.model_copy(update=stated)
    reading = told("2 ohm", at_temperature="25 °C")

    verdict = judge(make_check("thermistor"), reading, sensor, READY, None)

    assert verdict.result == "fail"
    assert "shorted" in verdict.reason


METER_14_2 = {"percent": 1.0, "digits": 3, "resolution": "0.1 V"}


@pytest.mark.parametrize(
    ("value", "result"),
    # The worked guard band: lower limit 207.0 V, meter 1.0 % + 3 digits of 0.1 V.
    [
        ("210.5 V", "pass"),
        ("209.9 V", "pass"),
        ("207.4 V", "inconclusive"),
        ("206.0 V", "inconclusive"),
        ("203.0 V", "fail"),
    ],
)
def test_a_supply_meets_the_worked_guard_band(
    value: str, result: str, make_check: MakeCheck
) -> None:
    meter = Meter.model_validate(METER_14_2)

    verdict = judge(make_check("supply_voltage"), told(value), None, {}, meter)

    assert verdict.result == result
    assert verdict.low == pytest.approx(207.0)
    assert verdict.high == pytest.approx(253.0)


@pytest.mark.parametrize(
    ("start", "result", "word"),
    # A maker's "over 25 V is an undersized supply" (Innovair service manual p. 15).
    [
        ("215 V", "pass", "sag"),
        ("206 V", "inconclusive", "sag"),
        ("190 V", "fail", "sag"),
        (None, "pass", "the sag is not judged"),
    ],
)
def test_the_sag_at_start_is_judged_when_it_is_told(
    start: str | None, result: str, word: str, make_check: MakeCheck
) -> None:
    check = make_check("supply_voltage", largest_sag="25 V")
    reading = told("231 V", under_load=start)

    verdict = judge(check, reading, None, {}, None)

    assert verdict.result == result
    assert word in verdict.reason


def test_the_worse_of_rest_and_start_decides(make_check: MakeCheck) -> None:
    check = make_check("supply_voltage", largest_sag="25 V")

    low_at_rest = judge(check, told("195 V", under_load="190 V"), None, {}, None)
    deep_at_start = judge(check, told("231 V", under_load="190 V"), None, {}, None)

    assert low_at_rest.result == "fail"
    assert low_at_rest.low == pytest.approx(207.0)
    assert deep_at_start.value == pytest.approx(41.0)
    assert deep_at_start.high == pytest.approx(25.0)


@pytest.mark.parametrize(
    ("value", "result"),
    # sqrt(2) x 231 V = 326.7 V, 10 % either way: 294.0 to 359.4 V.
    [("325 V", "pass"), ("296 V", "inconclusive"), ("280 V", "fail"), ("0 V", "fail")],
)
def test_a_bus_is_judged_from_the_measured_supply(
    value: str, result: str, make_check: MakeCheck
) -> None:
    reading = told(value, supply="231 V", power_state="live")

    call = {"call present": True}

    verdict = judge(make_check("standby_bus"), reading, None, call, None)

    assert verdict.result == result
    assert verdict.expected == pytest.approx(326.7, abs=0.05)
    assert verdict.low == pytest.approx(294.0, abs=0.05)
    assert verdict.high == pytest.approx(359.4, abs=0.05)


def test_a_low_bus_without_a_call_is_no_fault(make_check: MakeCheck) -> None:
    reading = told("0 V", supply="231 V", power_state="live")

    for call in (None, False):
        verdict = judge(
            make_check("standby_bus"), reading, None, {"call present": call}, None
        )
        assert verdict.result == "no_verdict"
        assert verdict.missing == ("call present",)
        assert "does not prove the circuit dead" in verdict.reason


@pytest.mark.parametrize(
    ("limits", "reading", "result"),
    [
        ({"low": "1 Mohm", "high": None}, told(None, open_line=True), "pass"),
        ({"low": "2 ohm", "high": "4 ohm"}, told(None, open_line=True), "fail"),
        ({"low": "100 Mohm", "high": None}, told(None, open_line=True), "no_verdict"),
        ({"low": None, "high": "1 Mohm"}, told(None, open_line=True), "no_verdict"),
    ],
)
def test_ol_meets_a_band_only_where_a_meter_could_tell(
    limits: dict[str, str | None],
    reading: ReadingFor,
    result: str,
    make_check: MakeCheck,
) -> None:
    check = make_check("band", **limits)

    assert judge(check, reading, None, {"power off": True}, None).result == result


def test_a_band_of_temperature_uses_the_thermometer(make_check: MakeCheck) -> None:
    check = make_check("band", low="10 °C", high="20 °C")

    middle = judge(check, told("15 °C"), None, {}, None)
    edge = judge(check, told("19.5 °C"), None, {}, None)

    # U of 1 K taken as rectangular: 2 / sqrt(3)
    assert middle.uncertainty == pytest.approx(1.1547, abs=1e-4)
    assert (middle.result, edge.result) == ("pass", "inconclusive")


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.floats(min_value=1.0, max_value=1e6))
def test_units_of_the_reading_do_not_change_the_verdict(
    make_check: MakeCheck, coil: Sensor, ohm: float
) -> None:
    def verdict(text: str, at: str) -> Verdict:
        reading = told(text, at_temperature=at)
        return judge(make_check("thermistor"), reading, coil, READY, None)

    in_ohm = verdict(f"{ohm:.9f} ohm", "25 °C")
    in_kohm = verdict(f"{ohm / 1e3:.12f} kohm", "77 °F")

    assert in_ohm.result == in_kohm.result
    assert in_ohm.expected == pytest.approx(in_kohm.expected or math.nan)


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.floats(min_value=100.0, max_value=1e5), st.floats(min_value=0.1, max_value=5))
def test_a_worse_thermometer_never_turns_a_verdict_round(
    make_check: MakeCheck, coil: Sensor, ohm: float, error: float
) -> None:
    def result(thermometer: float) -> str:
        meter = Meter.model_validate(
            {
                "percent": 0.5,
                "digits": 2,
                "resolution": "1 ohm",
                "thermometer": thermometer,
            }
        )
        reading = told(f"{ohm:.6f} ohm", at_temperature="25 °C")
        return judge(make_check("thermistor"), reading, coil, READY, meter).result

    good, poor = result(0.1), result(0.1 + error)

    assert poor in {good, "inconclusive"}
