"""A wall clock that is set while a job waits: both believable times are counted."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from assistant.clock import FixedClock
from assistant.dialogue.session import Session
from assistant.facts import HappeningFact
from assistant.jobs.clock_steps import Reading, step_between
from assistant.jobs.events import SteadyMark
from assistant.jobs.store import JobStore
from assistant.timing.moment import Moment
from tests.conversation import START, UNIT, pack

# The pack's wait: 3 min at least, 4 min usually, 10 min at most after power-up.


class Watch:
    """A session over the invented pack, and the clocks of its machine."""

    def __init__(self, path: Path, *, counting: bool = True) -> None:
        self.clock = FixedClock(START, counting=counting)
        self.session = self._open(path)
        self.job = self.session.open_job(plate=UNIT, role="technician")

    def _open(self, path: Path) -> Session:
        jobs = JobStore.open(path, clock=self.clock)
        session = Session(jobs=jobs, library=None, search=None, clock=self.clock)
        session.knowledge = type(session.knowledge)(packs=(pack(),))
        return session

    def power_on(self) -> None:
        now = self.clock.now()
        on = HappeningFact(trigger="power_on", at=Moment(earliest=now, latest=now))
        self.session.enter(self.job, (on,))

    def state(self) -> str:
        waits = self.session.look(self.job).waits
        return waits[0].state if waits else "gone"

    def said(self) -> str:
        answer = self.session.look(self.job)
        return " ".join(statement.text for statement in answer.statements)


@pytest.fixture
def watch(tmp_path: Path) -> Watch:
    return Watch(tmp_path / "jobs.sqlite")


def test_a_clock_set_forward_does_not_end_a_wait_too_early(watch: Watch) -> None:
    watch.power_on()
    watch.clock.advance(timedelta(minutes=1))
    watch.clock.set(watch.clock.now() + timedelta(minutes=5))

    early = watch.state()
    watch.clock.advance(timedelta(minutes=1, seconds=59))
    before = watch.state()
    watch.clock.advance(timedelta(minutes=1))
    after = watch.state()

    # 1 min of truth, then 2:59, then 3:59; the wall says 6, 7:59 and 8:59.
    assert (early, before, after) == ("running", "running", "ready")
    assert "set forward by 5 min" in watch.said()


def test_a_clock_set_back_still_tells_when_it_has_lasted_too_long(
    watch: Watch,
) -> None:
    watch.power_on()
    watch.clock.advance(timedelta(minutes=1))
    watch.clock.set(watch.clock.now() - timedelta(hours=1))
    watch.clock.advance(timedelta(minutes=10))

    # 11 min of truth are over the 10; by the wall it has not begun.
    assert watch.state() == "overdue"
    assert "set back by 1 h" in watch.said()


@pytest.mark.parametrize(("seconds", "shown"), [(5, False), (6, True), (-6, True)])
def test_clocks_that_differ_by_more_than_five_seconds_are_named(
    seconds: int, shown: bool, watch: Watch
) -> None:
    watch.power_on()
    watch.clock.advance(timedelta(minutes=1))
    watch.clock.set(watch.clock.now() + timedelta(seconds=seconds))

    assert ("The clock of this machine was set" in watch.said()) is shown


def test_without_steady_seconds_only_a_clock_that_went_back_shows(
    tmp_path: Path,
) -> None:
    watch = Watch(tmp_path / "jobs.sqlite", counting=False)
    watch.power_on()
    watch.clock.set(watch.clock.now() - timedelta(minutes=30))

    assert "set back by 30 min" in watch.said()


def test_what_was_told_after_the_clock_was_set_is_counted_once(watch: Watch) -> None:
    watch.clock.set(watch.clock.now() + timedelta(hours=2))
    watch.power_on()
    watch.clock.advance(timedelta(minutes=4))

    assert watch.state() == "ready"


def test_a_step_is_read_again_from_the_stored_job(tmp_path: Path) -> None:
    path = tmp_path / "jobs.sqlite"
    watch = Watch(path)
    watch.power_on()
    watch.clock.set(watch.clock.now() + timedelta(minutes=5))
    watch.session.park(watch.job)
    here = watch.session.state(watch.job).clock_steps

    again = watch._open(path).state(watch.job).clock_steps

    assert [step.seconds for step in here] == [300]
    assert again == here


def test_two_machines_or_two_runs_are_not_compared_second_by_second() -> None:
    later = START + timedelta(hours=3)
    here = Reading("M", START, SteadyMark(run="one", seconds=100))

    assert step_between(here, Reading("N", later, here.steady)) is None
    other = SteadyMark(run="two", seconds=5)
    assert step_between(here, Reading("M", later, other)) is None
    assert step_between(here, Reading("M", later, here.steady)) == 3 * 3600


@settings(suppress_health_check=[HealthCheck.function_scoped_fixture], max_examples=25)
@given(
    moves=st.lists(
        st.tuples(st.integers(0, 240), st.integers(-900, 900)), min_size=1, max_size=4
    )
)
def test_however_the_clock_is_set_neither_bound_is_told_before_it_is_true(
    moves: list[tuple[int, int]], tmp_path_factory: pytest.TempPathFactory
) -> None:
    watch = Watch(tmp_path_factory.mktemp("jobs") / "jobs.sqlite")
    watch.power_on()
    truth = 0
    for passes, set_by in moves:
        watch.clock.advance(timedelta(seconds=passes))
        truth += passes
        watch.clock.set(watch.clock.now() + timedelta(seconds=set_by))
        watch.session.enter(watch.job, ())
        state = watch.state()
        slack = 5 * len(moves)
        if state == "ready":
            assert truth >= 180 - slack
        if state in ("running", "ready"):
            assert truth <= 600 + slack
