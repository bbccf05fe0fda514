"""Judges a quantity at named points against the document's band."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.comparing import (
    NOT_PROOF,
    STORED_CHARGE_LIMIT,
    because,
    compare,
    shown,
)
from assistant.checks.kinds import BandCheck, Meter
from assistant.checks.reading import METER_TOP, THE_READING, WELL_INSIDE, meter_for
from assistant.checks.uncertainty import GUARD, expanded, meter_bound
from assistant.checks.verdict import Verdict
from assistant.units.quantity import Quantity


def judge_band(check: BandCheck, value: float, meter: Meter | None) -> Verdict:
    """Return the verdict of a quantity against the document's band.

    Parameters
    ----------
    check : BandCheck
        With at least one limit.
    value : float
        In the unit of its limits.
    meter : Meter or None
        Assumed when not told; its thermometer error serves for temperatures.
    """
    unit, low, high = _unit(check), _value(check.low), _value(check.high)
    fitted, assumed = meter_for(meter, value, unit)
    resolution = fitted.resolution.value
    u = expanded(meter_bound(value, fitted.percent, fitted.digits, resolution))
    if unit in {"K", "dK"}:
        u, assumed = expanded(fitted.thermometer), _degrees(fitted)
    result, reason = compare(value, low, high, u, unit)
    dead = NOT_PROOF if unit == "V" and value < _dead_below(check) else ""
    return Verdict(
        check=check.id,
        result=result,
        reason=because(reason, assumed, dead),
        value=value,
        low=low,
        high=high,
        unit=unit,
        uncertainty=u,
        formula=GUARD.formula,
        source=GUARD.source,
    )


def judge_band_open(check: BandCheck) -> Verdict:
    """Return the verdict of OL against a band.

    OL is more than a meter shows: enough for a floor, seldom for a ceiling.
    """
    unit, low, high = _unit(check), _value(check.low), _value(check.high)
    top = shown(METER_TOP, "ohm")
    none = Verdict(
        check=check.id,
        result="no_verdict",
        reason=f"OL proves nothing here: some meters end at {top}",
        low=low,
        high=high,
        unit=unit,
        formula=GUARD.formula,
        source=GUARD.source,
        missing=(THE_READING,),
    )
    if unit != "ohm":
        return replace(none, reason="OL is not a reading on this range")
    taken = f"OL: more than a meter shows, taken as above {top}"
    if high is None and low is not None and low <= METER_TOP:
        return replace(none, result="pass", reason=taken, missing=())
    if high is not None and high * WELL_INSIDE <= METER_TOP:
        return replace(none, result="fail", reason=taken, missing=())
    return none


def _dead_below(check: BandCheck) -> float:
    """Voltage that may be taken for dead: 50 V, or a stated floor below that."""
    low = _value(check.low)
    return STORED_CHARGE_LIMIT if low is None else min(STORED_CHARGE_LIMIT, low)


def _degrees(meter: Meter) -> str:
    return f"the thermometer is taken as good to {meter.thermometer:g} K"


def _value(limit: Quantity | None) -> float | None:
    return None if limit is None else limit.value


def _unit(check: BandCheck) -> str:
    limit = check.low or check.high
    return "" if limit is None else limit.unit
