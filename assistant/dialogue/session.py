"""A conversation with its store, search and clock: performs what `step` asks for."""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import TYPE_CHECKING, Protocol

from assistant.checks.kinds import Meter
from assistant.clock import Clock
from assistant.dialogue.answer import Answer
from assistant.dialogue.reading import found_body, knowledge_of
from assistant.dialogue.step import (
    Effect,
    Note,
    Reply,
    SearchFor,
    Situation,
    newly_due,
    step,
)
from assistant.dialogue.step import present as present_answer
from assistant.dialogue.view import View
from assistant.dialogue.vocabulary import pending, vocabulary
from assistant.dialogue.words import checked, told, with_meter
from assistant.errors import FaultleafError, LibraryError
from assistant.facts import Fact
from assistant.jobs.clock_steps import Reading
from assistant.jobs.events import (
    Answered,
    Body,
    Closed,
    Entered,
    Event,
    Found,
    Opened,
    Parked,
    Said,
    SteadyMark,
    TimerChanged,
)
from assistant.jobs.fold import JobState, fold, fold_all, read_clocks
from assistant.jobs.store import JobStore
from assistant.language.understand import understand
from assistant.language.vocabulary import Vocabulary
from assistant.library.store import LibraryStore
from assistant.library.types import Document, Match, SearchResult
from assistant.record import Role
from assistant.rules.applicability import Plate

if TYPE_CHECKING:
    from assistant.dialogue.curves import Drawn

HITS_KEPT = 6
NOW_WITHIN_S = 60.0
"""Seconds by which what is noted as of now may lie back: a turn takes its time."""


@dataclass(frozen=True, slots=True)
class Turn:
    """One turn of a job as it went: what came in, and what was answered."""

    at: datetime
    words: Said | Answered | Entered
    answer: Answer | None
    """None where the turn was cut short before its answer."""


class Searcher(Protocol):
    """What a session asks of a search."""

    def search(self, query: str, *, match: Match, limit: int) -> SearchResult:
        """Find the passages that answer a question."""
        ...


