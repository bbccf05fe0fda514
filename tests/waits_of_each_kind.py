"""One invented row of every kind of wait, as a pack writes it, and where it is tested.

Every figure is made up for these tests; none is a maker's.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class KindRow:
    """A kind, what it is for, its row and the test that computes it."""

    kind: str
    about: str
    yaml: str
    test: str


ROWS: tuple[KindRow, ...] = (
    KindRow(
        "start_delay",
        "start delay after power-up; shorter when the unit was off before the outage",
        """\
- id: power-up
  kind: start_delay
  name: delay after power-up
  trigger: power_on
  minimum: 4 min
  if_off_before: 40 s
  lamp_during: waiting
  can_user_shorten: false
""",
        "test_a_unit_that_was_off_before_the_outage_starts_sooner",
    ),
    KindRow(
        "minimum_off",
        "minimum off time after a stop; started anew by another happening",
        """\
- id: minimum-off
  kind: minimum_off
  name: minimum off time
  trigger: compressor_stopped
  minimum: 3 min
  repeats_with: [setting_changed]
  bypass: bridge the two test pins for a second
  bypass_side_effect: the board does not look at the low pressure for 2 minutes
""",
        "test_a_wait_begins_anew_with_what_repeats_it",
    ),
    KindRow(
        "minimum_run",
        "minimum running time after a start",
        """\
- id: minimum-run
  kind: minimum_run
  name: minimum running time
  minimum: 5 min
""",
        "test_a_compressor_runs_on_for_its_least_time",
    ),
    KindRow(
        "restart_delay",
        "restart delay that gets shorter from attempt to attempt, then no more",
        """\
- id: restart
  kind: restart_delay
  name: restart delay
  by_attempt: [6 min, 3 min, 90 s]
  then: no_retry
""",
        "test_a_restart_delay_goes_by_its_attempt",
    ),
    KindRow(
        "preheat",
        "compressor preheated before a start, only after a long time without power",
        """\
- id: preheat
  kind: preheat
  name: preheating of the compressor
  minimum: 2 h
  after_off_for: 8 h
""",
        "test_preheating_is_only_for_a_unit_that_was_off_long_enough",
    ),
    KindRow(
        "reset_delay",
        "longer wait after a second reset soon after the first",
        """\
- id: second-reset
  kind: reset_delay
  name: wait after a second reset
  trigger: second_reset
  within: 45 min
  minimum: 25 min
""",
        "test_a_second_reset_is_longer_only_soon_after_the_first",
    ),
    KindRow(
        "standby",
        "waits for the supply; latches when it is not back in time, restart or not",
        """\
- id: supply-low
  kind: standby
  name: standby for the supply
  trigger: power_lost
  condition_low: 200 V
  condition_high: 250 V
  give_up: 12 min
  latches: true
  survives_restart: true
  cleared_by: [reset]
  cancelled_by: [power_restored, power_on]
""",
        "test_a_supply_back_too_late_latches_even_through_a_restart",
    ),
    KindRow(
        "value_and_time",
        "waits for a value and a time",
        """\
- id: hot-discharge
  kind: value_and_time
  name: wait after a hot discharge
  trigger: protection_stop
  minimum: 7 min
  conditions:
    - {sensor: discharge temperature, op: below, value: 75 degC}
  logic: and
""",
        "test_a_value_and_a_time_are_both_needed",
    ),
    KindRow(
        "soft_stop",
        "stops for a time, starts by itself; the second time it does not",
        """\
- id: soft-stop
  kind: soft_stop
  name: stop after high current
  minimum: 35 min
  retries: 1
""",
        "test_a_soft_stop_retries_once_and_then_not",
    ),
    KindRow(
        "auto_release",
        "lock that opens by itself",
        """\
- id: release
  kind: auto_release
  name: lock after high pressure
  minimum: 70 min
""",
        "test_a_lock_opens_by_itself",
    ),
    KindRow(
        "self_reset",
        "transformer protector that closes again by itself",
        """\
- id: transformer
  kind: self_reset
  name: transformer cooling down
  device: control transformer
  usual: 20 min
  approx: true
""",
        "test_a_transformer_closes_again_by_itself",
    ),
    KindRow(
        "cooling",
        "cooling before an ohm reading counts",
        """\
- id: dome
  kind: cooling
  name: compressor dome cooling down
  minimum: 50 min
  before: an ohm reading of the windings
  cancelled_by: [compressor_started]
""",
        "test_an_ohm_reading_counts_only_after_cooling",
    ),
    KindRow(
        "capacitor_bleed",
        "charge going by itself: minutes and volts, never time alone",
        """\
- id: bleed
  kind: capacitor_bleed
  name: charge of the main capacitors
  minimum: 8 min
  below: 60 V
  cancelled_by: [power_on, power_restored]
""",
        "test_charge_is_gone_by_the_meter_and_never_by_time",
    ),
    KindRow(
        "power_off_hold",
        "supply off at least so long",
        """\
- id: off-hold
  kind: power_off_hold
  name: supply off to clear the fan board
  trigger: lamp_dark
  minimum: 30 s
  cancelled_by: [power_on, power_restored]
