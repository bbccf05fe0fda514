"""Runs without a stop: how long, how many cycles; and runs that were cut short."""

from __future__ import annotations

import re

from assistant.facts import GoodRunFact, ProtectionStopFact
from assistant.language.claims import Claim, apart, negated, rx
from assistant.language.durations import ONLY, lasting, seconds
from assistant.language.tokens import Tokens, tokens
from assistant.language.vocabulary import Vocabulary

_WELL = (
    r"(?:fine|ok|okay|good|well|great|clean|normal|normally|perfect|perfectly|without "
    r"(?:a |any )?(?:stop|stops|stopping|trip|trips|tripping|fault|faults|problem|"
    r"problems|issue|issues|hiccup)|with no (?:stop|stops|trip|trips|fault|faults|"
    r"problem|problems|issue|issues)|no (?:stops|trips|faults|problems|issues))"
)
_RAN = r"(?:ran|run|running|runs|worked|went)"
_GOOD = rx(
    rf"{_RAN} (?:just |all |really )*{_WELL} (?:for )?{ONLY}{lasting()}"
    rf"|{_RAN} {ONLY}{lasting('k')} (?:just |all )*{_WELL}"
    rf"|(?P<c>[0-9]{{1,2}}) (?:good|clean|full|whole|complete|normal) cycles?"
    r"|(?P<one>a|one|another) (?:good|clean|full|whole|complete|normal) cycle"
    rf"|{_RAN} (?:just )?(?:fine|ok|okay|well|good|normal|normally) (?:in between|"
    r"between|after that|afterwards|again)"
)
_QUITS = (
    r"(?:quits?|stops|stopped|shuts? (?:off|down)|cuts? out|dies|died|drops? out|"
    r"dropped out|goes off|went off|kicks? (?:off|out)|kicked (?:off|out)|trips|"
    r"tripped|"
    r"tripping|stopping|quitting|cutting out|dropping out|shutting (?:off|down))"
)
_SHORT = rx(
    rf"(?:runs?|ran) {ONLY}{lasting()}(?: ,)?(?: then| and| before it| til| till)*(?: "
    rf"it)? {_QUITS}"
    rf"|{_QUITS}(?: again)?(?: on [a-z]+(?: [a-z]+)?)? {ONLY}{lasting('k')} (?:after|"
    rf"from|into|of) (?:a |the |each |"
    r"every |it |its )*(?:start|starts|starting|started|restart|run|starting up)"
)
_AFTER_START = rx(
    rf"{lasting()} (?:after|from|into|of) (?:a |the |each |every |it |its )*(?:start|"
    r"starts|starting|started|restart|starting up)"
)
_AGAIN = rx(
    r"over and over(?: again)?|again and again|(?:each|every)(?: single)? time|all day"
    r"|keeps (?:on )?doing (?:it|that)|nonstop|constantly"
)
SEVERAL = tuple(range(2, 11))
"""What "over and over" may be: two at least; more than ten are said as a number."""


def good_runs(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each run that went well; a wish, a question or a "not" is none."""
    return apart(
        Claim(*match.span(), _good(match))
        for match in _GOOD.finditer(view.folded)
        if not negated(view, match.start()) and not _asked(view, match)
    )


def _good(match: re.Match[str]) -> GoodRunFact:
    if match["c"] or match["one"]:
        return GoodRunFact(cycles=(int(match["c"] or 1),))
    for tag in ("", "k"):
        if match[f"unit{tag}"]:
            return GoodRunFact(ran_s=seconds(match, tag))
    return GoodRunFact()


def short_runs(view: Tokens) -> list[Claim]:
    """Claim stops told by how short each run was: "runs half a minute then quits".

    The words are read whole, for they tell a complaint too.
    """
    whole = tokens(view.source)
    match = _SHORT.search(whole.folded)
    if match is None or _asked(whole, match):
        return []
    tag = "" if match["unit"] else "k"
    again = _AGAIN.search(whole.folded)
    habit = match[0].startswith("runs") or again is not None
    fact = ProtectionStopFact(
        count=SEVERAL if habit else (1,),
        ran_s=seconds(match, tag),
        in_a_row=again is not None,
    )
    end = max(match.end(), again.end()) if again else match.end()
    return [Claim(match.start(), end, fact, shares=True)]


def ran_before(view: Tokens) -> tuple[float, float] | None:
    """Return how long after a start the told stops came."""
    folded = tokens(view.source).folded
    match = _SHORT.search(folded)
    if match is not None:
        return seconds(match, "" if match["unit"] else "k")
    after = _AFTER_START.search(folded)
    return seconds(after) if after is not None else None


def _asked(view: Tokens, match: re.Match[str]) -> bool:
    start, _ = view.clause(match.start())
    before = view.folded[start : match.start()]
    return bool(_OPEN.search(before))


_OPEN = rx(
    r"if|when it|until|till|does it|did it|has it|will|should|would|could|can|"
    r"need(?:s)? "
    r"(?:a|to)|after|takes"
)
