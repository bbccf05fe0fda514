"""What a pack may write of gauges, sensors and air, and what is sent back."""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from assistant.checks.judge import judge, requirements
from assistant.checks.kinds import Check, Meter
from assistant.checks.reading import ReadingFor
from assistant.rules.safe_steps import check_power_order
from assistant.units.parse import parse_quantity

CHARGE = {
    "kind": "superheat",
    "refrigerant": "r410a",
    "mode": "cool",
    "port": "large line",
    "metering": "valve indoors",
    "speed": "fixed",
    "low": "5 K difference",
    "high": "9 K difference",
}
SPLIT = {
    "kind": "temperature_split",
    "mode": "cool",
    "low": "8 K difference",
    "high": "12 K difference",
    "wet_bulb_low": "16 degC",
    "wet_bulb_high": "19 degC",
}


def written(**more: Any) -> Check:
    base = {
        "id": "the-check",
        "name": "the check",
        "needs": "gauges",
        "minutes": 10,
        "allowed_for": ("technician",),
        "ask": "what is read?",
        "outcomes": ({"result": "pass", "says": "good"},),
    }
    found: Check = TypeAdapter(Check).validate_python(base | more)
    return found


def readings(pressure: str, line: str) -> ReadingFor:
    told = (
        ("suction pressure", parse_quantity(pressure)),
        ("suction temperature", parse_quantity(line)),
    )
    return ReadingFor(value=told[-1][1], set_of=told)


def test_a_refrigerant_is_kept_by_its_own_name() -> None:
    assert written(**CHARGE).refrigerant == "R-410A"  # type: ignore[union-attr]


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"refrigerant": "R-999"}, "no saturation table"),
        ({"mode": None}, "names its `mode`"),
        ({"mode": "defrost"}, "names its `mode`"),
        ({"low": "9 K difference", "high": "5 K difference"}, "is below"),
        ({"low": "9 K"}, "expected a temperature difference"),
        ({"port": "somewhere"}, "large line"),
    ],
)
def test_a_charge_check_that_cannot_be_judged_is_refused(
    change: dict[str, Any], told: str
) -> None:
    with pytest.raises(ValidationError, match=told):
        written(**(CHARGE | change))


@pytest.mark.parametrize(
    ("change", "told"),
    [
        ({"mode": None}, "names its `mode`"),
        ({"wet_bulb_low": None}, "states its `wet_bulb_low`"),
        ({"wet_bulb_low": "20 degC"}, "is below"),
    ],
)
def test_a_split_without_its_humidity_is_refused(
    change: dict[str, Any], told: str
) -> None:
    with pytest.raises(ValidationError, match=told):
        written(**(SPLIT | change))


def test_in_heating_a_split_needs_no_humidity() -> None:
    check = written(
        kind="temperature_split", mode="heat", low="10 K difference", needs="look"
    )

    assert requirements(check) == ("full speed", "airflow as stated", "mode heat")


def test_a_check_asks_for_all_that_it_rests_on() -> None:
    fixed, inverter = (
        requirements(written(**(CHARGE | {"speed": speed, "charge_test": "SW3-1"})))
        for speed in ("fixed", "inverter")
    )

    assert fixed == ("gauge at the named port", "running steadily", "mode cool")
    assert inverter == ("gauge at the named port", "charge test running", "mode cool")


def test_a_poor_gauge_cannot_pass_a_narrow_band() -> None:
    # 0.5 % of 500 psi and 1.0 °F give U = 1.72 °F, worked by hand beside the law:
    # the band is narrower than twice that.
    check = written(
        **(CHARGE | {"low": "10.2 F difference", "high": "13.2 F difference"})
    )
    context = dict.fromkeys(requirements(check), True)
    gauge = Meter(
        percent=0,
        digits=25,
        resolution=parse_quantity("0.1 psi"),
        thermometer=1.0 / 1.8,
    )

    verdict = judge(check, readings("118 psig", "52 degF"), None, context, gauge)

    assert verdict.uncertainty is not None
    assert verdict.uncertainty * 1.8 == pytest.approx(1.72, abs=0.01)
    assert verdict.result == "inconclusive"


def test_a_pressure_told_as_absolute_is_not_taken_as_gauge() -> None:
    check = written(**CHARGE)
    context = dict.fromkeys(requirements(check), True)

    by_gauge, by_absolute = (
        judge(check, readings(told, "52 degF"), None, context, None)
        for told in ("118 psig", "132.7 psia")
    )

    assert by_gauge.value == pytest.approx(by_absolute.value, abs=0.01)
    assert "taken as gauge" in by_gauge.reason
    assert "taken as absolute" in by_absolute.reason


@pytest.mark.parametrize(
    ("pressure", "line"), [("118 V", "52 degF"), ("118 psig", "52 psig")]
)
def test_a_reading_of_another_kind_gets_no_verdict(pressure: str, line: str) -> None:
    check = written(**CHARGE)
    context = dict.fromkeys(requirements(check), True)

    verdict = judge(check, readings(pressure, line), None, context, None)

    assert verdict.result == "no_verdict"
    assert "is not a" in verdict.reason


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (CHARGE | {"needs": "live"}, "read with gauges"),
        (
            {
                "kind": "two_sensors",
                "sensors": ("a", "b"),
                "largest": "2 K difference",
                "needs": "live",
            },
            "never measured live",
        ),
        (
            {
                "kind": "divider",
                "sensor": "a",
                "logic": "5 V",
                "fixed": "10 kohm",
                "sensor_to": "ground",
                "points": "CN3",
                "needs": "power_off",
            },
            "only while the supply is on",
        ),
    ],
)
def test_a_pack_that_asks_for_the_wrong_power_state_is_sent_back(
    more: dict[str, Any], told: str
) -> None:
    found = [finding.what for finding in check_power_order(written(**more))]

    assert any(told in what for what in found)
