"""Resets that were done: which one, and how often."""

from __future__ import annotations

from dataclasses import replace

from assistant.facts import ResetFact
from assistant.language.claims import Claim, apart, negated, rx
from assistant.language.how_often import how_often, often
from assistant.language.reset_details import cleared, reset_details, told_beside
from assistant.language.tokens import MASK, Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.timing.stop_kinds import ResetName

_POWER = (
    r"(?:power|breaker|breakers|disconnect|mains|main|isolator|supply|juice|unit|it|"
    r"everything|both units|whole thing|system|indoor|outdoor)"
)
_SOURCE = (
    r"(?:power|breakers?|disconnects?|mains|isolators?|supply|supplies|feeds?|juice|"
    r"fuses?)"
)
_THE = (
    r"(?:the |its |it is |my |both |all )?(?:outdoor |outside |indoor |inside |main |"
    r"unit )?"
)
_TABLE: tuple[tuple[str, ResetName | None], ...] = (
    (r"(?:took|pulled|dropped|removed) (?:away )?(?:the |its )?call(?: away| off)?(?: "
     r"(?:and|then) (?:gave|put) it (?:back|again))?|cycled the (?:thermostat|"
     r"call)|(?:turned|switched) the (?:thermostat|call) off (?:and|then) (?:back )?on"
     r"(?: again)?",
     "thermostat"),
    (r"(?:used|bridged|touched|shorted|jumpered) (?:the )?(?:two )?(?:test|tst|tst1|"
     r"service) pins(?: together)?", "test_pins"),
    (rf"(?:killed|cut|pulled|shut off|turned off|switched off|isolated) "
     rf"{_THE}(?:outdoor|"
     r"outside|indoor|inside|both|all|everything)(?: units?| ones?)?(?= (?:for|about|"
     r"off|"
     r"[0-9.]+ (?:sec|min|hour)))", "power"),
    (r"(?:pushed|pressed|reset) (?:the )?(?:hand|manual) reset(?: (?:on|at|of) "
     r"(?:the )?"
     r"[a-z]+(?: [a-z]+)?)?|reset (?:the )?(?:high |low )?(?:limit|pressure switch|cut "
     r"?out|roll ?out)(?: switch)? by hand", "device"),
    (r"(?:killed|cut|pulled|dropped|shut off|shut|turned off|switched off|knocked off|"
     rf"flipped off|threw|isolated) {_THE}{_SOURCE}(?: off)?(?: for)?(?: about)?(?: "
     r"[0-9.]+ (?:min|sec|hour))?(?!(?: ~+)* (?:and |then |, )+(?:i |we |have |it "
     r"is )*(?:left|kept|leaving|keeping|still)(?: (?:it|them|everything))? off)(?: "
     r"(?:and|then))?(?: (?:back on|turned it back on|put it back|on again))?",
     "power"),
    (rf"power(?:ed)? ?cycl(?:ed?|ing) ?{_THE}{_POWER}?|did (?:a|another) power cycle",
        "power"),
    (rf"cycled {_THE}(?:power|breaker|breakers|disconnect|mains|isolator|supply)",
        "power"),
    (rf"(?:turned|switched|flipped|flicked|shut) {_THE}{_POWER} off (?:and|then) "
     r"(?:back )?on(?: again)?", "power"),
    (r"(?:turned|switched) off (?:and|then) (?:back )?on (?:again )?(?:at "
     rf")?{_THE}(?:breaker|disconnect|mains)", "power"),
    (rf"(?:reset|re set) (?:it )?(?:at |by |from |with )?{_THE}(?:main )?(?:breaker|"
     r"breakers|disconnect|mains|power)", "power"),
    (r"(?:reset|cleared) (?:it )?(?:at |by |from |with |on |off |via "
     rf")?{_THE}(?:remote|handset|controller|thermostat)", "remote"),
    (r"(?:turned|switched) it off (?:and|then) (?:back )?on (?:again )?(?:at|from|with|"
     rf"on) {_THE}(?:remote|thermostat|handset|controller)", "remote"),
    (rf"(?:pressed|hit|pushed|held|poked|punched|used|press|tapped) {_THE}(?:little |"
     r"red )?reset(?: button| switch| pins)?(?: down)?", "button"),
    (r"reset (?:it )?(?:with|by|from|at|using) the (?:reset )?(?:button|switch|pins)",
        "button"),
    (rf"(?:pressed|held|hit|pushed) {_THE}(?:reset )?button", "button"),
    (rf"(?:cleared|erased|wiped|deleted) {_THE}(?:fault |error |code |stored "
     r")*(?:history|codes?|memory|faults?|log)", "history"),
    (r"(?:i |we |they |he |she |somebody |someone |customer |guest |owner |"
     r"already |just |then |have |has |had |"
     r"and |tech(?:nician)? |when i |after i )+(?:reset|re set)(?! (?:button|switch|"
     r"time))(?: (?:it|the unit|her|both|them|everything|the board|the fault))?", None),
    (r"(?:(?:i|we|they) |(?:^|(?<=, )))cleared (?:it|her|him|them)",
     None),
    (r"(?:did|done|tried|gave it) (?:a |the |one |another |it a )?(?:hard |soft "
     r")?reset", None),
    (r"(?:^|(?<=, )|(?<=and )|(?<=then )|(?<=\. ))reset (?:it|the unit|her)|~+ "
     r"reset(?: it| the unit| her)?|(?:the |my |our )?(?:last )?reset (?:was|were|"
     r"happened|done)(?: done| made)?(?= ~| at | about )", None),
    (r"(?:second|2|another|third) (?:hard )?resets?(?! (?:would|will|must|does|should|"
     r"is|take))",
     None),
)  # fmt: skip
_RESETS = tuple((rx(pattern), which) for pattern, which in _TABLE)
_ASKED = rx(
    r"how (?:do|can|to|would)|should i|can i|could i|do i|ok to|safe to|need to|want "
    r"to|going to|will|to reset|does (?:a|the) reset|what does|if i|when i should|how "
    r"long|got to|have to|let me|try to|must i|what happens"
)
_OFTEN = often("n", "[0-9]{1,2} times")
_TIMES = rx(
    rf"(?:already |now |about |maybe |like |it |and |, |again |today )*{_OFTEN}"
)
_AGAIN = rx(
    r"(?:and|then) (?:once more |once |it |did it |reset it |a second time )?again"
    r"|(?:and|then) a (?:second|2nd) time"
)
_TRIED = rx(
    rf"(?:i |we )?(?:have )?tried (?:it )?{often('n', '[0-9]{1,2} times|2')}(?= |$)"
)
_CLEARS = rx(r"(?:reset|resetting|clear|clearing)")
_MOST = 10
"""Resets that one number stands for; nobody counts more."""


