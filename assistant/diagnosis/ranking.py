"""Causes by weight: start weights, moved by what checks came to."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import log2
from types import MappingProxyType
from typing import Literal

from assistant.checks.kinds import MOVE_FACTOR, Check, Outcome

START_WEIGHT: Mapping[str, float] = MappingProxyType(
    {"common": 6.0, "occasional": 3.0, "rare": 1.0}
)
NONE_OF_THESE = "none-of-these"
"""The open cause: the table may not name what is wrong."""
OPEN_WEIGHT = START_WEIGHT["rare"]
POSSIBLE_FROM = 0.25
"""Share of the top weight from which a cause stands as possible."""
LEVEL_WITH_TOP = 0.9
"""Share of the top weight from which a cause stands beside it as most likely."""

Standing = Literal["most likely", "possible", "less likely"]


@dataclass(frozen=True, slots=True)
class Suspect:
    """One cause under suspicion before any check.

    `share` is how much of the report points to it: 1 for an exact decode, the
    candidate's part of several.
    """

    cause: str
    frequency: str
    share: float = 1.0


@dataclass(frozen=True, slots=True)
class Evidence:
    """One check that came to a result, with the moves it makes (global cause ids)."""

    check: str
    result: str
    factors: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class Ranked:
    """One cause with its normalised weight and standing."""

    cause: str
    weight: float
    standing: Standing


def factors_of(outcome: Outcome, cause_ids: Mapping[str, str]) -> dict[str, float]:
    """Translate an outcome's moves into factors by global cause id.

    Parameters
    ----------
    outcome : Outcome
        As written in the pack.
    cause_ids : mapping of str to str
        Written id -> global id; ids not in it are left out.
    """
    return {
        cause_ids[name]: MOVE_FACTOR[move]
        for name, move in outcome.moves.items()
        if name in cause_ids
    }


def weights(
    suspects: Sequence[Suspect], evidence: Sequence[Evidence]
) -> dict[str, float]:
    """Return the normalised weight of each suspected cause and of the open one.

    Start weights are 6, 3 and 1 for common, occasional and rare, times the share of
    the report; every outcome multiplies; the sum is 1.

    Examples
    --------
    >>> w = weights([Suspect("p/a", "common"), Suspect("p/b", "occasional")], [])
    >>> [round(w[c], 2) for c in ("p/a", "p/b", "none-of-these")]
    [0.6, 0.3, 0.1]
    """
    if not suspects:
        return {}
    raw: dict[str, float] = {}
    for suspect in suspects:
        start = START_WEIGHT[suspect.frequency] * suspect.share
        raw[suspect.cause] = raw.get(suspect.cause, 0.0) + start
    raw[NONE_OF_THESE] = OPEN_WEIGHT
    for found in evidence:
        for cause in raw:
            raw[cause] *= found.factors.get(cause, 1.0)
    total = sum(raw.values())
    return {cause: raw[cause] / total for cause in sorted(raw)}


def rank(
    suspects: Sequence[Suspect], evidence: Sequence[Evidence]
) -> tuple[Ranked, ...]:
    """Order the causes, heaviest first, ties by id; the open cause comes last."""
    by_cause = weights(suspects, evidence)
    named = sorted(
        (cause for cause in by_cause if cause != NONE_OF_THESE),
        key=lambda cause: (-round(by_cause[cause], 9), cause),
    )
    if not named:
        return ()
    top = by_cause[named[0]]
    return tuple(
        Ranked(cause, by_cause[cause], _standing(by_cause[cause], top))
        for cause in named
    )


def _standing(weight: float, top: float) -> Standing:
    if weight >= LEVEL_WITH_TOP * top:
        return "most likely"
    return "possible" if weight >= POSSIBLE_FROM * top else "less likely"


def entropy(by_cause: Mapping[str, float]) -> float:
    """Return the Shannon entropy of normalised weights, in bits.

    Examples
    --------
    >>> entropy({"a": 0.5, "b": 0.5})
    1.0
    """
    return -sum(w * log2(w) for w in by_cause.values() if w > 0)


def expected_fall(
    by_cause: Mapping[str, float], outcomes: Sequence[Mapping[str, float]]
) -> float:
    """Return the expected fall in entropy of doing a check, in bits.

    Parameters
    ----------
    by_cause : mapping of str to float
        Normalised weights.
    outcomes : sequence of mapping of str to float
        For each possible result the factor on each cause (1 where not named). The
        chance of a result under a cause is its factor over the sum of the factors
        of all results under that cause.
    """
    chance = {
        cause: [factors.get(cause, 1.0) for factors in outcomes] for cause in by_cause
    }
    after = 0.0
    for place, factors in enumerate(outcomes):
        likelihood = sum(
            w * chance[cause][place] / sum(chance[cause])
            for cause, w in by_cause.items()
        )
        moved = {cause: w * factors.get(cause, 1.0) for cause, w in by_cause.items()}
        total = sum(moved.values())
        after += likelihood * entropy({c: w / total for c, w in moved.items()})
    return entropy(by_cause) - after


def outcome_factors(
    check: Check, cause_ids: Mapping[str, str]
) -> tuple[dict[str, float], ...]:
    """Return the factors of every written outcome of a check."""
    return tuple(factors_of(outcome, cause_ids) for outcome in check.outcomes)
