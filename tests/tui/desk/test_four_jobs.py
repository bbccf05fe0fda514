"""Four jobs with timers over an hour: suspend and clock changes included."""

from __future__ import annotations

from collections import Counter
from datetime import datetime, timedelta
from pathlib import Path

import pytest
from textual.pilot import Pilot

from assistant.clock import FixedClock
from assistant.jobs.events import TimerDue
from assistant.settings import Settings
from tests.desk_driver import START, desk_on, keys, settle, shown, type_in
from tui.desk.app import Desk
from tui.desk.timers import wait_line
from tui.desk.views import over

pytestmark = pytest.mark.model
STEP = timedelta(minutes=2)
RESET_DELAY = timedelta(minutes=5)
"""VSM-1522 Rev. B, PDF page 9: wait 5 minutes after a reset."""


async def to(pilot: Pilot[None], desk: Desk, clock: FixedClock, at: datetime) -> None:
    """Set the clock and let a tick see it."""
    clock.set(at)
    desk.tick()
    await settle(pilot)


def reset_words(desk: Desk, job: str) -> str:
    """Return what the screen says of a job's wait after its reset."""
    (line,) = [line for line in desk.lines if line.job == job]
    (wait,) = [wait for wait in line.waits if wait.id.endswith("/reset-delay")]
    return wait_line(wait, desk.clock.now(), desk.zone)


async def test_four_waits_end_when_they_should_and_are_told_once(
    sample_places: Settings, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    ends: dict[str, datetime] = {}
    async with desk.run_test(size=(120, 40)) as pilot:
        await settle(pilot)
        for nth in range(4):
            clock.set(START + nth * timedelta(minutes=12))
            await type_in(pilot, "unit VET-O50, I reset it just now")
            newest = desk.job
            assert newest is not None
            ends[newest] = clock.now() + RESET_DELAY
            await keys(pilot, "tab", "n", "tab")
            end = START + (nth + 1) * timedelta(minutes=12)
            if nth == 1:
                # The lid is closed for ten minutes: no tick comes, time goes on.
                await to(pilot, desk, clock, end - timedelta(seconds=30))
            ready = ends[newest]
            steps = (clock.now() + nth * STEP for nth in range(1, 6))
            second = timedelta(seconds=1)
            for at in sorted({*steps, ready - second, ready, ready + second}):
                if clock.now() < at < end:
                    await to(pilot, desk, clock, at)
                    for job, over_at in ends.items():
                        words = reset_words(desk, job)
                        assert words.startswith("READY") == (at >= over_at)

        # All four are ready, the one that waited longest on top.
        ordered = sorted(ends, key=lambda job: ends[job])
        await to(pilot, desk, clock, START + timedelta(hours=1))
        await keys(pilot, "tab", "j")
        rows = [row for row in shown(pilot).splitlines() if "READY since" in row]
        assert len(rows) == 4
        assert [row.split()[2] for row in rows] == ["08:35", "08:47", "08:59", "09:11"]

        # The clock goes back an hour, then forward again: what was ready waits
        # again, for it might be so, but nothing is told a second time.
        await to(pilot, desk, clock, START + timedelta(minutes=1))
        assert reset_words(desk, ordered[3]) == "40:00 left, ready at 09:11"
        await to(pilot, desk, clock, START + timedelta(hours=1, minutes=1))
        for job in ordered:
            noted = Counter(
                (event.body.wait, event.body.due)
                for event in desk.engine.bench.session.jobs.events(job)
                if isinstance(event.body, TimerDue)
                and event.body.wait.endswith("/reset-delay")
            )
            assert list(noted.values()) == [1]

        # Ready waits stay on top until they were seen.
        await keys(pilot, "a")
        (first,) = [line for line in desk.lines if line.job == ordered[0]]
        assert [each.id for each in over(first)] == []
        assert shown(pilot).splitlines()[1].split()[2] == "08:47"


async def test_a_wait_that_runs_again_is_told_again(
    sample_places: Settings, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        await type_in(pilot, "unit VET-O50, I reset it just now")
        # VSM-1522 Rev. B, PDF page 9: 25 minutes after a second reset; each further
        # reset begins that wait again.
        for nth in (1, 2):
            at = START + nth * timedelta(hours=1)
            await to(pilot, desk, clock, at)
            await type_in(pilot, "I reset it just now")
            assert shown(pilot).splitlines()[0].startswith("25:00 ")
            await to(pilot, desk, clock, at + timedelta(minutes=26))
            ready = f"READY since {8 + nth:02}:55"
            assert ready in shown(pilot).splitlines()[0]
            await keys(pilot, "tab", "a")
            assert ready not in shown(pilot).splitlines()[0]
            await keys(pilot, "tab")


def ticking(desk: Desk) -> bool:
    return desk._ticker is not None and desk._ticker._active.is_set()


async def test_ticks_come_only_while_a_timer_runs(
    sample_places: Settings, tmp_path: Path
) -> None:
    clock = FixedClock(START)
    desk = desk_on(sample_places, tmp_path, clock)
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        seen = [ticking(desk)]
        await type_in(pilot, "unit VET-O50, I reset it just now")
        seen.append(ticking(desk))
        await to(pilot, desk, clock, START + timedelta(minutes=30))
        seen.append(ticking(desk))

        assert seen == [False, True, False]
