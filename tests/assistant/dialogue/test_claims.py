"""Two documents that differ: both shown, the plate or label item asked for."""

from __future__ import annotations

import json
from datetime import UTC, datetime

import pytest

from assistant.dialogue.answer import Answer
from assistant.facts import (
    HappeningFact,
    LampFact,
    PartFact,
    SettingFact,
    UnitFact,
)
from assistant.jobs.events import Said
from assistant.language.understand import PARSER_VERSION, understand
from assistant.rules.applicability import Plate
from assistant.rules.pack import Pack
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment
from tests.conversation import LAMP, PACK, START, Talk, pack

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def other(scope: dict[str, object], **items: object) -> Pack:
    """Return a second pack for the same units, narrowed by `scope`, of its own book."""
    head = dict(PACK["head"])  # type: ignore[call-overload]
    head |= {"id": "late", "title": "Later laboratory unit"}
    head["documents"] = {"sheet": {"title": "Laboratory sheet", "revision": "B"}}
    head["applies_to"] = [{"models": ["LAB-##"], **scope}]
    return Pack.model_validate_json(json.dumps({"head": head, **items}))


AMBER_4 = [
    {
        "id": "amber-4",
        "kind": "group_then_pause",
        "lamp": LAMP,
        "count": 4,
        "meaning": "outdoor fan blocked",
        "is_fault": True,
        "source": {"doc": "sheet", "page": 2, "quote": "4 flashes"},
    }
]
LONGER = [
    {
        "id": "power-up",
        "kind": "start_delay",
        "name": "start delay after power-up",
        "trigger": "power_on",
        "minimum": "6 min",
        "give_up": "12 min",
    }
]


def amber(count: int) -> LampFact:
    seen = Observation(colour=("amber",), state="count", count=(count,), pause="seen")
    return LampFact(observation=seen)


def meanings(answer: Answer) -> list[str]:
    return [one.meaning for decode in answer.decodes for one in decode.candidates]


def lines(answer: Answer) -> str:
    return "\n".join(statement.text for statement in answer.statements)


def said(talk: Talk, text: str) -> Answer:
    found = understand(text, now=NOW)
    body = Said(text=text, facts=found.facts, acts=found.acts, parser=PARSER_VERSION)
    return talk.tell(body)


def test_one_count_of_two_books_is_shown_twice_and_the_label_is_asked_for() -> None:
    talk = Talk([pack(), other({"board_mark": "blue"}, signals=AMBER_4)])

    answer = talk.enter(amber(4))

    assert answer.question is not None
    assert answer.question.slot == "unit:board_mark"
    assert sorted(meanings(answer)) == [
        "discharge sensor out of range",
        "outdoor fan blocked",
    ]
    assert "Two documents differ" in lines(answer)
    assert "colour or print on the board label" in lines(answer)


def test_the_label_excludes_the_other_book_or_puts_it_first() -> None:
    packs = [pack(), other({"board_mark": "blue"}, signals=AMBER_4)]

    white = Talk(packs)
    white.enter(amber(4))
    of_white = white.enter(UnitFact(plate=Plate(board_mark="white")))
    blue = Talk(packs)
    blue.enter(amber(4))
    of_blue = blue.enter(UnitFact(plate=Plate(board_mark="blue")))

    assert meanings(of_white) == ["discharge sensor out of range"]
    assert "Two documents differ" not in lines(of_white)
    # Neither book names the other as replaced: the closer one stands first.
    assert meanings(of_blue) == [
        "outdoor fan blocked",
        "discharge sensor out of range",
    ]


def test_a_label_said_wrongly_is_taken_back() -> None:
    talk = Talk([pack(), other({"voltage": "115"}, signals=AMBER_4)])
    said(talk, "its the 230 one")
    before = talk.enter(amber(4))

    after = said(talk, "its the 115 one, i said 230 before")

    assert meanings(before) == ["discharge sensor out of range"]
    assert talk.situation.state.plate.voltage == "115 V"
    assert "outdoor fan blocked" in meanings(after)


@pytest.mark.parametrize(
    ("scope", "slot", "options"),
    [
        ({"settings": ["SW3-2 on"]}, "unit:switch_settings",
         ("SW3-2 on", "SW3-2 off")),
        ({"fitted": ["drain pump"]}, "unit:fitted",
         ("drain pump", "no drain pump")),
    ],
)  # fmt: skip
def test_a_switch_or_an_option_decides_and_is_asked_for_by_name(
    scope: dict[str, object], slot: str, options: tuple[str, ...]
) -> None:
    talk = Talk([pack(), other(scope, signals=AMBER_4)])

    answer = talk.enter(amber(4))

    assert answer.question is not None
    assert (answer.question.slot, answer.question.splits) == (slot, options)
    assert options[0] in answer.question.text


def test_two_waits_that_differ_are_both_shown_with_what_decides() -> None:
    talk = Talk([pack(), other({"serial": {"first": "2314"}}, waits=LONGER)])

    answer = talk.enter(
        HappeningFact(trigger="power_on", at=Moment(earliest=START, latest=START))
    )

    assert {wait.id for wait in answer.waits} == {"lab/power-up", "late/power-up"}
    assert "minimum 3 min" in lines(answer)
    assert "minimum 6 min" in lines(answer)
    assert answer.question is not None
    assert answer.question.slot == "unit:serial"


def test_a_serial_that_does_not_fit_keeps_both_and_asks_for_the_date() -> None:
    talk = Talk([pack(), other({"serial": {"first": "2314"}}, waits=LONGER)])
    talk.enter(
        HappeningFact(trigger="power_on", at=Moment(earliest=START, latest=START))
    )

    answer = talk.enter(UnitFact(plate=Plate(serial="QXA-77")))

    assert {wait.id for wait in answer.waits} == {"lab/power-up", "late/power-up"}
    assert answer.question is not None
    assert answer.question.slot == "unit:built"

    dated = said(talk, "it was made in 2019")

    assert {wait.id for wait in dated.waits} == {"lab/power-up"}


def test_a_new_board_makes_its_label_unknown_again() -> None:
    talk = Talk([pack(), other({"board_mark": "blue"}, signals=AMBER_4)])
    talk.enter(UnitFact(plate=Plate(board_mark="white", voltage="230")))

    talk.enter(PartFact(part="main board"))

    assert talk.situation.state.plate == Plate(outdoor_model="LAB-20", voltage="230")

    talk.enter(UnitFact(plate=Plate(board_mark="blue")))

    assert talk.situation.state.plate.board_mark == "blue"


def test_a_changed_switch_stands_as_it_was_left() -> None:
    talk = Talk()
    talk.enter(UnitFact(plate=Plate(switch_settings="SW3-2 off, SW1 on")))

    talk.enter(SettingFact(setting="sw3-2 to on"))

    assert talk.situation.state.plate.switch_settings == "SW3-2 on, SW1 on"


def test_a_setting_told_settles_a_row_that_needs_it() -> None:
    row = AMBER_4[0] | {"precondition": ["SW3-2 on"]}
    talk = Talk([other({}, signals=[row])])
    told = UnitFact(plate=Plate(switch_settings="SW3-2 on"))

    answer = talk.enter(told, amber(4))
    off = Talk([other({}, signals=[row])]).enter(
        UnitFact(plate=Plate(switch_settings="SW3-2 off")), amber(4)
    )

    assert "precondition" in answer.decodes[0].candidates[0].matched
    assert meanings(off) == []
