"""Wishes to bypass, short or force something that protects; they are refused."""

from __future__ import annotations

from typing import Literal

from assistant.facts import BypassFact
from assistant.language.claims import Claim, negated, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary

_Act = Literal[
    "bypass_protection",
    "bypass_leak_sensor",
    "short_capacitor",
    "live_work",
    "over_pressure",
]
_DEFEAT = (
    r"(?:jump|jumps|jumped|jumping|jumper|jumpers|jumpered|jumpering|bypass|bypassed|"
    r"bypassing|by pass|bridge|bridged|bridging|defeat|defeated|defeating|short|"
    r"shorted|shorting|tape|taped|taping|force|forced|forcing|link|linked|linking|loop|"
    r"looped|override|overrode|overriding|disable|disabled|disabling|cheat|trick|fool|"
    r"strap|wedge|hold|holding|tie|tied|wire|wired|twist|cut|remove|take|leave|pull|"
    r"unplug|disconnect|get rid of|rig|rigged|hotwire|block|cover|ignore)"
)
_HARD = (
    r"(?:jump|jumps|jumped|jumping|jumper|jumpers|jumpered|jumpering|bypass|bypassed|"
    r"bypassing|by pass|bridge|bridged|bridging|defeat|defeated|defeating|tape|taped|"
    r"link out|linked out|loop out|override|overriding|cheat|strap out|hotwire|short|"
    r"short out|short across|force|disable|disabled|wedge|fool|trick|get rid of|rig|"
    r"tie|tied|hold in|hold down|holding in|cover|covered|ignore)"
)
_OUT = r"(?:out |around |across |over |closed |down |in |shut |past |off )?"
_THE = r"(?:the |that |this |my |a |its |it is )?"
_ADJ = r"(?:[a-z]+ ){0,2}?"
_GUARD = (
    r"(?:(?:high |low )?pressure (?:switch|switches|cut ?out|control|limit|trip)|"
    r"(?:high|low) (?:pressure|side) (?:switch|cut ?out)|(?:hi|lo) (?:limit|switch)|"
    r"high limit|limit switch|limits?|float switch|float|overflow switch|safety|"
    r"safeties|safety switch|overloads?|thermal (?:overload|cut ?out|protector|fuse)|"
    r"roll ?out(?: switch)?|door switch|panel switch|interlock|interlocks|proof switch|"
    r"flow switch|pressure switches|protections?|protector|fuse|fuses|breaker|trip "
    r"switch|cutout|lockout|freeze stat|freezestat|discharge (?:thermostat|limit)|pump "
    r"?down switch|ground fault|gfci|rcd)"
)
_LEAK = (
    r"(?:(?:refrigerant |gas )?leak (?:sensor|detector|alarm|detection|board|"
    r"mitigation)|(?:refrigerant|gas|a2l) (?:sensor|detector|alarm))"
)
_CAPS = (
    r"(?:(?:bus |run |start |big |dc |main )*(?:capacitors?|bus bars?|bus terminals))"
)
_METAL = (
    r"(?:screwdriver|screw driver|spanner|wrench|pliers|wire|jumper|metal|tool|lead)"
)

