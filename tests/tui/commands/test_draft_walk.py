"""From a PDF no pack has seen to an answering pack of twelve codes, by whole calls.

No encoder is at hand here: what answers are the accepted rows.
"""

from __future__ import annotations

import json
import shutil
from contextlib import redirect_stdout
from io import StringIO
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


@pytest.fixture(scope="module")
def walked(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, dict[str, Any]]:
    """Add the sheet and draft it once; return the folder and what drafting said."""
    folder = tmp_path_factory.mktemp("walk")
    sheet = write_sheet(folder / "shelf" / "ulvetarn-us-12.pdf")
    told = StringIO()
    with pytest.MonkeyPatch.context() as patch, redirect_stdout(told):
        patch.setenv("FAULTLEAF_LIBRARY", str(folder / "library"))
        assert main(["add", str(sheet), "--no-embed"]) == 0
        told.seek(0)
        told.truncate()
        words = ["rules", "draft", sheet.name, "--out", str(folder / "us-draft")]
        assert main([*words, "--json"]) == 3
    return folder, json.loads(told.getvalue())


@pytest.fixture
def walk(
    walked: tuple[Path, dict[str, Any]], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> dict[str, Any]:
    """Stand in a copy of the folder; return what drafting said. No encoder is there."""
    monkeypatch.setenv("FAULTLEAF_CACHE", str(tmp_path / "no-encoder"))
    monkeypatch.chdir(tmp_path)
    for name in ("library", "us-draft"):
        shutil.copytree(walked[0] / name, tmp_path / name)
    return walked[1]


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


def test_a_draft_is_shown_in_forty_columns_with_its_doubts(
    walk: dict[str, Any], capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "40")

    assert main(["rules", "show", "us-draft"]) == 0

    lines = capsys.readouterr().out.splitlines()
    text = " ".join(" ".join(lines).split())
    assert max(len(line) for line in lines) <= 40
    assert "? count: the count is not on the page" in text
    assert f"{len(rows_of(walk))} rows, {len(DAMAGED)} with doubts" in text


def test_a_draft_as_json_is_what_was_drafted(
    walk: dict[str, Any], capsys: Capture
) -> None:
    told = said(capsys, "rules", "show", "us-draft")

    assert rows_of(told).keys() == rows_of(walk).keys()
    assert rows_of(told)["rt3:250"]["doubts"] == rows_of(walk)["rt3:250"]["doubts"]


def test_a_document_without_rules_is_not_found_and_leaves_no_folder(
    tmp_path: Path, capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "note.txt").write_text("The key hangs behind the door.\n")
    said(capsys, "add", "note.txt", "--no-embed")

    told = said(capsys, "rules", "draft", "note.txt", "--out", "x-draft", code=1)

    assert told["status"] == "not_found"
    assert not (tmp_path / "x-draft").exists()


@pytest.mark.parametrize(
    "words",
    [
        ("draft", "nobody.pdf"),
        ("accept", "us-draft", *BY),
        ("accept", "us-draft", "--all", "ld3-1", *BY),
        ("accept", "us-draft", "--settle", "ld3-1", "count", *BY),
        ("accept", "us-draft", "nobody", *BY),
        ("accept", "nowhere", "ld3-1", *BY),
    ],
)
@pytest.mark.usefixtures("walk")
def test_what_cannot_be_done_is_said_with_a_way_out(
    words: tuple[str, ...], capsys: Capture
) -> None:
    assert main(["rules", *words]) == 2

    assert "try:" in capsys.readouterr().err
