"""Judges superheat and subcooling: the figure always, a verdict only where allowed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from assistant.checks.charge_rules import PRESSURE, TEMPERATURE, misplaced
from assistant.checks.charging import (
    SUBCOOLING,
    SUPERHEAT,
    saturation_error,
    subcooling,
    superheat,
)
from assistant.checks.comparing import because, compare, shown, unmet_reason
from assistant.checks.kinds import ChargeCheck, Meter
from assistant.checks.pressure import SEA_LEVEL, absolute, atmosphere
from assistant.checks.reading import (
    ALTITUDE,
    AT_PORT,
    CHARGE_TEST,
    STEADY,
    ReadingFor,
)
from assistant.checks.uncertainty import expanded, meter_bound
from assistant.checks.verdict import Verdict, unjudged
from assistant.units.quantity import Quantity

GAUGE_ERROR = 0.005 * 500 * 6894.757293168361
"""Pa, taken when no gauge is told: 0.5 % of a 500 psi scale (common practice)."""


def charge_requirements(check: ChargeCheck) -> tuple[str, ...]:
    """Return the context that a verdict on the charge needs, its mode aside."""
    if check.speed == "fixed":
        return (AT_PORT, STEADY)
    return (AT_PORT, CHARGE_TEST) if check.charge_test else (AT_PORT,)


def pressure_of(told: Quantity, altitude: Quantity | None) -> tuple[float, str]:
    """Return an absolute pressure [Pa], and how the reading was taken.

    Raises
    ------
    ValueError
        For what is no pressure, or lies below a perfect vacuum.
    """
    if told.unit == "Pa":
        return told.value, f"{_said(told)} is taken as absolute"
    if told.unit != "PaG":
        raise ValueError(f"{_said(told)} is not a pressure")
    air = SEA_LEVEL if altitude is None else atmosphere(altitude.value)
    place = (
        "at sea level, as no altitude is told"
        if altitude is None
        else f"at {altitude.text or shown(altitude.value, 'm')}"
    )
    return absolute(told.value, air), f"{_said(told)} is taken as gauge, {place}"


def judge_charge(
    check: ChargeCheck,
    reading: ReadingFor,
    unmet: Mapping[str, bool | None],
    meter: Meter | None,
) -> Verdict:
    """Return the figure of a charge check, and its verdict where one is allowed.

    Parameters
    ----------
    check : ChargeCheck
        With its port, mode and metering.
    reading : ReadingFor
        A set: pressure, line temperature and, if told, the altitude.
    unmet : mapping
        What must hold and does not (False) or is not known (None).
    meter : Meter or None
        A gauge when its resolution is a pressure; its thermometer's error counts.
    """
    law = SUBCOOLING if check.kind == "subcooling" else SUPERHEAT
    none = unjudged(check.id, law, "dK", check.low, check.high)
    wrong = misplaced(check.kind, check.port, check.mode, check.metering)
    if wrong:
        return replace(none, reason=wrong)
    names = (PRESSURE[check.kind], TEMPERATURE[check.kind])
    missing = tuple(name for name in names if reading.among(name) is None)
    if missing:
        reason = f"a single reading says nothing of the charge: {', '.join(missing)}"
        untold = tuple(f"reading {name}" for name in missing)
        return replace(none, reason=f"{reason} is not told", missing=untold)
    found, notes = _figure(none, check, reading, meter)
    refused = _refused(check, unmet)
    if refused is not None:
        reason, missing = refused
        return replace(found, reason=because(reason, notes), missing=missing)
    if none.low is None and none.high is None:
        reason = "the document states no limits for it"
        return replace(found, reason=because(reason, notes))
    assert found.value is not None  # noqa: S101 - set by the figure
    assert found.uncertainty is not None  # noqa: S101 - set by the figure
    result, reason = compare(found.value, none.low, none.high, found.uncertainty, "dK")
    return replace(found, result=result, reason=because(reason, notes))


def _figure(
    none: Verdict, check: ChargeCheck, reading: ReadingFor, meter: Meter | None
) -> tuple[Verdict, str]:
    told, line = (reading.among(names[check.kind]) for names in (PRESSURE, TEMPERATURE))
    assert told is not None  # noqa: S101 - looked at before
    assert line is not None  # noqa: S101 - looked at before
    if line.unit != "K":
        raise ValueError(f"{_said(line)} is not a temperature")
    pressure, taken = pressure_of(told, reading.among(ALTITUDE))
    liquid = check.kind == "subcooling"
    of = subcooling if liquid else superheat
    value = of(check.refrigerant, pressure, line.value)
    error, assumed = _gauge(meter, told)
    degrees = 1.0 if meter is None else meter.thermometer
    bound = saturation_error(check.refrigerant, pressure, error, liquid=liquid)
    found = replace(none, value=value, uncertainty=expanded(bound, degrees))
    return found, because(
        taken,
        _negative(value, liquid=liquid),
        assumed,
        f"the thermometer is taken as good to {degrees:g} K",
    )


def _gauge(meter: Meter | None, told: Quantity) -> tuple[float, str]:
    """Return the largest error of a gauge [Pa] and what was assumed."""
    own = None if meter is None else meter.range_for(told.value, told.unit)
    if own is not None:
        resolution = own.resolution.value
        return meter_bound(told.value, own.percent, own.digits, resolution), ""
    return GAUGE_ERROR, "the gauge is not told, so 0.5 % of a 500 psi scale is assumed"


def _negative(value: float, *, liquid: bool) -> str:
    if value >= 0:
        return ""
    if liquid:
        return "the line is warmer than its saturation: it cannot be all liquid there"
    return "the line is colder than its saturation: read both again at one place"


def _refused(
    check: ChargeCheck, unmet: Mapping[str, bool | None]
) -> tuple[str, tuple[str, ...]] | None:
    """Return why the figure stands alone, with what is still to be told."""
    if check.speed == "inverter" and check.charge_test is None:
        return (
            "an inverter sets this itself, and the document names no charge test: the "
            "figure, and no verdict; the charge is weighed in",
            (),
        )
    if check.speed == "inverter" and CHARGE_TEST in unmet:
        reason = f"outside the maker's charge test ({check.charge_test}) an inverter "
        return f"{reason}sets this itself: the figure, and no verdict", tuple(unmet)
    if unmet:
        false = [name for name, state in unmet.items() if state is False]
        unknown = [name for name, state in unmet.items() if state is None]
        return unmet_reason(false, unknown), tuple(unmet)
    return None


def _said(quantity: Quantity) -> str:
    return quantity.text or shown(quantity.value, quantity.unit)
