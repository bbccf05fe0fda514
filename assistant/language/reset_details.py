"""How a reset was done: how long the power was off, which supplies, what came of it."""

from __future__ import annotations

import re
from typing import Any

from assistant.facts import ResetDetailFact, Supplies
from assistant.language.asked import Asked
from assistant.language.claims import Claim, rx
from assistant.language.durations import ONLY, lasting, seconds
from assistant.language.tokens import Tokens

_BOX = r"(?:indoor|inside|outdoor|outside|control|heater|auxiliary|aux|other)"
_SUPPLY = (
    r"(?:unit|units|supply|supplies|power|feed|feeds|breaker|breakers|isolator|"
    r"isolators|disconnect|disconnects|one|head)"
)
_CUT = (
    r"(?:killed|cut|pulled|dropped|isolated|shut|turned|switched|flipped|knocked|"
    r"powered|kept|left|was|were|is|been|stayed)"
)
_WHAT = r"(?:the |it |its |all |both |my |everything |main )*"
_LENGTH = rx(
    rf"(?:off|out|down|dead|{_CUT} {_WHAT}(?:{_BOX} )?(?:{_SUPPLY} |mains )?(?:off |"
    rf"out |down "
    rf"|together |at the same time |at once )*)(?: |(?<= )){ONLY}{lasting()}(?! "
    rf"(?:ago|back|later|after|since|apart))"
    rf"|{ONLY}{lasting('k')} (?:off|with (?:the |all )?power off|without power)"
    rf"|(?:waited|gave it|left it) {ONLY}{lasting('j')}(?! (?:ago|apart))"
)
_POWER_OFF = rx(
    rf"(?:(?:^|, )(?:only|just)|{_SUPPLY}|mains|everything|all|both|it) (?:was |were "
    rf"|is |had been |has been "
    rf"|only |just |stayed |both )*off (?:for )?{ONLY}{lasting()}(?! (?:ago|back|"
    rf"apart))"
)
_FROM_LAMP = rx(
    r"(?:after|once|since|from when|counted from|with) (?:the |when |that |all )*"
    r"(?:lights?|display) (?:had |was |were |is |have )*(?:went|gone|go|going|goes|off|"
    r"out|dark)(?: (?:out|off|dark))?"
)
_SUPPLIES: tuple[tuple[Supplies, re.Pattern[str]], ...] = (
    ("one_left_on", rx(
        rf"(?:left|kept|leaving|keeping) (?:the |my )?{_BOX}(?: {_SUPPLY})? (?:on|live|"
        rf"in|powered)|(?:the )?{_BOX}(?: {_SUPPLY})? (?:was |were |is |had |still |"
        r"always )*(?:stayed|left|kept|still|remained) (?:on|live|powered|in)"
        rf"|(?:only|just) (?:the |did the |at the |cut the |killed the |pulled the )?"
        rf"(?:indoor|inside|outdoor|outside)(?: {_SUPPLY})?(?! and)"
        rf"|(?:did not|never|forgot to) (?:touch|kill|cut|turn off|switch off|pull|"
        rf"isolate) (?:the )?{_BOX}(?: {_SUPPLY})?"
    )),
    ("one_by_one", rx(
        r"one (?:after (?:the other|another)|by one|at a time|then the other)"
        rf"|(?:indoor|inside|outdoor|outside)(?: {_SUPPLY})?(?: off| on)*(?: ,)?(?: "
        rf"and)?"
        rf"(?: then| later| afterwards| after that)+ (?:the )?(?:indoor|inside|outdoor|"
        rf"outside)(?: {_SUPPLY})?|(?:not|never) (?:both |all )?(?:off )?(?:together|"
        rf"at "
        r"the same time|at once)"
    )),
    ("together", rx(
        rf"(?:both|all|indoor and outdoor|outdoor and indoor|inside and outside|"
        rf"outside "
        rf"and inside|everything)(?: of them| the| {_SUPPLY}| were| was| off| out| "
        r"killed| cut| down| pulled)* (?:together|at the same time|at once|same time)"
    )),
)  # fmt: skip
_NOT_CLEARED = rx(
    r"(?:would|will|did|does|could) not (?:clear|reset|take(?: it)?|come out of it|"
    r"go away|unlock)|(?:did|does) not (?:help|work|do (?:anything|a thing))|"
    r"(?:still|stays|stayed) locked(?: out)?"
)
_CLEARED = rx(
    r"(?:that|it|the reset|which|and) (?:has |just )*(?:cleared(?: it)?|took|unlocked"
    r"(?: it)?|worked|came out of (?:it|lockout))(?! (?:off|out|the|a|it off))"
)
_OF_POWER = rx(
    rf"(?:off|live|powered|isolated|killed|cut|pulled|left (?:the )?{_BOX}|power|mains|"
    rf"stayed (?:on|in)|{_SUPPLY})"
)
_OF_LAMPS = rx(
    r"(?:flash|flashes|flashing|flashed|(?<!the )lights?(?! went| had| was))"
)
_ASKED = rx(
    r"should|shall|can|could|how long|must|will|would|if|need to|until|have to|got to|"
    r"did (?:you|they|he|she)|was it|were they|is it|does|want to|going to|"
    r"(?:was|were|is|had) not"
)
_NEGATED = rx(r"(?:not|never|no) (?:just|only)")


