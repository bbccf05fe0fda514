"""Flashes with their times: from a lamp's on and off, or from taps. Pure."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

TOO_CLOSE = 0.18
"""A tap so soon after another is the same flash tapped twice [s]: a lamp that can be
followed by hand flashes 0.4 s apart or more, and a hand errs by 0.08 s each time."""
AT_ONCE = 0.02
"""No lamp and no hand is as fast as that [s]."""
MOSTLY = 1 / 3
"""Where more of the gaps are that short, it is the lamp that is fast."""


@dataclass(frozen=True, slots=True)
class Flash:
    """One flash: when it began and, where known, ended [s]; `long` if told by key."""

    at: float
    off: float | None = None
    long: bool | None = None

    @property
    def lasted(self) -> float | None:
        """How long it was lit [s], or None."""
        return None if self.off is None else self.off - self.at


def flashes_of(transitions: Sequence[tuple[float, bool]]) -> tuple[Flash, ...]:
    """Return the flashes of a lamp that went on (True) and off (False) at times.

    A lamp that was lit from the beginning is no flash seen whole; one still lit at the
    end has no end.

    Raises
    ------
    ValueError
        A time that is not finite or goes back.

    Examples
    --------
    >>> flashes_of([(0.0, False), (1.0, True), (1.5, False), (2.0, True)])
    (Flash(at=1.0, off=1.5, long=None), Flash(at=2.0, off=None, long=None))
    """
    check_times([at for at, _ in transitions])
    found: list[Flash] = []
    lit: float | None = None
    for at, on in transitions:
        if on and lit is None:
            lit = at
        elif not on and lit is not None:
            found.append(Flash(lit, at))
            lit = None
    return (*found, Flash(lit)) if lit is not None else tuple(found)


def check_times(times: Sequence[float]) -> None:
    """Refuse times that are not finite or go back.

    Raises
    ------
    ValueError
        Naming what is wrong.
    """
    if not all(map(math.isfinite, times)):
        raise ValueError("a flash without a time")
    if any(after < before for before, after in pairwise(times)):
        raise ValueError("a flash before the one that went before it")


def without_doubles(
    rounds: Sequence[Sequence[Flash]],
) -> tuple[tuple[tuple[Flash, ...], ...], int]:
    """Return the rounds without taps made twice, and how many those were."""
    gaps = [b.at - a.at for flashes in rounds for a, b in pairwise(flashes)]
    close = sum(gap < TOO_CLOSE for gap in gaps)
    least = TOO_CLOSE if close <= MOSTLY * len(gaps) else AT_ONCE
    kept = tuple(_apart(flashes, least) for flashes in rounds)
    return kept, sum(map(len, rounds)) - sum(map(len, kept))


def _apart(flashes: Sequence[Flash], least: float) -> tuple[Flash, ...]:
    kept: list[Flash] = []
    for flash in flashes:
        if not kept or flash.at - kept[-1].at >= least:
            kept.append(flash)
    return tuple(kept)
