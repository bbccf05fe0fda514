"""The kinds of check of sensors, gauges and air that need more than one reading."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, field_validator, model_validator

from assistant.checks.base_kinds import Banded, CheckBase, rising
from assistant.units.quantity import Difference, Kelvins, Ohms, Volts


class DividerCheck(CheckBase):
    """Voltage of a plugged-in sensor at the board, at a measured temperature.

    `fixed` is the board's own resistor, `logic` what feeds both, and `sensor_to`
    where the sensor's other leg goes.
    """

    kind: Literal["divider"]
    sensor: str
    logic: Volts
    fixed: Ohms
    sensor_to: Literal["ground", "supply"]
    points: str
    """Where it is measured, as marked on the board."""


class TwoSensorsCheck(CheckBase):
    """Two sensors at one temperature, each by its own curve; unplugged, power off."""

    kind: Literal["two_sensors"]
    sensors: Annotated[tuple[str, ...], Field(min_length=2, max_length=2)]
    largest: Difference


Port = Literal["large line", "small line", "suction pipe", "discharge pipe"]
"""Where the gauge is: a service valve, or a port inside the outdoor unit."""
Metering = Literal["valve indoors", "valve outdoors", "fixed orifice indoors"]
"""What drops the pressure in cooling, and where it sits."""


class ChargeCheck(CheckBase, Banded):
    """Superheat, subcooling or discharge superheat, from a gauge and a thermometer.

    `mode` is needed. An inverter machine gets a verdict only in the maker's own
    charge test, which `charge_test` names; without one the figure is given alone.
    """

    kind: Literal["superheat", "subcooling", "discharge_superheat"]
    refrigerant: str
    port: Port
    metering: Metering
    speed: Literal["fixed", "inverter"]
    charge_test: str | None = None
    low: Difference | None = None
    high: Difference | None = None

    @field_validator("refrigerant")
    @classmethod
    def _known(cls, text: str) -> str:
        from assistant.checks.refrigerants import refrigerant_named
        from assistant.errors import InputError

        try:
            return refrigerant_named(text)
        except InputError as error:
            raise ValueError(str(error)) from error

    @model_validator(mode="after")
    def _told(self) -> ChargeCheck:
        if self.mode not in {"cool", "heat"}:
            raise ValueError("a charge check names its `mode`: cool or heat")
        return self


class SplitCheck(CheckBase, Banded):
    """Return less supply air (or more, in heating) by the document's own figures.

    In cooling it holds for the indoor wet bulbs between `wet_bulb_low` and
    `wet_bulb_high`; always at full speed and the document's airflow.
    """

    kind: Literal["temperature_split"]
    low: Difference | None = None
    high: Difference | None = None
    wet_bulb_low: Kelvins | None = None
    wet_bulb_high: Kelvins | None = None

    @model_validator(mode="after")
    def _told(self) -> SplitCheck:
        if self.mode not in {"cool", "heat"}:
            raise ValueError("a split names its `mode`: cool or heat")
        rising(self.wet_bulb_low, self.wet_bulb_high)
        ends = (self.wet_bulb_low, self.wet_bulb_high)
        if self.mode == "cool" and None in ends:
            raise ValueError(
                "in cooling a split states its `wet_bulb_low` and `wet_bulb_high`"
            )
        return self


SetCheck = TwoSensorsCheck | ChargeCheck | SplitCheck
"""Judged from several readings, told one after the other."""
