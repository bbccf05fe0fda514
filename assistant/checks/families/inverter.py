"""The named checks of the inverter: charge, module, reactor, communication line."""

from __future__ import annotations

from assistant.checks.comparing import NOT_PROOF, because, compare, shown
from assistant.checks.diodes import MODULE
from assistant.checks.entry import METER_INPUTS, POWER_INPUT, NamedCheck, required
from assistant.checks.families.asking import (
    More,
    built,
    choice,
    figure,
    flag,
    judged,
    lacking,
    read_live,
    refused,
    set_of,
    told,
)
from assistant.checks.inputs import NAMED as NAMED_READINGS
from assistant.checks.inputs import Input, Values
from assistant.checks.judge_lines import REFERENCED
from assistant.checks.kinds import DiodesCheck, LineCheck
from assistant.checks.line_behaviour import BEHAVES, BEHAVIOURS, behaviour
from assistant.checks.order import discharge_limit
from assistant.checks.reading import (
    BUS_DEAD,
    DIGITAL,
    MAINS,
    MODULE_OFF,
    ReadingFor,
    bound_for,
)
from assistant.checks.report import CheckReport
from assistant.checks.stored_charge import (
    DISCHARGE,
    ENERGY,
    discharge_time,
    stored_energy,
    voltage_left,
)
from assistant.checks.uncertainty import GUARD, expanded

MEASURE = (
    "an estimate only: the charge is measured at every marked bank, never judged by "
    "time; a failed bleed resistor or a fan turned by wind keeps it up"
)


def bus_discharge(values: Values) -> CheckReport:
    """Return the time to a voltage, or the voltage after a time: an estimate."""
    name = "bus-discharge"
    farads, ohms = values.number("capacitance"), values.number("bleed")
    start = values.number("start")
    if values.has("after"):
        left = voltage_left(farads, ohms, start, values.number("after"))
        return figure(name, DISCHARGE, left, "V", MEASURE)
    end = values.number("end") if values.has("end") else discharge_limit(None)
    time = discharge_time(farads, ohms, start, end)
    return figure(name, DISCHARGE, time, "s", MEASURE)


def energy(values: Values) -> CheckReport:
    """Return the energy a bank holds: an estimate."""
    joules = stored_energy(values.number("capacitance"), values.number("voltage"))
    return figure("stored-energy", ENERGY, joules, "J", MEASURE)


def stored_charge(values: Values) -> CheckReport:
    """Return whether a measured bank is at or below the limit; never more than that."""
    name = "stored-charge"
    stated = values.number("limit") if values.has("limit") else None
    limit = discharge_limit(stated)
    value = abs(values.number("reading"))
    reason, missing = lacking(
        values,
        ("proved", "meter proved on a known source before and after"),
        ("every_bank", "every marked bank measured"),
        ("isolated", "every supply isolated and locked"),
        ("fan_still", "outdoor fan at rest"),
    )
    a, assumed = bound_for(values.meter(), value, "V")
    u = expanded(a)
    base: More = {"high": limit, "uncertainty": u}
    if value - u > limit:
        above = f"{shown(value, 'V')} is above {shown(limit, 'V')}: wait and measure"
        base["result"] = "fail"
        return figure(name, GUARD, value, "V", because(above, assumed), **base)
    if missing:
        reason = because(reason, NOT_PROOF)
        return refused(name, GUARD, "V", reason, *missing, value=value, **base)
    base["result"], why = compare(value, None, limit, u, "V")
    again = "measure again after unplugging the fan, and whenever you come back to it"
    return figure(name, GUARD, value, "V", because(why, again, assumed), **base)


def module_diodes(values: Values) -> CheckReport:
    """Return the verdict of a module's diodes, one direction at a time."""
    check = built(
        DiodesCheck,
        "module_diodes",
        "module-diodes",
        points=("U", "V", "W"),
        low=values.maybe("low"),
        high=values.maybe("high"),
    )
    context = told(values, disconnected=MODULE_OFF, dead=BUS_DEAD)
    kind = values.word("meter")
    context[DIGITAL] = None if kind is None else kind == "digital"
    return judged(check, values, set_of(values, "readings"), context)


