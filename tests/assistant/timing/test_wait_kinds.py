"""Every kind of wait, computed once each from its invented row."""

from __future__ import annotations

import ast
from datetime import timedelta
from pathlib import Path
from typing import get_args

import pytest
from pydantic import TypeAdapter, ValidationError

from assistant.rules.loader import load_pack
from assistant.timing.defrosts import after_defrost, entry_parts, row_for
from assistant.timing.off_times import judge_off_times
from assistant.timing.start_order import parts_now
from assistant.timing.values import Happening, Known, ValueTold, WaitRow, WaitState
from assistant.timing.wait_kinds.every import Wait
from assistant.timing.wait_kinds.frost import Defrost
from assistant.timing.waits import waits_in_force
from assistant.units.parse import parse_quantity
from tests.pack_folders import write_pack
from tests.wait_rows import NOON, at, happened, minutes, wait
from tests.waits_of_each_kind import EVERY, ROWS, of_kind, pack_files

_WAIT: TypeAdapter[Wait] = TypeAdapter(Wait)


def state_of(
    row: WaitRow, told: list[Happening], after: float, known: Known | None = None
) -> WaitState | None:
    states = waits_in_force([row], told, NOON + minutes(after), known=known or Known())
    assert len(states) <= 1
    return states[0] if states else None


def standing(
    kind: str, told: list[Happening], after: float, known: Known | None = None
) -> str | None:
    state = state_of(of_kind(kind), told, after, known)
    return state.state if state else None


def value(sensor: str, text: str, after: float) -> ValueTold:
    return ValueTold(sensor, parse_quantity(text), at(after))


def test_the_table_has_a_row_of_every_kind_and_its_test_exists() -> None:
    kinds = {
        get_args(model.model_fields["kind"].annotation)[0]
        for model in get_args(get_args(Wait)[0])
    }
    tree = ast.parse(Path(__file__).read_text(encoding="utf-8"))
    tests = {node.name for node in tree.body if isinstance(node, ast.FunctionDef)}

    assert set(EVERY) == kinds
    assert {row.test for row in ROWS} <= tests


def test_a_pack_with_every_kind_is_read_without_a_mistake(tmp_path: Path) -> None:
    pack = load_pack(write_pack(tmp_path / "quellmar", pack_files()))

    assert [one.kind for one in pack.waits] == [row.kind for row in ROWS]


@pytest.mark.parametrize(
    ("said", "ready_after", "ways"),
    [
        ({}, 4, 2),
        ({"off before the outage": True}, 40 / 60, 1),
        ({"off before the outage": False}, 4, 1),
    ],
)
def test_a_unit_that_was_off_before_the_outage_starts_sooner(
    said: dict[str, bool], ready_after: float, ways: int
) -> None:
    told = [happened("power_restored", 0)]

    state = state_of(of_kind("start_delay"), told, 0.1, Known(said=said))

    assert state is not None
    assert state.earliest == NOON + minutes(ready_after)
    assert len(state.choices) == ways


def test_a_wait_begins_anew_with_what_repeats_it() -> None:
    told = [happened("compressor_stopped", 0), happened("setting_changed", 2)]

    assert standing("minimum_off", told[:1], 3) == "ready"
    assert standing("minimum_off", told, 3) == "running"
    assert standing("minimum_off", told, 5) == "ready"


def test_a_compressor_runs_on_for_its_least_time() -> None:
    told = [happened("compressor_started", 0)]

    assert standing("minimum_run", told, 4.9) == "running"
    assert standing("minimum_run", told, 5) == "ready"


@pytest.mark.parametrize(
    ("attempts", "deadlines", "latched"),
    [
        ((1,), [6.0], None),
        ((2,), [3.0], None),
        ((3,), [1.5], None),
        ((2, 3), [3.0, 1.5], None),
        ((4,), [None], "yes"),
        ((), [6.0, 3.0, 1.5, None], None),
    ],
)
def test_a_restart_delay_goes_by_its_attempt(
    attempts: tuple[int, ...], deadlines: list[float | None], latched: str | None
) -> None:
    told = [happened("compressor_stopped", 0)]

    state = state_of(of_kind("restart_delay"), told, 1, Known(attempts=attempts))

    assert state is not None
    expected = [None if one is None else NOON + minutes(one) for one in deadlines]
    assert [choice.over for choice in state.choices] == expected
    longest = max((one for one in expected if one), default=None)
    assert state.earliest == longest
    assert state.latched == latched


@pytest.mark.parametrize(
    ("off_from", "wide", "state", "unsaid"),
    [
        (-9 * 60, 0, "running", ()),
        (-7 * 60, 0, None, ()),
        (-8.5 * 60, 60, "running", ("off long enough before",)),
    ],
)
def test_preheating_is_only_for_a_unit_that_was_off_long_enough(
    off_from: float, wide: float, state: str | None, unsaid: tuple[str, ...]
) -> None:
    told = [happened("power_lost", off_from, wide), happened("power_restored", 0)]

    found = state_of(of_kind("preheat"), told, 60)

    assert (found.state if found else None) == state
    assert found is None or found.unsaid == unsaid


def test_preheating_after_an_off_time_nobody_told_says_so() -> None:
    found = state_of(of_kind("preheat"), [happened("power_on", 0)], 1)

    assert found is not None
    assert found.unsaid == ("off long enough before",)


FIRST = wait("first", "reset", kind="reset_delay", minimum="4 min")


