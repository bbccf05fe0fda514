"""An answer as plain lines: every part said once, in words, at any width."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta, timezone

import pytest

from assistant.dialogue.answer import (
    Answer,
    CauseShown,
    CautionShown,
    CountRange,
    Decode,
    DecodeCandidate,
    NextCheck,
    Question,
    SourceRef,
    Statement,
    StopShown,
    VerdictShown,
    WaitShown,
)
from tui.plain.places import Frame, place_of
from tui.plain.render import answer_lines, due_lines
from tui.plain.words import STATUS_KINDS, STATUS_WORDS

NOW = datetime(2031, 6, 14, 8, 32, tzinfo=UTC)
EAST = timezone(timedelta(hours=2))
FRAME = Frame(width=80, now=NOW, zone=EAST)
SOURCE = SourceRef(
    document="ql.pdf",
    document_id="0123456789ab",
    title="Quietlake Service Manual",
    revision="B",
    page=15,
    label="12",
    quote="4 flashes: discharge sensor out of range",
    rule="ql/amber-4",
    rank="maker",
)


def wait(state: str, *, usual: datetime | None = None, **more: object) -> WaitShown:
    fields: dict[str, object] = {
        "id": "ql/restart",
        "name": "restart delay",
        "started": None,
        "earliest": None,
        "usual": usual,
        "give_up": None,
        "state": state,
        **more,
    }
    return WaitShown.model_validate(fields)


FULL = Answer(
    job="01JOB",
    status="waiting",
    statements=(
        Statement(
            text="It means: sensor out of range.", basis="rule", sources=(SOURCE,)
        ),
        Statement(text="The wait ends at 10:36.", basis="computed"),
        Statement(text="4 flashes\nsensor", basis="passage", sources=(SOURCE,)),
    ),
    question=Question(text="Which unit is it?", splits=("QL-24", "QL-36")),
    decodes=(
        Decode(
            verdict="exact",
            unit_confirmed=False,
            candidates=(
                DecodeCandidate(
                    id="ql/amber-4",
                    meaning="sensor out of range",
                    is_fault=True,
                    matched=("count", "colour"),
                    assumed=("pause",),
                    sources=(SOURCE,),
                ),
            ),
        ),
    ),
    waits=(wait("running", usual=NOW + timedelta(minutes=3, seconds=30)),),
    stops=(
        StopShown(
            id="ql/hp",
            name="high pressure stops",
            count=CountRange(min=4, max=5),
            limit=6,
            state="open",
            left=1,
            oldest_leaves=NOW + timedelta(minutes=20),
        ),
    ),
    causes=(
        CauseShown(id="ql/s", name="sensor", standing="most likely", weight=0.6),
        CauseShown(id="ql/b", name="board", standing="less likely", weight=0.1),
    ),
    next_check=NextCheck(
        id="ql/sensor-ohms",
        name="Resistance of the sensor",
        minutes=10,
        needs="power_off",
        ask="What does it read, and how warm is it?",
        steps=("Pull the plug.", "Measure across it."),
        sources=(SOURCE,),
    ),
    verdicts=(
        VerdictShown(
            check="ql/sensor-ohms",
            result="fail",
            reason="below the limit",
            value=9000.0,
            expected=330000.0,
            low=317000.0,
            high=343000.0,
            unit="ohm",
            formula="ln R linear in 1/T",
        ),
    ),
    cautions=(CautionShown(text="Isolate all supplies.", basis="29 CFR 1910.333"),),
)

AT_80 = """\
WAIT. It is too early to judge.

* It means: sensor out of range.
  [from the manual]
  Quietlake Service Manual rev B, p. 12 (PDF page 15):
    "4 flashes: discharge sensor out of range"
* The wait ends at 10:36.
  [worked out]
* Quietlake Service Manual rev B, p. 12 (PDF page 15) [from the page]
    4 flashes
    sensor

Decoded (unit not confirmed):
- ql/amber-4; fits count, colour; not told: pause

Timers:
- restart delay: ready at 10:35:30 (UTC+02:00), in 3 min 30 s

Protection stops:
- high pressure stops: 4 to 5 of 6, 1 left before lockout: find the cause, do
  not use them as tests; the oldest stops counting at 10:52 (UTC+02:00)

Verdict: FAIL (ql/sensor-ohms)
  below the limit
  Read 9.00 kΩ, expected 330 kΩ, lowest allowed 317 kΩ, highest allowed 343 kΩ.
  Formula: ln R linear in 1/T

Causes, most likely first:
1. sensor - most likely
2. board - less likely

! Isolate all supplies.
  [29 CFR 1910.333]

Next check: Resistance of the sensor
  Needs: power off and proved dead, covers off. About 10 min.
  1. Pull the plug.
  2. Measure across it.
  Tell: What does it read, and how warm is it?
  Quietlake Service Manual rev B, p. 12 (PDF page 15):
    "4 flashes: discharge sensor out of range"