""",
        "test_an_off_time_is_judged_by_its_believable_lengths",
    ),
    KindRow(
        "reset_window",
        "supply off longer than a, less than b",
        """\
- id: off-window
  kind: reset_window
  name: supply off for a reset
  minimum: 3 min
  give_up: 9 min
  cancelled_by: [power_on, power_restored]
""",
        "test_a_reset_window_opens_and_closes",
    ),
    KindRow(
        "startup_order",
        "which part starts first, after how long, from which event",
        """\
- id: order
  kind: startup_order
  name: start-up order
  trigger: power_on
  order:
    - {part: outdoor fan, after: trigger, earliest: 10 s, latest: 15 s}
    - {part: compressor, after: outdoor fan, earliest: 30 s, latest: 40 s}
    - {part: indoor fan, after: compressor, earliest: 60 s}
""",
        "test_it_is_told_which_part_should_run_by_now",
    ),
    KindRow(
        "run_on",
        "pump-down, drain or purge after the call",
        """\
- id: pump-down
  kind: run_on
  name: pump-down after the call
  part: compressor
  purpose: pump_down
  give_up: 3 min
  cancelled_by: [call_for_run]
""",
        "test_a_part_runs_on_after_the_call",
    ),
    KindRow(
        "blower_delay",
        "indoor blower late on or late off",
        """\
- id: blower-on
  kind: blower_delay
  name: blower after the call for heat
  trigger: call_for_run
  turns: "on"
  minimum: 45 s
  mode: heat
""",
        "test_the_blower_follows_its_call",
    ),
    KindRow(
        "defrost",
        "entry, least interval, end by value or time, sequence after, lamp meanwhile",
        """\
- id: defrost
  kind: defrost
  name: defrost
  mode: heat
  lamp_during: waiting
  entry:
    run: 50 min
    coil_under_ambient: 7 K diff
    table:
      - {ambient_from: 0 degC, coil_at_most: -5 degC}
      - {ambient_below: 0 degC, coil_at_most: -11 degC, run: 80 min}
  interval: 35 min
  end_at: {sensor: outdoor coil temperature, op: at_least, value: 13 degC}
  give_up: 11 min
  after:
    - {part: dripping off, after: trigger, earliest: 40 s, latest: 40 s}
    - {part: compressor, after: dripping off, earliest: 20 s, latest: 30 s}
""",
        "test_a_defrost_ends_by_value_or_by_time",
    ),
    KindRow(
        "off_defrost",
        "ice melted after the user stops the heating",
        """\
- id: off-defrost
  kind: off_defrost
  name: defrost after heating was stopped
  mode: heat
  end_at: {sensor: outdoor coil temperature, op: at_least, value: 9 degC}
  give_up: 6 min
""",
        "test_ice_is_melted_after_heating_was_stopped",
    ),
    KindRow(
        "display_delay",
        "code shown late, only with a call, cancelled by a restart",
        """\
- id: shown-late
  kind: display_delay
  name: delay until a code is shown
  trigger: compressor_stopped
  usual: 100 s
  only_when: [call present]
  cancelled_by: [compressor_started]
""",
        "test_a_code_shows_late_only_with_a_call_until_a_restart",
    ),
    KindRow(
        "history_exit",
        "display leaves the stored faults by itself",
        """\
- id: history
  kind: history_exit
  name: stored faults on the display
  minimum: 3 min
""",
        "test_a_display_leaves_its_history_by_itself",
    ),
    KindRow(
        "detection_time",
        "fault must last so long",
        """\
- id: detection
  kind: detection_time
  name: time until a sensor counts as open
  minimum: 12 s
  cancelled_by: [value_back]
""",
        "test_a_fault_counts_only_once_it_has_lasted",
    ),
    KindRow(
        "ignore_window",
        "input not looked at after a trigger",
        """\
- id: ignore
  kind: ignore_window
  name: low pressure after a start
  trigger: compressor_started
  input: the low pressure switch
  minimum: 110 s
""",
        "test_an_input_is_not_looked_at_for_a_while",
    ),
    KindRow(
        "button",
        "key held, or pressed several times within a time",
        """\
- id: clear-history
  kind: button
  name: clearing the stored faults
  button: SW3
  presses: 3
  within: 6 s
  hold: 1 s
  does: the stored faults are erased
""",
        "test_a_button_is_a_rule_and_no_timer",
    ),
)
SIGNALS = """\
- id: waiting
  kind: steady
  lamp: {board: outdoor main, label: LD2, colour: amber}
  meaning: waiting before a start
  is_fault: false
"""
"""The lamp that some of the rows name."""
EVERY: Mapping[str, KindRow] = {row.kind: row for row in ROWS}
PACK = """\
schema: 1
id: quellmar
version: "1.0"
title: Quellmar QM wall units
kind: common
"""


def pack_files() -> dict[str, str]:
    """Return the files of a pack that holds every kind."""
    waits = "".join(row.yaml for row in ROWS)
    return {"pack.yaml": PACK, "signals.yaml": SIGNALS, "waits.yaml": waits}
