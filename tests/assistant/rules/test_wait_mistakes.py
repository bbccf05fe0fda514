"""Mistakes in rows of waits: each is told at its line, and the pack is not loaded."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import PackError
from assistant.rules.loader import load_pack
from assistant.rules.safe_steps import check_wording
from tests.pack_folders import write_pack
from tests.waits_of_each_kind import EVERY, pack_files

CASES = (
    ("start_delay", "if_off_before: 40 s", "if_off_before: 9 min", "is shorter than"),
    ("restart_delay", "[6 min, 3 min, 90 s]", "[6 min]", "`by_attempt`"),
    ("restart_delay", "3 min, 90 s]", "-3 min, 90 s]", "-3 min is below zero"),
    ("restart_delay", "then: no_retry", "then: no_retri", "no_retry"),
    ("reset_delay", "trigger: second_reset", "trigger: reset", "from the first reset"),
    ("reset_delay", "within: 45 min", "within: -45 min", "`within` -45 min is below"),
    ("standby", "  give_up: 12 min\n", "", "the time after which it does"),
    ("value_and_time", "op: below", "op: under", "below"),
    ("value_and_time", "  minimum: 7 min\n", "", "states its `minimum` or `usual`"),
    ("capacitor_bleed", "below: 60 V", "below: 60 s", "expected a voltage"),
    ("capacitor_bleed", "minimum: 8 min", "logic: or\n  minimum: 8 min", "by volts"),
    ("minimum_off", "  bypass_side_effect: the board does not look at the low "
     "pressure for 2 minutes\n", "", "is without `bypass_side_effect`"),
    ("startup_order", "after: compressor", "after: compresor", "did you mean"),
    ("defrost", "coil_under_ambient: 7 K diff", "coil_under_ambient: 7 degC",
     "is a difference"),
    ("defrost", "after: dripping off", "after: dripping of", "did you mean"),
    ("display_delay", "only_when: [call present]", "only_when: [a call]",
     "call present"),
    ("button", "  within: 6 s\n", "", "fall `within` a time"),
)  # fmt: skip


@pytest.mark.parametrize(("kind", "good", "wrong", "says"), CASES)
def test_a_mistake_in_a_wait_is_told_inside_its_row(
    kind: str, good: str, wrong: str, says: str, tmp_path: Path
) -> None:
    files = pack_files()
    row = EVERY[kind].yaml
    assert good in row
    first = files["waits.yaml"].partition(row)[0].count("\n") + 1
    mistaken = row.replace(good, wrong)
    files["waits.yaml"] = files["waits.yaml"].replace(row, mistaken)

    with pytest.raises(PackError) as raised:
        load_pack(write_pack(tmp_path / "quellmar", files))

    (mistake,) = raised.value.mistakes
    line = int(mistake.partition("waits.yaml:")[2].partition(":")[0])
    assert first <= line <= first + mistaken.count("\n")
    assert says in mistake


def test_a_way_past_a_wait_that_takes_a_protection_out_is_refused(
    tmp_path: Path,
) -> None:
    files = pack_files()
    bypass = "bridge the two test pins for a second"
    assert bypass in files["waits.yaml"]
    wrong = files["waits.yaml"].replace(bypass, "jump the high pressure switch")
    pack = load_pack(write_pack(tmp_path / "q", {**files, "waits.yaml": wrong}))

    (row,) = [one for one in pack.waits if one.kind == "minimum_off"]
    (found,) = check_wording(row)

    assert found.path == ("bypass",)
    assert "takes a protection out" in found.what
