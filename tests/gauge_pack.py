"""An invented maker's pack with checks of gauges, sensors and air."""

from __future__ import annotations

import json
from typing import Any

from assistant.rules.pack import Pack

_TECHNICIANS = ["technician", "licensed technician"]


def _check(kind: str, gid: str, **more: Any) -> dict[str, Any]:
    return {
        "id": gid,
        "kind": kind,
        "name": gid.replace("-", " "),
        "needs": "gauges",
        "minutes": 10,
        "allowed_for": _TECHNICIANS,
        "ask": "What is read?",
        "outcomes": [
            {"result": "pass", "says": "It is as the document says."},
            {"result": "fail", "says": "It is not as the document says."},
        ],
        **more,
    }


def _sensor(gid: str, role: str) -> dict[str, Any]:
    return {
        "id": gid,
        "kind": "beta",
        "name": f"{role} sensor",
        "role": role,
        "tolerance": "3 %",
        "r0": "10 kohm",
        "t0": "25 degC",
        "beta": "3950 K",
    }


def gauge_pack(**charge: Any) -> Pack:
    """Return the pack; `charge` changes its superheat check."""
    superheat = {
        "refrigerant": "R-410A",
        "mode": "cool",
        "port": "large line",
        "metering": "valve outdoors",
        "speed": "inverter",
        "charge_test": "charge mode of the service switch",
        "low": "5 K difference",
        "high": "9 K difference",
    }
    written = {
        "head": {
            "schema": 1,
            "id": "lab",
            "version": "1",
            "title": "Laboratory unit",
            "kind": "maker",
            "applies_to": [{"models": ["LAB-##"]}],
            "documents": {"manual": {"title": "Laboratory manual", "revision": "A"}},
        },
        "sensors": [_sensor("room", "room"), _sensor("suction", "suction")],
        "checks": [
            _check("superheat", "charge-superheat", **(superheat | charge)),
            _check(
                "temperature_split",
                "cooling-split",
                mode="cool",
                low="8 K difference",
                high="12 K difference",
                wet_bulb_low="16 degC",
                wet_bulb_high="19 degC",
            ),
            _check(
                "two_sensors",
                "room-and-suction",
                needs="power_off",
                sensors=["room", "suction"],
                largest="2 K difference",
            ),
            _check(
                "divider",
                "room-voltage",
                needs="live",
                says=["room sensor voltage"],
                sensor="room",
                logic="5 V",
                fixed="10 kohm",
                sensor_to="ground",
                points="CN3 1-2",
            ),
        ],
    }
    return Pack.model_validate_json(json.dumps(written))
