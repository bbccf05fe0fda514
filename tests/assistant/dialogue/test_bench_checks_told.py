"""Checks of the bench told in plain words: several readings, refusals, questions."""

from __future__ import annotations

import json
from typing import Any

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.view import View
from assistant.dialogue.vocabulary import pending, vocabulary
from assistant.dialogue.words import told
from assistant.language.understand import understand
from assistant.rules.pack import Pack
from tests.conversation import PACK, TECHNICIANS, Talk

DEAD = {"needs": "power_off", "requires": ["power off"]}
CHECKS: tuple[dict[str, Any], ...] = (
    DEAD
    | {
        "id": "windings",
        "kind": "winding",
        "name": "compressor windings",
        "points": ["u to v", "v to w", "u to w"],
        "largest": "8 %",
    },
    DEAD
    | {
        "id": "ground",
        "kind": "insulation",
        "name": "insulation of the compressor",
        "points": "winding to ground",
        "low": "10 Mohm",
    },
    {
        "id": "fan",
        "kind": "fan_pins",
        "name": "fan motor pins",
        "needs": "live",
        "pins": [
            {"name": "Vs", "low": "280 V", "high": "380 V"},
            {"name": "Vcc", "low": "13.5 V", "high": "16.5 V"},
        ],
        "command": {"name": "Vsp", "low": "1 V", "high": "6.5 V"},
    },
    {
        "id": "line",
        "kind": "line",
        "name": "line between the units",
        "needs": "live",
        "points": "2 to 3",
        "healthy": ["swings"],
        "means": {"one-sided": "the outdoor board", "constant": "the indoor board"},
    },
    DEAD
    | {
        "id": "run-capacitor",
        "kind": "capacitor",
        "name": "fan capacitor",
        "rated": "35 uF",
        "tolerance": "6 %",
    },
    DEAD
    | {
        "id": "valve",
        "kind": "coil",
        "name": "reversing valve coil",
        "points": "reversing valve coil",
        "low": "1400 ohm",
        "high": "1600 ohm",
    },
    DEAD
    | {
        "id": "pressure-switch",
        "kind": "switch",
        "name": "high pressure switch",
        "says": ["high pressure switch"],
        "points": "63H",
        "must_be": "closed",
        "while_state": "power off",
    },
)


class Spoken(Talk):
    """A job driven by what is typed."""

    def say(self, text: str) -> Answer:
        state = self.situation.state
        view = View(state, self.situation.knowledge, self.clock.now())
        understood = understand(
            text,
            now=self.clock.now(),
            pending=pending(state),
            vocabulary=vocabulary(view),
        )
        return self.tell(told(state, text, understood))


@pytest.fixture
def talk() -> Spoken:
    checks = [
        {
            "minutes": 3,
            "allowed_for": TECHNICIANS,
            "ask": f"What does {one['name']} read?",
            "outcomes": [{"result": "fail", "says": "Not as the document has it."}],
        }
        | one
        for one in CHECKS
    ]
    written = PACK | {"checks": checks}
    return Spoken([Pack.model_validate_json(json.dumps(written))])


def verdicts(answer: Answer) -> dict[str, str]:
    return {one.check.partition("/")[2]: one.result for one in answer.verdicts}


def test_three_windings_told_at_once_get_one_verdict(talk: Spoken) -> None:
    talk.say("power is off and the compressor leads are disconnected")

    answer = talk.say("u to v 12.1 ohm, v to w 12.2 ohm, u to w 12.1 ohm")

    assert verdicts(answer) == {"windings": "pass"}


def test_windings_told_one_after_the_other_are_asked_for_and_compared(
    talk: Spoken,
) -> None:
    talk.say("power off, inverter module unplugged")
    first = talk.say("u to v 12.1 ohm")
    second = talk.say("v to w 12.2 ohm")

    assert verdicts(first) == {}
    assert verdicts(second) == {"windings": "no_verdict"}
    assert second.question is not None
    assert "u to w" in second.question.text

    third = talk.say("8.2 ohm")

    assert verdicts(third) == {"windings": "fail"}


def test_a_winding_read_live_is_not_accepted(talk: Spoken) -> None:
    talk.say("power is on, compressor leads are disconnected")

    answer = talk.say("u to v 12.1 ohm, v to w 12.2 ohm, u to w 12.1 ohm")

    assert verdicts(answer) == {"windings": "no_verdict"}
    assert "taken live" in answer.verdicts[0].reason


def test_insulation_waits_for_the_module_and_for_the_vacuum(talk: Spoken) -> None:
    talk.say("power is off")

    asked = talk.say("winding to ground 200 megohm")
    assert verdicts(asked) == {"ground": "no_verdict"}
    assert asked.question is not None
    assert "module" in asked.question.text
    still = talk.say("yes, it is disconnected")
    assert verdicts(still) == {"ground": "no_verdict"}
    done = talk.say("it is not under vacuum")
    assert verdicts(done) == {"ground": "pass"}


def test_insulation_under_vacuum_is_refused(talk: Spoken) -> None:
    talk.say("power is off, module disconnected, system under vacuum")

    answer = talk.say("winding to ground 200 megohm")

    assert verdicts(answer) == {"ground": "no_verdict"}
    assert "not under vacuum" in answer.verdicts[0].reason


def test_no_fan_part_is_named_before_the_header_and_the_command(talk: Spoken) -> None:
    talk.say("good power at the terminals")
    plugged = talk.say("Vs 310 V dc, Vcc 15 V dc")
    assert verdicts(plugged) == {"fan": "no_verdict"}

    talk.say("the fan motor header is unplugged")
    state = talk.say("Vs 310 V dc, Vcc 15 V dc")
    assert verdicts(state) == {"fan": "no_verdict"}
    assert "speed command" in state.verdicts[0].reason

    done = talk.say("Vsp 3.2 V")
    assert verdicts(done) == {"fan": "pass"}
    assert "motor's side" in done.verdicts[0].reason


