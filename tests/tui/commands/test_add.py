"""Adding from the command line: plan, progress to nobody, refusals with the way out."""

from __future__ import annotations

import json
import os
import stat
from pathlib import Path
from typing import Any

import pytest

from tui.main import main

Capture = pytest.CaptureFixture[str]
NOTE = """\
Shop note, boat house
Revision A

1 Amber lamp
The amber lamp flashes four times when the outdoor sensor is unplugged.
"""


@pytest.fixture
def literature(tmp_path: Path) -> Path:
    folder = tmp_path / "literature"
    folder.mkdir()
    (folder / "note.txt").write_text(NOTE)
    return folder


def document(capsys: Capture, *words: str, code: int = 0) -> dict[str, Any]:
    assert main([*words, "--json"]) == code
    told = capsys.readouterr()
    assert told.err == ""
    read: dict[str, Any] = json.loads(told.out)
    return read


def test_a_plan_changes_nothing(
    literature: Path, tmp_path: Path, capsys: Capture
) -> None:
    planned = document(capsys, "add", str(literature), "--plan")

    (step,) = planned["plan"]
    assert (step["action"], step["document"]) == ("add", "note.txt")
    assert not (tmp_path / "library").exists()


def test_what_was_added_is_found_by_its_words(
    literature: Path, capsys: Capture
) -> None:
    added = document(capsys, "add", str(literature), "--no-embed")
    again = document(capsys, "add", str(literature), "--no-embed")
    planned = document(capsys, "add", str(literature), "--plan")
    held = document(capsys, "library")

    assert (added["added"], added["pages"]) == (["note.txt"], {"text": 1})
    assert (again["added"], again["unchanged"]) == ([], ["note.txt"])
    assert planned["plan"][0]["action"] == "unchanged"
    assert held["not_embedded"] is None
    assert main(["find", "amber lamp flashes four times"]) == 0
    shown = capsys.readouterr().out
    assert "note.txt" in shown
    assert "faultleaf" in shown  # how to add the vectors


def test_results_are_said_line_by_line(literature: Path, capsys: Capture) -> None:
    (literature / "empty.pdf").write_bytes(b"")

    assert main(["add", str(literature), "--no-embed"]) == 3

    told = capsys.readouterr()
    assert "added note.txt" in told.out
    assert "refused: empty.pdf" in told.out
    assert told.err == ""


@pytest.mark.parametrize("name", ["missing", "empty"])
def test_nothing_to_add_is_an_error_with_the_way_out(
    name: str, tmp_path: Path, capsys: Capture
) -> None:
    (tmp_path / "empty").mkdir()

    assert main(["add", str(tmp_path / name), "--no-embed"]) == 2

    told = capsys.readouterr()
    assert told.out == ""
    assert name in told.err
    assert "try: " in told.err


@pytest.mark.parametrize(
    "words", [["find", "x"], ["library"], ["remove", "x"], ["rules", "verify", "x"]]
)
def test_without_a_library_the_way_to_one_is_named(
    words: list[str], capsys: Capture
) -> None:
    assert main(words) == 4

    told = capsys.readouterr()
    assert told.out == ""
    assert "there is no library" in told.err
    assert "try: faultleaf add" in told.err


@pytest.mark.skipif(
    os.name == "nt" or os.geteuid() == 0, reason="needs permissions that bind"
)
def test_a_library_that_cannot_be_written_is_said(
    literature: Path, tmp_path: Path, capsys: Capture
) -> None:
    folder = tmp_path / "library"
    folder.mkdir()
    folder.chmod(stat.S_IRUSR | stat.S_IXUSR)

    assert main(["add", str(literature), "--no-embed"]) == 4
    assert "cannot be written" in capsys.readouterr().err
