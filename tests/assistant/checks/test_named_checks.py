"""Named checks: what they give, and errors that name the way out."""

from __future__ import annotations

import json

import pytest

from assistant.checks.law import OutOfRangeError
from assistant.checks.registry import CHECKS, listing, run_named, usage
from assistant.checks.report import document
from assistant.errors import FaultleafError, UsageError

BETA = {"r0": "10 kohm", "t0": "25 °C", "beta": "3950 K"}
TABLE = {"points": "20 °C: 25.02 kohm; 25 °C: 20.00 kohm"}
METER = {"percent": "1 %", "digits": "3", "resolution": "0.1 V"}
JUDGED = {"power": "off", "tolerance": "10 %"}

RUNS = [
    ("thermistor-beta", BETA | {"temperature": "40 °C"}, 5301.5, "ohm", None),
    ("thermistor-beta", BETA | {"temperature": "104 F"}, 5301.5, "ohm", None),
    ("thermistor-beta", BETA | {"resistance": "5 kohm"}, 314.61, "K", None),
    (
        "thermistor-beta",
        BETA | JUDGED | {"resistance": "5.2 k", "temperature": "40 C"},
        5200.0,
        "ohm",
        "pass",
    ),
    ("thermistor-table", TABLE | {"temperature": "22.5 °C"}, 22348.0, "ohm", None),
    ("thermistor-table", TABLE | {"resistance": "22 kohm"}, 296.001, "K", None),
    (
        "thermistor-table",
        TABLE | JUDGED | {"resistance": "12 kohm", "temperature": "22.5 C"},
        12e3,
        "ohm",
        "fail",
    ),
    ("supply-voltage", {"nominal": "230 V"}, 230.0, "V", None),
    (
        "supply-voltage",
        METER | {"nominal": "230 V", "reading": "207.4 V"},
        207.4,
        "V",
        "inconclusive",
    ),
    ("standby-bus", {"supply": "230 V"}, 325.27, "V", None),
    (
        "standby-bus",
        {"supply": "230 V", "reading": "250 V", "call": "yes"},
        250.0,
        "V",
        "fail",
    ),
    ("standby-bus", {"supply": "230 V", "reading": "9 V"}, 9.0, "V", "no_verdict"),
    ("supply-sag", {"rest": "240 V", "start": "228 V"}, 12.0, "V", None),
    (
        "supply-sag",
        {"rest": "240 V", "start": "200 V", "largest": "25 V"},
        40.0,
        "V",
        "fail",
    ),
    ("meter-bound", METER | {"reading": "210.5 V"}, 2.405, "V", None),
    (
        "guard-band",
        METER | {"reading": "203.0 V", "low": "207 V"},
        203.0,
        "V",
        "fail",
    ),
    (
        "guard-band",
        {"reading": "14 V", "low": "12 V", "high": "15 V", "u": "2 V"},
        14.0,
        "V",
        "inconclusive",
    ),
]
"""Values as in the references tests; 314.61 K is 41.46 °C, 296.001 K is 22.851 °C."""


@pytest.mark.parametrize(("name", "given", "value", "unit", "result"), RUNS)
def test_a_named_check_gives_the_worked_value(
    name: str, given: dict[str, str], value: float, unit: str, result: str | None
) -> None:
    report = run_named(name, given)

    assert report.value == pytest.approx(value, rel=5e-5)
    assert (report.unit, report.result) == (unit, result)
    assert report.formula
    assert report.source


def test_a_resistance_is_not_judged_until_the_power_is_told() -> None:
    told = BETA | {"resistance": "5.2 kohm", "temperature": "40 °C"}

    report = run_named("thermistor-beta", told)

    assert report.result == "no_verdict"
    assert report.missing == ("power off",)
    assert "say power=off" in report.reason
    live = run_named("thermistor-beta", told | {"power": "live"})
    assert "taken live is not accepted" in live.reason


