"""What a list of jobs says of each: when, which unit, and how it stands."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import datetime
from typing import Literal

from assistant.facts import Fact, UnitFact
from assistant.jobs.events import (
    Answered,
    Body,
    Closed,
    Corrected,
    Entered,
    Event,
    Opened,
    Parked,
    Said,
    Undone,
)

State = Literal["open", "parked", "closed"]
SUMMARY_KINDS = (
    "opened",
    "said",
    "answered",
    "entered",
    "corrected",
    "undone",
    "parked",
    "closed",
)
"""The kinds of event a summary is made from."""


@dataclass(frozen=True, slots=True)
class JobSummary:
    """One line of `job list`."""

    id: str
    opened: datetime
    last: datetime
    """When the last event was noted."""
    site: str
    outdoor_model: str
    indoor_model: str
    state: State
    events: int


def summarise(
    events: Iterable[Event], *, count: int, last: datetime
) -> JobSummary | None:
    """Return the line of one job, or None when it was never opened.

    Parameters
    ----------
    events : iterable of Event
        Those of `SUMMARY_KINDS`, in order.
    count, last : int, datetime
        Of all the job's events.
    """
    opened: Event | None = None
    site, state = "", "open"
    facts: dict[tuple[str, int], Fact] = {}
    models = {"outdoor_model": "", "indoor_model": ""}
    for event in events:
        body = event.body
        state = _state(body, state)
        _take_in(event, facts)
        if isinstance(body, Opened):
            opened, site = event, body.site
            models = {name: getattr(body.plate, name) or "" for name in models}
    if opened is None:
        return None
    for fact in facts.values():
        if isinstance(fact, UnitFact):
            models |= {
                name: told for name in models if (told := getattr(fact.plate, name))
            }
    return JobSummary(
        id=opened.job,
        opened=opened.noted,
        last=last,
        site=site,
        outdoor_model=models["outdoor_model"],
        indoor_model=models["indoor_model"],
        state=_as_state(state),
        events=count,
    )


def _as_state(word: str) -> State:
    states: dict[str, State] = {"parked": "parked", "closed": "closed"}
    return states.get(word, "open")


def _state(body: Body, before: str) -> str:
    match body:
        case Closed():
            return "closed"
        case Parked():
            return "parked"
        case Opened() | Said() | Answered() | Entered():
            return "open"
        case _:
            return before


def _take_in(event: Event, facts: dict[tuple[str, int], Fact]) -> None:
    match event.body:
        case Said(facts=told) | Answered(facts=told) | Entered(facts=told):
            facts.update({(event.id, index): fact for index, fact in enumerate(told)})
        case Corrected(event=source, index=index, fact=fact):
            if fact is None:
                facts.pop((source, index), None)
            else:
                facts[(source, index)] = fact
        case Undone(event=source):
            for key in [key for key in facts if key[0] == source]:
                del facts[key]
        case _:
            pass
