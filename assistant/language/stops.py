"""Stops by protection, and breaker trips: two different things."""

from __future__ import annotations

import re

from assistant.facts import BreakerFact, ContextFact, ProtectionStopFact
from assistant.language.claims import Claim, apart, either, negated, rx
from assistant.language.durations import lasting, seconds
from assistant.language.good_runs import SEVERAL, short_runs
from assistant.language.how_often import how_often, often
from assistant.language.lexicon.numbers import ORDINALS
from assistant.language.stop_details import (
    FAILED_START,
    device,
    failed_starts,
    stop_details,
)
from assistant.language.tokens import Tokens, fold
from assistant.language.vocabulary import Vocabulary

EVENTS = (
    "high pressure", "low pressure", "overcurrent", "over current", "overload",
    "discharge temperature", "high discharge", "over temperature", "overheat",
    "low voltage", "over voltage", "high head", "locked rotor", "freeze protection",
)  # fmt: skip
"""Protections that literature commonly counts (common practice, no source)."""
_ALIASES = {"over current": "overcurrent", "high head": "high pressure",
            "high discharge": "discharge temperature"}  # fmt: skip
_OR = r"(?: (?:or|to|-|maybe) (?P<m>[0-9]{1,2}|twice)(?: times| x)?)?"
_STOP = (
    r"(?:stopped|stops|stop|shut down|shuts down|shut off|cut out|cuts out|kicked out|"
    r"kicks out|tripped|trips|trip|dropped out|went out|gone out|locked|quit|knocked "
    r"off|faulted|fails|failed|tripping|goes off|went off|restarted|restarts|opened|"
    r"opens)"
)
_ORDINAL = either(ORDINALS)
_BREAKER = rx(
    r"(?:tripped|trips|tripping|popped|pops|blew|kicked|threw|throws|blown|knocked)(?: "
    r"off| out)? (?:the |my |its |it is |a )?(?:main |outdoor )?breaker(?: (?:again "
    rf")?{often('n')})?"
    r"|breaker (?:has |just |is |keeps |was |had |already |on it )*(?:tripped|trips|"
    r"tripping|popped|pops|blew|blown|kicked|went|kicks)(?: off| out)?(?: (?:again "
    rf")?{often('k')})?"
    rf"|{often('j')} breaker trips?"
    r"|blew (?:the |a |my )?fuse|fuse (?:is |has |just )*(?:blew|blown|popped)"
)
_BREAKER_ONLY = rx(r"breaker|fuse")
_COUNTED = rx(
    rf"(?:it |she |unit |has |is |been |already |just )*{_STOP} (?:again )?(?:about |"
    rf"like |maybe )?{often('n')}{_OR}(?! (?:min|sec|hour|v|k|amp|of the))"
    r"(?: (?:now|today|already|so far))?"
    rf"|{often('k')} (?:protection |safety |pressure )?(?:stops|trips|"
    r"shutdowns|cut ?outs)"
)
_TIMES = rx(
    rf"{often('n', '[0-9]{1,2}(?= times| or | to | - )')}(?: times)?(?: (?:or|to|-|"
    r"maybe) (?P<m>[0-9]{1,2}|twice)(?: times)?)?"
)
_NTH = rx(
    rf"(?P<nth>{_ORDINAL}) (?:time|stop|trip|shutdown)(?: (?:it |she |today|now|this "
    r"morning|this hour|already|that|has|is|been|done|did|in a row|running|since|"
    r"stopped|shut down|tripped|kicked out))*"
)
_NOT_NTH = rx(r"first time|second time it (?:will|would)|next time")
_APART = rx(
    rf"{lasting()} (?:apart|between(?: them| each| trips| stops)?|in between)"
    rf"|every {lasting('k')}(?= |$)"
)
_AS_OFTEN = r"twice|[0-9]+ times|(?:a )?(?:couple(?: of)?|few) times"
_ON = (
    r"(?:on|by|for|with|from|due to|because of|says|saying|its|it is|off on|out on|"
    r"trips?|stops?|protection)"
)
_LOCKED = rx(
    r"(?:locked out|locked up on (?:a )?fault|in (?:a )?(?:hard |soft )?lock ?out|hard "
    r"lockout|lockout mode|gone into lockout|went into lockout|went to lockout)(?! "
    r"(?:tag|tagged))|will not (?:take a |accept a )?(?:reset|clear)|would not "
    r"(?:clear|reset)|(?:does not|did not|can not get it to|refuses to) (?:clear|reset)"
)
_NOT_LOCKED = rx(r"(?:is |it is |are )?not (?:in )?(?:locked out|lock ?out|locked)")
_TAGGED = rx(r"locked out (?:and |, )?tagged(?: out)?|loto")
_HABIT = rx(
    r"keeps (?:on )?(?:[a-z]+ing)|over and over(?: again)?|again and again|(?:each|"
    r"every)"
    r"(?: single)? (?:time|start)"
)


