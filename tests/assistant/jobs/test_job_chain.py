"""The chain finds every edit, deletion, reordering and, with a head, every cut."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.jobs.chain import Link, chain_problems, digest_of, head_of, in_order
from assistant.jobs.events import Event, Said

START = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def chain(machine: str, texts: list[str], noted: datetime = START) -> list[Event]:
    events: list[Event] = []
    for number, text in enumerate(texts, start=1):
        events.append(
            Event(
                id=f"{machine}-{number}",
                job="JOB1",
                noted=noted + timedelta(seconds=number),
                machine=machine,
                seq=number,
                prev=events[-1].digest() if events else "",
                body=Said(text=text, parser="1"),
            )
        )
    return events


def link(event: Event) -> Link:
    payload = event.canonical()
    return Link(
        event.id, event.job, event.machine, event.seq, digest_of(payload), payload
    )


TEXTS = st.lists(st.text(max_size=12), min_size=2, max_size=8)


@given(TEXTS, st.integers(0, 7))
def test_an_edited_word_is_found(texts: list[str], at: int) -> None:
    links = [link(event) for event in chain("A", texts)]
    place = at % len(links)
    payload = json.loads(links[place].payload)
    payload["body"]["text"] += "!"
    links[place] = replace(links[place], payload=json.dumps(payload))

    assert any("was changed" in problem for problem in chain_problems(links))


@given(TEXTS, st.integers(0, 6))
def test_an_edit_with_its_digest_made_anew_breaks_the_next_link(
    texts: list[str], at: int
) -> None:
    events = chain("A", texts)
    links = [link(event) for event in events]
    place = at % (len(links) - 1)
    body = Said(text=texts[place] + "!", parser="1")
    links[place] = link(events[place].model_copy(update={"body": body}))

    assert chain_problems(links) == (
        f"event {place + 2} of machine A does not follow the one before it",
    )


@given(TEXTS, st.integers(0, 6))
def test_a_deleted_event_is_found(texts: list[str], at: int) -> None:
    links = [link(event) for event in chain("A", texts)]
    place = at % (len(links) - 1)
    del links[place]

    assert chain_problems(links) == (f"event {place + 1} of machine A is missing",)


@given(TEXTS)
def test_two_events_that_changed_places_are_found(texts: list[str]) -> None:
    first, second, *rest = chain("A", texts)
    swapped = [
        second.model_copy(update={"seq": 1}),
        first.model_copy(update={"seq": 2}),
        *rest,
    ]

    assert chain_problems([link(event) for event in swapped])


@given(TEXTS, st.integers(1, 7))
def test_a_cut_end_is_found_against_a_noted_head(texts: list[str], cut: int) -> None:
    links = [link(event) for event in chain("A", texts)]
    noted = head_of(links)
    kept = links[: -min(cut, len(links) - 1)]

    assert chain_problems(kept) == ()
    assert len(chain_problems(kept, noted)) == 1


def test_events_added_after_the_head_was_noted_are_no_problem() -> None:
    links = [link(event) for event in chain("A", ["a", "b", "c"])]

    assert chain_problems(links, head_of(links[:2])) == ()


def test_the_head_of_two_machines_names_both() -> None:
    links = [link(event) for name in "BA" for event in chain(name, ["a", "b"])]

    assert head_of(links) == f"{links[3].digest}+{links[1].digest}"
    assert len(chain_problems(links[:3], head_of(links))) == 1


def test_a_payload_that_is_no_json_is_a_change_not_a_crash() -> None:
    broken = replace(link(chain("A", ["a"])[0]), payload="[")

    assert chain_problems([broken]) == (
        "event 1 of machine A was changed after it was written",
    )


@pytest.mark.parametrize("swap", [False, True])
def test_two_machines_interleave_the_same_whatever_came_in_first(swap: bool) -> None:
    ours = chain("A", ["a1", "a2"])
    theirs = chain("B", ["b1", "b2"], START + timedelta(milliseconds=500))

    mixed = theirs + ours if swap else ours + theirs
    ordered = [event.id for event in in_order(mixed)]

    assert ordered == ["A-1", "B-1", "A-2", "B-2"]
