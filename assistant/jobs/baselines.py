"""Readings kept with a unit from commissioning, found again by its serial number."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from assistant.facts import ReadingFact
from assistant.jobs.events import Event
from assistant.jobs.fold import fold_all
from assistant.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Baseline:
    """One reading kept with a unit.

    Attributes
    ----------
    of : str
        What was read.
    value, at_temperature : Quantity or None
        The reading, None for an open line, and the temperature it was taken at.
    noted : datetime
        When it was written down.
    job : str
        Where it stands.
    words : str
        The words it came from.
    """

    of: str
    value: Quantity | None
    at_temperature: Quantity | None
    noted: datetime
    job: str
    words: str


def baselines(jobs: Iterable[Sequence[Event]], serial: str) -> tuple[Baseline, ...]:
    """Return the last baseline of each measurand of a unit, by measurand.

    A corrected or withdrawn reading is left out; the same model with another serial
    number is another unit.

    Parameters
    ----------
    jobs : iterable of sequence of Event
        The events of each job, in order.
    serial : str
        Serial number of the unit, whatever its case and spaces.
    """
    wanted = _plain(serial)
    found: dict[str, Baseline] = {}
    for events in jobs:
        state = fold_all(events)
        if not wanted or _plain(state.plate.serial or "") != wanted:
            continue
        for held in state.held:
            fact = held.fact
            if not isinstance(fact, ReadingFact) or not fact.baseline:
                continue
            if fact.value is None and not fact.open_line:
                continue
            kept = Baseline(
                of=fact.of,
                value=fact.value,
                at_temperature=fact.at_temperature,
                noted=held.noted,
                job=state.job,
                words=fact.words,
            )
            older = found.get(fact.of)
            if older is None or (older.noted, older.job) <= (kept.noted, kept.job):
                found[fact.of] = kept
    return tuple(found[of] for of in sorted(found))


def _plain(serial: str) -> str:
    return "".join(serial.split()).casefold()