@pytest.mark.parametrize(
    ("second", "wide", "in_force"),
    [
        (40, 0, ["quellmar/second-reset"]),
        (50, 0, ["quellmar/first"]),
        (40, 10, ["quellmar/first", "quellmar/second-reset"]),
    ],
)
def test_a_second_reset_is_longer_only_soon_after_the_first(
    second: float, wide: float, in_force: list[str]
) -> None:
    rows = [FIRST, of_kind("reset_delay")]
    told = [happened("reset", 0), happened("reset", second, wide)]

    states = waits_in_force(rows, told, NOON + minutes(second + wide + 1))

    assert [state.row.gid for state in states] == in_force
    ends = {"quellmar/first": 4, "quellmar/second-reset": 25}
    for state in states:
        late = NOON + minutes(second + wide + ends[state.row.gid])
        assert state.earliest == late


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


def test_a_defrost_ends_by_value_or_by_time() -> None:
    told = [happened("defrost_started", 0)]
    warm = Known(values=(value("outdoor coil temperature", "14 degC", 4),))
    cold = Known(values=(value("outdoor coil temperature", "2 degC", 4),))

    assert standing("defrost", told, 5) == "running"
    assert standing("defrost", told, 5, warm) == "ready"
    assert standing("defrost", told, 5, cold) == "running"
    assert standing("defrost", told, 11.1, cold) == "overdue"
    assert standing("defrost", [*told, happened("defrost_ended", 6)], 7) is None


def test_after_a_defrost_its_parts_follow_and_the_next_keeps_its_interval() -> None:
    told = [happened("defrost_started", 0), happened("defrost_ended", 6)]

    (after,) = after_defrost([of_kind("defrost")], told)

    second = timedelta(seconds=1)
    end = NOON + minutes(6)
    assert after.next_at == end + minutes(35)
    assert after.parts == (
        ("dripping off", end + 40 * second, end + 40 * second),
        ("compressor", end + 60 * second, end + 70 * second),
    )
    again = [*told, happened("defrost_started", 50)]
    assert after_defrost([of_kind("defrost")], again) == ()


@pytest.mark.parametrize(
    ("coil", "ambient", "run", "met"),
    [
        # Above freezing the table asks -5 degC; 7 K under the outdoor air.
        ("-6 degC", "2 degC", 60, (True, True, True)),
        ("-4 degC", "2 degC", 60, (True, False, False)),
        # Below freezing it asks -11 degC and 80 min.
        ("-12 degC", "-3 degC", 60, (True, True, False)),
        ("-12 degC", "-3 degC", 90, (True, True, True)),
        ("-6 degC", None, 40, (False, None, None)),
        (None, None, None, (None, None, None)),
    ],
)
def test_what_lets_a_defrost_begin_is_judged_by_what_was_told(
    coil: str | None,
    ambient: str | None,
    run: int | None,
    met: tuple[bool | None, ...],
) -> None:
    frost = of_kind("defrost").wait
    assert isinstance(frost, Defrost)
    assert frost.entry is not None
    read = [value("outdoor coil temperature", coil, 0)] if coil else []
    read += [value("outdoor temperature", ambient, 0)] if ambient else []

    parts = entry_parts(frost.entry, read, minutes(run) if run else None)

    assert tuple(part.met for part in parts) == met


def test_a_line_of_the_entry_table_holds_from_its_lower_end_on() -> None:
    frost = of_kind("defrost").wait
    assert isinstance(frost, Defrost)
    assert frost.entry is not None

    at_zero = row_for(frost.entry, parse_quantity("0 degC"))

    assert at_zero is frost.entry.table[0]


def test_ice_is_melted_after_heating_was_stopped() -> None:
    told = [happened("call_ended", 0)]
    warm = Known(values=(value("outdoor coil temperature", "9 degC", 2),))

    assert standing("off_defrost", told, 3) == "running"
    assert standing("off_defrost", told, 3, warm) == "ready"
    assert standing("off_defrost", told, 6.1) == "overdue"


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


@pytest.mark.parametrize(
    ("kind", "wrong"),
    [
        ("start_delay", {"if_off_before": "5 min"}),
        ("minimum_run", {"minimum": None}),
        ("restart_delay", {"by_attempt": ["3 min"]}),
        ("restart_delay", {"minimum": "3 min"}),
        ("reset_delay", {"trigger": "reset"}),
        ("standby", {"give_up": None}),
        ("standby", {"latches": False}),
        ("value_and_time", {"conditions": []}),
        ("value_and_time", {"minimum": None}),
        ("soft_stop", {"retries": 0}),
        ("capacitor_bleed", {"below": "60 s"}),
        ("capacitor_bleed", {"logic": "or"}),
        ("reset_window", {"give_up": None}),
        ("startup_order", {"order": []}),
        ("defrost", {"entry": {}}),
        ("defrost", {"entry": {"coil_under_ambient": "7 degC"}}),
        ("display_delay", {"logic": "or"}),
        ("display_delay", {"only_when": ["it feels like it"]}),
        ("detection_time", {"minimum": None}),
        ("ignore_window", {"minimum": None}),
        ("button", {"presses": 3, "within": None}),
        ("button", {"presses": 1, "hold": None}),
    ],
)
def test_a_row_that_contradicts_its_kind_is_refused(
    kind: str, wrong: dict[str, object]
) -> None:
    good = of_kind(kind).wait.model_dump(exclude_defaults=True, exclude_none=True)
    written = {**good, "kind": kind, **wrong}
    lists = {key: tuple(one) for key, one in written.items() if isinstance(one, list)}
    assert _WAIT.validate_python({**good, "kind": kind}).kind == kind

    with pytest.raises(ValidationError):
        _WAIT.validate_python({**written, **lists})
