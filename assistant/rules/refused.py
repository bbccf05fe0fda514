"""Words that no step of a pack may hold: the engine would have to refuse them."""

from __future__ import annotations

import re

_NOT = r"(?:never|not|don't|cannot|without|nor|before|no)"
_ACT = (
    r"(?:jump(?:er)?s?|jumping|by-?pass(?:es|ing)?|bridg(?:e|es|ing)|defeat(?:s|ing)?|"
    r"overrid(?:e|es|ing)|short(?:s|ing)?(?: out)?|disabl(?:e|es|ing)|"
    r"tap(?:e|es|ing) (?:down|up))"
)
_GUARD = (
    r"(?:(?:high|low)[- ]pressure|pressure) (?:switch|cut-?out|control)|"
    r"(?:safety|limit|float|flow|door|interlock|thermal|overload)(?: \w+)? "
    r"?(?:switch|device|protector|cut-?out|control)?|"
    r"(?:refrigerant|leak|gas)(?: leak)? (?:sensor|detector|alarm)|"
    r"protections?|protector|safet(?:y|ies)|interlocks?|fuse|breaker"
)
_BYPASS = re.compile(rf"\b{_ACT}\b(?:\W+\w+){{0,4}}?\W+(?:{_GUARD})\b", re.IGNORECASE)
_RULES: tuple[tuple[re.Pattern[str], str], ...] = (
    (_BYPASS, "it takes a protection out"),
    (
        re.compile(
            r"\bshort(?:s|ing)?(?: out)?\b(?:\W+\w+){0,4}?\W+"
            r"(?:capacitors?|caps?|bus)\b"
            r"|\b(?:capacitors?|caps|bus)\b(?:\W+\w+){0,6}?\W+screwdriver\b"
            r"|\bscrewdriver\b(?:\W+\w+){0,6}?\W+(?:capacitors?|caps|bus)\b",
            re.IGNORECASE,
        ),
        "stored charge is not shorted",
    ),
    (
        re.compile(
            r"\b(?:bigger|larger|higher[- ]rated|oversized?)\b(?:\W+\w+){0,2}?\W+"
            r"(?:fuses?|breakers?)\b",
            re.IGNORECASE,
        ),
        "a fuse or breaker is never made bigger",
    ),
    (
        re.compile(
            r"\b(?:pressuri[sz]e|pressure[- ]test|leak[- ]test)\b(?:\W+\w+){0,5}?\W+"
            r"(?:oxygen|air|acetylene)\b",
            re.IGNORECASE,
        ),
        "pressure is tested with dry nitrogen and a regulator only",
    ),
    (
        re.compile(
            r"\b(?:vent|release|blow off)\b(?:\W+\w+){0,3}?\W+(?:refrigerant|charge)\b",
            re.IGNORECASE,
        ),
        "refrigerant is recovered, not vented",
    ),
)
_NEVER_SAID: tuple[tuple[re.Pattern[str], str], ...] = (
    (re.compile(r"\bsafe to touch\b", re.IGNORECASE), "say what to measure instead"),
    (
        re.compile(r"\b(?:covered by|under|in) warranty\b", re.IGNORECASE),
        "the maker decides that",
    ),
    (
        re.compile(
            r"\b(?:one more|another) reset\b|\breset(?: it)? (?:once more|again)\b",
            re.IGNORECASE,
        ),
        "say to find the cause first",
    ),
    (
        re.compile(r"[$€£]\s?\d|\b\d+ (?:dollars|euros|pounds)\b"),
        "a pack names no price",
    ),
)


def refused(text: str) -> str | None:
    """Return why the engine would refuse a text as a step, or None.

    Examples
    --------
    >>> refused("Jumper the high pressure switch and start it")
    'it takes a protection out'
    >>> refused("Never jumper the high pressure switch") is None
    True
    """
    for sentence in re.split(r"(?<=[.;!?])\s+", text):
        for pattern, why in _RULES:
            if any(not _negated(sentence, hit) for hit in pattern.finditer(sentence)):
                return why
    return None


def never_said(text: str) -> str | None:
    """Return the way out where a text says what is never said, or None.

    Examples
    --------
    >>> never_said("The terminals are then safe to touch")
    'say what to measure instead'
    """
    for pattern, hint in _NEVER_SAID:
        if any(not _negated(text, hit) for hit in pattern.finditer(text)):
            return hint
    return None


def _negated(sentence: str, hit: re.Match[str]) -> bool:
    before = sentence[: hit.start()]
    return re.search(rf"\b{_NOT}\b(?:\W+\w+){{0,4}}\W*$", before, re.I) is not None
