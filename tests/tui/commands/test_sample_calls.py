"""Whole calls on the sample library: find, ask, talk, library, rules, job, doctor."""

from __future__ import annotations

import io
import json
import shutil
from pathlib import Path
from typing import Any

import pytest

from assistant.clock import SystemClock
from assistant.settings import Settings
from tui.main import main
from tui.plain.console import Console

pytestmark = pytest.mark.model
Capture = pytest.CaptureFixture[str]
ANSWER_KEYS = {
    "schema",
    "job",
    "status",
    "statements",
    "question",
    "decodes",
    "waits",
    "stops",
    "causes",
    "next_check",
    "verdicts",
    "cautions",
}
AMBER = "amber light LD2 flashes 4 times, then a pause"


@pytest.fixture
def on_samples(sample_places: Settings, monkeypatch: pytest.MonkeyPatch) -> Settings:
    """Let every call of the test use the sample library."""
    monkeypatch.setenv("FAULTLEAF_LIBRARY", str(sample_places.library))
    return sample_places


@pytest.fixture
def own_copy(
    sample_places: Settings, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> Path:
    """Copy the sample library, for calls that change it."""
    folder = tmp_path / "copy"
    shutil.copytree(sample_places.library, folder)
    monkeypatch.setenv("FAULTLEAF_LIBRARY", str(folder))
    return folder


def document(capsys: Capture, *words: str, code: int = 0) -> dict[str, Any]:
    """Run a call with --json and return its one document."""
    assert main([*words, "--json"]) == code
    told = capsys.readouterr()
    read: dict[str, Any] = json.loads(told.out)
    assert read["schema"] == 1
    return read


def lines(capsys: Capture, *words: str, code: int = 0) -> str:
    """Run a call and return what it printed, white space folded."""
    assert main(list(words)) == code
    return " ".join(capsys.readouterr().out.split())


@pytest.mark.usefixtures("on_samples")
def test_ask_prints_every_field_of_an_answer(capsys: Capture) -> None:
    answer = document(capsys, "ask", AMBER, "--unit", "VET-O50", "--role", "technician")

    assert set(answer) == ANSWER_KEYS
    assert answer["status"] == "answered"
    # VSM-1522 Rev. B, PDF page 11, printed page 8: row 4 of table 6-2.
    (decode,) = answer["decodes"]
    assert decode["verdict"] == "exact"
    assert decode["unit_confirmed"] is True
    (source,) = decode["candidates"][0]["sources"]
    assert source["document"] == "vellamere-tern-service-manual.pdf"
    assert (source["page"], source["label"], source["revision"]) == (11, "8", "B")


@pytest.mark.usefixtures("on_samples")
def test_a_sister_model_reads_the_same_count_otherwise(capsys: Capture) -> None:
    # VSM-1407 Rev. C, PDF page 11: row 4 is the discharge temperature.
    answer = document(capsys, "ask", AMBER, "--unit", "VEH-O35")

    (candidate,) = answer["decodes"][0]["candidates"]
    assert candidate["meaning"].startswith("discharge temperature above")


@pytest.mark.usefixtures("on_samples")
def test_times_are_utc_in_json_whatever_the_zone(capsys: Capture) -> None:
    answer = document(
        capsys,
        "ask",
        "I reset it 2 minutes ago",
        "--unit",
        "VET-O50",
        "--at",
        "2031-06-14T10:30+02:00",
    )

    # PDF page 9: 5 minutes after a reset; 08:28 UTC + 5 min.
    (wait,) = [wait for wait in answer["waits"] if wait["id"].endswith("reset-delay")]
    assert (wait["started"], wait["usual"], wait["state"]) == (
        "2031-06-14T08:28:00Z",
        "2031-06-14T08:33:00Z",
        "running",
    )


@pytest.mark.usefixtures("on_samples")
def test_a_job_goes_on_where_it_was_left(capsys: Capture) -> None:
    job = document(capsys, "ask", AMBER, "--unit", "VET-O50")["job"]

    again = document(
        capsys, "ask", "what next?", "--job", job[-8:], "--role", "technician"
    )

    assert again["job"] == job
    assert again["decodes"][0]["verdict"] == "exact"
    assert again["next_check"]["id"] == "vellamere-tern/plug-cn12-seat"


@pytest.mark.usefixtures("on_samples")
def test_a_question_nothing_answers_exits_1(capsys: Capture) -> None:
    found = document(capsys, "find", "price of a season ticket", code=1)
    asked = document(
        capsys, "ask", "what does code E47 mean", "--unit", "VET-O50", code=1
    )

    assert (found["status"], found["hits"]) == ("not_found", [])
    assert asked["status"] == "not_found"
    assert "Not found" in lines(capsys, "find", "price of a season ticket", code=1)


@pytest.mark.usefixtures("on_samples")
def test_find_prints_page_section_and_what_cannot_be_searched(capsys: Capture) -> None:
    shown = lines(capsys, "find", "LD2 flashes 4", "--unit", "VET-O50", "--why")
    found = document(capsys, "find", "LD2 flashes 4", "--unit", "VET-O50")

    assert "Vellamere Service Manual Tern series rev B, p. 8 (PDF page 11)" in shown
    assert "Why: score" in shown
    assert found["hits"][0]["unit_match"] in {"confirmed", "possible"}
    assert not [hit for hit in found["hits"] if "heron" in hit["document"]]
    everywhere = document(capsys, "find", "LD2 flashes 4", "--all-units")
    assert [hit for hit in everywhere["hits"] if "heron" in hit["document"]]
    # The wiring diagram on PDF page 24 of the Heron manual is a scan.
    assert {
        "document": "vellamere-heron-service-manual.pdf",
        "pages": [24],
    } in everywhere["unreadable"]


@pytest.mark.usefixtures("on_samples")
def test_find_reads_stdin(capsys: Capture, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("sys.stdin", io.StringIO("standby bus voltage\n"))

    assert document(capsys, "find", "-")["status"] == "found"


@pytest.mark.usefixtures("on_samples")
def test_nonsense_of_any_length_is_answered_or_refused_not_crashed(
    capsys: Capture,
) -> None:
    for text in ("x" * 10_000, "\x00\x1b[31m", '"' * 50, "-- '; DROP", "[E4] [/]"):
        assert main(["find", "--", text]) in {0, 1}
        assert main(["ask", "--unit", "VET-O50", "--", text]) in {0, 1, 2}
        told = capsys.readouterr()
        assert "\x1b" not in told.out
        assert "itself failed" not in told.err


@pytest.mark.usefixtures("on_samples")
def test_the_library_tells_its_coverage(capsys: Capture) -> None:
    held = document(capsys, "library")
    shown = lines(capsys, "library", "list")

    heron = next(each for each in held["documents"] if "heron" in each["document"])
    assert heron["pages"] == {"picture": 1, "text": 23}
    assert list(heron["unreadable"]) == ["24"]
    assert heron["packs"] == ["vellamere-heron"]
    assert held["not_embedded"] == 0
    assert "cannot be searched: PDF page 24" in shown
    assert "VEH-O(26,35,50)*" in shown


@pytest.mark.usefixtures("on_samples")
def test_a_pack_in_force_is_proved_again(capsys: Capture) -> None:
    proved = document(capsys, "rules", "verify", "common")

    assert (proved["stands"], proved["mistakes"]) == (True, [])
    assert main(["rules", "verify", "nobody"]) == 2
    assert "in force: common" in capsys.readouterr().err


@pytest.mark.usefixtures("own_copy")
def test_without_its_document_a_pack_no_longer_stands(capsys: Capture) -> None:
    removed = document(capsys, "remove", "vellamere-tern-service-manual.pdf", code=3)

    (warning,) = removed["warnings"]
    assert warning.startswith("rule pack vellamere-tern is in force and does not stand")
    proved = document(capsys, "rules", "verify", "vellamere-tern", code=3)

    assert proved["stands"] is False
    assert "is not in the library" in proved["mistakes"][0]["what"]


@pytest.mark.usefixtures("own_copy")
def test_remove_takes_all_or_nothing(capsys: Capture) -> None:
    assert main(["remove", "common", "no-such.pdf"]) == 2
    assert "not in the library: 'no-such.pdf'" in capsys.readouterr().err
    assert "common" in [pack["id"] for pack in document(capsys, "library")["packs"]]

    both = ("shop-note-counter.txt", "otter-narrows")
    gone = document(capsys, "remove", "common", *both)

    assert gone == {
        "schema": 1,
        "documents": ["shop-note-counter.txt"],
        "packs": ["common", "otter-narrows"],
        "warnings": [],
    }
    assert "common" not in [pack["id"] for pack in document(capsys, "library")["packs"]]


@pytest.mark.usefixtures("own_copy")
def test_a_broken_pack_is_not_put_in_force(tmp_path: Path, capsys: Capture) -> None:
    from tui.samples import samples_folder

    folder = tmp_path / "vellamere-tern"
    shutil.copytree(samples_folder() / "packs" / "vellamere-tern", folder)
    signals = folder / "signals.yaml"
    signals.write_text(signals.read_text().replace("count: 4\n", "cuont: 4\n"))

    added = document(capsys, "add", str(folder), "--no-embed", code=3)

    assert added["packs"] == []
    assert "signals.yaml:" in added["refused"][0]["reason"]
    assert "did you mean `count`?" in added["refused"][0]["reason"]
    # What was in force before still is.
    assert "vellamere-tern" in [
        pack["id"] for pack in document(capsys, "library")["packs"]
    ]


@pytest.mark.usefixtures("on_samples")
def test_jobs_are_listed_shown_and_proved(capsys: Capture) -> None:
    job = document(capsys, "ask", AMBER, "--unit", "VET-O50", "--site", "pier")["job"]

    (listed,) = document(capsys, "job", "list")["jobs"]
    record = document(capsys, "job", "show", job)
    shown = lines(capsys, "job", "show", job[:20])

    assert (listed["id"], listed["outdoor_model"], listed["site"]) == (
        job,
        "VET-O50",
        "pier",
    )
    assert [event["body"]["kind"] for event in record["events"]][:2] == [
        "opened",
        "said",
    ]
    assert f'"{AMBER}"' in shown
    assert main(["job", "verify", job, "--head", record["head"]]) == 0
    assert main(["job", "verify", job, "--head", "0" * 64]) == 3


@pytest.mark.usefixtures("on_samples")
def test_talk_answers_line_by_line_and_takes_its_commands(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    said = ["I reset it 1 minute ago", ":timers", ":nonsense", "", ":quit", "unread"]
    monkeypatch.setattr("sys.stdin", io.StringIO("\n".join(said)))

    shown = lines(capsys, "talk", "--unit", "VET-O50")

    assert "> I reset it 1 minute ago WAIT." in shown
    assert "> :timers - wait after a reset: ready at" in shown
    assert ":nonsense is not a command. :help lists them" in shown
    assert shown.endswith("stays open.")
    assert "unread" not in shown


@pytest.mark.usefixtures("on_samples")
def test_talk_resumes_and_closes_a_job(
    capsys: Capture, monkeypatch: pytest.MonkeyPatch
) -> None:
    job = document(capsys, "ask", AMBER, "--unit", "VET-O50")["job"]
    monkeypatch.setattr("sys.stdin", io.StringIO(":close plug seated"))

    shown = lines(capsys, "talk", "--job", job)

    assert "It means: discharge sensor TH3 out of range" in shown
    (listed,) = document(capsys, "job", "list")["jobs"]
    assert listed["state"] == "closed"


def test_all_is_well_says_the_doctor(on_samples: Settings) -> None:
    from tui.health import findings

    told = {each.name: each for each in findings(on_samples, SystemClock())}

    del told["versions"]  # a source tree that is not installed has none of its own
    assert {each.state for each in told.values()} == {"ok"}
    assert "8 documents" in told["library"].text


def test_a_console_never_prompts_without_a_terminal() -> None:
    console = Console(source=io.StringIO(), out=io.StringIO())

    assert console.interactive is False
