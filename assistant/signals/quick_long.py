"""Tells quick flashes from long ones and counts both: two digits of one code. Pure."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median
from typing import Literal

from assistant.signals.flashes import Flash
from assistant.signals.guesses import comb
from assistant.signals.taps import TapCount

LONGER = 1.5
"""So many times longer than a quick flash a long one lasts, at least."""
BY_SECONDS = 0.25
"""And by so much: a key held is late by 0.08 s at both ends [s]."""
PARTED = 2.6
"""Times the gap between flashes from which a run of one length is two runs."""
MISSED_ONE = 0.12
"""Weight of a run one shorter than the longest: a flash missed at one of two ends."""
FLOOR = 0.02
ORDER_GAP = 1.25
"""So much longer the gap between repeats is than the one between the digits."""


@dataclass(frozen=True, slots=True)
class QuickLong:
    """Quick and long flashes counted: each digit's numbers, the best first.

    `first` is the digit that stands after the longer gap, None where both gaps are
    alike. `whole` is how many runs were seen from end to end.
    """

    short: tuple[TapCount, ...]
    long: tuple[TapCount, ...]
    first: Literal["short", "long"] | None
    whole: int


@dataclass(frozen=True, slots=True)
class _Run:
    long: bool
    count: int
    whole: bool


def told_apart(rounds: Sequence[Sequence[Flash]]) -> list[list[bool]] | None:
    """Return which flashes are long, or None where they are all of one length.

    Lengths are parted where the next longer one is longer by most.
    """
    flat = [flash for flashes in rounds for flash in flashes]
    if flat and all(flash.long is not None for flash in flat):
        marks = {bool(flash.long) for flash in flat}
        found = [[bool(flash.long) for flash in flashes] for flashes in rounds]
        return found if len(marks) > 1 else None
    lengths = sorted(flash.lasted for flash in flat if flash.lasted is not None)
    if len(lengths) + len(rounds) < len(flat):
        return None
    border = _border(lengths)
    if border is None:
        return None
    return [
        [flash.lasted is not None and flash.lasted > border for flash in flashes]
        for flashes in rounds
    ]


def _border(lengths: Sequence[float]) -> float | None:
    steps = [
        (longer / max(shorter, 0.01), (shorter + longer) / 2)
        for shorter, longer in pairwise(lengths)
        if longer - shorter >= BY_SECONDS and longer >= LONGER * shorter
    ]
    return max(steps)[1] if steps else None


def read_quick_long(
    rounds: Sequence[Sequence[Flash]], long: Sequence[Sequence[bool]]
) -> QuickLong:
    """Count the runs of quick and of long flashes.

    Examples
    --------
    >>> code = [Flash(0, 0.3), Flash(0.6, 0.9), Flash(2, 3.2)]
    >>> rounds = [[Flash(f.at + t, f.off + t) for t in (0, 7, 14) for f in code]]
    >>> found = read_quick_long(rounds, told_apart(rounds))
    >>> found.short[0].count, found.long[0].count, found.first
    (2, 1, 'short')
    """
    runs = [
        run
        for flashes, marks in zip(rounds, long, strict=True)
        for run in _runs(flashes, marks)
    ]
    return QuickLong(
        _ranked(run for run in runs if not run.long),
        _ranked(run for run in runs if run.long),
        _first(rounds, long),
        sum(run.whole for run in runs),
    )


def _runs(flashes: Sequence[Flash], marks: Sequence[bool]) -> list[_Run]:
    """Return runs of one length; those at the ends of a round may be cut."""
    cuts: list[tuple[int, int]] = []
    begin = 0
    beats = _beats(flashes, marks)
    for at in range(1, len(flashes) + 1):
        ended = at == len(flashes) or marks[at] != marks[begin]
        gap = 0.0 if ended else flashes[at].at - flashes[at - 1].at
        beat = beats.get(marks[begin])
        if ended or (beat is not None and gap > PARTED * beat):
            cuts.append((begin, at))
            begin = at
    found = []
    for number, (start, end) in enumerate(cuts):
        beat = beats.get(marks[start])
        count = 1
        for before, after in pairwise(flashes[start:end]):
            count += max(1, round((after.at - before.at) / beat)) if beat else 1
        found.append(_Run(marks[start], count, 0 < number < len(cuts) - 1))
    return found


def _beats(flashes: Sequence[Flash], marks: Sequence[bool]) -> dict[bool, float]:
    """Return the time from flash to flash within runs, for both lengths."""
    found = {}
    for kind in (False, True):
        gaps = [
            after.at - before.at
            for (before, one), (after, other) in pairwise(
                zip(flashes, marks, strict=True)
            )
            if one is kind and other is kind
        ]
        if gaps:
            found[kind] = comb(gaps)
    return found


def _ranked(runs: Iterable[_Run]) -> tuple[TapCount, ...]:
    """Return the numbers that runs gave; a hand misses flashes and makes none up."""
    kept = list(runs)
    if not kept:
        return ()
    whole = [run for run in kept if run.whole] or kept
    longest = max(run.count for run in whole)
    weights: dict[int, float] = {longest + 1: FLOOR}
    if longest > 1:
        weights[longest - 1] = FLOOR
    for run in kept:
        share = 1.0 if run.whole else 0.5
        if run.count < longest and not run.whole:
            share = 0.0
        less = max(0, longest - run.count)
        held = weights.get(run.count, 0.0)
        weights[run.count] = held + share * MISSED_ONE**less
    total = sum(weights.values()) + 0.5 / len(kept)
    ranked = sorted(weights.items(), key=lambda each: (-each[1], each[0]))
    return tuple(TapCount(n, weight / total) for n, weight in ranked if weight)


def _first(
    rounds: Sequence[Sequence[Flash]], long: Sequence[Sequence[bool]]
) -> Literal["short", "long"] | None:
    """Return which digit begins: the one after the longer of the two gaps."""
    dark: dict[bool, list[float]] = {False: [], True: []}
    for flashes, marks in zip(rounds, long, strict=True):
        for (before, one), (after, other) in pairwise(zip(flashes, marks, strict=True)):
            if one is not other:
                dark[other].append(after.at - (before.off or before.at))
    if not dark[False] or not dark[True]:
        return None
    to_short, to_long = median(dark[False]), median(dark[True])
    if to_short > ORDER_GAP * to_long:
        return "short"
    return "long" if to_long > ORDER_GAP * to_short else None
