"""The named checks of the air side: state, capacity, split and static pressure."""

from __future__ import annotations

from dataclasses import replace

from assistant.checks.air import MOIST, By, MoistAir, moist_air
from assistant.checks.air_side import (
    CAPACITY,
    ESP,
    SPLIT,
    capacity,
    external_static,
    temperature_split,
)
from assistant.checks.comparing import because, compare
from assistant.checks.entry import METER_INPUTS, NamedCheck, required
from assistant.checks.families.asking import (
    built,
    choice,
    figure,
    flag,
    lacking,
    refused,
)
from assistant.checks.inputs import Input, Values
from assistant.checks.judge import judge
from assistant.checks.kinds import SplitCheck
from assistant.checks.pressure import SEA_LEVEL, atmosphere
from assistant.checks.reading import (
    AIRFLOW,
    FULL_SPEED,
    RETURN_AIR,
    SUPPLY_AIR,
    WET_BULB,
    ReadingFor,
    bound_for,
)
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.uncertainty import expanded
from assistant.errors import UsageError
from assistant.units.quantity import Quantity

_HUMIDITY: dict[str, By] = {
    "wet_bulb": "wet bulb",
    "dew_point": "dew point",
    "humidity": "relative humidity",
}


def air_state(values: Values) -> CheckReport:
    """Return the enthalpy of air, with all that one humidity settles."""
    state = _state(values, "")
    report = figure("moist-air", MOIST, state.enthalpy, "J/kg")
    return replace(
        report,
        also=(
            ("wet bulb", state.wet_bulb, "K"),
            ("dew point", state.dew_point, "K"),
            ("relative humidity", state.relative_humidity, "1"),
            ("water", state.humidity_ratio, "1"),
        ),
    )


def _air(values: Values) -> float:
    height = values.maybe("altitude")
    return SEA_LEVEL if height is None else atmosphere(height.value)


def _state(values: Values, end: str) -> MoistAir:
    given = [key for key in _HUMIDITY if values.has(key + end)]
    if len(given) != 1:
        keys = ", ".join(key + end for key in _HUMIDITY)
        raise UsageError(
            f"a state of air needs exactly one of {keys}",
            f"give wet_bulb{end}='67 °F' or humidity{end}='51 %'",
        )
    told = values.number(given[0] + end)
    return moist_air(
        values.number("dry_bulb" + end), _HUMIDITY[given[0]], told, _air(values)
    )


def air_capacity(values: Values) -> CheckReport:
    """Return the heat that an airflow gave up, with its parts."""
    actual = values.word("measured") == "at the entering air"
    entering, leaving = _state(values, "_in"), _state(values, "_out")
    heat = capacity(
        values.number("airflow"), entering, leaving, _air(values), actual=actual
    )
    where = "at sea level" if not values.has("altitude") else "at the altitude told"
    basis = "the flow as measured" if actual else "the flow taken as standard air"
    report = figure("air-capacity", CAPACITY, heat.total, "W", f"{where}; {basis}")
    parts: tuple[tuple[str, float, str], ...] = (
        ("sensible", heat.sensible, "W"),
        ("latent", heat.latent, "W"),
    )
    if heat.total:
        parts = (*parts, ("sensible share", heat.sensible_share, "1"))
    return replace(report, also=parts)


def split(values: Values) -> CheckReport:
    """Return the temperature split, and its verdict by the document's own figures."""
    name, heating = "temperature-split", values.word("mode") == "heat"
    found = temperature_split(
        values.number("return"), values.number("supply"), heating=heating
    )
    if not values.has("low") and not values.has("high"):
        reason = "no split of the document is told, and no generic one is a verdict"
        return figure(name, SPLIT, found, "dK", reason)
    ends = ("wet_bulb_low", "wet_bulb_high")
    missing = tuple(key for key in ("mode", *ends) if not values.has(key))
    if missing and not (heating and missing == ends):
        reason = "the document's split holds for a mode and a range of wet bulbs"
        return refused(name, SPLIT, "dK", reason, *missing, value=found)
    check = built(
        SplitCheck,
        "temperature_split",
        name,
        mode="heat" if heating else "cool",
        low=values.maybe("low"),
        high=values.maybe("high"),
        wet_bulb_low=values.maybe("wet_bulb_low"),
        wet_bulb_high=values.maybe("wet_bulb_high"),
    )
    told: tuple[tuple[str, Quantity | None], ...] = (
        (RETURN_AIR, values.quantity("return")),
        (SUPPLY_AIR, values.quantity("supply")),
        *(((WET_BULB, values.quantity("wet_bulb")),) if values.has("wet_bulb") else ()),
    )
    context = {
        FULL_SPEED: values.yes("full_speed"),
        AIRFLOW: values.yes("airflow"),
        f"mode {check.mode}": True,
    }
    reading = ReadingFor(value=values.quantity("supply"), set_of=told)
    return from_verdict(name, judge(check, reading, None, context, values.meter()))


