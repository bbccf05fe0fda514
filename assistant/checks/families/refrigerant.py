"""The named checks of a refrigerant: saturation, superheat and subcooling."""

from __future__ import annotations

from dataclasses import replace
from typing import Literal

from assistant.checks.charge_rules import PRESSURE, TEMPERATURE
from assistant.checks.charging import (
    APPROACH,
    SUBCOOLING,
    SUPERHEAT,
    approach,
    subcooling,
    superheat,
)
from assistant.checks.comparing import because, compare
from assistant.checks.curve import Curve, saturation_curve
from assistant.checks.entry import METER_INPUTS, NamedCheck, required
from assistant.checks.families.asking import (
    built,
    choice,
    figure,
    flag,
    lacking,
    refused,
)
from assistant.checks.inputs import FLUID, Input, Values
from assistant.checks.inputs import PRESSURE as GAUGE_OR_ABSOLUTE
from assistant.checks.judge import judge
from assistant.checks.judge_charge import pressure_of
from assistant.checks.kinds import ChargeCheck
from assistant.checks.pressure import SEA_LEVEL, atmosphere, gauge
from assistant.checks.reading import (
    ALTITUDE,
    AT_PORT,
    CHARGE_TEST,
    STEADY,
    ReadingFor,
)
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.saturation import (
    SATURATION,
    Side,
    saturation_pressure,
    saturation_temperature,
)
from assistant.checks.uncertainty import expanded
from assistant.errors import UsageError
from assistant.units.quantity import Quantity

_Kind = Literal["superheat", "subcooling", "discharge_superheat"]

_FLUID = required("refrigerant", FLUID, "R-410A", "of the unit's plate")
_ALTITUDE = Input("altitude", "length", "1500 m", "of the site; none is sea level")
_PRESSURE = Input(
    "pressure", GAUGE_OR_ABSOLUTE, "118 psig", "gauge, or written as absolute"
)
_CONTEXT = (
    choice("mode", "what it runs in", "cool", "heat"),
    choice(
        "port",
        "where the gauge is",
        "large line",
        "small line",
        "suction pipe",
        "discharge pipe",
    ),
    choice(
        "metering",
        "what drops the pressure in cooling, and where",
        "valve indoors",
        "valve outdoors",
        "fixed orifice indoors",
    ),
    choice("speed", "the compressor's", "fixed", "inverter"),
    flag("test", "whether the maker's charge test is running"),
    flag("steady", "whether it has run steadily for 15 minutes"),
)
_LIMITS = (
    Input("low", "temperature difference", "8 F difference", "lowest allowed"),
    Input("high", "temperature difference", "14 F difference", "highest allowed"),
)
_THERMOMETER = Input(
    "thermometer", "temperature difference", "1 K difference", "its largest error"
)


def saturation(values: Values) -> CheckReport:
    """Return a saturation temperature of a pressure, or a pressure of a temperature."""
    name, fluid = "saturation", values.word("refrigerant") or ""
    if values.has("pressure") == values.has("temperature"):
        raise UsageError(
            "check 'saturation' takes a pressure or a temperature, one of them",
            "give pressure='118 psig' or temperature='40 °F'",
        )
    side: Side = "bubble" if values.word("side") == "bubble" else "dew"
    other: Side = "dew" if side == "bubble" else "bubble"
    if values.has("pressure"):
        pressure, taken = pressure_of(
            values.quantity("pressure"), values.maybe("altitude")
        )
        found = saturation_temperature(fluid, pressure, side)
        beside = saturation_temperature(fluid, pressure, other)
        report = figure(name, SATURATION, found, "K", f"{side}; {taken}")
        return replace(report, also=((f"{other} temperature", beside, "K"),))
    temperature = values.number("temperature")
    altitude = values.maybe("altitude")
    air = SEA_LEVEL if altitude is None else atmosphere(altitude.value)
    found, beside = (
        saturation_pressure(fluid, temperature, which) for which in (side, other)
    )
    where = "at sea level" if altitude is None else f"at {altitude.text}"
    report = figure(
        name, SATURATION, gauge(found, air), "PaG", f"{side}, gauge {where}"
    )
    return replace(
        report,
        also=(
            ("absolute", found, "Pa"),
            (f"{other} pressure", gauge(beside, air), "PaG"),
        ),
    )


def suction_superheat(values: Values) -> CheckReport:
    """Return the superheat of the suction, and a verdict where one is allowed."""
    return _charge("superheat", "superheat", values)


def liquid_subcooling(values: Values) -> CheckReport:
    """Return the subcooling of the liquid, and a verdict where one is allowed."""
    return _charge("subcooling", "subcooling", values)


def discharge_superheat(values: Values) -> CheckReport:
    """Return the superheat of the discharge, and a verdict where one is allowed."""
    return _charge("discharge-superheat", "discharge_superheat", values)


