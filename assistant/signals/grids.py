"""Compares several lamps at once with a row that names several."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from itertools import pairwise

from assistant.signals.cells import Together, cells_of, lamp_slot
from assistant.signals.counting import fit_count
from assistant.signals.fits import TOOK_BLINK, Fit, assumed, fit_lamp, matched
from assistant.signals.kinds import (
    FlickerCount,
    Lamp,
    LampState,
    PhasePair,
    Rate,
)
from assistant.signals.observation import Observation
from assistant.signals.rates import fit_rate

_STILL = frozenset({"on", "off"})
_PAIR = 2
"""So many lamps flash at least where they are said to do it together or in turn."""
UPSIDE_DOWN = 0.5
"""Weight of lamps counted off in the other direction than the document's."""
_PLACE = re.compile(r"([0-9]+) from the (?:left|right|top|bottom)")


def fit_grid(seen: Sequence[Observation], row: Together) -> Fit | None:
    """Return how a row fits, or None where a lamp it names disagrees.

    An observation that can be none of the row's lamps is left unexplained; one that
    can be several is tried as each. The assignment that explains most, then assumes
    least, counts. What was told of every other lamp stands for those left over.
    """
    if not _level_allows(seen, row):
        return None
    cells = cells_of(row)
    whose = [
        []
        if one.lamps
        else [n for n, entry in enumerate(cells) if _may_be(one, entry.lamp)]
        for one in seen
    ]
    found = _assign(seen, row, whose, 0, {})
    return min(found, key=_rank) if found else None


def _level_allows(seen: Sequence[Observation], row: Together) -> bool:
    told = {one.display_level for one in seen} - {None}
    return not (isinstance(row, FlickerCount) and told - {row.display_level})


def _rank(fit: Fit) -> tuple[int, int, float, list[str]]:
    return (-len(fit.explained), len(fit.assumed), -fit.weight, sorted(fit.assumed))


def _may_be(seen: Observation, lamp: Lamp) -> bool:
    if seen.state in ("display", "no_code") or seen.emitter == "buzzer":
        return False
    return fit_lamp(seen, lamp) is not None


def _assign(
    seen: Sequence[Observation],
    row: Together,
    whose: Sequence[Sequence[int]],
    place: int,
    taken: dict[int, int],
) -> list[Fit]:
    if place == len(seen):
        whole = _whole(seen, row, taken)
        return [whole] if whole is not None else []
    found = []
    for number in whose[place]:
        if number not in taken:
            more = {**taken, number: place}
            found.extend(_assign(seen, row, whose, place + 1, more))
    if not whose[place]:
        found.extend(_assign(seen, row, whose, place + 1, taken))
    return found


def _whole(
    seen: Sequence[Observation], row: Together, named: Mapping[int, int]
) -> Fit | None:
    taken = _spread(seen, row, named)
    order = _direction(seen, taken)
    phase = _phase(seen, row, taken)
    if not taken or order is None or phase is None:
        return None
    explained = frozenset(taken.values()) | _spoken_of(seen, row)
    total = Fit(explained=explained).and_also(order).and_also(phase)
    spoken_for = isinstance(row, PhasePair) and "phase" in phase.matched
    for number, entry in enumerate(cells_of(row)):
        slot = lamp_slot(entry.lamp)
        if number not in taken:
            if entry.state != "any" and not spoken_for:
                total = total.and_also(assumed(slot))
            continue
        one = seen[taken[number]]
        state = _state(one, entry, getattr(row, "rate", None))
        lamp = fit_lamp(one, entry.lamp)
        if state is None or lamp is None:
            return None
        total = total.and_also(state).and_also(lamp).and_also(matched(slot))
    return total


def _spread(
    seen: Sequence[Observation], row: Together, named: Mapping[int, int]
) -> dict[int, int]:
    """Give the lamps that nobody named to what was told of every lamp, or the other.

    The other lamp is one: where several are left, it can be any and stays open.
    """
    taken = dict(named)
    for place, one in enumerate(seen):
        if one.lamps:
            left = [
                number
                for number, entry in enumerate(cells_of(row))
                if number not in taken and _may_be(one, entry.lamp)
            ]
            if one.lamps == "every" or len(left) == 1:
                taken |= dict.fromkeys(left, place)
    return taken


def _spoken_of(seen: Sequence[Observation], row: Together) -> frozenset[int]:
    """Return what was told of every lamp here, though all may be named otherwise."""
    return frozenset(
        place
        for place, one in enumerate(seen)
        if one.lamps == "every"
        and any(_may_be(one, entry.lamp) for entry in cells_of(row))
    )


def _phase(
    seen: Sequence[Observation], row: Together, taken: Mapping[int, int]
) -> Fit | None:
    """Compare whether lamps blink together or in turn, and the level of a display."""
    explained = [seen[place] for place in taken.values()]
    if isinstance(row, FlickerCount):
        told = any(one.display_level is not None for one in explained)
        return matched("display_level") if told else assumed("display_level")
    phases = {one.phase for one in explained} - {None}
    if not isinstance(row, PhasePair):
        flashing = [cell for cell in cells_of(row) if cell.state not in _STILL]
        return None if phases and len(flashing) < _PAIR else Fit()
    if not phases:
        return assumed("phase")
    return matched("phase") if phases == {row.phase} else None


def _direction(seen: Sequence[Observation], taken: Mapping[int, int]) -> Fit | None:
    """Keep lamps that were counted off from one side in their order, or reversed."""
    placed = sorted(
        (int(found[1]), number)
        for number, place in taken.items()
        for label in seen[place].label
        if (found := _PLACE.search(label))
    )
    steps = {after[1] > before[1] for before, after in pairwise(placed)}
    if not steps:
        return Fit()
    if len(steps) > 1:
        return None
    return Fit(
        assumed=frozenset({"order"}), weight=1.0 if True in steps else UPSIDE_DOWN
    )


def _state(seen: Observation, entry: LampState, rate: Rate | None) -> Fit | None:
    """Compare one lamp of a row; a blink of unknown count stays open."""
    match entry.state:
        case "any":
            return Fit()
        case "on" | "off":
            return matched("state") if seen.state == entry.state else None
        case "count":
            if entry.count is None or seen.pause == "none":
                return None
            return fit_count(seen, entry.count)
        case "flicker":
            return _flicker(seen)
        case _:
            return _flash(seen, entry, rate)


def _flicker(seen: Observation) -> Fit | None:
    if seen.state == "flicker":
        return matched("state")
    if seen.state != "blink" or seen.rate == "slow":
        return None
    return matched("state") if seen.rate == "fast" else assumed("rate")


def _flash(seen: Observation, entry: LampState, rate: Rate | None) -> Fit | None:
    if seen.state not in ("blink", "count", "flicker"):
        return None
    taken_for_count = TOOK_BLINK if seen.count else 1.0
    fit = Fit(matched=frozenset({"state"}), weight=taken_for_count)
    if entry.state == "flash":
        return fit
    how_fast = fit_rate(seen, "slow" if entry.state == "slow" else "fast", rate)
    return None if how_fast is None else fit.and_also(how_fast)
