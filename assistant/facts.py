"""Facts: what was seen, measured or done, with its time, origin and words."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.checks.kinds import Meter
from assistant.record import Mode, Record, Role
from assistant.rules.applicability import Plate
from assistant.rules.kinds import Complaint, Hazard
from assistant.signals.observation import Observation
from assistant.timing.moment import Moment
from assistant.timing.stop_kinds import ResetName
from assistant.timing.triggers import Trigger
from assistant.units.quantity import Quantity

Origin = Literal["said", "form", "tap counter"]
Supplies = Literal["together", "one_by_one", "one_left_on"]
"""How the supplies of a unit were switched off."""
ContextName = Literal[
    "call present",
    "power off",
    "sensor unplugged",
    "temperature at the sensor",
    "mains at the terminals",
    "fixed speed",
    "compressor running",
    "outdoor fan running",
    "indoor fan running",
    "gauges at hand",
    "meter at hand",
    "locked out",
    "stops in a row",
    "stops in one call",
    "supplies off together",
    "off before the outage",
    "surge",
    "frosted",
    "alone",
    "plate readable",
    "module disconnected",
    "not under vacuum",
    "leads disconnected",
    "header unplugged",
    "capacitor discharged",
    "bus measured dead",
    "digital meter",
    "gauge at the named port",
    "charge test running",
    "running steadily",
    "sensors at one temperature",
    "board powered",
    "full speed",
    "airflow as stated",
]


class FactBase(Record):
    """What every fact carries; `at` None is a time not known."""

    at: Moment | None = None
    origin: Origin = "said"
    words: str = ""
    """The words it came from."""


class UnitFact(FactBase):
    """Plate items as told; only what was said is set. `sure` False is a guess."""

    kind: Literal["unit"] = "unit"
    plate: Plate
    sure: bool = True


class RoleFact(FactBase):
    """Who is asking."""

    kind: Literal["role"] = "role"
    role: Role


class LampFact(FactBase):
    """A lamp or display as reported; `before_reset` True when seen before the reset."""

    kind: Literal["lamp"] = "lamp"
    observation: Observation
    before_reset: bool | None = None


class ReadingFact(FactBase):
    """A reading.

    `of` is the measurand in normal form: a sensor role (`discharge`), `supply`,
    `bus`, or a check's own word. One `value`, or two or more `readings_possible`
    when the unit was left out, or `open_line` for a meter that showed OL.
    """

    kind: Literal["reading"] = "reading"
    of: str
    value: Quantity | None = None
    readings_possible: tuple[Quantity, ...] = ()
    baseline: bool = False
    """Kept with the unit from commissioning, and judged by no check."""
    rough: tuple[Quantity, ...] = ()
    """What it could be near, told as "300 and change"; no reading until it is exact."""
    open_line: bool = False
    at_temperature: Quantity | None = None
    under_load: bool = False
    power_state: Literal["off", "live"] | None = None
    meter: Meter | None = None
    """What the meter promises; None is not told."""


class HappeningFact(FactBase):
    """Something that starts or cancels waits, other than a reset."""

    kind: Literal["happening"] = "happening"
    trigger: Trigger


class ResetFact(FactBase):
    """A reset that was done; which one matters for what it erased.

    `off_s` is how long the power was off, counted from `off_from`; `supplies` how
    they were switched; `cleared` whether the fault was seen to go.
    """

    kind: Literal["reset"] = "reset"
    which: ResetName | None = None
    off_s: tuple[float, float] | None = None
    off_from: Literal["power_off", "lamp_dark"] | None = None
    supplies: Supplies | None = None
    cleared: bool | None = None


class ResetDetailFact(FactBase):
    """What is told later of the reset told last; only what was said is set."""

    kind: Literal["reset_detail"] = "reset_detail"
    which: ResetName | None = None
    off_s: tuple[float, float] | None = None
    off_from: Literal["power_off", "lamp_dark"] | None = None
    supplies: Supplies | None = None
    cleared: bool | None = None


class ProtectionStopFact(FactBase):
    """Stops by protection: how many, how far apart; never a breaker trip.

    None was before `since`, or longer than `within_s` before the newest; each came
    `ran_s` after a start; `in_a_row` is without a good run in between, `one_call`
    without a new call.
    """

    kind: Literal["protection_stop"] = "protection_stop"
    event: str | None = None
    count: tuple[int, ...] = (1,)
    apart_s: tuple[float, float] | None = None
    since: Moment | None = None
    within_s: float | None = None
    ran_s: tuple[float, float] | None = None
    in_a_row: bool = False
    one_call: bool = False
    device: str | None = None


class GoodRunFact(FactBase):
    """It ran without a stop: how long, or how many whole cycles."""

    kind: Literal["good_run"] = "good_run"
    ran_s: tuple[float, float] | None = None
    cycles: tuple[int, ...] = ()


class AttemptFact(FactBase):
    """Which restart it is, counted from 1; several where it could be either."""

    kind: Literal["attempt"] = "attempt"
    number: Annotated[tuple[int, ...], Field(min_length=1)]


class BreakerFact(FactBase):
    """The breaker tripped so often."""

    kind: Literal["breaker_trip"] = "breaker_trip"
    count: int = 1


class PartFact(FactBase):
    """A part was fitted."""

    kind: Literal["part_fitted"] = "part_fitted"
    part: str


class SettingFact(FactBase):
    """A switch or setting was changed."""

    kind: Literal["setting_changed"] = "setting_changed"
    setting: str


class ContextFact(FactBase):
    """A yes or no about the state of the unit or the person's means."""

    kind: Literal["context"] = "context"
    name: ContextName
    value: bool


