"""What a call is about when it brings no code."""

from __future__ import annotations

from assistant.facts import ComplaintFact
from assistant.language.claims import Claim, negated, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary
from assistant.rules.kinds import Complaint

_NOT = r"(?:not|never|barely|hardly|no longer|stopped|quit|without)"
_WARM = r"(?:warm|hot|room temperature|lukewarm|tepid|ambient)"
_BLOW = (
    r"(?:blow|blows|blowing|put|puts|putting|pump|pumps|pumping|push|pushing)(?: out| "
    r"only)*"
)
_NOISE = (
    r"(?:noise|noisy|noises|loud|louder|rattle|rattles|rattling|buzz|buzzes|buzzing|"
    r"hum|hums|humming|squeal|squeals|squealing|squeak|squeaks|squeaking|screech|"
    r"screeching|grind|grinds|grinding|bang|bangs|banging|clunk|clunks|clunking|knock|"
    r"knocks|knocking|whine|whines|whining|vibrates|vibrating|vibration|gurgling|"
    r"hissing|chattering|howling|clicking)"
)
_TABLE: tuple[tuple[Complaint, str], ...] = (
    ("no_cooling",
     rf"{_NOT} (?:really |even |getting |very |be )*(?:cool|cooling|cold|cools|cold "
     r"enough|cooling (?:down|off)|blowing cold|putting out cold|making cold|keeping "
     r"(?:cool|cold|up))|no (?:cool|cooling|cold air|ac|air con|aircon|cold|a / c)(?! "
     rf"call| mode)|{_BLOW} (?:out )?(?:{_WARM}) air|air is {_WARM}|never gets? "
     r"(?:cold|cool)|will not (?:cool|get cold|blow cold)|warm air (?:coming|out|from|"
     r"in cool)|(?:room|house|cabin|place|it) (?:is |stays "
     r"|will not "
     r"|getting |gets )+(?:hot|warm|boiling|roasting)(?! (?:to|gas|wire))|does not "
     r"(?:get |blow )?(?:cool|cold)|(?:ac|air con|aircon|cooling|a / c) (?:is )?(?:not "
     r"working|quit|broke|broken|out|dead|stopped working|is not working|does not work|"
     r"will not work)|lost cooling|weak cooling|poor cooling|cooling (?:is )?(?:weak|"
     r"poor)|not (?:very )?cold|can not keep up(?: in the heat)?"),
    ("no_heat",
     rf"{_NOT} (?:really |even |getting |very )*(?:heat|heating|heats|warm|warming|"
     r"getting warm|blowing (?:hot|warm)|putting out heat|making heat)|no (?:heat|"
     rf"heating|hot air|warm air)(?! call| mode| exchanger| pump)|(?:{_BLOW}) (?:out "
     r")?cold air (?:in|on) heat(?:ing)?|will not (?:heat|get warm|warm up)|"
     r"heat(?:ing)? (?:is )?(?:not working|quit|is out|does not work|is not working|"
     r"broke|stopped working)|(?:room|house|cabin|place) (?:is |stays |gets |getting "
     r")+(?:cold|freezing)(?! (?:enough|by|now|again))|(?:room|house|cabin|place) will "
     r"not get (?:warm|hot)|does not (?:heat|get warm|warm up)|cold air (?:in|on) "
     r"heat(?:ing)?|lost heat(?:ing)?|it is freezing in here"),
    ("short_cycling",
     r"short cycl(?:e|es|ed|ing)|cycl(?:es|ing) on and off|(?:on and off|starts and "
     r"stops|starting and stopping|comes on and goes off|kicks on and off|on off on "
     r"off)(?: all| every| over| constantly)?(?= |$)(?! on)(?: the time| day| and "
     r"over)?|runs? (?:for )?(?:only |about |just )*(?:half a|a|an|couple(?: of)?|few|"
     r"a few|[0-9]+)(?: or [0-9]+)? (?:min|sec)(?: or so)?(?: ,)? (?:then|and)(?: it)? "
     r"(?:quits|stops|shuts (?:off|down)|cuts out|dies|trips|goes off|drops out|kicks "
     r"off|quit)(?: ,)?(?: over and over)?|keeps (?:starting and stopping|cycling|"
     r"cutting (?:in and )?out|shutting (?:off|down)|turning (?:on and )?off)|starts "
     r"up then (?:quits|stops|dies)"),
    ("icing",
     r"(?:coil|evaporator|condenser|unit|outdoor unit|outdoor|lines?|pipes?|suction "
     r"line|it|she|head"
     r"|outdoor coil|indoor coil|line ?set|outside unit) (?:is |are |keeps |gets |got |"
     r"has |was |all |just |getting |completely |totally |been )*(?:icing|iced|ices|"
     r"freezing|freezes|frozen|froze|frosting|frosted|frosts|a block of ice|covered in "
     r"(?:ice|frost))(?: up| over| solid)*|(?:ice|frost) (?:on|all over|building up|"
     r"build ?up|forming|covering)(?: on)?(?: the)?(?: coil| pipe| pipes| line| lines| "
     r"unit)?|(?:icing|freezing|frosting|freezes|ices|iced) (?:up|over)|block of ice"),
    ("breaker_trips",
     r"(?:rcd|gfci|ground fault) (?:trips|tripped|tripping|pops|popped|keeps tripping)|"
     r"(?:trips|tripping|tripped|trip|popping|pops|popped|kicks|kicking|blows|blowing|"
     r"blew|throws)(?: off| out)? (?:the |my |a |its |it is )?(?:main )?(?:breaker|"
     r"fuse|fuses)|breaker (?:is |keeps |has |just |keeps on |was |on it |had "
     r")*(?:trips|tripping|tripped|popping|pops|popped|going|blows|kicking|kicked|will "
     r"not hold|blew)|breaker will not (?:hold|stay|reset)"),
    ("noise",
     r"(?:making |makes |made |has |is |it is |there is |lots of |a |an |really |very "
     r"|awful |loud |weird |strange |funny |bad |horrible |terrible |just |only |fan |"
     r"compressor |unit |outdoor "
     rf"|indoor |sounds |it |she |kind of |starts |started |of )+{_NOISE}(?! along)|"
     r"sounds (?:awful|rough|weird|terrible|horrible|like (?:a |an )?(?:jet|freight "
     rf"train|tractor|{_NOISE[3:-1]}))|racket|{_NOISE} (?:noise|sound)s?|(?:loud|weird|"
     rf"strange|funny) (?:noise|sound)s?|^{_NOISE}"),
    ("water",
     r"(?:water|condensate|it|she|unit|head|indoor unit|air handler|drain pan|ceiling|"
     r"indoor|pan|drain) (?:is |keeps |was |has |been |all |just |started |comes |"
     r"running |coming "
     r"|pouring |out |down |the |from )*(?:leaking|leaks|leaked|dripping|drips|dripped|"
     r"overflowing|overflows|overflowed|spilling)(?! (?:refrigerant|gas|oil|"
     r"charge))(?: water)?|leaking water|^(?:dripping|leaking)|(?:dripping|leaking|"
     r"drips|leaks) (?:on|onto|all over|down) (?:the )?(?:floor|carpet|wall|walls|"
     r"ceiling|bed|desk|rug|sofa)|water (?:on|all over|under|coming|running|dripping|"
     r"down|leak|leaks|leaking|everywhere|spots?|stain|puddle|damage)|puddle|(?:drain|"
     r"condensate line) (?:is )?(?:blocked|clogged|plugged|backed up)|float switch "
     r"(?:tripped|is up)"),
    ("high_bill",
     r"(?:high|huge|big|crazy|massive|higher|expensive|doubled|through the roof)(?: "
     r"power| electric| electricity| energy| utility| light)* (?:bill|bills)|(?:bill|"
     r"bills) (?:is |are "
     r"|has |have |went |gone |just |been |keeps |so |way |too |was )*(?:high|huge|"
     r"doubled|tripled|up|through the roof|crazy|higher|climbing|sky high)|(?:using|"
     r"uses|burning|burns|eats|eating|pulling) (?:too much|a lot of|so much|tons of|"
     r"loads of) (?:power|electricity|energy|juice)|costs? a fortune to run|runs? "
     r"(?:all the time|non ?stop|constantly|24 / 7)"),
    ("blank_thermostat",
     r"^screen (?:is )?(?:dark|dead|blank)|(?:thermostat|stat|wall controller|"
     r"controller|remote|thermostat screen|thermostat display)(?: screen| display)? "
     r"(?:is |are |has |just |went |gone |goes |all |screen |display |was |totally "
     r")*(?:blank|dead|black|empty|dark|off|no display|nothing on it|will not turn on|"
     r"unlit)(?! spot)|blank (?:thermostat|stat|screen|controller|display)|(?:nothing|"
     r"no display) on (?:the )?(?:thermostat|stat|controller)(?: screen)?|no "
     r"(?:display|screen) on the thermostat|dead thermostat"),
    ("wont_start",
     r"(?:it|she|unit|system|compressor|outdoor unit|outdoor|thing|outside unit|ac|"
     r"condenser|heat pump|machine) (?:just |still |is |does |did |will |can |would "
     r")*(?:not|never) (?:even |want to |be )*(?:start|turn on|come on|run|kick in|"
     r"kick on|fire up|power up|power on|starting"
     r"|turning on|coming on|running|starting up|do anything)(?: up)?(?! (?:long|for "
     r"long|right|out|away))|will not (?:start|turn on|come on|run|power up|fire up|"
     r"kick in|kick on)(?! for| long)|(?:does not|did not|refuses to|fails to) "
     r"(?:start|turn on|come on|fire up|kick on)|(?:unit|it|system|outdoor unit|whole "
     r"thing|outdoor|everything) is (?:completely "
     r"|totally |stone )?dead|nothing happens|no start|dead as a doornail|(?:not|is "
     r"not) (?:starting|turning on|coming on)"),
)  # fmt: skip
_COMPLAINTS = tuple((name, rx(pattern)) for name, pattern in _TABLE)
_QUESTION = rx(
    r"(?:how long|when|till|until|should|do i|does|if|can i|should it|before) "
    r"(?:[a-z]+ ){0,4}"
)
_POSITIVE = frozenset({"noise", "icing", "water", "high_bill", "breaker_trips",
                       "short_cycling", "blank_thermostat"})  # fmt: skip


def complaints(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim what is wrong in plain words; "not frosted" and "no noise" are none."""
    found: list[Claim] = []
    for name, pattern in _COMPLAINTS:
        for match in pattern.finditer(view.folded):
            start, _ = view.clause(match.start())
            asked = _QUESTION.search(view.folded[start : match.start()] + " ")
            denied = name in _POSITIVE and negated(view, match.start())
            if not asked and not denied:
                fact = ComplaintFact(complaint=name)
                found.append(Claim(*match.span(), fact, shares=True))
                break
    return found
