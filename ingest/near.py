"""Documents that say nearly the same, by the text hashes the library holds: pure."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass

NEAR = 0.8
"""Share of one document's pieces that stand in the other."""


@dataclass(frozen=True, slots=True)
class NearPair:
    """Two documents, by sha256, and how much of each stands in the other."""

    one: str
    other: str
    share_of_one: float
    share_of_other: float

    @property
    def share(self) -> float:
        """The greater of both."""
        return max(self.share_of_one, self.share_of_other)


def near_pairs(
    units: Mapping[str, frozenset[str]], among: Collection[str] = ()
) -> tuple[NearPair, ...]:
    """Return the pairs of which one has at least `NEAR` of its pieces in the other.

    Only the rarest pieces of a document are looked up: a document that shares four
    fifths with another shares one of any fifth plus one.

    Parameters
    ----------
    units : mapping of str to frozenset of str
        Document to the hashes of what it says.
    among : collection of str, optional
        Only pairs with one of these.

    Examples
    --------
    >>> (pair,) = near_pairs({"a": frozenset("12345"), "b": frozenset("1234")})
    >>> pair.share_of_one, pair.share_of_other
    (0.8, 1.0)
    """
    often = Counter(piece for pieces in units.values() for piece in pieces)
    holding: dict[str, list[str]] = {}
    for name in sorted(units):
        for piece in units[name]:
            holding.setdefault(piece, []).append(name)
    wanted = set(among)
    found: dict[tuple[str, str], NearPair] = {}
    for name in sorted(units):
        for other in _partners(units[name], often, holding):
            one, two = sorted((name, other))
            if one == two or (one, two) in found:
                continue
            if wanted and not wanted & {one, two}:
                continue
            pair = _pair(one, two, units)
            if pair.share >= NEAR:
                found[one, two] = pair
    return tuple(found[key] for key in sorted(found))


def _partners(
    pieces: frozenset[str], often: Mapping[str, int], holding: Mapping[str, list[str]]
) -> Iterable[str]:
    rare = sorted(pieces, key=lambda piece: (often[piece], piece))
    enough = len(rare) - math.ceil(NEAR * len(rare)) + 1
    return sorted({name for piece in rare[:enough] for name in holding[piece]})


def _pair(one: str, two: str, units: Mapping[str, frozenset[str]]) -> NearPair:
    shared = len(units[one] & units[two])
    return NearPair(one, two, shared / len(units[one]), shared / len(units[two]))
