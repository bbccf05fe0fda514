"""Picks the one question that splits what is left best."""

from __future__ import annotations

import math
from collections.abc import Collection, Sequence

from assistant.signals.bearings import Answers, answers_of, count_of, pause_of, short_of
from assistant.signals.observation import Candidate, Observation, Split

LEAST_GAIN = 0.05
"""A question expected to tell less, in bit, is not asked."""
FEWEST_ANSWERS = 2
ORDER = (
    "pause",
    "count",
    "short",
    "long",
    "phase",
    "state",
    "rate",
    "window",
    "emitter",
    "colour",
    "label",
    "board",
    "box",
    "code",
    "sub",
    "display_level",
    "stored",
    "lamp",
    "context",
    "mode",
    "precondition",
    "unit",
)
"""Of equally good questions the one nearest to the lamp is asked."""


def best_question(
    candidates: Sequence[Candidate],
    seen: Sequence[Observation],
    must_ask: str | None = None,
    settled: Collection[str] = (),
) -> Split | None:
    """Return the question with the largest expected fall in entropy, or None.

    Parameters
    ----------
    candidates : sequence of Candidate
        What is left; its weights, made to sum to one, are the shares.
    seen : sequence of Observation
        What has been told already and need not be asked.
    must_ask : str, optional
        A slot to ask whatever it gains, where it splits at all.
    settled : collection of str
        Slots that were looked at often enough.
    """
    splits = [
        split
        for slot, answers in answers_of(candidates, seen).items()
        if slot not in settled
        and (split := _split(slot, answers, candidates)) is not None
    ]
    for split in splits:
        if split.slot == must_ask:
            return split
    worth = [split for split in splits if split.gain_bits >= LEAST_GAIN]
    return min(worth, key=_preference, default=None)


def plain_question(slot: str, candidates: Sequence[Candidate]) -> Split:
    """Return the question about `slot` that must be answered before anything is read.

    It is asked even where it cannot split the rows that are left: the other answer
    then leaves none.
    """
    bears = {"pause": pause_of, "short": short_of}.get(slot, count_of)
    answers: dict[str, set[str]] = {"none": set(), "seen": set()}
    if slot != "pause":
        answers = {}
    for one in candidates:
        for answer in bears(one.row.signal):
            answers.setdefault(answer, set()).add(one.row.gid)
    options = tuple(
        (answer, tuple(sorted(answers[answer])))
        for answer in sorted(answers, key=_by_size)
    )
    return Split(slot, options, 0.0)


def _preference(split: Split) -> tuple[float, int, str]:
    return (-split.gain_bits, ORDER.index(split.slot.partition(":")[0]), split.slot)


def _split(
    slot: str, answers: Answers, candidates: Sequence[Candidate]
) -> Split | None:
    """Return what a question would leave, or None when it splits nothing.

    A candidate that bears several answers shares its weight among them.
    """
    named = frozenset(answer for bears in answers.values() for answer in bears)
    if len(named) < FEWEST_ANSWERS:
        return None
    total = sum(one.weight for one in candidates)
    shares: dict[str, dict[str, float]] = {answer: {} for answer in named}
    for one in candidates:
        bears = answers[one.row.gid] or named
        for answer in bears:
            shares[answer][one.row.gid] = one.weight / total / len(bears)
    before = _entropy([one.weight / total for one in candidates])
    after = sum(
        sum(held.values()) * _entropy([w / sum(held.values()) for w in held.values()])
        for held in shares.values()
        if held
    )
    options = tuple(
        (answer, tuple(sorted(shares[answer])))
        for answer in sorted(named, key=_by_size)
    )
    return Split(slot, options, round(max(0.0, before - after), 9))


def _by_size(answer: str) -> tuple[int, str]:
    """Sort numbers by size, before words."""
    number = answer.partition(" ")[0]
    return (int(number) if number.isdecimal() else 1_000, answer)


def _entropy(shares: Sequence[float]) -> float:
    return -sum(share * math.log2(share) for share in shares if share > 0)
