"""The named checks of three phases and of the wires that feed them."""

from __future__ import annotations

from typing import Literal

from assistant.checks.comparing import because, shown
from assistant.checks.entry import METER_INPUTS, NamedCheck, required
from assistant.checks.families.asking import (
    built,
    choice,
    figure,
    flag,
    judged,
    refused,
)
from assistant.checks.inputs import Input, Values
from assistant.checks.kinds import UnbalanceCheck
from assistant.checks.law import OutOfRangeError
from assistant.checks.reading import MAINS, RUNNING, ReadingFor
from assistant.checks.report import CheckReport
from assistant.checks.unbalance import PHASE_LOSS, UNBALANCE, phase_lost, unbalance
from assistant.checks.wire_drop import DROP, voltage_drop

_L = ("l1", "l2", "l3")


def voltage_unbalance(values: Values) -> CheckReport:
    """Return the unbalance of three voltages, against a limit when one is given."""
    return _unbalance("voltage-unbalance", "voltage", "volts", values)


def current_unbalance(values: Values) -> CheckReport:
    """Return the unbalance of three currents, against a limit when one is given."""
    return _unbalance("current-unbalance", "current", "amps", values)


def _unbalance(
    name: str, of: Literal["voltage", "current"], key: str, values: Values
) -> CheckReport:
    several = values.many(key)
    share = unbalance(*(one.value for one in several))
    if not values.has("limit"):
        reason = "no limit of the document is told, so nothing is judged"
        return figure(name, UNBALANCE, share, "1", reason)
    check = built(
        UnbalanceCheck,
        "unbalance",
        name,
        of=of,
        points=_L,
        largest=values.quantity("limit"),
    )
    pairs = tuple(zip(_L, several, strict=True))
    context = {MAINS: True, RUNNING: values.yes("running")}
    reading = ReadingFor(value=several[-1], set_of=pairs)
    return judged(check, values, reading, context)


def phase_loss(values: Values) -> CheckReport:
    """Return whether three currents look like a lost phase."""
    name, amps = "phase-loss", values.many("amps")
    if not amps:
        reason = (
            "voltages near normal do not rule a lost phase out on a running motor: "
            "read the three currents"
        )
        return refused(name, PHASE_LOSS, "1", reason, "three currents")
    if values.yes("running") is not True:
        reason = "three currents tell something only while it runs under load"
        return refused(name, PHASE_LOSS, "1", reason, RUNNING)
    currents = [one.value for one in amps]
    share, lost = unbalance(*currents), phase_lost(*currents)
    reason = (
        "a lost phase is suspected: isolate, then fuses, contactor and lugs"
        if lost
        else "no phase is missing; the unbalance itself is judged by the document"
    )
    result: Literal["fail", "pass"] = "fail" if lost else "pass"
    return figure(name, PHASE_LOSS, share, "1", reason, result=result)


def wire_drop(values: Values) -> CheckReport:
    """Return the voltage lost in the wires, with its share of the supply."""
    name, phases = "voltage-drop", int(values.word("phases") or 1)
    amps, length = values.number("current"), values.number("length")
    drop = voltage_drop(amps, length, values.number("area"), phases)
    share = ""
    if values.has("supply"):
        supply = values.number("supply")
        if supply <= 0:
            raise OutOfRangeError("the supply is not above zero")
        share = f"{shown(drop / supply, '1')} of the supply"
    advice = "3 % for a branch and 5 % in all are advice, not a rule"
    return figure(name, DROP, drop, "V", because(share, advice))


_RUNS = flag("running", "whether the compressor ran under load meanwhile")
_LIMIT = Input("limit", "ratio", "2 %", "largest share the document allows")


def _three(key: str, dimension: str, example: str, *, needed: bool = True) -> Input:
    says = "the three readings, with ; between them"
    return Input(key, dimension, example, says, required=needed, many=True)


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "voltage-unbalance",
        "unbalance of three line-to-line voltages, by the largest deviation",
        UNBALANCE,
        (_three("volts", "voltage", "462; 463; 455 V"), _LIMIT, *METER_INPUTS),
        voltage_unbalance,
    ),
    NamedCheck(
        "current-unbalance",
        "unbalance of three currents, by the largest deviation",
        UNBALANCE,
        (
            _three("amps", "current", "33; 29; 34 A"),
            Input("limit", "ratio", "10 %", "largest share the document allows"),
            _RUNS,
            *METER_INPUTS,
        ),
        current_unbalance,
    ),
    NamedCheck(
        "phase-loss",
        "whether three currents look like a lost phase",
        PHASE_LOSS,
        (
            _three("amps", "current", "14.1; 0.3; 14.0 A", needed=False),
            _three("volts", "voltage", "230; 226; 231 V", needed=False),
            _RUNS,
        ),
        phase_loss,
    ),
    NamedCheck(
        "voltage-drop",
        "voltage lost in the copper wires to the unit",
        DROP,
        (
            required("current", "current", "20 A", "carried, under load"),
            required("length", "length", "100 ft", "one way"),
            required("area", "area", "10380 cmil", "of one conductor"),
            choice("phases", "phases of the supply", "1", "3", default="1"),
            Input("supply", "voltage", "240 V", "at the board, for the share"),
        ),
        wire_drop,
    ),
)
