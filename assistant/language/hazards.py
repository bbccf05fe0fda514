"""Dangers now, in many words; "no burning smell" is none."""

from __future__ import annotations

import re

from assistant.facts import HazardFact
from assistant.language.claims import Claim, negated, rx
from assistant.language.tokens import Tokens, fold
from assistant.language.vocabulary import Vocabulary
from assistant.rules.kinds import Hazard

_SMELL = r"(?:smell|smells|smelling|smelled|smelt|stinks?|stank|whiff|odou?r|reeks?)"
_ELECTRIC = (
    r"(?:electrical box|board|boards|electrics?|electrical|electronics|terminals?|"
    r"wiring|wires|disconnect|panel|breaker|inverter|control box|junction box|live "
    r"parts|outlet)"
)
_PERSON = (
    r"(?:i|me|my (?:mate|helper|partner|wife)|customer|guest|someone|somebody|he|she|"
    r"kid|we)"
)
_FILLER = r"(?:[a-z]+ ){0,3}"

_TABLE: tuple[tuple[str, Hazard], ...] = (
    (r"(?:somethings?|it|wiring|wires?|board|motor|unit|plug|cable|plastic) (?:is "
     r")?(?:burning|smouldering|scorched)(?! (?:through|too|a lot|energy|power|up))",
     "burning"),
    (rf"{_SMELL} (?:something |a bit |kind of |really )*(?:electrical|hot)(?! gas)",
     "burning"),
    (r"breaker (?:(?:and|but|,|then) )*(?:it )?(?:tripped|trips|popped|blew|went)(?: "
     r"off| out)? (?:again|right away|straight away|immediately)", "breaker_again"),
    (rf"{_PERSON} (?:just |has )?(?:fainted|collapsed|passed out)", "unwell"),
    (r"(?:rain|snow|condensate) (?:is |was |has |got |gets |getting |coming |dripping |"
     r"blowing |running |all )*(?:on|onto|into|in|over|inside|through) (?:the |my |to "
     rf"the )?{_FILLER}{_ELECTRIC}", "water_on_electrics"),
    (r"windings? grounded|0(?: ohm)? to (?:ground|earth)", "compressor_to_ground"),
    (r"lightning (?:is )?(?:everywhere|striking|flashing|all over)", "storm_or_alone"),
    (rf"burning (?:{_SMELL}|wires?|plastic|rubber|electrical)", "burning"),
    (rf"burnt {_SMELL}|burned {_SMELL}|(?:electrical|hot|acrid) (?:burning )?{_SMELL}",
     "burning"),
    (rf"{_SMELL} (?:of |like |something |a bit |kind of |really |pretty )*(?:burning|"
     r"burnt|burned|smoke|smoky|melting|scorched|hot plastic|hot wires?|hot "
     r"electrics?)",
     "burning"),
    (rf"(?:is|are|was|started|keeps|it|board|unit) {_FILLER}(?:smoking|on fire|"
     r"sparking|arcing|melting|smouldering|smoldering|glowing red)", "burning"),
    (r"(?:see|saw|seeing|seen|there is|there was|some|lots of|wisp of|puff of|bit of|"
     r"little|got|any)(?: a)?(?: lot of)?(?: white| black| grey| blue)? smoke",
         "burning"),
    (r"(?:white |black |grey )?smoke (?:is )?(?:coming|came|comes|out|from|pouring)",
     "burning"),
    (r"caught fire|flames (?:coming|out|from|in)|(?:saw|see|seen) (?:a )?flames?|"
     r"scorch marks?|(?:a|big|blue) spark|sparks? (?:flying|coming|came|from)|(?:saw|"
     r"seen|see|throwing|big) sparks?",
     "burning"),
    (r"breaker (?:is |has |just |keeps? (?:on )?)?(?:tripping|trips|tripped|popped|"
     r"pops|blew|kicks|kicked|goes|went)(?: off| out)? (?:[a-z]+ ){0,3}(?:again|"
     r"straight away|right away|immediately|every time|instantly|second time|once more|"
     r"the moment|as soon as)", "breaker_again"),
    (r"(?:trips|tripped|tripping|pops|popped|blows|blew|kicks|kicked)(?: off| out)?(?: "
     r"the)?(?: main)? breaker (?:[a-z]+ ){0,3}(?:again|straight away|right away|"
     r"immediately|every time|instantly|second time|the moment|as soon as)",
     "breaker_again"),
    (r"breaker keeps (?:on )?(?:tripping|popping|going|kicking|blowing|throwing)",
     "breaker_again"),
    (r"keeps (?:on )?(?:tripping|popping|blowing|throwing|kicking)(?: off| out)?(?: "
     r"the| my)?(?: main)? (?:breaker|fuse|fuses)", "breaker_again"),
    (r"breaker will not (?:hold|stay|reset|set)(?: in| on| up)?", "breaker_again"),
    (r"(?:breaker )?(?:tripped|trips) (?:it |the breaker )?again (?:when|after|as "
     r"soon)",
     "breaker_again"),
    (rf"(?:{_SMELL} |smell of |whiff of )(?:of |like |a bit of )*(?:natural |propane |"
     r"lp )?gas(?! leak sensor)|gas (?:leak|smell|odou?r)(?! (?:sensor|detector|alarm "
     r"is fine))|rotten eggs?|carbon monoxide|co (?:alarm|detector|monitor|reading)|"
     r"smells? (?:of|like) gas", "gas"),
    (r"(?:leak|refrigerant|gas) (?:alarm|detector|sensor|monitor)(?: is| was| has| "
     r"just| keeps| started| went)* (?:going off|went off|gone off|goes off|off|"
     r"beeping|sounding|alarming|alarm|tripped|screaming|ringing|alert|triggered)",
         "leak_alarm"),
    (r"(?:leak|refrigerant) alarm(?! (?:is )?(?:not|sensor|test|silent|off line))",
     "leak_alarm"),
    (r"refrigerant (?:leak|leaking) (?:in|into|inside) (?:the |a )?(?:room|bedroom|"
     r"cabin|space|house|closed)|room full of (?:refrigerant|gas)", "leak_alarm"),
    (rf"{_PERSON} (?:am |is |are |feel |feels |feeling |felt |got |gets |getting |has |"
     r"have |started |keep |went |a bit |kind of |really )+(?:dizzy|faint|fainted|sick|"
     r"unwell|ill|nauseous|light headed|lightheaded|headaches?|a headache|a shock|"
     r"shocked|electrocuted|zapped|a zap|burned|burnt|a belt|collapsed|unconscious|"
     r"short of breath|chest pains?|heat stroke|overheated)", "unwell"),
    (r"(?:got|gets|getting|gave me|giving me|felt|feel) (?:a |an |an electric |a bit "
     r"of a |little |big )*(?:shock|shocked|zap|zapped|tingle|tingles|belt)(?: off| "
     r"from)?",
     "unwell"),
    (r"feel(?:s|ing)? (?:a bit |really |kind of |very )?(?:dizzy|faint|sick|ill|unwell|"
     r"nauseous|lightheaded|light headed)|passed out|can not breathe|trouble breathing|"
     r"refrigerant (?:burn|on my skin|in my eyes?)|frostbite",
     "unwell"),
    (r"water (?:is |was |has |got |gets |getting |coming |dripping |dripped |leaking |"
     r"leaked |running |ran |pouring |all |down |right |straight )*(?:on|onto|into|in|"
     r"over|inside|through|near|by|around|at) (?:the |my |to the "
     rf")?{_FILLER}{_ELECTRIC}",
     "water_on_electrics"),
    (r"(?:dripping|leaking|pouring|raining|drips|leaks|sprayed|hosed) (?:right |"
     rf"straight )?(?:on|onto|into|over|in) (?:to )?(?:the |my )?{_FILLER}{_ELECTRIC}",
     "water_on_electrics"),
    (rf"{_ELECTRIC} (?:is |are |got |gets |all |was |sitting |looks? |under )+(?:wet|"
     r"soaked|flooded|under water|water|submerged|soaking|damp|in water)",
         "water_on_electrics"),
    (r"standing in water|flooded (?:unit|board|panel)|unit (?:is |was |got "
     r")?(?:flooded|under water|submerged)", "water_on_electrics"),
    (r"(?:compressor|winding|windings) (?:is |are |has |gone |dead |got |a |shorted |"
     r"short |grounded )+(?:to )?(?:ground|grounded|earth|earthed)(?! (?:is )?(?:ok|"
     r"good|fine|clear|open|wire|reads|reading|[0-9]))", "compressor_to_ground"),
    (r"grounded compressor|(?:dead |direct )?short(?:ed)? to (?:ground|earth|case|"
     r"shell)|compressor (?:is )?(?:shorted|grounded)(?: out)?|burned out to ground",
     "compressor_to_ground"),
    (r"(?:[uvwcrs]|windings?|compressor) to (?:ground|earth|shell|case) (?:is |reads |"
     r"shows |at |about |like |gives |measures )*(?:0|0\.[0-9]+|a dead short|dead "
     r"short|shorted|a short|short|continuity)(?: ohm)?(?! (?:kohm|k|"
     r"megohm))", "compressor_to_ground"),
    (r"(?:there is |there are |big |a |got |heavy |bad |is a )+(?:thunder ?storm|storm|"
     r"lightning|thunder)(?: storm)? (?:is |right |rolling |coming |moving |here|"
     r"overhead|outside|now|about|starting|blowing|going|on|near|close|around)",
         "storm_or_alone"),
    (r"(?:storm|thunder|thunderstorm|lightning) (?:is |are )?(?:rolling in|coming|"
     r"overhead|moving in|right here|all around|close|starting|about to hit|nearby|"
     r"here now|outside|going on)", "storm_or_alone"),
    (r"(?:hear|hearing|see|seeing) (?:the )?(?:thunder|lightning)", "storm_or_alone"),
    (r"(?:alone|by myself|on my own|solo)(?: up)?(?: here)? (?:on|up on|at) (?:the |a |"
     r"this )?(?:roof|ladder|rooftop)|(?:on|up on|up a|on top of) (?:the |a |this "
     r")?(?:roof|ladder|rooftop)(?: here)? (?:alone|by myself|on my own|solo|with "
     r"nobody)|on the roof and (?:i am )?(?:alone|by myself|on my "
     r"own)", "storm_or_alone"),
)  # fmt: skip
_HAZARDS = tuple((rx(pattern), hazard) for pattern, hazard in _TABLE)
_OVER = rx(
    r"used to|last (?:week|month|year|summer|winter)|(?:years?|months?|weeks?) ago|"
    r"what if|in case|is there (?:a|any) (?:risk|danger)"
)


def hazards(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim every danger that is told as present and not negated."""
    found: dict[Hazard, Claim] = {}
    for pattern, hazard in _HAZARDS:
        for match in pattern.finditer(view.folded):
            if hazard not in found and _is_now(view, match):
                fact = HazardFact(hazard=hazard)
                found[hazard] = Claim(match.start(), match.end(), fact, shares=True)
    return [*found.values(), *_own_phrases(view, vocabulary)]


def _is_now(view: Tokens, match: re.Match[str]) -> bool:
    start, end = view.sentence(match.start())
    told_over = _OVER.search(view.folded, start, end)
    return not negated(view, match.start()) and not told_over


def _own_phrases(view: Tokens, vocabulary: Vocabulary) -> list[Claim]:
    """Claim the stop phrases of the packs themselves."""
    found = []
    for gid, phrases in vocabulary.stop_phrases:
        for phrase in phrases:
            match = rx(re.escape(fold(phrase)) or r"(?!)").search(view.folded)
            if match and not negated(view, match.start()):
                fact = HazardFact(phrase=gid)
                found.append(Claim(match.start(), match.end(), fact, shares=True))
                break
    return found