@pytest.mark.parametrize(
    ("told_", "result", "says"),
    [
        ("between 2 and 3 -40 V, then 12 V, then 45 V", "pass", "swings"),
        ("between 2 and 3 4 V, then 12 V, then 45 V", "fail", "outdoor board"),
        ("between 2 and 3 24 V, then 24 V, then 24 V", "fail", "indoor board"),
    ],
)
def test_a_line_is_judged_by_the_packs_rule_after_three_readings(
    told_: str, result: str, says: str, talk: Spoken
) -> None:
    talk.say("good power at the terminals")
    answers = [
        talk.say(f"between 2 and 3 {part.removeprefix('between 2 and 3 ').strip()}")
        for part in told_.replace("then", "").split(",")
    ]

    assert [verdicts(answer) for answer in answers[:2]] == [{"line": "no_verdict"}] * 2
    assert verdicts(answers[2]) == {"line": result}
    assert says in answers[2].verdicts[0].reason
    assert "mains potential" in answers[2].verdicts[0].reason


def test_a_capacitor_a_coil_and_a_switch_are_read_out_of_circuit(talk: Spoken) -> None:
    talk.say("power is off")
    first = talk.say("capacitor reads 34.8 uF")
    assert verdicts(first) == {"run-capacitor": "no_verdict"}

    talk.say("capacitor is discharged, both leads off")
    assert verdicts(talk.say("capacitor reads 34.8 uF")) == {"run-capacitor": "pass"}
    coil = talk.say("reversing valve coil 1500 ohm")
    assert verdicts(coil) == {"valve": "pass"}
    switch = talk.say("high pressure switch reads OL")
    assert verdicts(switch) == {"pressure-switch": "fail"}


def test_a_rough_reading_is_asked_back_and_judged_once_it_is_exact(
    talk: Spoken,
) -> None:
    talk.say("power is off, module disconnected, it is not under vacuum")

    rough = talk.say("winding to ground 300 megohm and change")
    assert verdicts(rough) == {}
    assert rough.question is not None
    assert "exactly" in rough.question.text

    exact = talk.say("312 megohm")
    assert verdicts(exact) == {"ground": "pass"}
    assert exact.question is None or "exactly" not in exact.question.text


def test_an_implausible_reading_is_questioned_and_taken_as_told(talk: Spoken) -> None:
    talk.say("power is off, capacitor is discharged, both leads off")

    answer = talk.say("capacitor reads 3.4 uF")

    (verdict,) = answer.verdicts
    assert verdict.value == pytest.approx(3.4e-6)
    assert "taken as told" in verdict.reason


def test_a_check_that_the_meter_cannot_decide_is_said_before_it_is_tried() -> None:
    narrow = {
        "id": "winding-band",
        "kind": "band",
        "name": "winding u to v",
        "needs": "power_off",
        "minutes": 3,
        "allowed_for": TECHNICIANS,
        "ask": "What does u to v read?",
        "requires": ["power off"],
        "points": "U and V",
        "low": "0.62 ohm",
        "high": "0.68 ohm",
        "outcomes": [
            {"result": "fail", "says": "Off.", "moves": {"sensor": "strongly for"}}
        ],
    }
    talk = Spoken([Pack.model_validate_json(json.dumps(PACK | {"checks": [narrow]}))])

    answer = talk.say("amber light on L1 flashes 4 times, then a pause")

    assert answer.next_check is not None
    text = " ".join(statement.text for statement in answer.statements)
    assert "before you try" in text
    assert "a finer one is needed" in text


def test_a_reading_keeps_the_power_state_it_was_taken_in(talk: Spoken) -> None:
    talk.say("power is off and the compressor leads are disconnected")
    first = talk.say("u to v 12.1 ohm, v to w 12.2 ohm, u to w 12.1 ohm")
    assert verdicts(first) == {"windings": "pass"}

    later = talk.say("power is back on, compressor leads are connected")

    assert verdicts(later) == {}
    (done,) = [one for one in talk.situation.state.checks if "windings" in one.check]
    assert done.result == "pass"


def test_a_resistance_read_live_is_not_mended_by_switching_off(talk: Spoken) -> None:
    talk.say("power is on, compressor leads are disconnected")
    talk.say("u to v 12.1 ohm, v to w 12.2 ohm, u to w 12.1 ohm")

    off = talk.say("power is off now")
    assert verdicts(off) == {}

    again = talk.say("u to v 12.1 ohm, v to w 12.2 ohm, u to w 12.1 ohm")
    assert verdicts(again) == {"windings": "pass"}


def test_the_command_is_read_plugged_in_after_the_supplies_unplugged(
    talk: Spoken,
) -> None:
    talk.say("good power at the terminals, the fan motor header is unplugged")
    talk.say("Vs 310 V dc, Vcc 15 V dc")

    done = talk.say("the header is plugged in again, Vsp 3.2 V")

    assert verdicts(done) == {"fan": "pass"}


def test_supplies_read_plugged_in_do_not_count_beside_those_unplugged(
    talk: Spoken,
) -> None:
    talk.say("good power at the terminals, the fan motor header is plugged in")
    plugged = talk.say("Vs 310 V dc, Vcc 9 V dc")
    assert verdicts(plugged) == {"fan": "no_verdict"}

    talk.say("the fan motor header is unplugged")
    done = talk.say("Vs 310 V dc, Vcc 15 V dc, Vsp 3.2 V")

    assert verdicts(done) == {"fan": "pass"}