def told_beside(view: Tokens, start: int, end: int) -> dict[str, Any]:
    """Return what the sentence of a reset tells of it, as fields of the fact.

    `start` and `end` bound where it may stand; a length is read to the end of it.
    """
    begin, _ = view.sentence(start)
    text = view.folded[begin:end]
    found: dict[str, Any] = _length(text, _LENGTH)
    supplies = _supplies(text)
    if supplies is not None:
        found["supplies"] = supplies
    return found


def cleared(view: Tokens) -> bool | None:
    """Return whether the last reset was told to have cleared it."""
    if _NOT_CLEARED.search(view.folded):
        return False
    return True if _CLEARED.search(view.folded) else None


def reset_details(view: Tokens) -> list[Claim]:
    """Claim what a text tells of a reset that was told before."""
    if not _OF_POWER.search(view.folded) or _OF_LAMPS.search(view.folded):
        return []
    for pattern in (_POWER_OFF, *(one for _, one in _SUPPLIES)):
        match = pattern.search(view.folded)
        if match is None or _NEGATED.search(view.folded) or _asks(view, match):
            continue
        fields = _length(view.folded, _POWER_OFF)
        supplies = _supplies(view.folded)
        if fields or supplies:
            return [Claim(*match.span(), ResetDetailFact(**fields, supplies=supplies))]
    return []


def off_time_answer(asked: Asked) -> Claim | None:
    """Read "about five minutes" where the time off was asked for."""
    match = rx(lasting()).search(asked.view.folded)
    if match is None:
        return None
    since = "lamp_dark" if asked.subject == "lamp_dark" else "power_off"
    told: dict[str, Any] = {"off_s": seconds(match), "off_from": since}
    return Claim(*match.span(), ResetDetailFact(**told))


def _asks(view: Tokens, match: re.Match[str]) -> bool:
    """Tell whether the clause asks, wishes or denies; then nothing is told."""
    start, _ = view.clause(match.start())
    return bool(_ASKED.search(view.folded[start : match.end()]))


def _length(text: str, pattern: re.Pattern[str]) -> dict[str, Any]:
    match = pattern.search(text)
    if match is None:
        return {}
    groups = match.groupdict()
    tag = next(tag for tag in ("", "k", "j") if groups.get(f"unit{tag}"))
    found: dict[str, Any] = {"off_s": seconds(match, tag)}
    if _FROM_LAMP.search(text):
        found["off_from"] = "lamp_dark"
    return found


def _supplies(text: str) -> Supplies | None:
    if _NEGATED.search(text):
        return None
    for supplies, pattern in _SUPPLIES:
        if pattern.search(text):
            return supplies
    return None
