"""Counts flashes over a table's own window, from every phase of it. Pure."""

from __future__ import annotations

import math
from bisect import bisect_left
from collections.abc import Sequence

from assistant.signals.flashes import Flash, check_times, without_doubles
from assistant.signals.taps import TapCount
from assistant.signals.train_reader import HAND

MISSED_ONE = 0.4
"""Weight of a window one flash short of the fullest: one in twenty is missed."""
DOUBT = 0.5
EDGE = 2 * HAND
"""A tap so near the window's end belongs to the next one [s]: where the window is the
board's own, the flash that begins the next one comes there, early by a hand's error."""
MOST_EDGE = 0.1
"""Share of a window that this is at most."""


def in_windows(
    rounds: Sequence[Sequence[float]], window_s: float
) -> tuple[TapCount, ...]:
    """Return how many flashes a window holds, the best number first.

    A board that flashes n times in its window does so whatever moment the window is
    begun at; so every flash begins one, as far as it was watched to its end. Counts
    over another time than the board's own differ from phase to phase and stay apart.
    Taps made twice are counted once.

    Raises
    ------
    ValueError
        A window that is not above zero; a time that is not finite or goes back.

    Examples
    --------
    >>> four = [start + at for start in (0, 10, 20) for at in (0, 1, 2, 3)]
    >>> [one.count for one in in_windows([four], 10.0)]
    [4]
    """
    if not (math.isfinite(window_s) and window_s > 0):
        raise ValueError(f"a window of {window_s} s cannot be counted over")
    length = window_s - min(EDGE, MOST_EDGE * window_s)
    found: dict[int, int] = {}
    for times in _tapped_once(rounds):
        for at in times:
            end = at + length
            if end <= times[-1]:
                count = bisect_left(times, end) - bisect_left(times, at)
                found[count] = found.get(count, 0) + 1
    if not found:
        return ()
    fullest = max(found)
    weights = {
        count: often * MISSED_ONE ** (fullest - count) for count, often in found.items()
    }
    total = sum(weights.values()) + DOUBT
    ranked = sorted(weights.items(), key=lambda each: (-each[1], each[0]))
    return tuple(TapCount(count, weight / total) for count, weight in ranked)


def windows_watched(rounds: Sequence[Sequence[float]], window_s: float) -> int:
    """Return how many windows, one after another, were watched to their end.

    Examples
    --------
    >>> windows_watched([[0, 2, 4, 6, 8, 10], [0, 7]], 5.0)
    3
    """
    return sum(int((times[-1] - times[0]) // window_s) for times in rounds if times)


def _tapped_once(rounds: Sequence[Sequence[float]]) -> list[list[float]]:
    for times in rounds:
        check_times(times)
    kept, _ = without_doubles([[Flash(at) for at in times] for times in rounds])
    return [[flash.at for flash in flashes] for flashes in kept]
