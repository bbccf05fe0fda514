"""The app: owns the worker, routes its messages, does the actions of the table."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from datetime import datetime, tzinfo
from pathlib import Path

from textual import events, on
from textual.app import App
from textual.message import Message
from textual.message_pump import MessagePump
from textual.screen import Screen
from textual.timer import Timer

from assistant.clock import Clock
from tui.desk.actions import CHOICES
from tui.desk.adding import Adder
from tui.desk.bench import Bench
from tui.desk.colours import COLOURS, UNCOLOURED
from tui.desk.engine import Engine
from tui.desk.gate import Gate
from tui.desk.messages import (
    Adding,
    FromWorker,
    LibraryText,
    Lines,
    Notice,
    Older,
    Opened,
    PageText,
    Refused,
    SearchReady,
    Stands,
    Told,
)
from tui.desk.screens.choosing import Palette, Sources
from tui.desk.screens.form import Form, Reading, Unit
from tui.desk.screens.help import Help
from tui.desk.screens.holdings import Holdings
from tui.desk.screens.jobs import Jobs
from tui.desk.screens.main import OWN, Main
from tui.desk.screens.page import Page
from tui.desk.screens.prompt import Prompt
from tui.desk.screens.sheet import Sheet
from tui.desk.screens.tap import Tap
from tui.desk.terminal import title_sequence
from tui.desk.timers import title
from tui.desk.views import JobLine, JobView, looks_due, running, sources_of

LEAVING = 0.1
"""Seconds that adding has to stop by itself when the screen is left."""
SAY_MORE = "say what you see first"


class Desk(App[None]):
    """The screen of faultleaf.

    Parameters
    ----------
    bench : Bench
        The session's side; only the worker's thread touches it.
    zone : tzinfo, optional
        Of times of day; None is the machine's own.
    """

    CSS_PATH = "app.tcss"
    ENABLE_COMMAND_PALETTE = False
    HORIZONTAL_BREAKPOINTS = [  # noqa: RUF012 - Textual declares it so
        (0, "-tiny"),
        (36, "-narrow"),
        (60, "-middle"),
        (100, "-wide"),
    ]
    VERTICAL_BREAKPOINTS = [  # noqa: RUF012
        (0, "-flat"),
        (12, "-short"),
        (24, "-tall"),
    ]

    def __init__(self, bench: Bench, zone: tzinfo | None = None) -> None:
        super().__init__()
        self.register_theme(COLOURS)
        self.theme = UNCOLOURED if self.no_color else COLOURS.name
        if self.no_color:
            from textual.filter import NoColor

            self._filters = [NoColor()]
        self.animation_level = "none"
        self.zone = zone
        self.clock: Clock = bench.clock
        self.engine = Engine(bench, self.post_message)
        self.main = Main()
        self.view: JobView | None = None
        self.lines: tuple[JobLine, ...] = ()
        self.search = "words only"
        self.adding = ""
        self.gate = Gate(super().on_event, self._way_of_keys, self._stands_for)
        self._adder = Adder(bench.settings, self.post_message)
        self._looked: datetime | None = None
        self._ticker: Timer | None = None
        self._titled = ""

    def get_default_screen(self) -> Screen[None]:
        """Begin with the conversation."""
        return self.main

    def on_mount(self) -> None:
        """Paint first; then let the worker import and open what it needs."""
        self._ticker = self.set_interval(1.0, self.tick, pause=True)
        self.call_after_refresh(self._begin)

    def on_unmount(self) -> None:
        """Leave nothing running."""
        self.gate.stop()
        self._adder.stop(LEAVING)
        self._entitle("")

    @property
    def job(self) -> str | None:
        """The job on the desk."""
        return self.view.job if self.view else None

    def say(self, words: str) -> None:
        """Hand typed words to the worker."""
        self.engine.do(lambda bench: bench.say(words))

    def fetch_older(self, before: int) -> None:
        """Have the worker work out the turns before one of the job's."""
        self._with_job(lambda bench, job: bench.older(job, before))

    def _begin(self) -> None:
        self.engine.start()
        self.engine.do(lambda bench: bench.begin())
        self.engine.warm_up()

    # -- keys ------------------------------------------------------------------

    async def on_event(self, event: events.Event) -> None:
        """Hand keys and pastes out one at a time; all else at once."""
        keyed = isinstance(event, events.Key | events.Paste)
        if keyed and not event.is_forwarded:
            self.gate.take(event)
        else:
            await super().on_event(event)

    def _way_of_keys(self) -> list[MessagePump]:
        """Return what a key goes through now, from the focus up to the app."""
        return list((self.focused or self.screen).ancestors_with_self)

    def _stands_for(self, event: events.Event) -> bool:
        """Say whether the screen shows what a key is meant for.

        An answer to a question, and whatever follows a form that was handed in, wait
        for the worker.
        """
        if self.engine.idle or not self.engine.started:
            return True
        if isinstance(self.screen, Form):
            return not self.screen.handed_in
        choosing = isinstance(event, events.Key) and event.key in CHOICES
        return not (choosing and self.screen is self.main and self.main.letters_act)

    # -- time ------------------------------------------------------------------

    def tick(self) -> None:
        """Redraw the time left; nothing is decided by a tick."""
        now = self.clock.now()
        self.main.tick(now)
        if isinstance(self.screen, Jobs):
            self.screen.tick(now)
        if self._looked is not None and looks_due(self.lines, self._looked, now):
            self._looked = now
            self.engine.do(lambda bench: bench.due())

    def _watch_timers(self) -> None:
        if self._ticker is None:
            return
        if any(running(line) for line in self.lines):
            self._ticker.resume()
        else:
            self._ticker.pause()

    # -- what the worker tells -------------------------------------------------

    async def _on_message(self, message: Message) -> None:
        """Take nothing more from the worker once the widgets are being taken down."""
        if self.is_running or not isinstance(message, FromWorker):
            await super()._on_message(message)

    @on(Opened)
    async def _opened(self, message: Opened) -> None:
        self.view = message.view
        await self.main.opened(message.view, message.turns, message.earlier)
        if message.note:
            self.tell(message.note)

    @on(Older)
    async def _older(self, message: Older) -> None:
        if message.job == self.job:
            await self.main.older(message.first, message.turns)

    @on(Told)
    async def _told(self, message: Told) -> None:
        if isinstance(self.screen, Form) and self.screen.handed_in:
            self.pop_screen()
        self.view = message.view
        await self.main.told(message.view, message.turn)
        self.main.show_keys()

    @on(Stands)
    def _stands(self, message: Stands) -> None:
        if message.view.job == self.job:
            self.view = message.view
            self.main.stands(message.view)

    @on(Lines)
    def _lines_changed(self, message: Lines) -> None:
        self.lines, self._looked = message.lines, message.at
        if message.over:
            self.bell()
        self._entitle(title(self.lines, self.zone))
        self.main.status(self.clock.now())
        if isinstance(self.screen, Jobs):
            self.screen.refill(message.lines, self.clock.now())
        self._watch_timers()

    @on(PageText)
    def _page(self, message: PageText) -> None:
        if isinstance(self.screen, Page):
            self.screen.show(message)

    @on(LibraryText)
    def _library(self, message: LibraryText) -> None:
        for sheet in self.screen_stack:
            if isinstance(sheet, Holdings):
                sheet.show(message.lines)

    @on(Refused)
    def _refused(self, message: Refused) -> None:
        if isinstance(self.screen, Form):
            self.screen.refuse(message.wrong)

    @on(Notice)
    def _notice(self, message: Notice) -> None:
        if isinstance(self.screen, Form):
            self.screen.handed_in = False
        self.tell(message.text, grave=message.grave)

    @on(SearchReady)
    def _search_ready(self, message: SearchReady) -> None:
        self.search = message.by
        self.main.status(self.clock.now())

    @on(Adding)
    def _adding(self, message: Adding) -> None:
        self.adding = "" if message.done else message.text
        self.main.status(self.clock.now())
        for sheet in self.screen_stack:
            if isinstance(sheet, Holdings):
                sheet.progress(message.text, done=message.done)
        if message.done:
            self.engine.do(lambda bench: bench.reload())
            self.engine.warm_up()
            self.tell(message.text)

    # -- what sheets ask for ---------------------------------------------------

    def tell(self, text: str, *, grave: bool = False) -> None:
        """Show one line to the person, on whatever is in view."""
        place = self.screen
        (place if isinstance(place, Sheet | Main) else self.main).tell(
            text, grave=grave
        )

    def open_source(self, source: object) -> None:
        """Open the page a source cites."""
        self.push_screen(Page(source))  # type: ignore[arg-type]

    def begin_new(self) -> None:
        """Clear the desk for another job."""
        self.engine.do(lambda bench: bench.new())

    def close_job(self, job: str, outcome: str) -> None:
        """End a job, when it was said how."""
        if outcome:
            self.engine.do(lambda bench: bench.close(job, outcome))

    def add_path(self, path: str) -> None:
        """Add a file or a folder to the library, in a process of its own."""
        if path:
            self._adder.start(Path(path).expanduser())

    def stop_adding(self) -> None:
        """Stop adding; what is stored stays."""
        if not self._adder.stop():
            self.tell("nothing is being added")

    # -- actions of the conversation -------------------------------------------

    def action_palette(self) -> None:
        """List every action."""
        self.push_screen(Palette(), self._chosen)

    async def _chosen(self, name: str | None) -> None:
        if name:
            await self.main.run_action(name if name in OWN else f"app.{name}")

    def action_help(self) -> None:
        """Say what every key does."""
        self.push_screen(Help())

    def action_tap(self) -> None:
        """Open the tap counter."""
        self.push_screen(Tap())

    def action_reading(self) -> None:
        """Open the readings form."""
        self.push_screen(Reading())

    def action_unit(self) -> None:
        """Open the unit form."""
        self.push_screen(Unit())

    def action_sources(self) -> None:
        """Open the one place cited, or list them."""
        found = sources_of(self.view.answer) if self.view else ()
        if not found:
            self.tell("nothing is cited yet")
        elif len(found) == 1:
            self.open_source(found[0])
        else:
            self.push_screen(Sources(found))

    def action_jobs(self) -> None:
        """List the jobs."""
        self.push_screen(Jobs())

    def action_library(self) -> None:
        """Show what the library holds."""
        self.push_screen(Holdings())

    def action_now(self) -> None:
        """Look again at how the job stands."""
        self._with_job(lambda bench, job: bench.look(job))

    def action_acknowledge(self) -> None:
        """Take the job's ended timers off the top."""
        self._with_job(lambda bench, job: bench.acknowledge(job))

    def action_park(self) -> None:
        """Set the job aside."""
        self._with_job(lambda bench, job: bench.park(job))

    def action_new(self) -> None:
        """Begin another job."""
        self.begin_new()

    def action_close(self) -> None:
        """End the job with its outcome."""
        if self.view is None:
            self.tell(SAY_MORE)
            return
        job = self.view.job
        asked = Prompt("How did it end?", "for example: plug reseated, runs")
        self.push_screen(asked, lambda outcome: self.close_job(job, outcome or ""))

    def action_copy(self) -> None:
        """Save the last answer with its sources, and offer it to the terminal."""
        from tui.desk.saving import offered

        turns = self.main.answered()
        if self.view is None or not turns:
            self.tell(SAY_MORE)
            return
        folder = self.engine.bench.settings.jobs.parent / "answers"
        text, told = offered(folder, self.view, turns[-1], self.zone)
        if text:
            self.copy_to_clipboard(text)
        self.tell(told, grave=not text)

    async def action_quit(self) -> None:
        """Leave at once; every word is stored already."""
        self.gate.stop()
        self.exit()

    def _with_job(self, task: Callable[[Bench, str], Sequence[Message]]) -> None:
        job = self.job
        if job is None:
            self.tell(SAY_MORE)
        else:
            self.engine.do(lambda bench: task(bench, job))

    def _entitle(self, words: str) -> None:
        """Name the terminal's window, when it is named otherwise."""
        if words != self._titled and self._driver is not None and not self.is_headless:
            self._driver.write(title_sequence(words))
        self._titled = words
