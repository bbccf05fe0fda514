"""Each kind of counter by hand: what locks it, what does not, and what clears it."""

from __future__ import annotations

from datetime import timedelta
from typing import Any, get_args

import pytest

from assistant.timing.stop_kinds import Stop
from assistant.timing.stop_values import (
    GoodRun,
    ResetTold,
    StopCount,
    StopSeries,
    StopsTold,
)
from assistant.timing.stops import count_stops
from tests.stop_rows import ANY_POWER, WRITTEN, row
from tests.wait_rows import NOON, at, minutes


def counted(kind: str, told: StopsTold, now: float = 60, **fields: object) -> StopCount:
    """Return what the invented counter of a kind shows some minutes after noon."""
    return count_stops([row(kind, **fields)], told, NOON + minutes(now))[0]


def stops(event: str, *times: float, **told: object) -> StopsTold:
    """Return stops at minutes after noon."""
    series = tuple(StopSeries(event, at(time), **told) for time in times)  # type: ignore[arg-type]
    return StopsTold(series)


def test_there_is_one_invented_counter_for_each_kind() -> None:
    kinds = {
        get_args(model.model_fields["kind"].annotation)[0]
        for model in get_args(get_args(Stop)[0])
    }

    assert set(WRITTEN) == kinds


def test_a_sliding_window_locks_on_its_fifth_stop() -> None:
    four = counted("sliding_window", stops("high pressure", 0, 10, 20, 30), now=31)
    five = counted("sliding_window", stops("high pressure", 0, 10, 20, 30, 40), now=41)

    assert (four.state, four.left) == ("open", 1)
    assert four.oldest_leaves == NOON + minutes(40)
    assert (five.state, five.levels) == ("locked", (1,))


def test_a_row_is_broken_by_a_gap_that_may_hold_a_good_run() -> None:
    # 29 minutes hold no run of 30; 31 may, and a run of 40 that was told does.
    close = counted("consecutive", stops("low pressure", 0, 10, 39), now=40)
    apart = counted("consecutive", stops("low pressure", 0, 10, 41), now=42)
    told = stops("low pressure", 0, 10, 55)
    ran = StopsTold(told.stops, good=(GoodRun(at(50), ran=(2400.0, 2400.0)),))

    assert close.state == "locked"
    assert (apart.state, apart.low, apart.high) == ("unknown", 1, 3)
    assert (counted("consecutive", ran).state, counted("consecutive", ran).high) == (
        "open",
        1,
    )


def test_stops_told_in_a_row_have_no_good_run_between_them() -> None:
    series = StopSeries("low pressure", at(0), (3,), apart=(3600.0, 3600.0))
    in_a_row = StopSeries(
        "low pressure", at(0), (3,), apart=(3600.0, 3600.0), in_a_row=True
    )

    assert counted("consecutive", StopsTold((series,))).state == "unknown"
    assert counted("consecutive", StopsTold((in_a_row,))).state == "locked"


def test_good_cycles_and_days_begin_a_row_anew() -> None:
    told = stops("low pressure", 0, 10)
    after = StopSeries("low pressure", at(20))
    good = StopsTold((*told.stops, after), good=(GoodRun(at(15), cycles=(2,)),))
    two: dict[str, Any] = {"clears_after": {"good_cycles": 2}}
    three: dict[str, Any] = {"clears_after": {"good_cycles": 3}}
    days: dict[str, Any] = {"clears_after": {"days": 1}}
    late = StopsTold((*told.stops, StopSeries("low pressure", at(10 + 1440))))
    sooner = StopsTold((*told.stops, StopSeries("low pressure", at(10 + 1439))))

    assert counted("consecutive", good, **two).state == "open"
    assert counted("consecutive", good, **three).state == "unknown"
    assert counted("consecutive", late, now=1500, **days).state == "open"
    assert counted("consecutive", sooner, now=1500, **days).state == "locked"


def test_only_stops_soon_after_a_start_count() -> None:
    soon = StopSeries("overcurrent", at(0), (3,), apart=(60.0, 60.0), ran=(20.0, 45.0))
    late = StopSeries("overcurrent", at(0), (3,), apart=(60.0, 60.0), ran=(46.0, 60.0))
    unsaid = StopSeries("overcurrent", at(0), (3,), apart=(60.0, 60.0))

    assert counted("within_start", StopsTold((soon,))).state == "locked"
    assert counted("within_start", StopsTold((late,))).high == 0
    assert counted("within_start", StopsTold((unsaid,))).state == "unknown"


