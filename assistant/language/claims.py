"""What a matcher says of a span: a fact or an act, and whether the span is used up."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache

from assistant.facts import Act, Fact
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class Claim:
    """A fact or act found in `start` to `end` of the folded text.

    A claim that `shares` leaves its words to later matchers; one without an item
    only marks words as understood.
    """

    start: int
    end: int
    item: Fact | Act | None
    shares: bool = False


Matcher = Callable[[Tokens, Vocabulary], list[Claim]]
"""One family: reads what earlier families left and returns its claims."""

NUMBER = r"-?[0-9]+(?:\.[0-9]+)?"
NOT = r"(?:not|no|none|never|without|nothing|nor|neither|stopped|zero)"
_NEGATION = re.compile(rf"(?<!\S){NOT}(?!\S)(?! (?:only|just|sure|long))")
_SUBJECT = re.compile(
    r"(?<!think )(?<!believe )(?<!say )(?<!see )(?<!\S)(?:it|she|they)(?: |$)"
)
"""A new subject ends the reach of a "not"; "do not think it is" does not."""
_REACH = 4
"""Words before a match in which a negation counts."""


_LONGEST_RUN = 6
"""Filler words in a row; bounded, so that no text makes matching slow."""


@lru_cache(maxsize=4096)
def rx(pattern: str) -> re.Pattern[str]:
    """Compile a pattern that begins and ends at whole folded words."""
    bounded = pattern.replace(")*", f"){{0,{_LONGEST_RUN}}}")
    bounded = bounded.replace(")+", f"){{1,{_LONGEST_RUN}}}")
    return re.compile(rf"(?<!\S)(?:{bounded})(?!\S)", re.ASCII)


def either(words: Iterable[str]) -> str:
    """Return a group that matches any of the words, longest first."""
    ordered = sorted(words, key=lambda word: (-len(word), word))
    return "(?:" + "|".join(map(re.escape, ordered)) + ")"


def negated(view: Tokens, at: int) -> bool:
    """Tell whether a "not", "no" or "never" just before `at` governs it."""
    start, _ = view.clause(at)
    before = view.folded[start:at].replace("none of the ", "none ")
    near = " ".join(before.split()[-_REACH:])
    return bool(_NEGATION.search(_SUBJECT.split(near)[-1]))


def apart(claims: Iterable[Claim]) -> list[Claim]:
    """Keep, of claims that overlap, the one that came first in the list."""
    kept: list[Claim] = []
    for claim in claims:
        if all(claim.end <= other.start or other.end <= claim.start for other in kept):
            kept.append(claim)
    return kept