REFUSED = [
    ("thermistor-bet", {}, "no check 'thermistor-bet'", "thermistor-beta"),
    ("zzz", {}, "no check 'zzz'", "faultleaf check --list"),
    ("supply-voltage", {"nominl": "230 V"}, "no input 'nominl'", "'nominal'"),
    ("supply-voltage", {}, "needs 'nominal'", "nominal='230 V'"),
    ("supply-voltage", {"nominal": "230"}, "nominal='230'", "nominal='230 V'"),
    ("supply-voltage", {"nominal": "230 ohm"}, "not a voltage", "nominal='230 V'"),
    ("thermistor-beta", BETA, "needs a temperature", "temperature='25 °C'"),
    (
        "thermistor-table",
        {"points": "20 °C 25 kohm", "temperature": "20 °C"},
        "lacks a colon",
        "points=",
    ),
    (
        "thermistor-table",
        {"points": "20 V: 25 kohm", "temperature": "20 °C"},
        "not a temperature and resistance",
        "points=",
    ),
    (
        "thermistor-table",
        {"points": "20 °C: 25 kohm", "temperature": "20 °C"},
        "two stated points",
        "thermistor-table points=",
    ),
    (
        "supply-voltage",
        {"nominal": "230 V", "reading": "230 V", "power": "maybe"},
        "power='maybe'",
        "power='off'",
    ),
    (
        "supply-voltage",
        {"nominal": "230 V", "reading": "230 V", "percent": "1 %"},
        "digits, resolution missing",
        "all three",
    ),
    ("meter-bound", METER | {"reading": "230 V", "digits": "2.5"}, "whole", "digits="),
    ("meter-bound", METER | {"reading": "25 °C"}, "share of a temperature", "reading="),
    ("meter-bound", METER | {"reading": "3 ohm"}, "not in the unit", "both in volts"),
    ("guard-band", {"reading": "3 V"}, "needs a limit", "low='207 V'"),
    ("guard-band", {"reading": "3 V", "low": "3 ohm"}, "not in the unit", "both"),
    (
        "guard-band",
        {"reading": "3 V", "low": "5 V", "high": "4 V"},
        "above the high limit",
        "guard-band reading=",
    ),
]


@pytest.mark.parametrize(("name", "given", "what", "hint"), REFUSED)
def test_an_error_names_the_key_and_the_way_out(
    name: str, given: dict[str, str], what: str, hint: str
) -> None:
    with pytest.raises(UsageError) as caught:
        run_named(name, given)

    assert what in caught.value.what
    assert hint in caught.value.hint


def test_a_value_outside_a_laws_range_is_refused_with_the_range() -> None:
    with pytest.raises(OutOfRangeError, match=r"outside 80\.00 V to 690\.0 V"):
        run_named("standby-bus", {"supply": "12 V"})
    with pytest.raises(OutOfRangeError, match=r"outside 20\.00 °C to 25\.00 °C"):
        run_named("thermistor-table", TABLE | {"temperature": "30 °C"})
    assert OutOfRangeError("").exit_code == FaultleafError("").exit_code == 2


@pytest.mark.parametrize(("name", "given"), [run[:2] for run in RUNS])
def test_the_document_has_the_contracts_names(name: str, given: dict[str, str]) -> None:
    printed = document(run_named(name, given))

    names = "schema check inputs value unit low high result reason formula source"
    assert list(printed)[:11] == names.split()
    assert printed["schema"] == 1
    assert printed["inputs"] == given | (
        {"tolerance": "10 %"} if name in {"supply-voltage", "standby-bus"} else {}
    )
    assert json.loads(json.dumps(printed, allow_nan=False)) == printed


def test_a_temperature_is_shown_in_the_unit_it_was_asked_in() -> None:
    fahrenheit = BETA | {"t0": "77 F", "resistance": "10 kohm"}

    assert document(run_named("thermistor-beta", fahrenheit))["shown"] == "77.0 °F"
    celsius = BETA | {"resistance": "10 kohm"}
    assert document(run_named("thermistor-beta", celsius))["shown"] == "25.0 °C"


def test_the_list_tells_how_every_check_is_called() -> None:
    rows = listing()["checks"]

    assert isinstance(rows, list)
    assert [row["name"] for row in rows] == sorted(CHECKS)
    for row in rows:
        assert row["usage"] == usage(CHECKS[row["name"]])
        assert row["limits"]
        assert row["formula"]
        assert row["source"]


@pytest.mark.parametrize("name", sorted(CHECKS))
def test_every_example_of_an_input_can_be_read(name: str) -> None:
    inputs = CHECKS[name].inputs
    every = {item.name: item.example for item in inputs if not item.instead_of}

    assert run_named(name, every).check == name
    for item in inputs:
        if item.instead_of:
            other = every | {item.name: item.example}
            del other[item.instead_of]
            assert run_named(name, other).check == name


def test_the_registry_cannot_be_changed() -> None:
    with pytest.raises(TypeError):
        CHECKS["mine"] = CHECKS["guard-band"]  # type: ignore[index]
