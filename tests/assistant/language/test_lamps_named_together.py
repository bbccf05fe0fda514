"""Lamps named together, pauses and rounds that are no lamps, codes of letters only."""

from __future__ import annotations

from datetime import UTC, datetime

import pytest

from assistant.facts import LampFact, ReadingFact
from assistant.language.understand import understand
from assistant.language.vocabulary import Pending, Vocabulary
from assistant.signals.observation import Observation

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
WORDS = Vocabulary(
    colours=("amber", "green", "red"),
    labels=("H2", "H3", "H4", "H5"),
    codes=("Sb", "E4"),
)


def seen(text: str) -> list[Observation]:
    understood = understand(text, now=NOW, vocabulary=WORDS)
    return [fact.observation for fact in understood.facts if isinstance(fact, LampFact)]


@pytest.mark.parametrize(
    ("text", "lamps"),
    [
        ("H2 and H3 both flashing together", {("H2", "blink"), ("H3", "blink")}),
        ("red and green both steady", {("red", "on"), ("green", "on")}),
        ("green is lit, amber is dark", {("green", "on"), ("amber", "off")}),
        ("H2 H3 and H4 lit", {("H2", "on"), ("H3", "on"), ("H4", "on")}),
        (
            "H2 to H5 flash",
            {("H2", "blink"), ("H3", "blink"), ("H4", "blink"), ("H5", "blink")},
        ),
        ("H2 through H3 are dark", {("H2", "off"), ("H3", "off")}),
    ],
)
def test_lamps_named_together_are_told_one_by_one(
    text: str, lamps: set[tuple[str, str]]
) -> None:
    told = {((one.label or one.colour)[0], one.state) for one in seen(text)}

    assert told == lamps


def test_the_dark_of_a_pause_is_no_lamp_that_is_off() -> None:
    (lamp,) = seen("amber blinks 5 then goes dark for a bit, same twice")

    assert (lamp.count, lamp.pause, lamp.groups_watched) == ((5,), "seen", 2)


def test_counted_twice_is_not_a_count_of_two() -> None:
    (lamp,) = seen("amber does 3 then a dark pause, counted twice")

    assert (lamp.count, lamp.groups_watched) == ((3,), 2)


def test_a_pause_told_by_itself_is_kept() -> None:
    (lamp,) = seen("yeah it rests in between")

    assert (lamp.state, lamp.pause) == ("blink", "seen")


@pytest.mark.parametrize("text", ["display shows Sb", "it says sb", "Sb on the remote"])
def test_a_code_of_letters_only_is_read_where_the_packs_have_it(text: str) -> None:
    (lamp,) = seen(text)

    assert (lamp.state, lamp.code) == ("display", "Sb")


def test_an_event_told_with_its_time_is_one_event_whatever_was_asked() -> None:
    understood = understand(
        "the compressor stopped at 8:25",
        now=NOW,
        pending=Pending(slot="time:power_on"),
        vocabulary=WORDS,
    )

    (fact,) = understood.facts
    assert fact.kind == "happening"
    assert fact.trigger == "compressor_stopped"
    assert fact.at is not None
    assert fact.at.earliest == datetime(2031, 6, 14, 8, 25, tzinfo=UTC)


def test_the_not_of_a_correction_is_no_answer_to_a_look() -> None:
    understood = understand(
        "sorry, it was 231 volts, not 188",
        now=NOW,
        pending=Pending(slot="look:p/storm", options=("yes", "no")),
        vocabulary=WORDS,
    )

    (fact,) = understood.facts
    assert isinstance(fact, ReadingFact)
    assert "correct" in understood.acts


def test_somebody_elses_reset_is_a_reset_with_its_time() -> None:
    understood = understand("somebody reset it 2 minutes ago, is it stuck?", now=NOW)

    (fact,) = understood.facts
    assert fact.kind == "reset"
    assert fact.at is not None
    assert fact.at.latest == datetime(2031, 6, 14, 8, 28, tzinfo=UTC)


@pytest.mark.parametrize(
    "text", ["can I bridge the sensor to test", "just fool the discharge thermistor"]
)
def test_bridging_a_sensor_is_an_unsafe_wish(text: str) -> None:
    kinds = {fact.kind for fact in understand(text, now=NOW).facts}

    assert "bypass" in kinds


def test_a_role_alone_between_two_breaks_says_who_is_there() -> None:
    understood = understand("VET-O50, technician. amber flashes four times", now=NOW)

    assert "technician" in [getattr(fact, "role", "") for fact in understood.facts]


def test_a_display_told_after_two_lamps_is_not_a_lamp_of_theirs() -> None:
    told = [(one.label, one.state) for one in seen("H2 and H3 lit, display shows E4")]

    assert sorted(told) == [((), "display"), (("H2",), "on"), (("H3",), "on")]


@pytest.mark.parametrize(
    ("text", "one_code"),
    [
        ("it stays the same", True),
        ("no just that one", True),
        ("third time in the same call", False),
        ("stopped on the same thing at 9", False),
    ],
)
def test_only_an_answer_says_that_there_is_no_other_code(
    text: str, one_code: bool
) -> None:
    facts = understand(text, now=NOW, pending=Pending(slot="codes")).facts
    lamps = [one.observation for one in facts if isinstance(one, LampFact)]

    assert [one.shown_in_turn for one in lamps] == [False] * one_code
