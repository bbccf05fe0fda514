"""Orders of a start, run-on and blower delays: each kind by hand."""

from __future__ import annotations

from datetime import timedelta

import pytest

from assistant.timing.start_order import parts_now
from assistant.timing.waits import waits_in_force
from tests.wait_rows import NOON, happened
from tests.waits_told import of_kind, standing


@pytest.mark.parametrize(
    ("seconds", "fan", "compressor", "indoor"),
    [
        (9, "not_yet", "not_yet", "not_yet"),
        (12, "may_run", "not_yet", "not_yet"),
        (15, "should_run", "not_yet", "not_yet"),
        (40, "should_run", "may_run", "not_yet"),
        (55, "should_run", "should_run", "not_yet"),
        (100, "should_run", "should_run", "may_run"),
    ],
)
def test_it_is_told_which_part_should_run_by_now(
    seconds: int, fan: str, compressor: str, indoor: str
) -> None:
    # By hand: fan 10 to 15 s; compressor 40 to 55 s; indoor fan from 100 s.
    now = NOON + timedelta(seconds=seconds)
    (state,) = waits_in_force(
        [of_kind("startup_order")], [happened("power_on", 0)], now
    )

    parts = {one.part: one.standing for one in parts_now(state, now)}

    assert parts == {
        "outdoor fan": fan,
        "compressor": compressor,
        "indoor fan": indoor,
    }


def test_with_an_uncertain_start_a_part_is_late_only_when_it_surely_is() -> None:
    now = NOON + timedelta(seconds=70)
    told = [happened("power_on", 0, wide=1)]
    (state,) = waits_in_force([of_kind("startup_order")], told, now)

    parts = {one.part: one.standing for one in parts_now(state, now)}

    assert parts["compressor"] == "may_run"


def test_a_part_runs_on_after_the_call() -> None:
    told = [happened("call_ended", 0)]

    assert standing("run_on", told, 3) == "running"
    assert standing("run_on", told, 3.1) == "overdue"
    assert standing("run_on", [*told, happened("call_for_run", 1)], 2) is None


def test_the_blower_follows_its_call() -> None:
    told = [happened("call_for_run", 0)]

    assert standing("blower_delay", told, 0.7) == "running"
    assert standing("blower_delay", told, 0.75) == "ready"
