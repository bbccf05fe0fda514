"""What a turn asks for, beside what it tells; written by hand."""

from __future__ import annotations

from collections.abc import Callable

import pytest

Tell = Callable[..., tuple[list[str], list[str]]]

ACTS: tuple[tuple[str, str], ...] = (
    ("what does 4 flashes mean", "ask_meaning"),
    ("whats E4", "ask_meaning"),
    ("what is code 54", "ask_meaning"),
    ("what does that code mean", "ask_meaning"),
    ("is 4 flashes bad", "ask_meaning"),
    ("meaning of amber 6", "ask_meaning"),
    ("how long do i wait", "ask_wait"),
    ("when can i reset it", "ask_wait"),
    ("how long after a reset before it starts", "ask_wait"),
    ("when will it start again", "ask_wait"),
    ("do i need to wait before resetting", "ask_wait"),
    ("is it supposed to wait", "ask_wait"),
    ("whats next", "ask_next"),
    ("next", "ask_next"),
    ("what should i check first", "ask_next"),
    ("where do i start", "ask_next"),
    ("what now", "ask_next"),
    ("ok done, next step", "ask_next"),
    ("why", "ask_why"),
    ("why do i need to do that", "ask_why"),
    ("why not just replace the board", "ask_why"),
    ("which page", "ask_page"),
    ("what manual is that from", "ask_page"),
    ("show me the page", "ask_page"),
    ("where does it say that", "ask_page"),
    ("can i get a summary", "ask_record"),
    ("write up the notes", "ask_record"),
    ("give me the record for the office", "ask_record"),
    ("yes", "yes"),
    ("yeah it is", "yes"),
    ("ok", "yes"),
    ("no", "no"),
    ("nope not yet", "no"),
    ("not sure", "dont_know"),
    ("dont know", "dont_know"),
    ("cant tell", "dont_know"),
    ("skip it", "skip"),
    ("pass", "skip"),
    ("hi", "greet"),
    ("thanks mate", "greet"),
    ("undo that", "undo"),
    ("forget what i said about the breaker", "undo"),
    ("how much is a new board", "off_topic"),
    ("what would you charge", "off_topic"),
    ("is it under warranty", "off_topic"),
    ("tell me a joke", "off_topic"),
    ("scratch that", "correct"),
    ("my mistake", "correct"),
)
CORRECTIONS: tuple[tuple[str, str], ...] = (
    ("sorry, 5 not 4", "lamp count count=5"),
    ("make that 5 flashes", "lamp count count=5"),
    ("not 4, 5", "lamp count count=5"),
    ("i miscounted its 7", "lamp count count=7"),
    ("oops it was 4 flashes", "lamp count count=4"),
    ("i meant the red one", "lamp blink colour=red"),
    ("its the outdoor board not the indoor", "lamp blink box=outdoor"),
    ("actually its amber not red", "lamp blink colour=amber"),
    ("the code is E6 not E4", "lamp display code=E6"),
    ("sorry meant E6", "lamp display code=E6"),
    ("wrong unit, its a 208 volt one", "unit voltage=208 V"),
    ("i said 46 but its 4.6k", "reading resistance: 4.6 kohm"),
)


@pytest.mark.parametrize(("text", "act"), ACTS)
def test_a_turn_asks_for_one_thing(text: str, act: str, tell: Tell) -> None:
    assert tell(text)[1] == [act]


@pytest.mark.parametrize(("text", "fact"), CORRECTIONS)
def test_a_correction_tells_the_new_value_alone(
    text: str, fact: str, tell: Tell
) -> None:
    assert tell(text) == ([fact], ["correct"])


@pytest.mark.parametrize(
    "text",
    [
        "amber light is flashing 4 times",
        "no lights at all",
        "no code on the display",
        "discharge sensor is 46k",
        "its the outdoor board",
        "cabin 7 no cooling",
    ],
)
def test_a_plain_report_asks_for_nothing(text: str, tell: Tell) -> None:
    assert tell(text)[1] == []


WHOLE: tuple[tuple[str, tuple[str, ...]], ...] = (
    (
        "hello, cabin 7 outdoor unit is flashing amber 4 times, reset it 10 min ago "
        "and its back",
        ("lamp count count=4 colour=amber box=outdoor", "reset @10 min ago"),
    ),
    (
        "no cooling, no lights on outdoor board, breaker is on",
        ("complaint no_cooling", "lamp off box=outdoor", "context power off False"),
    ),
    (
        "amber 6 flashes, power blipped at 2pm, stat is calling, comp isnt running",
        (
            "lamp count count=6 colour=amber",
            "happening power_restored @17 min ago",
            "context call present True",
            "complaint wont_start",
            "context compressor running False",
        ),
    ),
    (
        "green steady, red flashing 3, display says P6, 95 outside",
        (
            "lamp on colour=green",
            "lamp count count=3 colour=red",
            "lamp display code=P6",
            "temperature outdoor 95 F",
        ),
    ),
    (
        "model is KX24B, r32, single phase, im maintenance",
        (
            "unit outdoor_model=KX24B",
            "unit refrigerant=R-32",
            "unit phase=1",
            "role maintenance",
        ),
    ),
)


@pytest.mark.parametrize(("text", "facts"), WHOLE)
def test_a_whole_report_is_taken_apart(
    text: str, facts: tuple[str, ...], tell: Tell
) -> None:
    assert tell(text)[0] == list(facts)
