"""The kinds of sensor and check that a pack may write."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, field_validator, model_validator

from assistant.record import Item, Mode, Record, Role
from assistant.units.quantity import (
    Difference,
    Farads,
    Kelvins,
    Ohms,
    Quantity,
    Ratio,
    Volts,
)

Needs = Literal["look", "power_off", "live", "gauges", "opens_circuit", "swap"]
"""How invasive a check is, least first."""
NEEDS_ORDER: tuple[Needs, ...] = (
    "look",
    "power_off",
    "live",
    "gauges",
    "opens_circuit",
    "swap",
)
Move = Literal[
    "strongly for", "somewhat for", "neutral", "somewhat against", "strongly against"
]
MOVE_FACTOR: dict[str, float] = {
    "strongly for": 6.0,
    "somewhat for": 2.0,
    "neutral": 1.0,
    "somewhat against": 1 / 2,
    "strongly against": 1 / 6,
}


class TablePoint(Record):
    """One row of a resistance-temperature table with its place in the document."""

    temperature: Kelvins
    resistance: Ohms
    doc: str | None = None
    """Alias of the document; None is the sensor's own source."""
    page: int | None = None
    quote: str = ""


class SensorBase(Item):
    """What every sensor says.

    `role` is the trade's name (`discharge`, `room`, `outdoor coil`); `says` are
    words people use for it. `tolerance` is of resistance. `open_above` and
    `short_below` are the maker's own thresholds.
    """

    name: str
    role: str
    says: tuple[str, ...] = ()
    tolerance: Ratio | None = None
    open_above: Ohms | None = None
    short_below: Ohms | None = None


class ResistanceTable(SensorBase):
    """A sensor given as points; `table` names the CSV that `points` come from."""

    kind: Literal["resistance_table"]
    table: str
    points: tuple[TablePoint, ...] = ()


class BetaSensor(SensorBase):
    """A sensor given as R0 at T0 and B."""

    kind: Literal["beta"]
    r0: Ohms
    t0: Kelvins
    beta: Kelvins


Sensor = Annotated[ResistanceTable | BetaSensor, Field(discriminator="kind")]
"""Any row of `sensors.yaml`."""


class Outcome(Record):
    """What one result of a check means and how it moves the causes.

    `result` is pass, fail, or one of a look check's own `options`.
    """

    result: str
    says: str
    moves: dict[str, Move] = Field(default_factory=dict)
    then: str | None = None
    """The check that the document names next."""


class CheckBase(Item):
    """What every check says.

    `allowed_for` lists the roles that may do it. `requires` names context that must
    be known and true before a reading counts: `call present`, `power off`,
    `sensor unplugged`, `temperature at the sensor`, `mains at the terminals`,
    `fixed speed`. `steps` are done in order; the engine adds the safe order of work.
    """

    name: str
    says: tuple[str, ...] = ()
    needs: Needs
    minutes: Annotated[float, Field(gt=0, strict=False)]
    allowed_for: Annotated[tuple[Role, ...], Field(min_length=1)]
    ask: str
    steps: tuple[str, ...] = ()
    requires: tuple[str, ...] = ()
    mode: Mode | None = None
    cautions: tuple[str, ...] = ()
    outcomes: Annotated[tuple[Outcome, ...], Field(min_length=1)]


class LookCheck(CheckBase):
    """A look, a feel or a question with named answers."""

    kind: Literal["look"]
    options: Annotated[tuple[str, ...], Field(min_length=2)]


class ThermistorCheck(CheckBase):
    """Resistance of a sensor at a measured temperature against its table."""

    kind: Literal["thermistor"]
    sensor: str


class SupplyCheck(CheckBase):
    """Supply voltage at the terminals against its band, with the sag at start."""

    kind: Literal["supply_voltage"]
    nominal: Volts
    tolerance: Ratio
    largest_sag: Volts | None = None


class BusCheck(CheckBase):
    """Standby DC bus against sqrt(2) times the measured supply."""

    kind: Literal["standby_bus"]
    tolerance: Ratio
    points: str
    """Where it is measured, as marked on the board."""


class BandCheck(CheckBase):
    """A quantity at named points against the document's band."""

    kind: Literal["band"]
    points: str
    low: Quantity | None = None
    high: Quantity | None = None
    while_state: str | None = None


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


class ChargeCheck(CheckBase):
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
        from assistant.checks.saturation import refrigerant_named
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


