"""The named checks of parts: capacitors, coils, contacts, switches, wiring."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.checks.capacitance import RUNNING, running_capacitance
from assistant.checks.comparing import because, shown
from assistant.checks.entry import METER_INPUTS, POWER_INPUT, NamedCheck, required
from assistant.checks.families.asking import (
    More,
    built,
    choice,
    figure,
    flag,
    judged,
    read_live,
    refused,
    told,
)
from assistant.checks.inputs import NAMED as NAMED_READINGS
from assistant.checks.inputs import TEXT, Input, Values
from assistant.checks.instruments import gauge_bound
from assistant.checks.judge_ohms import capacitor_verdict
from assistant.checks.kinds import CapacitorCheck, CoilCheck, SwitchCheck
from assistant.checks.reading import (
    DISCHARGED,
    LEADS_OFF,
    POWER_OFF,
    ReadingFor,
    bound_for,
)
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.switching import CONTACTS, SWITCH, contact_state, switch_expected
from assistant.checks.uncertainty import expanded
from assistant.checks.verdict import Result
from assistant.checks.windings import TEMPERED
from assistant.checks.wiring_pairs import (
    PAIRS,
    SPLICE,
    WiringFault,
    doubtful_conductors,
    wiring_faults,
)
from assistant.errors import UsageError


def capacitor(values: Values) -> CheckReport:
    """Return a capacitance by a meter, or running by amps and volts, and a verdict."""
    name = "capacitor"
    running = values.has("amps") and values.has("volts")
    if not running and not values.has("reading"):
        raise UsageError(
            "check 'capacitor' needs a reading, or amps and volts while it runs",
            "give reading='34.2 uF', or amps='8.3 A' volts='295 V' frequency='60 Hz'",
        )
    check = None
    if values.has("rated"):
        check = built(
            CapacitorCheck,
            "capacitor",
            name,
            rated=values.quantity("rated"),
            tolerance=values.quantity("tolerance"),
        )
    if running:
        return _running(values, check)
    reading = ReadingFor(value=values.quantity("reading"))
    if check is None:
        return figure(
            name,
            RUNNING,
            values.number("reading"),
            "F",
            "its printed value is not told, so nothing is judged",
        )
    context = told(values, discharged=DISCHARGED, disconnected=LEADS_OFF)
    return judged(check, values, reading, context)


def _running(values: Values, check: CapacitorCheck | None) -> CheckReport:
    name = "capacitor"
    if not values.has("frequency"):
        reason = "the mains frequency is not told: 50 Hz and 60 Hz differ by a fifth"
        return refused(name, RUNNING, "F", reason, "mains frequency")
    amps, volts = values.number("amps"), values.number("volts")
    farads = running_capacitance(amps, volts, values.number("frequency"))
    if check is None:
        reason = "its printed value is not told, so nothing is judged"
        return figure(name, RUNNING, farads, "F", reason)
    share = (
        (bound_for(None, amps, "A")[0] / amps) ** 2
        + (bound_for(None, volts, "V")[0] / volts) ** 2
    ) ** 0.5
    assumed = "1 % + 3 digits are assumed of clamp and meter"
    return from_verdict(name, capacitor_verdict(check, farads, farads * share, assumed))


def coil(values: Values) -> CheckReport:
    """Return the verdict of a coil against the document's resistance."""
    check = built(
        CoilCheck,
        "coil",
        "coil",
        points="",
        low=values.quantity("low"),
        high=values.quantity("high"),
        at=values.maybe("stated_at"),
    )
    reading = ReadingFor(
        value=values.maybe("reading"),
        at_temperature=values.maybe("temperature"),
        open_line=values.is_open("reading"),
    )
    return judged(check, values, reading, told(values, disconnected=LEADS_OFF))


def contact(values: Values) -> CheckReport:
    """Return the verdict of a contact in a state that the document names."""
    state = "the state the document names"
    check = built(
        SwitchCheck,
        "switch",
        "switch",
        points="",
        must_be=values.word("must_be"),
        while_state=state,
    )
    reading = ReadingFor(
        value=values.maybe("reading"), open_line=values.is_open("reading")
    )
    context = told(values, disconnected=LEADS_OFF, in_state=state)
    return judged(check, values, reading, context)


