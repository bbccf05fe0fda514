"""Yes or no about the state of the unit and the person's means."""

from __future__ import annotations

import re

from assistant.facts import ContextFact, ContextName
from assistant.language.claims import Claim, rx
from assistant.language.tokens import Tokens
from assistant.language.vocabulary import Vocabulary

_IS = (
    r"(?:is |are |was |has |been |still |just |now |also |both |there |it |already |"
    r"all )*"
)
_NOT = (
    r"(?:is |are |was |does |did |do |will |has |have |can |it |still |just )*(?:not|"
    r"never) (?:even |really |been )?"
)
_COMP = r"(?:the )?compressor"
_OFAN = r"(?:outdoor|outside|condenser|outside unit|outdoor unit|top) fan"
_IFAN = r"(?:indoor|inside|head|evaporator) fan|(?:indoor )?blower"
_RUN = r"(?:running|spinning|going|turning|on|humming along|runs|spins|turns|working)"
_HALT = r"(?:off|stopped|dead|idle|still|sitting|stationary|stuck|quiet|silent)"
_POWER = r"(?:power|breaker|breakers|disconnect|mains|isolator|supply|everything)"
_SENSOR = (
    r"(?:(?:discharge|coil|room|outdoor|suction|pipe|ambient|hot gas|indoor|return)? "
    r"?(?:air |coil |pipe )?sensors?)"
)
_OUTAGE = (
    r"(?:before|when|at the time of|prior to|during|until)(?: (?:the |a |that |it )?(?:"
    r"~+|power|outage|blackout|cut|storm|lights)| ~+)"
)
"""A power cut that an earlier matcher may have taken."""

