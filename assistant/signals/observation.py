"""What a person saw, kept apart from every code: unknown stays unknown."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Box, Mode, Record, UnitMatch
from assistant.signals.kinds import Level, Phase, RateClass, Signal, UnitState

State = Literal[
    "on",
    "off",
    "blink",
    "count",
    "display",
    "no_code",
    "heartbeat",
    "flicker",
    "short_long",
]
Emitter = Literal["lamp", "display", "buzzer"]
Several = Literal["every", "other"]
Counts = tuple[Annotated[int, Field(ge=0, le=99)], ...]


class Observation(Record):
    """One lamp, display or buzzer as reported.

    Each slot is unknown, a value, a set or a range: a tuple is "one of these" and
    ``()`` is unknown; None is unknown; a pair of numbers is a range.

    Attributes
    ----------
    lamps : Several, optional
        ``every`` lamp does this, or the ``other`` one does: of those that no other
        report of the same sight names.
    state : State
        ``blink`` is flashing of unknown form; ``count`` is flashes counted;
        ``short_long`` is quick and long flashes told apart; ``flicker`` is too fast to
        count; ``heartbeat`` grows dim but not dark; ``no_code`` is "no code anywhere".
    count, long_count, total : tuple of int
        Flashes of a group; with ``short_long`` the quick ones, the long ones, and both
        together where only that was told.
    counted : tuple of int
        What each group or round gave, in order, where several were counted.
    window_s, window_to_s : float, optional
        Seconds between the starts of two groups, or the time counted over; a range
        where the second is set.
    rate_hz : tuple of float, optional
        Blinks in a second, lowest and highest.
    code, codes_possible, code_starts : optional
        What a display shows; one of several; or only its beginning.
    shown_in_turn : bool, optional
        Whether it is one of several codes that the display shows in turn.
    conditions, not_conditions : tuple of str
        Switch settings or modes told to hold, or not to hold, in a document's words.
    """

    emitter: Emitter | None = None
    lamps: Several | None = None
    box: tuple[Box, ...] = ()
    board: tuple[str, ...] = ()
    label: tuple[str, ...] = ()
    colour: tuple[str, ...] = ()
    state: State
    count: Counts = ()
    long_count: Counts = ()
    total: Counts = ()
    counted: Counts = ()
    first: Literal["short", "long"] | None = None
    pause: Literal["seen", "none"] | None = None
    window_s: float | None = None
    window_to_s: float | None = None
    groups_watched: int | None = None
    rate: RateClass | None = None
    rate_hz: tuple[float, float] | None = None
    phase: Phase | None = None
    code: str | None = None
    codes_possible: tuple[str, ...] = ()
    code_starts: str | None = None
    sub: str | None = None
    shown_in_turn: bool | None = None
    display_level: Level | None = None
    unit_state: tuple[UnitState, ...] = ()
    mode: Mode | None = None
    conditions: tuple[str, ...] = ()
    not_conditions: tuple[str, ...] = ()
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
    trust: int = 0
    """How closely the row is about the unit; the smallest stands first."""


@dataclass(frozen=True, slots=True)
class Candidate:
    """One row that the observation allows."""

    row: SignalRow
    matched: tuple[str, ...]
    assumed: tuple[str, ...]
    """Slots the row needs and the observation leaves open."""
    weight: float = 1.0
    """Start share of the candidate; n-1 and n+1 neighbours weigh less."""
    notes: tuple[str, ...] = ()
    """How the sight was read, where that is more than a look-up: a sum, a base."""


@dataclass(frozen=True, slots=True)
class Split:
    """The one question that splits the candidates best.

    `slot` is count | short | pause | window | rate | phase | colour | box | board |
    label | code | sub | emitter | display_level | stored | lamp:<label> | state |
    mode | unit | context:<name> | precondition:<words>; `options` maps each answer to
    the global ids it leaves.
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
