"""A wait that only one protection starts: some counter must count that protection."""

from __future__ import annotations

from pathlib import Path

from assistant.rules.loader import load_pack
from assistant.rules.reach import find_unreachable
from tests.pack_folders import GOOD, write_pack


def told(folder: Path, event: str) -> list[tuple[str, str, str]]:
    row = f"""\
- id: rest-by-event
  kind: soft_stop
  name: rest
  trigger: protection_stop
  stopped_by: {event}
  minimum: 35 min
  retries: 1
  source: {{doc: service, page: 31, quote: "4 flashes"}}
"""
    files = {**GOOD, "waits.yaml": GOOD["waits.yaml"] + row}
    pack = load_pack(write_pack(folder, files))
    return [
        (item.id, finding.what, finding.hint)
        for item, finding, _ in find_unreachable(pack)
        if item.id == "rest-by-event"
    ]


def test_a_protection_that_no_counter_counts_is_told_with_the_near_one(
    tmp_path: Path,
) -> None:
    (event,) = {stop.event for stop in load_pack(write_pack(tmp_path / "q")).stops}

    ((row, what, hint),) = told(tmp_path / "a", event + "s")

    assert row == "rest-by-event"
    assert f"`stopped_by` {event}s is the `event` of no counter" in what
    assert hint == f"did you mean `{event}`?"
    assert told(tmp_path / "b", event) == []
