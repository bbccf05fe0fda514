"""Gives each time of a text to the event it belongs to."""

from __future__ import annotations

from dataclasses import replace

from assistant.facts import (
    BreakerFact,
    HappeningFact,
    LampFact,
    PartFact,
    ProtectionStopFact,
    ReadingFact,
    ResetFact,
    SettingFact,
)
from assistant.language.claims import Claim
from assistant.language.times import TimeSpan
from assistant.language.tokens import Tokens

_EVENTS = (
    HappeningFact,
    ResetFact,
    ProtectionStopFact,
    BreakerFact,
    PartFact,
    SettingFact,
)
_SEEN = (LampFact, ReadingFact)


def timed(view: Tokens, claims: list[Claim], times: list[TimeSpan]) -> list[Claim]:
    """Return the claims with times; a time goes to the nearest event, once.

    An event of the same sentence comes first, then one of an earlier sentence, then
    a lamp or reading of the same clause. Two facts of the same words, such as a power
    cut and its end, share the time.
    """
    out = list(claims)
    given: set[int] = set()
    for time in times:
        at = _nearest(view, out, time, given)
        if at is None:
            more = _one_more_stop(view, out, time)
            if more is not None:
                given.add(len(out))
                out += [more, Claim(time.start, time.end, None)]
            continue
        twins = [
            index
            for index, claim in enumerate(out)
            if (claim.start, claim.end) == (out[at].start, out[at].end)
            and isinstance(claim.item, type(out[at].item))
            and isinstance(claim.item, HappeningFact)
        ] or [at]
        counted = isinstance(out[at].item, ProtectionStopFact | BreakerFact)
        if counted and _is_today(view, time):
            out[at] = _since(out[at], time)
            twins = []
        for index in twins:
            given.add(index)
            out[index] = _at(out[index], time)
        out.append(Claim(time.start, time.end, None))
    return out


def _one_more_stop(view: Tokens, claims: list[Claim], time: TimeSpan) -> Claim | None:
    """Return the stop of a further time: "stopped at 10:05, 10:20 and 10:40".

    Where the number was told, as many times as that stand for it.
    """
    start, end = view.sentence(time.start)
    for index, claim in enumerate(claims):
        fact = claim.item
        if not isinstance(fact, ProtectionStopFact) or fact.at is None:
            continue
        if not (start <= claim.start < end) or fact.apart_s is not None:
            continue
        left = tuple(sorted({max(1, number - 1) for number in fact.count}))
        claims[index] = replace(claim, item=fact.model_copy(update={"count": left}))
        one = fact.model_copy(update={"at": time.moment, "count": (1,)})
        return Claim(time.start, time.end, one)
    return None


def _since(claim: Claim, time: TimeSpan) -> Claim:
    if not isinstance(claim.item, ProtectionStopFact):
        return claim
    return replace(claim, item=claim.item.model_copy(update={"since": time.moment}))


def _nearest(
    view: Tokens, claims: list[Claim], time: TimeSpan, given: set[int]
) -> int | None:
    sentence = view.sentence(time.start)
    clause = view.clause(time.start)
    ranked: list[tuple[int, int, bool, int]] = []
    for index, claim in enumerate(claims):
        if index in given:
            continue
        gap = max(claim.start - time.end, time.start - claim.end, 0)
        ahead = claim.start > time.start
        if isinstance(claim.item, _EVENTS):
            here = sentence[0] <= claim.start < sentence[1]
            if here or claim.end <= time.start:
                ranked.append((0 if here else 1, gap, ahead, index))
        elif isinstance(claim.item, _SEEN) and clause[0] <= claim.start < clause[1]:
            ranked.append((2, gap, ahead, index))
    return min(ranked)[3] if ranked else None


def _is_today(view: Tokens, time: TimeSpan) -> bool:
    """Tell whether a stretch of counting, and not the last event, was meant."""
    return "today" in view.folded[time.start : time.end].split()


def _at(claim: Claim, time: TimeSpan) -> Claim:
    if claim.item is None or isinstance(claim.item, str) or claim.item.at is not None:
        return claim
    return replace(claim, item=claim.item.model_copy(update={"at": time.moment}))
