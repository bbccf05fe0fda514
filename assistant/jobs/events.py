"""The events of a job: append-only, chained by hash, the only thing stored."""

from __future__ import annotations

import hashlib
import json
from typing import Annotated, Literal

from pydantic import AwareDatetime, Field

from assistant.facts import Act, Fact
from assistant.record import Record, Role
from assistant.rules.applicability import Plate


class Opened(Record):
    """A job begins; what it will rest on is pinned."""

    kind: Literal["opened"] = "opened"
    plate: Plate = Plate()
    role: Role | None = None
    packs: dict[str, str] = Field(default_factory=dict)
    """Pack id -> sha256."""
    library: str = ""
    """Stamp of the library."""
    utc_offset_minutes: int = 0
    """Of the place, so that a replay names the same local times."""
    site: str = ""
    """A site label; never a customer's name or address."""


class Said(Record):
    """Words as typed, and the facts and acts the parser took from them."""

    kind: Literal["said"] = "said"
    text: str
    facts: tuple[Fact, ...] = ()
    acts: tuple[Act, ...] = ()
    left_over: str = ""
    parser: str


class Entered(Record):
    """Facts from a form or the tap counter."""

    kind: Literal["entered"] = "entered"
    facts: tuple[Fact, ...]


class Asked(Record):
    """A question put to the person; `slot` says which fact answers it."""

    kind: Literal["asked"] = "asked"
    slot: str
    text: str
    options: tuple[str, ...] = ()


class Answered(Record):
    """The answer to the question asked last."""

    kind: Literal["answered"] = "answered"
    question: str
    """Id of the Asked event."""
    text: str
    facts: tuple[Fact, ...] = ()
    acts: tuple[Act, ...] = ()
    left_over: str = ""
    outcome: Literal["facts", "dont_know", "skip"]
    parser: str


class FoundHit(Record):
    """One passage as it was found; folding never searches again."""

    document: str
    document_id: str
    title: str
    revision: str
    page: int
    label: str
    section: str
    text: str
    score: float
    unit_match: str
    read_by: str = ""
    """`ocr` where the page was recognised in a picture."""


class Found(Record):
    """The outcome of a search."""

    kind: Literal["found"] = "found"
    query: str
    filter: str = ""
    hits: tuple[FoundHit, ...] = ()
    reason: str = ""
    searched: int = 0
    unreadable: dict[str, tuple[int, ...]] = Field(default_factory=dict)


class CheckDone(Record):
    """A check came to a result; `of` names the fact it rests on."""

    kind: Literal["check_done"] = "check_done"
    check: str
    """Global id."""
    result: str
    """pass, fail, inconclusive, no_verdict, or an option of a look check."""
    of: tuple[str, int]
    """Event id and index of the fact."""
    reason: str = ""
    value: float | None = None
    expected: float | None = None
    low: float | None = None
    high: float | None = None
    unit: str = ""
    formula: str = ""
    missing: tuple[str, ...] = ()


class TimerDue(Record):
    """A wait came to its end."""

    kind: Literal["timer_due"] = "timer_due"
    wait: str
    due: AwareDatetime


class TimerChanged(Record):
    """A person renamed, extended or acknowledged a timer."""

    kind: Literal["timer_changed"] = "timer_changed"
    wait: str
    change: Literal["rename", "extend", "acknowledge"]
    name: str = ""
    until: AwareDatetime | None = None


class Corrected(Record):
    """One fact replaced by another, or withdrawn; the old one stays in the log."""

    kind: Literal["corrected"] = "corrected"
    event: str
    index: int
    fact: Fact | None


class Undone(Record):
    """A whole event's facts withdrawn."""

    kind: Literal["undone"] = "undone"
    event: str


class Parked(Record):
    """The job is set aside."""

    kind: Literal["parked"] = "parked"
    why: str = ""


class Closed(Record):
    """The job ends."""

    kind: Literal["closed"] = "closed"
    outcome: str
    parts_fitted: tuple[str, ...] = ()
    parts_not_needed: tuple[str, ...] = ()


Body = Annotated[
    Opened
    | Said
    | Entered
    | Asked
    | Answered
    | Found
    | CheckDone
    | TimerDue
    | TimerChanged
    | Corrected
    | Undone
    | Parked
    | Closed,
    Field(discriminator="kind"),
]
"""What happened."""


class SteadyMark(Record):
    """Seconds that run on whatever the wall clock is set to, of one program run."""

    run: str
    seconds: float


class Event(Record):
    """One link of a job's chain.

    `prev` is the digest of the event before it on the same machine, empty for the
    first; events order by `noted`, `machine`, `seq`. `steady` shows a wall clock that
    was set; it is left out of the text where the machine has no such seconds.
    """

    id: str
    job: str
    noted: AwareDatetime
    machine: str
    seq: int
    prev: str
    body: Body
    steady: SteadyMark | None = None

    def canonical(self) -> str:
        """Return the one JSON text of the event: sorted keys, no spaces."""
        written = self.model_dump(mode="json")
        if self.steady is None:
            del written["steady"]
        return json.dumps(
            written,
            sort_keys=True,
            separators=(",", ":"),
            ensure_ascii=False,
        )

    def digest(self) -> str:
        """Return the sha256 over the canonical JSON of the event."""
        return hashlib.sha256(self.canonical().encode()).hexdigest()

    @property
    def order(self) -> tuple[str, str, int]:
        """The sort key of events."""
        return (self.noted.isoformat(), self.machine, self.seq)
