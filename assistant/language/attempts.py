"""Which restart a unit is at: "third try", "tried to start twice"."""

from __future__ import annotations

import re

from assistant.facts import AttemptFact
from assistant.language.claims import Claim, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary

_TRY = r"(?:try|attempt|retry|restart|re start|start attempt|restart attempt)"
_N = r"(?P<n>[1-9]|first|last)(?: (?:or|to|-|maybe) (?P<m>[1-9]))?"
_AT = rx(
    rf"(?:on |after |that is |this is |it is |her |its |it is on )?(?:it is |its |the |"
    rf"a |her )?{_N} {_TRY}(?! (?:to reset|at reset|with|on the reset))"
    rf"|{_TRY} (?:number |no )?(?P<k>[1-9])"
)
_TRIED = rx(
    r"(?:tried|tries|attempted|has tried|trying)(?: to)? (?P<what>start|starting|"
    r"restart|restarting|re start)(?: up)? (?P<n>once|twice|thrice|[1-9] times)"
    r"|(?P<what2>started|restarted|retried|re started) (?P<n2>once|twice|thrice|[1-9] "
    r"times) (?:already|now|and|since|so far|before)"
)
_WORDS = {"once": 1, "twice": 2, "thrice": 3, "first": 1}
_BARE = rx(
    r"(?P<n>[1-9]|first)(?: (?:or|to|-|maybe) (?P<m>[1-9]))?(?: (?:one|time|try|"
    r"attempt|restart|retry))?"
)
_ASKED = re.compile(r"(?<!\S)(?:how many|which|what|when|will|does|if)(?!\S)")


def attempts(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim which restart it is; "how many attempts" tells none."""
    for pattern, read in ((_AT, _number), (_TRIED, _made)):
        for match in pattern.finditer(view.folded):
            start, _ = view.clause(match.start())
            numbers = read(match)
            if numbers and not _ASKED.search(view.folded, start, match.start()):
                return [Claim(*match.span(), AttemptFact(number=numbers))]
    return []


def bare_attempt(view: Tokens) -> Claim | None:
    """Read the answer to "which restart is it": "the second", "2 or 3"."""
    match = _BARE.search(view.folded)
    if match is None:
        return None
    return Claim(*match.span(), AttemptFact(number=_range(match["n"], match["m"])))


def _number(match: re.Match[str]) -> tuple[int, ...]:
    text = match["n"] or match["k"]
    return () if text == "last" else _range(text, match["m"])


def _range(first: str, last: str | None) -> tuple[int, ...]:
    low = _WORDS.get(first) or int(first)
    high = int(last) if last else low
    return tuple(range(min(low, high), max(low, high) + 1))


def _made(match: re.Match[str]) -> tuple[int, ...]:
    """Return the restart that comes next: starts made count the first start too."""
    text = (match["n"] or match["n2"]).removesuffix(" times")
    made = _WORDS.get(text) or int(text)
    what = match["what"] or match["what2"]
    return (made,) if what.startswith("start") else (made + 1,)
