"""Whatever is written, understanding gives an answer, quickly and exactly quoted."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import get_args

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.facts import ContextName, Understood
from assistant.language.lexicon.spelling import WELL_SPELLED, WORDS
from assistant.language.understand import Pending, Vocabulary, understand
from assistant.timing.triggers import Trigger

NOW = datetime(2024, 6, 3, 14, 17, tzinfo=UTC)
TRADE = sorted(
    {*WORDS, *WELL_SPELLED, "it", "is", "a", "the", "and", "not", "no", "then", "or"}
    | {"4", "6", "46k", "250v", "72", "E4", "P", "9:40", "ago", "past", "every", "sec"}
    | {",", ".", "?", "one", "two", "twenty", "reset", "on", "off", "of", "to", "at"}
    | {"was", "has", "just", "about", "like", "back", "water", "smell", "breaker"}
)
VOCABULARY = Vocabulary(
    models=("TN(09,12)#*", "HR-24B"),
    sensors=(("discharge", ("hot gas sensor",)),),
    checks=(("pack/fan", ("fan by hand",)),),
    labels=("LD2", "H1P"),
    boards=("outdoor main",),
    colours=("amber", "green"),
    stop_phrases=(("pack/stop", ("boat house siren",)),),
    protection_events=("high pressure",),
)
SLOTS = [
    *("count", "pause", "colour", "box", "board", "label", "code", "state", "unit"),
    *(
        "role",
        "reset_which",
        "reset_by",
        "off_time:lamp_dark",
        "before_reset",
        "look:pack/fan",
        "unit_of:coil",
    ),
    *("reading:pack/fan", "lamp:run"),
    *(f"time:{trigger}" for trigger in get_args(Trigger)),
    *(f"context:{name}" for name in get_args(ContextName)),
]


def read(text: str) -> Understood:
    return understand(text, now=NOW, vocabulary=VOCABULARY)


def plain(found: Understood) -> list[dict[str, object]]:
    """Return the facts without the words, which keep the writer's own form."""
    return [fact.model_dump(exclude={"words"}) for fact in found.facts]


@given(st.text(max_size=200))
def test_no_text_makes_it_fail(text: str) -> None:
    found = read(text)

    assert all(fact.words in text for fact in found.facts)


@given(st.lists(st.sampled_from(TRADE), max_size=25))
def test_no_heap_of_trade_words_makes_it_fail(words: list[str]) -> None:
    text = " ".join(words)

    found = read(text)

    assert all(fact.words and fact.words in text for fact in found.facts)


@given(
    st.lists(st.sampled_from(TRADE), max_size=8),
    st.sampled_from(SLOTS),
    st.lists(st.sampled_from(["yes", "no", "4", "9.8 kohm", "spins free", "red"])),
)
def test_no_answer_to_any_question_makes_it_fail(
    words: list[str], slot: str, options: list[str]
) -> None:
    pending = Pending(slot, tuple(options), "coil", "9.8 ohm")
    text = " ".join(words)

    found = understand(text, now=NOW, pending=pending, vocabulary=VOCABULARY)

    assert all(fact.words in text for fact in found.facts)


@given(st.lists(st.sampled_from(TRADE), max_size=20))
def test_case_and_white_space_do_not_matter(words: list[str]) -> None:
    once = " ".join(words)

    tidy, loud = read(once), read("  " + "   ".join(words).upper() + "\t")

    assert plain(tidy) == plain(loud)
    assert tidy.acts == loud.acts


@given(st.lists(st.sampled_from(TRADE), max_size=15))
def test_the_same_text_gives_the_same_facts(words: list[str]) -> None:
    text = " ".join(words)

    assert read(text) == read(text)


@pytest.mark.parametrize(
    "unit",
    [
        "x", "a ", "it is ", "is ", "the ", "not ", "4 ", "9", "4 flashes ", "water ",
        "on off ", "and again ", "reset it ", "1,1,", "a.", "-", "no ", "is it ",
        "breaker ", "smell of ", "then ", "or 6 ", "ago ", "half ", "E4 ", "46k ",
        "there is a ", "thunder storm ", "just now ", "was ", "has ", "high pressure ",
    ],
)  # fmt: skip
def test_ten_thousand_letters_of_anything_are_read(unit: str) -> None:
    text = (unit * 10_000)[:10_000]

    understood = read(text)

    assert [fact.kind for fact in understood.facts] == [
        fact.kind for fact in read(text + " ").facts
    ]
