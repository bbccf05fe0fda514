"""Must-refuse cells of the bench: a reading with what is missing, and why."""

from __future__ import annotations

import pytest

from assistant.checks.registry import run_named

DIODES = "U: 0.4 V; V: 0.4 V; W: 0.4 V"
OHMS = "U-V: 0.65 ohm; V-W: 0.65 ohm; U-W: 0.65 ohm"
PINS = "Vs: 280 V to 380 V; Vcc: 13 V to 17 V; Vsp: 1 V to 6 V"
READ = "Vs: 310 V; Vcc: 15 V; Vsp: 3 V"
BENCH = {"power": "off", "disconnected": "yes"}
TEST = {"start": "3.8 MPa", "t_start": "27 C", "t_end": "20 C", "end": "3.7 MPa"}
HOLD = {"readings": "0 min: 300 micron; 5 min: 310 micron; 9 min: 312 micron"}
TABLE = {
    "rows": "25 C; 35 C",
    "columns": "20 C; 27 C",
    "cells": "0.8 MPa, 0.9 MPa | 0.9 MPa, 1.0 MPa",
    "row": "30 C",
    "column": "24 C",
    "reading": "0.9 MPa",
}
SWITCH = {"pressure": "2 MPa", "opens": "4.1 MPa", "closes": "3.2 MPa"}
GAUGE = {"full_scale": "5.5 MPa", "gauge_class": "1 %"}
CHARGE = {"proved": "yes", "every_bank": "yes", "isolated": "yes", "fan_still": "yes"}

