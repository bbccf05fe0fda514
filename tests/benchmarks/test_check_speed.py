"""How long a named check takes, warm and first; measured, never a pass or fail.

Run with ``pytest tests/benchmarks/test_check_speed.py --benchmark-only``. The budgets:
under 5 ms warm, under 50 ms for the first after a start.
"""

from __future__ import annotations

import subprocess
import sys

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from assistant.checks.registry import CHECKS, run_named

ROUNDS = 5
_FIRST = """
import sys, time
import pydantic, assistant.facts, assistant.checks.registry
from assistant.checks.registry import CHECKS, run_named
inputs = {i.name: i.example for i in CHECKS[sys.argv[1]].inputs if not i.instead_of}
start = time.perf_counter()
run_named(sys.argv[1], inputs)
print((time.perf_counter() - start) * 1e3)
"""


def examples(name: str) -> dict[str, str]:
    return {
        item.name: item.example for item in CHECKS[name].inputs if not item.instead_of
    }


@pytest.mark.parametrize("name", sorted(CHECKS))
def test_a_check_when_warm(name: str, benchmark: BenchmarkFixture) -> None:
    given = examples(name)

    report = benchmark(run_named, name, given)

    assert report.check == name


def first(name: str) -> float:
    """Return the milliseconds of the first check in a process that has started."""
    told = subprocess.run(
        [sys.executable, "-c", _FIRST, name], capture_output=True, text=True, check=True
    )
    return float(told.stdout)


@pytest.mark.parametrize("name", sorted(CHECKS))
def test_the_first_check_after_a_start(name: str, benchmark: BenchmarkFixture) -> None:
    taken = [first(name) for _ in range(ROUNDS)]

    benchmark.extra_info["first check, ms"] = sorted(taken)[ROUNDS // 2]
    benchmark.pedantic(first, args=(name,), rounds=1)  # type: ignore[no-untyped-call]

    assert min(taken) > 0
