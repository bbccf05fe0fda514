"""What lets a defrost begin, when the next one may, and what follows the last."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from assistant.timing.moment import Moment
from assistant.timing.start_order import PartTimes, times_of
from assistant.timing.started import last_of
from assistant.timing.values import Happening, ValueTold, WaitRow
from assistant.timing.wait_kinds.frost import Defrost, Entry, EntryRow
from assistant.units.quantity import Quantity


@dataclass(frozen=True, slots=True)
class EntryPart:
    """One thing that must come about for a defrost to begin; `met` None: not told."""

    needs: str
    met: bool | None


@dataclass(frozen=True, slots=True)
class AfterDefrost:
    """What follows a defrost that has ended: the next one's soonest start, the parts.

    `next_at` is counted from the earliest believable end: surely none before it.
    """

    row: WaitRow
    ended: Moment
    next_at: datetime | None
    parts: tuple[PartTimes, ...]


def entry_parts(
    entry: Entry, values: Sequence[ValueTold], run: timedelta | None = None
) -> tuple[EntryPart, ...]:
    """Return how far the values told allow a defrost to begin.

    Parameters
    ----------
    entry : Entry
        What the document asks.
    values : sequence of ValueTold
        The last of each sensor counts.
    run : timedelta, optional
        Running time added up since the last defrost, where it was told.

    Returns
    -------
    tuple of EntryPart
        ``running time``, ``coil temperature``, ``coil below the outdoor air`` and
        ``table``, those that are stated, in this order.
    """
    coil, ambient = _last(values, entry.coil), _last(values, entry.ambient)
    found = []
    if entry.run is not None:
        found.append(EntryPart("running time", _ran(entry.run, run)))
    if entry.coil_at_most is not None:
        met = None if coil is None else coil.value <= entry.coil_at_most.value
        found.append(EntryPart("coil temperature", met))
    if entry.coil_under_ambient is not None:
        met = None
        if coil is not None and ambient is not None:
            met = ambient.value - coil.value >= entry.coil_under_ambient.value
        found.append(EntryPart("coil below the outdoor air", met))
    if entry.table:
        found.append(EntryPart("table", _table(entry, coil, ambient, run)))
    return tuple(found)


def row_for(entry: Entry, ambient: Quantity) -> EntryRow | None:
    """Return the line of the table that an outdoor temperature falls in, if any."""
    for row in entry.table:
        low, high = row.ambient_from, row.ambient_below
        above = low is None or ambient.value >= low.value
        if above and (high is None or ambient.value < high.value):
            return row
    return None


def _table(
    entry: Entry,
    coil: Quantity | None,
    ambient: Quantity | None,
    run: timedelta | None,
) -> bool | None:
    if coil is None or ambient is None:
        return None
    row = row_for(entry, ambient)
    if row is None or coil.value > row.coil_at_most.value:
        return False
    return True if row.run is None else _ran(row.run, run)


def _ran(wanted: Quantity, run: timedelta | None) -> bool | None:
    return None if run is None else run.total_seconds() >= wanted.value


def _last(values: Sequence[ValueTold], sensor: str) -> Quantity | None:
    wanted = sensor.casefold()
    told = [
        (one.at.latest, place, one.value)
        for place, one in enumerate(values)
        if one.sensor.casefold() == wanted and one.value.unit == "K"
    ]
    return max(told, key=lambda each: each[:2])[2] if told else None


def after_defrost(
    rows: Sequence[WaitRow], told: Sequence[Happening]
) -> tuple[AfterDefrost, ...]:
    """Return what follows the last defrost that was told to have ended.

    Nothing where a new one was told to have begun since, or the end has no time.
    """
    found, ended, place = last_of(told, ("defrost_ended",))
    if not found or ended is None:
        return ()
    _, began, at = last_of(told, ("defrost_started",))
    again = began.earliest >= ended.latest if began is not None else at > place
    if again and at > place:
        return ()
    return tuple(
        AfterDefrost(row, ended, _next(row.wait, ended), _parts(row.wait, ended))
        for row in rows
        if isinstance(row.wait, Defrost) and (row.wait.interval or row.wait.after)
    )


def _next(wait: Defrost, ended: Moment) -> datetime | None:
    if wait.interval is None:
        return None
    return ended.earliest + timedelta(seconds=wait.interval.value)


def _parts(wait: Defrost, ended: Moment) -> tuple[PartTimes, ...]:
    return times_of(wait.after, ended)