class SplitCheck(CheckBase):
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
        ends = (self.wet_bulb_low, self.wet_bulb_high)
        if self.mode == "cool" and None in ends:
            raise ValueError(
                "in cooling a split states its `wet_bulb_low` and `wet_bulb_high`"
            )
        return self


SetCheck = TwoSensorsCheck | ChargeCheck | SplitCheck
"""Judged from several readings, told one after the other."""


class UnbalanceCheck(CheckBase):
    """Unbalance of three phases against the document's largest share."""

    kind: Literal["unbalance"]
    of: Literal["voltage", "current"]
    points: Annotated[tuple[str, ...], Field(min_length=3, max_length=3)]
    """What the three readings are of, as they are told: `l1 to l2`."""
    largest: Ratio


class WindingCheck(CheckBase):
    """Three windings: their spread, and each resistance, by the document's limits.

    Without `largest` the document says only "nearly equal", which no meter proves.
    """

    kind: Literal["winding"]
    points: Annotated[tuple[str, ...], Field(min_length=3, max_length=3)]
    largest: Ratio | None = None
    low: Ohms | None = None
    high: Ohms | None = None


class InsulationCheck(CheckBase):
    """Insulation to ground, uncorrected, against the document's least value."""

    kind: Literal["insulation"]
    points: str
    low: Ohms


class Pin(Record):
    """One pin of a header, to the common pin; what it is called is how it is told."""

    name: str
    low: Volts
    high: Volts


class FanPinsCheck(CheckBase):
    """A fan motor with its driver inside, by the pin table.

    `pins` are the board's supplies, read with the header unplugged. `command` is
    the speed command, read plugged in during a call, before the motor is named.
    """

    kind: Literal["fan_pins"]
    pins: Annotated[tuple[Pin, ...], Field(min_length=1)]
    command: Pin


Behaviour = Literal["swings", "one-sided", "constant", "nothing"]


class LineCheck(CheckBase):
    """A communication line by what the document calls healthy; read three times."""

    kind: Literal["line"]
    points: str
    healthy: Annotated[tuple[Behaviour, ...], Field(min_length=1)]
    means: dict[Behaviour, str] = Field(default_factory=dict)
    low: Volts | None = None
    high: Volts | None = None


class CapacitorCheck(CheckBase):
    """A capacitor by its printed value, with a meter that reads capacitance."""

    kind: Literal["capacitor"]
    rated: Farads
    tolerance: Ratio
    minus: Ratio | None = None
    """Tolerance downwards where it differs."""


class CoilCheck(CheckBase):
    """A coil's resistance against the document; `at` corrects copper to it."""

    kind: Literal["coil"]
    points: str
    low: Ohms
    high: Ohms
    at: Kelvins | None = None


class SwitchCheck(CheckBase):
    """A contact that must be open, or closed, in the state the document names."""

    kind: Literal["switch"]
    points: str
    must_be: Literal["open", "closed"]
    while_state: str


class DiodesCheck(CheckBase):
    """Diode readings of a module in one direction, one for each phase."""

    kind: Literal["module_diodes"]
    points: Annotated[tuple[str, ...], Field(min_length=3, max_length=3)]
    low: Volts | None = None
    high: Volts | None = None


SeveralReadings = UnbalanceCheck | WindingCheck | FanPinsCheck | LineCheck | DiodesCheck
"""Kinds that are judged from more than one reading."""
BenchCheck = (
    SeveralReadings | InsulationCheck | CapacitorCheck | CoilCheck | SwitchCheck
)
Check = Annotated[
    LookCheck
    | ThermistorCheck
    | SupplyCheck
    | BusCheck
    | BandCheck
    | DividerCheck
    | TwoSensorsCheck
    | ChargeCheck
    | SplitCheck
    | UnbalanceCheck
    | WindingCheck
    | InsulationCheck
    | FanPinsCheck
    | LineCheck
    | CapacitorCheck
    | CoilCheck
    | SwitchCheck
    | DiodesCheck,
    Field(discriminator="kind"),
]
"""Any row of `checks.yaml`."""


class Meter(Record):
    """What a meter promises: +-(`percent` of reading + `digits` x `resolution`)."""

    name: str = "unnamed meter"
    percent: Annotated[float, Field(ge=0, strict=False)]
    digits: Annotated[int, Field(ge=0)]
    resolution: Quantity
    thermometer: Annotated[float, Field(ge=0, strict=False)] = 1.0
    """Error of the thermometer used, kelvin."""
