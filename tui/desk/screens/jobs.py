"""The jobs of the desk: those whose wait is over on top."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime

from textual import on
from textual.app import ComposeResult
from textual.widgets import OptionList
from textual.widgets.option_list import Option

from tui.desk.literal import literal
from tui.desk.screens.prompt import Prompt
from tui.desk.screens.sheet import Sheet
from tui.desk.timers import wait_line
from tui.desk.views import JobLine, ordered, over, running


class Jobs(Sheet):
    """Every job with how it stands."""

    PLACE = "jobs"
    TITLE_TEXT = "JOBS"

    def __init__(self) -> None:
        super().__init__()
        self._lines: tuple[JobLine, ...] = ()

    def body(self) -> ComposeResult:
        """Lay out the list."""
        yield OptionList(classes="first")

    def begin(self) -> None:
        """Fill the list."""
        self.refill(self.desk.lines, self.desk.clock.now())

    def refill(self, lines: Sequence[JobLine], now: datetime) -> None:
        """Show the jobs as they stand; the cursor stays on its job."""
        rows = self.query_one(OptionList)
        under = self._under()
        self._lines = ordered(lines)
        rows.clear_options()
        rows.add_options(Option(literal(self._text(each, now))) for each in self._lines)
        at = [
            nth
            for nth, each in enumerate(self._lines)
            if under and each.job == under.job
        ]
        if self._lines:
            rows.highlighted = at[0] if at else 0

    def tick(self, now: datetime) -> None:
        """Draw the time that is left."""
        rows = self.query_one(OptionList)
        for nth, each in enumerate(self._lines):
            if running(each):
                rows.replace_option_prompt_at_index(nth, literal(self._text(each, now)))

    @on(OptionList.OptionSelected)
    def pick(self) -> None:
        """Go on with the job under the cursor."""
        self.action_open()

    def action_open(self) -> None:
        """Go on with the job under the cursor."""
        line = self._under()
        if line is not None:
            self.desk.engine.do(lambda bench: bench.switch(line.job))
            self.app.pop_screen()

    def action_new(self) -> None:
        """Begin another job."""
        self.app.pop_screen()
        self.desk.begin_new()

    def action_acknowledge(self) -> None:
        """Take the job's ended timers off the top."""
        line = self._under()
        if line is not None:
            self.desk.engine.do(lambda bench: bench.acknowledge(line.job))

    def action_park(self) -> None:
        """Set the job aside."""
        line = self._under()
        if line is not None:
            self.desk.engine.do(lambda bench: bench.park(line.job))

    def action_close(self) -> None:
        """End the job with its outcome."""
        line = self._under()
        if line is not None:
            self.app.push_screen(
                Prompt(f"How did it end? {line.name}", "for example: plug reseated"),
                lambda outcome: self.desk.close_job(line.job, outcome or ""),
            )

    def _under(self) -> JobLine | None:
        row = self.query_one(OptionList).highlighted
        return self._lines[row] if row is not None and row < len(self._lines) else None

    def _text(self, line: JobLine, now: datetime) -> str:
        here = self.desk.view is not None and self.desk.view.job == line.job
        ended = [
            f"{wait_line(each, now, self.desk.zone)} {each.name}" for each in over(line)
        ]
        left = [
            f"{wait_line(each, now, self.desk.zone)} {each.name}"
            for each in running(line)
        ]
        state = "" if line.state == "open" else line.state
        mark = "* " if here else "  "
        return mark + "  ".join(filter(None, (*ended[:1], line.name, state, *left[:1])))