def resets(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each reset that was done; "how do I reset", "before the reset" are none.

    Where none was, what is told of one that was told before.
    """
    claims: list[Claim] = []
    for pattern, which in _RESETS:
        for match in pattern.finditer(view.folded):
            if not _is_done(view, match.start(), match.end()):
                continue
            fact = ResetFact(which=which)
            claims.append(Claim(match.start(), match.end(), fact))
    claims = sorted(apart(claims), key=lambda claim: claim.start)
    all_told = [*claims, *_repeated(view, claims)] or _tried(view)
    return _with_result(view, _with_details(view, all_told)) or reset_details(view)


def _with_details(view: Tokens, claims: list[Claim]) -> list[Claim]:
    """Give a power reset, or one that may be, what its sentence tells of it."""
    found: list[Claim] = []
    for place, claim in enumerate(claims):
        fact = claim.item
        _, end = view.sentence(claim.end)
        if place + 1 < len(claims):
            end = min(end, max(claims[place + 1].start, claim.end))
        if isinstance(fact, ResetFact) and fact.which in ("power", "thermostat", None):
            details = told_beside(view, claim.start, end)
            found.append(replace(claim, item=fact.model_copy(update=details)))
        else:
            found.append(claim)
    return found


def _with_result(view: Tokens, claims: list[Claim]) -> list[Claim]:
    """Give the last reset what was told to have come of it."""
    result = cleared(view)
    if not claims or result is None or not isinstance(claims[-1].item, ResetFact):
        return claims
    last = claims[-1].item.model_copy(update={"cleared": result})
    return [*claims[:-1], replace(claims[-1], item=last)]


def _is_done(view: Tokens, start: int, end: int) -> bool:
    begin, _ = view.clause(start)
    asked = _ASKED.search(view.folded, begin, end)
    return not (asked or negated(view, start))


def _repeated(view: Tokens, claims: list[Claim]) -> list[Claim]:
    """Claim the further resets of "reset it twice" and "and again at 10:05"."""
    if not claims:
        return []
    last = claims[-1]
    _, end = view.sentence(last.end)
    item = last.item
    times = _TIMES.match(view.folded, last.end + 1) if len(claims) == 1 else None
    if times:
        more = _at_least(times["n"]) - 1
        return [Claim(times.start(), times.end(), item) for _ in range(more)]
    again = _AGAIN.search(view.folded, last.end, end)
    if again and MASK not in view.folded[again.start() : again.end()]:
        return [Claim(again.start(), again.end(), item)]
    return []


def _tried(view: Tokens) -> list[Claim]:
    """Claim "tried twice, second time it wouldn't clear"."""
    match = _TRIED.search(view.folded)
    if match is None or not _CLEARS.search(view.folded):
        return []
    count = _at_least(match["n"])
    return [Claim(match.start(), match.end(), ResetFact()) for _ in range(count)]


def _at_least(words: str) -> int:
    return min(*how_often(words), _MOST)
