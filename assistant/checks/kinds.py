"""The kinds of sensor and check that a pack may write."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.checks.base_kinds import (
    MOVE_FACTOR,
    NEEDS_ORDER,
    Banded,
    CheckBase,
    Move,
    Needs,
    Outcome,
)
from assistant.checks.gauge_kinds import (
    ChargeCheck,
    DividerCheck,
    SetCheck,
    SplitCheck,
    TwoSensorsCheck,
)
from assistant.record import Item, Record
from assistant.units.quantity import (
    Farads,
    Kelvins,
    Ohms,
    Quantity,
    Ratio,
    Volts,
)

__all__ = [
    "MOVE_FACTOR",
    "NEEDS_ORDER",
    "BandCheck",
    "Behaviour",
    "BenchCheck",
    "BenchSet",
    "BetaSensor",
    "BusCheck",
    "CapacitorCheck",
    "ChargeCheck",
    "Check",
    "CheckBase",
    "CoilCheck",
    "DiodesCheck",
    "DividerCheck",
    "FanPinsCheck",
    "InsulationCheck",
    "LineCheck",
    "LookCheck",
    "Meter",
    "Move",
    "Needs",
    "Outcome",
    "Pin",
    "ResistanceTable",
    "Sensor",
    "SensorBase",
    "SetCheck",
    "SeveralReadings",
    "SplitCheck",
    "SupplyCheck",
    "SwitchCheck",
    "TablePoint",
    "ThermistorCheck",
    "TwoSensorsCheck",
    "UnbalanceCheck",
    "WindingCheck",
]


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


class UnbalanceCheck(CheckBase):
    """Unbalance of three phases against the document's largest share."""

    kind: Literal["unbalance"]
    of: Literal["voltage", "current"]
    points: Annotated[tuple[str, ...], Field(min_length=3, max_length=3)]
    """What the three readings are of, as they are told: `l1 to l2`."""
    largest: Ratio


class WindingCheck(CheckBase, Banded):
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


class Pin(Banded):
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


class LineCheck(CheckBase, Banded):
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


class CoilCheck(CheckBase, Banded):
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


class DiodesCheck(CheckBase, Banded):
    """Diode readings of a module in one direction, one for each phase."""

    kind: Literal["module_diodes"]
    points: Annotated[tuple[str, ...], Field(min_length=3, max_length=3)]
    low: Volts | None = None
    high: Volts | None = None


BenchSet = UnbalanceCheck | WindingCheck | FanPinsCheck | LineCheck | DiodesCheck
SeveralReadings = BenchSet | SetCheck
"""Kinds that are judged from more than one reading."""
BenchCheck = BenchSet | InsulationCheck | CapacitorCheck | CoilCheck | SwitchCheck
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


class MeterRange(Record):
    """What a meter promises on one range: +-(`percent` + `digits` x `resolution`)."""

    percent: Annotated[float, Field(ge=0, strict=False)]
    digits: Annotated[int, Field(ge=0)]
    resolution: Quantity
    up_to: Quantity | None = None
    """End of the range; None for every value of the unit."""


class Meter(MeterRange):
    """A meter: its figures on one range, and on the others if they are told."""

    name: str = "unnamed meter"
    thermometer: Annotated[float, Field(ge=0, strict=False)] = 1.0
    """Error of the thermometer used, kelvin."""
    others: tuple[MeterRange, ...] = ()
    """Its figures on other ranges and for other units."""

    def range_for(self, value: float, unit: str) -> MeterRange | None:
        """Return the finest range that a reading in a canonical unit fits on."""
        fits = [
            one
            for one in (self, *self.others)
            if one.resolution.unit == unit
            and (one.up_to is None or abs(value) <= one.up_to.value)
        ]
        return min(fits, key=lambda one: one.resolution.value, default=None)
