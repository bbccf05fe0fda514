"""Events that start or cancel waits: power, starts, stops, defrost, a dark lamp."""

from __future__ import annotations

import re

from assistant.facts import HappeningFact
from assistant.language.claims import Claim, apart, negated, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.timing.kinds import Trigger

_POWER = (
    r"(?:power|mains|electricity|supply|juice|lights in the building|grid|electric)"
)
_COMP = r"(?:compressor|it|she|unit|outdoor unit|outdoor|system|thing|the compressor)"
_SELF = (
    r"(?:just |then |has |only |finally |suddenly |by itself |on its own |on it is "
    r"own )*"
)
_TABLE: tuple[tuple[str, tuple[Trigger, ...]], ...] = (
    (rf"(?:{_POWER} (?:has |just |was |has been )*(?:outage|cut|failure|out|off) "
     rf")?(?:and |then )?(?:the )?{_POWER} (?:is |was |has |just |came |come "
     r")*(?:back(?: on| up)?|restored|"
     r"returned|on again)", ("power_restored",)),
    (rf"{_POWER} (?:has |just |was |only |has been |keeps )*(?:blip|blipped|blips|"
     r"flickered|flicker|dipped|bumped|browned out|glitched|hiccuped|blinked|flashed|"
     r"surged|went off and "
     r"on|went out and (?:came )?back)", ("power_restored",)),
    (rf"{_POWER} (?:blip|bump|flicker|glitch|hiccup|dip|interruption)s?|brown ?out",
     ("power_restored",)),
    (rf"(?:{_POWER} |had (?:a|an) )(?:outage|power cut|blackout|black out|power "
     r"failure)|"
     r"blackout|power (?:cut|outage|failure)", ("power_lost", "power_restored")),
    (rf"{_POWER} (?:has |just |was |suddenly |had )*(?:went out|went off|gone out|"
     r"dropped out|"
     r"failed|lost|is out|went down|died)", ("power_lost",)),
    (rf"lost {_POWER}|no {_POWER} since", ("power_lost",)),
    (r"(?:came|come|went|switched|got|are|is|been|just)(?: back)? (?:off|from)(?: of)? "
     r"(?:the |a )?"
     r"(?:generator|genset|gen)|back on (?:the )?(?:grid|utility|mains)", (
         "power_restored",)),
    (r"brand new (?:install|installation|unit|system|one)|new install(?:ation)?|"
     r"first (?:time )?(?:start|starting|start up|startup|power up|powering|"
     r"commissioning|firing)(?: (?:it|her|the unit|this))?(?: up)?|just (?:been "
     r")?installed|never been (?:run|started)|commissioning|first time (?:running|"
     r"turning on|on)",
     ("first_start",)),
    (r"(?:powered|turned|switched|flipped|put|fired|brought|kicked) (?:it|her|the "
     r"unit|the system|"
     rf"the breaker|the {_POWER}|{_POWER}|breaker|everything|the disconnect|this)"
     r"(?: thing)?(?: back)?(?: up| on)(?: again)?", ("power_on",)),
    (r"(?:powered|turned|switched)(?: it)? (?:back )?(?:up|on)(?! the (?:display|"
     r"screen))"
     r"|restored (?:the )?power|gave it power|re ?energi[sz]ed(?: it)?|power(?:ed)? "
     r"up(?= |$)(?! sequence)|flipped it(?: on)?(?! off)|put (?:the )?power back"
     r"(?: on| in)?", ("power_on",)),
    (rf"{_COMP} {_SELF}(?:stopped|quit|shut down|shut off|cut out|died|"
     r"kicked off|dropped out|went off|stops|shuts off|shuts down|cuts out|stalled)",
     ("compressor_stopped",)),
    (r"^(?:it )?(?:stopped|quit|shut (?:down|off)|cut out)(?! (?:by|on|raining|"
     r"flashing|"
     r"pausing))", ("compressor_stopped",)),
    (r"only stopped|just stopped(?! flashing)|since it stopped|after it stopped",
     ("compressor_stopped",)),
    (r"(?:compressor|outdoor unit|outdoor) (?:just |has |finally |then )*(?:started|"
     r"kicked in|"
     r"kicked on|came on|fired up|fired|starts)(?: up)?(?! flashing| beeping)",
     ("compressor_started",)),
    (r"(?:it |she |unit )(?:just |has |finally |then )*(?:kicked in|kicked on|fired up|"
     r"started up|"
     r"started running)", ("compressor_started",)),
    (r"(?:defrost (?:has |just )*(?:started|began|kicked in)|(?:went|gone|going|goes|"
     r"just went|it is|is|came) (?:in|into) (?:a )?(?:defrost|defrost cycle)|started "
     r"(?:a |the )?defrost(?:ing)?|"
     r"is defrosting|started defrosting)", ("defrost_started",)),
    (r"(?:fan board |board |fan board is |the )(?:light|lights|led) (?:has |just |on "
     r"it |finally )*"
     r"(?:went|gone|goes|go|turned) (?:dark|out|off)", ("lamp_dark",)),
    (r"(?:light|lights) (?:on the (?:fan )?board )?(?:finally |just |has )*(?:went|"
     r"gone) "
     r"(?:dark|out|off)", ("lamp_dark",)),
    (r"(?:call|thermostat|it) (?:just |has )?(?:started calling|called for (?:heat|"
     r"cool|cooling|"
     r"heating))|(?:turned|cranked|set) (?:up |down )?the thermostat(?: up| down)?"
     r"(?: (?:to )?call)?", ("call_for_run",)),
)  # fmt: skip
_HAPPENINGS = tuple((rx(pattern), triggers) for pattern, triggers in _TABLE)
_ASKED = rx(
    r"when (?:will|does|should|do|is)|how (?:long|do|can)|should i|can i|could i|if i|"
    r"should (?:it|the)|does (?:it|the)|why|is it (?:ok|safe)|before it|until|till|"
    r"what if|will|would|ok to|got to|have to|need to|before i|never|every time"
)


def happenings(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each event told as past or present; questions about one are none."""
    claims: list[Claim] = []
    for pattern, triggers in _HAPPENINGS:
        for match in pattern.finditer(view.folded):
            if _is_told(view, match):
                claims.extend(
                    Claim(*match.span(), HappeningFact(trigger=trigger))
                    for trigger in triggers
                )
    kept = {(claim.start, claim.end) for claim in apart(_one_each(claims))}
    found = [claim for claim in claims if (claim.start, claim.end) in kept]
    return _once(sorted(found, key=lambda claim: claim.start))


def _is_told(view: Tokens, match: re.Match[str]) -> bool:
    start, _ = view.clause(match.start())
    asked = _ASKED.search(view.folded, start, match.start())
    return not (asked or negated(view, match.start()))


def _one_each(claims: list[Claim]) -> list[Claim]:
    spans: dict[tuple[int, int], Claim] = {}
    for claim in claims:
        spans.setdefault((claim.start, claim.end), claim)
    return list(spans.values())


def _once(claims: list[Claim]) -> list[Claim]:
    """Keep one claim of a trigger that is told twice in the same breath."""
    kept: list[Claim] = []
    for claim in claims:
        same = [other for other in kept if other.item == claim.item]
        if not same or claim.item == HappeningFact(trigger="compressor_stopped"):
            kept.append(claim)
    return kept
