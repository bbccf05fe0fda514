"""Waits of displays, inputs and buttons: each kind by hand."""

from __future__ import annotations

from assistant.timing.values import Known
from tests.wait_rows import happened
from tests.waits_told import of_kind, standing, state_of


def test_a_code_shows_late_only_with_a_call_until_a_restart() -> None:
    told = [happened("compressor_stopped", 0)]
    call, no_call = (Known(said={"call present": said}) for said in (True, False))

    with_call = state_of(of_kind("display_delay"), told, 1, call)
    not_said = state_of(of_kind("display_delay"), told, 1)

    assert with_call is not None
    assert with_call.unsaid == ()
    assert not_said is not None
    assert not_said.unsaid == ("call present",)
    assert state_of(of_kind("display_delay"), told, 1, no_call) is None
    again = [*told, happened("compressor_started", 0.5)]
    assert state_of(of_kind("display_delay"), again, 1, call) is None


def test_a_display_leaves_its_history_by_itself() -> None:
    told = [happened("history_shown", 0)]

    assert standing("history_exit", told, 2) == "running"
    assert standing("history_exit", told, 3) == "ready"


def test_a_fault_counts_only_once_it_has_lasted() -> None:
    told = [happened("fault_began", 0)]

    assert standing("detection_time", told, 0.19) == "running"
    assert standing("detection_time", told, 0.2) == "ready"
    assert standing("detection_time", [*told, happened("value_back", 0.1)], 0.2) is None


def test_an_input_is_not_looked_at_for_a_while() -> None:
    told = [happened("compressor_started", 0)]

    assert standing("ignore_window", told, 1.8) == "running"
    assert standing("ignore_window", told, 110 / 60) == "ready"


def test_a_button_is_a_rule_and_no_timer() -> None:
    row = of_kind("button")

    assert state_of(row, [happened("power_on", 0)], 1) is None
    assert [one.value for one in row.wait.durations] == [1, 6]
