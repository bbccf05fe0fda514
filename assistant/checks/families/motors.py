"""The named checks of motors: windings, insulation, fan motors."""

from __future__ import annotations

from assistant.checks.comparing import because, compare
from assistant.checks.entry import METER_INPUTS, POWER_INPUT, NamedCheck, required
from assistant.checks.families.asking import (
    built,
    choice,
    figure,
    flag,
    judged,
    read_live,
    refused,
    set_of,
    told,
)
from assistant.checks.fan_speed import SPEED, fan_speed
from assistant.checks.inputs import BANDS, COUNT, Input, Values
from assistant.checks.inputs import NAMED as NAMED_READINGS
from assistant.checks.insulation import AT_FORTY, insulation_at_forty
from assistant.checks.kinds import FanPinsCheck, InsulationCheck, WindingCheck
from assistant.checks.reading import (
    HEADER,
    MAINS,
    MODULE_OFF,
    NO_VACUUM,
    ReadingFor,
    bound_for,
)
from assistant.checks.report import CheckReport
from assistant.checks.unbalance import UNBALANCE
from assistant.checks.uncertainty import GUARD, expanded
from assistant.checks.verdict import Result
from assistant.checks.windings import (
    SUM_RULE,
    TEMPERED,
    resistance_at,
    single_phase,
    temperature_by_resistance,
)
from assistant.errors import UsageError


def winding_balance(values: Values) -> CheckReport:
    """Return the spread of three windings, by the document's limits only."""
    reading = set_of(values, "readings")
    names = tuple(name for name, _ in values.named("readings"))
    if len(names) != 3:  # noqa: PLR2004
        raise UsageError(
            f"check 'winding-balance' takes three readings, not {len(names)}",
            "give readings='U-V: 0.650 ohm; V-W: 0.655 ohm; U-W: 0.648 ohm'",
        )
    check = built(
        WindingCheck,
        "winding",
        "winding-balance",
        points=names,
        largest=values.maybe("limit"),
        low=values.maybe("low"),
        high=values.maybe("high"),
    )
    return judged(check, values, reading, told(values, disconnected=MODULE_OFF))


def single_phase_windings(values: Values) -> CheckReport:
    """Return how the three windings of a single-phase compressor fit together."""
    name = "single-phase-windings"
    live = read_live(name, SUM_RULE, values)
    if live is not None:
        return live
    cs, cr, sr = (
        None if values.is_open(key) else values.number(key)
        for key in ("cs", "cr", "sr")
    )
    bounds = [bound_for(values.meter(), one, "ohm") for one in (cs, cr, sr) if one]
    u = expanded(*(a for a, _ in bounds)) if bounds else 0.0
    found = single_phase(cs, cr, sr, u)
    if found == "overload open":
        reason = (
            "common is open to both and start to run reads: the internal overload is "
            "open. Let it cool, then read again; the compressor is not named by this"
        )
        cool = "compressor cool"
        return refused(name, SUM_RULE, "ohm", reason, cool, value=sr, uncertainty=u)
    result: Result = "pass" if found == "sum holds" else "inconclusive"
    reason = _SUMS[found]
    return figure(name, SUM_RULE, sr, "ohm", reason, result=result, uncertainty=u)


_SUMS = {
    "open": "an open line: read again cold, at the compressor's own terminals",
    "sum holds": "the sum rule holds; whether the values are right stands in the "
    "document",
    "sum does not hold": "the sum rule does not hold: take the lead resistance off, "
    "look which terminal is which, and read again",
}


def copper_temperature(values: Values) -> CheckReport:
    """Return a winding's resistance at a temperature, or its temperature."""
    name, metal = "copper-temperature", values.word("metal") or "copper"
    first, at = values.number("resistance"), values.number("temperature")
    if values.has("hot"):
        found = temperature_by_resistance(first, at, values.number("hot"), metal)
        return figure(name, TEMPERED, found, "K")
    if not values.has("wanted"):
        raise UsageError(
            "check 'copper-temperature' needs what is wanted",
            "give wanted='25 °C' for a resistance, or hot='100 ohm' for a temperature",
        )
    found = resistance_at(first, at, values.number("wanted"), metal)
    return figure(name, TEMPERED, found, "ohm")


