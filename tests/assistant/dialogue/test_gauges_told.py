"""Gauges, splits and sensors told in plain words, through the real parser."""

from __future__ import annotations

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.step import _view
from assistant.dialogue.vocabulary import pending, vocabulary
from assistant.dialogue.words import told
from assistant.language.understand import understand
from assistant.rules.applicability import Plate
from assistant.rules.pack import Pack
from tests.conversation import Talk
from tests.gauge_pack import gauge_pack


def said(pack: Pack, *texts: str) -> list[Answer]:
    talk = Talk([pack], unit=Plate(outdoor_model="LAB-20"))
    answers = []
    for text in texts:
        state = talk.situation.state
        understood = understand(
            text,
            now=talk.clock.now(),
            pending=pending(state),
            vocabulary=vocabulary(_view(talk.situation)),
        )
        answers.append(talk.tell(told(state, text, understood)))
    return answers


def verdict(answer: Answer, check: str) -> tuple[str, float | None]:
    rows = [row for row in answer.verdicts if row.check == f"lab/{check}"]
    assert rows, [row.check for row in answer.verdicts]
    return rows[-1].result, rows[-1].value


def asked(answer: Answer) -> str | None:
    return answer.question.slot if answer.question else None


BOTH = "suction pressure is 118 psi and suction line temperature is 52 F"


def test_one_pressure_alone_brings_no_verdict() -> None:
    (answer,) = said(gauge_pack(), "suction pressure is 118 psi")

    assert answer.verdicts == ()


def test_two_readings_give_the_figure_and_ask_for_what_is_missing() -> None:
    (answer,) = said(gauge_pack(), BOTH)

    # 12.16 °F, as in the tests of the references.
    result, value = verdict(answer, "charge-superheat")
    assert result == "no_verdict"
    assert value == pytest.approx(12.16 / 1.8, abs=0.01)
    assert asked(answer) in {
        "context:gauge at the named port",
        "context:charge test running",
        "mode",
    }


def test_with_mode_port_and_charge_test_the_superheat_is_judged() -> None:
    answers = said(
        gauge_pack(),
        "it is running in cool mode",
        "charge test is running",
        "gauge is on the large port",
        BOTH,
    )

    result, value = verdict(answers[-1], "charge-superheat")
    assert result == "pass"
    assert value == pytest.approx(12.16 / 1.8, abs=0.01)


def test_each_question_answered_leads_to_the_verdict() -> None:
    answers = said(gauge_pack(), BOTH, "yes", "yes", "cooling")

    slots = ["context:gauge at the named port", "context:charge test running", "mode"]
    assert [asked(answer) for answer in answers[:3]] == slots
    assert answers[0].question is not None
    assert "large line" in answers[0].question.text
    assert verdict(answers[-1], "charge-superheat")[0] == "pass"


@pytest.mark.parametrize(
    ("pressure", "unit"),
    [
        ("118 psig", "taken as gauge"),
        ("118 psi", "taken as gauge"),
        ("132.7 psia", "taken as absolute"),
        ("132.7 psi absolute", "taken as absolute"),
        ("9.149 bar abs", "taken as absolute"),
    ],
)
def test_gauge_and_absolute_are_told_apart(pressure: str, unit: str) -> None:
    (answer,) = said(
        gauge_pack(), f"suction pressure is {pressure}, suction line is 52 F"
    )

    _, value = verdict(answer, "charge-superheat")
    assert value == pytest.approx(12.16 / 1.8, abs=0.02)
    assert unit in answer.verdicts[0].reason


def test_an_inverter_without_a_charge_test_gets_the_figure_only() -> None:
    answers = said(
        gauge_pack(charge_test=None),
        "it is running in cool mode",
        "gauge is on the large port",
        BOTH,
    )

    result, value = verdict(answers[-1], "charge-superheat")
    assert result == "no_verdict"
    assert value is not None
    assert "charge test" not in (asked(answers[-1]) or "")


def test_a_split_asks_for_the_humidity() -> None:
    answers = said(
        gauge_pack(),
        "cooling mode, compressor at full speed and airflow is right",
        "return air temperature is 75 F and supply air is 57 F",
    )

    assert verdict(answers[-1], "cooling-split")[0] == "no_verdict"
    assert asked(answers[-1]) == "reading:indoor wet bulb"


def test_a_split_is_judged_once_all_is_told() -> None:
    answers = said(
        gauge_pack(),
        "cooling mode, compressor at full speed and airflow is right",
        "return air temperature is 75 F and supply air is 57 F",
        "63 F",
    )

    result, value = verdict(answers[-1], "cooling-split")
    assert result == "pass"
    assert value == pytest.approx(10.0)


def test_two_sensors_are_compared_once_both_are_told() -> None:
    answers = said(
        gauge_pack(),
        "power is off, both sensors are at the same temperature",
        "room sensor reads 10 kohm",
        "suction sensor reads 8 kohm",
    )

    result, value = verdict(answers[-1], "room-and-suction")
    assert result == "fail"
    assert value == pytest.approx(25.0 - 30.108, abs=0.01)


def test_a_sensors_voltage_needs_its_temperature() -> None:
    answers = said(
        gauge_pack(), "board is powered, room sensor voltage is 2.5 V", "25 C"
    )

    assert verdict(answers[0], "room-voltage")[0] == "no_verdict"
    assert asked(answers[0]) == "temperature:lab/room-voltage"
    assert verdict(answers[1], "room-voltage") == ("inconclusive", 2.5)
