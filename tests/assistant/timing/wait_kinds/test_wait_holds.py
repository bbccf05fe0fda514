"""Waits for a value, a release or the supply: each kind by hand."""

from __future__ import annotations

import pytest

from assistant.timing.off_times import judge_off_times
from assistant.timing.values import Known
from tests.wait_rows import NOON, happened, minutes, wait
from tests.waits_told import of_kind, standing, state_of, value


def test_a_supply_back_too_late_latches_even_through_a_restart() -> None:
    row = of_kind("standby")
    lost = happened("power_lost", 0)
    late = happened("power_restored", 13)
    restart = happened("power_on", 20)

    in_time = state_of(row, [lost, happened("power_restored", 11)], 14)
    too_late = state_of(row, [lost, late], 14)
    restarted = state_of(row, [lost, late, restart], 21)
    cleared = state_of(row, [lost, late, happened("reset", 30)], 31)

    assert in_time is None
    assert too_late is not None
    assert too_late.latched == "yes"
    assert restarted is not None
    assert restarted.latched == "yes"
    assert cleared is None


def test_a_supply_whose_return_was_not_told_may_have_latched() -> None:
    row = of_kind("standby")
    lost = happened("power_lost", 0)

    waiting = state_of(row, [lost], 11)
    open_end = state_of(row, [lost], 13)
    either = state_of(row, [lost, happened("power_restored", 11, 3)], 20)
    untimed = state_of(row, [lost, happened("power_restored", None)], 20)

    assert waiting is not None
    assert (waiting.state, waiting.latched) == ("running", None)
    for state in (open_end, either, untimed):
        assert state is not None
        assert (state.state, state.latched) == ("overdue", "cannot_tell")


def test_a_supply_measured_in_its_band_is_back_and_one_measured_before_is_not() -> None:
    told = [happened("power_lost", 0)]
    since = Known(values=(value("supply", "230 V", 5),))
    before = Known(values=(value("supply", "230 V", -5),))
    low = Known(values=(value("supply", "190 V", 5),))

    assert standing("standby", told, 6, since) == "ready"
    assert standing("standby", told, 6, before) == "running"
    assert standing("standby", told, 6, low) == "running"


@pytest.mark.parametrize(
    ("values", "after", "state"),
    [
        ((), 6, "running"),
        ((), 8, "running"),
        (("95 degC", 7.5), 8, "running"),
        (("70 degC", 3), 6, "running"),
        (("70 degC", 7.5), 8, "ready"),
        (("70 degC", 3), 8, "ready"),
    ],
)
def test_a_value_and_a_time_are_both_needed(
    values: tuple[str, float] | tuple[()], after: float, state: str
) -> None:
    told = [happened("protection_stop", 0)]
    read = (value("discharge temperature", *values),) if values else ()

    assert standing("value_and_time", told, after, Known(values=read)) == state


def test_with_or_the_value_or_the_time_is_enough() -> None:
    row = wait(
        "either",
        "protection_stop",
        kind="value_and_time",
        minimum="7 min",
        logic="or",
        conditions=({"sensor": "supply", "op": "at_least", "value": "200 V"},),
    )
    told = [happened("protection_stop", 0)]
    back = Known(values=(value("supply", "228 V", 1),))

    early = state_of(row, told, 2, back)
    waiting = state_of(row, told, 2)
    by_time = state_of(row, told, 7)

    assert [one.state if one else None for one in (early, waiting, by_time)] == [
        "ready",
        "running",
        "ready",
    ]


def test_a_soft_stop_retries_once_and_then_not() -> None:
    row = of_kind("soft_stop")
    once = [happened("protection_stop", 0)]
    twice = [*once, happened("protection_stop", 40)]
    after_reset = [*once, happened("reset", 20), happened("protection_stop", 40)]

    first = state_of(row, once, 1, Known(attempts=(1,)))
    unknown = state_of(row, once, 1)
    second = state_of(row, twice, 41)
    fresh = state_of(row, after_reset, 41)

    assert first is not None
    assert first.earliest == NOON + minutes(35)
    assert unknown is not None
    assert [choice.over is None for choice in unknown.choices] == [False, True]
    assert unknown.latched is None
    assert second is not None
    assert (second.latched, second.earliest) == ("yes", None)
    assert fresh is not None
    assert fresh.latched is None


def test_a_lock_opens_by_itself() -> None:
    told = [happened("protection_stop", 0)]

    assert standing("auto_release", told, 69) == "running"
    assert standing("auto_release", told, 70) == "ready"


def test_a_transformer_closes_again_by_itself() -> None:
    told = [happened("overload_opened", 0)]

    assert standing("self_reset", told, 19) == "running"
    assert standing("self_reset", told, 20) == "ready"


def test_an_ohm_reading_counts_only_after_cooling() -> None:
    told = [happened("compressor_stopped", 0)]

    assert standing("cooling", told, 49) == "running"
    assert standing("cooling", told, 50) == "ready"
    assert standing("cooling", [*told, happened("compressor_started", 9)], 10) is None


@pytest.mark.parametrize(
    ("volts", "after", "state"),
    [
        (None, 60, "running"),
        ("58 V", 9, "running"),
        ("49 V", 5, "running"),
        ("49 V", 9, "ready"),
    ],
)
def test_charge_is_gone_by_the_meter_and_never_by_time(
    volts: str | None, after: float, state: str
) -> None:
    # The row allows 60 V; 50 V is the lower limit of the safe order of work.
    read = (value("bus", volts, after - 1),) if volts else ()

    told = [happened("power_off", 0)]
    assert standing("capacitor_bleed", told, after, Known(values=read)) == state


@pytest.mark.parametrize(
    ("dark", "wide", "on", "result"),
    [
        (0, 0, 0.5, "held"),
        (0, 0, 0.4, "too_short"),
        (0, 0.3, 0.6, "cannot_tell"),
    ],
)
def test_an_off_time_is_judged_by_its_believable_lengths(
    dark: float, wide: float, on: float, result: str
) -> None:
    told = [happened("lamp_dark", dark, wide), happened("power_on", on)]

    (found,) = judge_off_times([of_kind("power_off_hold")], told)

    assert found.result == result
    assert standing("power_off_hold", told, on) is None


@pytest.mark.parametrize(
    ("after", "state"),
    [(2.9, "running"), (3, "ready"), (9, "ready"), (9.1, "overdue")],
)
def test_a_reset_window_opens_and_closes(after: float, state: str) -> None:
    assert standing("reset_window", [happened("power_off", 0)], after) == state


@pytest.mark.parametrize(
    ("on", "result"), [(2, "too_short"), (5, "held"), (10, "too_long")]
)
def test_an_off_time_longer_than_its_window_is_told(on: float, result: str) -> None:
    told = [happened("power_off", 0), happened("power_on", on)]

    (found,) = judge_off_times([of_kind("reset_window")], told)

    assert found.result == result