def insulation(values: Values) -> CheckReport:
    """Return the verdict of insulation by the document's limit only."""
    name = "insulation"
    if not values.has("low"):
        value = values.maybe("reading")
        reason = (
            "makers' limits for compressors differ 500 times; without the document's "
            "own there is no verdict"
        )
        return refused(
            name,
            GUARD,
            "ohm",
            reason,
            "the document's limit",
            value=None if value is None else value.value,
        )
    check = built(
        InsulationCheck, "insulation", name, points="", low=values.quantity("low")
    )
    reading = ReadingFor(
        value=values.maybe("reading"), open_line=values.is_open("reading")
    )
    context = told(values, disconnected=MODULE_OFF)
    vacuum = values.yes("vacuum")
    context[NO_VACUUM] = None if vacuum is None else not vacuum
    return judged(check, values, reading, context)


def insulation_forty(values: Values) -> CheckReport:
    """Return an open motor's insulation at 40 C; refused for a hermetic."""
    name = "insulation-40"
    motor = values.word("motor")
    if motor != "open":
        reason = "a hermetic is judged uncorrected, against its document"
        if motor is None:
            reason = f"whether it is an open motor is not told; {reason}"
        return refused(name, AT_FORTY, "ohm", reason, "open motor")
    value = insulation_at_forty(values.number("reading"), values.number("temperature"))
    return figure(name, AT_FORTY, value, "ohm", "the document's limit decides")


def fan_pins(values: Values) -> CheckReport:
    """Return whose side a still fan is on, by the document's pin table."""
    name = "fan-pins"
    command = values.word("command") or "Vsp"
    bands = values.bands("table")
    known = [pin for pin, _, _ in bands]
    unknown = [pin for pin, _ in values.named("readings") if pin not in known]
    if command not in known or unknown:
        lacks = unknown[0] if unknown else command
        raise UsageError(
            f"check 'fan-pins': {lacks!r} is not in the table of {', '.join(known)}",
            "give every pin read a band of the document's pin table",
        )
    pins = [{"name": pin, "low": low, "high": high} for pin, low, high in bands]
    check = built(
        FanPinsCheck,
        "fan_pins",
        name,
        pins=tuple(pin for pin in pins if pin["name"] != command),
        command=next(pin for pin in pins if pin["name"] == command),
    )
    context = told(values, unplugged=HEADER, mains=MAINS)
    return judged(check, values, set_of(values, "readings"), context)


def fan_tacho(values: Values) -> CheckReport:
    """Return a fan's speed, against the document's lowest when it is given."""
    name = "fan-speed"
    speed = fan_speed(values.number("frequency"), values.number("pulses"))
    if not values.has("low"):
        return figure(name, SPEED, speed, "1/s")
    low = values.number("low")
    a, assumed = bound_for(values.meter(), values.number("frequency"), "Hz")
    u = expanded(a / values.number("pulses"))
    result, why = compare(speed, low, None, u, "1/s")
    return figure(
        name,
        SPEED,
        speed,
        "1/s",
        because(why, assumed),
        low=low,
        result=result,
        uncertainty=u,
    )


def _winding(name: str, between: str) -> Input:
    return Input(
        name,
        "resistance",
        _EXAMPLES[name],
        f"between {between}, or OL",
        required=True,
        or_open=True,
    )


