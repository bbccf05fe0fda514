"""What starts a wait, in words, and the question for its time."""

from __future__ import annotations

from collections.abc import Mapping

from assistant.timing.triggers import Trigger

TIME_QUESTIONS: Mapping[Trigger, str] = {
    "power_on": "When was the power put on?",
    "first_start": "When was it started for the first time?",
    "power_lost": "When did the power go?",
    "power_restored": "When did the power come back?",
    "power_off": "When was the power cut?",
    "lamp_dark": "When did the lamp on that board go dark?",
    "call_for_run": "When did the call for cooling or heating start?",
    "call_ended": "When did the call for cooling or heating end?",
    "compressor_started": "When did the compressor start?",
    "compressor_stopped": "When did the compressor stop?",
    "protection_stop": "When did it stop last?",
    "overload_opened": "When did the overload or protector open?",
    "fault_began": "When did the fault begin?",
    "value_left": "When did the value leave its band?",
    "value_back": "When was the value back in its band?",
    "reset": "When was it reset?",
    "second_reset": "When was it reset the second time?",
    "defrost_started": "When did the defrost begin?",
    "defrost_ended": "When did the defrost end?",
    "valve_shifted": "When did the reversing valve shift?",
    "test_started": "When was the test run started?",
    "history_shown": "When was the stored history called up?",
    "button_pressed": "When was the button pressed?",
    "setting_changed": "When was the setting changed?",
}
TRIGGER_WORDS: Mapping[Trigger, str] = {
    "power_on": "power-up",
    "first_start": "the first start",
    "power_lost": "the power going",
    "power_restored": "the power coming back",
    "power_off": "the power being cut",
    "lamp_dark": "the lamp going dark",
    "call_for_run": "the call",
    "call_ended": "the end of the call",
    "compressor_started": "the compressor's start",
    "compressor_stopped": "the compressor's stop",
    "protection_stop": "the protection stop",
    "overload_opened": "the overload opening",
    "fault_began": "the beginning of the fault",
    "value_left": "the value leaving its band",
    "value_back": "the value coming back",
    "reset": "the reset",
    "second_reset": "the second reset",
    "defrost_started": "the start of defrost",
    "defrost_ended": "the end of defrost",
    "valve_shifted": "the valve shifting",
    "test_started": "the start of the test run",
    "history_shown": "the history being called up",
    "button_pressed": "the button being pressed",
    "setting_changed": "the change of setting",
}
