"""Waits before a start, and the least time of a run: each kind by hand."""

from __future__ import annotations

import pytest

from assistant.timing.values import Known
from assistant.timing.waits import waits_in_force
from tests.wait_rows import NOON, happened, minutes, wait
from tests.waits_told import of_kind, standing, state_of


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
