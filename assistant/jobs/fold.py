"""Fold a job's events into what is known now; never parses, never searches."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from assistant.facts import (
    Fact,
    LampFact,
    ModeFact,
    PartFact,
    ReadingFact,
    ResetFact,
    RoleFact,
    SettingFact,
    UnitFact,
)
from assistant.jobs.clock_steps import ClockStep, Reading, step_between
from assistant.jobs.events import (
    Answered,
    Asked,
    CheckDone,
    Closed,
    Corrected,
    Entered,
    Event,
    Found,
    Opened,
    Parked,
    Said,
    TimerChanged,
    TimerDue,
    Undone,
)
from assistant.record import Role
from assistant.rules.applicability import Plate, laid_over
from assistant.rules.fittings import settings_in

SPLITS = (ResetFact, ModeFact, PartFact, SettingFact)
"""Facts that part the evidence into before and after."""
NO_PLATE = Plate()
OLD_BOARD = dict.fromkeys(("board_mark", "board_pn", "firmware"))
"""What is no longer known of the unit once its board was replaced."""
MARKED_BOARDS = frozenset({"board", "main board", "control board", "outdoor board"})
Address = tuple[str, int]


@dataclass(frozen=True, slots=True)
class Held:
    """A fact in force, with where it stands in the log."""

    fact: Fact
    event: str
    index: int
    noted: datetime
    turn: int
    """Number of the turn it was told in."""
    answers: str = ""
    """Slot of the question it answered, if any."""

    @property
    def address(self) -> Address:
        """Event id and index."""
        return (self.event, self.index)

    @property
    def not_before(self) -> datetime:
        """The earliest instant the fact can be of."""
        return self.fact.at.earliest if self.fact.at else self.noted

    @property
    def not_after(self) -> datetime:
        """The latest instant the fact can be of."""
        return self.fact.at.latest if self.fact.at else self.noted


@dataclass(frozen=True, slots=True)
class Open:
    """The question that waits for an answer."""

    event: str
    asked: Asked


@dataclass(frozen=True, slots=True)
class JobState:
    """Everything a job knows after some of its events."""

    job: str = ""
    turn: int = 0
    now: datetime | None = None
    opened: Opened | None = None
    role: Role | None = None
    plate: Plate = NO_PLATE
    held: tuple[Held, ...] = ()
    replaced: tuple[Held, ...] = ()
    open_question: Open | None = None
    declined: tuple[str, ...] = ()
    """Slots answered with "don't know" or skipped."""
    asked: tuple[Asked, ...] = ()
    checks: tuple[CheckDone, ...] = ()
    checks_by_turn: tuple[tuple[int, CheckDone], ...] = ()
    taken_back: tuple[CheckDone, ...] = ()
    """Checks that fell with a corrected fact, in this turn."""
    corrected: tuple[tuple[Held, Fact | None], ...] = ()
    """Facts corrected in this turn: the old one and the new."""
    found: Found | None = None
    """The search of this turn."""
    words: Said | Answered | Entered | None = None
    """What this turn began with."""
    acknowledged: tuple[str, ...] = ()
    timers_due: tuple[tuple[str, int], ...] = ()
    """Waits noted as over, with the turn they were noted in."""
    ends_noted: tuple[tuple[str, datetime], ...] = ()
    """Waits noted as over, with the end that was noted: one may run again."""
    extended: tuple[TimerChanged, ...] = ()
    parked: bool = False
    closed: Closed | None = None
    clocks: Reading | None = None
    """Both clocks at the last event."""
    clock_steps: tuple[ClockStep, ...] = ()
    """Where the wall clock was set while the job ran."""

    def of(self, kind: type[Fact]) -> tuple[Held, ...]:
        """Return the facts in force of one kind, oldest first."""
        return tuple(held for held in self.held if isinstance(held.fact, kind))

    def told_now(self) -> tuple[Held, ...]:
        """Return the facts told in the present turn."""
        return tuple(held for held in self.held if held.turn == self.turn)


def split_instant(state: JobState) -> datetime | None:
    """Return when the evidence was last parted, if ever.

    A reset, a mode change, a fitted part or a changed setting parts it; a fact of no
    stated time counts as of when it was told.
    """
    parting = [held for held in state.held if isinstance(held.fact, SPLITS)]
    modes = [held for held in parting if isinstance(held.fact, ModeFact)]
    if len(modes) == 1:
        parting.remove(modes[0])
    return max((held.not_before for held in parting), default=None)


def current(state: JobState) -> tuple[Held, ...]:
    """Return the facts that are not older than the last parting of evidence.

    Only lamps and readings age so; plates, roles, times and events do not.
    """
    parted = split_instant(state)
    return tuple(held for held in state.held if not _aged(held, parted))


def _aged(held: Held, parted: datetime | None) -> bool:
    if not isinstance(held.fact, LampFact | ReadingFact):
        return False
    if isinstance(held.fact, LampFact) and held.fact.before_reset:
        return True
    return parted is not None and held.not_after < parted


def fold(  # noqa: C901, PLR0911, PLR0912 - one flat match, checked for exhaustiveness
    state: JobState, event: Event
) -> JobState:
    """Return the state after one more event."""
    state = replace(state, job=event.job, now=event.noted)
    state = read_clocks(state, Reading(event.machine, event.noted, event.steady))
    match event.body:
        case Opened() as body:
            return replace(state, opened=body, role=body.role, plate=body.plate)
        case Said() | Answered() | Entered() as body:
            return _told(state, event, body)
        case Asked() as body:
            return replace(
                state,
                open_question=Open(event.id, body),
                asked=(*state.asked, body),
            )
        case Found() as body:
            return replace(state, found=body)
        case CheckDone() as body:
            return _checked(state, body)
        case Corrected() as body:
            return _corrected(state, event, body)
        case Undone() as body:
            return _undone(state, body)
        case TimerDue() as body:
            return _timer_due(state, body)
        case TimerChanged() as body:
            return _timer_changed(state, body)
        case Parked():
            return replace(state, parked=True)
        case Closed() as body:
            return replace(state, closed=body)


def read_clocks(state: JobState, reading: Reading) -> JobState:
    """Return the state with both clocks read, and a step where one was set."""
    before = state.clocks
    by = step_between(before, reading) if before is not None else None
    steps = state.clock_steps
    if by is not None:
        steps = (*steps, ClockStep(state.turn, by))
    return replace(state, clocks=reading, clock_steps=steps)


def fold_all(events: Iterable[Event]) -> JobState:
    """Fold events in their order from an empty state."""
    state = JobState()
    for event in events:
        state = fold(state, event)
    return state


def _told(state: JobState, event: Event, body: Said | Answered | Entered) -> JobState:
    turn = state.turn + 1
    slot, declined = "", state.declined
    if isinstance(body, Answered) and state.open_question is not None:
        slot = state.open_question.asked.slot
        if body.outcome != "facts":
            declined = (*declined, slot)
    new = tuple(
        Held(fact, event.id, index, event.noted, turn, slot)
        for index, fact in enumerate(body.facts)
    )
    state = replace(
        state,
        turn=turn,
        held=(*state.held, *new),
        open_question=None,
        declined=declined,
        taken_back=(),
        corrected=(),
        found=None,
        words=body,
        parked=False,
    )
    return _plate_and_role(state)


def _plate_and_role(state: JobState) -> JobState:
    opened = state.opened
    plate = opened.plate if opened else NO_PLATE
    role = opened.role if opened else None
    new_board = max((held.turn for held in state.held if _is_board(held)), default=-1)
    if new_board >= 0:
        plate = plate.model_copy(update=OLD_BOARD)
    for held in state.held:
        if isinstance(held.fact, UnitFact):
            told = held.fact.plate
            if held.turn < new_board:
                told = told.model_copy(update=OLD_BOARD)
            plate = laid_over(plate, told)
        elif isinstance(held.fact, SettingFact) and settings_in(held.fact.setting):
            plate = laid_over(plate, Plate(switch_settings=held.fact.setting))
        elif isinstance(held.fact, RoleFact):
            role = held.fact.role
    return replace(state, plate=plate, role=role)


def _is_board(held: Held) -> bool:
    """Say whether the board that the label and the firmware belong to was replaced."""
    return isinstance(held.fact, PartFact) and held.fact.part in MARKED_BOARDS


def _checked(state: JobState, body: CheckDone) -> JobState:
    kept = tuple(
        done
        for done in state.checks
        if not (done.check == body.check and done.of == body.of)
    )
    return replace(
        state,
        checks=(*kept, body),
        checks_by_turn=(*state.checks_by_turn, (state.turn, body)),
    )


def _without(state: JobState, gone: frozenset[Address]) -> JobState:
    """Take facts out of force, and every check that rested on them."""
    fallen = tuple(done for done in state.checks if tuple(done.of) in gone)
    return replace(
        state,
        held=tuple(held for held in state.held if held.address not in gone),
        replaced=(
            *state.replaced,
            *(held for held in state.held if held.address in gone),
        ),
        checks=tuple(done for done in state.checks if tuple(done.of) not in gone),
        taken_back=(*state.taken_back, *fallen),
    )


def _corrected(state: JobState, event: Event, body: Corrected) -> JobState:
    address = (body.event, body.index)
    old = next((held for held in state.held if held.address == address), None)
    if old is None:
        return state
    state = _without(state, frozenset([address]))
    state = replace(state, corrected=(*state.corrected, (old, body.fact)))
    if body.fact is not None:
        new = Held(body.fact, event.id, 0, event.noted, state.turn, old.answers)
        state = replace(state, held=(*state.held, new))
    return _plate_and_role(state)


def _undone(state: JobState, body: Undone) -> JobState:
    gone = frozenset(held.address for held in state.held if held.event == body.event)
    withdrawn = tuple((held, None) for held in state.held if held.address in gone)
    state = _without(state, gone)
    return _plate_and_role(replace(state, corrected=(*state.corrected, *withdrawn)))


def _timer_due(state: JobState, body: TimerDue) -> JobState:
    """Note an end; of a wait that ran again, it is not the one acknowledged before."""
    return replace(
        state,
        timers_due=(*state.timers_due, (body.wait, state.turn)),
        ends_noted=(*state.ends_noted, (body.wait, body.due)),
        acknowledged=tuple(wait for wait in state.acknowledged if wait != body.wait),
    )


def _timer_changed(state: JobState, body: TimerChanged) -> JobState:
    if body.change == "acknowledge":
        return replace(state, acknowledged=(*state.acknowledged, body.wait))
    return replace(state, extended=(*state.extended, body))
