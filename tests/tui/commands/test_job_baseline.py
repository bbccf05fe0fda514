"""`faultleaf job baseline`: what is kept with a unit from commissioning."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.clock import FixedClock
from assistant.dialogue.session import Session
from assistant.jobs.store import JobStore
from assistant.rules.applicability import Plate
from tests.conversation import START
from tui.main import main

Capture = pytest.CaptureFixture[str]


@pytest.fixture
def jobs(tmp_path: Path) -> str:
    path = tmp_path / "jobs.sqlite"
    clock = FixedClock(START)
    with JobStore.open(path, clock=clock) as store:
        desk = Session(jobs=store, library=None, search=None, clock=clock)
        job = desk.open_job(plate=Plate(outdoor_model="LAB-20", serial="27310042"))
        desk.say(job, "baseline current 9.4 amps")
    return str(path)


def test_the_readings_of_a_unit_are_listed(jobs: str, capsys: Capture) -> None:
    assert main(["--jobs", jobs, "job", "baseline", "27310042"]) == 0
    assert "9.400 A" in capsys.readouterr().out

    assert main(["--jobs", jobs, "job", "baseline", "27310042", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == 1
    assert document["baselines"][0]["of"] == "current"


def test_a_unit_without_any_is_not_found(jobs: str, capsys: Capture) -> None:
    assert main(["--jobs", jobs, "job", "baseline", "1"]) == 1
    assert "Nothing is kept" in capsys.readouterr().out
    assert main(["--jobs", f"{jobs}.none", "job", "baseline", "1"]) == 1
