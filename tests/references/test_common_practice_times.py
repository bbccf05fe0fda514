"""Six facts of the trade, written as a pack and read back as answers.

Every figure here is common practice, no source: no document is cited for it, and the
pack that carries it is of the kind `common`, which says so beside each answer.
"""

from __future__ import annotations

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from assistant.rules.applicability import Plate
from assistant.rules.inforce import InForce, in_force
from assistant.rules.loader import load_pack
from assistant.signals.decode import decode
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment
from assistant.timing.start_order import start_order
from assistant.timing.stop_values import StopSeries, StopsTold
from assistant.timing.stops import count_stops
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening, WaitState
from assistant.timing.wait_kinds.holds import PowerOffHold
from assistant.timing.waits import waits_in_force
from tests.pack_folders import write_pack

PACK = """\
schema: 1
id: practice
version: "1"
title: Common practice, no source
kind: common
"""

SIGNALS = """\
- id: flashes-3
  kind: count_per_window
  lamp: {board: outdoor main, colour: red}
  count: 3
  window: 8 s
  meaning: three
  is_fault: true
- id: flashes-4
  kind: count_per_window
  lamp: {board: outdoor main, colour: red}
  count: 4
  window: 8 s
  meaning: four
  is_fault: true
"""

WAITS = """\
- id: first-start
  kind: startup_order
  name: before a first start
  trigger: first_start
  minimum: 15 s
  give_up: 30 s
  order:
    - {part: compressor, after: trigger, earliest: 15 s, latest: 20 s}
    - {part: outdoor fan, after: compressor, earliest: 0 s, latest: 10 s}
- id: after-reset
  kind: start_delay
  name: after a reset
  trigger: reset
  minimum: 3 min
  give_up: 5 min
- id: after-second-reset
  kind: start_delay
  name: after a second reset
  trigger: second_reset
  minimum: 20 min
- id: fan-board-clears
  kind: power_off_hold
  name: without power to clear the fan board
  trigger: lamp_dark
  minimum: 15 s
  approx: true
  cancelled_by: [power_on]
"""

STOPS = """\
- id: pressure-stops
  kind: sliding_window
  name: pressure stops
  event: high pressure
  limit: 6
  window: 60 min
  edge: counts
  resets:
    - name: power
      off_at_least: 15 s
      counted_from: lamp_dark
      how: open the disconnect, wait for the fan board's lamp to go dark, then wait on
      evidence_lost: the flashes shown now
"""

START = datetime(2026, 5, 4, 9, 0, tzinfo=UTC)
SECOND = timedelta(seconds=1)
MINUTE = timedelta(minutes=1)


@pytest.fixture
def force(tmp_path: Path) -> InForce:
    files = {
        "pack.yaml": PACK,
        "signals.yaml": SIGNALS,
        "waits.yaml": WAITS,
        "stops.yaml": STOPS,
    }
    return in_force([load_pack(write_pack(tmp_path / "practice", files))], Plate())


def moment(after: timedelta) -> Moment:
    return Moment(earliest=START + after, latest=START + after)


def waiting(
    force: InForce, now: timedelta, *told: tuple[Trigger, timedelta]
) -> tuple[WaitState, ...]:
    happenings = [Happening(trigger, moment(after)) for trigger, after in told]
    return waits_in_force(force.waits, happenings, START + now)


def test_flashes_are_counted_over_eight_seconds(force: InForce) -> None:
    def seen(over: float) -> Observation:
        return Observation(colour=("red",), state="count", count=(4,), window_s=over)

    match = decode([seen(8.0)], force.signals)
    longer = decode([seen(16.0)], force.signals)

    assert match.verdict == "exact"
    assert match.candidates[0].row.gid == "practice/flashes-4"
    assert "window" in match.candidates[0].matched
    assert longer.verdict == "not_decodable"


def test_a_first_start_takes_fifteen_to_twenty_seconds(force: InForce) -> None:
    told: tuple[Trigger, timedelta] = ("first_start", 0 * SECOND)

    (early,) = waiting(force, 14 * SECOND, told)
    (ready,) = waiting(force, 15 * SECOND, told)

    assert early.state == "running"
    assert ready.state == "ready"
    assert ready.earliest == START + 15 * SECOND
    part, soonest, latest = start_order(ready)[0]
    assert (part, soonest, latest) == (
        "compressor",
        START + 15 * SECOND,
        START + 20 * SECOND,
    )


def test_the_compressor_starts_first_and_the_fan_after(force: InForce) -> None:
    (state,) = waiting(force, 0 * SECOND, ("first_start", 0 * SECOND))

    (first, compressor, _), (second, fan, _) = start_order(state)

    assert (first, second) == ("compressor", "outdoor fan")
    assert compressor is not None
    assert fan is not None
    assert compressor <= fan


def test_three_to_five_minutes_after_a_reset(force: InForce) -> None:
    told: tuple[Trigger, timedelta] = ("reset", 0 * SECOND)

    states = [waiting(force, n * MINUTE, told)[0].state for n in (2, 3, 5, 6)]

    assert states == ["running", "ready", "ready", "overdue"]


def test_twenty_minutes_after_a_second_reset(force: InForce) -> None:
    told: tuple[tuple[Trigger, timedelta], ...] = (
        ("reset", 0 * SECOND),
        ("reset", 10 * MINUTE),
    )

    (early,) = waiting(force, 29 * MINUTE, *told)
    (ready,) = waiting(force, 30 * MINUTE, *told)

    assert early.row.gid == "practice/after-second-reset"
    assert early.state == "running"
    assert ready.state == "ready"


def test_a_fan_board_clears_fifteen_seconds_after_its_lamp_went_dark(
    force: InForce,
) -> None:
    # Power goes off at once, the lamp holds up for 40 s: only then does it count.
    told: tuple[tuple[Trigger, timedelta], ...] = (
        ("power_off", 0 * SECOND),
        ("lamp_dark", 40 * SECOND),
    )

    assert waiting(force, 20 * SECOND, told[0]) == ()
    (early,) = waiting(force, 54 * SECOND, *told)
    (ready,) = waiting(force, 55 * SECOND, *told)
    back = waiting(force, 50 * SECOND, *told, ("power_on", 50 * SECOND))

    assert early.state == "running"
    assert ready.state == "ready"
    assert isinstance(ready.row.wait, PowerOffHold)
    assert ready.row.wait.approx
    assert back == ()
    reset = force.stops[0].stop.resets[0]
    assert reset.counted_from == "lamp_dark"
    assert reset.off_at_least is not None
    assert reset.off_at_least.value == 15.0


@pytest.mark.parametrize(
    ("stops", "state", "left"), [(4, "open", 2), (5, "open", 1), (6, "locked", 0)]
)
def test_six_pressure_stops_in_an_hour_lock_it_out(
    force: InForce, stops: int, state: str, left: int
) -> None:
    last = moment(0 * SECOND)
    told = StopSeries("high pressure", last, (stops,), apart=(600.0, 600.0))

    (found,) = count_stops(force.stops, StopsTold((told,)), START)

    assert (found.state, found.left, found.high) == (state, left, stops)


def test_six_pressure_stops_in_more_than_an_hour_do_not(force: InForce) -> None:
    last = moment(0 * SECOND)
    told = StopSeries("high pressure", last, (6,), apart=(780.0, 780.0))

    (found,) = count_stops(force.stops, StopsTold((told,)), START)

    assert found.state == "open"
    assert found.high == 5


def test_common_practice_is_marked_as_such(force: InForce) -> None:
    assert {row.pack_kind for row in force.rows.values()} == {"common"}
    assert all(row.item.source is None for row in force.rows.values())
