"""The library is whole after a kill at any moment, and work goes on from there."""

from __future__ import annotations

from pathlib import Path

import pytest

from ingest.embedding import BATCH
from tests.exported import real_settings
from tests.ingest.kills import (
    Workplace,
    check_settled,
    check_whole,
    run_for,
    survive,
    write_literature,
)

KILLS = 10
"""`python tests/evaluation/kills.py` does it thirty times."""


@pytest.fixture
def place(tmp_path: Path) -> Workplace:
    folder = tmp_path / "literature"
    write_literature(folder)
    return Workplace(tmp_path / "library", folder, tmp_path / "notes")


@pytest.mark.slow
def test_kills_lose_at_most_a_document_or_a_batch_each(place: Workplace) -> None:
    again = survive(place, KILLS, seed=20260501)

    assert again <= BATCH * KILLS


@pytest.mark.slow
@pytest.mark.model
def test_a_kill_with_the_real_model_loses_at_most_one_batch(place: Workplace) -> None:
    real_settings()  # exports the model where that was not done yet
    process = place.start("real")
    assert process.stdout is not None
    for line in process.stdout:
        if line == b"embedded\n":
            break
    process.kill()
    process.wait()
    process.stdout.close()
    check_whole(place)

    assert run_for(place.start("real"), 10_000, 0.0)

    check_settled(place, kills=1)
