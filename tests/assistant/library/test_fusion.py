"""Sums of evidence, worked by hand."""

from __future__ import annotations

import math

import pytest

from assistant.library.fusion import (
    Best,
    Evidence,
    Thresholds,
    Weights,
    coverage,
    enough,
    fused,
    names_all,
    rarity,
    strongest,
)


def best(evidence: Evidence, **more: float) -> Best:
    against = {"bm25": 0.0, "unknown": 0.0, "elsewhere": 0, **more}
    return Best(evidence, named=False, unconfirmed=False, **against)  # type: ignore[arg-type]


def test_the_order_is_the_weighted_sum_of_passage_and_page() -> None:
    weights = Weights(own=Evidence(cosine=2.0), page=Evidence(line=0.5), confirmed=0.25)
    own, page = Evidence(cosine=0.4, line=0.1), Evidence(cosine=0.9, line=0.6)

    # 2 x 0.4 + 0.5 x 0.6 = 1.1, and 0.25 for a document that surely applies
    assert fused(own, page, weights, confirmed=False) == 1.1
    assert fused(own, page, weights, confirmed=True) == 1.35


def test_scores_are_rounded_to_four_places() -> None:
    weights = Weights(own=Evidence(cosine=1.0), page=Evidence())

    assert fused(Evidence(cosine=1 / 3), Evidence(), weights, confirmed=False) == 0.3333


def test_the_strongest_evidence_is_taken_kind_by_kind() -> None:
    found = strongest([Evidence(cosine=0.4, code=1.0), Evidence(cosine=0.7)])

    assert found == Evidence(cosine=0.7, code=1.0)
    assert strongest([]) == Evidence()


def test_found_is_decided_at_the_threshold() -> None:
    thresholds = Thresholds(
        weights=Evidence(cosine=1.0), bm25=0.1, unknown=-0.5, elsewhere=-1.0, least=0.5
    )

    assert enough(best(Evidence(cosine=0.5)), thresholds, vectors=True)
    assert not enough(best(Evidence(cosine=0.49)), thresholds, vectors=True)
    assert enough(best(Evidence(cosine=0.2), bm25=3.0), thresholds, vectors=True)
    assert not enough(best(Evidence(cosine=0.6), unknown=0.5), thresholds, vectors=True)
    assert not enough(best(Evidence(cosine=0.9), elsewhere=1), thresholds, vectors=True)


def test_without_vectors_words_decide() -> None:
    thresholds = Thresholds(
        words=Evidence(coverage=1.0), words_elsewhere=-1.0, words_least=0.6
    )

    assert enough(best(Evidence(coverage=0.6)), thresholds, vectors=False)
    assert not enough(best(Evidence(coverage=0.5)), thresholds, vectors=False)


def test_nearly_all_that_was_asked_is_enough_but_not_beside_a_foreign_word() -> None:
    thresholds = Thresholds(least=99.0, sure=0.75)
    told = Evidence(coverage=0.8)

    assert enough(best(told), thresholds, vectors=True)
    assert not enough(best(told, elsewhere=1), thresholds, vectors=True)


def test_a_passage_that_names_all_codes_is_enough_when_it_has_half_the_rest() -> None:
    assert names_all([Evidence(code=1.0, coverage=0.5)])
    assert not names_all([Evidence(code=1.0, coverage=0.4)])
    assert not names_all([Evidence(code=0.5, coverage=0.9)])


def test_rarity_is_the_idf_of_bm25_with_one_added() -> None:
    # ln(1 + (10 - 1 + 0.5) / (1 + 0.5)) = ln(7.3333), by hand
    assert rarity(10, 1) == pytest.approx(math.log(22 / 3))


def test_coverage_weighs_words() -> None:
    weights = {"rare": 3.0, "common": 1.0}

    assert coverage(weights, ["common"]) == 0.25
    assert coverage({}, []) == 0.0
