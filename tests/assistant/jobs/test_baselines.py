"""Readings kept with a unit from commissioning, found again in a later job."""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest

from assistant.clock import FixedClock
from assistant.dialogue.session import Session
from assistant.jobs.baselines import baselines
from assistant.jobs.store import JobStore
from assistant.rules.applicability import Plate
from tests.conversation import START

SERIAL = "2731 0042"


CLOCK = FixedClock(START)


@pytest.fixture
def store(tmp_path: Path) -> JobStore:
    return JobStore.open(tmp_path / "jobs", clock=CLOCK)


def commissioned(store: JobStore, serial: str | None, *words: str) -> str:
    """Tell a job of one unit and return its id."""
    CLOCK.advance(timedelta(days=1))
    desk = Session(jobs=store, library=None, search=None, clock=CLOCK)
    job = desk.open_job(plate=Plate(outdoor_model="LAB-20", serial=serial))
    for text in words:
        desk.say(job, text)
    return job


def kept(store: JobStore, serial: str) -> dict[str, str]:
    found = baselines([store.events(line.id) for line in store.jobs()], serial)
    return {one.of: one.value.text if one.value else "OL" for one in found}


def test_a_baseline_is_kept_with_the_serial_number(store: JobStore) -> None:
    commissioned(store, SERIAL, "baseline: suction 118 psi, head 390 psi")
    commissioned(store, "9999", "baseline: suction 131 psi")
    commissioned(store, None, "baseline: suction 140 psi")

    assert kept(store, "27310042") == {
        "suction pressure": "118 psi",
        "discharge pressure": "390 psi",
    }
    assert kept(store, "9999") == {"suction pressure": "131 psi"}
    assert kept(store, "") == kept(store, "1") == {}


def test_other_readings_are_not_kept(store: JobStore) -> None:
    commissioned(store, SERIAL, "suction 118 psi. baseline current 9.4 amps")

    assert kept(store, SERIAL) == {"current": "9.4 A"}


def test_two_gauges_said_in_one_breath_are_kept(store: JobStore) -> None:
    commissioned(store, SERIAL, "as commissioned it was 118 over 390 psi")

    assert set(kept(store, SERIAL)) == {"suction pressure", "discharge pressure"}


def test_a_later_job_replaces_the_older_figure(store: JobStore) -> None:
    first = commissioned(store, SERIAL, "baseline current 9.4 amps")
    second = commissioned(store, SERIAL, "baseline current 9.1 amps")

    for order in ((second, first), (first, second)):
        (one,) = baselines([store.events(job) for job in order], SERIAL)
        assert one.job == second
        assert one.words


def test_a_baseline_without_its_unit_is_said_not_to_be_kept(store: JobStore) -> None:
    clock = FixedClock(START)
    desk = Session(jobs=store, library=None, search=None, clock=clock)
    job = desk.open_job(plate=Plate(outdoor_model="LAB-20", serial=SERIAL))

    answer = desk.say(job, "baseline suction 118")

    text = " ".join(one.text for one in answer.statements)
    assert "Not kept until" in text
    assert kept(store, SERIAL) == {}


def test_a_baseline_is_judged_by_no_check_and_said_to_be_kept(store: JobStore) -> None:
    clock = FixedClock(START)
    desk = Session(jobs=store, library=None, search=None, clock=clock)
    job = desk.open_job(plate=Plate(outdoor_model="LAB-20"))

    answer = desk.say(job, "baseline supply 231 V")

    assert answer.verdicts == ()
    text = " ".join(one.text for one in answer.statements)
    assert "Kept from commissioning with this job" in text
    assert "serial" in text
