"""Causes, procedures and cautions: the rest of what a pack may write."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Item, Record, Role
from assistant.units.quantity import Volts

Hazard = Literal[
    "burning",
    "breaker_again",
    "gas",
    "leak_alarm",
    "unwell",
    "water_on_electrics",
    "compressor_to_ground",
    "storm_or_alone",
]
Complaint = Literal[
    "no_cooling",
    "no_heat",
    "short_cycling",
    "icing",
    "breaker_trips",
    "noise",
    "water",
    "high_bill",
    "blank_thermostat",
    "wont_start",
]


class Cause(Item):
    """One thing that can be wrong, and how often.

    `part` is what would be ordered; `before_ordering` what must be proved first.
    """

    kind: Literal["part", "supply", "wiring", "setting", "airflow", "refrigerant"]
    name: str
    says: tuple[str, ...] = ()
    frequency: Literal["common", "occasional", "rare"]
    part: str | None = None
    before_ordering: str | None = None
    remedy: str | None = None


class ComplaintCall(Item):
    """A call that brings no code: its causes and what to ask first."""

    kind: Literal["complaint"]
    complaint: Complaint
    name: str
    causes: Annotated[tuple[str, ...], Field(min_length=1)]
    first: str
    """What to look at or ask before anything is opened."""


class Card(Item):
    """An ordered list shown whole, such as the first minute on site."""

    kind: Literal["card"]
    name: str
    when: Literal["first_minute", "before_reset", "hand_over"]
    steps: Annotated[tuple[str, ...], Field(min_length=1)]


Procedure = Annotated[ComplaintCall | Card, Field(discriminator="kind")]
"""Any row of `procedures.yaml`."""


class Caution(Item):
    """A warning with its published basis, shown before the step it binds.

    `discharge_limit` is the document's own voltage at or below which a capacitor
    bank counts as discharged; the engine uses the lower of it and 50 V.
    """

    kind: Literal["caution"]
    when: Literal["panel_off", "live", "gauges", "opens_circuit", "any"]
    text: str
    basis: str
    discharge_limit: Volts | None = None


class StopCall(Item):
    """A further danger of this place or maker: stop, do this, call them."""

    kind: Literal["stop"]
    phrases: Annotated[tuple[str, ...], Field(min_length=1)]
    do_now: Annotated[tuple[str, ...], Field(min_length=1)]
    call: str


class PermittedTest(Item):
    """A look-alike of a refused act that the document allows, by wiring type."""

    kind: Literal["permitted_test"]
    phrases: Annotated[tuple[str, ...], Field(min_length=1)]
    wiring: str
    says: str
    allowed_for: tuple[Role, ...]


CautionItem = Annotated[Caution | StopCall | PermittedTest, Field(discriminator="kind")]
"""Any row of `cautions.yaml`."""


class PackDocument(Record):
    """A document the pack rests on, and what the pack says of it."""

    title: str
    revision: str
    sha256: str | None = None
    maker: str | None = None
    kind: str | None = None
    date: str | None = None
    supersedes: tuple[str, ...] = ()
    """Aliases of this pack replaced as a whole by this document."""
