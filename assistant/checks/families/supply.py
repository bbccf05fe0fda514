"""The named checks of the supply and the bus behind the rectifier."""

from __future__ import annotations

from assistant.checks.bus import STANDBY, standby_band, standby_bus
from assistant.checks.comparing import because, compare
from assistant.checks.entry import (
    METER_INPUTS,
    POWER_INPUT,
    TEN_PERCENT,
    VOLTS,
    NamedCheck,
    reading_of,
    required,
)
from assistant.checks.families.asking import built, figure, flag
from assistant.checks.inputs import Input, Values
from assistant.checks.judge import judge
from assistant.checks.kinds import BusCheck, SupplyCheck
from assistant.checks.reading import CALL, bound_for
from assistant.checks.report import CheckReport, from_verdict
from assistant.checks.supply import BAND, SAG, band, sag
from assistant.checks.uncertainty import expanded


def supply_voltage(values: Values) -> CheckReport:
    """Return the band of a supply voltage, and the verdict of a reading."""
    name = "supply-voltage"
    nominal, tolerance = values.quantity("nominal"), values.quantity("tolerance")
    low, high = band(nominal.value, tolerance.value)
    if not values.has("reading"):
        return figure(name, BAND, nominal.value, "V", low=low, high=high)
    check = built(
        SupplyCheck,
        "supply_voltage",
        name,
        nominal=nominal,
        tolerance=tolerance,
    )
    reading = reading_of(values, "reading")
    return from_verdict(name, judge(check, reading, None, {}, values.meter()))


def standby_bus_voltage(values: Values) -> CheckReport:
    """Return the bus expected in standby, and the verdict of a reading."""
    name, supply = "standby-bus", values.number("supply")
    tolerance = values.quantity("tolerance")
    low, high = standby_band(supply, tolerance.value)
    if not values.has("reading"):
        return figure(name, STANDBY, standby_bus(supply), "V", low=low, high=high)
    check = built(
        BusCheck,
        "standby_bus",
        name,
        tolerance=tolerance,
        points="as marked on the board",
    )
    reading = reading_of(values, "reading", supply="supply")
    context = {CALL: values.yes("call")}
    return from_verdict(name, judge(check, reading, None, context, values.meter()))


def supply_sag(values: Values) -> CheckReport:
    """Return how far the supply falls at start, against the largest allowed."""
    name, rest, start = "supply-sag", values.number("rest"), values.number("start")
    fall = sag(rest, start)
    if not values.has("largest"):
        return figure(name, SAG, fall, "V")
    bounds, assumed = [], ""
    for value in (rest, start):
        bound, assumed = bound_for(values.meter(), value, "V")
        bounds.append(bound)
    u, largest = expanded(*bounds), values.number("largest")
    result, reason = compare(fall, None, largest, u, "V")
    return figure(
        name,
        SAG,
        fall,
        "V",
        because(reason, assumed),
        high=largest,
        result=result,
        uncertainty=u,
    )


NAMED: tuple[NamedCheck, ...] = (
    NamedCheck(
        "supply-voltage",
        "supply voltage at the terminals against its band",
        BAND,
        (
            required("nominal", "voltage", "230 V", "voltage of the nameplate"),
            TEN_PERCENT,
            VOLTS,
            POWER_INPUT,
            *METER_INPUTS,
        ),
        supply_voltage,
    ),
    NamedCheck(
        "supply-sag",
        "how far the supply falls when the compressor starts",
        SAG,
        (
            required("rest", "voltage", "231 V", "at the terminals, before the start"),
            required("start", "voltage", "215 V", "lowest during the start"),
            Input("largest", "voltage", "25 V", "largest fall the document allows"),
            *METER_INPUTS,
        ),
        supply_sag,
    ),
    NamedCheck(
        "standby-bus",
        "direct voltage behind the rectifier in standby",
        STANDBY,
        (
            required("supply", "voltage", "230 V", "measured at the same time"),
            TEN_PERCENT,
            VOLTS,
            flag("call", "whether there is a call at the unit"),
            POWER_INPUT,
            *METER_INPUTS,
        ),
        standby_bus_voltage,
    ),
)
"""The checks of this family."""
