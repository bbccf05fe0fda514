"""How long packs take to load and to verify; measured, never a verdict of the suite."""

from __future__ import annotations

from pathlib import Path

from pytest_benchmark.fixture import BenchmarkFixture

from assistant.rules.csv_tables import read_table
from assistant.rules.loader import load_pack, load_pack_with_lines
from assistant.rules.parsed import ParsedFiles
from assistant.rules.verify import verify_pack
from tests.packs_at_scale import one_file, one_table, pages_of, whole_pack

RULES = 10_000
ROWS = 10_000
ENTRIES = 1_000


def test_ten_thousand_rules_are_verified(
    tmp_path: Path, benchmark: BenchmarkFixture
) -> None:
    pack, lines = load_pack_with_lines(whole_pack(tmp_path, RULES))
    page_text = pages_of(pack)

    found = benchmark.pedantic(  # type: ignore[no-untyped-call]
        verify_pack, (pack, page_text, lines), rounds=3, warmup_rounds=1
    )

    assert not [mistake for mistake in found if mistake.severity == "error"]


def test_ten_thousand_rows_of_a_table_are_read(
    tmp_path: Path, benchmark: BenchmarkFixture
) -> None:
    path = one_table(tmp_path / "table.csv", ROWS)

    table = benchmark.pedantic(read_table, (path, "table.csv"), rounds=3)  # type: ignore[no-untyped-call]

    assert len(table.points) == ROWS


def test_a_thousand_entries_of_yaml_are_read(
    tmp_path: Path, benchmark: BenchmarkFixture
) -> None:
    folder = one_file(tmp_path, ENTRIES)

    pack = benchmark.pedantic(load_pack, (folder,), rounds=3)  # type: ignore[no-untyped-call]

    assert len(pack.signals) == ENTRIES


def test_a_thousand_entries_that_did_not_change(
    tmp_path: Path, benchmark: BenchmarkFixture
) -> None:
    folder, kept = one_file(tmp_path / "pack", ENTRIES), ParsedFiles(tmp_path / "kept")
    load_pack(folder, kept)

    pack = benchmark.pedantic(load_pack, (folder, kept), rounds=3)  # type: ignore[no-untyped-call]

    assert len(pack.signals) == ENTRIES