@pytest.mark.parametrize(("in_a_row", "state"), [(True, "open"), (False, "locked")])
def test_a_late_stop_begins_a_row_of_early_ones_anew(
    in_a_row: bool, state: str
) -> None:
    runs = [(0, 20.0), (1, 60.0), (2, 20.0), (3, 20.0)]
    told = StopsTold(
        tuple(StopSeries("overcurrent", at(n), ran=(ran, ran)) for n, ran in runs)
    )

    assert counted("within_start", told, now=4, in_a_row=in_a_row).state == state


def test_a_new_call_counts_anew() -> None:
    told = stops("limit switch", 0, 5, 20, 25)
    known = StopsTold(told.stops, calls=(at(-5),))
    anew = StopsTold(told.stops, calls=(at(-5), at(10)))
    one = StopSeries("limit switch", at(0), (4,), apart=(60.0, 60.0), one_call=True)

    assert counted("per_call", told).state == "unknown"
    assert counted("per_call", known).state == "locked"
    assert (counted("per_call", anew).state, counted("per_call", anew).high) == (
        "open",
        2,
    )
    assert counted("per_call", StopsTold((one,))).state == "locked"


def test_starts_that_failed_are_not_stops() -> None:
    failed = StopSeries("failed start", at(0), (20,), in_a_row=True)
    stopped = StopSeries("high pressure", at(0), (20,))

    assert counted("failed_starts", StopsTold((failed,))).state == "locked"
    assert counted("failed_starts", StopsTold((stopped,))).high == 0


def test_soft_lockouts_are_counted_by_the_hard_one() -> None:
    # Two within 5 h lock softly; three soft ones within 10 h lock hard.
    once = counted("levels", stops("head pressure", 0, 10), now=11)
    twice = stops("head pressure", 0, 10, 100, 110)
    three = stops("head pressure", 0, 10, 100, 110, 200, 210)

    assert (once.state, once.levels, once.upper) == ("locked", (1,), ((1, 1, 3),))
    assert once.releases == (NOON + minutes(40), NOON + minutes(40))
    later = counted("levels", twice, now=150)
    assert (later.state, later.left, later.upper) == ("open", 2, ((2, 2, 3),))
    assert counted("levels", three, now=900).levels == (2,)


def test_the_remote_ends_only_the_soft_lockout_and_keeps_its_count() -> None:
    remote = ResetTold(at(12), "remote")
    told = stops("head pressure", 0, 10)
    soft = counted("levels", StopsTold(told.stops, (remote,)), now=13)
    six = stops("head pressure", 0, 10, 100, 110, 200, 210)
    after = StopsTold(six.stops, (ResetTold(at(220), "remote"),))
    power = ResetTold(at(220), "power", off=(300.0, 300.0), supplies="together")

    assert (soft.state, soft.upper) == ("open", ((1, 1, 3),))
    assert counted("levels", after, now=230).levels == (2,)
    ended = counted("levels", StopsTold(six.stops, (power,)), now=230)
    assert (ended.state, ended.upper) == ("open", ((0, 0, 3),))


def test_the_first_stop_starts_again_by_itself_the_second_of_its_cause_does_not() -> (
    None
):
    first = counted("first_auto", stops("discharge temperature", 0), now=10)
    other = StopsTold(
        (
            *stops("discharge temperature", 0).stops,
            *stops("module temperature", 60).stops,
        )
    )

    assert (first.state, first.left) == ("open", 1)
    assert first.releases == (NOON + minutes(50), NOON + minutes(50))
    assert counted("first_auto", other, now=70).state == "open"
    again = stops("discharge temperature", 0, 60)
    assert counted("first_auto", again, now=70).state == "locked"


def test_each_device_is_counted_alone() -> None:
    fans = [("fan 1", 0), ("fan 2", 1), ("fan 1", 2), ("fan 2", 3)]
    told = tuple(StopSeries("fan stop", at(n), device=name) for name, n in fans)
    more = (*told, StopSeries("fan stop", at(4), device="fan 2"))
    unsaid = (*told, StopSeries("fan stop", at(4)))

    assert (counted("per_device", StopsTold(told), now=5).left) == 1
    assert counted("per_device", StopsTold(more), now=5).state == "locked"
    # Whichever it was, it was the third of its own.
    assert counted("per_device", StopsTold(unsaid), now=5).state == "locked"
    other = StopsTold((StopSeries("fan stop", at(0), device="fan 9"),))
    assert counted("per_device", other, now=5).high == 0


def test_what_is_not_back_in_time_latches() -> None:
    told = stops("low voltage", 0)
    back = StopsTold(told.stops, starts=(at(10),))
    still = StopsTold(told.stops, running=False)

    early = counted("duration_latch", told, now=15)
    assert (early.state, early.latches) == ("open", (NOON + minutes(15),) * 2)
    assert counted("duration_latch", told, now=16).state == "unknown"
    assert counted("duration_latch", still, now=16).state == "locked"
    assert counted("duration_latch", back, now=16).state == "open"


