"""Waits against a clock that is stopped, set, shifted and restarted."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

from hypothesis import given
from hypothesis import strategies as st

from assistant.clock import FixedClock
from assistant.jobs.events import Body, Entered, Event, Opened
from assistant.jobs.fold import fold_all
from assistant.timing.moment import Moment
from assistant.timing.off_times import between, judge_off_times
from assistant.timing.values import Happening, Known, ValueTold, WaitRow, WaitState
from assistant.timing.waits import waits_in_force
from assistant.units.parse import parse_quantity
from tests.wait_rows import NOON, at, happened, minutes, wait
from tests.waits_of_each_kind import ROWS
from tests.waits_told import of_kind

TIMED = [of_kind(row.kind) for row in ROWS if row.kind != "button"]
ROW = st.sampled_from(TIMED)
AFTER = st.floats(0, 200)
RANK = {"start_unknown": 0, "running": 1, "ready": 2, "overdue": 3}


def states(row: WaitRow, told: list[Happening], now: datetime) -> tuple[WaitState, ...]:
    return waits_in_force([row], told, now)


def begun(row: WaitRow, start: float = 0, wide: float = 0) -> list[Happening]:
    return [Happening(row.wait.trigger, at(start, wide))]


@given(row=ROW, sleeps=st.lists(st.floats(0, 60), max_size=5))
def test_a_suspend_changes_nothing_but_the_time_that_has_passed(
    row: WaitRow, sleeps: list[float]
) -> None:
    clock = FixedClock(NOON)
    told = begun(row)
    for sleep in sleeps:
        clock.advance(minutes(sleep))
        states(row, told, clock.now())

    after = states(row, told, clock.now())

    assert after == states(row, told, NOON + minutes(0) + (clock.now() - NOON))


@given(row=ROW, after=AFTER, jump=st.floats(-300, 300))
def test_a_wall_clock_set_forth_and_back_again_leaves_every_deadline(
    row: WaitRow, after: float, jump: float
) -> None:
    clock = FixedClock(NOON + minutes(after))
    told = begun(row)
    before = states(row, told, clock.now())

    clock.advance(minutes(jump))
    astray = states(row, told, clock.now())
    clock.advance(-minutes(jump))

    assert states(row, told, clock.now()) == before
    for one in astray:
        for other in before:
            assert (one.earliest, one.give_up) == (other.earliest, other.give_up)


@given(
    row=ROW,
    hours=st.integers(0, 72),
    zone=st.sampled_from(["America/New_York", "Europe/London", "Pacific/Auckland"]),
    after=AFTER,
)
def test_summer_time_moves_no_deadline(
    row: WaitRow, hours: int, zone: str, after: float
) -> None:
    # Around the change of 1 November 2026 in New York; elsewhere it changed earlier.
    start = datetime(2026, 10, 31, tzinfo=UTC) + timedelta(hours=hours)
    local = start.astimezone(ZoneInfo(zone))
    there = [Happening(row.wait.trigger, Moment(earliest=local, latest=local))]
    here = [Happening(row.wait.trigger, Moment(earliest=start, latest=start))]
    now = start + minutes(after)

    assert states(row, there, now.astimezone(ZoneInfo(zone))) == states(row, here, now)


@given(row=ROW, after=AFTER)
def test_a_restart_in_the_middle_reads_the_same_waits_from_the_log(
    row: WaitRow, after: float
) -> None:
    from assistant.dialogue.happenings import happenings
    from assistant.facts import HappeningFact

    fact = HappeningFact(trigger=row.wait.trigger, at=at(0))
    bodies: tuple[Body, ...] = (Opened(), Entered(facts=(fact,)))
    log = [
        Event(
            id=f"{seq:026}",
            job="J",
            noted=NOON,
            machine="M",
            seq=seq,
            prev="",
            body=body,
        )
        for seq, body in enumerate(bodies)
    ]
    stored = [Event.model_validate_json(event.model_dump_json()) for event in log]

    again = happenings(fold_all(stored))

    now = NOON + minutes(after)
    assert states(row, list(again), now) == states(row, begun(row), now)


@given(row=ROW, after=st.floats(0, 10), order=st.booleans())
def test_of_two_events_at_one_instant_the_one_told_last_stands(
    row: WaitRow, after: float, order: bool
) -> None:
    enders = [one for one in row.wait.enders if one != row.wait.trigger]
    if not enders or row.wait.kind == "standby":
        return
    start, end = begun(row)[0], Happening(enders[0], at(0))
    told = [start, end] if order else [end, start]

    found = states(row, told, NOON + minutes(after))

    alone = states(row, [start], NOON + minutes(after))
    assert found == (() if order else alone)


@given(row=ROW, wide=st.floats(0, 30), nows=st.lists(AFTER, min_size=2, max_size=6))
def test_a_wait_of_any_kind_never_goes_back_as_time_goes_on(
    row: WaitRow, wide: float, nows: list[float]
) -> None:
    told = begun(row, 0, wide)

    seen = [
        RANK[found[0].state] if found else len(RANK)
        for now in sorted(nows)
        for found in [states(row, told, NOON + minutes(now))]
    ]

    assert seen == sorted(seen)


@given(
    row=ROW,
    wide=st.floats(0, 30),
    true=st.floats(0, 1),
    after=st.floats(0, 300),
)
def test_neither_ready_nor_overdue_is_said_before_it_is_true_of_every_start(
    row: WaitRow, wide: float, true: float, after: float
) -> None:
    # At least: the smaller believable time. Not longer than: the larger may say so.
    now = NOON + minutes(after)
    start = NOON + minutes(true * wide)
    for state in states(row, begun(row, 0, wide), now):
        least = row.wait.minimum or row.wait.usual
        if state.state == "ready" and least is not None and not state.choices:
            assert now - start >= timedelta(seconds=least.value) - timedelta(seconds=1)
        longest = row.wait.give_up
        if state.state in ("running", "ready") and longest is not None:
            assert now - NOON <= timedelta(seconds=longest.value)


@given(
    begin=st.floats(-60, 0),
    begin_wide=st.floats(0, 20),
    end=st.floats(0, 60),
    end_wide=st.floats(0, 20),
    true=st.tuples(st.floats(0, 1), st.floats(0, 1)),
)
def test_a_believable_time_holds_the_true_one_and_grows_with_what_is_not_known(
    begin: float,
    begin_wide: float,
    end: float,
    end_wide: float,
    true: tuple[float, float],
) -> None:
    first, last = at(begin, begin_wide), at(end, end_wide)

    low, high = between(first, last)
    sharper = between(
        Moment(earliest=first.latest, latest=first.latest),
        Moment(earliest=last.latest, latest=last.latest),
    )

    really = minutes(end + true[1] * end_wide - begin - true[0] * begin_wide)
    slack = timedelta(milliseconds=1)
    assert low - slack <= max(timedelta(0), really) <= high + slack
    assert timedelta(0) <= low <= sharper[0] <= sharper[1] <= high


@given(off=st.floats(0, 20), wide=st.floats(0, 5), true=st.floats(0, 1))
def test_an_off_time_is_never_called_kept_when_it_may_not_have_been(
    off: float, wide: float, true: float
) -> None:
    row = of_kind("reset_window")
    told = [happened("power_off", 0, wide), happened("power_on", wide + off)]

    (found,) = judge_off_times([row], told)

    really = wide + off - true * wide
    if found.result == "held":
        assert 3 - 0.001 <= really <= 9 + 0.001
    if found.result == "too_short":
        assert really < 3 + 0.001
    if found.result == "too_long":
        assert really > 9 - 0.001


@given(
    told=st.lists(st.tuples(st.integers(-10, 30), st.integers(60, 90)), max_size=4),
    after=st.floats(0, 60),
)
def test_a_value_is_never_taken_for_met_unless_one_told_since_meets_it(
    told: list[tuple[int, int]], after: float
) -> None:
    row = of_kind("value_and_time")
    values = tuple(
        ValueTold("discharge temperature", parse_quantity(f"{warm} degC"), at(when))
        for when, warm in told
    )

    found = waits_in_force(
        [row],
        [happened("protection_stop", 0)],
        NOON + minutes(after),
        known=Known(values=values),
    )

    if found and found[0].state == "ready":
        since = [(when, place) for place, (when, _) in enumerate(told) if when >= 0]
        assert since
        assert told[max(since)[1]][1] < 75


@given(
    lengths=st.lists(st.integers(1, 60), min_size=2, max_size=5),
    attempts=st.lists(st.integers(1, 6), max_size=3, unique=True),
    after=st.floats(0, 90),
)
def test_without_the_attempt_no_restart_is_promised_before_the_longest(
    lengths: list[int], attempts: list[int], after: float
) -> None:
    row = wait(
        "restart",
        "compressor_stopped",
        kind="restart_delay",
        by_attempt=tuple(f"{length} min" for length in lengths),
        then="repeats",
    )
    known = Known(attempts=tuple(sorted(attempts)))

    found = waits_in_force(
        [row], [happened("compressor_stopped", 0)], NOON + minutes(after), known=known
    )

    possible = [lengths[min(one, len(lengths)) - 1] for one in attempts] or lengths
    if found and found[0].state == "ready":
        assert after >= max(possible) - 0.001
    if found and found[0].state == "running":
        assert after < max(possible) + 0.001
