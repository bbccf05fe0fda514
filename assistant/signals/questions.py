"""Picks the one question that splits what is left best."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence

from assistant.signals.grids import lamp_slot
from assistant.signals.kinds import (
    CountPerWindow,
    DisplayCode,
    EvenBlink,
    GroupThenPause,
    Lamp,
    LampState,
    SeveralLamps,
)
from assistant.signals.observation import Candidate, Observation, Split
from assistant.signals.trains import lamp_of

LEAST_GAIN = 0.05
"""A question expected to tell less, in bit, is not asked."""
FEWEST_ANSWERS = 2
ORDER = (
    "pause",
    "count",
    "colour",
    "label",
    "board",
    "box",
    "code",
    "lamp",
    "mode",
    "unit",
)
"""Of equally good questions the one nearest to the lamp is asked."""

Answers = Mapping[str, frozenset[str]]
"""Global id -> the answers it would bear; an empty set bears every answer."""


def best_question(
    candidates: Sequence[Candidate],
    seen: Sequence[Observation],
    must_ask: str | None = None,
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
    """
    splits = [
        split
        for slot, answers in _slots(candidates, seen).items()
        if (split := _split(slot, answers, candidates)) is not None
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
    bears = _pause if slot == "pause" else _count
    answers: dict[str, set[str]] = {"none": set(), "seen": set()}
    if slot != "pause":
        answers = {}
    for one in candidates:
        for answer in bears(one):
            answers.setdefault(answer, set()).add(one.row.gid)
    options = tuple(
        (answer, tuple(sorted(answers[answer])))
        for answer in sorted(answers, key=_by_size)
    )
    return Split(slot, options, 0.0)


def _preference(split: Split) -> tuple[float, int, str]:
    return (-split.gain_bits, ORDER.index(split.slot.partition(":")[0]), split.slot)


def _slots(
    candidates: Sequence[Candidate], seen: Sequence[Observation]
) -> dict[str, Answers]:
    found: dict[str, Answers] = {}
    if len(seen) == 1:
        found.update(_single_slots(candidates, seen[0]))
    found.update(_lamp_slots(candidates))
    found["mode"] = {
        one.row.gid: _set(one.row.signal.mode if "mode" in one.assumed else None)
        for one in candidates
    }
    if any(one.row.unit_match == "possible" for one in candidates):
        found["unit"] = {
            one.row.gid: _set(one.row.document or one.row.gid.partition("/")[0])
            for one in candidates
        }
    return found


def _set(answer: str | None) -> frozenset[str]:
    return frozenset() if answer is None else frozenset({answer})


def _single_slots(
    candidates: Sequence[Candidate], seen: Observation
) -> dict[str, Answers]:
    """Return what a lamp report leaves open about the one lamp."""
    found: dict[str, Answers] = {}
    if seen.pause is None:
        found["pause"] = {one.row.gid: _pause(one) for one in candidates}
    counts = {one.row.gid: _count(one) for one in candidates}
    if len(seen.count) != 1 or any("count" in one.assumed for one in candidates):
        found["count"] = counts
    if any("glyph" in one.assumed for one in candidates):
        found["code"] = {one.row.gid: _code(one) for one in candidates}
    for slot in ("colour", "box", "board", "label"):
        told = getattr(seen, slot)
        near = any(slot in one.assumed for one in candidates)
        if len(told) != 1 or near:
            found[slot] = {one.row.gid: _identity(one, slot) for one in candidates}
    return found


def _pause(candidate: Candidate) -> frozenset[str]:
    match candidate.row.signal:
        case EvenBlink():
            return frozenset({"none"})
        case CountPerWindow() | GroupThenPause():
            return frozenset({"seen"})
        case _:
            return frozenset()


def _count(candidate: Candidate) -> frozenset[str]:
    signal = candidate.row.signal
    if isinstance(signal, CountPerWindow | GroupThenPause):
        return frozenset({str(signal.count)})
    return frozenset()


def _code(candidate: Candidate) -> frozenset[str]:
    signal = candidate.row.signal
    return _set(signal.code if isinstance(signal, DisplayCode) else None)


def _identity(candidate: Candidate, slot: str) -> frozenset[str]:
    lamp: Lamp | None = lamp_of(candidate.row.signal)
    return _set(getattr(lamp, slot) if lamp is not None else None)


def _lamp_slots(candidates: Sequence[Candidate]) -> dict[str, Answers]:
    """Return the lamps of grid rows that were not reported."""
    names = {
        slot for one in candidates for slot in one.assumed if slot.startswith("lamp:")
    }
    return {
        name: {one.row.gid: _lamp_answer(one, name) for one in candidates}
        for name in sorted(names)
    }


def _lamp_answer(candidate: Candidate, name: str) -> frozenset[str]:
    signal = candidate.row.signal
    if not isinstance(signal, SeveralLamps):
        return frozenset()
    return frozenset(
        describe(entry)
        for entry in signal.lamps
        if lamp_slot(entry.lamp) == name and entry.state != "any"
    )


def describe(entry: LampState) -> str:
    """Return a lamp's state as an answer: on, off, flash or a number of flashes."""
    return f"{entry.count} flashes" if entry.state == "count" else entry.state


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
