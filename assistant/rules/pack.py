"""A rule pack: the composition of every kind."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.checks.kinds import Check, Sensor
from assistant.record import Record, Scope
from assistant.rules.kinds import Cause, CautionItem, PackDocument, Procedure
from assistant.signals.kinds import Signal, SignalItem, SignalNote
from assistant.timing.stop_kinds import Stop
from assistant.timing.wait_kinds.every import Wait

SCHEMA = 1

FILES = (
    "signals",
    "waits",
    "stops",
    "sensors",
    "checks",
    "causes",
    "procedures",
    "cautions",
)
"""The optional files of a pack, each a list of items: `<name>.yaml`."""


class Supersession(Record):
    """Rows of another document that this pack's document replaces, by name."""

    by: str
    """Id of the row of this pack that replaces them."""
    rows: Annotated[tuple[str, ...], Field(min_length=1)]
    """Global ids (`pack/id`) or ids of this pack."""
    doc: str
    page: int
    quote: str


class PackHead(Record):
    """`pack.yaml`."""

    schema_: Annotated[Literal[1], Field(alias="schema")]
    id: Annotated[str, Field(pattern=r"^[a-z0-9][a-z0-9-]*$")]
    version: str
    title: str
    kind: Literal["maker", "shop", "common"]
    author: str | None = None
    """Who wrote a shop rule."""
    date: str | None = None
    """When a shop rule was written."""
    applies_to: tuple[Scope, ...] = ()
    documents: dict[str, PackDocument] = Field(default_factory=dict)
    supersedes: tuple[Supersession, ...] = ()


class Pack(Record):
    """A whole pack, as stored and as the core uses it."""

    head: PackHead
    signals: tuple[SignalItem, ...] = ()
    waits: tuple[Wait, ...] = ()
    stops: tuple[Stop, ...] = ()
    sensors: tuple[Sensor, ...] = ()
    checks: tuple[Check, ...] = ()
    causes: tuple[Cause, ...] = ()
    procedures: tuple[Procedure, ...] = ()
    cautions: tuple[CautionItem, ...] = ()

    @property
    def rows(self) -> tuple[Signal, ...]:
        """The rows of `signals` that a sight can be compared with."""
        return tuple(row for row in self.signals if not isinstance(row, SignalNote))
