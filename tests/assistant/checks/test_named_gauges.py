"""Named checks of sensors, refrigerant and air: what is typed and what comes out."""

from __future__ import annotations

import pytest

from assistant.checks.law import OutOfRangeError
from assistant.checks.registry import run_named
from assistant.checks.report import document
from assistant.errors import UsageError

FIXED = {
    "mode": "cool",
    "port": "large line",
    "metering": "valve indoors",
    "speed": "fixed",
    "steady": "yes",
}
SUCTION = {"refrigerant": "R-410A", "pressure": "118 psig", "line": "52 °F"}
LIQUID = {"refrigerant": "R-410A", "pressure": "340 psig", "line": "95 °F"}
BAND = {"low": "8 F difference", "high": "16 F difference"}
SENSOR = {"r0": "10 kohm", "t0": "25 °C", "beta": "3950 K"}
BOARD = SENSOR | {"logic": "5 V", "fixed": "10 kohm"}
THREE = "-20 °C: 97060 ohm; 25 °C: 10000 ohm; 48 °C: 3889 ohm"

RUNS = [
    # Values as in the tests of the references; differences in kelvin.
    ("superheat", SUCTION, 12.16 / 1.8, "dK", None),
    ("superheat", SUCTION | FIXED | BAND, 12.16 / 1.8, "dK", "pass"),
    ("subcooling", LIQUID, 9.61 / 1.8, "dK", None),
    (
        "subcooling",
        LIQUID | FIXED | {"port": "small line", "low": "13 F difference"},
        9.61 / 1.8,
        "dK",
        "fail",
    ),
    (
        "discharge-superheat",
        LIQUID | {"line": "165 °F"},
        60.18 / 1.8,
        "dK",
        None,
    ),
    (
        "saturation",
        {"refrigerant": "r410a", "pressure": "118 psi"},
        (39.84 + 459.67) / 1.8,
        "K",
        None,
    ),
    (
        "saturation",
        {"refrigerant": "R-32", "temperature": "0 °C"},
        813101.0 - 101325.0,
        "PaG",
        None,
    ),
    ("approach", {"line": "103 °F", "outdoor": "95 °F"}, 8 / 1.8, "dK", None),
    ("target-superheat", {"outdoor": "95 F", "wet_bulb": "67 F"}, 12 / 1.8, "dK", None),
    (
        "target-superheat",
        {
            "outdoor": "95 F",
            "wet_bulb": "67 F",
            "superheat": "13 F difference",
            "metering": "fixed orifice",
            "speed": "fixed",
            "airflow": "yes",
            "steady": "yes",
        },
        13 / 1.8,
        "dK",
        "pass",
    ),
    (
        "line-set-charge",
        {"length": "12 m", "free": "7.5 m", "rate": "12 g/m"},
        0.054,
        "kg",
        None,
    ),
    (
        "line-set-charge",
        {"length": "5 m", "free": "7.5 m", "rate": "20 g/m", "shorter": "taken out"},
        -0.05,
        "kg",
        None,
    ),
    (
        "room-area",
        {"charge": "2.0 kg", "lfl": "0.307 kg/m3", "height": "0.6 m"},
        34.04,
        "m2",
        None,
    ),
    (
        "room-area",
        {"charge": "1.85 kg", "table": "1.84 kg: 28.81 m2; 1.86 kg: 29.44 m2"},
        29.44,
        "m2",
        None,
    ),
    ("moist-air", {"dry_bulb": "25 °C", "humidity": "50 %"}, 50322.0, "J/kg", None),
    (
        "air-capacity",
        {
            "airflow": "1200 cfm",
            "dry_bulb_in": "80 °F",
            "wet_bulb_in": "67 °F",
            "dry_bulb_out": "58 °F",
            "wet_bulb_out": "56 °F",
        },
        41357.6 * 0.29307107,
        "W",
        None,
    ),
    (
        "temperature-split",
        {"return": "75 °F", "supply": "57 °F", "mode": "cool"},
        10.0,
        "dK",
        None,
    ),
    (
        "static-pressure",
        {"supply": "0.30 inwc", "return": "-0.20 inwc"},
        0.5 * 249.08891,
        "PaG",
        None,
    ),
    (
        "static-pressure",
        {
            "supply": "0.50 inwc",
            "return": "-0.40 inwc",
            "plate": "0.50 inwc",
            "full_fan": "yes",
        },
        0.9 * 249.08891,
        "PaG",
        "fail",
    ),
    (
        "thermistor-steinhart",
        {"points": THREE, "resistance": "4370 ohm"},
        44.992 + 273.15,
        "K",
        None,
    ),
    ("sensor-voltage", BOARD | {"temperature": "25 °C"}, 2.5, "V", None),
    (
        "sensor-voltage",
        BOARD
        | {
            "temperature": "25 °C",
            "reading": "2.52 V",
            "tolerance": "5 %",
            "board_on": "yes",
        },
        2.52,
        "V",
        "inconclusive",
    ),
    (
        "sensor-voltage",
        BOARD
        | {
            "temperature": "25 °C",
            "reading": "4.99 V",
            "tolerance": "5 %",
            "board_on": "yes",
        },
        4.99,
        "V",
        "fail",
    ),
    (
        "two-sensors",
        SENSOR
        | {
            "first": "10 kohm",
            "second": "8 kohm",
            "largest": "2 K difference",
            "same": "yes",
            "power": "off",
        },
        25.0 - 30.108,
        "dK",
        "fail",
    ),
]