def _charge(name: str, kind: _Kind, values: Values) -> CheckReport:
    law = SUBCOOLING if kind == "subcooling" else SUPERHEAT
    asked = ("mode", "port", "metering", "speed")
    untold = tuple(key for key in asked if not values.has(key))
    limited = values.has("low") or values.has("high")
    if untold:
        report = _plain(name, kind, values)
        if not limited:
            return report
        reason = f"no verdict on the charge without {', '.join(untold)}"
        return replace(
            report,
            result="no_verdict",
            reason=because(reason, report.reason),
            missing=untold,
        )
    check = built(
        ChargeCheck,
        kind,
        name,
        refrigerant=values.word("refrigerant"),
        **{key: values.word(key) for key in asked},
        charge_test="as the document names it",
        low=values.maybe("low"),
        high=values.maybe("high"),
    )
    told: list[tuple[str, Quantity | None]] = [
        (PRESSURE[kind], values.quantity("pressure")),
        (TEMPERATURE[kind], values.quantity("line")),
    ]
    if values.has("altitude"):
        told.append((ALTITUDE, values.quantity("altitude")))
    context = {
        AT_PORT: True,
        CHARGE_TEST: values.yes("test"),
        STEADY: values.yes("steady"),
        f"mode {check.mode}": True,
    }
    reading = ReadingFor(value=values.quantity("line"), set_of=tuple(told))
    verdict = judge(check, reading, None, context, values.meter())
    return replace(from_verdict(name, verdict), formula=law.formula)


def _plain(name: str, kind: _Kind, values: Values) -> CheckReport:
    """Return the figure alone."""
    fluid, line = values.word("refrigerant") or "", values.number("line")
    pressure, taken = pressure_of(values.quantity("pressure"), values.maybe("altitude"))
    if kind == "subcooling":
        return figure(name, SUBCOOLING, subcooling(fluid, pressure, line), "dK", taken)
    return figure(name, SUPERHEAT, superheat(fluid, pressure, line), "dK", taken)


def _vapour(values: Values) -> Curve:
    return _drawn("dew", values)


def _liquid(values: Values) -> Curve:
    return _drawn("bubble", values)


def _drawn(side: Side, values: Values) -> Curve:
    """Return the saturation curve with the line's temperature and pressure."""
    fluid = values.word("refrigerant") or ""
    pressure, _ = pressure_of(values.quantity("pressure"), values.maybe("altitude"))
    return saturation_curve(fluid, side, values.number("line"), pressure)


def _saturated(values: Values) -> Curve:
    side: Side = "bubble" if values.word("side") == "bubble" else "dew"
    fluid = values.word("refrigerant") or ""
    if values.has("temperature"):
        at = values.number("temperature")
        pressure = saturation_pressure(fluid, at, side)
    else:
        told, altitude = values.quantity("pressure"), values.maybe("altitude")
        pressure, _ = pressure_of(told, altitude)
        at = saturation_temperature(fluid, pressure, side)
    return saturation_curve(fluid, side, at, pressure)


def approach_check(values: Values) -> CheckReport:
    """Return the approach of the liquid line, and its verdict by the document."""
    name = "approach"
    found = approach(values.number("line"), values.number("outdoor"))
    low, high = (_value(values, key) for key in ("low", "high"))
    if low is None and high is None:
        return figure(name, APPROACH, found, "dK", "no limit of the document is told")
    reason, untold = lacking(
        values, ("cooling", "running in cooling"), ("steady", STEADY)
    )
    if untold:
        return refused(name, APPROACH, "dK", reason, *untold, value=found)
    degrees = _degrees(values)
    u = expanded(degrees, degrees)
    result, reason = compare(found, low, high, u, "dK")
    return figure(
        name,
        APPROACH,
        found,
        "dK",
        reason,
        low=low,
        high=high,
        result=result,
        uncertainty=u,
    )


def _value(values: Values, key: str) -> float | None:
    return values.number(key) if values.has(key) else None


def _degrees(values: Values) -> float:
    return values.number("thermometer") if values.has("thermometer") else 1.0


def _line(example: str, says: str) -> Input:
    return required("line", "temperature", example, says)


_CHARGE_INPUTS = (_ALTITUDE, *_CONTEXT, *_LIMITS, *METER_INPUTS)
_MEASURED = replace(_PRESSURE, required=True)

NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "saturation",
        "saturation of a refrigerant: temperature of a pressure, or back",
        SATURATION,
        (
            _FLUID,
            _PRESSURE,
            Input(
                "temperature",
                "temperature",
                "40 °F",
                "of the saturated fluid",
                instead_of="pressure",
            ),
            choice("side", "dew for vapour, bubble for liquid", "dew", "bubble"),
            _ALTITUDE,
        ),
        saturation,
        _saturated,
    ),
    NamedCheck(
        "superheat",
        "superheat of the suction line",
        SUPERHEAT,
        (_FLUID, _MEASURED, _line("52 °F", "of the suction line"), *_CHARGE_INPUTS),
        suction_superheat,
        _vapour,
    ),
    NamedCheck(
        "subcooling",
        "subcooling of the liquid line",
        SUBCOOLING,
        (
            _FLUID,
            replace(_MEASURED, example="340 psig"),
            _line("95 °F", "of the liquid line"),
            *_CHARGE_INPUTS,
        ),
        liquid_subcooling,
        _liquid,
    ),
    NamedCheck(
        "discharge-superheat",
        "superheat of the discharge line",
        SUPERHEAT,
        (
            _FLUID,
            replace(_MEASURED, example="340 psig"),
            _line("165 °F", "of the discharge line"),
            *_CHARGE_INPUTS,
        ),
        discharge_superheat,
        _vapour,
    ),
    NamedCheck(
        "approach",
        "liquid line over the outdoor air",
        APPROACH,
        (
            _line("103 °F", "of the liquid line"),
            required("outdoor", "temperature", "95 °F", "air into the outdoor coil"),
            *_LIMITS,
            flag("cooling", "whether it runs in cooling"),
            flag("steady", "whether it has run steadily for 15 minutes"),
            _THERMOMETER,
        ),
        approach_check,
    ),
)
"""The checks of this family."""
