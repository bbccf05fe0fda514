"""Taps of a key in time with a lamp, read as counts: by groups and by windows. Pure.

A person who taps with a lamp is late by a tenth of a second and misses a flash now
and then; groups at both ends may be cut. So a count is never forced: every number
that a group or window gave is a candidate, with the share of the evidence for it.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median
from typing import Literal

LEAST_RATIO = 1.8
"""So much longer than a gap between flashes a pause is, at least. Tapping jitters by
some 60 ms (common practice, no source), far less than that of half a second."""
FIRST, INNER, LAST = 0.7, 1.0, 0.5
"""What a group's number weighs: the first may have begun, the last may go on."""
DOUBT = 0.5
"""Weight of what was not seen: one group alone is no certainty."""
ALTERNATIVE = 0.25
"""Share of the best candidate's evidence from which another is one too."""
LEAST_EVEN = 5
"""Taps without any pause from which the flashing is called even."""


@dataclass(frozen=True, slots=True)
class TapCount:
    """One number of flashes that the taps allow; `confidence` is a share below 1."""

    count: int
    confidence: float


@dataclass(frozen=True, slots=True)
class TapResult:
    """What taps say, read in both ways a table may count.

    Attributes
    ----------
    taps : int
        How many there were.
    groups : tuple of int
        Taps of each group, in order, of all rounds.
    pause : str or None
        ``seen``, ``none`` (even flashing), or None: cannot tell.
    by_groups : tuple of TapCount
        Counts between two pauses, the best first.
    by_window : tuple of TapCount
        Counts in one window, the best first.
    windows : tuple of int
        Taps of each whole window, in order.
    window_s : float
        Length of a window [s].
    flash_s, pause_s, period_s : float or None
        Medians: from flash to flash in a group, of the pause, from one group's start
        to the next [s].
    """

    taps: int
    groups: tuple[int, ...]
    pause: Literal["seen", "none"] | None
    by_groups: tuple[TapCount, ...]
    by_window: tuple[TapCount, ...]
    windows: tuple[int, ...]
    window_s: float
    flash_s: float | None = None
    pause_s: float | None = None
    period_s: float | None = None


def read_taps(rounds: Sequence[Sequence[float]], window_s: float = 10.0) -> TapResult:
    """Read the times of taps.

    Parameters
    ----------
    rounds : sequence of sequence of float
        For each round of watching the times of its taps [s], none decreasing, from
        any zero.
    window_s : float
        The time that a table counts over [s].

    Returns
    -------
    TapResult

    Raises
    ------
    ValueError
        A time that is not finite or goes back; a window that is not above zero.

    Examples
    --------
    >>> four = [start + at for start in (0.0, 4.0, 8.0) for at in (0, 0.5, 1.0, 1.5)]
    >>> found = read_taps([four], window_s=4.0)
    >>> found.groups, found.pause, found.by_groups[0].count, found.pause_s
    ((4, 4, 4), 'seen', 4, 2.5)
    >>> found.windows
    (4, 4)
    """
    _refuse_bad(rounds, window_s)
    gaps = [after - before for times in rounds for before, after in pairwise(times)]
    border = _border(gaps)
    grouped = [_groups(times, border) for times in rounds]
    windows = [count for times in rounds for count in _windows(times, window_s)]
    starts = [
        later[0] - earlier[0]
        for groups in grouped
        for earlier, later in pairwise(groups)
    ]
    return TapResult(
        taps=sum(map(len, rounds)),
        groups=tuple(len(group) for groups in grouped for group in groups),
        pause=_pause(gaps, border),
        by_groups=_by_groups(grouped, gaps, border),
        by_window=_ranked((count, INNER) for count in windows),
        windows=tuple(windows),
        window_s=window_s,
        flash_s=_middle(gap for gap in gaps if border is None or gap <= border),
        pause_s=_middle(gap for gap in gaps if border is not None and gap > border),
        period_s=_middle(starts),
    )


def likely(counts: Sequence[TapCount]) -> tuple[int, ...]:
    """Return the counts that are worth telling, in order of size.

    Examples
    --------
    >>> likely((TapCount(6, 0.6), TapCount(7, 0.2), TapCount(2, 0.05)))
    (6, 7)
    """
    if not counts:
        return ()
    least = ALTERNATIVE * counts[0].confidence
    return tuple(sorted(each.count for each in counts if each.confidence >= least))


def _refuse_bad(rounds: Sequence[Sequence[float]], window_s: float) -> None:
    if not (math.isfinite(window_s) and window_s > 0):
        raise ValueError(f"a window of {window_s} s cannot be counted over")
    for times in rounds:
        if not all(map(math.isfinite, times)):
            raise ValueError("a tap without a time")
        if any(after < before for before, after in pairwise(times)):
            raise ValueError("a tap before the one that went before it")


def _border(gaps: Sequence[float]) -> float | None:
    """Return the length between gaps of two kinds; None where all are of one kind."""
    lengths = sorted(gap for gap in gaps if gap > 0)
    ratios = [
        (longer / shorter, math.sqrt(shorter) * math.sqrt(longer))
        for shorter, longer in pairwise(lengths)
    ]
    # Of two steps alike the upper one parts: a flash that was missed doubles a gap.
    best = max(
        ratios, default=(0.0, 0.0), key=lambda each: (round(each[0], 3), each[1])
    )
    return best[1] if best[0] >= LEAST_RATIO else None


def _groups(times: Sequence[float], border: float | None) -> list[list[float]]:
    groups: list[list[float]] = [[times[0]]] if times else []
    for before, after in pairwise(times):
        if border is not None and after - before > border:
            groups.append([])
        groups[-1].append(after)
    return groups


def _pause(
    gaps: Sequence[float], border: float | None
) -> Literal["seen", "none"] | None:
    if border is not None:
        return "seen"
    return "none" if len(gaps) + 1 >= LEAST_EVEN else None


def _by_groups(
    rounds: Sequence[Sequence[Sequence[float]]],
    gaps: Sequence[float],
    border: float | None,
) -> tuple[TapCount, ...]:
    if _pause(gaps, border) == "none":
        return ()
    counts = [len(group) for groups in rounds for group in groups]
    return _ranked(
        (len(group), weight)
        for groups in rounds
        for group, weight in zip(
            groups, _weights(groups, max(counts, default=0)), strict=True
        )
        if weight
    )


def _weights(groups: Sequence[Sequence[float]], largest: int) -> list[float]:
    """Weigh groups: one at an end that is smaller than another may be cut short."""
    weights = [INNER] * len(groups)
    if groups:
        weights[0] = FIRST if len(groups[0]) == largest else FIRST / 2
        last = LAST if len(groups[-1]) == largest else 0.0
        weights[-1] = last if len(groups) > 1 else LAST
    return weights


def _ranked(votes: Iterable[tuple[int, float]]) -> tuple[TapCount, ...]:
    weights: dict[int, float] = {}
    for count, weight in votes:
        weights[count] = weights.get(count, 0.0) + weight
    total = sum(weights.values()) + DOUBT
    ranked = sorted(weights.items(), key=lambda each: (-each[1], each[0]))
    return tuple(TapCount(count, weight / total) for count, weight in ranked)


def _windows(times: Sequence[float], window_s: float) -> list[int]:
    """Count the taps of each window that was watched to its end."""
    if not times:
        return []
    whole = int((times[-1] - times[0]) // window_s)
    nth = Counter(int((at - times[0]) // window_s) for at in times)
    return [nth[window] for window in range(whole)]


def _middle(values: Iterable[float]) -> float | None:
    found = list(values)
    return median(found) if found else None
