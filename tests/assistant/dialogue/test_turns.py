"""Whole turns of a job on an invented pack, facts entered as data."""

from __future__ import annotations

from datetime import timedelta

import pytest

from assistant.dialogue.answer import Answer
from assistant.dialogue.safety import NEVER_SAID, REFUSALS, STOP_LIST
from assistant.facts import (
    BypassFact,
    ContextFact,
    HappeningFact,
    HazardFact,
    LampFact,
    LookFact,
    ProtectionStopFact,
    ReadingFact,
    ResetFact,
    RoleFact,
)
from assistant.jobs.events import CheckDone, FoundHit, Said
from assistant.rules.applicability import Plate
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment
from assistant.units.parse import parse_quantity
from tests.conversation import START, Talk


def amber(*count: int) -> LampFact:
    seen = Observation(colour=("amber",), state="count", count=count, pause="seen")
    return LampFact(observation=seen)


def words(answer: Answer) -> str:
    lines = [statement.text for statement in answer.statements]
    lines += [caution.text for caution in answer.cautions]
    if answer.question:
        lines.append(answer.question.text)
    if answer.next_check:
        lines += [answer.next_check.ask, *answer.next_check.steps]
    return "\n".join(lines)


def ohms(text: str, at: str = "25 degC") -> ReadingFact:
    return ReadingFact(
        of="discharge",
        value=parse_quantity(text),
        at_temperature=parse_quantity(at),
        power_state="off",
    )


UNPLUGGED = ContextFact(name="sensor unplugged", value=True)


def test_a_count_is_decoded_with_causes_in_order_and_the_least_invasive_check() -> None:
    answer = Talk().enter(amber(4))

    assert answer.decodes[0].verdict == "exact"
    assert [one.id for one in answer.decodes[0].candidates] == ["lab/amber-4"]
    assert [one.id for one in answer.causes] == [
        "lab/sensor-plug",
        "lab/sensor",
        "lab/board",
    ]
    assert answer.next_check is not None
    assert answer.next_check.id == "lab/look-plug"
    assert answer.status == "answered"


def test_a_reading_out_of_the_table_fails_and_leads_to_the_sensor() -> None:
    talk = Talk()
    talk.enter(amber(4))

    # 50k at 25 degC +-15 %: 12 kohm is far outside by any meter.
    answer = talk.enter(ohms("12 kohm"), UNPLUGGED)

    assert [(one.check, one.result) for one in answer.verdicts] == [
        ("lab/sensor-ohms", "fail")
    ]
    # By hand: plug 6, sensor 3 x 6 = 18.
    assert answer.causes[0].id == "lab/sensor"


def test_a_reading_on_the_table_passes_and_clears_the_sensor() -> None:
    talk = Talk()
    talk.enter(amber(4))

    answer = talk.enter(ohms("50 kohm"), UNPLUGGED)

    assert answer.verdicts[0].result == "pass"
    # By hand: plug 6, sensor 3 / 6 = 0.5, board 1 x 2 = 2.
    assert [one.id for one in answer.causes] == [
        "lab/sensor-plug",
        "lab/board",
        "lab/sensor",
    ]


def test_a_reading_without_its_temperature_gets_no_verdict_but_a_question() -> None:
    talk = Talk()
    talk.enter(amber(4))
    bare = ReadingFact(
        of="discharge", value=parse_quantity("12 kohm"), power_state="off"
    )

    answer = talk.enter(bare, UNPLUGGED)

    assert answer.verdicts[0].result == "no_verdict"
    assert answer.question is not None
    assert answer.question.slot == "temperature:lab/sensor-ohms"


def test_context_told_later_gives_an_earlier_reading_its_verdict() -> None:
    talk = Talk()
    talk.enter(amber(4))
    talk.enter(ohms("12 kohm"))

    answer = talk.enter(UNPLUGGED)

    assert [one.result for one in answer.verdicts] == ["fail"]


def test_a_reading_taken_live_is_not_accepted() -> None:
    talk = Talk()
    talk.enter(amber(4))
    live = ohms("12 kohm").model_copy(update={"power_state": "live"})

    answer = talk.enter(live, UNPLUGGED)

    assert answer.verdicts[0].result == "no_verdict"


