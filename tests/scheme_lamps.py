"""Rows in pack text for each way in which lamps and buzzers show something."""

from __future__ import annotations

STATES = """\
- id: heart
  kind: heartbeat
  lamp: {box: outdoor, board: fan board, label: H1, colour: green}
  meaning: fan board alive
  is_fault: false
- id: lit-running
  kind: steady
  lamp: {box: outdoor, board: fan board, label: H2, colour: blue}
  unit_state_required: [running]
  meaning: compressor running
  is_fault: false
- id: lit-locked
  kind: steady
  lamp: {box: outdoor, board: fan board, label: H2, colour: blue}
  unit_state_required: [stopped]
  meaning: locked out
  is_fault: true
  causes: [board]
- id: dark
  kind: "off"
  lamp: {box: outdoor, board: fan board, label: H2, colour: blue}
  meaning: no supply
  is_fault: true
- id: idle
  kind: even_blink
  lamp: {box: outdoor, board: fan board, label: H2, colour: blue}
  on: 0.8 s
  off: 0.8 s
  meaning: idle
  is_fault: false
- id: slow
  kind: rate_blink
  lamp: {box: indoor, board: display board, label: R1, colour: red}
  rate_class: slow
  rate: {hz_low: 0.4, hz_high: 0.6}
  meaning: filter full
  is_fault: false
- id: fast
  kind: rate_blink
  lamp: {box: indoor, board: display board, label: R1, colour: red}
  rate_class: fast
  rate: {on: 0.1 s, off: 0.15 s}
  meaning: pump full
  is_fault: true
  causes: [board]
- id: lone
  kind: single_flash
  lamp: {box: indoor, board: display board, label: R2, colour: white}
  window: 5 s
  meaning: waiting for the timer
  is_fault: false
- id: speed
  kind: analog_rate
  lamp: {box: outdoor, board: driver board, label: S1, colour: yellow}
  shows: the compressor's speed
  meaning: driver running
  is_fault: false
"""

COUNTS = """\
- id: window-4
  kind: count_per_window
  lamp: {box: outdoor, board: main board, label: KL1, colour: amber, role: alert}
  count: 4
  window: 10 s
  meaning: discharge sensor out of range
  is_fault: true
  causes: [sensor]
  same_as: [code-e4]
  operates: true
  limit_days: 3
- id: window-5
  kind: count_per_window
  lamp: {box: outdoor, board: main board, label: KL1, colour: amber, role: alert}
  count: 5
  window: 10 s
  meaning: high pressure
  is_fault: true
  confusable_with: ["the neighbouring lamp KL9 blinks with the water level"]
- id: trip-4
  kind: group_then_pause
  lamp: {box: outdoor, board: main board, label: KL2, colour: red, role: trip}
  count: 4
  on: 0.5 s
  off: 0.5 s
  pause: 3 s
  meaning: overcurrent
  is_fault: true
- id: digits-23
  kind: short_long
  lamp: {box: indoor, board: power board, label: P1, colour: orange}
  short: 2
  long: 3
  digit_order: short_first
  short_on: 0.3 s
  long_on: 1.2 s
  digit_gap: 1 s
  repeat_gap: 4 s
  meaning: room sensor
  is_fault: true
- id: digits-32
  kind: short_long
  lamp: {box: indoor, board: power board, label: P1, colour: orange}
  short: 3
  long: 2
  meaning: coil sensor
  is_fault: true
- id: digits-12
  kind: short_long
  lamp: {box: indoor, board: power board, label: P1, colour: orange}
  short: 1
  long: 2
  meaning: float switch
  is_fault: true
- id: beeps-5
  kind: beeps
  buzzer: {box: remote}
  count: 5
  pause: 2 s
  meaning: no match with the unit
  is_fault: true
"""

WEIGHTED = """\
  lamps:
    - {lamp: {box: thermostat, label: W4}, weight: 4}
    - {lamp: {box: thermostat, label: W2}, weight: 2}
    - {lamp: {box: thermostat, label: W1}, weight: 1}
"""
"""The lamps of both weighted rows."""

VALVE_PAIR = """\
  lamps:
    - {box: outdoor, board: valve board, label: V1, colour: green}
    - {box: outdoor, board: valve board, label: V2, colour: red}
"""
"""The lamps of both rows of a pair."""

TOGETHER = """\
- id: grid-coil
  kind: several_lamps
  lamps:
    - {lamp: {box: indoor, label: run}, state: "on"}
    - {lamp: {box: indoor, label: timer}, state: flash}
    - {lamp: {box: indoor, label: filter}, state: any}
  meaning: indoor coil sensor
  is_fault: true
- id: grid-room
  kind: several_lamps
  lamps:
    - {lamp: {box: indoor, label: run}, state: "on"}
    - {lamp: {box: indoor, label: timer}, state: "off"}
    - {lamp: {box: indoor, label: filter}, state: "on"}
  meaning: indoor room sensor
  is_fault: true
- id: bits-5
  kind: weighted_lamps
  weights_stated: true
@weighted
  number: 5
  meaning: address 5 not found
  is_fault: true
- id: bits-4
  kind: weighted_lamps
  weights_stated: true
@weighted
  number: 4
  meaning: address 4 not found
  is_fault: true
- id: both-together
  kind: phase_pair
@valve pair
  phase: together
  meaning: start delay
  is_fault: false
- id: both-in-turn
  kind: phase_pair
@valve pair
  phase: alternating
  meaning: valve sensor
  is_fault: true
- id: bank-off-2
  kind: bank_count
  bank_emitter: {box: indoor, board: relay board, label: A}
  bank_state: "off"
  count_emitter: {box: indoor, board: relay board, label: B}
  count: 2
  meaning: heater open
  is_fault: true
- id: bank-on-2
  kind: bank_count
  bank_emitter: {box: indoor, board: relay board, label: A}
  bank_state: "on"
  count_emitter: {box: indoor, board: relay board, label: B}
  count: 2
  meaning: blower stalled
  is_fault: true
- id: first-3
  kind: flicker_count
  flicker_emitter: {box: outdoor, board: filter board, label: F1}
  count_emitter: {box: outdoor, board: filter board, label: F2}
  count: 3
  display_level: first
  meaning: supply fault
  is_fault: true
- id: detail-3
  kind: flicker_count
  flicker_emitter: {box: outdoor, board: filter board, label: F1}
  count_emitter: {box: outdoor, board: filter board, label: F2}
  count: 3
  display_level: detail
  entry_action: press TEST once
  meaning: undervoltage of the second phase
  is_fault: true
- id: tens-24
  kind: tens_units
  tens_emitter: {box: indoor, board: pump board, label: T, colour: yellow}
  units_emitter: {box: indoor, board: pump board, label: U, colour: green}
  number: 24
  applies_to_unit: indoor
  meaning: drain pump
  is_fault: true
- id: tens-14-outdoor
  kind: tens_units
  tens_emitter: {box: indoor, board: pump board, label: T, colour: yellow}
  units_emitter: {box: indoor, board: pump board, label: U, colour: green}
  number: 14
  offset: 30
  applies_to_unit: outdoor
  meaning: outdoor fan
  is_fault: true
""".replace("@weighted\n", WEIGHTED).replace("@valve pair\n", VALVE_PAIR)
