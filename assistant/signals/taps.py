"""A number of flashes that taps of a key allow, and which of several to tell. Pure.

A person who taps with a lamp misses a flash now and then, and the groups at both ends
may be cut. So a count is never forced: each that is possible is kept with its share.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

ALTERNATIVE = 0.25
"""Share of the best candidate's evidence from which another is one too."""


@dataclass(frozen=True, slots=True)
class TapCount:
    """One number of flashes that the taps allow; `confidence` is a share below 1."""

    count: int
    confidence: float


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