def stops(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim breaker trips, protection stops with count and spacing, and lockout."""
    breaker = [
        Claim(*match.span(), BreakerFact(count=_breaker_count(match)))
        for match in _BREAKER.finditer(view.folded)
        if not negated(view, match.start()) and not _asks(view, match)
    ][:1]
    told = [] if breaker else _stops(view, vocabulary)
    short = [] if breaker or told else short_runs(view)
    return [*apart([*breaker, *told, *_lockouts(view)]), *short]


def _asks(view: Tokens, match: re.Match[str]) -> bool:
    start, _ = view.clause(match.start())
    return bool(re.search(r"(?<!\S)(?:will|could|can|if|why|what)(?!\S)",
                          view.folded[start : match.start()]))  # fmt: skip


def _breaker_count(match: re.Match[str]) -> int:
    word = match["n"] or match["k"] or match["j"]
    return max(1, min(how_often(word))) if word else 1


def _stops(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    event = _event(view, vocabulary)
    count = _count(view, event)
    starts = failed_starts(view)
    if starts is not None:
        event = (*starts[:2], FAILED_START)
        count = (*starts[:2], how_often(starts[2]))
    named = device(view, vocabulary)
    if count is None and event is None:
        return []
    spacing = _spacing(view)
    parts = [part for part in (count, event, spacing) if part]
    start = min(part[0] for part in parts)
    end = max(part[1] for part in parts)
    habit = SEVERAL if _HABIT.search(view.folded) else (1,)
    numbers = count[2] if count else habit
    fact = ProtectionStopFact(
        event=event[2] if event else None,
        count=numbers,
        apart_s=spacing[2] if spacing else None,
        **stop_details(view),
    )
    if named is not None:
        told = {"device": named[0], "event": fact.event or named[1]}
        fact = fact.model_copy(update=told)
    return [Claim(start, end, fact)]


def _count(
    view: Tokens, event: tuple[int, int, str] | None
) -> tuple[int, int, tuple[int, ...]] | None:
    """Find "stopped twice", "third time today"; "tripped twice" names a protection."""
    for match in _COUNTED.finditer(view.folded):
        bare_trip = "trip" in match[0] and event is None
        start, end = view.sentence(match.start())
        breaker = _BREAKER_ONLY.search(view.folded, start, end)
        if negated(view, match.start()) or bare_trip or breaker:
            continue
        low = how_often(match["n"] or match["k"])
        high = how_often(match["m"]) if match["m"] else ()
        return match.start(), match.end(), tuple(sorted({*low, *high}))
    if event:
        for match in _TIMES.finditer(view.folded, *view.sentence(event[0])):
            high = how_often(match["m"]) if match["m"] else ()
            numbers = {*how_often(match["n"]), *high}
            return match.start(), match.end(), tuple(sorted(numbers))
    for match in _NTH.finditer(view.folded):
        start, end = view.sentence(match.start())
        skip = _NOT_NTH.match(view.folded, match.start())
        if not skip and not _BREAKER_ONLY.search(view.folded, start, end):
            return match.start(), match.end(), (ORDINALS[match["nth"]],)
    return None


def _event(view: Tokens, vocabulary: Vocabulary) -> tuple[int, int, str] | None:
    """Find which protection stopped it: "went out on high pressure"."""
    names = _names(vocabulary)
    pattern = rx(
        rf"(?:{_STOP}(?: (?:again|{_AS_OFTEN}|now|today))* {_ON} (?:a |the "
        rf")?)(?P<event>{either(names)})|(?P<event2>{either(names)}) (?:protection "
        r")?(?:trips?|tripped|stops?|lockout|cut ?outs?|shutdowns?|again|opened|opens|"
        r"openings?)"
    )
    for match in pattern.finditer(view.folded):
        if not negated(view, match.start()):
            return *match.span(), names[match["event"] or match["event2"]]
    return None


def _names(vocabulary: Vocabulary) -> dict[str, str]:
    """Return what people call a protection, with the name that counts for it."""
    names = {fold(event): event for event in vocabulary.protection_events}
    for event in EVENTS:
        names.setdefault(
            event, names.get(_ALIASES.get(event, event), _ALIASES.get(event, event))
        )
    return names


def named_event(view: Tokens, vocabulary: Vocabulary) -> tuple[int, int, str] | None:
    """Find the bare name of a protection, as an answer gives it."""
    names = _names(vocabulary)
    match = rx(either(names)).search(view.folded)
    if match is None or negated(view, match.start()):
        return None
    return *match.span(), names[match[0]]


def _spacing(view: Tokens) -> tuple[int, int, tuple[float, float]] | None:
    match = _APART.search(view.folded)
    if match is None:
        return None
    return *match.span(), seconds(match, "" if match["unit"] else "k")


def _lockouts(view: Tokens) -> list[Claim]:
    open_again = _NOT_LOCKED.search(view.folded)
    if open_again:
        fact = ContextFact(name="locked out", value=False)
        return [Claim(*open_again.span(), fact)]
    for match in _LOCKED.finditer(view.folded):
        if not _TAGGED.search(view.folded) and not _asks(view, match):
            fact = ContextFact(name="locked out", value=True)
            return [Claim(*match.span(), fact)]
    return []
