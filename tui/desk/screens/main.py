"""The conversation with its panes, bars and line for writing."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING, ClassVar, cast

from textual import events, on
from textual.app import ComposeResult
from textual.binding import Binding, BindingType
from textual.containers import Horizontal, VerticalScroll
from textual.screen import Screen
from textual.widgets import Input, Static

from tui.desk.actions import CHOICES, bindings
from tui.desk.literal import literal
from tui.desk.timers import bar
from tui.desk.views import JobView, Spoken
from tui.desk.widgets.bars import VIEWS, Bar, KeyLine, QuestionBar, ViewBar
from tui.desk.widgets.composer import Composer
from tui.desk.widgets.conversation import Conversation
from tui.desk.widgets.panes import NAMES, Pane

if TYPE_CHECKING:
    from collections.abc import Sequence

    from tui.desk.app import Desk

ENLARGE = "too small: enlarge, or use `faultleaf talk`"


WRITING = "Enter says it  / all actions  Tab leaves: then letters act"
OWN = ("write", "view", "older")
"""Actions that this screen does itself; the app does the others."""


class Main(Screen[None]):
    """What is in view most of the time."""

    BINDINGS: ClassVar[list[BindingType]] = [
        *bindings("desk", OWN, "app"),
        *(Binding(key, f"choose({key})", show=False) for key in CHOICES),
        Binding("shift+tab", "write", show=False, priority=True),
    ]
    AUTO_FOCUS = "#write"

    def __init__(self) -> None:
        super().__init__()
        self._view = "talk"

    @property
    def desk(self) -> Desk:
        """The app."""
        from tui.desk.app import Desk

        return cast(Desk, self.app)

    def compose(self) -> ComposeResult:
        """Lay out all parts; the style sheet decides which have room."""
        yield Static(literal(ENLARGE), id="enlarge", markup=False)
        yield Bar(id="status")
        yield ViewBar(id="tabs")
        with Horizontal(id="body"):
            yield Conversation(self.desk.zone)
            with VerticalScroll(id="side"):
                for name in NAMES:
                    yield Pane(name, self.desk.zone)
        yield QuestionBar()
        yield Composer()
        yield KeyLine(id="keys")

    def on_mount(self) -> None:
        """Name the keys and the pane."""
        self.show_keys()
        self._show_view()

    def on_resize(self) -> None:
        """Name the panes anew for the width."""
        self._show_view()

    # -- what the app tells it -------------------------------------------------

    async def opened(
        self, view: JobView | None, turns: Sequence[Spoken], earlier: int
    ) -> None:
        """Show the latest turns of a job; so many earlier ones can be asked for."""
        await self.query_one(Conversation).show(turns, earlier)
        self.stands(view)

    async def older(self, first: int, turns: Sequence[Spoken]) -> None:
        """Show older turns before those in view."""
        await self.query_one(Conversation).put_before(first, turns)

    async def told(self, view: JobView, turn: Spoken) -> None:
        """Show one more turn."""
        await self.query_one(Conversation).add(turn)
        self.stands(view)

    def stands(self, view: JobView | None) -> None:
        """Show how the job stands beside the conversation."""
        now = self.desk.clock.now()
        for pane in self.query(Pane):
            pane.show(view, now)
        question = view.question if view and not view.ended else ""
        self.query_one(QuestionBar).ask(question, view.options if view else ())
        self.status(now)

    def status(self, now: datetime) -> None:
        """Draw the line of timers and the job."""
        view = self.desk.view
        timers = bar(self.desk.lines, view.job if view else None, now, self.desk.zone)
        unit = dict(view.plate).get("outdoor model", "unit?") if view else "new job"
        job = view.job[-6:] if view else ""
        ended = "closed" if view and view.ended else ""
        search = "" if self.desk.search == "words and meaning" else self.desk.search
        parts = (timers, unit, job, ended, self.desk.adding, search)
        self.query_one("#status", Bar).say(" | ".join(filter(None, parts)))

    def answered(self) -> list[Spoken]:
        """Return the turns that have an answer, the latest last."""
        turns = self.query_one(Conversation).turns
        return [turn for turn in turns if turn.answer is not None]

    def tick(self, now: datetime) -> None:
        """Draw the time that is left."""
        self.status(now)
        self.query_one("#pane-timers", Pane).tick(now)

    def tell(self, text: str, *, grave: bool = False) -> None:
        """Show one line to the person."""
        self.query_one(KeyLine).notice(text, grave=grave)

    # -- keys ------------------------------------------------------------------

    def on_key(self, event: events.Key) -> None:  # noqa: ARG002 - any key will do
        """Take a notice away with the next key."""
        self.show_keys()

    def on_descendant_focus(self) -> None:
        """Name the keys of where the person is now."""
        self.show_keys()

    def show_keys(self) -> None:
        """Name what keys do here: letters write, or they act."""
        line = self.query_one(KeyLine)
        if self.letters_act:
            line.keys("desk")
        else:
            line.plain(WRITING)

    @on(Composer.PaletteAsked)
    def palette_asked(self) -> None:
        """Open the palette from the line for writing."""
        self.desk.action_palette()

    @on(Input.Submitted, "#write")
    def submitted(self) -> None:
        """Say what was written."""
        words = self.query_one(Composer).take()
        if words:
            self.tell("...")
            self.desk.say(words)

    def action_write(self) -> None:
        """Go to the line for writing, or leave it for the pane in view."""
        line = self.query_one(Composer)
        if line.has_focus:
            self._leave_line()
        else:
            self.set_focus(line)

    @property
    def letters_act(self) -> bool:
        """Whether letters act, or write."""
        return not self.query_one(Composer).has_focus

    def action_choose(self, number: int) -> None:
        """Answer the open question with one of its options."""
        if not self.desk.engine.idle:
            self.tell("an answer is on its way; choose when it stands")
            return
        options = self.query_one(QuestionBar).options
        if number <= len(options):
            self.desk.say(options[number - 1])
        else:
            self.tell("no open question has such an answer")

    def action_view(self) -> None:
        """Bring the next pane into view, where one at a time has room."""
        self._view = VIEWS[(VIEWS.index(self._view) + 1) % len(VIEWS)]
        self._show_view()
        if self.letters_act:
            self._leave_line()

    @on(Conversation.OlderAsked)
    def older_asked(self, event: Conversation.OlderAsked) -> None:
        """Have older turns fetched."""
        self.desk.fetch_older(event.before)

    def action_older(self) -> None:
        """Show older turns."""
        if not self.query_one(Conversation).ask_older(turn_page=True):
            self.tell("these are all turns of the job")

    def _leave_line(self) -> None:
        """Give the keys to the pane in view, at once: the next one may follow fast."""
        self.set_focus(self.query_one("#talk" if self._view == "talk" else "#side"))

    def _show_view(self) -> None:
        for name in NAMES:
            self.set_class(self._view == name, f"-view-{name}")
        self.set_class(self._view != "talk", "-aside")
        self.query_one(ViewBar).show(self._view, self.size.width)
