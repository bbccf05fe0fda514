"""How long the command takes from a cold start; measured, never a pass or fail.

Run with ``pytest tests/benchmarks --benchmark-only``. The budgets stand in
DEVELOPERS.md.
"""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from assistant.dialogue.reading import knowledge_of
from assistant.library.encoder import load_encoder
from assistant.library.search import Search
from assistant.library.store import LibraryStore
from assistant.rules.applicability import Plate
from assistant.settings import Settings

ROUNDS = 5


def called(words: list[str], places: Settings, jobs: Path) -> int:
    environment = {
        **os.environ,
        "FAULTLEAF_LIBRARY": str(places.library),
        "FAULTLEAF_JOBS": str(jobs),
        "FAULTLEAF_CACHE": str(places.cache),
    }
    return subprocess.run(
        [sys.executable, "-m", "tui", *words],
        env=environment,
        stdout=subprocess.DEVNULL,
        check=False,
    ).returncode


@pytest.mark.model
@pytest.mark.parametrize(
    "words",
    [
        ["--help"],
        ["ask", "--unit", "VET-O50", "amber flashes four times, then rests"],
        ["find", "how long do the capacitors take to drain"],
    ],
    ids=["help", "ask", "find"],
)
def test_a_call_from_a_cold_start(
    words: list[str],
    sample_places: Settings,
    tmp_path: Path,
    benchmark: BenchmarkFixture,
) -> None:
    code = benchmark.pedantic(  # type: ignore[no-untyped-call]
        called, args=(words, sample_places, tmp_path / "jobs.sqlite"), rounds=ROUNDS
    )

    assert code == 0


@pytest.mark.model
def test_one_search_in_an_open_library(
    sample_places: Settings, benchmark: BenchmarkFixture
) -> None:
    with LibraryStore.open(sample_places.library, read_only=True) as store:
        search = Search(store, load_encoder(sample_places))
        result = benchmark(search.search, "outside board six winks")

    assert result.searched > 0


@pytest.mark.model
def test_what_is_in_force_for_a_unit(
    sample_places: Settings, benchmark: BenchmarkFixture
) -> None:
    with LibraryStore.open(sample_places.library, read_only=True) as store:
        knowledge = knowledge_of(store)

    def rows() -> int:
        knowledge._in_force.clear()
        return len(knowledge.in_force(Plate(outdoor_model="VET-O50")).rows)

    assert benchmark(rows) > 0