class Session:
    """Conversations over one library and one store of jobs.

    Parameters
    ----------
    jobs : JobStore
    library : LibraryStore or None
        None when there is none; only the stop list and the refusals answer then.
    search : Searcher or None
    clock : Clock
    utc_offset_minutes : int
        Of the place, for times of day in words.
    problem : LibraryError, optional
        Why there is no library; raised once an answer would need one.
    """

    def __init__(
        self,
        *,
        jobs: JobStore,
        library: LibraryStore | None,
        search: Searcher | None,
        clock: Clock,
        utc_offset_minutes: int = 0,
        problem: LibraryError | None = None,
    ) -> None:
        self._jobs = jobs
        self._library = library
        self._search = search
        self._clock = clock
        self._offset = utc_offset_minutes
        self._problem = problem
        self._open: dict[str, Situation] = {}
        self._heads: dict[str, str] = {}
        self.knowledge = knowledge_of(library)
        self.meter: Meter | None = None
        """The meter that readings are taken with, where nothing else is told."""

    # -- jobs ------------------------------------------------------------------

    def open_job(
        self, *, plate: Plate | None = None, role: Role | None = None, site: str = ""
    ) -> str:
        """Open a job, pinning the packs and the library it rests on."""
        job = self._clock.new_id()
        packs = self._library.packs() if self._library else ()
        body = Opened(
            plate=plate or Plate(),
            role=role,
            packs={pack.id: pack.sha256 for pack in packs},
            library=self._library.stamp() if self._library else "",
            utc_offset_minutes=self._offset,
            site=site,
        )
        self._append(job, body, self._clock.now())
        return job

    def state(self, job: str) -> JobState:
        """Return what the job knows."""
        return self._situation(job).state

    def park(self, job: str, why: str = "") -> None:
        """Set a job aside."""
        self._append(job, Parked(why=why), self._clock.now())

    def close(
        self,
        job: str,
        outcome: str,
        parts_fitted: tuple[str, ...] = (),
        parts_not_needed: tuple[str, ...] = (),
    ) -> None:
        """End a job with its outcome."""
        body = Closed(
            outcome=outcome,
            parts_fitted=parts_fitted,
            parts_not_needed=parts_not_needed,
        )
        self._append(job, body, self._clock.now())

    def transcript(
        self, job: str, *, first: int = 0, count: int | None = None
    ) -> tuple[Turn, ...]:
        """Return turns of a job, their answers worked out again from the events.

        Parameters
        ----------
        job : str
        first : int
            The turn to begin with, from 0. The turns before it are folded only, which
            takes a hundredth of what their answers would take.
        count : int, optional
            How many turns; None is all from there on.
        """
        situation = Situation(state=JobState(), knowledge=self.knowledge)
        turns: list[Turn] = []
        number = -1
        for event in self._jobs.events(job):
            number += isinstance(event.body, Said | Answered | Entered)
            if number < first:
                situation = replace(situation, state=fold(situation.state, event))
                continue
            if isinstance(event.body, Said | Answered | Entered):
                if len(turns) == count:
                    break
                turns.append(Turn(event.noted, event.body, None))
            situation, effects = step(situation, event)
            for effect in effects:
                if isinstance(effect, Reply) and turns:
                    turns[-1] = replace(turns[-1], answer=effect.answer)
        return tuple(turns)

    # -- what it works on ------------------------------------------------------

    @property
    def jobs(self) -> JobStore:
        """The store of jobs."""
        return self._jobs

    @property
    def library(self) -> LibraryStore | None:
        """The open library, for reading; None when there is none."""
        return self._library

    def search_by(self, make: Callable[[LibraryStore], Searcher]) -> None:
        """Search in another way from the next turn on, where there is a library."""
        if self._library is not None:
            self._search = make(self._library)

    def vocabulary(self, job: str) -> Vocabulary:
        """Return the words that the packs in force for a job add to the parser's."""
        situation = self._situation(job)
        now = self._clock.now()
        return vocabulary(View(situation.state, situation.knowledge, now))

    def shut(self) -> None:
        """Close the library and the store of jobs."""
        self._jobs.close()
        if self._library is not None:
            self._library.close()

    # -- turns -----------------------------------------------------------------

    def say(self, job: str, text: str, *, at: datetime | None = None) -> Answer:
        """Take in what was typed and answer it.

        Raises
        ------
        UsageError
            Empty text, or longer than `LONGEST_TEXT`.
        LibraryError
            There is no library and the answer needs one.
        """
        words = checked(text)
        noted = at or self._clock.now()
        situation = self._situation(job)
        view = View(situation.state, situation.knowledge, noted)
        understood = understand(
            words,
            now=noted,
            utc_offset_minutes=view.utc_offset,
            pending=pending(situation.state),
            vocabulary=vocabulary(view),
        )
        measured = with_meter(understood, self.meter)
        return self._turn(job, told(situation.state, words, measured), noted)

    def enter(
        self, job: str, facts: Sequence[Fact], *, at: datetime | None = None
    ) -> Answer:
        """Take in facts from a form or the tap counter and answer them."""
        body = Entered(facts=tuple(facts))
        return self._turn(job, body, at or self._clock.now())

    def look(self, job: str, *, at: datetime | None = None) -> Answer:
        """Return the answer as it stands now, without a new turn."""
        return present_answer(self._as_of(job, at or self._clock.now()))

    def curves(self, job: str) -> tuple[Drawn, ...]:
        """Return the results of a job that lie on a curve, with their curves."""
        from assistant.dialogue.curves import curves

        situation = self._situation(job)
        return curves(View(situation.state, situation.knowledge, self._clock.now()))

    def due(self, job: str, *, at: datetime | None = None) -> tuple[str, ...]:
        """Note the waits that have come to their end since last looked at.

        Returns
        -------
        tuple of str
            Their global ids, newly due.
        """
        now = at or self._clock.now()
        situation = self._as_of(job, now)
        view = View(situation.state, situation.knowledge, now)
        due = newly_due(view)
        for body in due:
            self._append(job, body, now)
        return tuple(body.wait for body in due)

    def acknowledge(self, job: str, wait: str) -> None:
        """Take a wait that is over off the top of the list."""
        body = TimerChanged(wait=wait, change="acknowledge")
        self._append(job, body, self._clock.now())

    # -- the engine room -------------------------------------------------------

    def _situation(self, job: str) -> Situation:
        """Return the job as it stands, read again where it was written elsewhere."""
        head = self._jobs.head(job)
        if self._heads.get(job) != head:
            state = fold_all(self._jobs.events(job))
            self._open[job] = Situation(state=state, knowledge=self.knowledge)
            self._heads[job] = head
        return self._open[job]

    def _append(
        self, job: str, body: Body, noted: datetime
    ) -> tuple[Situation, tuple[Effect, ...]]:
        """Commit an event, then let the situation take it in."""
        situation = (
            Situation(state=JobState(), knowledge=self.knowledge)
            if isinstance(body, Opened)
            else self._open.get(job) or self._situation(job)
        )
        event: Event = self._jobs.append(
            job,
            body,
            noted=noted,
            event_id=self._clock.new_id(),
            steady=self._mark(noted),
        )
        self._open[job], effects = step(situation, event)
        self._heads[job] = self._jobs.head(job)
        return self._open[job], effects

    def _mark(self, noted: datetime) -> SteadyMark | None:
        """Return the steady seconds of an instant that is now; of another, none."""
        steady = self._clock.steady()
        lag = (self._clock.now() - noted).total_seconds()
        if steady is None or not 0 <= lag <= NOW_WITHIN_S:
            return None
        return SteadyMark(run=steady.run, seconds=steady.seconds - lag)

    def _as_of(self, job: str, now: datetime) -> Situation:
        """Return the job as it stands at an instant, its clocks read anew."""
        situation = self._situation(job)
        reading = Reading(self._jobs.machine, now, self._mark(now))
        state = read_clocks(replace(situation.state, now=now), reading)
        return Situation(state=state, knowledge=situation.knowledge)

    def _turn(self, job: str, body: Body, noted: datetime) -> Answer:
        self._situation(job)  # as it stands now, whoever wrote last
        waiting: deque[Body] = deque([body])
        answer: Answer | None = None
        while waiting:
            _, effects = self._append(job, waiting.popleft(), noted)
            for effect in effects:
                match effect:
                    case Note(body=more):
                        waiting.append(more)
                    case SearchFor(query=query):
                        waiting.append(self._found(job, query))
                    case Reply(answer=ready):
                        answer = ready
        if answer is None:
            raise FaultleafError(f"the turn of job {job} came to no answer")
        if self._problem is not None and answer.status not in ("stop", "refused"):
            raise self._problem
        return answer

    def _found(self, job: str, query: str) -> Found:
        if self._search is None:
            return Found(query=query, reason="there is no library")
        plate = self._open[job].state.plate
        matches = self.knowledge.document_match(plate)

        def match(document: Document) -> str:
            return matches[document.sha256]

        result = self._search.search(query, match=match, limit=HITS_KEPT)
        return found_body(query, plate, result)
