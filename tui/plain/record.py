"""The whole record of a job as plain lines, every event with its time. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from assistant.jobs.baselines import Baseline
from assistant.jobs.events import Body, Event
from assistant.jobs.summary import JobSummary
from assistant.units.show import format_quantity
from tui.plain.events import event_texts, event_title
from tui.plain.moments import date_time
from tui.plain.places import INDENT, Frame
from tui.plain.text import count, table, wrap

PROOF = (
    "The head proves the record up to here: note it elsewhere, and "
    "`faultleaf job verify` finds a change, a gap or a cut. It does not prove who "
    "wrote the record or that the clock was right."
)


def list_lines(jobs: Sequence[JobSummary], frame: Frame) -> list[str]:
    """Return one line a job, the one worked on last first."""
    if not jobs:
        return ["No jobs yet."]
    rows = [("job", "last worked on", "state", "events", "unit")]
    for job in jobs:
        unit = " with ".join(filter(None, (job.outdoor_model, job.indoor_model)))
        site = f" at {job.site}" if job.site else ""
        rows.append(
            (
                job.id,
                date_time(job.last, frame.zone),
                job.state,
                str(job.events),
                (unit or "unit not known") + site,
            )
        )
    lines = table(rows)
    if max(map(len, lines)) <= frame.width:
        return lines
    return [line for row in rows[1:] for line in _narrow(row, frame.width)]


def baseline_lines(found: Sequence[Baseline], serial: str, frame: Frame) -> list[str]:
    """Return one line a reading that is kept with a unit."""
    if not found:
        return [f"Nothing is kept from commissioning for the unit {serial}."]
    rows = [("reading", "value", "at", "kept", "job")]
    for one in found:
        value = "OL" if one.value is None else format_quantity(one.value, digits=4)
        at = format_quantity(one.at_temperature) if one.at_temperature else ""
        rows.append((one.of, value, at, date_time(one.noted, frame.zone), one.job))
    lines = table(rows)
    if max(map(len, lines)) <= frame.width:
        return lines
    texts = (
        f"{of} {value}{f' at {at}' if at else ''}, kept {when} in {job}"
        for of, value, at, when, job in rows[1:]
    )
    return [line for text in texts for line in wrap(text, frame.width, "", INDENT)]


def record_lines(events: Sequence[Event], head: str, frame: Frame) -> list[str]:
    """Return every event of a job in order, then the head of its chain."""
    first = events[0]
    lines = [f"Job {first.job}", f"{count(len(events), 'event')}"]
    for event in events:
        lines += [
            "",
            f"{date_time(event.noted, frame.zone)}  {event_title(event.body)}",
        ]
        lines += _event(event.body, frame)
    return [*lines, "", f"Head: {head}", *wrap(PROOF, frame.width)]


def _narrow(row: tuple[str, ...], width: int) -> Iterator[str]:
    job, last, state, events, unit = row
    yield job
    yield from wrap(f"{state}, {events} events, {last}", width, INDENT)
    yield from wrap(unit, width, INDENT)


def _event(body: Body, frame: Frame) -> list[str]:
    return [
        line
        for text in event_texts(body, frame)
        for line in wrap(text, frame.width, INDENT, INDENT * 2)
    ]
