"""Checks and sensors of an invented maker, for the judge."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from pydantic import TypeAdapter

from assistant.checks.kinds import BetaSensor, Check, Meter, ResistanceTable, Sensor

_CHECKS: dict[str, dict[str, object]] = {
    "thermistor": {"sensor": "coil", "requires": ("sensor unplugged",)},
    "supply_voltage": {"nominal": "230 V", "tolerance": "10 %"},
    "standby_bus": {"tolerance": "10 %", "points": "P and N"},
    "band": {"points": "CN4 1-2", "low": "12 V", "high": "16 V"},
    "look": {"options": ("iced", "clear")},
}
Maker = Callable[..., Any]


def _check(kind: str, **more: object) -> Check:
    written: dict[str, object] = {
        "kind": kind,
        "id": "the-check",
        "name": "the check",
        "needs": "power_off",
        "minutes": 4,
        "allowed_for": ("technician",),
        "ask": "what is read?",
        "outcomes": ({"result": "pass", "says": "good"},),
    }
    written |= _CHECKS[kind] | more
    found: Check = TypeAdapter(Check).validate_python(written)
    return found


@pytest.fixture
def make_check() -> Maker:
    return _check


@pytest.fixture
def coil() -> Sensor:
    """Return 10 kohm at 25 °C, B 3950, with a tolerance of 10 %."""
    return BetaSensor.model_validate(
        {
            "kind": "beta",
            "id": "coil",
            "name": "coil sensor",
            "role": "coil",
            "tolerance": "10 %",
            "r0": "10 kohm",
            "t0": "25 °C",
            "beta": "3950 K",
        }
    )


@pytest.fixture
def tabled() -> Sensor:
    """Return a discharge sensor given by three points, 0 to 80 °C."""
    rows = [("0 °C", "600 kohm"), ("40 °C", "110 kohm"), ("80 °C", "26 kohm")]
    return ResistanceTable.model_validate(
        {
            "kind": "resistance_table",
            "id": "discharge",
            "name": "discharge sensor",
            "role": "discharge",
            "tolerance": "10 %",
            "table": "discharge",
            "points": tuple({"temperature": t, "resistance": r} for t, r in rows),
        }
    )


@pytest.fixture
def bench() -> Meter:
    """Return a good meter: 0.5 % + 2 digits of 1 ohm, thermometer to 0.5 K."""
    return Meter.model_validate(
        {"percent": 0.5, "digits": 2, "resolution": "1 ohm", "thermometer": 0.5}
    )
