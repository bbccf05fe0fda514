"""Judges insulation, coils, contacts and capacitors, taken out of their circuit."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.capacitance import RUNNING
from assistant.checks.comparing import because, compare, question, shown
from assistant.checks.kinds import (
    CapacitorCheck,
    CoilCheck,
    InsulationCheck,
    Meter,
    SwitchCheck,
)
from assistant.checks.reading import (
    AT_COIL,
    METER_TOP,
    THE_READING,
    WELL_INSIDE,
    ReadingFor,
    bound_for,
)
from assistant.checks.switching import CONTACTS, contact_state
from assistant.checks.uncertainty import GUARD, expanded
from assistant.checks.verdict import Verdict, unjudged
from assistant.checks.windings import TEMPERED, resistance_at

TESTER_PERCENT = 10.0
"""Bound of an insulation tester whose figures are not told, %: common practice."""


def judge_insulation(
    check: InsulationCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of insulation, uncorrected, by the document's limit only.

    Parameters
    ----------
    check : InsulationCheck
        With the least value of the document, [ohm].
    reading : ReadingFor
        As read, [ohm].
    meter : Meter or None
        10 % is assumed when not told.
    """
    base = unjudged(check.id, GUARD, "ohm", check.low)
    if reading.value is None:
        reason = "OL is the end of the range: tell the resistance the tester's range "
        reason += "ends at, and its test voltage"
        return replace(base, reason=reason, missing=(THE_READING,))
    value = reading.value.value
    if meter is None:
        a, assumed = value * TESTER_PERCENT / 100, "the tester is taken as good to 10 %"
    else:
        a, assumed = bound_for(meter, value, "ohm")
    u = expanded(a)
    result, reason = compare(value, base.low, None, u, "ohm")
    cold = ""
    if result == "fail":
        cold = (
            "refrigerant in the oil lowers it: warm the crankcase and read again "
            "before the compressor is named"
        )
    note = because(reason, assumed, "not corrected for temperature", cold)
    return replace(base, result=result, reason=note, value=value, uncertainty=u)


def judge_capacitor(
    check: CapacitorCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict:
    """Return the verdict of a capacitor against its printed value.

    Parameters
    ----------
    check : CapacitorCheck
        Printed value [F] and tolerance [1].
    reading : ReadingFor
        Capacitance, [F].
    meter : Meter or None
        Assumed when not told.
    """
    value = 0.0 if reading.value is None else reading.value.value
    a, assumed = bound_for(meter, value, "F")
    return capacitor_verdict(check, value, a, assumed)


def capacitor_verdict(
    check: CapacitorCheck, value: float, a: float, assumed: str
) -> Verdict:
    """Return the verdict of a capacitance with its bound.

    Parameters
    ----------
    check : CapacitorCheck
        Printed value [F] and tolerance [1].
    value, a : float
        Capacitance and its bound, [F].
    assumed : str
        What was assumed of the meter.
    """
    rated, plus = check.rated.value, check.tolerance.value
    minus = plus if check.minus is None else check.minus.value
    low, high = rated * (1 - minus), rated * (1 + plus)
    u = expanded(a)
    result, reason = compare(value, low, high, u, "F")
    return Verdict(
        check=check.id,
        result=result,
        reason=because(reason, question(value, rated, "F"), assumed),
        value=value,
        expected=rated,
        low=low,
        high=high,
        unit="F",
        uncertainty=u,
        formula=RUNNING.formula,
        source=RUNNING.source,
    )


def judge_coil(check: CoilCheck, reading: ReadingFor, meter: Meter | None) -> Verdict:
    """Return the verdict of a coil, copper brought to the document's temperature.

    Parameters
    ----------
    check : CoilCheck
        Limits [ohm] and the temperature they hold at [K], if stated.
    reading : ReadingFor
        Resistance [ohm] or OL, with the coil's temperature [K].
    meter : Meter or None
        Assumed when not told.
    """
    low, high = check.low.value, check.high.value
    law = GUARD if check.at is None else TEMPERED
    base = unjudged(check.id, law, "ohm", check.low, check.high)
    if reading.value is None:
        if high * WELL_INSIDE <= METER_TOP:
            reason = "OL: an open coil, where both its leads were off and clean"
            return replace(base, result="fail", reason=reason)
        reason = f"OL proves nothing here: some meters end at {shown(METER_TOP, 'ohm')}"
        return replace(base, reason=reason, missing=(THE_READING,))
    value = reading.value.value
    a, assumed = bound_for(meter, value, "ohm")
    corrected = ""
    if check.at is not None:
        if reading.at_temperature is None:
            reason = "the coil's temperature is not known"
            return replace(base, reason=reason, value=value, missing=(AT_COIL,))
        at, wanted = reading.at_temperature.value, check.at.value
        factor = resistance_at(1.0, at, wanted)
        corrected = f"{shown(value, 'ohm')} brought to {shown(wanted, 'K')}"
        value, a = value * factor, a * factor
    u = expanded(a)
    result, reason = compare(value, low, high, u, "ohm")
    note = because(reason, corrected, question(value, (low + high) / 2, "ohm"), assumed)
    return replace(base, result=result, reason=note, value=value, uncertainty=u)


def judge_switch(check: SwitchCheck, reading: ReadingFor) -> Verdict:
    """Return the verdict of a contact in the state that the document names.

    Parameters
    ----------
    check : SwitchCheck
        Whether it must be open or closed.
    reading : ReadingFor
        Across it, [ohm] or OL.
    """
    value = None if reading.value is None else reading.value.value
    state = contact_state(value)
    read = "OL" if value is None else shown(value, "ohm")
    base = Verdict(
        check=check.id,
        result="pass",
        reason=f"{read}: {state}, as it must be while {check.while_state}",
        value=value,
        unit="ohm",
        formula=CONTACTS.formula,
        source=CONTACTS.source,
    )
    if state == "neither":
        reason = (
            f"{read} is neither open nor closed: a burnt contact, or something beside "
            "it is read"
        )
        return replace(base, result="inconclusive", reason=reason)
    if state == check.must_be:
        return base
    reason = f"{read}: {state}, and must be {check.must_be} while {check.while_state}"
    return replace(base, result="fail", reason=reason)
