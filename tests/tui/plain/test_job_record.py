"""The record of a job as lines: all events, their facts and their proof."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest

from assistant.facts import LampFact, ReadingFact, ResetFact, UnitFact
from assistant.jobs.events import (
    Asked,
    Body,
    CheckDone,
    Closed,
    Corrected,
    Entered,
    Event,
    Found,
    FoundHit,
    Opened,
    Parked,
    Said,
    TimerChanged,
    TimerDue,
    Undone,
)
from assistant.jobs.summary import JobSummary
from assistant.rules.applicability import Plate
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment
from assistant.units.quantity import Quantity
from tui.plain.places import Frame
from tui.plain.record import list_lines, record_lines

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)
FRAME = Frame(width=90, now=NOW, zone=timezone(timedelta(hours=2)))


def shown(body: Body, frame: Frame = FRAME) -> str:
    event = Event(
        id="E1", job="01JOB", noted=NOW, machine="M", seq=1, prev="", body=body
    )
    return "\n".join(record_lines([event], "abc", frame))


LAMP = LampFact(
    observation=Observation(state="count", colour=("amber",), count=(4, 5)),
    at=Moment(earliest=NOW - timedelta(minutes=2), latest=NOW),
    words="amber 4 or 5",
)
HIT = FoundHit(
    document="ql.pdf",
    document_id="0123",
    title="Quietlake Manual",
    revision="B",
    page=15,
    label="12",
    section="",
    text="4 flashes: sensor out of range",
    score=1.0,
    unit_match="possible",
)


@pytest.mark.parametrize(
    ("body", "words"),
    [
        (Opened(site="pier"), "site: pier"),
        (Opened(plate=Plate(outdoor_model="QL-24")), "unit: outdoor model QL-24"),
        (Opened(packs={"ql": "f" * 64}), "rests on rules ql (ffffffffffff)"),
        (Said(text="amber 4 or 5", parser="1", facts=(LAMP,)), "count 4 or 5"),
        (Said(text="x", parser="1", facts=(LAMP,)), "between 10:28 (UTC+02:00) and"),
        (Said(text="x", parser="1", left_over="cheese"), "not understood: cheese"),
        (
            Entered(
                facts=(ReadingFact(of="bus", value=Quantity(value=325, unit="V")),)
            ),
            "- reading: of bus, value 325 V",
        ),
        (Entered(facts=(ResetFact(at=LAMP.at),)), "- reset: between 10:28"),
        (Entered(facts=(ResetFact(words="reset it"),)), '- reset ("reset it")'),
        (Asked(slot="unit", text="Which unit?"), "Which unit?"),
        (
            Found(query="amber", hits=(HIT,)),
            "Quietlake Manual rev B, p. 12 (PDF page 15)",
        ),
        (
            Found(query="amber", reason="no match", searched=1),
            "nothing found in 1 document",
        ),
        (
            CheckDone(
                check="ql/s", result="no_verdict", of=("E1", 0), reason="why not"
            ),
            "ql/s: no verdict",
        ),
        (
            CheckDone(check="ql/s", result="fail", of=("E1", 0), value=9e3, unit="ohm"),
            "read 9.00 kΩ",
        ),
        (TimerDue(wait="ql/w", due=NOW), "ql/w: due at 10:30 (UTC+02:00)"),
        (TimerChanged(wait="ql/w", change="acknowledge"), "ql/w: acknowledge"),
        (Corrected(event="E0", index=1, fact=None), "fact 1 of event E0: withdrawn"),
        (
            Corrected(event="E0", index=0, fact=UnitFact(plate=Plate(serial="7"))),
            "unit: plate serial 7",
        ),
        (Undone(event="E0"), "the facts of event E0 are withdrawn"),
        (Parked(why="parts"), "parts"),
        (Closed(outcome="done", parts_fitted=("fan",)), "parts fitted: fan"),
    ],
)
def test_every_kind_of_event_tells_what_it_holds(body: Body, words: str) -> None:
    assert words in " ".join(shown(body).split())


def test_a_record_ends_with_its_head_and_what_that_proves() -> None:
    lines = shown(Opened()).splitlines()

    assert "Head: abc" in lines
    assert "It does not prove who wrote" in " ".join(lines)


def test_a_record_fits_a_narrow_screen() -> None:
    text = shown(Found(query="amber", hits=(HIT,)), Frame(40, NOW, UTC))

    assert all(len(line) <= 40 for line in text.splitlines()[:-4])


JOB = JobSummary(
    id="01ARZ3NDEKTSV4RRFFQ69G5FAV",
    opened=NOW,
    last=NOW,
    site="pier",
    outdoor_model="QL-24",
    indoor_model="QW-9",
    state="parked",
    events=7,
)


def test_the_list_is_a_table_where_it_fits_and_blocks_where_not() -> None:
    wide = list_lines([JOB], Frame(140, NOW, UTC))
    narrow = list_lines([JOB], Frame(40, NOW, UTC))

    assert len(wide) == 2
    assert "QL-24 with QW-9 at pier" in wide[1]
    assert narrow[0] == JOB.id
    assert max(map(len, narrow)) <= 40
    assert list_lines([], FRAME) == ["No jobs yet."]
