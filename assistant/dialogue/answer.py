"""What one turn answers: the shape that `ask --json` prints."""

from __future__ import annotations

from typing import Literal

from pydantic import AwareDatetime

from assistant.checks.kinds import Needs
from assistant.record import Record

Status = Literal[
    "stop", "refused", "unit_lockout", "waiting", "asking", "answered", "not_found"
]
"""The first that holds."""
Basis = Literal["computed", "rule", "passage"]


class SourceRef(Record):
    """Where a statement stands."""

    document: str
    document_id: str
    title: str
    revision: str
    page: int
    label: str
    quote: str
    rule: str = ""
    """Global id of the rule it came through."""
    rank: Literal["maker", "shop", "common", ""] = ""
    read_by: Literal["ocr", ""] = ""
    """`ocr` where the page was recognised in a picture: look at the page itself."""


class Statement(Record):
    """One line of an answer, and what it rests on."""

    text: str
    basis: Basis
    sources: tuple[SourceRef, ...] = ()


class Question(Record):
    """The one question asked back."""

    text: str
    splits: tuple[str, ...] = ()
    slot: str = ""


class DecodeCandidate(Record):
    """One row that the report allows."""

    id: str
    meaning: str
    is_fault: bool
    matched: tuple[str, ...]
    assumed: tuple[str, ...]
    notes: tuple[str, ...] = ()
    sources: tuple[SourceRef, ...] = ()
    to_confirm: bool = False
    """It stands only on pages read by OCR: a person must look at the page."""


class Decode(Record):
    """What the lamps or the display can mean."""

    verdict: Literal["exact", "several", "none", "not_decodable"]
    unit_confirmed: bool
    candidates: tuple[DecodeCandidate, ...] = ()
    reason: str = ""


class WaitCondition(Record):
    """A value that a wait looks at; `met` None where it was not told since."""

    text: str
    met: bool | None


class WaitChoice(Record):
    """One of several lengths a wait may have; `over` None where it has no end."""

    text: str
    over: AwareDatetime | None = None


class WaitPart(Record):
    """One part of a start-up order, and how it should stand now."""

    part: str
    soonest: AwareDatetime | None
    latest: AwareDatetime | None
    standing: Literal["not_yet", "may_run", "should_run", "unknown"]


class WaitShown(Record):
    """One wait in force.

    `conditions` hold it up beside the time; with `either` one of them ends it too.
    `latched` says that the trip stays, or that nobody can tell.
    """

    id: str
    name: str
    started: AwareDatetime | None
    earliest: AwareDatetime | None
    usual: AwareDatetime | None
    give_up: AwareDatetime | None
    state: Literal["running", "ready", "overdue", "start_unknown"]
    sources: tuple[SourceRef, ...] = ()
    kind: str = ""
    latched: Literal["yes", "cannot_tell"] | None = None
    conditions: tuple[WaitCondition, ...] = ()
    either: bool = False
    choices: tuple[WaitChoice, ...] = ()
    parts: tuple[WaitPart, ...] = ()
    unsaid: tuple[str, ...] = ()
    bypass: str | None = None
    bypass_side_effect: str | None = None
    lamp_during: str | None = None
    """What the lamp shown meanwhile means."""

    @property
    def holds(self) -> tuple[str, ...]:
        """The values not known to be met that keep it from being over by time."""
        if self.either:
            return ()
        return tuple(one.text for one in self.conditions if one.met is not True)


class CountRange(Record):
    """A count known to lie between two, inclusive."""

    min: int
    max: int


class LevelCount(Record):
    """Lockouts of the level below that one level counts."""

    name: str
    count: CountRange
    limit: int


class StopShown(Record):
    """One protection-stop counter."""

    id: str
    name: str
    count: CountRange
    limit: int
    state: Literal["locked", "open", "unknown"]
    left: int
    oldest_leaves: AwareDatetime | None
    sources: tuple[SourceRef, ...] = ()
    kind: str = ""
    levels: tuple[int, ...] = (0,)
    """Levels of lockout that it may stand at; 0 is none."""
    further: tuple[LevelCount, ...] = ()
    """Lockouts that each further level counts."""
    releases: tuple[AwareDatetime, AwareDatetime] | None = None
    """When it ends, or starts again, by itself."""
    latches: tuple[AwareDatetime, AwareDatetime] | None = None
    """When it latches unless the unit has recovered."""
    cleared_by: tuple[str, ...] = ()
    """The resets that end the lockout, as written."""
    conflict: tuple[str, ...] = ()
    """What else says otherwise; neither is taken over the other."""


class CauseShown(Record):
    """One cause and where it stands; `weight` is a weight, not a chance."""

    id: str
    name: str
    standing: Literal["most likely", "possible", "less likely"]
    weight: float


class NextCheck(Record):
    """The check to do next."""

    id: str
    name: str
    minutes: float
    needs: Needs
    ask: str = ""
    steps: tuple[str, ...] = ()
    sources: tuple[SourceRef, ...] = ()


class VerdictShown(Record):
    """One reading's verdict."""

    check: str
    result: Literal["pass", "fail", "inconclusive", "no_verdict"]
    reason: str
    value: float | None
    expected: float | None
    low: float | None
    high: float | None
    unit: str
    formula: str = ""
    sources: tuple[SourceRef, ...] = ()


class CautionShown(Record):
    """One warning with its published basis."""

    text: str
    basis: str


class Answer(Record):
    """One turn's answer, whole."""

    job: str
    status: Status
    statements: tuple[Statement, ...] = ()
    question: Question | None = None
    decodes: tuple[Decode, ...] = ()
    waits: tuple[WaitShown, ...] = ()
    stops: tuple[StopShown, ...] = ()
    causes: tuple[CauseShown, ...] = ()
    next_check: NextCheck | None = None
    verdicts: tuple[VerdictShown, ...] = ()
    cautions: tuple[CautionShown, ...] = ()
