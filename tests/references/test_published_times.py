"""Waits and lockout limits as makers print them, held to at their very edges.

The makers named here are the sources of the figures, nothing else. Each limit is
written as a pack would and then asked one stop, or one second, on either side of it.
"""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest
from pydantic import TypeAdapter

from assistant.timing.stop_kinds import Stop
from assistant.timing.stop_values import StopCount, StopRow, StopSeries, StopsTold
from assistant.timing.stops import count_stops
from assistant.timing.values import NOTHING_KNOWN, Known, WaitRow, WaitState
from assistant.timing.wait_kinds.every import Wait
from assistant.timing.waits import waits_in_force
from tests.wait_rows import NOON, at, happened, minutes

_STOP: TypeAdapter[Stop] = TypeAdapter(Stop)
_WAIT: TypeAdapter[Wait] = TypeAdapter(Wait)
SECOND = timedelta(seconds=1)


def stop(kind: str, **fields: Any) -> StopRow:
    """Return a counter of the protection `it`, ended by the power."""
    written = {
        "id": "it",
        "kind": kind,
        "name": "it",
        "event": "it",
        "release": "power",
    }
    return StopRow("of/it", _STOP.validate_python(written | fields), "confirmed")


def shown(row: StopRow, *times: float, **told: Any) -> StopCount:
    """Return what a counter shows a second after the last of some stops."""
    series = tuple(StopSeries("it", at(time), **told) for time in times)
    now = NOON + minutes(times[-1]) + SECOND
    return count_stops([row], StopsTold(series), now)[0]


def wait(kind: str, **fields: Any) -> WaitRow:
    """Return a wait as written."""
    written = {"id": "it", "kind": kind, "name": "it"}
    return WaitRow("of/it", _WAIT.validate_python(written | fields), "confirmed")


def standing(
    row: WaitRow, trigger: Any, seconds: float, known: Known = NOTHING_KNOWN
) -> WaitState:
    """Return a wait so many seconds after what began it."""
    now = NOON + timedelta(seconds=seconds)
    (state,) = waits_in_force([row], [happened(trigger, 0)], now, known=known)
    return state


WINDOWS = (
    # limit, minutes, who prints it
    (3, 20, "overcurrent: Panasonic WH-SXF12D6E5 p. 60"),
    (3, 30, "power module too hot: Panasonic WH-SXF12D6E5 p. 60"),
    (3, 60, "inverter protection: Midea VRF p. 107"),
    (3, 100, "inverter protection: Trane TVR Pro p. 30"),
    (3, 60, "high pressure: Fujitsu UTP-VX60A 02-11"),
    (5, 180, "low pressure: Fujitsu UTP-VX60A 02-11"),
    (3, 40, "broken sensor: Mitsubishi Heavy SRK45ZMP p. 42"),
)


@pytest.mark.parametrize(
    ("limit", "window", "source"), WINDOWS, ids=[source for *_, source in WINDOWS]
)
def test_a_printed_limit_locks_inside_its_window_and_not_outside(
    limit: int, window: int, source: str
) -> None:
    row = stop("sliding_window", limit=limit, window=f"{window} min", edge="counts")
    step = window / (limit - 1)
    edge = [step * nth for nth in range(limit)]
    late = [*edge[:-1], edge[-1] + 1 / 60]

    inside, outside = shown(row, *edge), shown(row, *late)

    assert inside.state == "locked", source
    assert (outside.state, outside.left) == ("open", 1), source


def test_three_stops_of_one_call_lock_and_a_new_call_counts_anew() -> None:
    # Rheem portal fault page: three in one call, then a manual reset.
    row = stop("per_call", limit=3)

    assert shown(row, 0, 5, 10, one_call=True).state == "unknown"
    series = StopSeries("it", at(10), (3,), apart=(300.0, 300.0), one_call=True)
    (locked,) = count_stops([row], StopsTold((series,)), NOON + minutes(11))
    assert locked.state == "locked"
    assert shown(row, 0, 5).state != "locked"


