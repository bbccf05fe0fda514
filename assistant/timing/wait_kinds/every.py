"""Every kind of wait as one discriminated union: any row of `waits.yaml`."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from assistant.timing.wait_kinds.frost import Defrost, OffDefrost
from assistant.timing.wait_kinds.holds import (
    AutoRelease,
    CapacitorBleed,
    Cooling,
    PowerOffHold,
    ResetWindow,
    SelfReset,
    SoftStop,
    Standby,
    ValueAndTime,
)
from assistant.timing.wait_kinds.runs import BlowerDelay, RunOn, StartUpOrder
from assistant.timing.wait_kinds.shows import (
    ButtonTiming,
    DetectionTime,
    DisplayDelay,
    HistoryExit,
    IgnoreWindow,
)
from assistant.timing.wait_kinds.starts import (
    MinimumOff,
    MinimumRun,
    Preheat,
    ResetDelay,
    RestartDelay,
    StartDelay,
)

Wait = Annotated[
    StartDelay
    | MinimumOff
    | MinimumRun
    | RestartDelay
    | Preheat
    | ResetDelay
    | Standby
    | ValueAndTime
    | SoftStop
    | AutoRelease
    | SelfReset
    | Cooling
    | CapacitorBleed
    | PowerOffHold
    | ResetWindow
    | StartUpOrder
    | RunOn
    | BlowerDelay
    | Defrost
    | OffDefrost
    | DisplayDelay
    | HistoryExit
    | DetectionTime
    | IgnoreWindow
    | ButtonTiming,
    Field(discriminator="kind"),
]
"""Any row of `waits.yaml`."""