@pytest.mark.parametrize(("name", "given", "value", "unit", "result"), RUNS)
def test_a_named_check_of_gauges_or_air_gives_the_worked_value(
    name: str, given: dict[str, str], value: float, unit: str, result: str | None
) -> None:
    report = run_named(name, given)

    assert report.value == pytest.approx(value, rel=2e-3)
    assert (report.unit, report.result) == (unit, result)
    assert report.formula
    assert report.source


def test_a_pressure_without_a_word_is_taken_as_gauge_and_says_so() -> None:
    by_gauge = run_named("saturation", {"refrigerant": "R-32", "pressure": "800 kPa"})
    by_absolute = run_named(
        "saturation", {"refrigerant": "R-32", "pressure": "800 kPa abs"}
    )

    assert "taken as gauge, at sea level" in by_gauge.reason
    assert "taken as absolute" in by_absolute.reason
    assert by_gauge.value is not None
    assert by_absolute.value is not None
    assert by_gauge.value - by_absolute.value > 3.0


def test_inches_of_mercury_are_asked_back() -> None:
    given = {"refrigerant": "R-134a", "pressure": "5 inHg"}

    with pytest.raises(UsageError, match="two ways"):
        run_named("saturation", given)
    vacuum = run_named("saturation", given | {"pressure": "5 inHg vacuum"})
    assert vacuum.value is not None
    assert vacuum.value < 273.15 - 26.0


def test_altitude_lowers_a_saturation_temperature() -> None:
    low = {"refrigerant": "R-134a", "pressure": "10 psig"}
    sea, high = (
        run_named("saturation", given).value
        for given in (low, low | {"altitude": "5000 ft"})
    )

    # 6.66 and 2.08 °F.
    assert sea is not None
    assert high is not None
    assert (sea - high) * 1.8 == pytest.approx(4.58, abs=0.02)


def test_figures_are_shown_in_the_units_they_were_asked_in() -> None:
    report = run_named("saturation", {"refrigerant": "R-410A", "temperature": "40 F"})

    assert document(report)["shown"] == "118.4 psig"
    shown = [row["shown"] for row in document(report)["also"]]  # type: ignore[attr-defined]
    assert shown == ["133.1 psia", "118.8 psig"]


def test_an_unknown_refrigerant_names_the_ones_that_are_kept() -> None:
    with pytest.raises(UsageError, match="no saturation table") as told:
        run_named("saturation", {"refrigerant": "R-999", "pressure": "10 psig"})
    assert "R-410A" in (told.value.hint or "")


@pytest.mark.parametrize(
    ("name", "given"),
    [
        ("saturation", {"refrigerant": "R-410A", "temperature": "75 °C"}),
        ("saturation", {"refrigerant": "R-410A", "pressure": "700 psig"}),
        ("saturation", {"refrigerant": "R-22", "pressure": "0.2 bar abs"}),
        ("target-superheat", {"outdoor": "105 F", "wet_bulb": "60 F"}),
        ("moist-air", {"dry_bulb": "25 °C", "wet_bulb": "26 °C"}),
        ("moist-air", {"dry_bulb": "45 °C", "wet_bulb": "5 °C"}),
        ("room-area", {"charge": "2 kg", "lfl": "0.307 kg/m3", "height": "0.2 m"}),
        ("thermistor-steinhart", {"points": THREE, "temperature": "60 °C"}),
        (
            "room-area",
            {"charge": "2.5 kg", "table": "1.84 kg: 28.81 m2; 2.0 kg: 34.04 m2"},
        ),
    ],
)
def test_outside_what_is_stated_there_is_no_figure(
    name: str, given: dict[str, str]
) -> None:
    with pytest.raises(OutOfRangeError):
        run_named(name, given)