_TABLE: tuple[tuple[ContextName, str, str], ...] = (
    ("call present",
     r"(?:thermostat|stat|it|she|unit|room|controller|remote|heat|cool|y|zone) "
     rf"{_IS}(?:says |shows )?(?:calling|asking for (?:cool|heat|cooling|heating))(?: "
     r"for [a-z]+)?"
     r"|calling for (?:heat|heating|cool|cooling)|(?:there is |have |has |got |we have "
     r")+(?:a |an )?(?:active )?(?:call|demand)(?! back| out)|call (?:is )?(?:present|"
     r"on|there|active)|demand is (?:on|there)|y is (?:hot|energized|live)|with a call",
     rf"(?:thermostat|it|she|unit|zone|controller) {_NOT}(?:calling|asking)(?: for "
     r"[a-z]+)?"
     r"|(?:no|without a|without any|is not a|is not any) (?:call|demand)(?: (?:for|"
     r"from) (?:the )?[a-z]+)?|not calling(?: for [a-z]+)?|(?:thermostat|room|it) "
     r"(?:is )?satisfied|nothing (?:is )?calling"),
    ("power off",
     rf"{_POWER} {_IS}(?:off|pulled|out|isolated|killed|open|down|dead)(?! and (?:back "
     r")?on)|(?:locked out (?:and )?tagged(?: out)?|loto|isolated|de ?energi[sz]ed|"
     r"powered down|unit is isolated)|with (?:the )?power off|no power to (?:it|the "
     r"unit)",
     rf"{_POWER} {_IS}(?:on(?! (?:the|to)(?!\S))|live|still on|in|back on|up|hot)|"
     r"still live|it is (?:still )?live|(?:still |it is )(?:powered|energi[sz]ed)|with "
     rf"(?:the )?power on|{_POWER} {_NOT}off"),
    ("sensor unplugged",
     r"(?:unplugged|disconnected|pulled|removed|isolated|took off|took out) (?:the |a "
     r"|its |it is "
     rf"|that |both )?{_SENSOR}|{_SENSOR} {_IS}(?:unplugged|disconnected|off the board|"
     r"out of the board|pulled|isolated|out of circuit)|with (?:the )?sensor "
     r"(?:unplugged|off|out)",
     rf"{_SENSOR} {_IS}(?:plugged in|connected|in circuit|on the board)|{_SENSOR} "
     rf"{_NOT}(?:unplugged|disconnected)|(?:did not|have not|without) (?:unplug|"
     rf"unplugged|unplugging|disconnect|disconnecting) (?:the )?{_SENSOR}"),
    ("temperature at the sensor",
     r"(?:measured|took|checked|got|with) (?:the |a )?(?:temperature|thermometer|"
     r"thermocouple) (?:right )?(?:at|on|by|next to|strapped to) (?:the )?(?:sensor|"
     r"pipe)",
     r"(?:did not|have not|no|can not|could not) (?:measure|measured|take|check|got|"
     r"get|have|know)? ?(?:the |a )?(?:temperature|thermometer|thermocouple)(?: (?:at|"
     r"on) (?:the )?sensor)?"),
    ("mains at the terminals",
     r"(?:got |have |has |there is |reading |good |full |line )+(?:power|mains|voltage|"
     r"line voltage|supply) (?:is )?(?:at|on) (?:the )?(?:terminals|terminal block|"
     r"unit|board|l1|disconnect)|(?:power|mains|voltage) (?:is )?(?:present|good|"
     r"there)(?: at (?:the )?terminals)?|at the (?:unit |outdoor |line |input "
     r")?terminals",
     r"(?:no|not any|zero) (?:power|mains|voltage|supply|line voltage) (?:is )?(?:at|"
     r"on) (?:the )?(?:terminals|terminal block|unit|board|disconnect)|nothing at the "
     r"terminals"),
    ("fixed speed",
     r"(?:fixed|constant|locked) (?:speed|frequency|hz)(?: mode)?|forced (?:cooling|"
     r"heating|run|mode)|(?:in|on) (?:test|charge|charging) (?:mode|run)|speed (?:is "
     r")?(?:fixed|locked|held)",
     r"not (?:in |at |on )?(?:a )?(?:fixed|constant|locked) (?:speed|frequency)|speed "
     r"(?:is )?(?:ramping|hunting|changing|varying|modulating|not fixed)|(?:modulating|"
     r"ramping up and down)"),
    ("compressor running",
     rf"{_COMP} {_IS}{_RUN}(?! (?:hot|rough|loud))|(?:can hear|hear) {_COMP}(?: "
     r"running)?",
     rf"{_COMP} {_NOT}(?:run|ran|start|started|{_RUN[3:-1]}|come on|kick in|fire|"
     rf"starting)|{_COMP} {_IS}{_HALT}|{_COMP} (?:does|is|will|did) not(?= ,|$| \.)|"
     r"(?:no|without) compressor(?! (?:failure|fault|problem|issue|code))"),
    ("outdoor fan running",
     rf"(?:{_OFAN}) {_IS}{_RUN}(?! (?:free|freely|by hand|slow|rough))",
     rf"(?:{_OFAN}) {_NOT}(?:run|start|spin|turn|{_RUN[3:-1]}|come on|starting)|"
     rf"(?:{_OFAN}) {_IS}{_HALT}|no (?:{_OFAN})"),
    ("indoor fan running",
     rf"(?:{_IFAN}) {_IS}{_RUN}(?! (?:free|freely|by hand|slow|rough))",
     rf"(?:{_IFAN}) {_NOT}(?:run|start|spin|turn|{_RUN[3:-1]}|come on|starting)|"
     rf"(?:{_IFAN}) {_IS}{_HALT}|no (?:{_IFAN})"),
    ("gauges at hand",
     r"(?:have|got|have got|with|there are|brought|grabbed|hooked up|put) (?:my |the |"
     r"a set of |a |some )?(?:digital )?gauges?(?: (?:on me|with me|here|on|in the van|"
     r"in the truck|on it))?|gauges are (?:on|here|hooked up|connected)",
     r"(?:no|without|not got|do not have|have not got|did not bring|not|left)(?: my| "
     r"the| any| a set of| got| have)* gauges?(?: (?:on me|with me|here|today|at home|"
     r"at the shop|in the truck))?|gauges are (?:in the (?:shop|other)|not here|at)"),
    ("meter at hand",
     r"(?:have|got|have got|with|brought|grabbed) (?:my |the |a |an )?(?:volt |good |"
     r"clamp )?meter(?: (?:on me|with me|here|handy))?",
     r"(?:no|without|not got|do not have|have not got|did not bring|not)(?: my| a| the|"
     r" any| got| have)* (?:volt |clamp )?meter(?: (?:on me|with me|here|today))?|"
     r"meter is (?:dead|broken)"),
    ("off before the outage",
     rf"(?:it|she|unit|the unit|system|everything) {_IS}(?:switched |turned |shut "
     rf")?off "
     rf"(?:anyway |already )?{_OUTAGE}|(?:was not|were not|not) (?:even )?(?:running|"
     rf"on|"
     rf"in use) {_OUTAGE}|off before (?:it|that|all that|then)|(?:had|have) it (?:"
     rf"switched |turned )?off {_OUTAGE}",
     rf"(?:it|she|unit|the unit|system|everything) {_IS}(?:running|on|working|cooling|"
     rf"heating|in use) (?:fine |ok |just fine )?{_OUTAGE}|(?:had|have) it (?:on|"
     rf"running) {_OUTAGE}|was not off {_OUTAGE}"),
    ("surge",
     r"(?:had |was |there was |got |took |after |been |have had |a |an |power "
     r")+(?:power |voltage |lightning )?(?:surge|strike|lightning strike)(?! "
     r"protector)|lightning (?:hit|struck|strike|took out|got|landed)(?: (?:the|a|my|"
     r"our|near|close))*(?: [a-z]+)?|(?:hit|struck|fried|got) by lightning|power "
     r"surged|voltage spike",
     r"(?:never|no|not) (?:had |seen |been |any |a |have |power |had a )*(?:surge|"
     r"surges|lightning|strike|strikes|storm|storms|spike)|did not (?:have|get) (?:a |"
     r"any )?(?:surge|lightning)"),
    ("frosted",
     r"(?:is |are |was |all |got |it is |getting |looks |coil |fully |completely |"
     r"heavily |lines? |pipe )+(?:frosted|iced|frosting|iced up|frozen|frosted up|"
     r"frosted over|frozen up|iced over|frozen solid|a block of ice|icing|icing up|"
     r"freezing up)|(?:frost|ice) (?:on|all over|building|over|covering) (?:the |up |"
     r"on )*(?:coil|pipe|line|lines|suction|outdoor|unit|evaporator)|(?:there is|see|"
     r"seeing) (?:some |a bit of )?(?:frost|ice)",
     r"not (?:at all )?(?:frosted|iced|frozen|frosting|icing|iced up|frosted up|frozen "
     r"up)|no (?:sign of |visible )?(?:frost|ice|icing)|(?:free|clear) of (?:ice|"
     r"frost)"),
    ("module disconnected",
     r"(?:(?:inverter )?module|inverter|ipm|compressor (?:leads?|wires?|plug|"
     r"harness)|u ?v ?w|(?:motor|compressor) leads?) "
     rf"{_IS}(?:disconnected|unplugged|off|pulled|lifted|isolated)|(?:disconnected|"
     r"unplugged|pulled|lifted|took off) (?:the )?(?:inverter )?(?:module|inverter|ipm|"
     r"compressor (?:leads?|wires?|plug|harness)|motor leads?)|with (?:the )?(?:module|"
     r"inverter|compressor leads) (?:off|disconnected|unplugged)",
     r"(?:(?:inverter )?module|inverter|ipm|compressor (?:leads?|plug|harness)) "
     rf"{_IS}(?:connected|plugged in|still on|on the board)|(?:module|inverter|ipm|"
     rf"compressor leads?) {_NOT}(?:disconnected|unplugged|off)|(?:did not|have not|"
     r"without) (?:disconnect|disconnected|disconnecting|unplug|unplugging) (?:the )?"
     r"(?:module|inverter|ipm|compressor leads?)"),
    ("not under vacuum",
     r"(?:it is |is |was |compressor |system )*(?:not|never) (?:in|under)(?: a)? "
     r"vacuum|no vacuum (?:on|in) (?:it|the (?:system|compressor))|there is pressure "
     r"in (?:it|the (?:system|compressor|unit))",
     r"(?<!not )(?<!never )(?:under|in)(?: a)? vacuum|pulled (?:down )?(?:to|into)(?: "
     rf"a)? vacuum|vacuum pump {_IS}(?:on|running|connected)"),
    ("leads disconnected",
     r"(?:with )?(?:both |its |the )*(?:wires?|leads?|spades?|terminals?) "
     rf"{_IS}(?:off|pulled|disconnected|removed|lifted)|(?:pulled|removed|"
     r"disconnected|lifted|took off) (?:both |its |the )*(?:wires?|leads?|spades?)|out "
     r"of (?:the )?circuit",
     r"(?:wires?|leads?|spades?) (?:are |were |still )+(?:on(?= ,|$| \.)|connected)|"
     r"(?:did not|have not|without) "
     r"(?:pull|pulling|disconnect|disconnecting|lift|lifting) (?:the |its )?(?:wires?|"
     r"leads?)|in circuit"),
    ("header unplugged",
     r"(?:motor |fan |fan motor )?(?:header|plug|connector) "
     rf"{_IS}(?:unplugged|disconnected|pulled|out|off)|(?:unplugged|disconnected|"
     r"pulled) (?:the )?(?:fan |motor |fan motor )(?:header|plug|connector|motor)|with "
     r"(?:the )?(?:motor|fan|fan motor|header) (?:unplugged|disconnected)",
     r"(?:motor |fan |fan motor )?(?:header|plug|connector) "
     rf"{_IS}(?:plugged in|connected|still in)|(?:header|plug|connector) "
     rf"{_NOT}(?:unplugged|disconnected|out)|with (?:the )?(?:motor|fan|header) "
     r"plugged in"),
    ("capacitor discharged",
     rf"(?:capacitors?|cap) {_IS}discharged?|discharged? (?:the |it |that )*"
     r"(?:capacitor|cap)",
     rf"(?:capacitor|cap) {_NOT}discharged?|(?:did not|have not|without) "
     r"(?:discharged?|discharging) (?:the )?(?:capacitor|cap|it)"),
    ("bus measured dead",
     r"(?:measured|checked|proved|proven|verified) (?:the )?(?:bus|dc|banks?|"
     rf"capacitors?) {_IS}(?:dead|discharged?|under 50(?: v)?)|(?:bus|banks?) "
     rf"{_IS}(?:measured|proved|proven|checked) (?:dead|discharged?)",
     rf"(?:bus|banks?) {_NOT}(?:measured|checked|dead|proved)|(?:did not|have not) "
     r"(?:measure|measured|check|checked) (?:the )?(?:bus|banks?)"),
    ("digital meter",
     r"(?:digital|dmm) (?:multi)?meter|(?:meter|it) (?:is )?(?:a )?digital|"
     r"with (?:a |my )?dmm",
     r"(?:analog|analogue|needle) (?:multi)?meter|meter (?:is )?(?:an? )?(?:analog|"
     r"analogue)"),
    ("gauge at the named port",
     rf"(?:gauges?|hose|manifold) {_IS}(?:on|at|connected to|hooked (?:up )?to) "
     r"(?:the )?(?:(?:right|named|large|small|big|suction|liquid|service|discharge|"
     r"vapou?r|gas) )*(?:port|valve|line|pipe|service valve)",
     rf"(?:gauges?|hose|manifold) {_NOT}(?:on|at|connected|hooked up)|(?:wrong|other|"
     r"different) port"),
    ("charge test running",
     r"(?:in|on|running|started|put it in|put it into) (?:the )?(?:maker s )?(?:charge|"
     r"charging) (?:test|mode|check)(?: mode)?|(?:charge|charging) (?:test|mode) "
     rf"{_IS}(?:running|on|active)",
     r"(?:no|without|not in|not on|not running)(?: the| a| any)? (?:charge|charging) "
     rf"(?:test|mode)|(?:charge|charging) (?:test|mode) {_NOT}(?:running|on|active)|"
     rf"(?:charge|charging) (?:test|mode) {_IS}off"),
    ("running steadily",
     r"(?:been |has been |it has |has |is |was )*(?:running|ran|settled|steady)"
     r"(?: (?:steady|steadily|fine))? (?:for |about |over |at least |a good )*(?:15|"
     r"20|25|30|40|45|60|quarter of an|half an) (?:min|hour)|(?:running|runs) "
     r"(?:steady|steadily)|(?:it|everything) (?:has )?settled(?: (?:down|out))?",
     r"(?:only )?just (?:started|came on|kicked in)|"
     r"(?:not|never) (?:settled|steady|running steadily)"),
    ("sensors at one temperature",
     r"both (?:sensors? )?(?:are |were |have been |stood |sat |sitting |in |at )+"
     r"(?:the )?(?:same|one) (?:temperature|place|room|cup|bucket|ice water)|"
     r"(?:same|one) temperature (?:on|for|at) both",
     r"(?:not|never) (?:at |in )?(?:the )?(?:same|one) (?:temperature|place)|different "
     r"(?:temperatures|places)"),
    ("board powered",
     rf"board {_IS}(?:powered(?: up)?|live|on|energi[sz]ed)|with (?:the )?board "
     r"(?:powered|on|live)",
     rf"board {_IS}(?:off|dead|isolated|unpowered)|board {_NOT}(?:powered|on|live)"),
    ("full speed",
     rf"(?:{_COMP} |it |she |unit )?{_IS}(?:at|on|held at|running at|in) full (?:speed|"
     r"load|capacity|tilt)|(?:flat|wide) out|maximum (?:speed|frequency)",
     r"(?:not|never) (?:at |on |running at )*full (?:speed|load|capacity)|(?:low|part|"
     r"half|reduced|minimum) (?:speed|load)|(?:ramped|throttled) down"),
    ("airflow as stated",
     r"(?:air ?flow) (?:is |was |checks |looks )*(?:right|correct|good|set|as (?:the "
     r"book|stated|specified)|to (?:the )?(?:book|spec)|measured|verified)|(?:measured|"
     r"verified|checked) (?:the )?air ?flow",
     r"(?:air ?flow) (?:is |was )*(?:low|poor|weak|down|restricted|not (?:right|"
     r"known|measured|checked))|(?:dirty|clogged|plugged) (?:filter|coil)|(?:did not|"
     r"have not) (?:measure|measured|check|checked) (?:the )?air ?flow"),
    ("alone",
     r"(?:i am |am |here |working )+(?:all )?(?:alone|by myself|on my own|solo)|"
     r"(?:nobody|no one) (?:else )?(?:is )?(?:here|with me|around)",
     r"(?:not|am not) (?:alone|by myself|on my own)|(?:someone|somebody|my mate|my "
     r"helper|helper|my partner|apprentice) (?:is )?(?:here|with me)|got a helper|"
     r"(?:two|2) of us"),
)  # fmt: skip
_ROWS = tuple((name, rx(yes), rx(no)) for name, yes, no in _TABLE)
_OPEN = re.compile(
    r"(?<!\S)(?:should|if|when will|until|till|before|make sure|what if|could|once|"
    r"does|did|how|why|do)(?!\S)(?! not)"
)
_QUESTION = re.compile(
    r"(?:is|are|does|do|has|have|should|can|will|was|did)(?!\S)(?! (?:not|no))(?! "
    r"(?:off|on|running|calling|frosted|iced|isolated|live|unplugged)(?!\S))"
)
_DOUBT = rx(r"(?:not sure|do not know|no idea) (?:if|whether|about)?")
_SHARED: frozenset[ContextName] = frozenset(
    {"mains at the terminals", "frosted", "surge"}
)


def contexts(view: Tokens, _vocabulary: Vocabulary) -> list[Claim]:
    """Claim each state told as a fact; a question or a doubt tells none."""
    found: list[Claim] = []
    for name, yes, no in _ROWS:
        denial = _first(view, no)
        claim = denial or _first(view, yes)
        if claim:
            fact = ContextFact(name=name, value=denial is None)
            shares = name in _SHARED and denial is None
            found.append(Claim(*claim.span(), fact, shares))
    return found


def _first(view: Tokens, pattern: re.Pattern[str]) -> re.Match[str] | None:
    for match in pattern.finditer(view.folded):
        if match[0] and _is_told(view, match):
            return match
    return None


def _is_told(view: Tokens, match: re.Match[str]) -> bool:
    start, end = view.clause(match.start())
    before = view.folded[start : match.start()]
    question = _QUESTION.match(view.folded[start:end].lstrip())
    return not (_OPEN.search(before) or _DOUBT.search(before) or question)
