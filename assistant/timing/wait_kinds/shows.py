"""How long until something is shown or looked at, and how long a key is held."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from assistant.timing.triggers import Trigger
from assistant.timing.wait_kinds.base import WaitBase, needs_a_length
from assistant.units.quantity import Seconds


class DisplayDelay(WaitBase):
    """A code shows only so long after its trigger: no code yet is not no fault."""

    kind: Literal["display_delay"]


class HistoryExit(WaitBase):
    """A display leaves its stored faults by itself: later codes are of now."""

    kind: Literal["history_exit"]
    trigger: Trigger = "history_shown"

    @model_validator(mode="after")
    def _has_a_length(self) -> HistoryExit:
        needs_a_length(self)
        return self


class DetectionTime(WaitBase):
    """A fault must last `minimum` before the unit takes it for one."""

    kind: Literal["detection_time"]
    trigger: Trigger = "fault_began"
    minimum: Seconds


class IgnoreWindow(WaitBase):
    """An input is not looked at for so long after the trigger, or until an event."""

    kind: Literal["ignore_window"]
    input: str

    @model_validator(mode="after")
    def _has_an_end(self) -> IgnoreWindow:
        if not self.durations and not self.until_event and not self.cancelled_by:
            raise ValueError("an ignore window says when it ends")
        return self


class ButtonTiming(WaitBase):
    """How a key is pressed: held so long, or so often within a time."""

    kind: Literal["button"]
    trigger: Literal["button_pressed"] = "button_pressed"
    button: str
    hold: Seconds | None = None
    presses: Annotated[int, Field(ge=1)] = 1
    within: Seconds | None = None
    does: str

    @property
    def durations(self) -> tuple[Seconds, ...]:
        """How long the key is held, and in what time the presses fall."""
        return tuple(one for one in (self.hold, self.within) if one is not None)

    @model_validator(mode="after")
    def _says_how(self) -> ButtonTiming:
        if self.hold is None and self.presses == 1:
            raise ValueError("a button states `hold`, or more than one of `presses`")
        if self.presses > 1 and self.within is None:
            raise ValueError("several presses fall `within` a time")
        return self
