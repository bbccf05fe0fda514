"""Which waits are in force, and until when."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.clock import FixedClock
from assistant.timing.moment import Moment
from assistant.timing.start_order import start_order
from assistant.timing.values import Happening, WaitState
from assistant.timing.waits import LISTED_FOR, waits_in_force
from tests.wait_rows import NOON, at, happened, minutes, wait

RESTART = wait("restart", "compressor_stopped", minimum="3 min", give_up="10 min")


def only(states: tuple[WaitState, ...]) -> WaitState:
    assert len(states) == 1
    return states[0]


def test_nothing_happened_and_no_wait_is_in_force() -> None:
    assert waits_in_force([RESTART], [], NOON) == ()


@pytest.mark.parametrize(
    ("after", "state"),
    [
        (0, "running"),
        (2.99, "running"),
        (3, "ready"),
        (10, "ready"),
        (10.01, "overdue"),
    ],
)
def test_a_wait_runs_is_ready_and_is_overdue(after: float, state: str) -> None:
    told = [happened("compressor_stopped", 0)]

    found = only(waits_in_force([RESTART], told, NOON + minutes(after)))

    assert found.state == state
    assert found.earliest == NOON + minutes(3)
    assert found.give_up == NOON + minutes(10)


def test_at_least_counts_from_the_latest_start_and_not_longer_from_the_earliest() -> (
    None
):
    told = [happened("compressor_stopped", 0, wide=5)]

    found = only(waits_in_force([RESTART], told, NOON + minutes(7)))

    assert found.earliest == NOON + minutes(8)
    assert found.give_up == NOON + minutes(10)
    assert found.state == "running"


def test_a_time_not_known_leaves_the_start_to_be_asked_for() -> None:
    found = only(
        waits_in_force([RESTART], [happened("compressor_stopped", None)], NOON)
    )

    assert found.state == "start_unknown"
    assert found.earliest is None
    assert found.give_up is None


def test_a_known_time_told_later_answers_the_unknown_one() -> None:
    told = [happened("compressor_stopped", None), happened("compressor_stopped", -1)]

    assert only(waits_in_force([RESTART], told, NOON)).state == "running"


def test_an_unknown_time_told_last_is_unknown_again() -> None:
    told = [happened("compressor_stopped", -1), happened("compressor_stopped", None)]

    assert only(waits_in_force([RESTART], told, NOON)).state == "start_unknown"


def test_the_latest_happening_counts_in_whatever_order_it_is_told() -> None:
    told = [happened("compressor_stopped", 5), happened("compressor_stopped", 0)]

    found = only(waits_in_force([RESTART], told, NOON + minutes(5)))

    assert found.earliest == NOON + minutes(8)


def test_of_two_uncertain_happenings_the_last_lies_between_their_latest_bounds() -> (
    None
):
    told = [
        happened("compressor_stopped", 0, 20),
        happened("compressor_stopped", 10, 2),
    ]

    found = only(waits_in_force([RESTART], told, NOON + minutes(12)))

    assert found.started == Moment(
        earliest=NOON + minutes(10), latest=NOON + minutes(20)
    )


def test_what_cancels_a_wait_ends_it_only_when_surely_later() -> None:
    row = wait("bleed", "power_off", minimum="5 min", cancelled_by=("power_on",))
    off = happened("power_off", 0, 2)

    later = waits_in_force([row], [off, happened("power_on", 3)], NOON + minutes(3))
    earlier = waits_in_force([row], [happened("power_on", -1), off], NOON)
    doubtful = waits_in_force([row], [off, happened("power_on", 1)], NOON + minutes(3))

    assert later == ()
    assert only(earlier).state == "running"
    assert only(doubtful).state == "running"


def test_at_one_instant_the_order_told_decides() -> None:
    row = wait("delay", "power_on", minimum="3 min", cancelled_by=("power_off",))
    on, off = happened("power_on", 0), happened("power_off", 0)

    assert waits_in_force([row], [on, off], NOON) == ()
    assert only(waits_in_force([row], [off, on], NOON)).state == "running"


def test_a_restore_counts_as_power_on_unless_the_pack_has_its_own_row() -> None:
    power_on = wait("power-up", "power_on", minimum="3 min")
    restored = wait("restored", "power_restored", minimum="1 min")
    other = wait("power-up", "power_on", pack="other", minimum="5 min")
    told = [happened("power_lost", -2), happened("power_restored", 0)]

    assert only(waits_in_force([power_on], told, NOON)).row is power_on
    both = waits_in_force([power_on, restored, other], told, NOON)
    assert [state.row.gid for state in both] == ["quellmar/restored", "other/power-up"]


def test_a_first_start_counts_as_power_on_unless_the_pack_has_its_own_row() -> None:
    power_on = wait("power-up", "power_on", minimum="3 min")
    first = wait("first", "first_start", minimum="15 s")
    told = [happened("first_start", 0), happened("power_on", 0)]

    assert only(waits_in_force([power_on], told, NOON)).row is power_on
    assert only(waits_in_force([power_on, first], told, NOON)).row is first


def test_power_on_alone_is_no_first_start() -> None:
    first = wait("first", "first_start", minimum="15 s")

    assert waits_in_force([first], [happened("power_on", 0)], NOON) == ()


def test_a_second_reset_takes_over_from_the_first() -> None:
    first = wait("after-reset", "reset", minimum="3 min")
    second = wait("after-second", "second_reset", minimum="20 min")
    once = [happened("reset", 0)]
    twice = [happened("reset", 0), happened("reset", 2)]

    now = NOON + minutes(2)
    assert only(waits_in_force([first, second], once, now)).row is first
    assert only(waits_in_force([first, second], twice, now)).row is second
    assert only(waits_in_force([first], twice, now)).earliest == NOON + minutes(5)


def test_a_reset_told_first_without_a_time_is_the_first() -> None:
    second = wait("after-second", "second_reset", minimum="20 min")
    told = [happened("reset", None), happened("reset", 2)]

    found = only(waits_in_force([second], told, NOON + minutes(2)))

    assert found.earliest == NOON + minutes(22)


def test_a_second_reset_may_be_named_as_such() -> None:
    first = wait("after-reset", "reset", minimum="3 min")
    second = wait("after-second", "second_reset", minimum="20 min")
    told = [happened("reset", 0), happened("second_reset", 1)]

    found = only(waits_in_force([first, second], told, NOON + minutes(1)))

    assert found.earliest == NOON + minutes(21)


def test_a_protection_stop_stops_the_compressor_too() -> None:
    found = only(waits_in_force([RESTART], [happened("protection_stop", 0)], NOON))

    assert found.state == "running"


def test_a_wait_of_another_mode_is_left_out() -> None:
    row = wait("defrost", "defrost_started", kind="defrost", give_up="10 min")
    heating = wait("heat", "defrost_started", mode="heat", minimum="3 min")
    told = [happened("defrost_started", 0)]

    assert len(waits_in_force([row, heating], told, NOON)) == 2
    assert only(waits_in_force([row, heating], told, NOON, "cool")).row is row


def test_a_wait_long_over_is_no_longer_listed() -> None:
    told = [happened("compressor_stopped", 0)]
    plain = wait("plain", "compressor_stopped", minimum="3 min")

    end = NOON + minutes(3) + LISTED_FOR
    assert only(waits_in_force([plain], told, end)).state == "ready"
    assert waits_in_force([plain], told, end + timedelta(seconds=1)) == ()
    assert only(waits_in_force([RESTART], told, end)).state == "overdue"
    late = NOON + minutes(10) + LISTED_FOR + timedelta(seconds=1)
    assert waits_in_force([RESTART], told, late) == ()


def test_a_wait_with_only_a_give_up_runs_until_it_is_overdue() -> None:
    row = wait("standby", "power_lost", kind="standby", give_up="5 min")
    told = [happened("power_lost", 0)]

    assert only(waits_in_force([row], told, NOON + minutes(5))).state == "running"
    assert only(waits_in_force([row], told, NOON + minutes(6))).state == "overdue"


def test_a_wait_without_a_duration_runs_until_something_ends_it() -> None:
    row = wait(
        "standby", "power_lost", kind="standby", cancelled_by=("power_restored",)
    )
    told = [happened("power_lost", 0)]

    assert only(waits_in_force([row], told, NOON + minutes(500))).state == "running"
    told.append(happened("power_restored", 1))
    assert waits_in_force([row], told, NOON + minutes(500)) == ()


ORDER = wait(
    "order",
    "power_on",
    kind="startup_order",
    order=(
        {
            "part": "compressor",
            "after": "trigger",
            "earliest": "15 s",
            "latest": "20 s",
        },
        {"part": "fan", "after": "compressor", "earliest": "5 s", "latest": "10 s"},
    ),
)


def test_a_start_up_order_gives_each_part_its_time() -> None:
    state = only(waits_in_force([ORDER], [happened("power_on", 0)], NOON))

    second = timedelta(seconds=1)
    assert start_order(state) == (
        ("compressor", NOON + 15 * second, NOON + 20 * second),
        ("fan", NOON + 20 * second, NOON + 30 * second),
    )
    assert state.earliest == NOON + 20 * second
    assert state.give_up == NOON + 30 * second


def test_a_start_up_order_from_an_unknown_start_names_the_parts_only() -> None:
    state = only(waits_in_force([ORDER], [happened("power_on", None)], NOON))

    assert start_order(state) == (("compressor", None, None), ("fan", None, None))


def test_another_wait_has_no_parts() -> None:
    state = only(waits_in_force([RESTART], [happened("compressor_stopped", 0)], NOON))

    assert start_order(state) == ()


def test_deadlines_do_not_move_when_the_clocks_go_back() -> None:
    # Clocks in New York went from 02:00 EDT to 01:00 EST on 1 November 2026.
    zone = ZoneInfo("America/New_York")
    start = datetime(2026, 11, 1, 1, 58, tzinfo=zone)
    told = [Happening("compressor_stopped", Moment(earliest=start, latest=start))]

    before = start.astimezone(UTC) + minutes(2)
    found = only(waits_in_force([RESTART], told, before.astimezone(zone)))
    ready = only(waits_in_force([RESTART], told, before + minutes(1)))

    assert found.state == "running"
    assert ready.state == "ready"
    assert found.earliest is not None
    assert found.earliest.astimezone(UTC) == datetime(2026, 11, 1, 6, 1, tzinfo=UTC)


@pytest.mark.parametrize("jump", [timedelta(hours=1), timedelta(hours=-1)])
def test_a_clock_set_either_way_moves_no_deadline(jump: timedelta) -> None:
    clock = FixedClock(NOON)
    told = [happened("compressor_stopped", 0)]
    before = only(waits_in_force([RESTART], told, clock.now()))

    clock.advance(jump)
    after = waits_in_force([RESTART], told, clock.now())

    assert all(state.earliest == before.earliest for state in after)
    assert all(state.started == before.started for state in after)
    if jump < timedelta(0):
        assert only(after).state == "running"


RANK = {"running": 0, "ready": 1, "overdue": 2, "gone": 3}


@given(
    start=st.floats(-120, 120),
    wide=st.floats(0, 30),
    minimum=st.integers(0, 60),
    more=st.integers(0, 60),
    give_up=st.booleans(),
    nows=st.lists(st.floats(-200, 400), min_size=2, max_size=6),
)
def test_a_wait_never_goes_back_as_time_goes_on(
    start: float, wide: float, minimum: int, more: int, give_up: bool, nows: list[float]
) -> None:
    fields = {"minimum": f"{minimum} min"}
    if give_up:
        fields["give_up"] = f"{minimum + more} min"
    row = wait("any", "power_on", **fields)
    told = [happened("power_on", start, wide)]

    seen = []
    for now in sorted(nows):
        states = waits_in_force([row], told, NOON + minutes(now))
        seen.append(RANK[states[0].state if states else "gone"])

    assert seen == sorted(seen)


@given(
    start=st.integers(0, 60),
    wide=st.integers(0, 30),
    minimum=st.integers(0, 60),
    true=st.floats(0, 1),
    now=st.integers(0, 200),
)
def test_ready_is_never_said_before_the_true_minimum_has_passed(
    start: int, wide: int, minimum: int, true: float, now: int
) -> None:
    row = wait("any", "power_on", minimum=f"{minimum} min")
    really = NOON + minutes(start + true * wide)

    states = waits_in_force(
        [row], [Happening("power_on", at(start, wide))], NOON + minutes(now)
    )

    if states and states[0].state == "ready":
        assert NOON + minutes(now) >= really + minutes(minimum)
