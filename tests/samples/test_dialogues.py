"""Every packaged dialogue, played through a real session, goes as it is written."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.dialogue.safety import NEVER_SAID
from assistant.settings import Settings
from tests.expectations import differences, texts_of
from tui.plain.script import Expected, read_script
from tui.playing import play
from tui.samples import dialogues

FEWEST = 12
DIALOGUES = dialogues()


def test_there_are_enough_and_each_expects_something() -> None:
    idle = [
        name
        for name, path in DIALOGUES.items()
        if all(turn.expect == Expected() for turn in read_script(path).turns)
    ]

    assert len(DIALOGUES) >= FEWEST
    assert idle == []


@pytest.mark.model
@pytest.mark.parametrize("name", DIALOGUES)
def test_a_dialogue_goes_as_written_and_never_says_what_is_never_said(
    name: str, sample_places: Settings, tmp_path: Path
) -> None:
    wrong = []
    for number, each in enumerate(
        play(read_script(DIALOGUES[name]), sample_places, tmp_path / "j.sqlite"),
        start=1,
    ):
        turn = f"turn {number} ({each.turn.say})"
        said = " ".join(texts_of(each.answer)).casefold()
        wrong += [
            f"{turn}: {one}" for one in differences(each.answer, each.turn.expect)
        ]
        wrong += [f"{turn} says {words!r}" for words in NEVER_SAID if words in said]

    assert wrong == []


@pytest.mark.model
@pytest.mark.parametrize("name", ["worked-case"])
def test_the_same_dialogue_gives_the_same_bytes(
    name: str, sample_places: Settings, tmp_path: Path
) -> None:
    script = read_script(DIALOGUES[name])

    first, second = (
        [
            each.answer.model_dump_json()
            for each in play(script, sample_places, tmp_path / f"{number}.sqlite")
        ]
        for number in (1, 2)
    )

    assert first == second
