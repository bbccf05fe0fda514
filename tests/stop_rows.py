"""One invented counter of protection stops for each kind, as a pack writes it.

The maker, its models and every figure are made up. `written` is what stands in
`stops.yaml`; `row` is the counter that the loader makes of it.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from textwrap import indent
from typing import Any

from pydantic import TypeAdapter

from assistant.rules.loader import load_pack
from assistant.rules.pack import Pack
from assistant.timing.stop_kinds import Stop
from assistant.timing.stop_values import StopRow
from tests.pack_folders import write_pack

_STOP: TypeAdapter[Stop] = TypeAdapter(Stop)

POWER = """\
    - name: power
      together: true
      scope: outdoor and indoor supply off together; one by one does not reset
      off_at_least: 3 min
      off_at_most: 20 min
      how: switch both supplies off, wait, switch both on
      evidence_lost: the lamp and all counts
"""
BUTTON = """\
    - name: button
      how: hold SW2 for 5 s
      evidence_lost: the lamp; the history stays
"""

WRITTEN = {
    "sliding_window": f"""\
- id: window-5
  kind: sliding_window
  name: stops by high pressure
  event: high pressure
  limit: 5
  window: 40 min
  edge: counts
  signal: lock-5
  resets:
{POWER}""",
    "consecutive": f"""\
- id: row-3
  kind: consecutive
  name: stops by low pressure in a row
  event: low pressure
  limit: 3
  clears_after: {{run: 30 min}}
  signal: lock-3
  resets:
{POWER}{BUTTON}      clears: lamp
""",
    "within_start": f"""\
- id: early-3
  kind: within_start
  name: stops by overcurrent soon after a start
  event: overcurrent
  limit: 3
  within: 45 s
  in_a_row: true
  resets:
{POWER}""",
    "per_call": """\
- id: call-4
  kind: per_call
  name: openings of the limit switch in one call
  event: limit switch
  limit: 4
  resets:
    - name: thermostat
      off_at_least: 2 s
      off_at_most: 20 s
      how: take the call away and give it again
      evidence_lost: the count of this call
""",
    "failed_starts": """\
- id: starts-20
  kind: failed_starts
  name: starts that failed
  limit: 20
  clears_after: {good_cycles: 1}
  resets:
    - name: test_pins
      how: bridge the pins named TST for 2 s with the supply on
      evidence_lost: the count of starts
""",
    "levels": f"""\
- id: two-levels
  kind: levels
  name: lockouts by high head
  event: head pressure
  levels:
    - name: soft lockout
      limit: 2
      window: 5 h
      edge: counts
      signal: soft
      release_after: 30 min
      resets:
        - name: remote
          how: off and on at the remote
          evidence_lost: nothing; the soft lockouts stay counted
    - name: hard lockout
      limit: 3
      window: 10 h
      edge: counts
      signal: hard
      resets:
{indent(POWER, "    ")}""",
    "first_auto": f"""\
- id: once-by-itself
  kind: first_auto
  name: stops that retry once
  event: discharge temperature
  events: [discharge temperature, module temperature]
  retry_after: 50 min
  same_cause_required: true
  resets:
{POWER}""",
    "per_device": f"""\
- id: fans-3
  kind: per_device
  name: restarts of a fan
  event: fan stop
  devices: [fan 1, fan 2]
  limit: 3
  window: 60 min
  edge: counts
  retry_after: 20 s
  resets:
{POWER}""",
    "duration_latch": f"""\
- id: not-back
  kind: duration_latch
  name: standby at low voltage
  event: low voltage
  within: 15 min
  resets:
{POWER}""",
    "until_power_off": f"""\
- id: at-once
  kind: until_power_off
  name: stop by a locked rotor
  event: locked rotor
  resets:
{POWER}""",
    "auto_release": """\
- id: one-hour
  kind: auto_release
  name: rest after freeze protection
  event: freeze protection
  limit: 2
  window: 3 h
  edge: does_not_count
  release_after: 60 min
""",
    "log_only": """\
- id: history
  kind: log_only
  name: stops by inverter temperature, kept
  event: inverter temperature
  limit: 2
  window: 60 min
""",
}
"""Kind -> its row in `stops.yaml`."""

PACK = """\
schema: 1
id: quellmar-stops
version: "1.0"
title: Quellmar QT units, every counter
kind: shop
author: R. Ashdown
date: "2031-02-03"
applies_to:
  - models: ["QT-##*"]
"""
SIGNALS = "".join(
    f"""\
- id: {name}
  kind: group_then_pause
  lamp: {{board: outdoor main, label: LD3, colour: red}}
  count: {count}
  meaning: {meaning}
  is_fault: true
  latched: {str(latched).lower()}
  stops: [{stop}]
"""
    for name, count, meaning, stop, latched in (
        ("lock-5", 5, "lockout by high pressure", "window-5", True),
        ("lock-3", 3, "lockout by low pressure", "row-3", True),
        ("soft", 6, "soft lockout by high head", "two-levels", True),
        ("hard", 7, "hard lockout by high head", "two-levels", True),
        ("pressed", 2, "high pressure stop, it will retry", "window-5", False),
    )
)


def counters() -> str:
    """Return `stops.yaml` with one counter of each kind."""
    return "".join(WRITTEN.values())


@cache
def stop_pack() -> Pack:
    """Return the pack of all counters, read by the real loader; for QT-##."""
    files = {"pack.yaml": PACK, "signals.yaml": SIGNALS, "stops.yaml": counters()}
    with TemporaryDirectory() as folder:
        return load_pack(write_pack(Path(folder), files))


def row(kind: str, **fields: Any) -> StopRow:
    """Return the counter of a kind, as loaded, with some fields written anew."""
    stop = next(one for one in stop_pack().stops if one.kind == kind)
    if fields:
        stop = _STOP.validate_python(stop.model_dump(exclude_none=True) | fields)
    return StopRow(f"quellmar-stops/{stop.id}", stop, "confirmed")


def counter(limit: int, window: str, edge: str = "counts", **fields: Any) -> StopRow:
    """Return a sliding window of high pressure stops that any power cut resets."""
    written = {"limit": limit, "window": window, "edge": edge, "resets": (ANY_POWER,)}
    return row("sliding_window", **(written | fields))


ANY_POWER = {"name": "power", "how": "off and on", "evidence_lost": "the count"}
"""A reset without an off-time or scope: any by power takes."""
