"""What every row of a lamp or code table says beside the pattern."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Box, Item, Mode, Record

Count = Annotated[int, Field(ge=1, le=99)]
"""Flashes in a group; printed tables went past twenty."""
DigitCount = Annotated[int, Field(ge=0, le=99)]
"""Flashes that stand for one digit; none stand for zero."""
Phase = Literal["together", "alternating"]
RateClass = Literal["slow", "fast"]
Level = Literal["first", "detail"]
UnitState = Literal["running", "stopped", "starting", "standby"]


class Lamp(Record):
    """One emitter: box and board it sits on, printed label, colour, role.

    `role` is what the document calls the lamp where the board has no print, such as
    ``trip`` or ``alert``.
    """

    box: Box | None = None
    board: str | None = None
    label: str | None = None
    colour: str | None = None
    role: str | None = None


class SignalBase(Item):
    """What every row of a lamp or code table says beside the pattern.

    Attributes
    ----------
    is_fault : bool
        False marks a normal state.
    operates : bool, optional
        Whether the unit runs on; with `limit_days` it does so on a substitute, for so
        many days, and then stops.
    latched : bool
        Only a reset ends it.
    stored : bool
        It is history, not what is wrong now.
    unit_state, unit_state_required : optional
        In which state of the unit the row holds, in the document's words and as one
        of four plain ones.
    precondition : tuple of str
        Switch, jumper or test mode that must be set for the row to hold.
    waits, stops, causes, cautions : tuple of str
        Items of the same pack.
    same_as : tuple of str
        Rows that show the same fault on another board or box.
    confusable_with : tuple of str
        Rows, or working lamps in words, that look the same.
    """

    meaning: str
    is_fault: bool
    operates: bool | None = None
    limit_days: Annotated[int, Field(ge=1)] | None = None
    unit_action: str | None = None
    recover: str | None = None
    latched: bool = False
    stored: bool = False
    unit_state: str | None = None
    unit_state_required: tuple[UnitState, ...] = ()
    precondition: tuple[str, ...] = ()
    mode: Mode | None = None
    waits: tuple[str, ...] = ()
    stops: tuple[str, ...] = ()
    causes: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    same_as: tuple[str, ...] = ()
    confusable_with: tuple[str, ...] = ()