_EXAMPLES = {"cs": "11 ohm", "cr": "4 ohm", "sr": "15 ohm"}
_OFF = flag("disconnected", "whether the inverter module was disconnected")


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "winding-balance",
        "three windings of a motor, by the document's limit",
        UNBALANCE,
        (
            required(
                "readings",
                NAMED_READINGS,
                "U-V: 0.650 ohm; V-W: 0.655 ohm; U-W: 0.648 ohm",
                "the three, OL for an open line",
            ),
            Input("limit", "ratio", "2 %", "largest spread the document allows"),
            Input("low", "resistance", "0.5 ohm", "the document's lowest"),
            Input("high", "resistance", "0.9 ohm", "the document's highest"),
            _OFF,
            POWER_INPUT,
            *METER_INPUTS,
        ),
        winding_balance,
    ),
    NamedCheck(
        "single-phase-windings",
        "sum rule of a single-phase compressor, and an open overload",
        SUM_RULE,
        (
            _winding("cs", "common and start"),
            _winding("cr", "common and run"),
            _winding("sr", "start and run"),
            POWER_INPUT,
            *METER_INPUTS,
        ),
        single_phase_windings,
    ),
    NamedCheck(
        "copper-temperature",
        "a winding's resistance at another temperature, or its temperature",
        TEMPERED,
        (
            required("resistance", "resistance", "0.65 ohm", "as measured"),
            required("temperature", "temperature", "20 °C", "of the winding then"),
            Input("wanted", "temperature", "25 °C", "to get the resistance there"),
            Input("hot", "resistance", "0.70 ohm", "to get the temperature now"),
            choice("metal", "of the winding", "copper", "aluminium", default="copper"),
        ),
        copper_temperature,
    ),
    NamedCheck(
        "insulation",
        "insulation to ground, uncorrected, by the document's limit only",
        GUARD,
        (
            Input(
                "reading",
                "resistance",
                "200 Mohm",
                "to ground",
                required=True,
                or_open=True,
            ),
            Input("low", "resistance", "100 Mohm", "the document's lowest"),
            _OFF,
            flag("vacuum", "whether the compressor is under vacuum"),
            POWER_INPUT,
            *METER_INPUTS,
        ),
        insulation,
    ),
    NamedCheck(
        "insulation-40",
        "insulation of an open motor brought to 40 °C",
        AT_FORTY,
        (
            required("reading", "resistance", "200 Mohm", "as read"),
            required("temperature", "temperature", "20 °C", "of the winding"),
            choice("motor", "its kind", "open", "hermetic"),
        ),
        insulation_forty,
    ),
    NamedCheck(
        "fan-pins",
        "a five-wire fan motor by the document's pin table",
        GUARD,
        (
            required(
                "table",
                BANDS,
                "Vs: 280 V to 380 V; Vcc: 13.5 V to 16.5 V; Vsp: 1 V to 6.5 V",
                "the document's pins, each to the common pin",
            ),
            required(
                "readings",
                NAMED_READINGS,
                "Vs: 310 V; Vcc: 15 V; Vsp: 3.2 V",
                "supplies with the header unplugged; the command plugged in",
            ),
            Input(
                "command",
                "word",
                "Vsp",
                "name of the command pin",
                choices=("Vsp", "command", "PWM"),
                default="Vsp",
            ),
            flag("unplugged", "whether the supplies were read, header unplugged"),
            flag("mains", "whether mains is at the terminals"),
            *METER_INPUTS,
        ),
        fan_pins,
    ),
    NamedCheck(
        "fan-speed",
        "speed of a fan from its tachometer wire",
        SPEED,
        (
            required("frequency", "frequency", "80 Hz", "of the tachometer wire"),
            required("pulses", COUNT, "4", "a turn, by the document"),
            Input("low", "rotation", "300 rpm", "the document's lowest"),
            Input("percent", "ratio", "1 %", "the meter's share of the reading"),
            Input("digits", COUNT, "3", "the meter's counts of the last digit"),
            Input("resolution", "frequency", "0.1 Hz", "one count of the range used"),
        ),
        fan_tacho,
    ),
)
