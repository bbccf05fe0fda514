"""What people say of lamps beyond a count: digits, phase, flicker, sound, rounds."""

from __future__ import annotations

import pytest

from assistant.language.understand import Pending, Vocabulary
from tests.assistant.language.conftest import Tell

WORDS = Vocabulary(
    labels=("T", "U", "A", "B", "R1", "alert light"),
    colours=("amber", "green", "red"),
    boards=("valve board",),
    codes=("U2", "E4"),
)

SAID: tuple[tuple[str, tuple[str, ...]], ...] = (
    ("both lamps blink together", ("lamp blink phase=together",)),
    ("both flash but out of sync", ("lamp blink phase=alternating",)),
    (
        "red and green are taking turns",
        (
            "lamp blink colour=green phase=alternating",
            "lamp blink colour=red phase=alternating",
        ),
    ),
    ("both lamps blink in turn", ("lamp blink phase=alternating",)),
    ("two short three long", ("lamp short_long count=2 long=3",)),
    ("2 quick ones then 3 slow ones", ("lamp short_long count=2 long=3",)),
    ("one long followed by four shorts", ("lamp short_long count=4 long=1",)),
    ("slow blink on R1", ("lamp blink label=R1 rate=slow",)),
    ("the red one is flickering", ("lamp flicker colour=red",)),
    ("green is breathing, bright then dim", ("lamp heartbeat colour=green",)),
    ("it beeps 5 times then stops", ("lamp count count=5 pause=seen buzzer",)),
    (
        "red steady with green flashing",
        ("lamp on colour=red", "lamp blink colour=green"),
    ),
    (
        "A is dark and B flashes 2 times",
        ("lamp off label=A", "lamp count count=2 label=B"),
    ),
    (
        "T goes 4 and U goes 2",
        ("lamp count count=4 label=T", "lamp count count=2 label=U"),
    ),
    ("the alert light flashes 4 times", ("lamp count count=4 label=alert light",)),
    ("shows U2 and then 01", ("lamp display code=U2 sub=01",)),
    ("code U2 sub code 02", ("lamp display code=U2 sub=02",)),
    (
        "display flips between A3 and C1",
        ("lamp display code=A3 in turn", "lamp display code=C1 in turn"),
    ),
    ("the display shows 4 blank 1", ("lamp display code=4_1",)),
    ("the display reads 0.7", ("lamp display code=0.7",)),
    (
        "i get 6 6 5 6",
        ("lamp count count=5/6 counted=(6, 6, 5, 6)",),
    ),
    ("flashes once every 3 or 4 seconds", ("lamp count count=1 window=3 to=4",)),
    ("at most 2 flashes", ("lamp count count=1/2",)),
    (
        "after pressing the test button it flashes 3",
        ("lamp count count=3 level=detail",),
    ),
)


@pytest.mark.parametrize(("text", "facts"), SAID, ids=[text for text, _ in SAID])
def test_a_sentence_gives_these_lamps(
    text: str, facts: tuple[str, ...], tell: Tell
) -> None:
    assert tell(text, vocabulary=WORDS)[0] == list(facts)


@pytest.mark.parametrize(
    "text",
    [
        "the house lights flicker when it starts",
        "i got 12.4 12.4 and 12.5 across uvw",
        "a long wait then it started",
        "the display reads 46k",
    ],
)
def test_what_is_no_lamp_gives_none(text: str, tell: Tell) -> None:
    assert [fact for fact in tell(text)[0] if fact.startswith("lamp")] == []


ANSWERS = (
    ("phase", "taking turns", "lamp blink phase=alternating"),
    ("phase", "same time", "lamp blink phase=together"),
    ("short", "two", "lamp short_long count=2"),
    ("long", "3", "lamp short_long long=3"),
    ("window", "about 5 seconds", "lamp blink window=5"),
    ("window", "between 3 and 4", "lamp blink window=3 to=4"),
    ("sub", "02", "lamp display sub=02"),
    ("display_level", "yes i pressed it", "lamp blink level=detail"),
    ("display_level", "no", "lamp blink level=first"),
    ("stored", "from the history", "lamp display stored"),
    ("emitter", "its a beep", "lamp blink buzzer"),
    ("lamp:A", "flickering", "lamp flicker label=A"),
    ("lamp:A", "four times", "lamp count count=4 label=A"),
)


@pytest.mark.parametrize(("slot", "text", "fact"), ANSWERS)
def test_a_short_answer_fills_what_was_asked(
    slot: str, text: str, fact: str, tell: Tell
) -> None:
    assert tell(text, Pending(slot=slot))[0] == [fact]


@pytest.mark.parametrize("slot", sorted({slot for slot, _, _ in ANSWERS}))
def test_not_knowing_fills_nothing(slot: str, tell: Tell) -> None:
    assert tell("no idea", Pending(slot=slot)) == ([], ["dont_know"])
