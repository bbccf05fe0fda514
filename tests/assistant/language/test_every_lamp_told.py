"""Both lamps, all of them, the other one; and what beside a lamp is none."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from assistant.facts import LampFact
from assistant.language.understand import understand
from assistant.language.vocabulary import Vocabulary

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
WORDS = Vocabulary(colours=("amber", "green", "red"), labels=("H1",), codes=("E4",))


def told(text: str) -> list[LampFact]:
    understood = understand(text, now=NOW, vocabulary=WORDS)
    return [fact for fact in understood.facts if isinstance(fact, LampFact)]


@pytest.mark.parametrize(
    ("text", "lamps"),
    [
        ("both lights are out", [("off", "every")]),
        ("both red lights on the drive board are solid", [("on", "every")]),
        ("both of em flash but not at the same time", [("blink", "every")]),
        ("both lamps blink 4 times", [("count", "every")]),
        ("no code, no lights at all", [("no_code", None), ("off", "every")]),
        ("none of the lights are on", [("off", "every")]),
        ("neither lamp is lit", [("off", "every")]),
        ("H1 steady, the other two off", [("on", None), ("off", "every")]),
        ("one light flashes, the other one is on", [("blink", None), ("on", "other")]),
        ("H1 is lit", [("on", None)]),
    ],
)
def test_more_lamps_than_one_are_told_as_such(
    text: str, lamps: list[tuple[str, str | None]]
) -> None:
    seen = [(fact.observation.state, fact.observation.lamps) for fact in told(text)]

    assert seen == lamps


@pytest.mark.parametrize(
    "text", ["neither light is flashing", "none of the lights are flashing"]
)
def test_lamps_that_do_not_flash_are_not_told_to_flash(text: str) -> None:
    assert told(text) == []


@pytest.mark.parametrize(
    "text",
    [
        "all the fans are off, the green light is on",
        "both isolators are off but the green light is on",
        "green light on, compressor off",
        "everybody is out, the green light is on",
        "SW4 is on STATUS, the green light is on",
    ],
)
def test_a_part_that_is_off_is_no_lamp(text: str) -> None:
    (fact,) = told(text)

    assert (fact.observation.colour, fact.observation.state) == (("green",), "on")


@pytest.mark.parametrize(
    "text",
    ["red flashes 3 times then pause, then 4 times", "red does 3 flashes, 4 flashes"],
)
def test_two_counts_of_one_lamp_are_never_two_lamps(text: str) -> None:
    (fact,) = told(text)

    assert (fact.observation.colour, fact.observation.count) == (("red",), (3, 4))


def test_what_a_lamp_did_before_counts_no_more_once_it_has_changed() -> None:
    (fact,) = told("yesterday red flashed 4 times, now 6 times")

    assert (fact.observation.colour, fact.observation.count) == (("red",), (6,))


def test_the_count_before_after_the_reset_is_of_the_same_lamp_earlier() -> None:
    facts = told("red flashes 4 times, after the reset 2 times")

    assert [(f.observation.count, f.before_reset) for f in facts] == [
        ((4,), True),
        ((2,), False),
    ]
    assert {f.observation.colour for f in facts} == {("red",)}


@pytest.mark.parametrize(
    "text", ["E4 on the display flashing", "E4 is flashing", "flashing E4"]
)
def test_a_code_that_flashes_is_no_lamp(text: str) -> None:
    (fact,) = told(text)

    assert (fact.observation.state, fact.observation.code) == ("display", "E4")


def test_a_lamp_that_flashes_beside_a_code_stays_a_lamp() -> None:
    facts = told("E4 on the display and the red light flashing")

    assert [fact.observation.state for fact in facts] == ["display", "blink"]
