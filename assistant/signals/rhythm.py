"""How well taps agree with groups of so many flashes, so far apart. Pure.

A group of `count` flashes, `flash` apart, begins `pause` after the last flash of the
one before. A hand is late or early by a tenth of a second, misses a flash now and
then, and may begin in the middle. Each tap is a flash of some place in the group; the
likeliest way through the places is found as in any hidden Markov chain (Viterbi).
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

MISSED = 0.05
"""Share of flashes that a hand misses; 1 in 20 is asked of this reader."""
SPREAD = 0.066
"""Standard deviation of a gap [s]: two errors, each even within 0.08 s (the width of
an even spread over the square root of three, times that of two)."""
TRUST = 6
"""Gaps that the supposed spread counts for."""
STEADIEST = 0.2
"""No spread smaller than this share of the supposed one is believed."""
FAR_OFF = 5.0
"""Standard deviations from which a gap is simply wrong."""
IN_A_ROW = 4
"""Flashes missed one after another that are thought of."""
BEGINS = 0.5
"""Share of rounds that begin with a group, not in the middle of one."""
BEAM = 12.0
"""Ways so much less likely, in nats, are left."""
PAUSES = 3
"""Pauses in one gap that are thought of, less one."""

_MISS, _SEEN = math.log(MISSED), math.log(1 - MISSED)


@dataclass(frozen=True, slots=True)
class Rhythm:
    """Groups of `count` flashes, `flash` apart, `pause` from last to first [s]."""

    count: int
    flash: float
    pause: float

    @property
    def period(self) -> float:
        """From the start of a group to the start of the next [s]."""
        return (self.count - 1) * self.flash + self.pause


@dataclass(frozen=True, slots=True)
class Step:
    """One gap as read: flashes on, pauses crossed, and its length [s]."""

    flashes: int
    pauses: int
    gap: float


@dataclass(frozen=True, slots=True)
class Reading:
    """How likely taps are under a rhythm, and how each gap was read."""

    rhythm: Rhythm
    likelihood: float
    """Natural logarithm."""
    places: tuple[tuple[int, ...], ...]
    """Place of each tap in its group, from 0, for each round."""
    steps: tuple[Step, ...]


def read(rounds: Sequence[Sequence[float]], rhythm: Rhythm) -> Reading:
    """Return the likeliest reading of taps under a rhythm."""
    total = 0.0
    places: list[tuple[int, ...]] = []
    steps: list[Step] = []
    for times in rounds:
        if not times:
            places.append(())
            continue
        likelihood, way = _through(times, rhythm)
        total += likelihood
        places.append(tuple(place for place, _ in way))
        for (before, after), (start, end) in zip(
            pairwise(way), pairwise(times), strict=True
        ):
            flashes = after[0] - before[0] + after[1] * (rhythm.count - 1)
            steps.append(Step(flashes, after[1], end - start))
    offs = [
        (step.gap - step.flashes * rhythm.flash - step.pauses * rhythm.pause) / SPREAD
        for step in steps
    ]
    return Reading(rhythm, total + steadier(offs), tuple(places), tuple(steps))


def steadier(offs: Sequence[float]) -> float:
    """Return what a likelihood gains where the hand was steadier than supposed.

    `offs` are errors of gaps in standard deviations. The spread is taken from them,
    held towards the supposed one as if `TRUST` gaps more had shown it.
    """
    squares = [min(abs(off), FAR_OFF) ** 2 for off in offs]
    spread = min(1.0, math.sqrt((TRUST + sum(squares)) / (TRUST + len(squares))))
    spread = max(spread, STEADIEST)
    taken = sum(square / 2 * (1 - spread**-2) for square in squares)
    return taken - len(squares) * math.log(spread)


def fitted(reading: Reading) -> Rhythm:
    """Return the rhythm whose gaps are closest to those read, by least squares."""
    inner = [step for step in reading.steps if step.pauses == 0 and step.flashes]
    flash = reading.rhythm.flash
    if inner:
        flash = sum(s.gap for s in inner) / sum(s.flashes for s in inner)
    across = [step for step in reading.steps if step.pauses]
    pause = reading.rhythm.pause
    if across:
        left = sum(step.gap - step.flashes * flash for step in across)
        pause = left / sum(step.pauses for step in across)
    return replace(reading.rhythm, flash=flash, pause=max(pause, flash))


def _through(
    times: Sequence[float], rhythm: Rhythm
) -> tuple[float, tuple[tuple[int, int], ...]]:
    """Return the best way through the places: likelihood, (place, pauses before)."""
    alive = _beginnings(rhythm.count)
    # The ways are kept as links back, so that a long round costs no copies.
    links: list[dict[int, tuple[int, int]]] = []
    for before, after in pairwise(times):
        reached: dict[int, float] = {}
        back: dict[int, tuple[int, int]] = {}
        jumps = _jumps(after - before, rhythm)
        for place, likelihood in alive.items():
            for to, pauses, cost in _moves(place, jumps, rhythm.count):
                total = likelihood + cost
                if total > reached.get(to, -math.inf):
                    reached[to] = total
                    back[to] = (place, pauses)
        least = max(reached.values()) - BEAM
        alive = {to: value for to, value in reached.items() if value >= least}
        links.append(back)
    last = max(alive, key=lambda at: (alive[at], -at))
    return alive[last], _way_back(last, links)


def _beginnings(count: int) -> dict[int, float]:
    """Return how likely a round begins at each place of a group."""
    anywhere = (1 - BEGINS) / count
    return {
        place: math.log(anywhere if place else anywhere + BEGINS)
        for place in range(count)
    }


def _way_back(
    place: int, links: Sequence[dict[int, tuple[int, int]]]
) -> tuple[tuple[int, int], ...]:
    way = []
    for back in reversed(links):
        earlier, pauses = back[place]
        way.append((place, pauses))
        place = earlier
    way.append((place, 0))
    return tuple(reversed(way))


def _jumps(gap: float, rhythm: Rhythm) -> list[tuple[int, int, float]]:
    """Return what a gap may be by its length: flashes on, pauses, off by [sd]."""
    if rhythm.count == 1:
        pauses = max(1, round(gap / rhythm.pause))
        return [(0, pauses, (gap - pauses * rhythm.pause) / SPREAD)]
    found = []
    for pauses in range(PAUSES):
        left = gap - pauses * rhythm.pause
        middle = round(left / rhythm.flash)
        for flashes in (middle - 1, middle, middle + 1):
            off = (left - flashes * rhythm.flash) / SPREAD
            if flashes + pauses >= 1 and abs(off) <= FAR_OFF:
                found.append((flashes, pauses, off))
    return found


def _moves(
    place: int, jumps: Sequence[tuple[int, int, float]], count: int
) -> Iterator[tuple[int, int, float]]:
    """Yield the places that a gap may lead to, pauses crossed, and the likelihood."""
    led = False
    for flashes, pauses, off in jumps:
        # Flashes are those within groups; a pause leads from the last to the first.
        to = place + flashes - pauses * (count - 1)
        missed = flashes + pauses - 1
        if 0 <= to < count and missed <= IN_A_ROW + max(0, pauses - 1) * count:
            led = True
            yield to, pauses, _cost(off, missed)
    if not led:
        # A gap that fits nothing must still lead somewhere: to the next group's start.
        yield 0, 1, _cost(FAR_OFF, count - 1 - place + 1)


def _cost(off: float, missed: int) -> float:
    far = min(abs(off), FAR_OFF)
    return -far * far / 2 + missed * _MISS + _SEEN


def alone(rounds: Sequence[Sequence[float]], count: int, flash: float) -> float:
    """Return how likely rounds are that each held one whole group and nothing else."""
    total = 0.0
    offs: list[float] = []
    for times in rounds:
        length = 1
        for before, after in pairwise(times):
            steps = max(1, round((after - before) / flash))
            length += steps
            offs.append((after - before - steps * flash) / SPREAD)
            total += _cost(offs[-1], steps - 1)
        cut = count - length
        if cut < 0:
            return -math.inf
        total += cut * _MISS + math.log(cut + 1)
    return total + steadier(offs)
