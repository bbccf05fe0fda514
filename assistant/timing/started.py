"""When a wait began and whether something has ended it or taken it over."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from datetime import timedelta

from assistant.timing.moment import Moment
from assistant.timing.triggers import Trigger
from assistant.timing.values import Happening, WaitRow
from assistant.timing.wait_kinds.starts import ResetDelay

Own = set[tuple[str, Trigger]]
"""Pack and trigger of every row: what a happening counts as depends on it."""

IS_ALSO: Mapping[Trigger, Trigger] = {
    "second_reset": "reset",
    "first_start": "power_on",
    "power_restored": "power_on",
    "power_lost": "power_off",
}
"""What a happening counts as where its pack has no row for it by its own name."""
ALWAYS_ALSO: Mapping[Trigger, Trigger] = {"protection_stop": "compressor_stopped"}


def own_triggers(rows: Sequence[WaitRow], told: Sequence[Happening]) -> Own:
    """Return the pack and trigger of every row that can stand for its happening.

    A row for a second reset within a time stands for it only where the second one
    surely came within.
    """
    return {
        (pack_of(row), row.wait.trigger)
        for row in rows
        if second_within(row, told) is True
    }


def pack_of(row: WaitRow) -> str:
    """Return the pack that a row stands in."""
    return row.gid.partition("/")[0]


def with_second_resets(happenings: Sequence[Happening]) -> tuple[Happening, ...]:
    """Name every reset after the first a second one: documents ask for more then.

    The first is the first told, where that has no time, else the earliest.
    """
    resets = [one for one in happenings if one.trigger == "reset"]
    if not resets:
        return tuple(happenings)
    first = resets[0]
    if first.at is not None:
        timed = [(one.at.latest, one) for one in resets if one.at is not None]
        first = min(timed, key=lambda each: each[0])[1]
    return tuple(
        Happening("second_reset", one.at)
        if one.trigger == "reset" and one is not first
        else one
        for one in happenings
    )


def second_within(row: WaitRow, told: Sequence[Happening]) -> bool | None:
    """Return whether the last reset came within the row's time of the one before.

    True for every row that asks for no such thing; None where the times allow both.
    """
    wait = row.wait
    if not isinstance(wait, ResetDelay) or wait.within is None:
        return True
    resets = [one for one in told if one.trigger in ("reset", "second_reset")]
    if len(resets) < 2:  # noqa: PLR2004 - a second one needs a first
        return True
    moments = [one.at for one in resets if one.at is not None]
    if len(moments) < len(resets):
        return None
    before, last = sorted(moments, key=lambda at: (at.latest, at.earliest))[-2:]
    within = timedelta(seconds=wait.within.value)
    if last.latest - before.earliest <= within:
        return True
    return None if last.earliest - before.latest <= within else False


def of_its_protection(row: WaitRow, told: Sequence[Happening]) -> tuple[Happening, ...]:
    """Leave out the stops by a named protection that is not the row's own."""
    wanted = row.wait.stopped_by
    return tuple(
        one
        for one in told
        if wanted is None
        or one.trigger != "protection_stop"
        or one.event in (None, wanted)
    )


def stopped_by_it(row: WaitRow, told: Sequence[Happening]) -> bool | None:
    """Return whether the last stop was by the row's protection; None if not named.

    True for every row that asks for no protection.
    """
    stops = [one for one in told if one.trigger == "protection_stop"]
    if row.wait.stopped_by is None or not stops:
        return True
    return None if stops[-1].event is None else True


def counted(row: WaitRow, own: Own) -> tuple[set[Trigger], tuple[Trigger, ...]]:
    """Return the triggers that start a wait, and those whose own row replaces it."""
    wanted = row.wait.trigger
    starts: set[Trigger] = {wanted, *row.wait.repeats_with}
    starts.update(one for one, other in ALWAYS_ALSO.items() if other == wanted)
    special = []
    for one, other in IS_ALSO.items():
        if other == wanted and (pack_of(row), one) in own:
            special.append(one)
        elif other == wanted:
            starts.add(one)
    return starts, tuple(special)


def last_of(
    told: Sequence[Happening], triggers: Iterable[Trigger]
) -> tuple[bool, Moment | None, int]:
    """Return whether any happened, when the last did, and its place in the telling.

    With overlapping times the last one lies between the latest of the earliest and
    the latest of the latest. A time not known that was told after all known ones
    leaves the last one unknown.
    """
    wanted = set(triggers)
    placed = [(place, one) for place, one in enumerate(told) if one.trigger in wanted]
    if not placed:
        return False, None, -1
    last_place = placed[-1][0]
    if placed[-1][1].at is None:
        return True, None, last_place
    known = [(place, one.at) for place, one in placed if one.at is not None]
    latest = max(at.latest for _, at in known)
    place = max(place for place, at in known if at.latest == latest)
    return (
        True,
        Moment(earliest=max(at.earliest for _, at in known), latest=latest),
        place,
    )


def ended(
    told: Sequence[Happening],
    enders: Sequence[Trigger],
    started: Moment | None,
    place: int,
) -> bool:
    """Return whether something ended the wait for certain after it started."""
    return any(
        one.trigger in enders and comes_after(one, number, started, place)
        for number, one in enumerate(told)
    )


def comes_after(
    one: Happening, number: int, started: Moment | None, place: int
) -> bool:
    """Return whether a happening surely lies after the start.

    At one and the same instant, and where a time is not known, the order told
    decides.
    """
    if started is None or one.at is None or one.at == started:
        return number > place
    return one.at.earliest >= started.latest


def replaced(
    told: Sequence[Happening],
    special: Sequence[Trigger],
    started: Moment | None,
    place: int,
) -> bool:
    """Return whether a more special happening, with its own row, has taken over."""
    for number, one in enumerate(told):
        if one.trigger not in special:
            continue
        if started is None or one.at is None:
            taken = number > place
        elif one.at == started or one.at.earliest >= started.latest:
            taken = True
        else:
            taken = one.at.latest >= started.earliest and number > place
        if taken:
            return True
    return False
