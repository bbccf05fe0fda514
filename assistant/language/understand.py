"""Text to facts and acts: composes the families, in order, over one folded text."""

from __future__ import annotations

from datetime import datetime, timedelta
from typing import get_args

from assistant.facts import Act, ComplaintFact, Fact, LampFact, Understood
from assistant.language.answers import answer
from assistant.language.asked import Asked
from assistant.language.asks import asks
from assistant.language.attempts import attempts
from assistant.language.bypass import bypasses
from assistant.language.claims import Claim, Matcher
from assistant.language.complaints import complaints
from assistant.language.context import contexts
from assistant.language.corrections import corrected_unit
from assistant.language.good_runs import good_runs
from assistant.language.happenings import happenings
from assistant.language.hazards import hazards
from assistant.language.lamps import lamps
from assistant.language.looks import looks
from assistant.language.measured import measured
from assistant.language.parts import parts
from assistant.language.people import modes, people
from assistant.language.plate import plate
from assistant.language.readings import readings
from assistant.language.resets import resets
from assistant.language.stops import stops
from assistant.language.stretches import stretches
from assistant.language.timed import timed
from assistant.language.times import Clock, find_times
from assistant.language.tokens import MASK, Tokens, tokens
from assistant.language.vocabulary import Pending, Vocabulary

__all__ = ["PARSER_VERSION", "Pending", "Vocabulary", "understand"]

NO_WORDS = Vocabulary()
PARSER_VERSION = "2"
"""Stored with every text, so that an old job keeps the facts it was given."""

FAMILIES: tuple[tuple[Matcher, ...], ...] = (
    (hazards,),
    (bypasses,),
    (plate,),
    (complaints,),
    (parts,),
    (resets,),
    (stops,),
    (good_runs,),
    (attempts,),
    (modes,),
    (people,),
    (happenings,),
    (contexts, readings),
    (looks,),
    (lamps,),
)
"""Earlier families take their words from later ones, unless they share them; families
of one group read the same words."""


def understand(
    text: str,
    *,
    now: datetime,
    utc_offset_minutes: int = 0,
    pending: Pending | None = None,
    vocabulary: Vocabulary = NO_WORDS,
) -> Understood:
    """Return what a text tells and asks; any text gives an answer.

    Parameters
    ----------
    text : str
        As a person wrote it.
    now : datetime
        When it was written, aware; times in the text are counted back from it.
    utc_offset_minutes : int
        The writer's clock ahead of UTC, for "at ten past nine".
    pending : Pending, optional
        What was asked last; short answers are read in its light. A fact that only
        fills a lamp's colour, box, board or label has state ``blink``; one that
        only fills count or pause has ``count``.
    vocabulary : Vocabulary
        Words of the packs in force.

    Examples
    --------
    >>> from datetime import UTC
    >>> at = datetime(2024, 6, 3, 14, 0, tzinfo=UTC)
    >>> found = understand("amber goes 6 then it rests", now=at)
    >>> found.facts[0].observation.count, found.facts[0].observation.pause
    ((6,), 'seen')
    """
    clock = Clock(now, timedelta(minutes=utc_offset_minutes))
    parts_read, unread = stretches(text)
    found = [
        _read(part, None if at else pending, vocabulary, clock)
        for at, part in enumerate(parts_read)
    ]
    left = [part.left_over for part in found if part.left_over]
    return Understood(
        facts=tuple(fact for part in found for fact in part.facts),
        acts=_ordered({act for part in found for act in part.acts}),
        left_over=" ".join([*left, unread] if unread else left),
    )


def _read(
    text: str, pending: Pending | None, vocabulary: Vocabulary, clock: Clock
) -> Understood:
    whole = tokens(text)
    claims = _answers(whole, pending, vocabulary, clock)
    view = _masked(whole, claims)
    times = find_times(view, clock)
    view = view.without((span.start, span.end) for span in times)
    for group in FAMILIES:
        found = [claim for family in group for claim in family(view, vocabulary)]
        claims += found
        view = _masked(view, found)
    claims = timed(whole, _lamps_first(claims), times)
    claims += asks(whole, vocabulary)
    return _composed(whole, claims)


def _answers(
    view: Tokens, pending: Pending | None, vocabulary: Vocabulary, clock: Clock
) -> list[Claim]:
    if pending is None:
        return []
    asked = Asked(view, pending, vocabulary, clock)
    return answer(asked) or measured(asked) or corrected_unit(view, pending)


def _masked(view: Tokens, claims: list[Claim]) -> Tokens:
    return view.without((c.start, c.end) for c in claims if not c.shares)


def _lamps_first(claims: list[Claim]) -> list[Claim]:
    """Drop a complaint that stands on the words of a lamp: "the amber is dead"."""
    lit = [c for c in claims if isinstance(c.item, LampFact)]
    return [
        claim
        for claim in claims
        if not isinstance(claim.item, ComplaintFact)
        or all(claim.end <= lamp.start or lamp.end <= claim.start for lamp in lit)
    ]


def _composed(whole: Tokens, claims: list[Claim]) -> Understood:
    ordered = sorted(claims, key=lambda claim: claim.start)
    facts: list[Fact] = []
    acts: set[Act] = set()
    for claim in ordered:
        if isinstance(claim.item, str):
            acts.add(claim.item)
        elif claim.item is not None:
            words = whole.words(claim.start, claim.end)
            facts.append(claim.item.model_copy(update={"words": words}))
    left = whole.without((claim.start, claim.end) for claim in ordered)
    return Understood(
        facts=tuple(facts),
        acts=_ordered(_settled(acts, facts, whole)),
        left_over=left.untaken(),
    )


def _settled(acts: set[Act], facts: list[Fact], whole: Tokens) -> set[Act]:
    """Drop acts that facts make idle, and add what a bare "four greens??" asks."""
    kept = acts - {"dont_know"} if facts else set(acts)
    asked = whole.folded.rstrip(f" {MASK}").endswith("?")
    lamp = any(isinstance(fact, LampFact) for fact in facts)
    if asked and lamp and not any(act.startswith("ask") for act in kept):
        kept.add("ask_meaning")
    return kept


def _ordered(acts: set[Act]) -> tuple[Act, ...]:
    return tuple(act for act in get_args(Act) if act in acts)
