"""What a reading is of: the words, their normal form and their dimension."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache

from assistant.language.claims import either, rx
from assistant.language.tokens import fold
from assistant.language.vocabulary import Vocabulary


@dataclass(frozen=True, slots=True)
class Measurand:
    """Where a measurand is named, its normal form and dimension."""

    start: int
    end: int
    of: str
    dimension: str


_SENSOR = (
    r"(?: (?:air|pipe|coil|line|gas))? (?:sensors?|one(?= (?:is |at |reads |about "
    r")*[0-9.]+ (?:k|kohm|ohm)))"
)
_TABLE: tuple[tuple[str, str, str], ...] = (
    (
        "discharge|hot gas|discharge (?:pipe|line)|hot gas (?:pipe|line)",
        "discharge",
        "sensor",
    ),
    ("outdoor coil|outside coil|condenser coil|outdoor pipe", "outdoor coil", "sensor"),
    (
        "indoor coil|evaporator coil|inside coil|indoor pipe|evaporator",
        "indoor coil",
        "sensor",
    ),
    ("suction|suction (?:line|pipe)", "suction", "sensor"),
    ("liquid|liquid (?:line|pipe)", "liquid", "sensor"),
    ("coil|pipe", "coil", "sensor"),
    ("heat ?sink|fin|ipm|module", "heat sink", "sensor"),
    ("room|room air|return|return air|indoor air|air|indoor|inside", "room", "sensor"),
    (
        "outdoor|outside|ambient|outdoor air|outdoor ambient|outside air",
        "outdoor",
        "sensor",
    ),
    ("drain|defrost", "defrost", "sensor"),
)
_SENSORS = tuple(
    (rx(rf"(?:{words}){_SENSOR}(?: (?:at|on|is)(?= [0-9]))?"), of, "resistance")
    for words, of, _ in _TABLE
)
_WARM = r" (?:is |at |about |reads |around )*-?[0-9.]+ (?:f|c|deg)(?!\S)"
"""A number with a unit of temperature follows."""
_OTHERS: tuple[tuple[re.Pattern[str], str, str], ...] = (
    (rx(r"temperature (?:at|on|of) (?:the )?(?:[a-z]+ )?(?:sensor|pipe|coil)|(?:pipe|"
        r"sensor|coil) temperature|pipe(?= (?:is|at|about|measures) [0-9])"),
     "sensor temperature", "temperature"),
    (rx(r"discharge temperature|hot gas temperature|discharge (?:line|pipe)(?: "
        r"temperature)?(?= (?:is |at |about )*[0-9])"),
     "discharge temperature", "temperature"),
    (rx(r"suction line temperature|suction temperature|suction (?:line|pipe)"
        rf"(?={_WARM})"),
        "suction temperature",
        "temperature"),
    (rx(r"liquid line temperature|liquid temperature|liquid (?:line|pipe)"
        rf"(?={_WARM})"),
        "liquid temperature",
        "temperature"),
    (rx(r"supply air(?: temperature)?|vent(?: temperature)?|air off|supply "
        r"temperature"),
     "supply air temperature", "temperature"),
    (rx(r"return air temperature|return temperature|return air|air on"),
     "return air temperature", "temperature"),
    (rx(r"(?:indoor |inside |return |return air |entering )?(?<!outdoor )"
        r"(?<!outside )wet bulb(?: temperature)?"), "indoor wet bulb", "temperature"),
    (rx(r"superheat"), "superheat", "difference"),
    (rx(r"subcool(?:ing)?"), "subcooling", "difference"),
    (rx(r"discharge pressure|head pressure|head|high side|high side pressure|high "
        r"pressure|liquid pressure|discharge"), "discharge pressure", "pressure"),
    (rx(r"suction pressure|suction|low side|low side pressure|low pressure|back "
        r"pressure"),
     "suction pressure", "pressure"),
    (rx(r"(?P<u>[uvw]) (?:phase )?to (?:ground|earth|case|shell|frame)"),
        "{u} to ground",
     "resistance to ground"),
    (rx(r"(?:compressor |motor )?windings? to (?:ground|earth|case)|(?:compressor |"
        r"motor )?to (?:ground|earth|case)|megger(?:ed|s)?(?: (?:it|the "
        r"compressor))?(?: at)?|insulation(?: "
        r"resistance)?"), "winding to ground", "resistance to ground"),
    (rx(r"u ?v ?w|u v and w|u / v / w|(?:compressor |motor )?windings?|three phases|"
        r"all 3 (?:windings|phases|legs)"), "winding", "winding"),
    (rx(r"(?P<u>[uvw]) (?:to |- |/ )?(?P<w>[uvw])"), "{u} to {w}", "winding"),
    (rx(r"(?:dc )?bus(?: volts?| voltage)?|dc link|dc bus|(?:big|high|main) dc(?: "
        r"side)?|p to n|p n|pn|p and n|(?:main |big |bus "
        r")+capacitors?"), "bus", "voltage"),
    (rx(r"l1 (?:to |- |and |/ |, )?l2|l to n|l n|line to line|line voltage|line in|"
        r"incoming(?: (?:voltage|line|power))?|supply voltage|supply|mains|mains "
        r"voltage|input (?:voltage|power)|(?:at |on |across )(?:the )?(?:unit |outdoor "
        r"|line |input |main |power )*(?:terminals|terminal block|disconnect|breaker)|"
        r"l1 and l2|voltage coming in"),
     "supply", "voltage"),
    (rx(r"line"), "supply", "line voltage"),
    (rx(r"(?:(?<=[0-9] )|(?<=[0-9] v ))in(?= ,|$| \.)"), "supply", "line voltage"),
    (rx(r"(?:eev|expansion valve|valve) coil|eev"), "valve coil", "resistance"),
    (rx(r"(?:reversing|four way|4 way)(?: valve)? (?:coil|solenoid)"),
     "reversing valve coil", "resistance"),
    (rx(r"(?P<u>(?:little|small|low) dc(?: feed| supply| side)?)"), "{u}", "voltage"),
    (rx(r"(?:between |terminals? |across |on )+(?P<u>[0-9]) "
        r"(?:and|to|-|&) (?P<w>[0-9])"),
     "{u} to {w}", "unknown"),
    (rx(r"(?:at|on|across|from) (?:the )?(?P<u>(?:little|small|big|large|white|red|"
        r"blue|black|dc|two|2|3|[a-z]+) (?:dc |ac |fan )?(?:plug|pins?|connector|"
        r"socket|header|leads?|wire))|(?P<w>(?:fan motor|motor|fan|dc) (?:plug|"
        r"connector))"),
     "{u}{w}", "unknown"),
    (rx(r"(?:control|logic|fan motor|fan) (?:voltage|supply|power)"), "control voltage",
     "voltage"),
    (rx(r"(?:compressor |running |run |locked rotor |line )?(?:amps|current|amp draw|"
        r"draw)|(?:drawing|pulling|draws|pulls)"), "current", "current"),
    (rx(r"(?:run |start )?capacitor(?: (?:reads|at|is))?"), "capacitor", ""),
    (rx(r"voltage|volts"), "voltage", "voltage"),
    (rx(r"room temperature|indoor temperature|inside temperature|rooms?(?: "
        r"temperature)?(?= (?:is|at|was|about|around)(?! [0-9. ]*(?:ohm|k|kohm|"
        r"v)(?!\S)))|rooms(?= [0-9])|indoors|inside(?= (?:is|at|about) [0-9])|return|"
        r"(?:indoor|inside)(?= [0-9]+ (?:f|c|deg))"), "indoor",
            "room temperature"),
    (rx(r"(?:(?<=[0-9] )|(?<=[0-9] f )|(?<=[0-9] c )|(?<=[0-9] deg ))(?:out|outside|"
        r"out here|outdoors|out side|ambient)|(?:outside|outdoor|ambient|outdoor "
        r"ambient)(?: air)? temperature|ambient|(?:outside|outdoors)(?= (?:is|at|"
        r"about) [0-9])|(?:outdoor|outside)(?= [0-9]+ (?:f|c|deg))"),
     "outdoor temperature", "outdoor temperature"),
    (rx(r"sensor"), "sensor", "resistance"),
)  # fmt: skip


Row = tuple[re.Pattern[str], str, str]


@lru_cache(maxsize=64)
def _sensors(vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return patterns for what the packs call their sensors."""
    rows = []
    for role, says in vocabulary.sensors:
        words = [fold(text) for text in (role + " sensor", *says) if fold(text)]
        rows.append((rx(either(words)), role, "resistance"))
    return tuple(rows)