def reactor(values: Values) -> CheckReport:
    """Return whether a reactor is open; its figure stands in the document."""
    name = "reactor"
    live = read_live(name, GUARD, values)
    if live is not None:
        return live
    if values.yes("disconnected") is not True:
        reason = "with a lead on, the bridge and the board are read beside it"
        return refused(name, GUARD, "ohm", reason, "leads disconnected")
    if values.is_open("reading"):
        reason = "OL: an open reactor; a maker prints open as the only failure"
        return figure(name, GUARD, None, "ohm", reason, result="fail")
    value = values.number("reading")
    a, assumed = bound_for(values.meter(), value, "ohm")
    u = expanded(a)
    high = values.number("high") if values.has("high") else None
    if high is None:
        reason = "it is not open; whether it is right stands in the document only"
        return refused(
            name,
            GUARD,
            "ohm",
            reason,
            "the document's limit",
            value=value,
            uncertainty=u,
        )
    result, why = compare(value, None, high, u, "ohm")
    if u >= high:
        result, why = "inconclusive", "this meter cannot resolve so small a resistance"
    return figure(
        name,
        GUARD,
        value,
        "ohm",
        because(why, assumed),
        high=high,
        result=result,
        uncertainty=u,
    )


def communication_line(values: Values) -> CheckReport:
    """Return how a line moved, and its verdict by the document's rule only."""
    name, several = "communication-line", values.many("readings")
    healthy = values.word("healthy")
    if healthy is None:
        seen = behaviour(*(one.value for one in several))
        reason = (
            f"seen: {seen}. What that means stands in this unit's document only: "
            "makers' lines differ"
        )
        return refused(
            name, BEHAVES, "V", because(reason, REFERENCED), "the document's rule"
        )
    check = built(
        LineCheck,
        "line",
        name,
        points="line",
        healthy=(healthy,),
        low=values.maybe("low"),
        high=values.maybe("high"),
    )
    pairs = tuple(("line", one) for one in several)
    reading = ReadingFor(value=several[-1], set_of=pairs)
    return judged(check, values, reading, told(values, mains=MAINS))


_LOW = Input("low", "voltage", "0.3 V", "the document's lowest")
_HIGH = Input("high", "voltage", "0.7 V", "the document's highest")

NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "bus-discharge",
        "time in which a bus may lose its charge: an estimate, never a proof",
        DISCHARGE,
        (
            required("capacitance", "capacitance", "2040 uF", "of the bank"),
            required("bleed", "resistance", "220 kohm", "across the bank"),
            required("start", "voltage", "390 V", "when it was isolated"),
            Input("end", "voltage", "50 V", "asked for; 50 V when not given"),
            Input("after", "time", "10 min", "to get the voltage left instead"),
        ),
        bus_discharge,
    ),
    NamedCheck(
        "stored-energy",
        "energy that a bank holds",
        ENERGY,
        (
            required("capacitance", "capacitance", "2040 uF", "of the bank"),
            required("voltage", "voltage", "390 V", "across it"),
        ),
        energy,
    ),
    NamedCheck(
        "stored-charge",
        "a measured bank against the discharge limit; it never says more than that",
        GUARD,
        (
            required("reading", "voltage", "12 V", "direct voltage at the bank"),
            Input("limit", "voltage", "50 V", "the document's; 50 V at the most"),
            flag("proved", "meter proved on a known source before and after"),
            flag("every_bank", "whether every marked bank was measured"),
            flag("isolated", "whether every supply is isolated and locked"),
            flag("fan_still", "whether the outdoor fan is at rest"),
            *METER_INPUTS,
        ),
        stored_charge,
    ),
    NamedCheck(
        "module-diodes",
        "diode readings of an inverter module, phase against phase",
        MODULE,
        (
            required(
                "readings",
                NAMED_READINGS,
                "U: 0.41 V; V: 0.42 V; W: 0.40 V",
                "one direction: black on P with red on U, V, W, or red on N",
            ),
            _LOW,
            _HIGH,
            choice("meter", "its leads' polarity", "digital", "analogue"),
            flag("disconnected", "whether the module is off the motor and the bus"),
            flag("dead", "whether the bus was measured dead"),
            POWER_INPUT,
            *METER_INPUTS,
        ),
        module_diodes,
    ),
    NamedCheck(
        "reactor",
        "whether a reactor is open",
        GUARD,
        (
            Input(
                "reading",
                "resistance",
                "0.2 ohm",
                "end to end",
                required=True,
                or_open=True,
            ),
            Input("high", "resistance", "1 ohm", "the document's highest"),
            flag("disconnected", "whether a lead was taken off"),
            POWER_INPUT,
            *METER_INPUTS,
        ),
        reactor,
    ),
    NamedCheck(
        "communication-line",
        "how a communication line moves, judged by the document's rule only",
        BEHAVES,
        (
            Input(
                "readings",
                "voltage",
                "-42 V; 10 V; 38 V",
                "three or more",
                required=True,
                many=True,
            ),
            choice("healthy", "what the document calls healthy", *BEHAVIOURS),
            Input("low", "voltage", "-50 V", "the document's lowest"),
            Input("high", "voltage", "50 V", "the document's highest"),
            flag("mains", "whether mains is at the terminals of both units"),
            *METER_INPUTS,
        ),
        communication_line,
    ),
)
