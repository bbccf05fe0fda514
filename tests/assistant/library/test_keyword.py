"""Folding: one form for what is stored and what is asked; never a failure."""

from __future__ import annotations

import sqlite3
import string
from collections.abc import Iterator

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.library.keyword import MAX_TERMS, expression, fold, terms
from assistant.library.synonyms import SYNONYMS

UNITS = "°Ω µ²³½℉㎪—–“”‘’…"
ANYTHING = st.text() | st.text(alphabet=string.printable + UNITS)


@pytest.fixture(scope="module")
def words() -> Iterator[sqlite3.Connection]:
    connection = sqlite3.connect(":memory:")
    connection.execute(
        "CREATE VIRTUAL TABLE words USING fts5 (body, tokenize = 'porter unicode61')"
    )
    yield connection
    connection.close()


@pytest.mark.parametrize(
    ("said", "written"),
    [
        ("LED winks six times", "The lamp flashes 6 times"),
        ("the PCB", "the circuit board"),
        ("ODU comp", "outdoor unit compressor"),
        ("46kΩ", "46 kilohms"),
        ("fifty-four", "54"),
        ("twice", "2 times"),
        ("blinkin' light", "blinkin light"),
        ("the caps", "the capacitor"),
        ("ﬂashing", "flash"),
        ("1,200 V", "1200 V"),
    ],
)
def test_what_is_said_folds_to_what_is_written(said: str, written: str) -> None:
    spoken, printed = set(terms(said)), set(terms(written))

    assert spoken
    assert spoken <= printed | {"unit"}


def test_decimals_stay_apart_from_their_digits() -> None:
    assert set(terms("4.7 kohm")).isdisjoint(terms("4 and 7 ohm"))


def test_letters_are_units_only_behind_a_number() -> None:
    assert "amp" not in fold("a fault").split()
    assert "amp" in fold("16 A fuse, 5a").split()


def test_folding_its_own_headwords_changes_nothing() -> None:
    for head in SYNONYMS:
        assert fold(head) == head


@given(ANYTHING)
def test_any_text_makes_an_expression_that_sqlite_takes(
    words: sqlite3.Connection, text: str
) -> None:
    asked = terms(text)

    assert len(asked) <= MAX_TERMS
    if asked:
        words.execute(
            "SELECT rowid FROM words WHERE words MATCH ?", (expression(asked),)
        )


@given(st.text(alphabet=string.ascii_letters + string.digits + " -./'", max_size=40))
def test_text_is_found_by_its_own_words(words: sqlite3.Connection, text: str) -> None:
    words.execute("DELETE FROM words")
    words.execute("INSERT INTO words (rowid, body) VALUES (1, ?)", (fold(text),))
    asked = terms(text)

    for term in asked:
        assert words.execute(
            "SELECT rowid FROM words WHERE words MATCH ?", (expression([term]),)
        ).fetchall() == [(1,)]
