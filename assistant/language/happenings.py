"""Events that start or cancel waits: power, starts, stops, defrost, a dark lamp."""

from __future__ import annotations

import re

from assistant.facts import HappeningFact
from assistant.language.claims import Claim, apart, negated, rx
from assistant.language.tokens import MASK, Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.timing.triggers import Trigger

_POWER = (
    r"(?:power|mains|electricity|supply|juice|lights in the building|grid|electric)"
)
_COMP = r"(?:compressor|it|she|unit|outdoor unit|outdoor|system|thing|the compressor)"
_SELF = (
    r"(?:~+ |just |then |has |only |finally |suddenly |by itself |on its own |on it is "
    r"own )*"
)
_TABLE: tuple[tuple[str, tuple[Trigger, ...]], ...] = (
    (rf"(?:{_POWER} (?:has |just |was |has been )*(?:outage|cut|failure|out|off) "
     rf")?(?:and |then )?(?:the )?{_POWER} (?:is |was |has |just |came |come "
     r")*(?:back(?: on| up)?|restored|returned|on again)", ("power_restored",)),
    (rf"{_POWER} (?:has |just |was |only |has been |keeps )*(?:blip|blipped|blips|"
     r"flickered|flicker|dipped|bumped|browned out|glitched|hiccuped|blinked|flashed|"
     r"surged|went off and on|went out and (?:came )?back)", ("power_restored",)),
    (rf"{_POWER} (?:blip|bump|flicker|glitch|hiccup|dip|interruption)s?|brown ?out",
     ("power_restored",)),
    (rf"(?:{_POWER} |had (?:a|an) )(?:outage|power cut|blackout|black out|power "
     r"failure)|blackout|power (?:cut|outage|"
     r"failure)", ("power_lost", "power_restored")),
    (rf"{_POWER} (?:has |just |was |suddenly |had )*(?:went out|went off|gone out|"
     r"dropped out|failed|lost|is out|went down|died)", ("power_lost",)),
    (rf"(?:knocked|took) (?:out (?:the )?{_POWER}|(?:the )?{_POWER} out)",
     ("power_lost",)),
    (rf"lost {_POWER}|no {_POWER} since", ("power_lost",)),
    (r"(?:came|come|went|switched|got|are|is|been|just)(?: back)? (?:off|from)(?: of)? "
     r"(?:the |a )?(?:generator|genset|gen)|back on (?:the )?(?:grid|utility|mains)", (
         "power_restored",)),
    (r"brand new (?:install|installation|unit|system|one)|new install(?:ation)?|first "
     r"(?:time )?(?:start|starting|start up|startup|power up|powering|commissioning|"
     r"firing)(?: (?:it|her|the unit|this))?(?: up)?|just (?:been )?installed|never "
     r"been (?:run|started)|commissioning|first time (?:running|turning on|on)",
     ("first_start",)),
    (r"(?:powered|turned|switched|flipped|put|fired|brought|kicked) (?:it|her|the unit|"
     rf"the system|the breaker|the {_POWER}|{_POWER}|breaker|everything|the disconnect|"
     r"this)(?: thing)?(?: back)?(?: up| on)(?: again)?(?! (?:the|to|a)(?!\S))",
     ("power_on",)),
    (r"(?:powered|turned|switched)(?: it)? (?:back )?(?:up|on)(?! the (?:display|"
     r"screen))"
     r"|restored (?:the )?power|gave it power|re ?energi[sz]ed(?: it)?|power(?:ed)? "
     r"up(?= |$)(?! sequence)|flipped it(?: on)?(?! off)|put (?:the )?power back(?: on|"
     r" in)?", ("power_on",)),
    (rf"(?:killed|cut|pulled|dropped|opened|isolated|shut off|shut|turned off|switched "
     rf"off) (?:the |both |all )?(?:{_POWER}|breakers?|disconnects?|isolators?|fuses?)"
     r"(?: off)?(?: ~+)* (?:and |then |, )+(?:i |we |have |it is )*(?:left|kept|"
     r"leaving|"
     r"keeping|"
     r"still)(?: (?:it|them|everything))? off", ("power_off",)),
    (rf"{_COMP} {_SELF}(?:stopped|quit|shut down|shut off|cut out|died|kicked off|"
     r"dropped out|went off|stops|shuts off|shuts down|cuts out|stalled)",
     ("compressor_stopped",)),
    (r"(?<=then )(?:it )?(?:quit|died|shut (?:down|off))(?! (?:flashing|after))",
     ("compressor_stopped",)),
    (r"^(?:it )?(?:stopped|quit|shut (?:down|off)|cut out)(?! (?:by|on|raining|"
     r"flashing|pausing))", ("compressor_stopped",)),
    (r"only stopped|just stopped(?! flashing)|since it stopped|after it stopped",
     ("compressor_stopped",)),
    (r"(?:compressor|outdoor unit|outdoor) (?:just |has |finally |then )*(?:started|"
     r"kicked in|kicked on|came on|fired up|fired|starts)(?: up)?(?! flashing| "
     r"beeping)",
     ("compressor_started",)),
    (r"(?:it |she |unit )(?:just |has |finally |then )*(?:kicked in|kicked on|fired up|"
     r"started up|started running)", ("compressor_started",)),
    (r"(?:defrost (?:has |just )*(?:started|began|kicked in)|(?:went|gone|going|goes|"
     r"just went|came) (?:in|into) (?:a )?(?:defrost|defrost cycle)|started (?:a |the "
     r")?defrost(?:ing)?|started defrosting)", ("defrost_started",)),
    (r"(?:fan board |board |fan board is |the )(?:light|lights|led) (?:has |just |on "
     r"it |finally )*(?:went|gone|goes|go|turned) (?:dark|out|off)", ("lamp_dark",)),
    (r"(?:light|lights) (?:on the (?:fan )?board )?(?:finally |just |has )*(?:went|"
     r"gone) (?:dark|out|off)", ("lamp_dark",)),
    (r"(?:defrost (?:has |is |just |was )*(?:ended|finished|done|over|complete|stopped|"
     r"terminated)|(?:came|come|is|just|went) (?:back )?out of (?:a |the )?defrost|"
     r"(?:finished|done|ended|stopped) (?:a |the |its |it is )?defrost(?:ing)?)",
     ("defrost_ended",)),
    (r"(?:overload|internal overload|thermal overload|thermal|thermal protector|"
     r"protector|dome|klixon|thermal switch) (?:has |is |just |had |went |got )*(?:"
     r"opened|open|kicked out|cut out|popped|tripped)|(?:went|gone|out|off) on (?:its |"
     r"it is |the |an )?(?:internal|thermal)(?: overload)?|transformer (?:has |is |"
     r"just "
     r"|had |went |thermal )*(?:opened|cut out|tripped|popped)", ("overload_opened",)),
    (r"(?:fault|error|sensor fault) (?:has |just )?(?:started|began|begun|set in)",
     ("fault_began",)),
    (r"(?:line |supply |mains )?voltage (?:has |just |had |is )*(?:sagged|sank|fell|"
     r"went "
     r"low|dropped|collapsed|went high|spiked)(?! (?:to|under|across|by|from|"
     r"at)(?!\S))",
     ("value_left",)),
    (r"(?:line |supply |mains )?voltage (?:has |is |was |just |came |come |went |got "
     r")*(?:back|recovered|normal again|ok again|good again|up again|fine again)(?: (?:"
     r"up|in (?:its |the )?band|in range|to normal))?", ("value_back",)),
    (r"(?:reversing|four way|4 way|changeover) valve (?:has |just |have )*(?:shifted|"
     r"switched|changed over|flipped|clicked over)", ("valve_shifted",)),
    (r"(?:started|began|kicked off) (?:a |the |it is |its )?(?:forced )?test "
     r"(?:run|mode|operation)", ("test_started",)),
    (r"(?:pulled|called|brought|opened)(?: up)? (?:the )?(?:fault |error |code |stored "
     r")*(?:history|memory|log)(?: up)?", ("history_shown",)),
    (r"(?:call|demand) (?:has |just |was )*(?:ended|dropped(?: out)?|gone|went away|"
     r"cleared)|(?:thermostat|it) (?:has |just )*stopped calling|(?:switched|turned|"
     r"shut)"
     r" (?:it|the (?:heat|heating|cooling|unit)|heat|heating|cooling|her) off (?:at|"
     r"from|"
     r"with|on|by) (?:the |my )?(?:remote|thermostat|handset|controller)(?! (?:and|"
     r"then)"
     r" (?:back )?on)|(?:thermostat|room|zone) (?:got |just |has |was )+satisfied",
     ("call_ended",)),
    (r"(?:call|thermostat|it) (?:just |has )?(?:started calling|called for (?:heat|"
     r"cool|cooling|heating))|(?:turned|cranked|set) (?:up |down )?the thermostat(?: "
     r"up| down)?(?: (?:to )?call)?", ("call_for_run",)),
)  # fmt: skip
_CAME_BACK = rx(r"(?:it )?(?:came|comes|come) back(?: on| up)?(?! (?:to|with|after))")
_POWER_TOLD = rx(_POWER)
_SO_FAR: tuple[tuple[str, tuple[Trigger, ...]], ...] = (
    (r"(?:power|breaker|mains|disconnect|isolator|supply|everything|it|unit) (?:is |"
     r"has |was |still )*(?:been )?(?:off|isolated|killed|pulled)(?= ~+)",
     ("power_off",)),
    (r"(?:compressor|outdoor unit) (?:has )?been (?:off|stopped|down|quiet)",
     ("compressor_stopped",)),
    (r"(?:compressor|outdoor unit) (?:has )?been (?:running|on)",
     ("compressor_started",)),
    (r"(?:it |unit |she )?(?:has )?been (?:in (?:a )?defrost|defrosting)",
     ("defrost_started",)),
)  # fmt: skip
"""What has been so for a time: it tells of a state as well, so it shares its words."""
_HAPPENINGS = (
    *((rx(pattern), triggers, False) for pattern, triggers in _TABLE),
    *((rx(pattern), triggers, True) for pattern, triggers in _SO_FAR),
)
_ASKED = rx(
    r"when (?:will|does|should|do|is)|how (?:long|do|can)|should i|can i|could i|if i|"
    r"should (?:it|the)|does (?:it|the)|why|is it (?:ok|safe)|before it|until|till|"
    r"what if|will|would|ok to|got to|have to|need to|before i|never|every time|how "
    r"(?:much|many|low|far|big)|can|could|what|biggest"
)


