"""From raw evidence to an order, and from raw evidence to found or not. Pure.

The order comes from a fused score. Whether anything was found never does: it is
decided on the evidence itself, because a fused score says only what is best among
what there is.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for one passage."""

    cosine: float
    """Between query and passage, -1 to 1; 0 without vectors."""
    coverage: float
    """Share of what was asked that stands in it, words and codes, each weighted by
    how rare it is; 0 to 1."""
    code: float
    """Share of the codes and counts asked for that it names; 0 to 1."""
    ranks: float
    """Reciprocal-rank sum over the keyword and the vector list, scaled to 0 to 1."""


@dataclass(frozen=True, slots=True)
class Weights:
    """What each kind of evidence is worth in the order."""

    cosine: float = 1.0
    coverage: float = 0.6
    code: float = 0.5
    ranks: float = 0.5
    confirmed: float = 0.02
    """For a document that surely applies to the unit: little more than a tie-break."""


@dataclass(frozen=True, slots=True)
class Thresholds:
    """When raw evidence is enough to say that something was found."""

    cosine: float = 0.45
    """Enough by itself."""
    coverage: float = 0.75
    """Enough by itself."""
    joint: float = 0.85
    """Enough for cosine and coverage together, added."""
    keyword_only: float = 0.5
    """Coverage that is enough when there are no vectors."""


RANK_SOFTENING = 60
"""The usual constant of reciprocal rank fusion (Cormack and others, SIGIR 2009)."""


def reciprocal_rank(
    rankings: Sequence[Sequence[tuple[int, float]]],
) -> dict[int, float]:
    """Fuse rankings of (id, score), best first; 1 is an id that heads them all.

    Ids of equal score share a rank, so no order among them leaks into the sum.

    Examples
    --------
    >>> fused = reciprocal_rank([[(7, 0.9), (8, 0.5)], [(7, 2.0), (9, 1.0)]])
    >>> fused[7], fused[8] == fused[9]
    (1.0, True)
    """
    best = len(rankings) / (RANK_SOFTENING + 1) or 1.0
    total: dict[int, float] = {}
    for ranking in rankings:
        rank, last = 0, math.inf
        for place, (key, score) in enumerate(ranking, start=1):
            if score != last:
                rank, last = place, score
            total[key] = total.get(key, 0.0) + 1 / (RANK_SOFTENING + rank)
    return {key: value / best for key, value in total.items()}


def rarity(passages: int, having: int) -> float:
    """Return the weight of a word that `having` of `passages` have.

    The inverse document frequency of bm25 (Robertson and Zaragoza, 2009) with 1
    added inside the logarithm, so it is never negative.

    Examples
    --------
    >>> rarity(100, 1) > rarity(100, 50) > rarity(100, 100) > 0
    True
    """
    return math.log(1 + (passages - having + 0.5) / (having + 0.5))


def coverage(words: Mapping[str, float], present: Sequence[str]) -> float:
    """Return the share of the words' weight that the present ones make up.

    Examples
    --------
    >>> coverage({"rare": 3.0, "common": 1.0}, ["rare"])
    0.75
    """
    total = sum(words.values())
    return sum(words[word] for word in present) / total if total else 0.0


def fused(evidence: Evidence, weights: Weights, *, confirmed: bool) -> float:
    """Return the score that orders, rounded to 1e-4."""
    value = (
        weights.cosine * evidence.cosine
        + weights.coverage * evidence.coverage
        + weights.code * evidence.code
        + weights.ranks * evidence.ranks
        + weights.confirmed * confirmed
    )
    return round(value, 4)


def enough(
    evidence: Sequence[Evidence], thresholds: Thresholds, *, vectors: bool
) -> bool:
    """Decide on raw evidence whether anything was found.

    A passage that names everything asked by code needs only half of the rest.
    """
    return any(_enough(each, thresholds, vectors=vectors) for each in evidence)


def _enough(each: Evidence, thresholds: Thresholds, *, vectors: bool) -> bool:
    ease = 0.5 if each.code == 1.0 else 1.0
    if not vectors:
        return each.coverage >= ease * thresholds.keyword_only
    return (
        each.cosine >= ease * thresholds.cosine
        or each.coverage >= ease * thresholds.coverage
        or each.cosine + each.coverage >= ease * thresholds.joint
    )
