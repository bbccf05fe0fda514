"""What speaks against a pack: rows that one sight cannot tell apart."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.verified_packs import added, line_of, verified

TWIN = """\
- id: amber-4-twin
  kind: {kind}
  lamp: {{board: outdoor main, label: LD2, colour: amber}}
  count: 4
  {timing}
  meaning: fan blocked
  is_fault: true
  causes: [main-board]
  source: {{doc: {doc}, page: {page}, quote: "4 flashes"}}
"""


@pytest.mark.parametrize(
    ("kind", "timing"),
    [("count_per_window", "window: 10 s"), ("group_then_pause", "pause: 3 s")],
)
def test_two_rows_that_one_sight_cannot_tell_apart_overlap(
    kind: str, timing: str, tmp_path: Path
) -> None:
    twin = TWIN.format(kind=kind, timing=timing, doc="service", page=31)
    files = added("signals.yaml", twin)

    found = [m for m in verified(tmp_path, files) if "cannot be told" in m.what]

    assert len(found) == 1
    assert found[0].severity == "error"
    assert found[0].line == line_of(files, "signals.yaml", "- id: amber-4-twin")
    assert "`amber-4` on line 1" in found[0].what
    assert "amber LD2 (outdoor main): 4 flashes" in found[0].what


def test_rows_of_two_documents_that_disagree_are_only_pointed_out(
    tmp_path: Path,
) -> None:
    twin = TWIN.format(
        kind="count_per_window", timing="window: 10 s", doc="bulletin", page=1
    )

    found = [
        m
        for m in verified(tmp_path, added("signals.yaml", twin))
        if "cannot be told" in m.what
    ]

    assert [m.severity for m in found] == ["warning"]


def test_a_row_for_some_units_beside_one_for_all_is_pointed_out(tmp_path: Path) -> None:
    twin = TWIN.format(
        kind="count_per_window", timing="window: 10 s", doc="service", page=31
    )
    narrow = twin.replace("  lamp:", "  applies_to: [{board_mark: white dot}]\n  lamp:")

    found = verified(tmp_path, added("signals.yaml", narrow))

    both = [m for m in found if "may both hold for one unit" in m.what]
    assert [m.severity for m in both] == ["warning"]
    assert "`amber-4-twin` and `amber-4`" in both[0].what
    assert "supersedes" in both[0].hint


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("  count: 4\n  window: 10 s", "  count: 4\n  window: 20 s"),
        ("label: LD2", "label: LD3"),
        ("colour: amber", "colour: red"),
        ("  meaning: fan blocked", "  mode: heat\n  meaning: fan blocked"),
        ("  meaning: fan blocked", "  unit_state: test\n  meaning: fan blocked"),
    ],
)
def test_rows_with_something_between_them_do_not_overlap(
    old: str, new: str, tmp_path: Path
) -> None:
    twin = TWIN.format(
        kind="count_per_window", timing="window: 10 s", doc="service", page=31
    )
    assert old in twin

    found = verified(tmp_path, added("signals.yaml", twin.replace(old, new)))

    assert not any("both are" in mistake.what for mistake in found)


@pytest.mark.parametrize(("mark", "overlapping"), [("orange", 2), ("white", 1)])
def test_a_row_for_boards_of_another_mark_does_not_overlap(
    mark: str, overlapping: int, tmp_path: Path
) -> None:
    twin = TWIN.format(
        kind="count_per_window", timing="window: 10 s", doc="service", page=31
    )
    scope = f"  applies_to: [{{board_mark: {mark} dot}}]\n  lamp:"

    found = verified(tmp_path, added("signals.yaml", twin.replace("  lamp:", scope)))

    # `amber-4` is for every board, `amber-4-late` for those with an orange dot.
    assert len([m for m in found if "both are" in m.what]) == overlapping


def test_grid_rows_overlap_where_any_lamp_leaves_room(tmp_path: Path) -> None:
    grid = """\
- id: grid-2
  kind: several_lamps
  lamps:
    - {lamp: {label: run}, state: any}
    - {lamp: {label: timer}, state: flash}
  meaning: link
  is_fault: true
  source: {doc: service, page: 34, quote: "run lit"}
"""

    found = verified(tmp_path, added("signals.yaml", grid))
    lit = verified(tmp_path / "2", added("signals.yaml", grid.replace("any", '"off"')))

    assert any("run: lit, timer: blinking" in m.what for m in found)
    assert not any("cannot be told" in m.what for m in lit)


def test_codes_that_look_the_same_are_pointed_out(tmp_path: Path) -> None:
    codes = "".join(
        f'- id: c{n}\n  kind: display_code\n  code: "{code}"\n  meaning: m{n}\n'
        '  is_fault: true\n  source: {doc: service, page: 33, quote: "E4"}\n'
        for n, code in enumerate(("E0", "EO", "E1"))
    )

    found = verified(tmp_path, added("signals.yaml", codes))

    told = [m for m in found if "cannot be told" in m.what]
    assert [m.severity for m in told] == ["warning"]
