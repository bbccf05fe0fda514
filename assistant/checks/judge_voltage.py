"""Judges voltages: the supply with its sag, and the bus in standby."""

from __future__ import annotations

import math
from dataclasses import replace

from assistant.checks.bus import STANDBY, SUPPLY, standby_band, standby_bus
from assistant.checks.comparing import NOT_PROOF, because, compare, question, shown
from assistant.checks.kinds import BusCheck, Meter, SupplyCheck
from assistant.checks.reading import (
    CALL,
    MAINS,
    SUPPLY_MEASURED,
    Context,
    ReadingFor,
    bound_for,
    holds,
)
from assistant.checks.supply import BAND, MEASURED, SAG, band, sag
from assistant.checks.uncertainty import expanded
from assistant.checks.verdict import Verdict, unjudged, worst

NEARLY_NONE = 0.1
"""Share of the expected voltage below which nothing may be there at all."""
UNFED = "without a call some units leave the bus unfed: tell whether there is one"


def judge_supply(
    check: SupplyCheck,
    value: float,
    reading: ReadingFor,
    context: Context,
    meter: Meter | None,
) -> Verdict:
    """Return the verdict of a supply voltage, and of its fall at start if told.

    Parameters
    ----------
    check : SupplyCheck
        Nominal voltage [V], tolerance [1] and largest sag [V].
    value : float
        At rest, [V].
    reading : ReadingFor
        With the voltage at start, if it was measured.
    context : Context
        Whether mains is known to be at the terminals.
    meter : Meter or None
        Assumed when not told.
    """
    MEASURED.hold(value)
    nominal = check.nominal.value
    low, high = band(nominal, check.tolerance.value)
    bound, assumed = bound_for(meter, value, "V")
    u = expanded(bound)
    base = Verdict(
        check=check.id,
        result="no_verdict",
        reason="",
        value=value,
        expected=nominal,
        low=low,
        high=high,
        unit="V",
        uncertainty=u,
        formula=BAND.formula,
        source=BAND.source,
    )
    none = value < nominal * NEARLY_NONE
    if reading.power_state == "off" or (none and not _live(reading, context)):
        reason = "it is not known that the supply was on when this was read"
        return replace(base, reason=because(reason, NOT_PROOF), missing=(MAINS,))
    result, reason = compare(value, low, high, u, "V")
    stated_only = check.largest_sag is not None and reading.under_load is None
    notes = (
        assumed,
        question(value, nominal, "V"),
        "the sag is not judged: no voltage at start is told" if stated_only else "",
        NOT_PROOF if none else "",
    )
    rest = replace(base, result=result, reason=because(reason, *notes))
    return _worse(rest, _sag(base, check, reading, meter))


def _sag(
    base: Verdict, check: SupplyCheck, reading: ReadingFor, meter: Meter | None
) -> Verdict | None:
    largest, at_start = check.largest_sag, reading.under_load
    if largest is None or at_start is None or at_start.unit != "V":
        return None
    rest = base.value or 0.0
    fall = sag(rest, at_start.value)
    bounds = (bound_for(meter, rest, "V")[0], bound_for(meter, at_start.value, "V")[0])
    u = expanded(*bounds)
    result, reason = compare(fall, None, largest.value, u, "V")
    return Verdict(
        check=base.check,
        result=result,
        reason=because(f"sag at start: {reason}", bound_for(meter, rest, "V")[1]),
        value=fall,
        high=largest.value,
        unit="V",
        uncertainty=u,
        formula=SAG.formula,
        source=SAG.source,
    )


def _worse(rest: Verdict, start: Verdict | None) -> Verdict:
    """Return the worse of two verdicts; the voltage at rest decides a tie."""
    if start is None:
        return rest
    if worst((rest, start)) is start:
        return start
    return replace(rest, reason=because(rest.reason, start.reason))


def judge_bus(
    check: BusCheck,
    value: float,
    reading: ReadingFor,
    context: Context,
    meter: Meter | None,
) -> Verdict:
    """Return the verdict of a bus voltage in standby.

    Parameters
    ----------
    check : BusCheck
        With its tolerance [1].
    value : float
        Direct voltage at the marked points, [V].
    reading : ReadingFor
        With the supply measured at the same time.
    context : Context
        Whether mains is known to be at the terminals.
    meter : Meter or None
        Assumed when not told.
    """
    base = replace(unjudged(check.id, STANDBY, "V"), value=value)
    supply = reading.supply
    if reading.power_state == "off":
        reason = "a standby voltage is read with the supply on"
        return replace(base, reason=because(reason, NOT_PROOF), missing=(MAINS,))
    if supply is None or supply.unit != "V":
        reason = "the supply was not measured at the same time"
        dead = NOT_PROOF if value < SUPPLY.low else ""
        return replace(base, reason=because(reason, dead), missing=(SUPPLY_MEASURED,))
    if not SUPPLY.low <= supply.value <= SUPPLY.high:
        reason = f"{shown(supply.value, 'V')} of supply says nothing about the bus"
        return replace(base, reason=because(reason, NOT_PROOF), missing=(MAINS,))
    expected = standby_bus(supply.value)
    base = replace(base, expected=expected)
    none = value < expected * NEARLY_NONE
    if none and not _live(reading, context):
        reason = "it is not known that the supply was on when this was read"
        return replace(base, reason=because(reason, NOT_PROOF), missing=(MAINS,))
    judged = _bus(base, check, supply.value, NOT_PROOF if none else "", meter)
    below = judged.result == "fail" and value < expected
    if below and holds(CALL, reading, context) is not True:
        reason = because(judged.reason, UNFED)
        return replace(judged, result="no_verdict", reason=reason, missing=(CALL,))
    return judged


def _bus(
    base: Verdict, check: BusCheck, supply: float, dead: str, meter: Meter | None
) -> Verdict:
    value, expected = base.value or 0.0, base.expected or 0.0
    low, high = standby_band(supply, check.tolerance.value)
    bound, assumed = bound_for(meter, value, "V")
    u = expanded(bound, math.sqrt(2) * bound_for(meter, supply, "V")[0])
    result, reason = compare(value, low, high, u, "V")
    notes = (assumed, question(value, expected, "V"), dead)
    return replace(
        base,
        result=result,
        reason=because(reason, *notes),
        low=low,
        high=high,
        uncertainty=u,
    )


def _live(reading: ReadingFor, context: Context) -> bool:
    return reading.power_state == "live" or holds(MAINS, reading, context) is True
