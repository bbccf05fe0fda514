"""How long the parser takes for nonsense of full length; measured, never a verdict."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from assistant.language.understand import understand

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


@pytest.mark.parametrize("unit", ["x", "not ", "4 flashes ", "46k ", "E4 ", "is it "])
def test_ten_thousand_letters(unit: str, benchmark: BenchmarkFixture) -> None:
    text = (unit * 10_000)[:10_000]

    understood = benchmark(understand, text, now=NOW)

    assert understood == understand(text, now=NOW)
