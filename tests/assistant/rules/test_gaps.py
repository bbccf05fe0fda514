"""What a table of lamps could show and has no row for, with an example."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.pack_folders import GOOD
from tests.verified_packs import added, line_of, verified

TAIL = """\
  meaning: something
  is_fault: true
  source: {doc: service, page: 34, quote: "run lit, timer flashing"}
"""


def rows(*heads: str) -> dict[str, str]:
    """Return the good pack with more signal rows, each a head and the same tail."""
    return added("signals.yaml", "".join(f"{head}{TAIL}" for head in heads))


def grid(name: str, one: str, other: str) -> str:
    return (
        f"- id: {name}\n  kind: several_lamps\n  lamps:\n"
        f"    - {{lamp: {{label: A1}}, state: {one}}}\n"
        f"    - {{lamp: {{label: A2}}, state: {other}}}\n"
    )


def bank(name: str, state: str, count: int) -> str:
    return (
        f"- id: {name}\n  kind: bank_count\n  bank_emitter: {{label: B1}}\n"
        f"  bank_state: {state}\n  count_emitter: {{label: B2}}\n  count: {count}\n"
    )


ON, OFF = '"on"', '"off"'


def told(folder: Path, files: dict[str, str]) -> list[tuple[int, str]]:
    found = [m for m in verified(folder, files) if "has no row" in m.what]
    assert all(m.severity == "warning" for m in found)
    return [(m.line, m.what) for m in found]


def test_the_one_combination_left_out_is_told_with_both_lines(tmp_path: Path) -> None:
    files = rows(grid("g1", ON, ON), grid("g2", ON, OFF), grid("g3", OFF, ON))

    ((line, what),) = told(tmp_path, files)

    first, last = (
        line_of(files, "signals.yaml", f"- id: {name}") for name in ("g1", "g3")
    )
    assert line == last
    assert what == (
        f"the lamps from line {first} to line {last} leave out: A1: dark, A2: dark "
        "has no row"
    )


@pytest.mark.parametrize(
    "heads",
    [
        (grid("g1", ON, ON), grid("g2", ON, OFF), grid("g3", OFF, "any")),
        (grid("g1", ON, ON), grid("g2", OFF, OFF)),
        (grid("g1", ON, ON), grid("g2", OFF, "flash"), grid("g3", "flash", OFF)),
    ],
)
def test_a_grid_that_is_whole_or_picks_rows_out_leaves_nothing_out(
    heads: tuple[str, ...], tmp_path: Path
) -> None:
    assert told(tmp_path, rows(*heads)) == []


def test_a_count_left_out_of_one_bank_is_told_and_of_the_other_is_not(
    tmp_path: Path,
) -> None:
    files = rows(
        *(bank(f"on-{n}", ON, n) for n in (1, 2, 4)),
        *(bank(f"off-{n}", OFF, n) for n in (1, 2, 3)),
    )

    ((line, what),) = told(tmp_path, files)

    assert line == line_of(files, "signals.yaml", "- id: on-4")
    assert "leaves out 3: B1: lit, B2: 3 flashes has no row" in what
    assert f"2 (line {line_of(files, 'signals.yaml', '- id: on-2')})" in what


def test_the_good_pack_leaves_nothing_out(tmp_path: Path) -> None:
    assert told(tmp_path, dict(GOOD)) == []
