"""Whatever a table holds: a drafted row quotes its page, and invents no number."""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping

from hypothesis import given
from hypothesis import strategies as st

from ingest.drafts.folder import draft_texts
from ingest.drafts.model import Draft, DraftHead, DraftRow
from ingest.drafts.words import NUMBER_WORDS
from tests.drafted import page_with

from ingest.drafts.gather import draft_rows  # isort: skip

HEADS = (
    ("Flashes", "Meaning", "What to do"),
    ("Code", "Meaning", "Unit"),
    ("LD1 green", "LD2 red", "Fault"),
    ("°C", "RT3 kohm", "RT4 kohm"),
    ("Short", "Long", "Meaning"),
    ("Function", "Limit", "Locked out after"),
    ("What starts it", "Least", "Lamp"),
    ("Pin", "Voltage", "Remark"),
)
cells = st.one_of(
    st.sampled_from(
        [
            "",
            "-",
            "?",
            "4",
            "12",
            "seven",
            "eight (5)",
            "E4",
            "P1O",
            "●",
            "lit",
            "Sensor open",
            "Bridge the pressure switch",
            "6 in 60 minutes",
            "3 min",
            "5 to 6 V DC",
            "2.1 MPa",
            "250",
            "-20",
            "62.7",
            "Supply switched on",
        ]
    ),
    st.text(
        st.characters(
            categories=("L", "N", "P", "S", "Zs"), exclude_characters="\u2028"
        ),
        max_size=12,
    ),
    st.integers(-40, 400).map(str),
)
rows_of_three = st.lists(st.tuples(cells, cells, cells), min_size=1, max_size=8)
lines = st.sampled_from(
    [
        "Faults shown by lamp LD2, every 10 seconds",
        "● lit ○ dark",
        "After every stop the compressor stays off for at least 3 minutes.",
        "The unit is locked out after five stops in 40 minutes.",
        "Resistance of the discharge sensor RT3",
        "page 7",
    ]
)
NUMBER = re.compile(r"\d+(?:\.\d+)?")


def drafted_from(
    head: tuple[str, ...], body: list[tuple[str, ...]], above: list[str]
) -> tuple[str, list[DraftRow]]:
    page, rows = page_with(*above, (head, body))
    return page.folded, draft_rows([page], rows)


def values(held: object) -> Iterator[object]:
    """Yield every value inside fields; keys are our own words."""
    if isinstance(held, Mapping):
        for each in held.values():
            yield from values(each)
    elif isinstance(held, list | tuple):
        for each in held:
            yield from values(each)
    elif not isinstance(held, bool):
        yield held


@given(st.sampled_from(HEADS), rows_of_three, st.lists(lines, max_size=3))
def test_every_drafted_row_quotes_text_on_its_page(
    head: tuple[str, ...], body: list[tuple[str, ...]], above: list[str]
) -> None:
    text, rows = drafted_from(head, body, above)

    for row in rows:
        assert row.quote
        assert row.quote in text


@given(st.sampled_from(HEADS), rows_of_three, st.lists(lines, max_size=3))
def test_no_number_in_a_draft_is_not_on_its_page(
    head: tuple[str, ...], body: list[tuple[str, ...]], above: list[str]
) -> None:
    text, rows = drafted_from(head, body, above)

    printed = set(NUMBER.findall(text))
    words = text.casefold()
    spelled = {str(n) for word, n in NUMBER_WORDS.items() if word in words}
    for row in rows:
        fields = {key: held for key, held in row.fields.items() if key != "table"}
        for value in values(fields):
            for number in NUMBER.findall(str(value)):
                assert number in printed | spelled, (number, row)


@given(st.sampled_from(HEADS), rows_of_three, st.lists(lines, max_size=3))
def test_rows_have_ids_of_their_own_and_confidence_between_nought_and_one(
    head: tuple[str, ...], body: list[tuple[str, ...]], above: list[str]
) -> None:
    _, rows = drafted_from(head, body, above)

    assert len({row.id for row in rows}) == len(rows)
    assert all(0 <= row.confidence <= 1 for row in rows)


@given(st.sampled_from(HEADS), rows_of_three, st.lists(lines, max_size=3))
def test_a_draft_is_the_same_to_the_byte_each_time(
    head: tuple[str, ...], body: list[tuple[str, ...]], above: list[str]
) -> None:
    about = DraftHead("x", "X", {"title": "X", "revision": "A", "sha256": "0" * 64})

    first, second = (
        draft_texts(Draft(about, tuple(drafted_from(head, body, above)[1])), "x-draft")
        for _ in range(2)
    )

    assert first == second
