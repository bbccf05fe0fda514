"""Gathering candidates and the raw evidence for each of them, all alike."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from assistant.library.asked import Asked, folded
from assistant.library.fusion import (
    Best,
    Evidence,
    coverage,
    names_all,
    rarity,
    strongest,
)
from assistant.library.intake import key_codes
from assistant.library.lookup import Found, Lookup
from assistant.library.types import Document
from assistant.library.vectors import VectorIndex

CANDIDATES = 80
"""Passages that keywords, codes and vectors each may name."""


@dataclass(frozen=True, slots=True)
class Gathered:
    """The candidates of one question."""

    found: Mapping[int, Found]
    evidence: Mapping[int, Evidence]
    """Passage id -> what speaks for it."""
    best: Best
    missing: tuple[str, ...]
    """Codes, counts and figures of which no searched passage names any."""


@dataclass(frozen=True, slots=True)
class Vectors:
    """The question as typed and in the words of print, as unit vectors."""

    index: VectorIndex
    typed: NDArray[np.float32]
    printed: NDArray[np.float32]


def gather(
    lookup: Lookup,
    question: Asked,
    vectors: Vectors | None,
    documents: Mapping[int, Document],
    *,
    unconfirmed: bool = False,
) -> Gathered:
    """Return every candidate among the documents, with its evidence.

    Parameters
    ----------
    vectors : Vectors or None
        None searches keywords and codes only.
    unconfirmed : bool
        The unit is told, and no document surely applies to it.
    """
    gathering = _Gathering(lookup, question, vectors, documents)
    gathering.unconfirmed = unconfirmed
    return gathering.gathered()


class _Gathering:
    """One question over one set of documents."""

    def __init__(
        self,
        lookup: Lookup,
        question: Asked,
        vectors: Vectors | None,
        documents: Mapping[int, Document],
    ) -> None:
        self.lookup = lookup
        self.question = question
        self.vectors = vectors
        self.documents = documents
        self.unconfirmed = False
        named = (*question.codes, *question.loose)
        self.coded = lookup.having_code(named, documents)
        self.wanted = [
            code for code in named if code in question.codes or self.coded[code]
        ]
        self.standing: dict[str, frozenset[int]] = {}

    def gathered(self) -> Gathered:
        """Gather it all."""
        typed = self._keyword(self.question.words)
        both = (*self.question.words, *self.question.printed)
        printed = self._keyword(both) if self.question.printed else typed
        ids = sorted({*typed, *printed, *self._by_code(), *self._near()})
        found = self.lookup.passages(ids)
        cosines = self._cosines(ids)
        asked_for = self._weighed(self.question.plain, self.wanted)
        in_print = self._weighed(self.question.printed)
        evidence = {}
        for place, key in enumerate(ids):
            evidence[key] = Evidence(
                **{kind: values[place] for kind, values in cosines.items()},
                coverage=_covered(asked_for, key),
                coverage_print=_covered(in_print, key),
                words=_share(typed, key),
                words_print=_share(printed, key),
                code=self._codes(key),
                key_code=self._as_key(found[key]),
            )
        return Gathered(found, evidence, self._best(evidence, typed), self._missing())

    def _keyword(self, words: Sequence[str]) -> dict[int, float]:
        return dict(self.lookup.keyword(words, self.documents, CANDIDATES))

    def _near(self) -> list[int]:
        if self.vectors is None:
            return []
        return [
            key
            for vector in (self.vectors.typed, self.vectors.printed)
            for key, _ in self.vectors.index.nearest(vector, self.documents, CANDIDATES)
        ]

    def _cosines(self, ids: Sequence[int]) -> dict[str, list[float]]:
        if self.vectors is None:
            return {}
        index = self.vectors.index
        both = np.stack([self.vectors.typed, self.vectors.printed])
        whole = index.cosines(both, ids)
        # A passage of one line has no vector of that line but its own.
        lines = np.maximum(index.line_cosines(both, ids), whole)
        return {
            "cosine": _rounded(whole[0]),
            "cosine_print": _rounded(whole[1]),
            "line": _rounded(lines[0]),
            "line_print": _rounded(lines[1]),
        }

    def _by_code(self) -> list[int]:
        """Passages with the most of the codes asked for, the rarest counting most."""
        weight: dict[int, float] = {}
        for passages in self.coded.values():
            for key in passages:
                weight[key] = weight.get(key, 0.0) + 1 / len(passages)
        return sorted(weight, key=lambda key: (-weight[key], key))[:CANDIDATES]

    def _codes(self, key: int) -> float:
        named = sum(1 for code in self.wanted if key in self.coded[code])
        return round(named / len(self.wanted), 6) if self.wanted else 0.0

    def _as_key(self, found: Found) -> float:
        if not self.wanted:
            return 0.0
        keys = key_codes(found.passage)
        named = sum(1 for code in self.wanted if code in keys)
        return round(named / len(self.wanted), 6)

    def _having(self, word: str) -> frozenset[int]:
        if word not in self.standing:
            self.standing[word] = self.lookup.having(word, self.documents)
        return self.standing[word]

    def _weighed(
        self, words: Sequence[str], codes: Sequence[str] = ()
    ) -> dict[str, tuple[float, frozenset[int]]]:
        """Return how rare each word and code is, and the passages that have it."""
        standing = {word: self._having(word) for word in words}
        standing |= {code: self.coded[code] for code in codes}
        total = self.lookup.passage_count(self.documents)
        return {name: (rarity(total, len(has)), has) for name, has in standing.items()}

    def _best(
        self, evidence: Mapping[int, Evidence], typed: Mapping[int, float]
    ) -> Best:
        words = self.question.plain
        unknown = sum(1 for word in words if not self.lookup.knows(word))
        return Best(
            evidence=strongest(list(evidence.values())),
            bm25=max(typed.values(), default=0.0),
            unknown=unknown / len(words) if words else 0.0,
            elsewhere=len(self._nowhere(self.question.elsewhere)),
            named=names_all(evidence.values()),
            unconfirmed=self.unconfirmed,
        )

    def _nowhere(self, words: Collection[str]) -> list[str]:
        """Plain words of which the searched documents have not one part."""
        return [
            word
            for word in words
            if not any(self._having(part) for part in folded(word).split())
        ]

    def _missing(self) -> tuple[str, ...]:
        """Codes and counts are judged apart: "E4, then E9" is answered for E4."""
        counts = [code for code in self.question.codes if code.startswith("#")]
        codes = [code for code in self.question.codes if not code.startswith("#")]
        missing: list[str] = []
        for kind in (codes, counts):
            if not any(self.coded[code] for code in kind):
                missing += kind
        return (*missing, *self._nowhere(self.question.figures))


def _covered(weighed: Mapping[str, tuple[float, frozenset[int]]], key: int) -> float:
    weights = {name: weight for name, (weight, _) in weighed.items()}
    present = [name for name, (_, has) in weighed.items() if key in has]
    return round(coverage(weights, present), 6)


def _share(scores: Mapping[int, float], key: int) -> float:
    best = max(scores.values(), default=0.0)
    return round(scores.get(key, 0.0) / best, 6) if best > 0 else 0.0


def _rounded(values: NDArray[np.float64]) -> list[float]:
    return [float(value) for value in np.round(values, 6)]
