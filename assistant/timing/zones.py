"""Sets of instants that differ by so much at most: closed difference bounds."""

from __future__ import annotations

from collections.abc import Collection
from dataclasses import dataclass

ORIGIN = -1
"""The name of time zero: a bound against it is a bound on the instant itself."""
Difference = tuple[int, int, int]
"""(a, b, most): instant a lies at most `most` after instant b."""
Span = tuple[int, int]
"""Earliest and latest instant; both inclusive."""


@dataclass(frozen=True, slots=True)
class Zone:
    """All placements of the named instants that keep every bound.

    `most[i][j]` is the largest value of instant i less instant j in any of them; the
    bounds are closed, so a name may be left out and the rest stays exact. Whole
    numbers, so that a strict bound is one less (R. Dechter, I. Meiri and J. Pearl,
    "Temporal constraint networks", 1991: shortest paths decide such problems).
    """

    names: tuple[int, ...] = (ORIGIN,)
    most: tuple[tuple[int, ...], ...] = ((0,),)

    def span(self, name: int) -> Span:
        """Return when an instant may be."""
        at, zero = self.names.index(name), self.names.index(ORIGIN)
        return -self.most[zero][at], self.most[at][zero]

    def placed(self, name: int, span: Span) -> Zone:
        """Return the zone with one more instant within `span`."""
        zero = self.names.index(ORIGIN)
        early, late = span
        rows = [(*row, row[zero] - early) for row in self.most]
        new = tuple(late + bound for bound in self.most[zero])
        return Zone((*self.names, name), (*rows, (*new, 0)))

    def within(self, bounds: Collection[Difference]) -> Zone | None:
        """Return the part of the zone that keeps more bounds; None if it is empty."""
        zone: Zone | None = self
        for bound in bounds:
            zone = zone.tightened(*bound) if zone is not None else None
        return zone

    def only(self, names: Collection[int]) -> Zone:
        """Return the zone of some names alone, in ascending order."""
        kept = sorted((*set(names) - {ORIGIN}, ORIGIN))
        if tuple(kept) == self.names:
            return self
        places = [self.names.index(name) for name in kept]
        return Zone(
            tuple(kept), tuple(tuple(self.most[i][j] for j in places) for i in places)
        )

    def tightened(self, later: int, earlier: int, most: int) -> Zone | None:
        """Return the part of the zone that keeps one more bound; None if empty."""
        a, b = self.names.index(later), self.names.index(earlier)
        if most >= self.most[a][b]:
            return self
        if most + self.most[b][a] < 0:
            return None
        return Zone(
            self.names,
            tuple(
                tuple(
                    min(bound, to_a + most + self.most[b][j])
                    for j, bound in enumerate(row)
                )
                for row in self.most
                for to_a in (row[a],)
            ),
        )
