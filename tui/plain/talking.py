"""A conversation in plain lines: what each typed line does, and what is printed."""

from __future__ import annotations

from collections.abc import Callable
from datetime import datetime
from typing import Protocol

from assistant.clock import Clock
from assistant.dialogue.answer import Answer
from assistant.errors import UsageError
from tui.plain.colon_lines import COMMAND_HELP
from tui.plain.console import Console
from tui.plain.places import Frame
from tui.plain.render import answer_lines, due_lines, wait_words
from tui.plain.text import wrap
from tui.plain.words import STATUS_KINDS

PROMPT = "> "
BELL = "\a"


class Conversation(Protocol):
    """What talking asks of a session."""

    def say(self, job: str, text: str, *, at: datetime | None = None) -> Answer:
        """Take in what was typed and answer it."""
        ...

    def look(self, job: str, *, at: datetime | None = None) -> Answer:
        """Return the answer as it stands."""
        ...

    def due(self, job: str, *, at: datetime | None = None) -> tuple[str, ...]:
        """Note and name the waits that are newly over."""
        ...

    def park(self, job: str, why: str = "") -> None:
        """Set the job aside."""
        ...

    def close(
        self,
        job: str,
        outcome: str,
        parts_fitted: tuple[str, ...] = (),
        parts_not_needed: tuple[str, ...] = (),
    ) -> None:
        """End the job."""
        ...


class Talk:
    """One conversation on one job."""

    def __init__(
        self, session: Conversation, job: str, clock: Clock, console: Console
    ) -> None:
        self._session = session
        self._job = job
        self._clock = clock
        self._console = console
        self._last: Answer | None = None
        self._commands: dict[str, Callable[[str], bool]] = {
            "help": self._help,
            "timers": self._timers,
            "now": self._now,
            "park": self._park,
            "close": self._close,
            "quit": self._quit,
        }

    def begin(self, *, resumed: bool) -> None:
        """Say which job it is; of a resumed one, how it stands."""
        self._console.line(f"Job {self._job}. :help lists the commands.")
        if resumed:
            self._last = self._session.look(self._job)
            self._show(self._last)
        self._prompt()

    def take(self, line: str) -> bool:
        """Do what a line says; False when the conversation is over."""
        words = line.strip()
        if not self._console.interactive and words:
            # A transcript shows both sides.
            self._console.line(f"{PROMPT}{words}")
        going = True
        try:
            if words.startswith(":"):
                going = self._command(words[1:])
            elif words:
                before, self._last = self._last, self._session.say(self._job, words)
                self._show(self._last, before)
        except UsageError as error:
            self._console.lines(wrap(f"{error.what}. {error.hint}", self._width))
        if going:
            self.tell_due()
        return going

    def next_due(self) -> datetime | None:
        """Return when the next running timer is ready, or past its longest time.

        One that is over by time alone and waits for a value comes to no end by itself.
        """
        waits = self._last.waits if self._last else ()
        ends = [
            wait.give_up if wait.holds else wait.usual or wait.earliest or wait.give_up
            for wait in waits
            if wait.state == "running"
        ]
        return min((end for end in ends if end is not None), default=None)

    def tell_due(self) -> None:
        """Print and note the timers that came to their end; then the prompt."""
        due = self._session.due(self._job)
        if due:
            self._last = self._session.look(self._job)
            over = [wait for wait in self._last.waits if wait.id in due]
            if self._console.interactive:
                self._console.line(BELL)
            self._console.lines(due_lines(over, self._frame))
        self._prompt()

    @property
    def _frame(self) -> Frame:
        return Frame(width=self._width, now=self._clock.now())

    @property
    def _width(self) -> int:
        return self._console.width

    def _prompt(self) -> None:
        if self._console.interactive:
            self._console.out.write(PROMPT)
            self._console.out.flush()

    def _show(self, answer: Answer, before: Answer | None = None) -> None:
        first, *rest = answer_lines(answer, self._frame, before)
        self._console.line(self._console.emphasis(first, STATUS_KINDS[answer.status]))
        self._console.lines(rest)
        self._console.line()

    # -- commands --------------------------------------------------------------

    def _command(self, words: str) -> bool:
        name, _, rest = words.partition(" ")
        command = self._commands.get(name)
        if command is None:
            raise UsageError(f":{name} is not a command", ":help lists them")
        return command(rest.strip())

    def _help(self, rest: str) -> bool:  # noqa: ARG002 - all commands take the rest
        self._console.line(COMMAND_HELP)
        return True

    def _timers(self, rest: str) -> bool:  # noqa: ARG002
        self._last = self._session.look(self._job)
        for wait in self._last.waits:
            text = f"{wait.name}: {wait_words(wait, self._frame)}"
            self._console.lines(wrap(text, self._width, "- "))
        if not self._last.waits:
            self._console.line("No timer is running.")
        return True

    def _now(self, rest: str) -> bool:  # noqa: ARG002
        self._last = self._session.look(self._job)
        self._show(self._last)
        return True

    def _park(self, rest: str) -> bool:
        self._session.park(self._job, rest)
        self._console.line(f"Job {self._job} is parked.")
        return False

    def _close(self, rest: str) -> bool:
        if not rest:
            raise UsageError("a job is closed with its outcome", ":close OUTCOME")
        self._session.close(self._job, rest)
        self._console.line(f"Job {self._job} is closed.")
        return False

    def _quit(self, rest: str) -> bool:  # noqa: ARG002
        self._console.line(f"Job {self._job} stays open.")
        return False
