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


def run_until(places: Settings, shown: int, seconds: float) -> int:
    """Run the target, kill it some seconds after it had shown so many turns.

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
    assert child.stdout is not None
    told = 0
    for line in child.stdout:
        told = int(line.split()[1])
        if told >= shown:
            break
    with suppress(subprocess.TimeoutExpired):
        child.wait(seconds)
    child.kill()
    rest, _ = child.communicate()
    return max((int(line.split()[1]) for line in rest.splitlines()), default=told)


def state_of(places: Settings, job: str) -> JobState:
    """Return a job's state through a session of its own."""
    return Bench(places, SystemClock(), 0).session.state(job)


def only_job(places: Settings) -> str:
    with JobStore.open(places.jobs, clock=SystemClock(), read_only=True) as store:
        (line,) = store.jobs()
        assert store.verify(line.id) == ()
    return line.id


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
async def test_a_killed_screen_resumes_in_the_same_state(
    kills: int, sample_places: Settings, tmp_path: Path
) -> None:
    places = replace(
        sample_places, jobs=tmp_path / "jobs.sqlite", cache=tmp_path / "none"
    )
    chance = random.Random(20310614)  # noqa: S311 - moments, no secrets
    turns = 0
    for nth in range(1, kills + 1):
        # At random between two of its turns, each time a little further on.
        until = max(turns, nth * (TURNS - 1) // kills if kills > 1 else 2)
        told = run_until(places, until, chance.random() * 1.5)
        job = only_job(places)
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
    run_until(places, 4, 0.2)

    assert run_until(places, TURNS, 60.0) == TURNS
    state = state_of(places, only_job(places))
    assert state.turn == TURNS
    assert state.plate.outdoor_model == "VET-O50"
    assert state.role == "technician"
    assert [done.result for done in state.checks if done.check.endswith("/th3")] == [
        "fail"
    ]
