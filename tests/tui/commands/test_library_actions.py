"""`faultleaf library`: show, set, verify; `add` with --plan and --prune."""

from __future__ import annotations

import json
import sqlite3
from pathlib import Path
from typing import Any

import pytest

from assistant.library.connection import FILE
from tui.main import main

Capture = pytest.CaptureFixture[str]
MANUAL = """\
Heron service manual
Document VSM-1407 Revision C
Applicable models: VEH-O26, VEH-O35
From serial no. 2231-00000 on another board is fitted.

1 Lamps
The amber lamp flashes four times when the outdoor sensor is unplugged.
"""
OLDER = MANUAL.replace("Revision C", "Revision B").replace("four", "five")


@pytest.fixture
def shelf(tmp_path: Path, capsys: Capture) -> Path:
    folder = tmp_path / "shelf"
    folder.mkdir()
    (folder / "heron.txt").write_text(MANUAL)
    (folder / "older.txt").write_text(OLDER)
    said(capsys, "add", str(folder), "--no-embed")
    return folder


def said(capsys: Capture, *words: str, code: int = 0) -> dict[str, Any]:
    assert main([*words, "--json"]) == code
    told = capsys.readouterr()
    read: dict[str, Any] = json.loads(told.out)
    return read


def refused(capsys: Capture, *words: str) -> str:
    assert main(list(words)) == 2
    return capsys.readouterr().err


def fields(sheet: dict[str, Any]) -> dict[str, Any]:
    return {each["field"]: each for each in sheet["told"]}


def test_a_sheet_says_whose_word_each_field_is(shelf: Path, capsys: Capture) -> None:
    sheet = said(capsys, "library", "show", "heron.txt")

    told = fields(sheet)
    assert (told["number"]["value"], told["number"]["source"]) == (
        "VSM-1407",
        "cover page",
    )
    assert told["revision"]["value"] == "C"
    assert sheet["pages"] == {"text": "1"}
    assert 0 < sheet["longest"] <= 250
    assert sheet["lies_there"]
    assert Path(sheet["place"]) == shelf / "heron.txt"


@pytest.mark.usefixtures("shelf")
def test_proposed_units_exclude_nothing_until_a_person_accepts_them(
    capsys: Capture,
) -> None:
    other = ("find", "amber lamp", "--unit", "KX-24")

    sheet = said(capsys, "library", "show", "heron.txt")
    before = said(capsys, *other)
    said(
        capsys, "library", "set", "heron.txt", "--accept-applies", "1", "--by", "A. B."
    )
    after = said(capsys, *other)

    assert next(each["scope"]["models"] for each in sheet["proposals"]) == [
        "VEH-O26",
        "VEH-O35",
    ]
    found = {each["document"] for each in before["hits"]}
    left = {each["document"] for each in after["hits"]}
    assert "heron.txt" in found
    assert left == found - {"heron.txt"}


def test_a_page_is_shown_as_stored_and_as_its_file_gives_it(
    shelf: Path, capsys: Capture
) -> None:
    torn = "The amber lamp \ufb02ashes.\x07\n\nPlease wait."
    (shelf / "torn.txt").write_text(torn, encoding="utf-8")
    said(capsys, "add", str(shelf))

    page = said(capsys, "library", "show", "torn.txt", "--page", "1")
    sound = said(capsys, "library", "show", "heron.txt", "--page", "1")

    assert page["text"] == "The amber lamp flashes.\n\nPlease wait."
    assert page["raw"] == torn
    assert sound["raw"] == ""


@pytest.mark.usefixtures("shelf")
def test_a_page_that_is_not_there_is_refused_with_those_that_are(
    capsys: Capture,
) -> None:
    told = refused(capsys, "library", "show", "heron.txt", "--page", "2")

    assert "no page 2" in told
    assert "1 to 1" in told


@pytest.mark.usefixtures("shelf")
def test_accepting_units_needs_a_name(capsys: Capture) -> None:
    told = refused(capsys, "library", "set", "heron.txt", "--accept-applies")

    assert "--by NAME" in told
    assert "applies_to" not in fields(said(capsys, "library", "show", "heron.txt"))


@pytest.mark.usefixtures("shelf")
def test_what_a_person_says_is_shown_and_taken_back(capsys: Capture) -> None:
    stated = said(
        capsys, "library", "set", "heron.txt",
        "--revision", "D", "--date", "2024-05", "--maker", "Vellamere", "--by", "A. B.",
    )  # fmt: skip
    cleared = said(capsys, "library", "set", "heron.txt", "--clear", "revision,date")

    told, back = fields(stated), fields(cleared)
    assert (told["revision"]["value"], told["revision"]["source"]) == ("D", "person")
    assert (told["revision"]["person"], told["revision"]["instead_of"]) == (
        "A. B.",
        "C",
    )
    assert (back["revision"]["value"], back["revision"]["source"]) == (
        "C",
        "cover page",
    )
    assert "date" not in back
    assert back["maker"]["value"] == "Vellamere"


