"""Every reason for which a reading gets no verdict."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.checks.judge import ReadingFor, judge, requirements
from assistant.checks.kinds import Check, Sensor
from assistant.units.parse import parse_quantity

MakeCheck = Callable[..., Check]
READY = {"sensor unplugged": True, "power off": True}


def reading(value: str | None, **more: Any) -> ReadingFor:
    """Return a reading; every text but the power state is a quantity."""
    more = {
        key: parse_quantity(item)
        if isinstance(item, str) and key != "power_state"
        else item
        for key, item in more.items()
    }
    return ReadingFor(value=None if value is None else parse_quantity(value), **more)


def at_25(value: str | None, **more: Any) -> ReadingFor:
    return reading(value, at_temperature="25 °C", **more)


SENSOR_MATRIX = [
    (at_25("10 kohm"), {"sensor unplugged": True}, "not known: power off", "power off"),
    (
        at_25("10 kohm"),
        {"power off": True},
        "not known: sensor unplugged",
        "sensor unplugged",
    ),
    (
        at_25("10 kohm"),
        READY | {"sensor unplugged": False},
        "does not: sensor unplugged",
        "sensor unplugged",
    ),
    (at_25("10 kohm", power_state="live"), READY, "taken live", "power off"),
    (
        at_25("10 kohm"),
        READY | {"power off": False},
        "taken live is not accepted",
        "power off",
    ),
    (
        reading("10 kohm"),
        READY,
        "not known: temperature at the sensor",
        "temperature at the sensor",
    ),
    (
        reading("10 kohm"),
        READY | {"temperature at the sensor": True},
        "temperature at the sensor is not known",
        "temperature at the sensor",
    ),
    (
        at_25("10 kohm"),
        READY | {"temperature at the sensor": False},
        "does not: temperature at the sensor",
        "temperature at the sensor",
    ),
    (at_25(None), READY, "no reading is told", "reading"),
    (at_25("12 V"), READY, "'12 V' is not a resistance", "reading"),
    (at_25("25 °C"), READY, "is not a resistance", "reading"),
    (at_25("-3 ohm"), READY, "negative", "reading"),
]


@pytest.mark.parametrize(("told", "context", "why", "lacking"), SENSOR_MATRIX)
def test_a_sensor_gets_no_verdict_until_all_is_known(
    told: ReadingFor,
    context: dict[str, bool | None],
    why: str,
    lacking: str,
    make_check: MakeCheck,
    coil: Sensor,
) -> None:
    verdict = judge(make_check("thermistor"), told, coil, context, None)

    assert verdict.result == "no_verdict"
    assert why in verdict.reason
    assert lacking in verdict.missing


@pytest.mark.parametrize("told", ["-1 °C", "81 °C", "30 °F"])
def test_a_table_is_not_extrapolated_and_its_range_is_named(
    told: str, make_check: MakeCheck, tabled: Sensor
) -> None:
    given_at = reading("100 kohm", at_temperature=told)

    verdict = judge(make_check("thermistor"), given_at, tabled, READY, None)

    ends = ("32.0 °F", "176.0 °F") if "F" in told else ("0.0 °C", "80.0 °C")
    assert verdict.result == "no_verdict"
    assert "not extrapolated" in verdict.reason
    assert all(end in verdict.reason for end in ends)


def test_a_temperature_that_is_none_and_an_unusable_table_are_named(
    make_check: MakeCheck, coil: Sensor, tabled: Sensor
) -> None:
    check = make_check("thermistor")
    difference = reading("10 kohm", at_temperature="5 K difference")
    empty = tabled.model_copy(update={"points": ()})

    wrong = judge(check, difference, coil, READY, None)
    unusable = judge(check, at_25("10 kohm"), empty, READY, None)
    beyond = judge(
        check, reading("10 kohm", at_temperature="300 °C"), coil, READY, None
    )

    assert "'5 K difference' is not a temperature" in wrong.reason
    assert "two stated points" in unusable.reason
    assert "formula's range, -60.0 °C to 200.0 °C" in beyond.reason
    results = {wrong.result, unusable.result, beyond.result}
    assert results == {"no_verdict"}


def test_no_bus_voltage_without_mains_gets_no_verdict(make_check: MakeCheck) -> None:
    told = reading("0 V", supply="230 V")
    context = {"mains at the terminals": False}

    verdict = judge(make_check("standby_bus"), told, None, context, None)

    assert verdict.result == "no_verdict"
    assert verdict.missing == ("mains at the terminals",)


def test_a_sensor_that_is_not_in_force_gets_no_verdict(make_check: MakeCheck) -> None:
    verdict = judge(make_check("thermistor"), at_25("10 kohm"), None, READY, None)

    assert verdict.result == "no_verdict"
    assert "not in force" in verdict.reason


def test_without_a_stated_tolerance_the_expected_value_stands_alone(
    make_check: MakeCheck, coil: Sensor
) -> None:
    bare = coil.model_copy(update={"tolerance": None})

    verdict = judge(make_check("thermistor"), at_25("3 kohm"), bare, READY, None)

    assert verdict.result == "no_verdict"
    assert verdict.expected == pytest.approx(10e3)
    assert "states no tolerance" in verdict.reason


def test_ol_of_a_cold_discharge_sensor_is_not_called_open(
    make_check: MakeCheck, tabled: Sensor
) -> None:
    cold = reading(None, at_temperature="10 °C", open_line=True)

    verdict = judge(make_check("thermistor"), cold, tabled, READY, None)

    assert verdict.result == "no_verdict"
    assert "not proof of an open sensor" in verdict.reason


def test_a_makers_open_above_every_range_is_not_proved_by_ol(
    make_check: MakeCheck, tabled: Sensor
) -> None:
    far = tabled.model_copy(update={"open_above": parse_quantity("5 Mohm")})
    cold = reading(None, at_temperature="10 °C", open_line=True)

    assert (
        judge(make_check("thermistor"), cold, far, READY, None).result == "no_verdict"
    )


VOLTAGE_MATRIX = [
    ("supply_voltage", reading("230 V", power_state="off"), "supply was on"),
    ("supply_voltage", reading("0 V"), "supply was on"),
    ("supply_voltage", reading("12 ohm"), "not a voltage"),
    ("supply_voltage", reading("-230 V"), "negative"),
    ("supply_voltage", reading("5 kV", power_state="live"), "outside"),
    ("supply_voltage", reading(None), "no reading"),
    ("supply_voltage", reading(None, open_line=True), "no reading"),
    ("standby_bus", reading("325 V"), "supply was not measured"),
    ("standby_bus", reading("325 V", supply="0 V"), "says nothing about the bus"),
    ("standby_bus", reading("325 V", supply="25 °C"), "supply was not measured"),
    ("standby_bus", reading("20 V", supply="230 V", power_state="off"), "supply on"),
    ("standby_bus", reading("-325 V", supply="230 V"), "negative"),
    ("band", reading("14 ohm"), "not a voltage"),
    ("band", reading(None, open_line=True), "not a reading"),
    ("band", reading(None), "no reading"),
    ("look", reading("14 V"), "answered by looking"),
]


@pytest.mark.parametrize(("kind", "told", "why"), VOLTAGE_MATRIX)
def test_a_voltage_gets_no_verdict_until_all_is_known(
    kind: str, told: ReadingFor, why: str, make_check: MakeCheck
) -> None:
    verdict = judge(make_check(kind), told, None, {}, None)

    assert verdict.result == "no_verdict"
    assert why in verdict.reason


@pytest.mark.parametrize(
    ("kind", "told"),
    [
        ("supply_voltage", reading("0 V")),
        ("supply_voltage", reading("0 V", power_state="live")),
        ("supply_voltage", reading("0 V", power_state="off")),
        ("standby_bus", reading("0 V")),
        ("standby_bus", reading("0 V", supply="230 V")),
        ("standby_bus", reading("0 V", supply="0 V")),
        ("standby_bus", reading("3 V", supply="230 V", power_state="live")),
        ("standby_bus", reading("0 V", supply="230 V", power_state="off")),
        ("band", reading("0 V")),
    ],
)
def test_no_voltage_is_never_taken_as_proof_of_dead(
    kind: str, told: ReadingFor, make_check: MakeCheck
) -> None:
    verdict = judge(make_check(kind), told, None, {}, None)

    assert verdict.result != "pass"
    assert "does not prove the circuit dead" in verdict.reason


def test_a_discharged_bank_passes_its_limit_without_a_word_of_safety(
    make_check: MakeCheck,
) -> None:
    check = make_check("band", low=None, high="50 V")

    verdict = judge(check, reading("3 V", power_state="off"), None, {}, None)

    assert verdict.result == "pass"
    assert "does not prove the circuit dead" in verdict.reason
    assert "safe" not in verdict.reason


def test_a_resistance_in_a_band_needs_the_power_known_off(
    make_check: MakeCheck,
) -> None:
    check = make_check("band", low="2 ohm", high="4 ohm")

    unknown = judge(check, reading("3 ohm"), None, {}, None)
    live = judge(check, reading("3 ohm", power_state="live"), None, {}, None)
    off = judge(check, reading("3 ohm", power_state="off"), None, {}, None)

    assert (unknown.result, unknown.missing) == ("no_verdict", ("power off",))
    assert (live.result, live.missing) == ("no_verdict", ("power off",))
    assert off.result == "pass"


def test_mode_and_state_must_hold_too(make_check: MakeCheck) -> None:
    check = make_check(
        "band", mode="heat", while_state="standby", requires=("call present",)
    )
    told = reading("14 V", power_state="live")
    all_true = dict.fromkeys(requirements(check), True)

    assert requirements(check) == ("call present", "mode heat", "standby")
    assert judge(check, told, None, all_true, None).result == "pass"
    for name in requirements(check):
        for state in (None, False):
            verdict = judge(check, told, None, all_true | {name: state}, None)
            assert (verdict.result, verdict.missing) == ("no_verdict", (name,))


def test_a_band_without_limits_gets_no_verdict(make_check: MakeCheck) -> None:
    check = make_check("band", low=None, high=None)

    assert judge(check, reading("3 V"), None, {}, None).result == "no_verdict"


def test_a_band_the_wrong_way_round_gets_no_verdict(make_check: MakeCheck) -> None:
    check = make_check("band", low="16 V", high="12 V")

    verdict = judge(check, reading("14 V"), None, {}, None)

    assert verdict.result == "no_verdict"
    assert "lies above the high limit" in verdict.reason


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    st.fixed_dictionaries(
        {
            name: st.sampled_from([True, False, None])
            for name in ("sensor unplugged", "power off", "temperature at the sensor")
        }
    ),
    st.sampled_from(["off", "live", None]),
    st.booleans(),
)
def test_a_verdict_is_given_only_when_everything_holds(
    make_check: MakeCheck,
    coil: Sensor,
    context: dict[str, bool | None],
    power: Any,
    warm: bool,
) -> None:
    told = replace(at_25("10 kohm") if warm else reading("10 kohm"), power_state=power)

    verdict = judge(make_check("thermistor"), told, coil, context, None)

    off = power == "off" or (power is None and context["power off"] is True)
    at_sensor = warm and context["temperature at the sensor"] is not False
    ready = off and at_sensor and context["sensor unplugged"] is True
    assert (verdict.result != "no_verdict") == ready
    assert bool(verdict.missing) == (not ready)