def pressure_switch(values: Values) -> CheckReport:
    """Return the state that a pressure switch must have, and the verdict of it."""
    name, pressure = "pressure-switch", values.number("pressure")
    a = values.number("switch_error") if values.has("switch_error") else 0.0
    if values.has("full_scale") and values.has("gauge_class"):
        class_percent = values.number("gauge_class") * 100
        u = expanded(gauge_bound(values.number("full_scale"), class_percent), a)
    else:
        reason = "the gauge's class and full scale are not told"
        return refused(name, SWITCH, "PaG", reason, "the gauge's class", value=pressure)
    must = switch_expected(pressure, values.number("opens"), values.number("closes"), u)
    base: More = {"uncertainty": u}
    if must == "either":
        reason = "between its two pressures, or too near one: either state is right"
        base["result"] = "inconclusive"
        return figure(name, SWITCH, pressure, "PaG", reason, **base)
    if not values.has("reading"):
        reason = f"it must be {must} at this pressure"
        return figure(name, SWITCH, pressure, "PaG", reason, **base)
    if values.word("power") != "off" or values.yes("disconnected") is not True:
        reason = "the contact is read isolated, with its wires off"
        needs = (POWER_OFF, LEADS_OFF)
        return refused(name, SWITCH, "PaG", reason, *needs, value=pressure, **base)
    read = None if values.is_open("reading") else values.number("reading")
    state = contact_state(read)
    shows = "OL" if read is None else shown(read, "ohm")
    base["result"] = "pass" if state == must else "fail"
    if state == "neither":
        base["result"] = "inconclusive"
    reason = f"{shows}: {state}; it must be {must} at this pressure"
    return figure(name, SWITCH, pressure, "PaG", reason, **base)


def wiring(values: Values) -> CheckReport:
    """Return where a field cable differs from the document's wiring table."""
    name = "wiring"
    if values.word("power") != "off":
        reason = "wires are rung out with every supply isolated, both ends off"
        return refused(name, PAIRS, "1", reason, POWER_OFF)
    table = _table(values.word("table") or "")
    found = dict(_pairs(values.word("found") or ""))
    faults = wiring_faults(table, found)
    shield, rule = values.word("shield"), values.word("shield_rule")
    notes = [_fault(fault, table) for fault in faults]
    grounded_wrong = None not in (shield, rule) and shield != rule
    if grounded_wrong:
        notes.append(f"the shield is grounded at {shield}, the document says {rule}")
    if shield is not None and rule is None:
        notes.append("where the shield is grounded is not told by the document")
    reason = "; ".join(notes) or "every pair is as the table has it"
    result: Result = "fail" if faults or grounded_wrong else "pass"
    return figure(name, PAIRS, None, "1", reason, result=result)


def _table(text: str) -> dict[str, str]:
    table = {}
    for near, far in _pairs(text):
        if len(far) != 1:
            raise UsageError(
                f"check 'wiring': {near} of the table has not one partner",
                "write table='1-1; 2-2; 3-3'",
            )
        table[near] = far[0]
    return table


def _fault(fault: WiringFault, table: dict[str, str]) -> str:
    first = fault.terminals[0]
    ends = " and ".join(fault.terminals[1:])
    return {
        "open": f"{first} rings to nothing",
        "swapped": f"{first} and {ends} are swapped",
        "wrong": f"{first} rings to {ends}, not to {table[first]}",
        "shorted": f"{first} rings to {ends} at once",
    }[fault.fault]


def _pairs(text: str) -> Iterator[tuple[str, tuple[str, ...]]]:
    """Read ``1-1; 2-3+4; 5-``: a terminal, and all it is joined to."""
    for part in filter(None, (piece.strip() for piece in text.split(";"))):
        near, dash, far = part.partition("-")
        if not dash or not near.strip():
            raise UsageError(
                f"check 'wiring': {part!r} is not a pair", "write found='1-1; 2-3; 5-'"
            )
        ends = tuple(end.strip() for end in far.split("+") if end.strip())
        yield near.strip(), ends


