"""Compares several lamps at once with a row of a lamp grid."""

from __future__ import annotations

from collections.abc import Sequence

from assistant.signals.fits import TOOK_BLINK, Fit, assumed, fit_lamp, matched
from assistant.signals.kinds import Lamp, LampState, SeveralLamps
from assistant.signals.observation import Observation


def lamp_slot(lamp: Lamp) -> str:
    """Return how a lamp of a grid is named in questions: ``lamp:<label>``."""
    return f"lamp:{lamp.label or lamp.colour or lamp.board or lamp.box or 'unnamed'}"


def fit_grid(seen: Sequence[Observation], row: SeveralLamps) -> Fit | None:
    """Return how a grid row fits, or None where a lamp it names disagrees.

    An observation that can be none of the row's lamps is left unexplained; one that
    can be several is tried as each. The assignment that explains most, then assumes
    least, counts.
    """
    whose = [
        [n for n, entry in enumerate(row.lamps) if _may_be(one, entry.lamp)]
        for one in seen
    ]
    found = _assign(seen, row, whose, 0, {})
    return min(found, key=_rank) if found else None


def _rank(fit: Fit) -> tuple[int, int, float, list[str]]:
    return (-len(fit.explained), len(fit.assumed), -fit.weight, sorted(fit.assumed))


def _may_be(seen: Observation, lamp: Lamp) -> bool:
    return seen.state not in ("display", "no_code") and fit_lamp(seen, lamp) is not None


def _assign(
    seen: Sequence[Observation],
    row: SeveralLamps,
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
    seen: Sequence[Observation], row: SeveralLamps, taken: dict[int, int]
) -> Fit | None:
    if not taken:
        return None
    total = Fit(explained=frozenset(taken.values()))
    for number, entry in enumerate(row.lamps):
        slot = lamp_slot(entry.lamp)
        if number not in taken:
            if entry.state != "any":
                total = total.and_also(assumed(slot))
            continue
        one = seen[taken[number]]
        state = _state(one, entry)
        lamp = fit_lamp(one, entry.lamp)
        if state is None or lamp is None:
            return None
        total = total.and_also(state).and_also(lamp).and_also(matched(slot))
    return total


def _state(seen: Observation, entry: LampState) -> Fit | None:
    """Compare one lamp of the grid; a blink of unknown count stays open."""
    if entry.state == "any":
        return Fit()
    if entry.state in ("on", "off"):
        return matched("state") if seen.state == entry.state else None
    if seen.state not in ("blink", "count"):
        return None
    if entry.state == "flash":
        taken_for_count = TOOK_BLINK if seen.count else 1.0
        return Fit(matched=frozenset({"state"}), weight=taken_for_count)
    if not seen.count:
        return assumed("count")
    return matched("count") if entry.count in seen.count else None