def static_pressure(values: Values) -> CheckReport:
    """Return the external static pressure, against the largest of the plate."""
    name = "static-pressure"
    supply, back = values.quantity("supply"), values.quantity("return")
    found = external_static(supply.value, back.value)
    if not values.has("plate"):
        reason = "the plate's largest static pressure is not told"
        return figure(name, ESP, found, "PaG", reason)
    reason, untold = lacking(values, ("full_fan", "fan at the speed of the plate"))
    if untold:
        return refused(name, ESP, "PaG", reason, *untold, value=found)
    bounds, assumed = [], ""
    for reading in (supply, back):
        bound, assumed = bound_for(values.meter(), reading.value, "PaG")
        bounds.append(bound)
    u, largest = expanded(*bounds), values.number("plate")
    result, reason = compare(found, None, largest, u, "PaG")
    return figure(
        name,
        ESP,
        found,
        "PaG",
        because(reason, assumed),
        high=largest,
        result=result,
        uncertainty=u,
    )


_ALTITUDE = Input("altitude", "length", "1500 m", "of the site; none is sea level")


def _of(end: str, where: str, dry: str, wet: str) -> tuple[Input, ...]:
    return (
        required("dry_bulb" + end, "temperature", dry, f"dry bulb {where}"),
        Input("wet_bulb" + end, "temperature", wet, f"wet bulb {where}"),
        replace(
            Input("dew_point" + end, "temperature", "50 °F", f"dew point {where}"),
            instead_of="wet_bulb" + end,
        ),
        replace(
            Input("humidity" + end, "ratio", "51 %", f"relative humidity {where}"),
            instead_of="wet_bulb" + end,
        ),
    )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "moist-air",
        "wet bulb, dew point and enthalpy of air",
        MOIST,
        (*_of("", "of the air", "80 °F", "67 °F"), _ALTITUDE),
        air_state,
    ),
    NamedCheck(
        "air-capacity",
        "total, sensible and latent capacity of the air side",
        CAPACITY,
        (
            required("airflow", "airflow", "1200 cfm", "through the coil"),
            *_of("_in", "into the coil", "80 °F", "67 °F"),
            *_of("_out", "out of the coil", "58 °F", "56 °F"),
            choice(
                "measured",
                "how the airflow is told",
                "standard air",
                "at the entering air",
                default="standard air",
            ),
            _ALTITUDE,
        ),
        air_capacity,
    ),
    NamedCheck(
        "temperature-split",
        "return less supply air, by the document's own figures",
        SPLIT,
        (
            required("return", "temperature", "75 °F", "dry bulb into the unit"),
            required("supply", "temperature", "57 °F", "dry bulb out of the unit"),
            choice("mode", "what it runs in", "cool", "heat"),
            Input("low", "temperature difference", "15 F difference", "lowest allowed"),
            Input("high", "temperature difference", "20 F difference", "highest"),
            Input("wet_bulb", "temperature", "63 °F", "into the indoor coil"),
            Input("wet_bulb_low", "temperature", "61 °F", "the figures hold from"),
            Input("wet_bulb_high", "temperature", "65 °F", "the figures hold up to"),
            flag("full_speed", "whether the compressor is held at full speed"),
            flag("airflow", "whether the airflow is known to be the document's"),
            *METER_INPUTS,
        ),
        split,
    ),
    NamedCheck(
        "static-pressure",
        "external static pressure against the plate",
        ESP,
        (
            required("supply", "pressure, gauge", "0.30 inwc", "in the supply duct"),
            required("return", "pressure, gauge", "-0.20 inwc", "in the return duct"),
            Input("plate", "pressure, gauge", "0.50 inwc", "largest of the plate"),
            flag("full_fan", "whether the fan runs at the plate's speed"),
            *METER_INPUTS,
        ),
        static_pressure,
    ),
)
"""The checks of this family."""