@pytest.mark.usefixtures("shelf")
def test_a_document_said_to_be_superseded_is_badged(capsys: Capture) -> None:
    said(capsys, "library", "set", "heron.txt", "--supersedes", "older.txt")

    older = said(capsys, "library", "show", "older.txt")
    hits = said(capsys, "find", "amber lamp flashes five times")["hits"]
    held = {each["document"]: each for each in said(capsys, "library")["documents"]}

    assert older["superseded_by"]
    badges = {each["document"]: each["superseded_by"] for each in hits}
    assert badges["older.txt"]
    assert held["older.txt"]["superseded_by"]
    assert not held["heron.txt"]["superseded_by"]


@pytest.mark.usefixtures("shelf")
@pytest.mark.parametrize(
    ("words", "named"),
    [
        ((), "nothing is said"),
        (("--date", "May 2024"), "is no date"),
        (("--maker", " "), "--maker is empty"),
        (("--applies-to", "AB(C,D12", "--by", "A"), "a bracket is not closed"),
        (("--serial", "2231.."), "--serial narrows --applies-to"),
        (("--applies-to", "KX-24", "--serial", "99", "--by", "A"), "no run of serials"),
        (("--clear", "colour"), "no field colour"),
        (("--accept-applies", "9", "--by", "A"), "no proposal 9"),
    ],
)
def test_a_statement_that_is_off_is_refused_with_the_way_out(
    capsys: Capture, words: tuple[str, ...], named: str
) -> None:
    told = refused(capsys, "library", "set", "heron.txt", *words)

    assert named in told
    assert "try: " in told


@pytest.mark.usefixtures("shelf")
def test_an_intact_shelf_is_proved(capsys: Capture) -> None:
    proof = said(capsys, "library", "verify")

    assert proof["damage"] == []
    assert {each["verdict"] for each in proof["documents"]} == {"proved"}
    assert all(each["passages"] for each in proof["documents"])


def test_changed_and_missing_files_are_told(shelf: Path, capsys: Capture) -> None:
    (shelf / "heron.txt").write_text(MANUAL + "More.\n")
    (shelf / "older.txt").unlink()

    proof = said(capsys, "library", "verify", code=3)

    verdicts = {each["document"]: each["verdict"] for each in proof["documents"]}
    assert verdicts == {"heron.txt": "changed", "older.txt": "missing"}
    assert all(each["hint"] for each in proof["documents"])


@pytest.mark.usefixtures("shelf")
def test_a_stored_text_that_is_not_the_files_is_told_by_its_page(
    tmp_path: Path, capsys: Capture
) -> None:
    with sqlite3.connect(tmp_path / "library" / FILE) as connection:
        connection.execute("UPDATE page SET text = replace(text, 'on', 'no')")
        connection.execute("UPDATE passage SET text = replace(text, 'on', 'no')")
    connection.close()

    proof = said(capsys, "library", "verify", "heron.txt", code=2)

    (document,) = proof["documents"]
    assert document["verdict"] == "differs"
    assert {"page": 1, "what": "its text is not the stored one"} in document["strays"]


@pytest.mark.usefixtures("shelf")
def test_a_passage_that_left_its_page_is_damage(
    tmp_path: Path, capsys: Capture
) -> None:
    with sqlite3.connect(tmp_path / "library" / FILE) as connection:
        connection.execute("UPDATE passage SET start = start + 1, stop = stop + 1")
    connection.close()

    proof = said(capsys, "library", "verify", code=4)

    assert any("not what stands on their page" in each for each in proof["damage"])


def test_a_plan_names_new_revisions_and_what_is_gone(
    shelf: Path, capsys: Capture
) -> None:
    (shelf / "heron.txt").write_text(MANUAL + "More.\n")
    (shelf / "older.txt").rename(shelf / "old.txt")
    (shelf / "empty.pdf").write_bytes(b"")

    steps = said(capsys, "add", str(shelf), "--plan")["plan"]
    (shelf / "old.txt").unlink()
    later = said(capsys, "add", str(shelf), "--plan", "--prune")["plan"]

    actions = {each["document"]: each["action"] for each in steps}
    assert actions == {
        "heron.txt": "replace",
        "old.txt": "rename",
        "empty.pdf": "refuse",
    }
    assert {each["document"]: each["action"] for each in later}["older.txt"] == "prune"


def test_the_earlier_state_leads_to_the_current_one(
    shelf: Path, capsys: Capture
) -> None:
    old = said(capsys, "library", "show", "heron.txt")["document_id"]
    (shelf / "heron.txt").write_text(MANUAL.replace("Revision C", "Revision D"))
    added = said(capsys, "add", str(shelf), "--no-embed")

    told = refused(capsys, "library", "show", old)

    assert "(rev D) is current" in added["states"][0]
    assert "is an earlier state of heron.txt" in told


@pytest.mark.usefixtures("shelf")
@pytest.mark.parametrize(
    "words", [("library",), ("library", "show", "heron.txt"), ("library", "verify")]
)
def test_every_line_fits_forty_columns(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch, words: tuple[str, ...]
) -> None:
    monkeypatch.setenv("COLUMNS", "40")

    assert main(list(words)) == 0

    assert max(map(len, capsys.readouterr().out.splitlines())) <= 40


@pytest.mark.usefixtures("shelf")
def test_near_copies_are_told_in_the_library(capsys: Capture) -> None:
    held = said(capsys, "library")

    assert held["documents"][0]["coverage"] == {"text": 1}
    assert held["near"] == [] or "stands in" in held["near"][0]
