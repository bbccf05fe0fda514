"""Readings of sensors, gauges and air that carry no verdict, each with its reason.

Each row is a reading with something unknown or wrong about it: the cell that a rule of
thumb would fill and that must stay empty.
"""

from __future__ import annotations

import pytest

from assistant.checks.registry import run_named

LIMITS = {"low": "8 F difference", "high": "16 F difference"}
SUCTION = LIMITS | {"refrigerant": "R-410A", "pressure": "118 psig", "line": "52 °F"}
LIQUID = LIMITS | {"refrigerant": "R-410A", "pressure": "340 psig", "line": "95 °F"}
GAS = LIMITS | {"refrigerant": "R-410A", "pressure": "340 psig", "line": "165 °F"}
PLACE = {"mode": "cool", "metering": "valve indoors"}
FIXED = {"speed": "fixed"}
INVERTER = {"speed": "inverter"}
TARGET = {"outdoor": "95 F", "wet_bulb": "67 F", "superheat": "13 F difference"}
SPLIT = {
    "return": "75 °F",
    "supply": "57 °F",
    "low": "15 F difference",
    "high": "20 F difference",
    "wet_bulb_low": "61 °F",
    "wet_bulb_high": "65 °F",
}
HUMID = SPLIT | {"mode": "cool", "wet_bulb": "63 °F"}
SENSOR = {"r0": "10 kohm", "t0": "25 °C", "beta": "3950 K", "tolerance": "5 %"}
HIGH_OHM = SENSOR | {"r0": "250 kohm", "t0": "20 °C", "beta": "4057 K"}
BOARD = SENSOR | {
    "logic": "5 V",
    "fixed": "10 kohm",
    "temperature": "25 °C",
    "reading": "2.5 V",
}
TWO = SENSOR | {
    "first": "10 kohm",
    "second": "8 kohm",
    "largest": "2 K difference",
}
APPROACH = {"line": "103 °F", "outdoor": "95 °F", "high": "9 F difference"}
DUCT = {"supply": "0.5 inwc", "return": "-0.4 inwc", "plate": "0.5 inwc"}