def test_one_stop_stays_until_the_power_was_off() -> None:
    told = stops("locked rotor", 0)
    power = ResetTold(at(5), "power", off=(240.0, 240.0), supplies="together")
    button = ResetTold(at(5), "button")

    unsaid = ResetTold(at(5), "power")

    assert counted("until_power_off", told).state == "locked"
    assert counted("until_power_off", StopsTold(told.stops, (unsaid,))).state == (
        "unknown"
    )
    assert counted("until_power_off", StopsTold(told.stops, (button,))).state == (
        "locked"
    )
    assert counted("until_power_off", StopsTold(told.stops, (power,))).state == "open"


def test_a_lockout_ends_by_its_timer() -> None:
    # The window is 3 h and its edge does not count.
    told = stops("freeze protection", 0, 179)
    edge = stops("freeze protection", 0, 180)

    held = counted("auto_release", told, now=200)
    assert (held.state, held.releases) == ("locked", (NOON + minutes(239),) * 2)
    assert counted("auto_release", told, now=239).state == "open"
    assert counted("auto_release", edge, now=200).state == "open"


def test_a_lockout_that_ends_with_its_cause_may_have_ended() -> None:
    gone: dict[str, Any] = {
        "release_after": None,
        "release_when": "the coil is above 10 degC",
    }
    told = stops("freeze protection", 0, 10)

    assert counted("auto_release", told, **gone).state == "unknown"
    runs = StopsTold(told.stops, running=True)
    assert counted("auto_release", runs, **gone).state == "open"


def test_what_only_logs_never_locks() -> None:
    found = counted("log_only", stops("inverter temperature", 0, 10, 20, 30))

    assert (found.state, found.high, found.limit, found.left) == ("open", 4, 2, 0)


def test_a_number_that_is_not_sure_is_followed_both_ways() -> None:
    told = StopsTold((StopSeries("high pressure", at(0), (4, 5), apart=(60.0, 60.0)),))
    two = StopsTold((StopSeries("high pressure", at(0), (2, 3), apart=(60.0, 60.0)),))

    assert counted("sliding_window", told).state == "unknown"
    assert (counted("sliding_window", two, now=1).low) == 2
    assert (counted("sliding_window", two, now=1).left) == 2


def test_stops_of_no_told_times_may_or_may_not_lock() -> None:
    told = StopsTold((StopSeries("high pressure", at(0), (5,)),))
    within = StopSeries(
        "high pressure", at(0), (5,), since=NOON - timedelta(minutes=40)
    )

    assert counted("sliding_window", told, now=1).state == "unknown"
    assert counted("sliding_window", StopsTold((within,)), now=1).state == "locked"


def test_a_stop_of_no_named_protection_counts_where_it_is_pointed_to() -> None:
    rule = row("sliding_window")
    told = StopsTold((StopSeries(None, at(0)),))

    assert count_stops([rule], told, NOON + minutes(1))[0].high == 0
    assert count_stops([rule], told, NOON + minutes(1), [rule.gid])[0].high == 1


def test_too_many_courses_leave_it_open_and_say_so() -> None:
    # Spans within spans: hundreds of orders, none of them certain.
    told = StopsTold(
        tuple(
            StopSeries("head pressure", at(-300 + 20 * n, 600 - 40 * n))
            for n in range(12)
        )
    )

    found = counted("levels", told, now=400)

    assert (found.state, found.exact) == ("unknown", False)
    assert (found.low, found.high) == (0, 12)


@pytest.mark.parametrize(
    ("kind", "fields", "says"),
    [
        ("sliding_window", {"resets": ()}, "names its reset or its release"),
        ("within_start", {"window": "1 min"}, "written together"),
        (
            "failed_starts",
            {"window": "1 min", "edge": "counts"},
            "not both",
        ),
        ("consecutive", {"clears_after": {}}, "say `run`"),
        ("levels", {"release": "by itself"}, "stand in each level"),
        (
            "until_power_off",
            {"resets": (ANY_POWER | {"name": "button"},)},
            "only a reset by power",
        ),
        ("auto_release", {"release_after": None}, "names its reset or its release"),
        ("first_auto", {"limit": 1}, "greater than or equal to 2"),
    ],
)
def test_a_rule_that_does_not_hold_together_is_refused(
    kind: str, fields: dict[str, object], says: str
) -> None:
    with pytest.raises(ValueError, match=says):
        row(kind, **fields)
