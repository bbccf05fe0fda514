"""One line asked for: an outcome, a path, a light."""

from __future__ import annotations

from textual import on
from textual.app import ComposeResult
from textual.screen import Screen
from textual.widgets import Input, Static

from tui.desk.literal import literal
from tui.desk.widgets.bars import Bar


class Prompt(Screen[str]):
    """Asks for a line; Enter gives it, an empty one gives nothing."""

    def __init__(self, question: str, hint: str = "", value: str = "") -> None:
        super().__init__()
        self._question = question
        self._hint = hint
        self._value = value

    def compose(self) -> ComposeResult:
        """Lay out question and line."""
        yield Bar(id="sheet-title")
        yield Input(value=self._value, compact=True, select_on_focus=False)
        yield Static(literal(self._hint), markup=False)
        yield Static(literal("Enter takes it; an empty line goes back."), markup=False)

    def on_mount(self) -> None:
        """Ask."""
        self.query_one(Bar).say(self._question, "bold reverse")
        line = self.query_one(Input)
        line.cursor_blink = False
        line.focus()

    @on(Input.Submitted)
    def give(self, event: Input.Submitted) -> None:
        """Give back what was typed."""
        event.stop()
        self.dismiss(event.value.strip())