@lru_cache(maxsize=64)
def _checks(vocabulary: Vocabulary) -> tuple[Row, ...]:
    """Return patterns for what the packs call the checks that have a reading.

    A word that several packs use stays a word, so that each can know it.
    """
    looked_at = {gid for gid, _ in vocabulary.options}
    owners: dict[str, list[str]] = {}
    for gid, says in vocabulary.checks:
        for text in dict.fromkeys(says) if gid not in looked_at else ():
            owners.setdefault(text, []).append(gid)
    return tuple(
        (rx(re.escape(fold(text))), gids[0] if len(gids) == 1 else text, "named check")
        for text, gids in owners.items()
        if fold(text)
    )


def measurands(folded: str, vocabulary: Vocabulary) -> list[Measurand]:
    """Return every place where a measurand is named, none overlapping, in order.

    The longer name wins; of equal ones, a pack's sensor, then the trade's own word,
    then a pack's check.
    """
    rows = (*_sensors(vocabulary), *_SENSORS, *_OTHERS, *_checks(vocabulary))
    found: list[Measurand] = []
    for pattern, of, dimension in rows:
        for match in pattern.finditer(folded):
            groups = {key: value or "" for key, value in match.groupdict().items()}
            name = of.format(**groups) if groups else of
            found.append(Measurand(*match.span(), name, dimension))
    found.sort(key=lambda named: named.start - named.end)
    kept: list[Measurand] = []
    for named in found:
        if all(named.end <= o.start or o.end <= named.start for o in kept):
            kept.append(named)
    return sorted(kept, key=lambda named: named.start)
