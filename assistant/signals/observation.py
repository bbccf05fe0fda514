"""What a person saw, kept apart from every code: unknown stays unknown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Box, Record, UnitMatch
from assistant.signals.kinds import Signal

State = Literal["on", "off", "blink", "count", "display", "no_code"]


class Observation(Record):
    """One lamp or display as reported.

    Each slot is a tuple of possibilities: ``()`` is unknown, two or more mean
    "one of these". `state` ``blink`` is flashing of unknown form; ``count`` is
    flashes counted; ``no_code`` is "no code anywhere".
    """

    box: tuple[Box, ...] = ()
    board: tuple[str, ...] = ()
    label: tuple[str, ...] = ()
    colour: tuple[str, ...] = ()
    state: State
    count: tuple[Annotated[int, Field(ge=0, le=99)], ...] = ()
    pause: Literal["seen", "none"] | None = None
    window_s: float | None = None
    """Seconds between the starts of two groups, or the time counted over."""
    groups_watched: int | None = None
    rate: Literal["slow", "fast"] | None = None
    code: str | None = None
    stored: bool | None = None


@dataclass(frozen=True, slots=True)
class SignalRow:
    """One written row with its global id and how it fits the unit."""

    gid: str
    """`pack/id`."""
    signal: Signal
    unit_match: UnitMatch
    document: str = ""
    """Document identity; candidates group by it when the unit is unknown."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One row that the observation allows."""

    row: SignalRow
    matched: tuple[str, ...]
    assumed: tuple[str, ...]
    """Slots the row needs and the observation leaves open."""
    weight: float = 1.0
    """Start share of the candidate; n-1 and n+1 neighbours weigh less."""


@dataclass(frozen=True, slots=True)
class Split:
    """The one question that splits the candidates best.

    `slot` is count | pause | colour | box | board | label | code | lamp:<label> |
    state | unit; `options` maps each answer to the global ids it leaves.
    """

    slot: str
    options: tuple[tuple[str, tuple[str, ...]], ...]
    gain_bits: float


@dataclass(frozen=True, slots=True)
class Match:
    """A decode: never one answer forced on an open observation."""

    verdict: Literal["exact", "several", "none", "not_decodable"]
    candidates: tuple[Candidate, ...]
    question: Split | None
    reason: str = ""
    """Why none or not decodable: what is missing, or not in the table."""