def conductors(values: Values) -> CheckReport:
    """Return the conductors of a cable that read above their siblings."""
    name = "conductors"
    live = read_live(name, SPLICE, values)
    if live is not None:
        return live
    several = values.named("readings")
    opened = [one for one, value in several if value is None]
    if opened:
        reason = f"open: {', '.join(opened)}"
        return figure(name, SPLICE, None, "ohm", reason, result="fail")
    read = {one: value.value for one, value in several if value is not None}
    doubtful = doubtful_conductors(read)
    worst = max(read.values())
    if not doubtful:
        return figure(name, SPLICE, worst, "ohm", "the conductors agree", result="pass")
    reason = because(
        f"well above its siblings: {', '.join(doubtful)}",
        "a splice, a crushed strand or a loose screw: follow that conductor",
    )
    return figure(name, SPLICE, worst, "ohm", reason, result="inconclusive")


_LEADS = flag("disconnected", "whether its wires were off")
_OHMS = Input(
    "reading", "resistance", "46 ohm", "across it, or OL", required=True, or_open=True
)

NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "capacitor",
        "a run capacitor: by a meter, or from running amps and volts",
        RUNNING,
        (
            Input("reading", "capacitance", "34.2 uF", "by a meter, wires off"),
            Input("amps", "current", "8.3 A", "through it, running"),
            Input("volts", "voltage", "295.4 V", "across it, running"),
            Input("frequency", "frequency", "60 Hz", "of the mains"),
            Input("rated", "capacitance", "70 uF", "printed on it"),
            Input("tolerance", "ratio", "6 %", "printed on it", default="6 %"),
            flag("discharged", "whether it was discharged and measured so"),
            _LEADS,
            POWER_INPUT,
            *METER_INPUTS[:2],
            Input("resolution", "capacitance", "0.1 uF", "one count of the range used"),
        ),
        capacitor,
    ),
    NamedCheck(
        "coil",
        "a coil of a valve or contactor against the document's resistance",
        TEMPERED,
        (
            _OHMS,
            required("low", "resistance", "42 ohm", "the document's lowest"),
            required("high", "resistance", "50 ohm", "the document's highest"),
            Input("stated_at", "temperature", "20 °C", "where those figures hold"),
            Input("temperature", "temperature", "35 °C", "of the coil"),
            _LEADS,
            POWER_INPUT,
            *METER_INPUTS,
        ),
        coil,
    ),
    NamedCheck(
        "switch",
        "a contact that must be open or closed",
        CONTACTS,
        (
            Input(
                "reading",
                "resistance",
                "0.3 ohm",
                "across it, or OL",
                required=True,
                or_open=True,
            ),
            Input(
                "must_be",
                "word",
                "closed",
                "by the document, in this state",
                required=True,
                choices=("open", "closed"),
            ),
            flag("in_state", "whether it is in the state that the document names"),
            _LEADS,
            POWER_INPUT,
        ),
        contact,
    ),
    NamedCheck(
        "pressure-switch",
        "the state a pressure switch must have, against its contact",
        SWITCH,
        (
            required("pressure", "pressure, gauge", "2.4 MPa", "at the switch"),
            required("opens", "pressure, gauge", "4.15 MPa", "where it opens"),
            required("closes", "pressure, gauge", "3.2 MPa", "where it closes again"),
            Input("switch_error", "pressure, gauge", "0.1 MPa", "the document's ±"),
            Input("full_scale", "pressure, gauge", "5.5 MPa", "of the gauge"),
            Input("gauge_class", "ratio", "1 %", "of its full scale"),
            Input("reading", "resistance", "0.3 ohm", "across it", or_open=True),
            _LEADS,
            POWER_INPUT,
        ),
        pressure_switch,
    ),
    NamedCheck(
        "wiring",
        "a field cable rung out against the document's wiring table",
        PAIRS,
        (
            required("table", TEXT, "1-1; 2-2; 3-3", "terminal pairs of the document"),
            required("found", TEXT, "1-2; 2-1; 3-3", "what each rings to; 3- for none"),
            choice(
                "shield",
                "where its shield is grounded",
                "outdoor",
                "indoor",
                "both ends",
                "nowhere",
            ),
            choice(
                "shield_rule",
                "where the document grounds it",
                "outdoor",
                "indoor",
                "both ends",
                "nowhere",
            ),
            POWER_INPUT,
        ),
        wiring,
    ),
    NamedCheck(
        "conductors",
        "conductors of one cable, end to end, against each other",
        SPLICE,
        (
            required(
                "readings",
                NAMED_READINGS,
                "1: 0.4 ohm; 2: 0.5 ohm; 3: 6.0 ohm",
                "each conductor",
            ),
            POWER_INPUT,
        ),
        conductors,
    ),
)
