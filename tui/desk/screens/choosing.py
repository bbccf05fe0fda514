"""Lists to choose from: the palette of actions, and the sources of an answer."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from textual import events, on
from textual.app import ComposeResult
from textual.screen import Screen
from textual.widgets import Input, OptionList
from textual.widgets.option_list import Option

from tui.desk.actions import CHOICES, Action, at, found, key_name
from tui.desk.literal import literal
from tui.desk.screens.sheet import Sheet
from tui.desk.widgets.bars import Bar

if TYPE_CHECKING:
    from assistant.dialogue.answer import SourceRef


class Palette(Screen[str]):
    """Every action of the conversation; typing narrows, Enter does the first.

    Backspace on the empty line goes back, so that no key is needed that a phone or a
    slow link may swallow.
    """

    def __init__(self) -> None:
        super().__init__()
        self._found: list[Action] = []

    def compose(self) -> ComposeResult:
        """Lay out the line and the list."""
        yield Bar(id="sheet-title")
        yield Input(placeholder="type a word of it", compact=True)
        yield OptionList()

    def on_mount(self) -> None:
        """Show everything."""
        title = "ALL ACTIONS  Enter does it, Backspace goes back"
        self.query_one(Bar).say(title, "bold reverse")
        line = self.query_one(Input)
        line.cursor_blink = False
        line.focus()
        self._narrow("")

    @on(Input.Changed)
    def typed(self, event: Input.Changed) -> None:
        """Narrow the list to what was typed."""
        self._narrow(event.value)

    @on(Input.Submitted)
    def take(self) -> None:
        """Do the action under the cursor."""
        row = self.query_one(OptionList).highlighted
        self.dismiss(self._found[row].name if row is not None and self._found else "")

    @on(OptionList.OptionSelected)
    def pick(self, event: OptionList.OptionSelected) -> None:
        """Do the action chosen in the list."""
        self.dismiss(self._found[event.option_index].name)

    def on_key(self, event: events.Key) -> None:
        """Let up and down move in the list while words are typed."""
        line, rows = self.query_one(Input), self.query_one(OptionList)
        if event.key == "backspace" and not line.value:
            self.dismiss("")
        elif event.key == "down" and line.has_focus:
            rows.action_cursor_down()
        elif event.key == "up" and line.has_focus:
            rows.action_cursor_up()
        else:
            return
        event.stop()

    def _narrow(self, text: str) -> None:
        self._found = found(text, at("desk"))
        rows = self.query_one(OptionList)
        rows.clear_options()
        rows.add_options(
            Option(literal(f"/{each.name:<12} {key_name(each):<6} {each.help}"))
            for each in self._found
        )
        rows.highlighted = 0 if self._found else None


class Sources(Sheet):
    """The places an answer cites; one is opened by its number or Enter."""

    PLACE = "list"
    TITLE_TEXT = "SOURCES  1-9 or Enter opens the page"

    def __init__(self, sources: Sequence[SourceRef]) -> None:
        super().__init__()
        self._sources = list(sources)

    def body(self) -> ComposeResult:
        """List the places."""
        from tui.plain.places import place_of
        from tui.plain.text import one_line

        yield OptionList(
            *(
                Option(
                    literal(f"{number}. {place_of(each)}: {one_line(each.quote)[:120]}")
                )
                for number, each in enumerate(self._sources, start=1)
            ),
            classes="first",
        )

    def on_key(self, event: events.Key) -> None:
        """Open a place by its number."""
        if event.key in CHOICES and int(event.key) <= len(self._sources):
            event.stop()
            self.desk.open_source(self._sources[int(event.key) - 1])

    @on(OptionList.OptionSelected)
    def pick(self, event: OptionList.OptionSelected) -> None:
        """Open the place under the cursor."""
        self.desk.open_source(self._sources[event.option_index])
