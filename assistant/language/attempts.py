"""Which restart a unit is at: "third try", "tried to start twice"."""

from __future__ import annotations

import re

from assistant.facts import AttemptFact
from assistant.language.claims import Claim, either, rx
from assistant.language.how_often import how_often, often
from assistant.language.lexicon.numbers import ORDINALS
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary

_TRY = (
    r"(?:(?:start|restart) )?(?:try|attempt|retry|restart|re start|go round)(?! (?:to "
    r"reset|at resetting|button))"
)
_NTH = rf"(?:{either(ORDINALS)}|[1-9])"
_N = rf"(?P<n>{_NTH})(?: (?:or|to|-|maybe|or maybe) (?:the )?(?P<m>{_NTH}))?"
_AT = rx(rf"{_N} {_TRY}|{_TRY} (?:number |no )?(?P<k>[1-9])")
_TRIED = rx(
    r"(?:tried|attempted|trying)(?: to)? (?P<what>start|starting|restart|restarting|re "
    rf"start)(?: up)? {often('n', '[1-9] times')}"
    rf"|(?P<what2>started|restarted|retried|re started) {often('n2', '[1-9] times')} "
    r"(?:already|now|and|since|so far|before)"
)
_BARE = rx(rf"{_N}(?: (?:one|time|stop))?")
_ASKED = re.compile(r"(?<!\S)(?:how many|which|what|when|will|does|if|until|before)")


def attempts(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim which restart it is; "how many attempts" tells none."""
    for pattern, read in ((_AT, _number), (_TRIED, _made)):
        for match in pattern.finditer(view.folded):
            start, _ = view.clause(match.start())
            if not _ASKED.search(view.folded, start, match.start()):
                return [Claim(*match.span(), AttemptFact(number=read(match)))]
    return []


def bare_attempt(view: Tokens) -> Claim | None:
    """Read the answer to "which restart is it": "the second", "2 or 3"."""
    match = _BARE.search(view.folded)
    if match is None:
        return None
    return Claim(*match.span(), AttemptFact(number=_range(match["n"], match["m"])))


def _number(match: re.Match[str]) -> tuple[int, ...]:
    return _range(match["n"] or match["k"], match["m"])


def _range(first: str, last: str | None) -> tuple[int, ...]:
    low = ORDINALS.get(first) or int(first)
    high = (ORDINALS.get(last) or int(last)) if last else low
    return tuple(range(min(low, high), max(low, high) + 1))


def _made(match: re.Match[str]) -> tuple[int, ...]:
    """Return the restart that comes next: starts made count the first start too."""
    made = how_often(match["n"] or match["n2"])
    what = match["what"] or match["what2"]
    return made if what.startswith("start") else tuple(number + 1 for number in made)