_NEAR = 8
"""Letters between an event and its time."""


def happenings(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each event told as past or present; questions about one are none."""
    claims: list[Claim] = []
    for pattern, triggers, shares in _HAPPENINGS:
        for match in pattern.finditer(view.folded):
            if _is_told(view, match):
                claims.extend(
                    Claim(*match.span(), HappeningFact(trigger=trigger), shares)
                    for trigger in triggers
                )
    claims += _power_back(view)
    kept = {(claim.start, claim.end) for claim in apart(_one_each(claims))}
    found = [claim for claim in claims if (claim.start, claim.end) in kept]
    return _once(view, sorted(found, key=lambda claim: claim.start))


def _power_back(view: Tokens) -> list[Claim]:
    """Claim the end of a power cut: "went out at 3 and came back at 4:30"."""
    return [
        Claim(*match.span(), HappeningFact(trigger="power_restored"))
        for match in _CAME_BACK.finditer(view.folded)
        if _POWER_TOLD.search(
            view.folded, view.sentence(match.start())[0], match.start()
        )
    ]


def _is_told(view: Tokens, match: re.Match[str]) -> bool:
    start, _ = view.clause(match.start())
    asked = _ASKED.search(view.folded, start, match.start())
    return not (asked or negated(view, match.start()))


def _one_each(claims: list[Claim]) -> list[Claim]:
    spans: dict[tuple[int, int], Claim] = {}
    for claim in claims:
        spans.setdefault((claim.start, claim.end), claim)
    return list(spans.values())


def _once(view: Tokens, claims: list[Claim]) -> list[Claim]:
    """Keep one claim of a trigger that is told twice, unless each has its own time."""
    kept: list[Claim] = []
    for claim in claims:
        same = [other for other in kept if other.item == claim.item]
        timed = MASK in view.folded[claim.end : claim.end + _NEAR]
        if not same or (timed and same[-1].end <= claim.start):
            kept.append(claim)
    return kept
