"""Gathering candidates and the raw evidence for each of them, all alike."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from assistant.library.asked import Asked
from assistant.library.fusion import Evidence, coverage, rarity, reciprocal_rank
from assistant.library.lookup import Lookup
from assistant.library.types import Document
from assistant.library.vectors import VectorIndex

CANDIDATES = 60
"""Passages that keywords, codes and vectors each may name."""


@dataclass(frozen=True, slots=True)
class Gathered:
    """The candidates of one question."""

    evidence: Mapping[int, Evidence]
    """Passage id -> what speaks for it."""
    having: Mapping[str, frozenset[int]]
    """Code or count asked for -> every searched passage that names it."""


def gather(
    lookup: Lookup,
    index: VectorIndex | None,
    question: Asked,
    vector: NDArray[np.float32] | None,
    documents: Mapping[int, Document],
) -> Gathered:
    """Return every candidate among the documents, with its evidence.

    Parameters
    ----------
    vector : array of shape (dimension,), or None
        The question's unit vector; None searches keywords and codes only.
    """
    having = lookup.having_code((*question.codes, *question.loose), documents)
    lists = [lookup.keyword(question.words, documents, CANDIDATES)]
    if index is not None and vector is not None:
        lists.append(index.nearest(vector, documents, CANDIDATES))
    ranks = reciprocal_rank(lists)
    ids = sorted({*ranks, *_by_code(having)})
    cosines = [0.0] * len(ids)
    if index is not None and vector is not None:
        cosines = [float(each) for each in index.cosines(vector, ids)]
    covered = _covered(lookup, question, having, ids)
    codes = _code_share(question, having)
    return Gathered(
        evidence={
            key: Evidence(
                cosine=round(cosine, 6),
                coverage=covered[key],
                code=codes.get(key, 0.0),
                ranks=ranks.get(key, 0.0),
            )
            for key, cosine in zip(ids, cosines, strict=True)
        },
        having=having,
    )


def _by_code(having: Mapping[str, frozenset[int]]) -> list[int]:
    """Passages with the most of the codes asked for, the rarest code counting most."""
    weight: dict[int, float] = {}
    for passages in having.values():
        for key in passages:
            weight[key] = weight.get(key, 0.0) + 1 / len(passages)
    return sorted(weight, key=lambda key: (-weight[key], key))[:CANDIDATES]


def _code_share(
    question: Asked, having: Mapping[str, frozenset[int]]
) -> dict[int, float]:
    """Share of the codes asked for that each passage names.

    What only may be a code counts where the library has it.
    """
    wanted = _wanted(question, having)
    share: dict[int, float] = {}
    for code in wanted:
        for key in having[code]:
            share[key] = share.get(key, 0.0) + 1 / len(wanted)
    return {key: round(value, 6) for key, value in share.items()}


def _covered(
    lookup: Lookup,
    question: Asked,
    having: Mapping[str, frozenset[int]],
    ids: list[int],
) -> dict[int, float]:
    """Share of words and codes that each passage has; the codes' letters count once."""
    standing = {word: lookup.having(word) for word in question.plain}
    standing |= {code: having[code] for code in _wanted(question, having)}
    total = lookup.passage_count()
    weights = {name: rarity(total, len(found)) for name, found in standing.items()}
    return {
        key: round(
            coverage(weights, [name for name in weights if key in standing[name]]), 6
        )
        for key in ids
    }


def _wanted(question: Asked, having: Mapping[str, frozenset[int]]) -> list[str]:
    """Codes surely asked for, and those that may be where the library has them."""
    return [code for code in having if code in question.codes or having[code]]
