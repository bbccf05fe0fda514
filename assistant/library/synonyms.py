"""Trade synonyms as data: each headword with the other ways people say it.

Folding replaces every form on the right by the headword on the left, in stored
text and in queries alike, so the choice of headword carries no meaning of its
own. A phrase is several words; the longest phrase wins. Plain inflections
(-s, -es, -ed, -ing) of single words come by themselves.

Two words share a line only when a technician would use one for the other on the
same unit. The figures of a lamp, a sensor and a board must stay apart, so parts
that are merely alike ("fan" and "motor") are not joined.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

SYNONYMS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        # signals
        "lamp": ("led", "light", "diode", "indicator", "bulb", "light emitting diode"),
        "flash": ("blink", "wink", "flicker", "strobe"),
        "steady": ("solid", "continuous", "continuously", "constantly", "constant"),
        "amber": ("orange", "yellow"),
        "display": ("readout", "screen", "segment", "7 segment", "seven segment"),
        "code": ("alarm code", "error code", "fault code", "trouble code"),
        "fault": ("error", "failure", "malfunction", "alarm", "trouble", "defect"),
        "faulty": ("defective", "failed", "bad", "broken", "dead", "shot", "fried"),
        "meaning": ("mean", "means", "stand for", "signify", "indicate"),
        # boxes and boards
        "board": (
            "pcb",
            "pwb",
            "circuit board",
            "printed circuit board",
            "printed board",
            "control board",
            "pc board",
            "circuit card",
        ),
        "outdoor": (
            "outside",
            "condensing unit",
            "outdoor section",
            "odu",
            "condenser unit",
        ),
        "indoor": (
            "inside",
            "idu",
            "head",
            "wall head",
            "air handler",
            "fan coil",
            "cassette",
        ),
        "thermostat": ("stat", "tstat", "t stat", "wall control", "room control"),
        "remote": ("remote control", "remote controller", "wireless controller"),
        "nameplate": ("rating plate", "data plate", "rating label", "unit plate"),
        # parts
        "compressor": ("comp", "compressors"),
        "sensor": ("thermistor", "ntc", "probe", "therm", "temperature sensor"),
        "discharge": ("hot gas", "discharge line", "discharge pipe", "discharge tube"),
        "ambient": ("outdoor air", "outside air", "outdoor temperature"),
        "coil": ("heat exchanger", "evaporator coil", "condenser coil", "exchanger"),
        "valve": ("eev", "expansion valve", "lev", "exv", "electronic expansion valve"),
        "reversing": ("four way valve", "4 way valve", "reversing valve", "changeover"),
        "blower": ("indoor fan", "fan inside"),
        "breaker": ("circuit breaker", "mcb", "overcurrent protector"),
        "fuse": ("fuses", "fusible link"),
        "capacitor": ("cap", "caps", "condensator", "dc link"),
        "bus": ("dc bus", "dc link voltage", "bus voltage", "dc rail"),
        "inverter": ("ipm", "power module", "drive", "driver", "inverter module"),
        "winding": ("windings", "motor coil"),
        "plug": ("connector", "plugs", "terminal plug", "harness plug"),
        "wire": ("wiring", "cable", "lead", "harness", "conductor"),
        "filter": ("air filter", "screen filter"),
        "drain": ("condensate", "drainage", "condensate drain"),
        "float": ("float switch", "overflow switch", "water level switch"),
        "transformer": ("xfmr", "xformer"),
        "communication": (
            "comms",
            "comm",
            "communicate",
            "transmission",
            "serial signal",
            "signal line",
            "data link",
            "talk",
            "talking",
        ),
        "switch": ("dip", "dip switch", "selector", "dipswitch"),
        "refrigerant": ("freon", "gas charge", "coolant"),
        "pressure": ("psi", "pressures", "head pressure"),
        # supply and measuring
        "supply": (
            "mains",
            "line voltage",
            "incoming",
            "power supply",
            "supply voltage",
        ),
        "power": ("electricity", "powered", "energise", "energize", "energized"),
        "voltage": ("volt", "volts", "vac", "vdc"),
        "kohm": ("kiloohm", "kilohm", "kω", "kiloohms", "kilohms", "kohms"),
        "ohm": ("ω", "ohms", "resistance"),
        "mohm": ("megohm", "mω", "meg", "megohms", "mohms"),
        "amp": ("ampere", "current", "amps", "amperage"),
        "celsius": ("centigrade", "degc"),
        "fahrenheit": ("degf",),
        "second": ("sec", "secs"),
        "minute": ("min", "mins"),
        "hour": ("hr", "hrs"),
        "measure": ("meter", "ohm out", "check with a meter", "read"),
        "earth": ("ground", "grounded", "gnd", "chassis"),
        "short": ("shorted", "short circuit", "dead short"),
        "open": ("open circuit", "broken wire", "burnt open"),
        # what it does
        "restart": (
            "start again",
            "starts again",
            "come back on",
            "comes back on",
            "retry",
            "kick back on",
            "turn back on",
            "start up again",
            "try again",
        ),
        "start": ("startup", "start up", "begin", "commence", "fire up", "kick in"),
        "stop": (
            "stoppage",
            "quit",
            "shut down",
            "shutdown",
            "halt",
            "cut out",
            "cease",
        ),
        "lockout": (
            "locked out",
            "lock out",
            "latched",
            "permanent stop",
            "latch",
            "locked",
            "lockouts",
        ),
        "reset": ("clear", "power cycle", "cycle power", "cycle the power"),
        "delay": ("wait", "waiting time", "hold off", "pause", "time delay"),
        "ice": ("frost", "frosted", "frozen", "icing", "iced", "freeze", "icy"),
        "defrost": ("defrosting", "de ice", "deice", "deicing"),
        "heat": ("heating", "warm"),
        "cool": ("cooling", "cold"),
        "noise": ("noisy", "sound", "rattle", "buzz", "hum", "loud"),
        "leak": ("leakage", "leaking", "escape"),
        "replace": ("change out", "swap", "renew", "fit a new", "exchange", "swap out"),
        "disconnect": ("unplug", "isolate", "pull the plug", "disconnection"),
        "discharged": ("bleed", "bleed down", "bleed off", "drain down"),
        "trip": ("tripped", "pop", "kick out", "throw"),
        "overheat": ("too hot", "over temperature", "overtemperature", "overheated"),
        "overcurrent": ("over current", "too many amps", "high current"),
        "install": ("installation", "fit", "mount", "put in"),
        "blocked": ("dirty", "clogged", "obstructed", "restricted", "plugged up"),
        "unit": ("machine", "system", "equipment", "appliance", "outfit"),
        "model": ("type", "type number", "model number"),
        "maximum": ("max", "highest", "upper limit", "at most"),
        "minimum": ("min value", "lowest", "lower limit", "at least"),
        "temperature": ("temp", "temps", "degree", "deg"),
        "history": ("stored", "past", "memory", "recall", "log"),
        "time": ("times",),
        "before": ("prior", "ahead of", "until"),
    }
)

UNITS: Mapping[str, str] = MappingProxyType(
    {
        "v": "voltage", "a": "amp", "k": "kohm", "c": "celsius", "f": "fahrenheit",
        "s": "second", "h": "hour", "m": "metre", "x": "time",
    }
)  # fmt: skip
"""Letters that are a unit only right behind a number."""

COUNT_WORDS: frozenset[str] = frozenset({"flash", "beep"})
"""Headwords that make a number beside them a count of flashes."""

_CARRY_NOTHING = """
    about after again all also am an and another any are as at back be been but by
    can come could did do does doing done down each either else ever every for from
    get gets getting give go goes going gone gonna got gotta had has have having he
    her here hers him his how i if im in into is isn it its ive just keep keeps kind
    know let like little look looks made make many may me mine more most much must my
    need nor not now of off oh ok on one ones only or other our out over own please
    put really right said same say says see seems she should so some something still
    such take tell than that thats the their them then there these they thing things
    this those though to too up us use used very want was way we well were what whats
    when where which while who why will with would yes yet you your youre
    """

STOPWORDS: frozenset[str] = frozenset(_CARRY_NOTHING.split())
"""Words that carry nothing in a query; "on" and "off" are kept in stored text."""