def test_seven_peaks_in_a_row_lock_and_rests_between_them_grow_shorter() -> None:
    # Panasonic WH-SXF12D6E5 p. 60: retry after 3, 2, then 1 min; the seventh locks.
    count = stop("consecutive", limit=7, clears_after={"run": "60 min"})
    rest = wait(
        "restart_delay",
        trigger="protection_stop",
        by_attempt=("3 min", "2 min", "1 min"),
        then="repeats",
    )

    assert shown(count, *range(0, 12, 2)).state == "open"
    assert shown(count, *range(0, 14, 2)).state == "locked"
    for attempt, seconds in ((1, 180), (2, 120), (3, 60), (6, 60)):
        known = Known(attempts=(attempt,))
        before = standing(rest, "protection_stop", seconds - 1, known)
        after = standing(rest, "protection_stop", seconds, known)
        assert (before.state, after.state) == ("running", "ready"), attempt


def test_twenty_four_failed_starts_lock() -> None:
    # Sharp-type outdoor table, document 55112 p. 27.
    row = stop("failed_starts", limit=24, event="it")

    assert shown(row, *range(23)).state == "open"
    assert shown(row, *range(24)).state == "locked"


def test_three_overcurrents_within_a_minute_of_starts_lock() -> None:
    # The same table: overcurrent at start, three within 1 min.
    row = stop("sliding_window", limit=3, window="1 min", edge="counts")

    assert shown(row, 0, 0.5, 1).state == "locked"
    assert shown(row, 0, 0.5, 1 + 1 / 60).state == "open"


def test_a_pressure_lock_of_ten_minutes_opens_by_itself() -> None:
    # Fujitsu UTP-VX60A 02-11: three in 60 min, then a longer stop of 10 min.
    row = stop(
        "auto_release", limit=3, window="60 min", edge="counts", release_after="10 min"
    )
    told = StopsTold(tuple(StopSeries("it", at(time)) for time in (0, 10, 20)))

    (locked,) = count_stops([row], told, NOON + minutes(29))
    (opened,) = count_stops([row], told, NOON + minutes(31))

    assert (locked.state, opened.state) == ("locked", "open")


HOLDS: tuple[tuple[str, str, int, dict[str, Any], str], ...] = (
    # kind, what begins it, seconds, more, who prints it
    ("minimum_off", "compressor_stopped", 180, {}, "Panasonic CS-E28GKE p. 41"),
    ("minimum_off", "compressor_stopped", 180, {}, "Carrier 42QHC024 p. 34"),
    ("minimum_run", "compressor_started", 30, {}, "Panasonic WH-SXF12D6E5 p. 60"),
    ("start_delay", "power_on", 60, {}, "Midea MS9A, first power-up"),
    ("start_delay", "power_restored", 180, {}, "Midea MOB01, after an outage"),
    ("start_delay", "power_restored", 300, {}, "Lennox XC21 p. 30, after an outage"),
    ("minimum_off", "compressor_stopped", 300, {}, "Samsung RSG5D p. 87, fault"),
    ("ignore_window", "compressor_started", 90,
     {"input": "sensor faults"}, "Lennox XC21 p. 30, sensor faults not looked at"),
    ("display_delay", "compressor_stopped", 200, {}, "Gree GWHD-18 p. 57"),
)  # fmt: skip


@pytest.mark.parametrize(
    ("kind", "trigger", "seconds", "more", "source"),
    HOLDS,
    ids=[f"{row[0]} {row[-1]}" for row in HOLDS],
)
def test_a_printed_time_runs_to_its_last_second(
    kind: str, trigger: str, seconds: int, more: dict[str, Any], source: str
) -> None:
    row = wait(kind, trigger=trigger, minimum=f"{seconds} s", **more)

    before = standing(row, trigger, seconds - 1)
    after = standing(row, trigger, seconds)

    assert before.state == "running", source
    assert before.earliest == NOON + timedelta(seconds=seconds), source
    assert after.state == "ready", source
