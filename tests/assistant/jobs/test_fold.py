"""Events folded into what a job knows."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from assistant.facts import (
    Fact,
    LampFact,
    ModeFact,
    ReadingFact,
    ResetFact,
    RoleFact,
    UnitFact,
)
from assistant.jobs.events import (
    Answered,
    Asked,
    Body,
    CheckDone,
    Corrected,
    Event,
    Opened,
    Said,
    Undone,
)
from assistant.jobs.fold import JobState, current, fold_all, split_instant
from assistant.rules.applicability import Plate
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment
from assistant.units.quantity import Quantity

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def events(*bodies: Body) -> list[Event]:
    return [
        Event(
            id=f"E{place}",
            job="J",
            noted=START + timedelta(minutes=place),
            machine="M",
            seq=place,
            prev="",
            body=body,
        )
        for place, body in enumerate(bodies)
    ]


def said(*facts: Fact) -> Said:
    return Said(text="words", facts=facts, parser="test")


def lamp(count: int, **kept: bool) -> LampFact:
    seen = Observation(state="count", count=(count,))
    return LampFact(observation=seen, before_reset=kept.get("before_reset"))


def reading(ohms: float) -> ReadingFact:
    return ReadingFact(of="discharge", value=Quantity(value=ohms, unit="ohm"))


def done(of: tuple[str, int]) -> CheckDone:
    return CheckDone(check="p/c", result="fail", of=of)


def lamps(state: JobState) -> list[int]:
    return [
        held.fact.observation.count[0]
        for held in current(state)
        if isinstance(held.fact, LampFact)
    ]


def test_a_plate_is_gathered_from_what_was_told_bit_by_bit() -> None:
    state = fold_all(
        events(
            Opened(plate=Plate(outdoor_model="VEH-O35")),
            said(UnitFact(plate=Plate(board_mark="blue"))),
        )
    )

    assert state.plate == Plate(outdoor_model="VEH-O35", board_mark="blue")


def test_until_said_nobody_is_known_to_be_a_technician() -> None:
    unknown = fold_all(events(Opened()))
    told = fold_all(events(Opened(), said(RoleFact(role="technician"))))

    assert (unknown.role, told.role) == (None, "technician")


def test_a_lamp_seen_before_a_reset_no_longer_counts() -> None:
    state = fold_all(events(Opened(), said(lamp(4)), said(ResetFact(), lamp(2))))

    assert lamps(state) == [2]


def test_a_reset_of_long_ago_does_not_age_a_lamp_seen_since() -> None:
    long_ago = Moment(
        earliest=START - timedelta(hours=2), latest=START - timedelta(hours=1)
    )

    state = fold_all(events(Opened(), said(lamp(4)), said(ResetFact(at=long_ago))))

    assert lamps(state) == [4]


def test_a_lamp_told_as_seen_before_the_reset_is_old_at_once() -> None:
    state = fold_all(events(Opened(), said(ResetFact(), lamp(4, before_reset=True))))

    assert lamps(state) == []


def test_the_first_mode_told_parts_nothing_and_a_change_does() -> None:
    first = fold_all(events(Opened(), said(lamp(4)), said(ModeFact(mode="cool"))))
    changed = fold_all(
        events(
            Opened(),
            said(ModeFact(mode="cool")),
            said(lamp(4)),
            said(ModeFact(mode="heat")),
        )
    )

    assert split_instant(first) is None
    assert lamps(first) == [4]
    assert lamps(changed) == []


def test_a_corrected_reading_takes_its_verdict_with_it() -> None:
    state = fold_all(
        events(
            Opened(),
            said(reading(5000)),
            done(("E1", 0)),
            said(),
            Corrected(event="E1", index=0, fact=reading(50000)),
        )
    )

    assert state.checks == ()
    assert [one.check for one in state.taken_back] == ["p/c"]
    assert [held.fact for held in state.of(ReadingFact)] == [reading(50000)]
    assert [held.fact for held in state.replaced] == [reading(5000)]


def test_undoing_an_event_withdraws_all_its_facts() -> None:
    state = fold_all(
        events(Opened(), said(lamp(4), reading(5000)), said(), Undone(event="E1"))
    )

    assert state.held == ()


def test_a_declined_question_is_remembered_and_no_longer_open() -> None:
    state = fold_all(
        events(
            Opened(),
            Asked(slot="pause", text="Is there a pause?"),
            Answered(question="E1", text="dunno", outcome="dont_know", parser="test"),
        )
    )

    assert (state.declined, state.open_question) == (("pause",), None)


def test_a_repeated_result_of_one_reading_replaces_the_earlier() -> None:
    open_verdict = CheckDone(check="p/c", result="no_verdict", of=("E1", 0))

    state = fold_all(
        events(Opened(), said(reading(5000)), open_verdict, done(("E1", 0)))
    )

    assert [one.result for one in state.checks] == ["fail"]
