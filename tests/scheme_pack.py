"""A pack with a row for each way in which boards show states and faults."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

from assistant.rules.loader import load_pack
from assistant.rules.pack import Pack
from assistant.signals.observation import SignalRow
from tests.pack_folders import write_pack
from tests.scheme_lamps import COUNTS, STATES, TOGETHER

HEAD = """\
schema: 1
id: schemes
version: "1.0"
title: Quellmar QS units, every scheme
kind: shop
author: R. Ashdown
date: "2031-02-03"
applies_to:
  - models: ["QS-##*"]
"""

DISPLAYS = """\
- id: code-e4
  kind: display_code
  code: "E4"
  display: {box: remote}
  meaning: discharge sensor
  is_fault: true
  causes: [sensor]
- id: code-a3
  kind: display_code
  code: "A3"
  display: {box: remote}
  meaning: drain level
  is_fault: true
- id: code-a4
  kind: display_code
  code: "A4"
  display: {box: remote}
  meaning: drain pump
  is_fault: true
- id: main-u2-01
  kind: main_sub_code
  code: "U2"
  sub: "01"
  sub_meaning_type: finer cause
  display: {box: remote}
  meaning: supply too high
  is_fault: true
- id: main-u2-02
  kind: main_sub_code
  code: "U2"
  sub: "02"
  sub_meaning_type: finer cause
  display: {box: remote}
  meaning: supply too low
  is_fault: true
- id: main-u4
  kind: main_sub_code
  code: "U4"
  sub_meaning_type: address
  display: {box: remote}
  meaning: no message from an indoor unit
  is_fault: true
- id: place-1-4
  kind: digit_position
  position: 1
  of: 3
  sign: "4"
  display: {box: outdoor}
  meaning: air sensor failed and worked around
  is_fault: true
- id: place-2-blank
  kind: digit_position
  position: 2
  of: 3
  sign: ""
  display: {box: outdoor}
  meaning: no limit active
  is_fault: false
- id: place-3-1
  kind: digit_position
  position: 3
  of: 3
  sign: "1"
  display: {box: outdoor}
  meaning: cooling
  is_fault: false
- id: value-discharge
  kind: display_value
  encoding: point_is_hundred
  low: -30
  high: 130
  unit: °C
  sentinels: {"--": not connected}
  precondition: [switch SW3 on MONITOR]
  display: {box: outdoor}
  meaning: discharge temperature
  is_fault: false
- id: old-e4
  kind: display_code
  code: "E4"
  display: {box: remote}
  stored: true
  meaning: discharge sensor, earlier
  is_fault: true
"""

NOTES = """\
- id: in-turn
  kind: multi_fault
  lamp: {box: remote}
  multi_fault_policy: cyclic
- id: late
  kind: display_delay
  display_delay: 200 s
  delay_trigger: the compressor has stopped
  cancelled_by: [a restart]
- id: history
  kind: stored_history
  lamp: {box: remote}
  entry_steps: [hold CHECK for 5 s, press UP until it beeps]
  depth: 4
  erased_by: [power off for 10 min, 8 good cycles]
  exit: press CHECK once
- id: torn
  kind: lost_counts
  lamp: {box: outdoor, label: R1}
  meanings: [water flow too low, fan stuck]
- id: drain
  kind: code_family
  codes: [A3, A4]
  checks: [look-drain]
"""

CAUSES = """\
- {id: sensor, kind: part, name: discharge sensor, frequency: common}
- {id: board, kind: part, name: board, frequency: rare}
"""

CHECKS = """\
- id: look-drain
  kind: look
  name: drain pan
  needs: look
  minutes: 2
  allowed_for: [customer, maintenance, technician]
  ask: Is the pan dry?
  options: [dry, full]
  outcomes:
    - {result: dry, says: the pan is good}
    - {result: full, says: clear the drain}
"""

SCHEMES = {
    "pack.yaml": HEAD,
    "signals.yaml": STATES + COUNTS + TOGETHER + DISPLAYS + NOTES,
    "causes.yaml": CAUSES,
    "checks.yaml": CHECKS,
}
"""File -> text."""


@cache
def scheme_pack() -> Pack:
    """Return the pack, read by the real loader."""
    with TemporaryDirectory() as folder:
        return load_pack(write_pack(Path(folder), SCHEMES))


def scheme_rows() -> tuple[SignalRow, ...]:
    """Return its rows as the decoder takes them, all for a confirmed unit."""
    pack = scheme_pack()
    return tuple(
        SignalRow(f"schemes/{row.id}", row, "confirmed", pack.head.title)
        for row in pack.rows
    )
