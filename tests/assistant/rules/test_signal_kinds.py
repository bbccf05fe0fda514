"""Packs with every scheme: loaded, verified, and refused where they contradict."""

from __future__ import annotations

from pathlib import Path
from typing import get_args

import pytest

from assistant.errors import PackError
from assistant.rules.inforce import in_force
from assistant.rules.loader import load_pack, load_pack_with_lines
from assistant.rules.shapes import KINDS
from assistant.rules.stored import dump_pack, read_stored
from assistant.rules.verify import verify_pack
from assistant.signals.kinds import TableNote
from tests.pack_folders import write_pack
from tests.scheme_pack import SCHEMES, scheme_pack
from tests.verified_packs import pages


def mistakes(folder: Path, files: dict[str, str]) -> list[str]:
    """Return what the verifier says of a pack, without paths."""
    pack, lines = load_pack_with_lines(write_pack(folder / "pack", files))
    return [one.what for one in verify_pack(pack, pages({}), lines)]


def changed(old: str, new: str) -> dict[str, str]:
    """Return the pack with the first `old` of its signals made `new`."""
    text = SCHEMES["signals.yaml"]
    assert old in text
    return {**SCHEMES, "signals.yaml": text.replace(old, new, 1)}


def test_the_pack_has_a_row_of_every_kind() -> None:
    written = {row.kind for row in scheme_pack().signals}

    assert written == set(KINDS["signals"])


def test_a_pack_of_every_scheme_has_nothing_against_it(tmp_path: Path) -> None:
    assert mistakes(tmp_path, SCHEMES) == []


def test_it_is_stored_and_read_back_the_same() -> None:
    pack = scheme_pack()

    assert read_stored(dump_pack(pack)) == pack


def test_notes_are_in_force_beside_the_rows() -> None:
    from assistant.rules.applicability import Plate

    force = in_force([scheme_pack()], Plate(outdoor_model="QS-24"))

    assert len(force.notes) == len(get_args(TableNote))
    assert len(force.signals) + len(force.notes) == len(scheme_pack().signals)


REFUSED = (
    ("  short: 2\n  long: 3\n", "  short: 0\n  long: 0\n", "nothing would flash"),
    ("  operates: true\n  limit_days: 3", "  limit_days: 3", "days that the unit runs"),
    ("  weights_stated: true\n", "", "weights_stated"),
    ("label: W4}, weight: 4", "label: W4}, weight: 1", "in one way only"),
    ("  number: 14\n  offset: 30", "  number: 80\n  offset: 30", "more than 99"),
    ('  sub: "01"\n', "", "finer cause"),
    ("  position: 3\n", "  position: 4\n", "place 4 of 3"),
    ("policy: cyclic", "policy: cyclic\n  priority: [A3]", "no use"),
    ("same_as: [code-e4]", "same_as: [code-e5]", "`code-e5` is not an id"),
    ("checks: [look-drain]", "checks: [look-drian]", "`look-drian` is not an id"),
    ("  phase: together\n", "  phase: togehter\n", "togehter"),
    ("  display_level: detail\n", "  display_level: deep\n", "deep"),
    ("  encoding: point_is_hundred\n", "  encoding: octal\n", "octal"),
    ("kind: flicker_count", "kind: fliker_count", "flicker_count"),
)


@pytest.mark.parametrize(("old", "new", "told"), REFUSED, ids=[r[2] for r in REFUSED])
def test_a_row_that_contradicts_itself_is_refused_at_its_line(
    old: str, new: str, told: str, tmp_path: Path
) -> None:
    with pytest.raises(PackError) as refused:
        load_pack(write_pack(tmp_path, changed(old, new)))

    assert told in str(refused.value)


OVERLAPPING = (
    ("  short: 3\n  long: 2\n", "  short: 2\n  long: 3\n", "digits-32"),
    ("  phase: alternating\n", "  phase: together\n", "both-in-turn"),
    ('  bank_state: "on"\n', '  bank_state: "off"\n', "bank-on-2"),
    ("  display_level: detail\n", "  display_level: first\n", "detail-3"),
    ("  number: 14\n  offset: 30", "  number: 14\n  offset: 10", "tens-14-outdoor"),
    ('  sub: "02"\n', '  sub: "01"\n', "main-u2-02"),
    ("  number: 4\n", "  number: 5\n", "bits-4"),
    ("  unit_state_required: [stopped]\n", "  unit_state_required: [running]\n",
     "lit-locked"),
)  # fmt: skip


@pytest.mark.parametrize(("old", "new", "row"), OVERLAPPING)
def test_two_rows_that_look_the_same_are_told_with_an_example(
    old: str, new: str, row: str, tmp_path: Path
) -> None:
    found = mistakes(tmp_path, changed(old, new))

    assert [one for one in found if f"`{row}` cannot be told from" in one]
    assert any("both are" in one for one in found)