Cell = tuple[str, dict[str, str], str]
CELLS: dict[str, Cell] = {
    "superheat, no mode told": (
        "superheat",
        SUCTION | FIXED | {"port": "large line", "metering": "valve indoors"},
        "without mode",
    ),
    "superheat, no port told": ("superheat", SUCTION | PLACE | FIXED, "without port"),
    "superheat, no valve told": (
        "superheat",
        SUCTION | FIXED | {"mode": "cool", "port": "large line"},
        "without metering",
    ),
    "superheat, speed not told": (
        "superheat",
        SUCTION | PLACE | {"port": "large line"},
        "without speed",
    ),
    "superheat at the large line in heating": (
        "superheat",
        SUCTION | PLACE | FIXED | {"mode": "heat", "port": "large line"},
        "the large line is the high side",
    ),
    "superheat at the small line": (
        "superheat",
        SUCTION | PLACE | FIXED | {"port": "small line", "steady": "yes"},
        "not read at the small line",
    ),
    "superheat at the discharge pipe": (
        "superheat",
        SUCTION | PLACE | FIXED | {"port": "discharge pipe", "steady": "yes"},
        "not read at the discharge pipe",
    ),
    "superheat, not known to run steadily": (
        "superheat",
        SUCTION | PLACE | FIXED | {"port": "large line"},
        "not known: running steadily",
    ),
    "superheat, just started": (
        "superheat",
        SUCTION | PLACE | FIXED | {"port": "large line", "steady": "no"},
        "does not: running steadily",
    ),
    "superheat of an inverter without a charge test": (
        "superheat",
        SUCTION | PLACE | INVERTER | {"port": "large line", "steady": "yes"},
        "outside the maker's charge test",
    ),
    "superheat of an inverter with the charge test not running": (
        "superheat",
        SUCTION | PLACE | INVERTER | {"port": "large line", "test": "no"},
        "outside the maker's charge test",
    ),
    "superheat of an inverter in heating at the suction, no test": (
        "superheat",
        SUCTION | PLACE | INVERTER | {"mode": "heat", "port": "suction pipe"},
        "outside the maker's charge test",
    ),
    "subcooling in cooling with the valve outdoors": (
        "subcooling",
        LIQUID
        | FIXED
        | {
            "mode": "cool",
            "metering": "valve outdoors",
            "port": "small line",
            "steady": "yes",
        },
        "no subcooling at the service valves",
    ),
    "subcooling in the charge test with the valve outdoors": (
        "subcooling",
        LIQUID
        | INVERTER
        | {
            "mode": "cool",
            "metering": "valve outdoors",
            "port": "small line",
            "test": "yes",
        },
        "no subcooling at the service valves",
    ),
    "subcooling at the large line": (
        "subcooling",
        LIQUID | PLACE | FIXED | {"port": "large line", "steady": "yes"},
        "not read at the large line",
    ),
    "subcooling in heating with the valve indoors": (
        "subcooling",
        LIQUID | PLACE | FIXED | {"mode": "heat", "port": "small line"},
        "already carries a mixture",
    ),
    "subcooling in heating with an orifice indoors": (
        "subcooling",
        LIQUID
        | FIXED
        | {"mode": "heat", "metering": "fixed orifice indoors", "port": "small line"},
        "already carries a mixture",
    ),
    "subcooling of an inverter outside its test": (
        "subcooling",
        LIQUID | PLACE | INVERTER | {"port": "small line"},
        "outside the maker's charge test",
    ),
    "subcooling with nothing told but two readings": (
        "subcooling",
        LIQUID,
        "no verdict on the charge without mode, port, metering, speed",
    ),
    "discharge superheat at the large line in cooling": (
        "discharge-superheat",
        GAS | PLACE | FIXED | {"port": "large line", "steady": "yes"},
        "carries no hot gas in cooling",
    ),
    "discharge superheat of an inverter outside its test": (
        "discharge-superheat",
        GAS | PLACE | INVERTER | {"port": "discharge pipe"},
        "outside the maker's charge test",
    ),
    "approach, not known to cool": ("approach", APPROACH, "running in cooling"),
    "approach, in heating": (
        "approach",
        APPROACH | {"cooling": "no", "steady": "yes"},
        "does not: running in cooling",
    ),
    "approach, not steady": (
        "approach",
        APPROACH | {"cooling": "yes"},
        "not known: running steadily",
    ),
    "target superheat of an inverter": (
        "target-superheat",
        TARGET | {"speed": "inverter", "metering": "fixed orifice"},
        "sets its own superheat",
    ),
    "target superheat with an expansion valve": (
        "target-superheat",
        TARGET | {"speed": "fixed", "metering": "expansion valve"},
        "sets its own superheat",
    ),
    "target superheat, metering not told": (
        "target-superheat",
        TARGET | {"speed": "fixed", "airflow": "yes", "steady": "yes"},
        "metering",
    ),
    "target superheat, airflow not known": (
        "target-superheat",
        TARGET | {"speed": "fixed", "metering": "fixed orifice", "steady": "yes"},
        "300 cfm a ton",
    ),
    "target superheat, not settled": (
        "target-superheat",
        TARGET | {"speed": "fixed", "metering": "fixed orifice", "airflow": "yes"},
        "settled for 15 minutes",
    ),
    "split, mode not told": ("temperature-split", SPLIT, "holds for a mode"),
    "split, humidity not told": (
        "temperature-split",
        SPLIT | {"mode": "cool", "full_speed": "yes", "airflow": "yes"},
        "indoor wet bulb",
    ),
    "split, airflow not known": (
        "temperature-split",
        HUMID | {"full_speed": "yes"},
        "airflow as stated",
    ),
    "split, not at full speed": (
        "temperature-split",
        HUMID | {"full_speed": "no", "airflow": "yes"},
        "full speed",
    ),
    "split, humidity outside the document's figures": (
        "temperature-split",
        HUMID | {"wet_bulb": "70 °F", "full_speed": "yes", "airflow": "yes"},
        "hold for an indoor wet bulb",
    ),
    "static pressure, fan speed not known": (
        "static-pressure",
        DUCT,
        "fan at the speed of the plate",
    ),
    "room by another rule": (
        "room-area",
        {
            "charge": "2 kg",
            "lfl": "0.307 kg/m3",
            "height": "1.8 m",
            "rule": "other",
        },
        "local code uses another rule",
    ),
    "room without its flammability limit": (
        "room-area",
        {"charge": "2 kg", "height": "1.8 m"},
        "needs lfl",
    ),
    "sensor voltage, board not known to be on": (
        "sensor-voltage",
        BOARD,
        "not known: board powered",
    ),
    "sensor voltage, board off": (
        "sensor-voltage",
        BOARD | {"board_on": "no"},
        "does not: board powered",
    ),
    "sensor voltage without a stated tolerance": (
        "sensor-voltage",
        {
            "points": "0 °C: 33 kohm; 50 °C: 3.6 kohm",
            "logic": "5 V",
            "fixed": "10 kohm",
            "temperature": "40 °C",
            "reading": "1.7 V",
            "board_on": "yes",
        },
        "states no tolerance",
    ),
    "two sensors, one temperature not known": (
        "two-sensors",
        TWO | {"power": "off"},
        "not known: sensors at one temperature",
    ),
    "two sensors at two temperatures": (
        "two-sensors",
        TWO | {"power": "off", "same": "no"},
        "does not: sensors at one temperature",
    ),
    "two sensors, power not known": (
        "two-sensors",
        TWO | {"same": "yes"},
        "not known: power off",
    ),
    "two sensors, taken live": (
        "two-sensors",
        TWO | {"same": "yes", "power": "live"},
        "taken live",
    ),
    "two sensors, both OL": (
        "two-sensors",
        TWO | {"same": "yes", "power": "off", "first": "OL", "second": "OL"},
        "both show OL",
    ),
    "OL on a sensor that reads hundreds of kilohms": (
        "two-sensors",
        HIGH_OHM
        | {
            "first": "240 kohm",
            "second": "OL",
            "largest": "2 K difference",
            "same": "yes",
            "power": "off",
        },
        "not proof of an open sensor",
    ),
}


@pytest.mark.parametrize("cell", list(CELLS))
def test_no_verdict_is_given_and_the_reason_is_said(cell: str) -> None:
    name, given, reason = CELLS[cell]

    report = run_named(name, given)

    assert report.result == "no_verdict"
    assert reason in report.reason


def test_the_matrix_is_large_enough() -> None:
    assert len(CELLS) >= 40
    assert len({(name, tuple(given.items())) for name, given, _ in CELLS.values()}) == (
        len(CELLS)
    )


@pytest.mark.parametrize(
    "cell",
    [
        cell
        for cell in CELLS
        if "outside its test" in cell or "without a charge" in cell
    ],
)
def test_an_inverter_outside_its_test_still_gets_the_figure(cell: str) -> None:
    name, given, _ = CELLS[cell]

    report = run_named(name, given)

    assert report.value is not None
    assert report.missing == ("charge test running",)


def test_one_pressure_is_never_a_word_on_the_charge() -> None:
    for name, given, _ in CELLS.values():
        text = run_named(name, given).reason.casefold()
        assert "low on" not in text
        assert "undercharge" not in text
