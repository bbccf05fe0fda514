"""What the worker does: every call into the session, and its outcome as a message.

One object, used by one thread. Nothing here knows a widget.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from datetime import timedelta
from typing import TYPE_CHECKING

from textual.message import Message

from assistant.clock import Clock
from assistant.settings import Settings
from tui.desk.messages import (
    LibraryText,
    Lines,
    Notice,
    Older,
    Opened,
    PageText,
    Refused,
    Stands,
    Told,
)
from tui.desk.views import JobLine, JobView, Spoken

if TYPE_CHECKING:
    from assistant.dialogue.answer import Answer, SourceRef
    from assistant.dialogue.session import Session
    from assistant.facts import Fact
    from assistant.jobs.summary import JobSummary
    from assistant.signals.observation import Observation
    from tui.desk.forms import ReadingFields, UnitFields
    from tui.desk.taps import Tapped

RESUMED_WITHIN = timedelta(hours=12)
"""A job left open longer than a working day is not gone on with unasked."""
OPENED_WITH = 5
"""Turns, the latest, that a job is opened with: their answers take time to work out."""
OLDER = 10
"""Older turns fetched at a time."""
WATCHED = 40
"""So many jobs, the latest, have their timers watched."""


class Bench:
    """A session with what the screen needs around it.

    Parameters
    ----------
    settings : Settings
    clock : Clock
    utc_offset_minutes : int
        Of the place, for times of day in words.
    """

    def __init__(
        self, settings: Settings, clock: Clock, utc_offset_minutes: int
    ) -> None:
        self.settings = settings
        self.clock = clock
        self._offset = utc_offset_minutes
        self._session: Session | None = None
        self._last: dict[str, Answer] = {}
        self._lines: dict[str, JobLine] = {}
        self._job: str | None = None
        """The job on the desk: words go to it in the order they were typed, even
        those typed before it was opened."""

    @property
    def session(self) -> Session:
        """The session, opened when it is first needed."""
        if self._session is None:
            from assistant.dialogue.opening import open_session

            self._session = open_session(
                self.settings,
                self.clock,
                utc_offset_minutes=self._offset,
                vectors=False,
            )
        return self._session

    # -- jobs ------------------------------------------------------------------

    def begin(self) -> Iterator[Message]:
        """Open what was worked on last, when it is open and not long ago."""
        jobs = self.session.jobs.jobs()
        now = self.clock.now()
        latest = jobs[0] if jobs else None
        if (
            latest is None
            or latest.state != "open"
            or abs(now - latest.last) > RESUMED_WITHIN
        ):
            yield Opened(None, ())
        else:
            self._job = latest.id
            note = f"job {latest.id[-6:]} goes on where it was left; n begins another"
            yield self._opened(latest.id, note)
        yield self._all(jobs)

    def switch(self, job: str) -> Iterator[Message]:
        """Put another job on the desk."""
        self._job = job
        yield self._opened(job)
        yield self.lines()

    def older(self, job: str, before: int) -> tuple[Message, ...]:
        """Fetch turns that come before a turn of a job, counted from 0."""
        first = max(0, before - OLDER)
        return (Older(job, first, self._spoken(job, first, before - first)),)

    def new(self) -> tuple[Message, ...]:
        """Clear the desk; a job is stored with its first words."""
        self._job = None
        return (Opened(None, (), "a new job: say what you see"), self.lines())

    def lines(self, over: tuple[str, ...] = ()) -> Lines:
        """Return every job with its timers as they stand."""
        return self._all(self.session.jobs.jobs(), over)

    def due(self) -> tuple[Message, ...]:
        """Note the timers that came to their end, in every watched job."""
        over: list[str] = []
        for job, line in self._lines.items():
            if line.waits and line.state != "closed":
                over += [f"{job} {wait}" for wait in self.session.due(job)]
        stands = (Stands(self._view(self._job)),) if self._job else ()
        return (self.lines(tuple(over)), *stands)

    def acknowledge(self, job: str) -> tuple[Message, ...]:
        """Take a job's ended timers off the top."""
        from tui.desk.views import over

        line = self._lines.get(job)
        ended = over(line) if line else ()
        for wait in ended:
            self.session.acknowledge(job, wait.id)
        if not ended:
            return (Notice("no timer of this job is over"),)
        return (Stands(self._view(job)), self.lines())

    def park(self, job: str) -> tuple[Message, ...]:
        """Set a job aside."""
        self.session.park(job)
        return (Notice(f"job {job[-6:]} is set aside; j lists it"), self.lines())

    def close(self, job: str, outcome: str) -> tuple[Message, ...]:
        """End a job with its outcome."""
        self.session.close(job, outcome)
        return (Notice(f"job {job[-6:]} is closed"), self.lines())

    # -- turns -----------------------------------------------------------------

    def say(self, words: str) -> tuple[Message, ...]:
        """Take in what was typed; without a job, open one with it."""
        job = self._open_job()
        before = self._last.get(job)
        at = self.clock.now()
        answer = self.session.say(job, words)
        return self._told(job, Spoken(at, words, answer, before))

    def enter(self, facts: Sequence[Fact], words: str) -> tuple[Message, ...]:
        """Take in facts from a form or the tap counter."""
        job = self._open_job()
        before = self._last.get(job)
        at = self.clock.now()
        answer = self.session.enter(job, facts)
        return self._told(job, Spoken(at, words, answer, before))

    def reading(self, fields: ReadingFields) -> tuple[Message, ...]:
        """Take a filled-in readings form, or say what is wrong with it."""
        from assistant.language.vocabulary import Vocabulary
        from assistant.meters import MetersError, read_meters
        from tui.desk.forms import WrongFieldsError, reading_facts

        words = self.session.vocabulary(self._job) if self._job else Vocabulary()
        try:
            saved = read_meters(self.settings.config) if fields.meter else None
            facts, told = reading_facts(fields, words, saved)
        except WrongFieldsError as wrong:
            return (Refused(wrong.fields),)
        except MetersError as error:
            return (Refused({"meter": f"{error.what}; {error.hint}"}),)
        return self.enter(facts, told)

    def unit(self, fields: UnitFields) -> tuple[Message, ...]:
        """Take a filled-in unit form, or say what is wrong with it."""
        from tui.desk.forms import WrongFieldsError, unit_facts

        try:
            facts, told = unit_facts(fields)
        except WrongFieldsError as wrong:
            return (Refused(wrong.fields),)
        return self.enter(facts, told)

    def taps(self, light: str, tapped: Tapped) -> tuple[Message, ...]:
        """Take what was tapped as a lamp that was seen; `light` says which, in words.

        Without words it is the lamp that was told last.
        """
        from tui.desk.taps import lamp_fact, tap_words

        seen = self._light(light)
        words = tap_words(tapped, light)
        fact = lamp_fact(tapped, seen, words, self.clock.now())
        return self.enter((fact,), words)

    def look(self, job: str) -> tuple[Message, ...]:
        """Say how a job stands now."""
        return (Stands(self._view(job)), self.lines())

    # -- the library -----------------------------------------------------------

    def page(self, source: SourceRef, number: int) -> tuple[Message, ...]:
        """Fetch a page of the document that a source cites."""
        library = self.session.library
        document = library.document(source.document_id) if library else None
        if library is None or document is None:
            return (Notice(f"{source.title} is not in the library any more"),)
        pages = library.pages(document.sha256)
        text = next((page.text for page in pages if page.number == number), None)
        place = library.places().get(document.sha256)
        path = (place.path if place else "") or document.path
        return (PageText(source, number, len(pages), text, path),)

    def holdings(self, width: int) -> tuple[Message, ...]:
        """Say what the library holds and covers."""
        from tui.plain.holdings import EMPTY, holdings, holdings_lines

        library = self.session.library
        if library is None:
            return (LibraryText((EMPTY, "a adds a file or a folder.")),)
        return (LibraryText(tuple(holdings_lines(holdings(library), width))),)

    def reload(self) -> tuple[Message, ...]:
        """Open the library anew after something was added."""
        if self._session is not None:
            self._session.shut()
        self._session = None
        return (self.lines(),)

    def shut(self) -> None:
        """Close the files."""
        if self._session is not None:
            self._session.shut()

    # -- how things stand ------------------------------------------------------

    def _opened(self, job: str, note: str = "") -> Opened:
        view = self._view(job)
        first = max(0, view.turns - OPENED_WITH)
        turns = self._spoken(job, first, OPENED_WITH)
        if turns and turns[-1].answer is None:
            last = Spoken(turns[-1].at, turns[-1].words, view.answer, None)
            turns = (*turns[:-1], last)
        self._last[job] = view.answer
        return Opened(view, turns, note, earlier=first)

    def _spoken(self, job: str, first: int, count: int) -> tuple[Spoken, ...]:
        """Return turns with the answer before each, which tells what is new in it."""
        extra = 1 if first else 0
        turns = self.session.transcript(job, first=first - extra, count=count + extra)
        before: Answer | None = None
        told: list[Spoken] = []
        for turn in turns:
            told.append(Spoken(turn.at, spoken_words(turn.words), turn.answer, before))
            before = turn.answer or before
        return tuple(told[extra:])

    def _open_job(self) -> str:
        if self._job is None:
            self._job = self.session.open_job()
        return self._job

    def _light(self, light: str) -> Observation | None:
        from assistant.facts import LampFact
        from assistant.language.understand import understand
        from assistant.language.vocabulary import Vocabulary

        job = self._job
        if not light:
            told = self.session.state(job).of(LampFact) if job else ()
            last = told[-1].fact if told else None
            return last.observation if isinstance(last, LampFact) else None
        vocabulary = self.session.vocabulary(job) if job else Vocabulary()
        understood = understand(
            f"{light} light flashes 4 times",
            now=self.clock.now(),
            vocabulary=vocabulary,
        )
        lamps = [fact for fact in understood.facts if isinstance(fact, LampFact)]
        return lamps[0].observation if lamps else None

    def _told(self, job: str, turn: Spoken) -> tuple[Message, ...]:
        if turn.answer is not None:
            self._last[job] = turn.answer
        return (Told(self._view(job), turn), self.lines())

    def _view(self, job: str) -> JobView:
        state = self.session.state(job)
        asked = state.open_question.asked if state.open_question else None
        plate = state.plate.model_dump(exclude_none=True)
        return JobView(
            job=job,
            answer=self.session.look(job),
            at=self.clock.now(),
            role=state.role or "",
            plate=tuple((name.replace("_", " "), str(plate[name])) for name in plate),
            context=context_words(state.held),
            question=asked.text if asked else "",
            options=asked.options if asked else (),
            acknowledged=state.acknowledged,
            turns=state.turn,
            ended=state.closed is not None,
        )

    def _all(self, jobs: Sequence[JobSummary], over: tuple[str, ...] = ()) -> Lines:
        now = self.clock.now()
        self._lines = {
            each.id: self._line(each, watched=nth < WATCHED)
            for nth, each in enumerate(jobs)
        }
        return Lines(tuple(self._lines.values()), now, over)

    def _line(self, each: JobSummary, *, watched: bool) -> JobLine:
        known = self._lines.get(each.id)
        timed = watched and each.state != "closed"
        if timed and known and known.events == each.events and not known.waits:
            return known  # nothing was noted, and no timer ran: nothing can differ
        return JobLine(
            job=each.id,
            unit=each.outdoor_model or each.indoor_model,
            site=each.site,
            state=each.state,
            last=each.last,
            waits=self.session.look(each.id).waits if timed else (),
            acknowledged=self.session.state(each.id).acknowledged if timed else (),
            events=each.events,
        )


def spoken_words(body: object) -> str:
    """Return what a turn began with, in words."""
    text = getattr(body, "text", None)
    if isinstance(text, str):
        return text
    facts = getattr(body, "facts", ())
    return "; ".join(fact.words or fact.kind.replace("_", " ") for fact in facts)


def context_words(held: Sequence[object]) -> tuple[str, ...]:
    """Return what was told of the state of things, the last word on each."""
    told: dict[str, str] = {}
    for each in held:
        fact = getattr(each, "fact", None)
        kind = getattr(fact, "kind", "")
        if kind == "context":
            told[getattr(fact, "name", "")] = "yes" if fact.value else "no"  # type: ignore[union-attr]
        elif kind == "mode":
            told["mode"] = getattr(fact, "mode", "")
        elif kind == "temperature":
            from assistant.units.show import format_quantity

            told[f"{fact.where} temperature"] = format_quantity(fact.value)  # type: ignore[union-attr]
    return tuple(f"{name}: {value}" for name, value in told.items())