_TABLE: tuple[tuple[str, _Act], ...] = (
    (rf"{_DEFEAT} {_OUT}{_THE}{_ADJ}{_LEAK}(?: (?:out|sensor))?", "bypass_leak_sensor"),
    (rf"(?:put |stick |slap |some )*tape (?:over|on|across) {_THE}{_ADJ}(?:{_LEAK}|"
     r"sensor)",
     "bypass_leak_sensor"),
    (rf"{_LEAK} (?:is |be |been |was |got )*(?:bypassed|jumped|taped|disabled|"
     r"unplugged|jumpered)", "bypass_leak_sensor"),
    (r"(?:short|shorting|shorted|poke|poking|bridge|bridging|zap|touch|jump|discharge|"
     r"bleed|blow|dump|drain|cross) (?:out |across |off |down "
     rf")?{_THE}{_ADJ}{_CAPS}(?: terminals)? (?:with |by |using |across |through )(?:a "
     rf"|my |the |an )?{_ADJ}{_METAL}",
     "short_capacitor"),
    (r"(?:short|shorting|poke|poking|bridge|bridging|jump|jumper) (?:out |across |off "
     rf")?{_THE}{_ADJ}{_CAPS}", "short_capacitor"),
    (rf"i (?:just |already )?(?:shorted|poked|bridged) (?:out )?{_THE}{_ADJ}{_CAPS}",
     "short_capacitor"),
    (rf"{_METAL} (?:across|over|between|on) {_THE}{_ADJ}{_CAPS}", "short_capacitor"),
    (rf"{_HARD} {_OUT}{_THE}{_ADJ}{_GUARD}", "bypass_protection"),
    # A sensor bridged or fooled protects nothing any more, whichever it is.
    (r"(?:jump|jumper|bypass|bridge|bridging|short out|link out|fool|trick|cheat|"
     r"defeat) "
     rf"{_OUT}{_THE}{_ADJ}(?:sensors?|thermistors?|probe)", "bypass_protection"),
    (r"(?:can|could|should|do|may) (?:i|we|you) (?:just |not )?(?:bypass|jump|jumper|"
     r"defeat|override)(?: out)? (?:it|that|this|them)(?: out)?", "bypass_protection"),
    (rf"(?:remove|take|leave|cut|pull|wire) (?:out |off )?{_THE}{_ADJ}{_GUARD} (?:out|"
     r"off|around|away|disconnected|bypassed)(?= |$)", "bypass_protection"),
    (rf"{_GUARD} (?:is |be |been |was |got |can |just )*(?:bypassed|jumped|jumpered|"
     r"bridged|defeated|taped|wired around|linked out|jumped out|tied in|held in)",
     "bypass_protection"),
    (r"(?:run|running|start|leave|let) (?:it |the unit |her )?(?:run )?without "
     rf"{_THE}{_ADJ}{_GUARD}", "bypass_protection"),
    (r"(?:jumper|jump|wire) (?:on|across|over) (?:the )?(?:hp|lp|high pressure|low "
     r"pressure|safety)", "bypass_protection"),
    (r"(?:bigger|larger|higher amp|next size|uprated) (?:breaker|fuse)|foil (?:on|in|"
     r"around) (?:the )?fuse|up ?size the (?:breaker|fuse)", "bypass_protection"),
    (r"(?:work|working|swap|change|replace|unplug|pull|wire|do|fix|land|remove) (?:on "
     r")?(?:it |this |the |that )?(?:[a-z]+ ){0,3}(?:live|hot|while (?:it is )?(?:live|"
     r"hot|powered|on|energi[sz]ed|running)|with (?:the )?(?:power|breaker|mains)(?: "
     r"still)? on|powered up|energi[sz]ed|without (?:killing|cutting|shutting|"
     r"isolating|turning off|pulling)(?: off)?(?: the)? (?:power|breaker|mains|"
     r"disconnect))",
     "live_work"),
    (r"(?:do i|must i|got to|have to|need to) (?:really |actually |even )?(?:kill|shut|"
     r"cut|turn off|isolate|turn|pull) (?:off )?(?:the )?(?:power|breaker|mains|"
     r"disconnect)(?: off)?(?= (?:to|for|before) )", "live_work"),
    (r"(?:force|push|hold|press|pull|stick|jam|block) (?:in |down )?(?:the |that "
     r")?(?:contactor|relay) (?:in|down|closed|shut|by hand)|(?:hold|push|force|press) "
     r"in the (?:contactor|relay)|manually (?:push|pull|close|force)(?: in)? the "
     r"contactor",
     "live_work"),
    (r"(?:skip|leave out|never mind) the (?:lock ?out|loto|isolation|isolating)",
        "live_work"),
    (r"(?:leave|keep) (?:the )?(?:power|breaker|mains|it) (?:on|live) (?:while|when) i "
     r"(?:swap|change|replace|work|unplug|fix|do|pull)", "live_work"),
    (r"(?:^|just |can i )(?:bridge|jump|jumper|bypass) (?:it|that)(?: out)?",
     "bypass_protection"),
    (r"(?:fuse|breaker) (?:for|with|to) (?:a |an )?(?:bigger|larger|higher|"
     r"stronger)(?: one)?|[0-9]+ amp (?:breaker|fuse) instead(?: of [0-9]+)?",
     "bypass_protection"),
    (r"(?:pressuri[sz]e|pressure test|test|pump|crank|charge|take|push|bring) (?:it |"
     r"her |the (?:system|coil|line|lines|lineset) )?(?:up |with nitrogen |to |a bit |"
     r"well )*(?:above|over|past|beyond|higher than|more than) (?:the |its |it is "
     r")?(?:[a-z]+ ){0,2}(?:plate|nameplate|rating|max|maximum|limit|test pressure|"
     r"design pressure)", "over_pressure"),
    (r"(?:oxygen|shop air|compressed air|air compressor) (?:to |for )?(?:pressure test|"
     r"pressuri[sz]e|leak test|test)", "over_pressure"),
)  # fmt: skip
_BYPASSES = tuple((rx(pattern), act) for pattern, act in _TABLE)
_NOT_A_WISH = rx(
    r"do not|did not|never|will not|would not|should not|must not|not going"
)


def bypasses(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each wish or deed that defeats what protects; "did not jump it" is none."""
    found: dict[_Act, Claim] = {}
    for pattern, act in _BYPASSES:
        for match in pattern.finditer(view.folded):
            start, _ = view.clause(match.start())
            refused = _NOT_A_WISH.search(view.folded, start, match.start())
            if act in found or refused or negated(view, match.start()):
                continue
            if any(_inside(match.span(), claim) for claim in found.values()):
                continue
            found[act] = Claim(match.start(), match.end(), BypassFact(act=act))
    return list(found.values())


def _inside(span: tuple[int, int], claim: Claim) -> bool:
    return span[0] < claim.end and claim.start < span[1]
