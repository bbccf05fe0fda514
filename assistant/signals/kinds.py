"""The signal kinds a pack may write: one model a scheme, told apart by `kind`."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Box, Item, Mode, Record
from assistant.units.quantity import Seconds


class Lamp(Record):
    """One emitter: the box and board it sits on, its printed label, its colour."""

    box: Box | None = None
    board: str | None = None
    label: str | None = None
    colour: str | None = None


class SignalBase(Item):
    """What every row of a lamp or code table says beside the pattern.

    `is_fault` false marks a normal state. `operates` says whether the unit runs
    on. `waits`, `stops`, `causes`, `cautions` name items of the same pack.
    `latched` marks a state that only a reset ends. `stored` marks history.
    """

    meaning: str
    is_fault: bool
    operates: bool | None = None
    unit_action: str | None = None
    recover: str | None = None
    latched: bool = False
    stored: bool = False
    unit_state: str | None = None
    mode: Mode | None = None
    waits: tuple[str, ...] = ()
    stops: tuple[str, ...] = ()
    causes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    confusable_with: tuple[str, ...] = ()


class Steady(SignalBase):
    """The lamp is on and does not change."""

    kind: Literal["steady"]
    lamp: Lamp


class Off(SignalBase):
    """The lamp is dark."""

    kind: Literal["off"]
    lamp: Lamp


class EvenBlink(SignalBase):
    """The lamp blinks evenly, with no pause between groups."""

    kind: Literal["even_blink"]
    lamp: Lamp
    on: Seconds | None = None
    off: Seconds | None = None


class CountPerWindow(SignalBase):
    """`count` flashes every `window`; the pause is implied."""

    kind: Literal["count_per_window"]
    lamp: Lamp
    count: Annotated[int, Field(ge=1, le=99)]
    window: Seconds


class GroupThenPause(SignalBase):
    """`count` flashes, then a dark `pause`, again and again."""

    kind: Literal["group_then_pause"]
    lamp: Lamp
    count: Annotated[int, Field(ge=1, le=99)]
    on: Seconds | None = None
    off: Seconds | None = None
    pause: Seconds | None = None


class LampState(Record):
    """One lamp of a grid row; `any` is the document's own "does not matter"."""

    lamp: Lamp
    state: Literal["on", "off", "flash", "count", "any"]
    count: Annotated[int, Field(ge=1, le=99)] | None = None


class SeveralLamps(SignalBase):
    """A row of a lamp grid: each lamp on, off or flashing."""

    kind: Literal["several_lamps"]
    lamps: Annotated[tuple[LampState, ...], Field(min_length=2)]


class DisplayCode(SignalBase):
    """A code on a display or remote."""

    kind: Literal["display_code"]
    code: Annotated[str, Field(min_length=1, max_length=12)]
    display: Lamp | None = None


Signal = Annotated[
    Steady
    | Off
    | EvenBlink
    | CountPerWindow
    | GroupThenPause
    | SeveralLamps
    | DisplayCode,
    Field(discriminator="kind"),
]
"""Any row of `signals.yaml`."""