Question: Which unit is it?
  - QL-24
  - QL-36"""


def test_a_full_answer_is_laid_out_like_this() -> None:
    assert "\n".join(answer_lines(FULL, FRAME)) == AT_80


@pytest.mark.parametrize("width", [40, 60, 120])
def test_an_answer_fits_any_width_and_loses_no_word(width: int) -> None:
    lines = answer_lines(FULL, Frame(width=width, now=NOW, zone=EAST))

    assert max(map(len, lines)) <= width
    assert " ".join(" ".join(lines).split()) == " ".join(AT_80.split())


def test_in_danger_the_warning_stands_first() -> None:
    lines = answer_lines(FULL.model_copy(update={"status": "stop"}), FRAME)

    assert lines[:3] == [STATUS_WORDS["stop"], "", "! Isolate all supplies."]


def test_only_signs_of_measure_leave_ascii() -> None:
    signs = {letter for letter in AT_80 if not letter.isascii()}

    assert signs <= set("°Ω±")


@pytest.mark.parametrize(
    ("rank", "basis", "mark"),
    [
        ("maker", "rule", "from the manual"),
        ("shop", "rule", "shop rule"),
        ("common", "rule", "common practice"),
        ("", "computed", "worked out"),
        ("", "passage", "from the page"),
    ],
)
def test_every_statement_says_what_it_rests_on(
    rank: str, basis: str, mark: str
) -> None:
    source = SOURCE.model_copy(update={"rank": rank})
    statement = Statement.model_validate(
        {"text": "So it is.", "basis": basis, "sources": (source,)}
    )
    answer = Answer(job="J", status="answered", statements=(statement,))

    assert f"[{mark}]" in "\n".join(answer_lines(answer, FRAME))


def test_a_meaning_no_statement_gives_stands_with_the_decode() -> None:
    answer = Answer(job="J", status="answered", decodes=FULL.decodes)

    assert "- ql/amber-4: sensor out of range (fault); fits count, colour;" in (
        " ".join(answer_lines(answer, FRAME))
    )


def test_a_decode_that_the_statements_have_told_whole_is_not_told_again() -> None:
    decode = Decode(verdict="none", unit_confirmed=True, reason="count 11 is not there")
    told = Statement(
        text="Not in this manual: count 11 is not there.", basis="computed"
    )
    silent = Answer(job="J", status="answered", decodes=(decode,))
    spoken = silent.model_copy(update={"statements": (told,)})

    assert answer_lines(silent, FRAME)[2:] == [
        "Not in this manual: count 11 is not there"
    ]
    assert len(answer_lines(spoken, FRAME)) == 4


def test_words_quoted_once_are_not_quoted_again() -> None:
    twice = (FULL.statements[0], FULL.statements[0])
    answer = Answer(job="J", status="answered", statements=twice)
    shown = "\n".join(answer_lines(answer, FRAME))

    assert shown.count('"4 flashes') == 1
    assert shown.count("p. 12 (PDF page 15)") == 2


@pytest.mark.parametrize(
    ("shown", "words"),
    [
        (wait("start_unknown"), "its start is not known"),
        (wait("ready", usual=NOW - timedelta(minutes=1)), "READY since 10:31"),
        (
            wait("overdue", give_up=NOW - timedelta(minutes=4)),
            "OVERDUE by 4 min; it should have ended by 10:28 (UTC+02:00)",
        ),
        (
            wait("running", give_up=NOW + timedelta(days=1)),
            "running; give up at 2031-06-15 10:32",
        ),
        (
            wait(
                "running",
                usual=NOW - timedelta(minutes=2),
                conditions=({"text": "supply at or above 200 V", "met": None},),
            ),
            "its time is over since 10:30 (UTC+02:00); it needs supply at or above 200",
        ),
        (
            wait("overdue", give_up=NOW, latched="yes"),
            "LATCHED: it does not start again by itself",
        ),
        (
            wait("overdue", give_up=NOW, latched="cannot_tell"),
            "cannot tell whether it latched",
        ),
    ],
)
def test_every_state_of_a_timer_is_said_in_words(shown: WaitShown, words: str) -> None:
    answer = Answer(job="J", status="answered", waits=(shown,))

    assert words in "\n".join(answer_lines(answer, Frame(100, NOW, EAST)))


def test_only_timers_that_are_over_speak_up() -> None:
    running = wait("running", usual=NOW + timedelta(minutes=1))
    over = wait("ready", usual=NOW)

    assert due_lines((running, over), FRAME) == [
        "Timer restart delay: READY since 10:32 (UTC+02:00)"
    ]


def test_what_was_just_shown_is_not_shown_again() -> None:
    shown = "\n".join(answer_lines(FULL, FRAME, before=FULL))

    assert "Next check, as before: Resistance of the sensor" in shown
    assert "Pull the plug." not in shown
    assert "! 1 caution above: still in force." in shown
    assert "Tell: What does it read" in shown


def test_a_new_caution_is_shown_beside_one_that_holds() -> None:
    new = CautionShown(text="Wind turns the fan.", basis="")
    more = FULL.model_copy(update={"cautions": (*FULL.cautions, new)})
    shown = "\n".join(answer_lines(more, FRAME, before=FULL))

    assert "! Wind turns the fan." in shown
    assert "Isolate all supplies." not in shown


def test_a_rule_that_stands_in_no_document_cites_none() -> None:
    nowhere = SOURCE.model_copy(update={"title": "", "rank": "common", "quote": ""})
    statement = Statement(text="Note the time.", basis="rule", sources=(nowhere,))
    answer = Answer(job="J", status="answered", statements=(statement,))

    assert answer_lines(answer, FRAME)[2:] == [
        "* Note the time.",
        "  [common practice]",
    ]


def test_a_page_without_a_printed_label_is_its_own_number() -> None:
    plain = SOURCE.model_copy(update={"label": "", "revision": ""})

    assert place_of(plain) == "Quietlake Service Manual, p. 15"


def test_foreign_text_stays_literal() -> None:
    answer = Answer(
        job="J",
        status="answered",
        statements=(Statement(text="[E4] is \x1b[31m[OFF][/]", basis="computed"),),
    )

    assert answer_lines(answer, FRAME)[2] == "* [E4] is [31m[OFF][/]"


def test_every_status_has_its_words_and_its_look() -> None:
    assert STATUS_WORDS.keys() == STATUS_KINDS.keys()
    assert len(set(STATUS_WORDS.values())) == len(STATUS_WORDS)
    assert max(map(len, STATUS_WORDS.values())) <= 40
