"""One reading with what must be known about it, and the meter behind it."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from assistant.checks.kinds import Meter, MeterRange
from assistant.checks.uncertainty import meter_bound
from assistant.units.parse import format_quantity
from assistant.units.quantity import Quantity

POWER_OFF = "power off"
AT_SENSOR = "temperature at the sensor"
AT_COIL = "temperature at the coil"
MAINS = "mains at the terminals"
CALL = "call present"
SUPPLY_MEASURED = "supply measured"
RUNNING = "compressor running"
MODULE_OFF = "module disconnected"
NO_VACUUM = "not under vacuum"
LEADS_OFF = "leads disconnected"
HEADER = "header unplugged"
DISCHARGED = "capacitor discharged"
BUS_DEAD = "bus measured dead"
DIGITAL = "digital meter"
THE_READING = "reading"
AT_PORT = "gauge at the named port"
CHARGE_TEST = "charge test running"
STEADY = "running steadily"
ONE_TEMPERATURE = "sensors at one temperature"
BOARD_ON = "board powered"
FULL_SPEED = "full speed"
AIRFLOW = "airflow as stated"
ALTITUDE = "altitude"
RETURN_AIR = "return air temperature"
SUPPLY_AIR = "supply air temperature"
WET_BULB = "indoor wet bulb"

Context = Mapping[str, bool | None]
"""Each requirement of a check to true, false, or None when it is not known."""

METER_TOP = 2e6
"""Highest resistance that any handheld meter shows, ohm: common practice, no source."""
WELL_INSIDE = 10.0
"""How far below `METER_TOP` an expected value is well inside: common practice."""

_FINEST = {"ohm": 0.1, "V": 0.001, "A": 0.01, "F": 1e-9}
_PLACES = 3
"""A four-digit display shows three digits after the leading one."""


@dataclass(frozen=True, slots=True)
class ReadingFor:
    """A reading told for one check.

    Attributes
    ----------
    value : Quantity or None
        What the meter showed; None only with `open_line`.
    at_temperature : Quantity or None
        Measured at the sensor.
    supply : Quantity or None
        Supply voltage measured at the terminals at the same time.
    under_load : Quantity or None
        Lowest supply voltage while the compressor started.
    open_line : bool
        The meter showed OL: over its range.
    power_state : str or None
        Whether the power was off or on while it was taken.
    set_of : tuple of (str, Quantity or None)
        For a check judged from several readings: what each is of, in the order they
        were told; None for OL.
    """

    value: Quantity | None
    at_temperature: Quantity | None = None
    supply: Quantity | None = None
    under_load: Quantity | None = None
    open_line: bool = False
    power_state: Literal["off", "live"] | None = None
    set_of: tuple[tuple[str, Quantity | None], ...] = ()
    """All readings of a check that takes several: what each is of, None for OL."""

    def among(self, name: str) -> Quantity | None:
        """Return one reading of the set, or None when it is not told or OL."""
        return dict(self.set_of).get(name)


def usual_resolution(value: float, unit: str) -> float:
    """Return the last digit of a four-digit meter on the range that fits `value`.

    Parameters
    ----------
    value : float
        As read, [unit].
    unit : str
        A canonical unit.

    Examples
    --------
    >>> usual_resolution(12400.0, "ohm"), usual_resolution(231.0, "V")
    (10.0, 0.1)
    """
    finest = _FINEST.get(unit, 0.0)
    if value == 0:
        return finest
    return max(10.0 ** (math.floor(math.log10(abs(value))) - _PLACES), finest)


def meter_for(meter: Meter | None, value: float, unit: str) -> tuple[Meter, str]:
    """Return a meter whose figures fit a reading, and what had to be assumed.

    Parameters
    ----------
    meter : Meter or None
        As told.
    value : float
        The reading, [unit].
    unit : str
        A canonical unit.

    Returns
    -------
    tuple of (Meter, str)
        The text is empty when the meter was told for this unit. Otherwise 1 % and
        3 digits are assumed: common practice, no source.
    """
    found = None if meter is None else meter.range_for(value, unit)
    error = 1.0 if meter is None else meter.thermometer
    if found is not None:
        return _on_range(found, error), ""
    resolution = Quantity(value=usual_resolution(value, unit), unit=unit)
    assumed = Meter(percent=1.0, digits=3, resolution=resolution, thermometer=error)
    shown = format_quantity(resolution, digits=1)
    return assumed, f"{_lack(meter, unit)}, so 1 % + 3 digits of {shown} are assumed"


def _on_range(found: MeterRange, thermometer: float) -> Meter:
    return Meter(
        percent=found.percent,
        digits=found.digits,
        resolution=found.resolution,
        thermometer=thermometer,
    )


def _lack(meter: Meter | None, unit: str) -> str:
    if meter is None:
        return "the meter is not told"
    told = {one.resolution.unit for one in (meter, *meter.others)}
    if unit in told:
        return f"no range told of {meter.name} reaches this far"
    return f"the meter's figures are for {', '.join(sorted(told))}"


def bound_for(meter: Meter | None, value: float, unit: str) -> tuple[float, str]:
    """Return the meter's bound for a reading [unit] and what was assumed.

    Parameters
    ----------
    meter : Meter or None
        As told.
    value : float
        The reading, [unit].
    unit : str
        A canonical unit.
    """
    fitted, assumed = meter_for(meter, value, unit)
    step = fitted.resolution.value
    return meter_bound(value, fitted.percent, fitted.digits, step), assumed


def holds(name: str, reading: ReadingFor, context: Context) -> bool | None:
    """Return whether a requirement holds: true, false, or None when not known.

    What was told with the reading itself counts before the rest of the context.
    """
    if name == POWER_OFF and reading.power_state is not None:
        return reading.power_state == "off"
    told = context.get(name)
    if told is not None:
        return told
    if name in {AT_SENSOR, AT_COIL} and reading.at_temperature is not None:
        return True
    if name == MAINS and reading.supply is not None:
        return reading.supply.unit == "V" and reading.supply.value > 0
    return None
