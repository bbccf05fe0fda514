"""What a document says of a whole table or board, in a note beside it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from assistant.record import Item
from assistant.signals.kinds.base import Lamp
from assistant.units.quantity import Seconds

Names = Annotated[tuple[str, ...], Field(min_length=1)]


class SignalNote(Item):
    """A sentence about signals: `signals` names the rows; none means all of the pack.

    `lamp` narrows it to the rows of a lamp, display or board.
    """

    signals: tuple[str, ...] = ()
    lamp: Lamp | None = None


class MultiFault(SignalNote):
    """What is shown when there are several faults.

    `cyclic`: in turn; `priority`: the most urgent, in the order of `priority`;
    `latest`: the newest; `last_kept`: only the last one is remembered.
    """

    kind: Literal["multi_fault"]
    multi_fault_policy: Literal["cyclic", "priority", "latest", "last_kept"]
    priority: tuple[str, ...] = ()


class DisplayDelay(SignalNote):
    """A code that appears late: `display_delay` after `delay_trigger`.

    `cancelled_by` takes the wait back; `only_when` names the mode or function in which
    the code appears at all.
    """

    kind: Literal["display_delay"]
    display_delay: Seconds | None = None
    delay_trigger: str | None = None
    cancelled_by: tuple[str, ...] = ()
    only_when: str | None = None


class StoredHistory(SignalNote):
    """How faults of the past are read, how many there are, what erases them."""

    kind: Literal["stored_history"]
    entry_steps: Names
    depth: Annotated[int, Field(ge=1)] | None = None
    erased_by: tuple[str, ...] = ()
    exit: str | None = None


class CodeFamily(SignalNote):
    """Codes of their own meaning that share a check or procedure of the pack."""

    kind: Literal["code_family"]
    codes: Names
    checks: tuple[str, ...] = ()
    procedure: str | None = None


class LostCounts(SignalNote):
    """Rows of a table whose number of flashes, or code, cannot be read any more.

    Their `meanings` are possible on that board, in no order: none is ever numbered by
    its place.
    """

    kind: Literal["lost_counts"]
    meanings: Names


TableNote = MultiFault | DisplayDelay | StoredHistory | CodeFamily | LostCounts