# Check, what is told, what is missing, a word of the reason.
CELLS = [
    ("phase-loss", {"volts": "230; 231; 229 V"}, "three currents", "voltages"),
    ("phase-loss", {"amps": "14; 14; 14 A"}, "compressor running", "under load"),
    ("current-unbalance", {"amps": "9; 9; 9 A", "limit": "10 %"},
     "compressor running", "not known"),
    ("current-unbalance", {"amps": "9; 9; 9 A", "limit": "10 %", "running": "no"},
     "compressor running", "does not"),
    ("stored-charge", {"reading": "0 V"}, "meter proved", "does not prove"),
    ("stored-charge", {"reading": "0 V"} | CHARGE | {"proved": "no"},
     "meter proved", "does not"),
    ("stored-charge", {"reading": "3 V"} | CHARGE | {"every_bank": "no"},
     "every marked bank", "does not"),
    ("stored-charge", {"reading": "3 V"} | CHARGE | {"fan_still": "no"},
     "outdoor fan", "does not"),
    ("stored-charge", {"reading": "3 V"} | CHARGE | {"isolated": "no"},
     "isolated", "does not"),
    ("module-diodes", {"readings": DIODES, "dead": "yes", "meter": "digital",
                       "disconnected": "yes"}, "power off", "not known"),
    ("module-diodes", BENCH | {"readings": DIODES, "meter": "digital"},
     "bus measured dead", "not known"),
    ("module-diodes", BENCH | {"readings": DIODES, "dead": "yes"},
     "digital meter", "not known"),
    ("module-diodes", {"readings": DIODES, "dead": "yes", "meter": "digital",
                       "power": "off", "disconnected": "no"},
     "module disconnected", "does not"),
    ("module-diodes", BENCH | {"readings": "U: OL; V: OL; W: OL", "dead": "yes",
                               "meter": "digital"}, "reading", "wrong way round"),
    ("reactor", {"reading": "0.2 ohm"}, "power off", "not accepted"),
    ("reactor", {"reading": "0.2 ohm", "power": "live"}, "power off", "taken live"),
    ("reactor", {"reading": "0.2 ohm", "power": "off"}, "leads", "beside it"),
    ("reactor", BENCH | {"reading": "0.2 ohm"}, "document's limit", "document only"),
    ("communication-line", {"readings": "1 V; 14 V; 19 V"}, "document's rule",
     "this unit's document only"),
    ("communication-line", {"readings": "1 V; 14 V; 19 V", "healthy": "swings"},
     "mains", "not known"),
    ("communication-line", {"readings": "1 V; 14 V", "healthy": "swings",
                            "mains": "yes"}, "reading", "three times"),
    ("winding-balance", {"readings": OHMS, "limit": "2 %", "disconnected": "yes"},
     "power off", "not known"),
    ("winding-balance", {"readings": OHMS, "limit": "2 %", "disconnected": "yes",
                         "power": "live"}, "power off", "taken live"),
    ("winding-balance", {"readings": OHMS, "limit": "2 %", "power": "off"},
     "module disconnected", "not known"),
    ("winding-balance", BENCH | {"readings": OHMS}, "document's limit", "no limit"),
    ("winding-balance", BENCH | {"readings": "U: OL; V: OL; W: OL", "limit": "2 %"},
     "reading U", "protector"),
    ("single-phase-windings", {"cs": "11 ohm", "cr": "4 ohm", "sr": "15 ohm"},
     "power off", "not accepted"),
    ("single-phase-windings", {"cs": "OL", "cr": "OL", "sr": "15 ohm", "power": "off"},
     "compressor cool", "overload is open"),
    ("insulation", BENCH | {"reading": "1 Mohm", "vacuum": "no"},
     "document's limit", "500 times"),
    ("insulation", BENCH | {"reading": "9 Mohm", "low": "1 Mohm", "vacuum": "yes"},
     "not under vacuum", "does not"),
    ("insulation", BENCH | {"reading": "9 Mohm", "low": "1 Mohm"},
     "not under vacuum", "not known"),
    ("insulation", {"reading": "9 Mohm", "low": "1 Mohm", "vacuum": "no",
                    "power": "off", "disconnected": "no"},
     "module disconnected", "does not"),
    ("insulation", BENCH | {"reading": "OL", "low": "1 Mohm", "vacuum": "no"},
     "reading", "end of the range"),
    ("insulation-40", {"reading": "9 Mohm", "temperature": "20 C"},
     "open motor", "not told"),
    ("insulation-40", {"reading": "9 Mohm", "temperature": "20 C",
                       "motor": "hermetic"}, "open motor", "uncorrected"),
    ("fan-pins", {"table": PINS, "readings": READ, "mains": "yes"},
     "header unplugged", "not known"),
    ("fan-pins", {"table": PINS, "readings": READ, "mains": "yes",
                  "unplugged": "no"}, "header unplugged", "does not"),
    ("fan-pins", {"table": PINS, "readings": READ, "unplugged": "yes"},
     "mains", "not known"),
    ("fan-pins", {"table": PINS, "readings": "Vs: 310 V; Vcc: 15 V", "mains": "yes",
                  "unplugged": "yes"}, "reading Vsp", "speed command"),
    ("fan-pins", {"table": PINS, "readings": "Vs: 310 V", "mains": "yes",
                  "unplugged": "yes"}, "reading Vcc", "every supply"),
    ("capacitor", BENCH | {"reading": "34 uF", "rated": "35 uF"},
     "capacitor discharged", "not known"),
    ("capacitor", {"reading": "34 uF", "rated": "35 uF", "power": "off",
                   "discharged": "yes", "disconnected": "no"},
     "leads disconnected", "does not"),
    ("capacitor", {"amps": "4 A", "volts": "370 V", "rated": "30 uF"},
     "mains frequency", "differ by a fifth"),
    ("coil", {"reading": "46 ohm", "low": "42 ohm", "high": "50 ohm",
              "disconnected": "yes"}, "power off", "not known"),
    ("coil", BENCH | {"reading": "46 ohm", "low": "42 ohm", "high": "50 ohm",
                      "stated_at": "20 C"}, "temperature at the coil", "not known"),
    ("switch", BENCH | {"reading": "0.2 ohm", "must_be": "open"},
     "the document names", "not known"),
    ("switch", {"reading": "0.2 ohm", "must_be": "open", "in_state": "yes",
                "power": "off"}, "leads disconnected", "not known"),
    ("pressure-switch", SWITCH, "gauge's class", "full scale"),
    ("pressure-switch", SWITCH | GAUGE | {"reading": "0.2 ohm"},
     "power off", "isolated"),
    ("wiring", {"table": "1-1; 2-2", "found": "1-1; 2-2"}, "power off", "isolated"),
    ("conductors", {"readings": "1: 1 ohm; 2: 1 ohm; 3: 1 ohm"},
     "power off", "not accepted"),
    ("nitrogen-test", TEST, "gauge's class", "full scale"),
    ("vacuum-decay", HOLD, "isolated from the pump", "pump on"),
    ("vacuum-decay", HOLD | {"isolated": "yes"}, "document's target", "no pass"),
    ("vacuum-decay", HOLD | {"isolated": "yes", "target": "500 micron"},
     "document's time", "no pass"),
    ("vacuum-decay", HOLD | {"isolated": "yes", "target": "500 micron",
                             "hold": "20 min"}, "whole time", "not over"),
    ("charge-table", {"parts": "2.3; 0.4 kg", "total": "2.9 kg", "last_digit": "0.1kg"},
     "unit's plate", "contradicts itself"),
    (
        "baseline-drift",
        {"reading": "8 A", "baseline": "9 A", "allowed": "2 A"},
        "conditions of the baseline",
        "only under",
    ),
    ("standby-bus", {"supply": "230 V", "reading": "9 V"}, "call present", "unfed"),
    ("pressure-table", TABLE, "fixed speed", "fixed speed"),
    ("pressure-table", TABLE | {"fixed_speed": "yes"}, "tolerance", "not told"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "given", "lacking", "why"), CELLS)
def test_no_verdict_is_given_and_what_is_missing_is_named(
    name: str, given: dict[str, str], lacking: str, why: str
) -> None:
    report = run_named(name, given)

    assert report.result == "no_verdict"
    assert any(lacking in item for item in report.missing)
    assert why in report.reason


def test_the_matrix_has_its_cells() -> None:
    assert len(CELLS) >= 40
    assert len({(name, str(given)) for name, given, _, _ in CELLS}) == len(CELLS)


@pytest.mark.parametrize(("name", "given"), [cell[:2] for cell in CELLS])
def test_no_refusal_says_what_is_never_said(name: str, given: dict[str, str]) -> None:
    reason = run_named(name, given).reason.casefold()

    for never in ("safe to touch", "low on refrigerant", "warranty", "one more reset"):
        assert never not in reason