class ModeFact(FactBase):
    """The mode it is, or was, running in."""

    kind: Literal["mode"] = "mode"
    mode: Mode


class TemperatureFact(FactBase):
    """A temperature of a place, as context."""

    kind: Literal["temperature"] = "temperature"
    where: Literal["indoor", "outdoor"]
    value: Quantity


class ComplaintFact(FactBase):
    """What the call is about."""

    kind: Literal["complaint"] = "complaint"
    complaint: Complaint


class HazardFact(FactBase):
    """A danger now; `phrase` set when a pack's own stop item named it."""

    kind: Literal["hazard"] = "hazard"
    hazard: Hazard | None = None
    phrase: str | None = None


class BypassFact(FactBase):
    """A wish to bypass, short or force something that protects."""

    kind: Literal["bypass"] = "bypass"
    act: Literal[
        "bypass_protection",
        "bypass_leak_sensor",
        "short_capacitor",
        "live_work",
        "over_pressure",
    ]


class LookFact(FactBase):
    """The result of a look check: its global id or name words, and the answer."""

    kind: Literal["look"] = "look"
    check: str
    answer: str


Fact = Annotated[
    UnitFact
    | RoleFact
    | LampFact
    | ReadingFact
    | HappeningFact
    | ResetFact
    | ResetDetailFact
    | ProtectionStopFact
    | GoodRunFact
    | AttemptFact
    | BreakerFact
    | PartFact
    | SettingFact
    | ContextFact
    | ModeFact
    | TemperatureFact
    | ComplaintFact
    | HazardFact
    | BypassFact
    | LookFact,
    Field(discriminator="kind"),
]
"""Any fact of a job."""

Act = Literal[
    "ask_meaning",
    "ask_wait",
    "ask_next",
    "ask_why",
    "ask_page",
    "ask_record",
    "yes",
    "no",
    "dont_know",
    "skip",
    "correct",
    "undo",
    "greet",
    "off_topic",
]
"""What a turn wants beside telling facts."""


class Understood(Record):
    """A text as data: facts, acts, and what was not understood."""

    facts: tuple[Fact, ...] = ()
    acts: tuple[Act, ...] = ()
    left_over: str = ""
    """Words that no matcher took; kept for the search."""
