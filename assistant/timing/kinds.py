"""The kinds of wait and of protection-stop counter that a pack may write."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Box, Item, Mode, Record
from assistant.units.quantity import Quantity, Seconds

Trigger = Literal[
    "power_on",
    "first_start",
    "power_lost",
    "power_restored",
    "power_off",
    "lamp_dark",
    "call_for_run",
    "compressor_started",
    "compressor_stopped",
    "protection_stop",
    "reset",
    "second_reset",
    "defrost_started",
    "setting_changed",
]
"""What starts a wait. `reset` is any named reset; `first_start` is the first start
after installation or after power-up where the document says so."""


class WaitBase(Item):
    """What every wait says.

    `minimum`, `usual`, `give_up` count from `trigger`; at least one is stated.
    `lamp_during` names the signal row shown meanwhile; `bypass` needs its
    `bypass_side_effect`; `follows` says what happens at the end.
    """

    name: str
    trigger: Trigger
    minimum: Seconds | None = None
    usual: Seconds | None = None
    give_up: Seconds | None = None
    approx: bool = False
    from_state: str | None = None
    condition: str | None = None
    until_event: str | None = None
    cancelled_by: tuple[Trigger, ...] = ()
    bypass: str | None = None
    bypass_side_effect: str | None = None
    lamp_during: str | None = None
    mode: Mode | None = None
    scope: Box | None = None
    follows: str | None = None
    overdue: str | None = None
    """What to do when `give_up` has passed."""


class StartDelay(WaitBase):
    """Held back after power-up, a reset or a call."""

    kind: Literal["start_delay"]


class MinimumOff(WaitBase):
    """The compressor stays off at least so long after it stopped."""

    kind: Literal["minimum_off"]


class Standby(WaitBase):
    """Waits until a value is back, e.g. the supply within its band."""

    kind: Literal["standby"]
    condition_low: Quantity | None = None
    condition_high: Quantity | None = None


class OrderStep(Record):
    """One part of a start-up order and how long after `after` it starts."""

    part: str
    after: str
    """`trigger`, or the part it follows."""
    earliest: Seconds | None = None
    latest: Seconds | None = None


class StartUpOrder(WaitBase):
    """Which part starts first, and how long after which event."""

    kind: Literal["startup_order"]
    order: Annotated[tuple[OrderStep, ...], Field(min_length=2)]


class Defrost(WaitBase):
    """A defrost: the lamp during it is no fault; it ends by value or time."""

    kind: Literal["defrost"]


class DisplayDelay(WaitBase):
    """A code shows only so long after its trigger: no code yet is not no fault."""

    kind: Literal["display_delay"]


class PowerOffHold(WaitBase):
    """Power stays off so long before it is restored, for a reset to take."""

    kind: Literal["power_off_hold"]


Wait = Annotated[
    StartDelay
    | MinimumOff
    | Standby
    | StartUpOrder
    | Defrost
    | DisplayDelay
    | PowerOffHold,
    Field(discriminator="kind"),
]
"""Any row of `waits.yaml`."""
