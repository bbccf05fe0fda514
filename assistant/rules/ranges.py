"""Runs of values that rise: one place, or a span of places, compared with a run."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Generic, Literal, TypeVar

Verdict = Literal["confirmed", "possible", "excluded"]
Key = tuple[float, ...]
"""A place in an order; the parts of a date or a version, largest first."""
T = TypeVar("T")


@dataclass(frozen=True, slots=True)
class Ends(Generic[T]):
    """Where a run begins and ends; None is open, `before` does not belong to it."""

    first: T | None = None
    last: T | None = None
    before: T | None = None

    @property
    def stated(self) -> bool:
        """Whether any end is stated."""
        return any(end is not None for end in (self.first, self.last, self.before))


def within(low: Key, high: Key, ends: Ends[Key]) -> Verdict:
    """Return whether something between `low` and `high` lies in a run.

    Examples
    --------
    >>> run = Ends(first=(2023, 14), before=(2024, 1))
    >>> within((2023, 14), (2023, 14), run), within((2024, 1), (2024, 1), run)
    ('confirmed', 'excluded')
    >>> within((2023, 1), (2023, 53), run)
    'possible'
    """
    if not ends.stated:
        return "possible"
    outside = (
        (ends.first is not None and high < ends.first)
        or (ends.last is not None and low > ends.last)
        or (ends.before is not None and low >= ends.before)
    )
    if outside:
        return "excluded"
    inside = (
        (ends.first is None or low >= ends.first)
        and (ends.last is None or high <= ends.last)
        and (ends.before is None or high < ends.before)
    )
    return "confirmed" if inside else "possible"


def apart(one: Ends[Key], other: Ends[Key]) -> bool:
    """Return whether no place lies in both runs."""
    return _ends_before(one, other) or _ends_before(other, one)


def _ends_before(early: Ends[Key], late: Ends[Key]) -> bool:
    if late.first is None:
        return False
    over = early.last is not None and early.last < late.first
    return over or (early.before is not None and early.before <= late.first)
