"""What can happen to a unit that starts or ends a wait."""

from __future__ import annotations

from typing import Literal

Trigger = Literal[
    "power_on",
    "first_start",
    "power_lost",
    "power_restored",
    "power_off",
    "lamp_dark",
    "call_for_run",
    "call_ended",
    "compressor_started",
    "compressor_stopped",
    "protection_stop",
    "overload_opened",
    "fault_began",
    "value_left",
    "value_back",
    "reset",
    "second_reset",
    "defrost_started",
    "defrost_ended",
    "valve_shifted",
    "test_started",
    "history_shown",
    "button_pressed",
    "setting_changed",
]
"""What starts a wait. `reset` is any named reset; `first_start` is the first start
after installation or after power-up where the document says so; `value_left` and
`value_back` are a watched value leaving its band and coming back; `overload_opened` is
a protector in a motor or transformer; `history_shown` is stored faults on a display."""
