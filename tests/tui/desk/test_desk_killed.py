"""kill -9 at any moment: the job goes on exactly where it was."""

from __future__ import annotations

import random
import subprocess
import sys
from contextlib import suppress
from dataclasses import replace
from pathlib import Path

import pytest

from assistant.clock import SystemClock
from assistant.jobs.fold import JobState
from assistant.jobs.store import JobStore
from assistant.settings import Settings
from tests.desk_driver import settle, shown
from tui.desk.app import Desk
from tui.desk.bench import OPENED_WITH, Bench

pytestmark = pytest.mark.model
ROOT = Path(__file__).parents[3]
TARGET = Path(__file__).with_name("desk_kill_target.py")
TURNS = 12
LONGEST = 6.0
"""Seconds after which it is killed at the latest: start-up and some turns."""


def run_for(places: Settings, seconds: float) -> int:
    """Run the target and kill it so many seconds after its start.

    Returns
    -------
    int
        The turns it had shown; of a target that ended before, all of them.
    """
    child = subprocess.Popen(
        [sys.executable, str(TARGET), str(places.library), str(places.jobs)],
        cwd=ROOT,
        env={"PYTHONPATH": str(ROOT), "PATH": "/usr/bin:/bin", "HOME": "/tmp"},  # noqa: S108 - nothing is written there
        stdout=subprocess.PIPE,
        text=True,
    )
    with suppress(subprocess.TimeoutExpired):
        child.wait(seconds)
    child.kill()
    said, _ = child.communicate()
    return max((int(line.split()[1]) for line in said.splitlines()), default=0)


def state_of(places: Settings, job: str) -> JobState:
    """Return a job's state through a session of its own."""
    return Bench(places, SystemClock(), 0).session.state(job)


def only_job(places: Settings) -> str | None:
    """Return the job, its chain proved; None where none had begun."""
    if not places.jobs.exists():
        return None
    with JobStore.open(places.jobs, clock=SystemClock()) as store:
        jobs = [line.id for line in store.jobs()]
        assert all(store.verify(each) == () for each in jobs)
    assert len(jobs) <= 1
    return jobs[0] if jobs else None


async def resumed(places: Settings, job: str, turns: int) -> None:
    """Assert that the screen goes on with the job, at the same turn and question."""
    desk = Desk(Bench(places, SystemClock(), 0))
    async with desk.run_test(size=(80, 24)) as pilot:
        await settle(pilot)
        assert desk.view is not None
        assert (desk.view.job, desk.view.turns) == (job, turns)
        asked = state_of(places, job).open_question
        assert desk.view.question == (asked.asked.text if asked else "")
        assert len(desk.main.answered()) == min(turns, OPENED_WITH)
        assert "goes on where it was left" in shown(pilot)


@pytest.mark.parametrize(
    "kills", [pytest.param(1), pytest.param(10, marks=pytest.mark.slow)]
)
async def test_a_screen_killed_at_any_moment_resumes_in_the_same_state(
    kills: int, sample_places: Settings, tmp_path: Path
) -> None:
    places = replace(
        sample_places, jobs=tmp_path / "jobs.sqlite", cache=tmp_path / "none"
    )
    chance = random.Random(20310614)  # noqa: S311 - moments, no secrets
    turns = 0
    for _ in range(kills):
        # Any moment from the start of the process on, most of its start-up too.
        told = run_for(places, chance.random() * LONGEST)
        job = only_job(places)
        if job is None:
            assert told == turns == 0
            continue
        state = state_of(places, job)
        # Whatever was shown is kept; at most the turn in hand came on top of it.
        assert max(told, turns) <= state.turn <= max(told, turns) + 1
        turns = state.turn
        await resumed(places, job, turns)
        assert state_of(places, job) == state


@pytest.mark.slow
async def test_a_job_that_was_killed_is_worked_to_its_end(
    sample_places: Settings, tmp_path: Path
) -> None:
    places = replace(
        sample_places, jobs=tmp_path / "jobs.sqlite", cache=tmp_path / "none"
    )
    run_for(places, LONGEST)

    assert run_for(places, 120.0) == TURNS
    job = only_job(places)
    assert job is not None
    state = state_of(places, job)
    assert state.turn == TURNS
    assert state.plate.outdoor_model == "VET-O50"
    assert state.role == "technician"
    assert [done.result for done in state.checks if done.check.endswith("/th3")] == [
        "fail"
    ]
