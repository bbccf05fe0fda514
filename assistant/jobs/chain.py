"""The order of events and the proof of their chain.

The chain shows that nothing was changed, taken out or put in another order since
it was written, and, against a head noted elsewhere, that its end was not cut off.
It does not show who wrote it or that a clock was right; someone who rewrites the
whole chain and has no head to answer to is not found out.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby
from typing import Any

from assistant.jobs.events import Event


@dataclass(frozen=True, slots=True)
class Link:
    """One stored row: its columns beside the JSON text they were taken from."""

    id: str
    job: str
    machine: str
    seq: int
    digest: str
    payload: str


def digest_of(payload: str) -> str:
    """Return the sha256 of an event's canonical JSON text."""
    return hashlib.sha256(payload.encode()).hexdigest()


def in_order(events: Iterable[Event]) -> tuple[Event, ...]:
    """Return events by time noted, machine and sequence.

    On one machine the sequence always holds: an event noted while the clock stood
    earlier than before counts as noted when its forerunner was.
    """
    latest: dict[str, datetime] = {}
    keyed: list[tuple[datetime, str, int, Event]] = []
    for event in sorted(events, key=lambda each: (each.machine, each.seq)):
        since = max(event.noted, latest.get(event.machine, event.noted))
        latest[event.machine] = since
        keyed.append((since, event.machine, event.seq, event))
    keyed.sort(key=lambda each: each[:3])
    return tuple(event for *_, event in keyed)


def head_of(links: Sequence[Link]) -> str:
    """Return what to note elsewhere: the last digest of each machine, by machine."""
    last = {link.machine: link for link in sorted(links, key=lambda each: each.seq)}
    return "+".join(digest_of(last[machine].payload) for machine in sorted(last))


def chain_problems(links: Sequence[Link], head: str | None = None) -> tuple[str, ...]:
    """Return what is wrong with a job's chain, nothing when it holds.

    Parameters
    ----------
    links : sequence of Link
        Every stored row of one job, in any order.
    head : str, optional
        What `head_of` gave earlier; events may have been added since.
    """
    found: list[str] = []
    ordered = sorted(links, key=lambda each: (each.machine, each.seq))
    for _, run in groupby(ordered, key=lambda each: each.machine):
        found.extend(_run_problems(list(run)))
    if head:
        there = {digest_of(link.payload) for link in links}
        found.extend(
            f"the event with head {part[:12]} is gone: the end was cut off or changed"
            for part in head.split("+")
            if part not in there
        )
    return tuple(found)


def _run_problems(run: Sequence[Link]) -> list[str]:
    found: list[str] = []
    before = ""
    for place, link in enumerate(run, start=1):
        where = f"event {link.seq} of machine {link.machine}"
        if link.seq != place:
            found.append(f"event {place} of machine {link.machine} is missing")
            return found
        digest = digest_of(link.payload)
        payload = _read(link.payload)
        if digest != link.digest or not _agrees(link, payload):
            found.append(f"{where} was changed after it was written")
        elif payload["prev"] != before:
            found.append(f"{where} does not follow the one before it")
        before = digest
    return found


def _read(payload: str) -> dict[str, Any]:
    try:
        read = json.loads(payload)
    except ValueError:
        return {}
    return read if isinstance(read, dict) else {}


def _agrees(link: Link, payload: dict[str, Any]) -> bool:
    names = ("id", "job", "machine", "seq")
    return "prev" in payload and all(
        payload.get(name) == getattr(link, name) for name in names
    )
