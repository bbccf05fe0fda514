"""A session with a real store of jobs and no library."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from assistant.checks.kinds import Meter
from assistant.clock import FixedClock
from assistant.dialogue.session import Session
from assistant.errors import LibraryError, UsageError
from assistant.facts import ReadingFact, RoleFact, UnitFact
from assistant.jobs.events import Asked, Opened, Said
from assistant.jobs.store import JobStore
from assistant.rules.applicability import Plate
from tests.conversation import START


def session(
    path: Path, clock: FixedClock, problem: LibraryError | None = None
) -> Session:
    return Session(
        jobs=JobStore.open(path, clock=clock),
        library=None,
        search=None,
        clock=clock,
        problem=problem,
    )


def test_the_stop_list_answers_without_a_library(tmp_path: Path) -> None:
    desk = session(tmp_path / "jobs", FixedClock(START), LibraryError("none", "add"))
    job = desk.open_job()

    assert desk.say(job, "there is smoke coming out of it").status == "stop"


def test_what_needs_the_library_says_that_there_is_none(tmp_path: Path) -> None:
    desk = session(tmp_path / "jobs", FixedClock(START), LibraryError("none", "add"))
    job = desk.open_job()

    with pytest.raises(LibraryError):
        desk.say(job, "amber light flashes four times")


@pytest.mark.parametrize("text", ["", "   \n", "a" * 10_001])
def test_no_words_and_too_many_words_are_refused(text: str, tmp_path: Path) -> None:
    desk = session(tmp_path / "jobs", FixedClock(START))
    job = desk.open_job()

    with pytest.raises(UsageError):
        desk.say(job, text)


def test_a_second_session_on_the_file_goes_on_from_what_the_first_wrote(
    tmp_path: Path,
) -> None:
    clock = FixedClock(START)
    first = session(tmp_path / "jobs", clock)
    second = session(tmp_path / "jobs", clock)
    job = first.open_job()
    second.enter(job, [RoleFact(role="technician")])
    clock.advance(timedelta(minutes=1))

    first.enter(job, [UnitFact(plate=Plate(outdoor_model="LAB-20"))])
    clock.advance(timedelta(minutes=1))
    second.enter(job, [UnitFact(plate=Plate(board_mark="blue"))])

    for desk in (first, second):
        state = desk.state(job)
        assert state.role == "technician"
        assert state.plate == Plate(outdoor_model="LAB-20", board_mark="blue")


def test_a_question_is_in_the_record_before_it_is_shown(tmp_path: Path) -> None:
    clock = FixedClock(START)
    store = JobStore.open(tmp_path / "jobs", clock=clock)
    desk = Session(jobs=store, library=None, search=None, clock=clock)
    job = desk.open_job()

    answer = desk.say(job, "it does not cool")

    assert answer.question is not None
    kinds = [type(event.body) for event in store.events(job)]
    assert kinds == [Opened, Said, Asked]


def test_a_job_opened_again_is_what_it_was(tmp_path: Path) -> None:
    clock = FixedClock(START)
    desk = session(tmp_path / "jobs", clock)
    job = desk.open_job(plate=Plate(outdoor_model="LAB-20"))
    desk.say(job, "I reset it ten minutes ago, amber blinks 4 then rests")

    again = session(tmp_path / "jobs", clock)

    assert again.state(job) == desk.state(job)
    assert again.look(job) == desk.look(job)


def test_readings_are_taken_with_the_meter_at_hand(tmp_path: Path) -> None:
    clock = FixedClock(START)
    store = JobStore.open(tmp_path / "jobs", clock=clock)
    desk = Session(jobs=store, library=None, search=None, clock=clock)
    desk.meter = Meter.model_validate(
        {"name": "Kittiwake", "percent": 0.5, "digits": 2, "resolution": "0.1 V"}
    )
    job = desk.open_job()

    desk.say(job, "supply is 231 V")

    (held,) = desk.state(job).of(ReadingFact)
    assert isinstance(held.fact, ReadingFact)
    assert held.fact.meter == desk.meter
    again = Session(jobs=store, library=None, search=None, clock=clock)
    (kept,) = again.state(job).of(ReadingFact)
    assert kept.fact == held.fact
