"""Which rhythms taps may have: by every length that may part flashes from pauses."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from itertools import pairwise
from statistics import median

from assistant.signals.rhythm import Rhythm

LARGEST = 40
"""Flashes in a group that are thought of; printed tables went past twenty."""
LEAST_STEP = 1.08
"""So much longer one gap is than the next shorter one where a pause may begin."""
BORDERS = 5
FEWEST = 2
"""One flash is no group."""
PAUSE_TO_FLASH = 1.35
"""A pause is so much longer than the gap between flashes, at least."""


def guesses(rounds: Sequence[Sequence[float]]) -> tuple[Rhythm, ...]:
    """Return rhythms that are worth comparing with the taps."""
    gaps = sorted(
        after - before for times in rounds for before, after in pairwise(times)
    )
    found: set[Rhythm] = set()
    if gaps:
        beat = comb(gaps)
        found.add(Rhythm(1, 0.0, beat))
    for border in _borders(gaps):
        found.update(_parted_at(border, rounds, gaps))
    return tuple(sorted(found, key=lambda one: (one.count, one.flash, one.pause)))


def _borders(gaps: Sequence[float]) -> list[float]:
    """Return the lengths between gaps that may part pauses, the widest steps first."""
    steps = [
        (longer / shorter, (shorter + longer) / 2)
        for shorter, longer in pairwise(gaps)
        if shorter > 0 and longer / shorter >= LEAST_STEP
    ]
    return [border for _, border in sorted(steps, reverse=True)[:BORDERS]]


def comb(gaps: Sequence[float]) -> float:
    """Return the one length of which all gaps are about whole multiples.

    Examples
    --------
    >>> comb([0.5, 0.52, 0.98, 0.5])
    0.5
    """
    ordered = sorted(gaps)
    low = ordered[len(ordered) // 4]
    near = [gap for gap in ordered if gap <= 1.6 * low]
    base = median(near) if near else low
    if base <= 0:
        return base
    multiples = [max(1, round(gap / base)) for gap in ordered]
    return round(sum(ordered) / sum(multiples), 9)


def _parted_at(
    border: float, rounds: Sequence[Sequence[float]], gaps: Sequence[float]
) -> Iterable[Rhythm]:
    inner = [gap for gap in gaps if gap <= border]
    flash = comb(inner)
    if flash <= 0:
        return
    lengths = Counter(
        length for times in rounds for length in filled(times, border, flash)
    )
    most = max(lengths)
    usual = max(lengths, key=lambda length: (lengths[length], length))
    for pause in _pauses([gap for gap in gaps if gap > border], flash):
        for count in {most - 1, most, most + 1, usual, usual + 1}:
            if FEWEST <= count <= LARGEST and pause >= PAUSE_TO_FLASH * flash:
                yield Rhythm(count, flash, pause)


def _pauses(gaps: Sequence[float], flash: float) -> set[float]:
    """Return what the pause may be: a flash missed beside it makes it longer."""
    middle = median(gaps)
    shortest = min(gaps)
    near = [gap for gap in gaps if gap - shortest < flash / 2]
    low = sum(near) / len(near)
    return {middle, low} if abs(middle - low) > flash / 4 else {middle}


def filled(times: Sequence[float], border: float, flash: float) -> list[int]:
    """Return the flashes of each group, those missed inside it counted in."""
    lengths = [1] if times else []
    for before, after in pairwise(times):
        if after - before > border:
            lengths.append(1)
        else:
            lengths[-1] += max(1, round((after - before) / flash))
    return lengths
