"""The demo plays a written case through the real session; what is said decides."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from assistant.dialogue.answer import Answer
from assistant.errors import InputError, UsageError
from assistant.settings import Settings
from tui.commands import demo
from tui.main import main
from tui.plain.script import Script, read_script
from tui.playing import play
from tui.samples import dialogue, dialogues

Capture = pytest.CaptureFixture[str]


@pytest.fixture
def on_samples(sample_places: Settings, monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the demo find its library built."""
    monkeypatch.setattr(
        "tui.samples.sample_library", lambda *_, **__: sample_places.library
    )


def answer_to_reading(
    script: Script, places: Settings, jobs: Path, change: dict[str, str]
) -> Answer:
    """Play a case with words replaced, and return the answer to its reading."""
    turns = []
    for turn in script.turns:
        said = turn.say or ""
        for old, new in change.items():
            said = said.replace(old, new)
        turns.append(turn.model_copy(update={"say": said}))
    changed = script.model_copy(update={"turns": tuple(turns)})
    return [played.answer for played in play(changed, places, jobs)][4]


@pytest.mark.model
@pytest.mark.usefixtures("on_samples")
def test_the_demo_shows_every_part_of_a_case(capsys: Capture) -> None:
    assert main(["demo"]) == 0

    shown = " ".join(capsys.readouterr().out.split())
    for part in (
        "It means: discharge sensor TH3 out of range",
        "rev B, p. 8 (PDF page 11)",
        "ready at 10:36 (UTC+02:00)",
        "1. plug CN12 of the discharge sensor not seated - most likely",
        "Next check: Plug CN12 of TH3",
        "Verdict: FAIL (vellamere-tern/th3)",
        "! Capacitors hold a dangerous charge",
        "NO. Here is the safe way.",
        "faultleaf talk --library",
    ):
        assert part in shown


@pytest.mark.model
@pytest.mark.usefixtures("on_samples")
def test_the_demo_is_the_same_every_time(capsys: Capture) -> None:
    runs = []
    for _ in range(2):
        assert main(["demo", "--json"]) == 0
        runs.append(capsys.readouterr().out)

    assert runs[0] == runs[1]
    told = json.loads(runs[0])
    assert told["case"] == demo.FIRST
    assert told["turns"][2]["answer"]["status"] == "waiting"


@pytest.mark.model
def test_another_count_and_another_reading_come_to_something_else(
    sample_places: Settings, tmp_path: Path
) -> None:
    script = read_script(dialogue(demo.FIRST))

    played = answer_to_reading(script, sample_places, tmp_path / "1.sqlite", {})
    # VSM-1522 Rev. B, PDF page 11: row 2 is the outdoor coil sensor TH2.
    counted = answer_to_reading(
        script, sample_places, tmp_path / "2.sqlite", {"4 times": "2 times"}
    )
    # PDF page 17, table 8-3: 372 kohm at 30 degrees. The tolerance (4 %, 15 kohm) is
    # narrower than what 1 K of the thermometer alone makes uncertain, so even the
    # very value of the table is no proof of a sound sensor.
    read = answer_to_reading(
        script, sample_places, tmp_path / "3.sqlite", {"9 kohm": "372 kohm"}
    )

    assert [each.id for each in played.decodes[0].candidates] == [
        "vellamere-tern/amber-4"
    ]
    assert [each.id for each in counted.decodes[0].candidates] == [
        "vellamere-tern/amber-2"
    ]
    assert [each.result for each in played.verdicts] == ["fail"]
    assert [each.result for each in read.verdicts] == ["inconclusive"]
    assert played.causes[0] != read.causes[0]


def test_cases_are_listed_with_what_they_are_about(capsys: Capture) -> None:
    assert main(["demo", "--list", "--json"]) == 0

    cases = json.loads(capsys.readouterr().out)["cases"]
    assert [case["name"] for case in cases] == list(dialogues())
    assert all(case["title"] and case["about"] for case in cases)


def test_an_unknown_case_names_the_known_ones(capsys: Capture) -> None:
    assert main(["demo", "nobody"]) == 2
    assert demo.FIRST in capsys.readouterr().err
    with pytest.raises(UsageError):
        dialogue("nobody")


BROKEN = """\
title: A case
about: with mistakes
start: "2031-06-14T08:30:00Z"
turns:
  - say: "hello"
    aftr: 2 min
  - expect: {status: answerd}
"""


def test_every_mistake_of_a_dialogue_file_is_told_at_its_line(tmp_path: Path) -> None:
    path = tmp_path / "case.yaml"
    path.write_text(BROKEN)

    with pytest.raises(InputError) as caught:
        read_script(path)

    told = caught.value.what.splitlines()
    assert any(
        line.startswith("case.yaml:6:") and "did you mean `after`?" in line
        for line in told
    )
    assert any(
        line.startswith("case.yaml:7:") and "did you mean `answered`?" in line
        for line in told
    )


def test_a_turn_says_or_enters_and_not_both(tmp_path: Path) -> None:
    path = tmp_path / "case.yaml"
    path.write_text(
        BROKEN.replace("    aftr: 2 min\n", "    enter: []\n").replace(
            "answerd", "stop"
        )
    )

    with pytest.raises(InputError, match="either `say` or `enter`"):
        read_script(path)