def test_a_wait_ends_at_the_time_of_the_event_plus_its_length() -> None:
    # Power came on two minutes before the turn at 08:31: usual end 08:29 + 4 min.
    powered = START - timedelta(minutes=1)
    on = HappeningFact(trigger="power_on", at=Moment(earliest=powered, latest=powered))

    answer = Talk().enter(on)

    assert answer.status == "waiting"
    assert [(one.id, one.state) for one in answer.waits] == [
        ("lab/power-up", "running")
    ]
    assert answer.waits[0].usual == powered + timedelta(minutes=4)
    assert "Wait until 08:33" in words(answer)


def test_a_steady_lamp_asks_when_the_power_came_on() -> None:
    steady = LampFact(observation=Observation(colour=("amber",), state="on"))

    answer = Talk().enter(steady)

    assert answer.decodes[0].candidates[0].id == "lab/amber-on"
    assert answer.question is not None
    assert answer.question.slot == "time:power_on"
    assert answer.waits[0].state == "start_unknown"


def test_a_count_outside_the_table_is_not_found() -> None:
    answer = Talk().enter(amber(7))

    assert answer.decodes[0].verdict == "none"
    assert "Not in this manual" in words(answer)


def test_a_third_stop_within_the_hour_locks_out_and_names_reset_and_loss() -> None:
    talk = Talk()
    talk.enter(amber(9))
    third = ProtectionStopFact(
        event="high pressure",
        count=(3,),
        apart_s=(600.0, 600.0),
        at=Moment(earliest=talk.clock.now(), latest=talk.clock.now()),
    )

    answer = talk.enter(third)

    assert answer.status == "unit_lockout"
    assert [(one.id, one.state) for one in answer.stops] == [
        ("lab/pressure-stops", "locked")
    ]
    assert "all supplies together" in words(answer).casefold()
    assert "It erases: the count and the lamp" in words(answer)


def test_two_stops_leave_one_and_are_no_tests() -> None:
    two = ProtectionStopFact(
        event="high pressure",
        count=(2,),
        apart_s=(600.0, 600.0),
        at=Moment(earliest=START, latest=START),
    )

    answer = Talk().enter(two)

    assert [(one.state, one.left) for one in answer.stops] == [("open", 1)]
    assert "do not use them as tests" in words(answer)


def test_a_customer_is_never_shown_a_step_inside_the_unit() -> None:
    talk = Talk(role=None)
    first = talk.enter(amber(4))

    second = talk.enter(LookFact(check="lab/look-plug", answer="free"))

    for answer in (first, second):
        assert answer.next_check is None or answer.next_check.needs == "look"
        assert "Isolate" not in words(answer)
    assert second.question is not None
    assert second.question.slot == "role"


def test_a_customer_known_as_such_is_told_whose_check_it_is() -> None:
    talk = Talk(role="customer")
    talk.enter(amber(4))

    answer = talk.enter(LookFact(check="lab/look-plug", answer="free"))

    assert answer.next_check is None
    assert "is for: technician" in words(answer)


def test_a_customer_with_a_lockout_is_given_no_reset_steps() -> None:
    answer = Talk(role="customer").enter(amber(9))

    assert answer.status == "unit_lockout"
    assert "switch all supplies off" not in words(answer)


def test_hands_inside_bring_the_safe_order_and_cautions_once_per_level() -> None:
    talk = Talk()
    talk.enter(amber(4))

    answer = talk.enter(LookFact(check="lab/look-plug", answer="free"))
    again = talk.enter(ContextFact(name="compressor running", value=False))

    assert answer.next_check is not None
    assert answer.next_check.id == "lab/sensor-ohms"
    assert "Switch off and isolate every supply" in answer.next_check.steps[0]
    assert answer.cautions
    assert all(caution.basis for caution in answer.cautions)
    assert again.next_check is not None


@pytest.mark.parametrize("hazard", sorted(STOP_LIST))
def test_every_danger_stops_the_work_and_stays_on_view(hazard: str) -> None:
    talk = Talk()
    danger = HazardFact.model_validate({"hazard": hazard})

    stopped = talk.enter(danger, amber(4))
    later = talk.enter(amber(4))

    assert stopped.status == "stop"
    assert stopped.next_check is None
    assert "Call:" in words(stopped)
    assert STOP_LIST[danger.hazard or "gas"].afterwards in words(later)


def test_the_stop_list_answers_without_any_pack() -> None:
    answer = Talk(packs=()).enter(HazardFact(hazard="gas"))

    assert answer.status == "stop"


