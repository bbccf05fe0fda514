"""The signal kinds a pack may write: one model a scheme, told apart by `kind`."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from assistant.signals.kinds.base import (
    Lamp,
    Level,
    Phase,
    RateClass,
    SignalBase,
    UnitState,
)
from assistant.signals.kinds.counts import (
    Beeps,
    CountPerWindow,
    CountSignal,
    GroupThenPause,
    ShortLong,
)
from assistant.signals.kinds.displays import (
    DigitPosition,
    DisplayCode,
    DisplaySignal,
    DisplayValue,
    MainSubCode,
)
from assistant.signals.kinds.notes import (
    CodeFamily,
    DisplayDelay,
    LostCounts,
    MultiFault,
    SignalNote,
    StoredHistory,
    TableNote,
)
from assistant.signals.kinds.states import (
    AnalogRate,
    EvenBlink,
    Heartbeat,
    Off,
    Rate,
    RateBlink,
    SingleFlash,
    StateSignal,
    Steady,
)
from assistant.signals.kinds.together import (
    BankCount,
    FlickerCount,
    LampState,
    PhasePair,
    SeveralLamps,
    TensUnits,
    TogetherSignal,
    WeightedLamp,
    WeightedLamps,
)

__all__ = [
    "AnalogRate",
    "BankCount",
    "Beeps",
    "CodeFamily",
    "CountPerWindow",
    "DigitPosition",
    "DisplayCode",
    "DisplayDelay",
    "DisplayValue",
    "EvenBlink",
    "FlickerCount",
    "GroupThenPause",
    "Heartbeat",
    "Lamp",
    "LampState",
    "Level",
    "LostCounts",
    "MainSubCode",
    "MultiFault",
    "Off",
    "Phase",
    "PhasePair",
    "Rate",
    "RateBlink",
    "RateClass",
    "SeveralLamps",
    "ShortLong",
    "Signal",
    "SignalBase",
    "SignalItem",
    "SignalNote",
    "SingleFlash",
    "Steady",
    "StoredHistory",
    "TableNote",
    "TensUnits",
    "UnitState",
    "WeightedLamp",
    "WeightedLamps",
]

Signal = Annotated[
    StateSignal | CountSignal | TogetherSignal | DisplaySignal,
    Field(discriminator="kind"),
]
"""Any row that a sight can be compared with."""
SignalItem = Annotated[
    StateSignal | CountSignal | TogetherSignal | DisplaySignal | TableNote,
    Field(discriminator="kind"),
]
"""Any row of `signals.yaml`."""
