"""From raw evidence to an order, and from raw evidence to found or not. Pure.

Both are weighted sums whose weights were fitted by `tests/evaluation/fit.py` on the
tuning and the practice questions, each without the talk that was heard on its page
only (`tests/evaluation/measure.py` prints how they do): the order by the
likelihood of the right page under a softmax over all passages, the verdict by
logistic regression with both classes weighted alike. The verdict never looks at
the fused score, which says only what is best among what there is.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from typing import NamedTuple


class Evidence(NamedTuple):
    """What speaks for one passage, each from 0 to 1 (cosines from -1).

    `..._print` is the same for the question said in the words of print.
    """

    cosine: float = 0.0
    """Between the question and the passage; 0 without vectors."""
    cosine_print: float = 0.0
    line: float = 0.0
    """Between the question and the nearest line of the passage."""
    line_print: float = 0.0
    coverage: float = 0.0
    """Share of what was asked that stands in it, words and codes, each weighted by
    how rare it is."""
    coverage_print: float = 0.0
    words: float = 0.0
    """bm25 of the question's words, as a share of the best passage's."""
    words_print: float = 0.0
    code: float = 0.0
    """Share of the codes and counts asked for that it names."""
    key_code: float = 0.0
    """Share of them that its heading names or a line of it opens with."""


HALF = 0.5

# As `tests/evaluation/fit.py` prints them.
OWN = Evidence(
    cosine=0.15,
    cosine_print=0.22,
    line=0.34,
    line_print=0.39,
    coverage_print=0.06,
    words=0.18,
    words_print=0.25,
    code=0.19,
)
PAGE = Evidence(
    cosine=0.17,
    cosine_print=0.14,
    line=0.26,
    line_print=0.34,
    coverage_print=0.10,
    code=0.13,
    key_code=0.14,
)
FOUND = Evidence(
    cosine=0.73,
    cosine_print=1.17,
    line=0.96,
    line_print=1.31,
    coverage_print=0.44,
    words=0.01,
    words_print=0.10,
    code=0.66,
    key_code=0.62,
)
FOUND_BY_WORDS = Evidence(
    coverage=2.68,
    coverage_print=1.13,
    code=1.16,
)


@dataclass(frozen=True, slots=True)
class Weights:
    """What each kind of evidence is worth in the order."""

    own: Evidence = OWN
    """For the passage itself."""
    page: Evidence = PAGE
    """For the best passage of its page: a page is what a person opens."""
    confirmed: float = 0.21
    """For a document that surely applies to the unit."""


@dataclass(frozen=True, slots=True)
class Best:
    """The strongest evidence of each kind that any passage has, and against it."""

    evidence: Evidence
    bm25: float
    """Of the best passage, as SQLite gives it."""
    unknown: float
    """Share of the question's words that no passage of the whole library has."""
    elsewhere: int
    """Words of other equipment or everyday life that no searched passage has."""
    named: bool
    """Some passage names every code asked for, and half of what else was asked."""
    unconfirmed: bool
    """The unit is told, and no document surely applies to it."""


@dataclass(frozen=True, slots=True)
class Thresholds:
    """When the strongest raw evidence is enough to say that something was found.

    Found where the sum of `weights` with the evidence, `bm25`, `unknown` and
    `elsewhere` reaches `least`.
    """

    weights: Evidence = FOUND
    bm25: float = 0.34
    unknown: float = -1.00
    elsewhere: float = -2.14
    least: float = 2.62
    """At this sum about 4 % of the questions are lost and 82 % of those that nothing
    answers are found out, when page and talk are left out of the fit."""
    sure: float = 0.75
    """Coverage that is enough by itself: nearly all that was asked stands there."""
    unconfirmed: float = 0.21
    """So much more is asked where no document surely applies to the unit that was
    told: set by hand, the tuning questions have too few of these."""
    words: Evidence = FOUND_BY_WORDS
    """Weights where there are no vectors."""
    words_elsewhere: float = -2.60
    words_least: float = 0.64


def coverage(words: Mapping[str, float], present: Iterable[str]) -> float:
    """Return the share of the words' weight that the present ones make up.

    Examples
    --------
    >>> coverage({"rare": 3.0, "common": 1.0}, ["rare"])
    0.75
    """
    total = sum(words.values())
    return sum(words[word] for word in present) / total if total else 0.0


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


def names_all(evidence: Iterable[Evidence]) -> bool:
    """Say whether some passage names every code asked for and half of the rest.

    Examples
    --------
    >>> names_all([Evidence(code=1.0, coverage=0.8)])
    True
    """
    return any(each.code == 1.0 and each.coverage >= HALF for each in evidence)


def strongest(evidence: Sequence[Evidence]) -> Evidence:
    """Return the greatest value of each kind; zeros of nothing.

    Examples
    --------
    >>> strongest([Evidence(cosine=0.4), Evidence(line=0.2)]).line
    0.2
    """
    if not evidence:
        return Evidence()
    return Evidence(*(max(kind) for kind in zip(*evidence, strict=True)))


def fused(own: Evidence, page: Evidence, weights: Weights, *, confirmed: bool) -> float:
    """Return the score that orders, rounded to 1e-4.

    Parameters
    ----------
    own, page : Evidence
        Of the passage, and the strongest of its page.
    """
    value = _sum(own, weights.own) + _sum(page, weights.page)
    return round(value + weights.confirmed * confirmed, 4)


def enough(best: Best, thresholds: Thresholds, *, vectors: bool) -> bool:
    """Decide on raw evidence whether anything was found."""
    elsewhere = min(best.elsewhere, 2)
    sure = best.evidence.coverage >= thresholds.sure
    if not elsewhere and (sure or (best.named and not best.unconfirmed)):
        return True
    if not vectors:
        value = _sum(best.evidence, thresholds.words)
        return value + thresholds.words_elsewhere * elsewhere >= thresholds.words_least
    value = (
        _sum(best.evidence, thresholds.weights)
        + thresholds.bm25 * best.bm25
        + thresholds.unknown * best.unknown
        + thresholds.elsewhere * elsewhere
    )
    return value >= thresholds.least + thresholds.unconfirmed * best.unconfirmed


def _sum(evidence: Evidence, weights: Evidence) -> float:
    return math.fsum(
        value * weight for value, weight in zip(evidence, weights, strict=True)
    )