@pytest.mark.parametrize("act", sorted(REFUSALS))
def test_every_unsafe_wish_is_refused_with_the_safe_way(act: str) -> None:
    answer = Talk().enter(BypassFact.model_validate({"act": act}))

    assert answer.status == "refused"
    assert "Instead:" in words(answer)
    assert answer.next_check is None


def test_a_correction_takes_the_verdict_back_by_name() -> None:
    talk = Talk()
    talk.enter(amber(4))
    talk.enter(ohms("12 kohm"), UNPLUGGED)
    fact = ReadingFact(of="discharge", value=parse_quantity("50 kohm"), words="50k")

    answer = talk.tell(
        Said(text="no, 50k", facts=(fact,), acts=("correct",), parser="test")
    )

    assert "Taken back: discharge sensor resistance, fail" in words(answer)
    assert answer.verdicts[0].result == "pass"
    assert answer.causes[0].id == "lab/sensor-plug"


def test_a_corrected_count_decodes_anew_and_counts_once() -> None:
    talk = Talk()
    talk.enter(amber(4))
    five = LampFact(observation=Observation(state="count", count=(5,)), words="five")

    answer = talk.tell(
        Said(text="no wait, five", facts=(five,), acts=("correct",), parser="test")
    )

    assert [one.id for one in answer.decodes[0].candidates] == ["lab/amber-5"]


def test_a_reset_parts_the_evidence() -> None:
    talk = Talk()
    talk.enter(amber(4))
    talk.enter(ohms("12 kohm"), UNPLUGGED)

    answer = talk.enter(ResetFact(which="power"))

    assert "before the reset, not now" in words(answer)
    assert all(one.id != "lab/sensor" for one in answer.causes[:1])


def test_the_unit_is_asked_for_once_a_lamp_is_told() -> None:
    answer = Talk(unit=Plate()).enter(amber(4))

    assert answer.question is not None
    assert answer.question.slot == "unit"
    assert not answer.decodes[0].unit_confirmed
    assert answer.next_check is None


def test_another_makers_unit_finds_nothing_in_this_pack() -> None:
    answer = Talk(unit=Plate(outdoor_model="OTHER-1")).enter(amber(4))

    assert answer.decodes[0].verdict == "none"


def test_a_passage_that_teaches_a_bypass_is_shown_with_a_caution_only() -> None:
    hit = FoundHit(
        document="old.pdf",
        document_id="0" * 12,
        title="Old notes",
        revision="",
        page=3,
        label="3",
        section="",
        text="Some jumper the pressure switch to test.",
        score=1.0,
        unit_match="possible",
    )
    talk = Talk(hits=(hit,))

    answer = talk.tell(
        Said(text="pressure switch old notes", acts=("ask_page",), parser="test")
    )

    assert answer.next_check is None
    assert any("reading only" in caution.text for caution in answer.cautions)


def test_nothing_that_must_never_be_said_is_ever_said() -> None:
    talk = Talk()
    answers = [
        talk.enter(amber(4)),
        talk.enter(ohms("50 kohm"), UNPLUGGED),
        talk.enter(amber(9)),
        talk.enter(RoleFact(role="customer")),
    ]

    said = "\n".join(words(answer) for answer in answers).casefold()

    assert not [phrase for phrase in NEVER_SAID if phrase in said]


def test_the_same_events_give_the_same_answer_to_the_byte() -> None:
    def play() -> list[str]:
        talk = Talk()
        facts = (amber(4), ohms("12 kohm"), UNPLUGGED, ResetFact())
        return [talk.enter(fact).model_dump_json() for fact in facts]

    assert play() == play()


def test_a_result_is_noted_before_the_answer_that_rests_on_it() -> None:
    talk = Talk()
    talk.enter(amber(4))
    talk.enter(ohms("12 kohm"), UNPLUGGED)

    noted = [event.body for event in talk.events if isinstance(event.body, CheckDone)]

    assert [(one.check, one.result) for one in noted] == [("lab/sensor-ohms", "fail")]


def test_a_wait_that_runs_a_second_time_is_told_again_when_it_is_over() -> None:
    # Usual length 4 min: each turn comes 5 min after a power-up at its own time.
    talk = Talk()
    told = []
    for _ in range(2):
        now = talk.clock.now()
        on = HappeningFact(trigger="power_on", at=Moment(earliest=now, latest=now))
        talk.enter(on, after_minutes=0)
        answer = talk.enter(
            ContextFact(name="compressor running", value=False), after_minutes=5
        )
        told.append("The wait is over" in words(answer))

    assert told == [True, True]
