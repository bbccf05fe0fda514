"""Reads a train of flashes: its form, its count, how sure it is, what is missing. Pure.

Every rhythm that the taps may have is compared with all of them (see
`assistant.signals.rhythm`); its share of the likelihood is its confidence. Nothing is
rounded away: other counts stay beside the best as alternatives.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from assistant.signals.flashes import Flash, check_times, without_doubles
from assistant.signals.guesses import comb, filled, guesses
from assistant.signals.quick_long import QuickLong, read_quick_long, told_apart
from assistant.signals.rhythm import Reading, alone, fitted, read
from assistant.signals.taps import TapCount

Form = Literal["even", "single", "groups", "short_long", "unknown"]
HAND = 0.08
"""How late or early a hand is, at most [s] (measured nowhere; the bound asked for)."""
SURE = 0.9
"""Share from which no other round is asked for."""
SURE_OF_DIGITS = 0.7
"""The same for each of two digits, whose shares are those of runs."""
SELDOM = 1.6
"""A lone flash so far from the next is a count of one and no even blink [s]."""
DOUBTED = 0.02
"""Least share that the counts beside the best are given."""
LEAST_SHARE = 0.001
"""A count that was thought of has this share at least: nothing is ruled out."""
LEAST_EVEN = 5
"""Taps without a pause from which flashing is called even."""
WHOLE_GROUPS = 2
"""Groups seen whole, from pause to pause, that settle a count."""


@dataclass(frozen=True, slots=True)
class TrainReading:
    """What a train of flashes says.

    Attributes
    ----------
    form : Form
        ``groups`` between pauses; ``single`` flashes far apart; ``even`` flashing
        without a pause; ``short_long`` quick and long ones; ``unknown`` where too
        little was seen.
    counts : tuple of TapCount
        Flashes of a group, the best first, every other one that is possible after it;
        with ``even`` what it would be if a pause was overlooked.
    digits : QuickLong or None
        Quick and long flashes, where their lengths were told apart.
    groups : tuple of int
        What each whole group gave, flashes missed inside it counted in.
    doubled : int
        Taps that came too soon after another to be a flash: left out of everything.
    flash_s, pause_s, period_s : float or None
        From flash to flash, of the pause between last and first flash, from group to
        group [s].
    rate_hz : tuple of float or None
        Flashes in a second of an even train, lowest and highest.
    another_round : str
        Why another round is asked for; empty where none is.
    """

    form: Form
    counts: tuple[TapCount, ...] = ()
    groups: tuple[int, ...] = ()
    doubled: int = 0
    flash_s: float | None = None
    pause_s: float | None = None
    period_s: float | None = None
    rate_hz: tuple[float, float] | None = None
    another_round: str = ""
    digits: QuickLong | None = None

    @property
    def count(self) -> int | None:
        """The likeliest number of flashes, or None where nothing is counted."""
        counted = self.counts and self.form != "even"
        return self.counts[0].count if counted else None


def read_train(rounds: Sequence[Sequence[Flash | float]]) -> TrainReading:
    """Read rounds of flashes, each from its own zero.

    Raises
    ------
    ValueError
        A time that is not finite or goes back.

    Examples
    --------
    >>> four = [start + at for start in (0, 4, 8) for at in (0, 0.5, 1.0, 1.5)]
    >>> found = read_train([four])
    >>> found.form, found.count, found.groups, found.pause_s
    ('groups', 4, (4, 4, 4), 2.5)
    """
    given = [[_flash(each) for each in flashes] for flashes in rounds]
    for flashes in given:
        check_times([flash.at for flash in flashes])
    kept, doubled = without_doubles(given)
    kept = tuple(flashes for flashes in kept if flashes)
    long = told_apart(kept)
    if long is not None:
        return _two_digits(kept, long, doubled)
    times = tuple(tuple(f.at for f in flashes) for flashes in kept)
    gaps = [after - before for each in times for before, after in pairwise(each)]
    if not gaps or min(gaps) <= 0:
        return _too_little(times, doubled)
    ways = _ways(times)
    best = ways[0].reading
    if ways[0].count == 1:
        return _even(times, ways, doubled)
    if best is None:
        return _cut_short(times, ways, doubled)
    return _grouped(best, ways, doubled)


def _two_digits(
    kept: Sequence[Sequence[Flash]], long: Sequence[Sequence[bool]], doubled: int
) -> TrainReading:
    digits = read_quick_long(kept, long)
    sure = min(each[0].confidence for each in (digits.short, digits.long))
    why = ""
    if digits.whole < WHOLE_GROUPS:
        why = "both digits were not seen from end to end: watch two repeats"
    elif sure < SURE_OF_DIGITS:
        why = "the rounds do not agree on both digits"
    return TrainReading("short_long", doubled=doubled, another_round=why, digits=digits)


def _flash(given: Flash | float) -> Flash:
    return given if isinstance(given, Flash) else Flash(float(given))


def _too_little(times: Sequence[Sequence[float]], doubled: int) -> TrainReading:
    """Return what lone taps say: one flash in each round, if so many agree."""
    rounds = len(times)
    one = TapCount(1, rounds / (rounds + 2))
    counts = (one, TapCount(2, DOUBTED)) if times else ()
    why = "no pause was seen: watch through two whole groups"
    return TrainReading("unknown", counts, (), doubled, another_round=why)


_STOPS = math.log(1 / 40)
"""Where a round ends, or how many flashes a group has: any of forty."""
_PAUSE = math.log(0.01)
"""A pause of its own length is one more thing that may be anything."""
_CUT = math.log(0.2)
"""Share of rounds that end before the next group, though asked to go on."""


@dataclass(frozen=True, slots=True)
class _Told:
    """One way to read the taps, with its likelihood; `reading` if pauses are seen."""

    count: int
    likelihood: float
    reading: Reading | None


def _ways(times: Sequence[Sequence[float]]) -> list[_Told]:
    """Return every way to read the taps, the likeliest first."""
    stops = len(times) * _STOPS
    found = []
    for reading in _readings(times):
        count = reading.rhythm.count
        free = 0.0 if count == 1 else _STOPS + _PAUSE
        found.append(_Told(count, reading.likelihood + stops + free, reading))
    gaps = [after - before for each in times for before, after in pairwise(each)]
    flash = comb(gaps)
    longest = max(filled(each, math.inf, flash)[0] for each in times)
    if flash < SELDOM:
        for count in range(longest, longest + 3):
            likelihood = alone(times, count, flash) + _STOPS + _CUT
            found.append(_Told(count, likelihood, None))
    return sorted(found, key=lambda one: (-one.likelihood, one.count))


def _readings(times: Sequence[Sequence[float]]) -> list[Reading]:
    """Return every rhythm read with its best times."""
    found: dict[tuple[int, int, int], Reading] = {}
    for guess in guesses(times):
        reading = read(times, guess)
        better = read(times, fitted(reading))
        if better.likelihood > reading.likelihood:
            reading = better
        rhythm = reading.rhythm
        key = (rhythm.count, round(20 * rhythm.flash), round(20 * rhythm.pause))
        held = found.get(key)
        if held is None or reading.likelihood > held.likelihood:
            found[key] = reading
    return [found[key] for key in sorted(found)]


def _shares(ways: Sequence[_Told]) -> tuple[TapCount, ...]:
    """Return the counts with their share of the likelihood; neighbours never vanish."""
    best: dict[int, float] = {}
    for one in ways:
        best[one.count] = max(best.get(one.count, -math.inf), one.likelihood)
    top = max(best.values())
    weights = {
        count: max(math.exp(value - top), LEAST_SHARE) for count, value in best.items()
    }
    first = ways[0].count
    for near in (first - 1, first + 1):
        if near >= 1:
            weights[near] = max(weights.get(near, 0.0), DOUBTED)
    total = sum(weights.values()) + DOUBTED
    ranked = sorted(weights.items(), key=lambda each: (-each[1], each[0]))
    return tuple(TapCount(count, weight / total) for count, weight in ranked)


def _even(
    times: Sequence[Sequence[float]], ways: Sequence[_Told], doubled: int
) -> TrainReading:
    """Return flashes without groups: even, single ones far apart, or not yet told."""
    reading = ways[0].reading
    period = reading.rhythm.pause if reading is not None else 0.0
    taps = sum(map(len, times))
    rate = _rate(times, period)
    if period >= SELDOM:
        counts = _shares(ways)
        why = _why(counts, taps - 1)
        return TrainReading(
            "single", counts, (1,) * taps, doubled, None, period, period, rate, why
        )
    if taps < LEAST_EVEN:
        return _cut_short(times, ways, doubled)
    counts = tuple(one for one in _shares(ways) if one.count > 1)
    return TrainReading("even", counts, (), doubled, period, None, None, rate)


def _cut_short(
    times: Sequence[Sequence[float]], ways: Sequence[_Told], doubled: int
) -> TrainReading:
    """Return the counts of rounds that were over before a pause was seen."""
    gaps = [after - before for each in times for before, after in pairwise(each)]
    flash = comb(gaps)
    groups = tuple(filled(each, math.inf, flash)[0] for each in times)
    grouped = [one for one in ways if one.count > 1]
    enough = len(times) >= WHOLE_GROUPS and ways[0].count > 1
    form: Form = "groups" if enough else "unknown"
    counts = _shares(grouped or ways)
    if not enough:
        counts = tuple(TapCount(n.count, n.confidence / 2) for n in counts)
    why = "no pause was seen: watch on until the next group has begun"
    return TrainReading(form, counts, groups, doubled, flash, another_round=why)


def _grouped(best: Reading, ways: Sequence[_Told], doubled: int) -> TrainReading:
    rhythm = best.rhythm
    counts = _shares(ways)
    groups = _whole_groups(best)
    why = _why(counts, len(groups))
    return TrainReading(
        "groups",
        counts,
        groups,
        doubled,
        round(rhythm.flash, 9),
        round(rhythm.pause, 9),
        round(rhythm.period, 9),
        None,
        why,
    )


def _why(counts: Sequence[TapCount], whole: int) -> str:
    if whole < WHOLE_GROUPS:
        return "fewer than two whole groups were watched"
    if counts[0].confidence < SURE:
        others = " or ".join(str(one.count) for one in counts[1:3])
        return f"it may be {counts[0].count} or {others}"
    return ""


def _whole_groups(reading: Reading) -> tuple[int, ...]:
    """Return the flashes of each group, from the first to the last one tapped."""
    found: list[int] = []
    for places in reading.places:
        group: list[int] = []
        for place in places:
            if group and place <= group[-1]:
                found.append(_length(group))
                group = []
            group.append(place)
        if group:
            found.append(_length(group))
    return tuple(found)


def _length(places: Sequence[int]) -> int:
    return places[-1] - places[0] + 1


def _rate(times: Sequence[Sequence[float]], period: float) -> tuple[float, float]:
    """Return the flashes in a second, with the error of a hand at both ends."""
    span = sum(each[-1] - each[0] for each in times if each)
    beats = max(1, round(span / period))
    slack = 2 * HAND * len(times)
    low, high = beats / (span + slack), beats / max(span - slack, span / 2)
    return (round(low, 3), round(high, 3))
