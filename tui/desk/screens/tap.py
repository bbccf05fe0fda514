"""The tap counter: one key a flash, a live strip, what it comes to."""

from __future__ import annotations

from datetime import datetime

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content

from assistant.signals.flashes import Flash
from tui.desk.literal import literal, stacked
from tui.desk.screens.prompt import Prompt
from tui.desk.screens.sheet import Sheet
from tui.desk.taps import WINDOWS, Tapped, read_rounds, result_lines, strip
from tui.desk.widgets.reflowed import Reflowed

HOW = """\
Press Space with every flash, through a pause and on: three groups settle a count.
Begin right after a pause if there is one. Where quick and long flashes come mixed,
press m for the long ones."""
WAYS = (None, *WINDOWS)
"""None stands for reading by groups and pauses."""


class Tap(Sheet):
    """Counts flashes by taps, in rounds."""

    PLACE = "tap"
    TITLE_TEXT = "TAP COUNTER"

    def __init__(self) -> None:
        super().__init__()
        self.rounds: list[list[Flash]] = [[]]
        self.light = ""
        self._way = 0
        self._zero: datetime | None = None

    def body(self) -> ComposeResult:
        """Lay out strip and result."""
        with VerticalScroll(classes="text first"):
            yield _Strip(self)

    @property
    def result(self) -> Tapped:
        """What the taps so far come to."""
        return read_rounds(self.rounds, WAYS[self._way])

    def action_flash(self) -> None:
        """Note a flash now."""
        self._note(long=False)

    def action_long(self) -> None:
        """Note a long flash now."""
        self._note(long=True)

    def action_undo(self) -> None:
        """Take the last tap back; of an empty round, the round."""
        if self.rounds[-1]:
            self.rounds[-1].pop()
        elif len(self.rounds) > 1:
            self.rounds.pop()
        self._redraw()

    def action_round(self) -> None:
        """Watch once more."""
        if self.rounds[-1]:
            self.rounds.append([])
        self._redraw()

    def action_window(self) -> None:
        """Read by groups, or over the next length of window."""
        self._way = (self._way + 1) % len(WAYS)
        self._redraw()

    def action_light(self) -> None:
        """Ask which light it is."""
        self.app.push_screen(
            Prompt("Which light?", "for example: amber LD2 outdoor", self.light),
            self._named,
        )

    def action_use(self) -> None:
        """Enter the result into the job."""
        result = self.result
        if not result.usable:
            self.tell("nothing to enter yet: tap through at least one pause")
            return
        light = self.light
        self.desk.engine.do(lambda bench: bench.taps(light, result))
        self.app.pop_screen()

    def _note(self, *, long: bool) -> None:
        now = self.desk.clock.now()
        self._zero = self._zero or now
        at = (now - self._zero).total_seconds()
        # A clock that is set back meanwhile must not undo the order of taps.
        last = next((flashes[-1] for flashes in reversed(self.rounds) if flashes), None)
        self.rounds[-1].append(Flash(max(at, last.at if last else at), long=long))
        self._redraw()

    def _named(self, light: str | None) -> None:
        self.light = light or self.light
        self._redraw()

    def _redraw(self) -> None:
        self.query_one(_Strip).remake()


class _Strip(Reflowed):
    def __init__(self, tap: Tap) -> None:
        super().__init__(id="strip")
        self._tap = tap

    def made_for(self, width: int) -> Content:
        """Return the rounds as strips, and what they come to."""
        from tui.plain.text import wrap

        tap, result = self._tap, self._tap.result
        parts = [literal(f"Light: {tap.light or 'the one told before (l changes it)'}")]
        for number, flashes in enumerate(tap.rounds, start=1):
            parts.append(literal(f"Round {number}: {len(flashes)} taps"))
            parts.append(literal(strip(flashes, width)))
        if not result.taps:
            return stacked((*parts, *(literal(each) for each in wrap(HOW, width))))
        for text in result_lines(result):
            style = "bold" if text.startswith("=") else ""
            parts += [literal(line, style) for line in wrap(text, width)]
        return stacked(parts)
