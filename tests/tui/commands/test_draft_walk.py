"""From a PDF no pack has seen to an answering pack of twelve codes, by whole calls.

No encoder is at hand here: what answers are the accepted rows.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from assistant.rules.loader import load_pack
from tests.draft_walk import FINE, FLASHES, write_sheet
from tui.main import main

Capture = pytest.CaptureFixture[str]
BY = ("--by", "R. Ashdown")
DAMAGED = {
    "ld3-outdoor-fan-motor-gives": {"count"},
    "ld3-valve-coil-open": {"count"},
    "ld3-15": {"condition"},
    "ld3-15-b": {"condition"},
    "stops-high-pressure": {"edge", "reset"},
    "stops-drive-board-heat": {"edge", "reset"},
    "rt3:250": {"degree", "range"},
    "rt3:40": {"order", "smooth"},
    "at-suction-cooling": {"gauge", "minutes"},
    "wait-start-delay-the-unit-waits-10": {"trigger"},
}
"""What was spoilt in the sheet, or does not stand in it, and the doubts that say so."""
SOUND_POINTS = tuple(f"rt3:{warm}" for warm in (0, 10, 20, 30, 50, 60, 70))
WAITS = ("wait-start-delay-power-on", "wait-minimum-off-compressor-stopped")


def said(capsys: Capture, *words: str, code: int = 0) -> dict[str, Any]:
    assert main([*words, "--json"]) == code
    read: dict[str, Any] = json.loads(capsys.readouterr().out)
    return read


@pytest.fixture
def walk(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Capture
) -> dict[str, Any]:
    """Add the sheet, draft it into `us-draft`, and return what drafting said."""
    monkeypatch.setenv("FAULTLEAF_CACHE", str(tmp_path / "no-encoder"))
    monkeypatch.chdir(tmp_path)
    sheet = write_sheet(tmp_path / "shelf" / "ulvetarn-us-12.pdf")
    said(capsys, "add", str(sheet), "--no-embed")
    words = ("rules", "draft", sheet.name, "--out", "us-draft")
    return said(capsys, *words, code=3)


def rows_of(told: dict[str, Any]) -> dict[str, dict[str, Any]]:
    return {row["row"]: row for row in told["draft"]["rows"]}


def test_what_is_damaged_in_the_sheet_is_doubted_and_nothing_else(
    walk: dict[str, Any],
) -> None:
    doubts = {
        name: set(row["doubts"]) for name, row in rows_of(walk).items() if row["doubts"]
    }

    assert doubts == DAMAGED


def test_every_drafted_figure_is_as_the_sheet_was_written(
    walk: dict[str, Any],
) -> None:
    rows = rows_of(walk)
    signals = [row["item"] for row in rows.values() if row["file"] == "signals"]

    read = [item["count"] for item in signals if "count" in item]
    assert read == [*FINE, 15, 15]
    assert "count" not in rows["ld3-outdoor-fan-motor-gives"]["item"]
    assert rows["ld3-5"]["left_out"] == [
        "`Bridge the high pressure switch and start it`: it takes a protection out"
    ]


def candidates(told: dict[str, Any]) -> list[dict[str, Any]]:
    return [each for decode in told["decodes"] for each in decode["candidates"]]


def seen(capsys: Capture, count: int) -> list[dict[str, Any]]:
    """Ask about so many flashes and return what they may mean."""
    words = ["ask", f"red light LD3 flashes {count} times, then a pause"]
    main([*words, "--unit", "ULO-28", "--role", "technician", "--json"])
    return candidates(json.loads(capsys.readouterr().out))


def test_a_draft_answers_nothing(walk: dict[str, Any], capsys: Capture) -> None:
    assert walk["status"] == "drafted"

    assert main(["add", "us-draft", "--no-embed"]) == 2
    capsys.readouterr()

    assert seen(capsys, 7) == []


def test_the_walk_ends_at_a_pack_that_answers_twelve_codes(
    walk: dict[str, Any], capsys: Capture
) -> None:
    accept = ["rules", "accept", "us-draft"]
    codes = [f"ld3-{count}" for count in FINE]
    assert set(codes) <= set(rows_of(walk))
    assert main([*accept, "--all", *BY]) == 2
    assert "refused while doubts stand" in capsys.readouterr().err

    said(capsys, *accept, "--settle", "pack", "applies_to=seen", *BY)
    taken = said(capsys, *accept, *codes, *WAITS, "rt3", *SOUND_POINTS, *BY, code=3)
    said(capsys, "add", "us", "--no-embed", code=3)

    assert {each["severity"] for each in taken["mistakes"]} == {"warning"}
    assert taken["doubtful"] == taken["left"] == len(DAMAGED)
    counts = [getattr(row, "count", None) for row in load_pack(Path("us")).signals]
    assert counts == list(FINE)
    for row in FLASHES.rows:
        if row[0].isdecimal() and int(row[0]) in FINE:
            (found,) = [each for each in seen(capsys, int(row[0])) if _exact(each)]
            assert found["id"].endswith(f"/ld3-{row[0]}")
            assert found["meaning"] == row[1]
            source = found["sources"][0]
            assert (source["page"], source["document"]) == (1, "ulvetarn-us-12.pdf")
    for lost in (10, 14, 15, 16):
        assert [each for each in seen(capsys, lost) if _exact(each)] == []


def _exact(candidate: dict[str, Any]) -> bool:
    """Whether the count itself was matched, not one beside it."""
    return any("count" in matched for matched in candidate["matched"])
