"""Writes rule packs of an invented maker into folders, for tests."""

from __future__ import annotations

from pathlib import Path

PACK = """\
schema: 1
id: quellmar
version: "1.0"
title: Quellmar QM wall units
kind: maker
applies_to:
  - models: ["QM-(24,36)*"]
    voltage: "230"
documents:
  service: {title: QM service manual, revision: B}
  bulletin: {title: QM bulletin 7, revision: A}
supersedes:
  - by: amber-4-late
    rows: [amber-4]
    doc: bulletin
    page: 1
    quote: "replaces the row for 4 flashes"
"""

SIGNALS = """\
- id: amber-4
  kind: count_per_window
  lamp: {board: outdoor main, label: LD2, colour: amber}
  count: 4
  window: 10 s
  meaning: discharge sensor out of range
  is_fault: true
  causes: [discharge-sensor, main-board]
  waits: [restart-delay]
  source: {doc: service, page: 31, quote: "4 flashes"}
- id: amber-4-late
  kind: count_per_window
  applies_to:
    - board_mark: orange dot
  lamp: {board: outdoor main, label: LD2, colour: amber}
  count: 4
  window: 10 s
  meaning: outdoor fan blocked
  is_fault: true
  causes: [main-board]
  source: {doc: bulletin, page: 1, quote: "4 flashes"}
- id: green-on
  kind: steady
  lamp: {board: outdoor main, label: LD1, colour: green}
  meaning: supply present
  is_fault: false
  source: {doc: service, page: 30, quote: "lit"}
- id: code-e4
  kind: display_code
  code: "E4"
  meaning: discharge sensor
  is_fault: true
  causes: [discharge-sensor]
  source: {doc: service, page: 33, quote: "E4"}
- id: grid-1
  kind: several_lamps
  lamps:
    - {lamp: {label: run}, state: "on"}
    - {lamp: {label: timer}, state: flash}
  meaning: coil sensor
  is_fault: true
  source: {doc: service, page: 34, quote: "run lit, timer flashing"}
"""

WAITS = """\
- id: restart-delay
  kind: minimum_off
  name: restart delay
  trigger: compressor_stopped
  minimum: 3 min
  give_up: 10 min
  lamp_during: green-on
  source: {doc: service, page: 12, quote: "3 minutes"}
- id: order
  kind: startup_order
  name: start-up order
  trigger: power_on
  minimum: 15 s
  order:
    - {part: compressor, after: trigger, earliest: 15 s, latest: 20 s}
    - {part: fan, after: compressor, earliest: 5 s, latest: 10 s}
  source: {doc: service, page: 12, quote: "compressor first"}
"""

STOPS = """\
- id: high-pressure
  kind: sliding_window
  name: high pressure stops
  event: high pressure
  limit: 3
  window: 60 min
  edge: counts
  signal: amber-4
  causes: [main-board]
  resets:
    - name: power
      off_at_least: 30 s
      how: open the disconnect
      evidence_lost: the lamp
  source: {doc: service, page: 14, quote: "3 times in 60 minutes"}
"""

SENSORS = """\
- id: discharge-table
  kind: resistance_table
  name: discharge sensor
  role: discharge
  table: discharge.csv
  tolerance: 5 %
  source: {doc: service, page: 40, quote: "Discharge"}
"""

TABLE = """\
temperature degC,resistance kohm,page,quote
0,180,40,"0 180"
20,68,40,"20 68"
60,14.5,40,"60 14.5"
"""

CHECKS = """\
- id: measure-discharge
  kind: thermistor
  name: measure the discharge sensor
  needs: power_off
  minutes: 10
  allowed_for: [technician, licensed technician]
  ask: What does the discharge sensor read, and how warm is it?
  sensor: discharge-table
  requires: [power off, sensor unplugged, temperature at the sensor]
  outcomes:
    - result: pass
      says: the sensor is good
      moves: {discharge-sensor: strongly against, main-board: somewhat for}
    - result: fail
      says: the sensor is out
      moves: {discharge-sensor: strongly for}
  source: {doc: service, page: 41, quote: "measure"}
- id: look-plug
  kind: look
  name: look at the plug
  needs: look
  minutes: 2
  allowed_for: [customer, maintenance, technician]
  ask: Is the plug seated?
  options: [seated, loose]
  outcomes:
    - result: seated
      says: the plug is good
      then: measure-discharge
    - result: loose
      says: seat it
      moves: {discharge-sensor: somewhat against}
  source: {doc: service, page: 41, quote: "plug"}
"""

CAUSES = """\
- id: discharge-sensor
  kind: part
  name: discharge sensor
  frequency: common
  source: {doc: service, page: 31, quote: "sensor"}
- id: main-board
  kind: part
  name: main board
  frequency: rare
  source: {doc: service, page: 31, quote: "board"}
"""

PROCEDURES = """\
- id: no-cooling
  kind: complaint
  complaint: no_cooling
  name: does not cool
  causes: [discharge-sensor]
  first: Is the outdoor unit running?
  source: {doc: service, page: 20, quote: "does not cool"}
"""

CAUTIONS = """\
- id: stored-charge
  kind: caution
  when: panel_off
  text: Measure the bus before touching anything.
  basis: the maker's service manual
  source: {doc: service, page: 2, quote: "charge"}
"""

GOOD = {
    "pack.yaml": PACK,
    "signals.yaml": SIGNALS,
    "waits.yaml": WAITS,
    "stops.yaml": STOPS,
    "sensors.yaml": SENSORS,
    "tables/discharge.csv": TABLE,
    "checks.yaml": CHECKS,
    "causes.yaml": CAUSES,
    "procedures.yaml": PROCEDURES,
    "cautions.yaml": CAUTIONS,
}
"""A whole pack without a mistake: file -> text."""


def write_pack(folder: Path, files: dict[str, str] | None = None) -> Path:
    """Write a pack's files below `folder` and return it."""
    for name, text in (GOOD if files is None else files).items():
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text, encoding="utf-8")
    return folder


def changed(file: str, old: str, new: str) -> dict[str, str]:
    """Return the good pack with the first `old` of one file made `new`."""
    assert old in GOOD[file], f"{old!r} is not in {file}"
    return {**GOOD, file: GOOD[file].replace(old, new, 1)}
