"""The one-line bars: how things stand, which pane is in view, keys, and notices."""

from __future__ import annotations

from textual.content import Content
from textual.widgets import Static

from tui.desk.actions import Place, at, key_name
from tui.desk.literal import literal, stacked
from tui.desk.widgets.panes import NAMES
from tui.desk.widgets.reflowed import Reflowed

VIEWS = ("talk", *NAMES)
QUESTION_LINES = 2
OPTION_LINES = 2


class Bar(Static):
    """One line that says nothing twice: the same text is not drawn again."""

    def __init__(self, *, id: str) -> None:  # noqa: A002 - Textual's own word
        super().__init__(literal(""), id=id, markup=False)
        self._text = ""

    def say(self, text: str, style: str = "") -> None:
        """Show a text on the line."""
        if text != self._text:
            self._text = text
            self.update(literal(text, style), layout=False)


class ViewBar(Bar):
    """Which pane is in view, where only one has room."""

    def show(self, view: str, width: int) -> None:
        """Name the panes, the one in view in capitals and brackets."""
        named = [f"[{name.upper()}]" if name == view else name for name in VIEWS]
        whole = " ".join(("v:", *named))
        if len(whole) > width:
            nth = VIEWS.index(view)
            after = VIEWS[(nth + 1) % len(VIEWS)]
            whole = f"[{view.upper()}] {nth + 1} of {len(VIEWS)}; v: {after}"
        self.say(whole)


class KeyLine(Bar):
    """The keys of a place; a notice stands in their stead until the next key."""

    def keys(self, place: Place) -> None:
        """Name the keys of a place, in the table's order."""
        shown = [each for each in at(place) if each.shown]
        self.plain("  ".join(f"{key_name(each)} {each.label}" for each in shown))

    def plain(self, text: str) -> None:
        """Say what can be done, cut to one line."""
        self.remove_class("-notice")
        self.say(text)

    def notice(self, text: str, *, grave: bool = False) -> None:
        """Tell something, in as many as three lines."""
        self.add_class("-notice")
        self.say(text, "bold reverse" if grave else "bold")


class QuestionBar(Reflowed):
    """The open question and the keys that answer it; always in view."""

    def __init__(self) -> None:
        super().__init__(id="question")
        self.question = ""
        self.options: tuple[str, ...] = ()

    def ask(self, question: str, options: tuple[str, ...]) -> None:
        """Put a question; an empty one takes the bar away."""
        self.question, self.options = question, options
        self.display = bool(question)
        self.remake()

    def made_for(self, width: int) -> Content:
        """Return the question in two lines, the options in two more."""
        from tui.plain.text import wrap

        asked = _at_most(wrap(self.question, width), QUESTION_LINES, width)
        keys = "  ".join(
            f"({number}) {option}"
            for number, option in enumerate(self.options[:9], start=1)
        )
        offered = _at_most(wrap(keys, width), OPTION_LINES, width) if keys else []
        bold = [literal(line, "bold") for line in asked]
        return stacked((*bold, *(literal(line) for line in offered)))


def _at_most(lines: list[str], most: int, width: int) -> list[str]:
    if len(lines) <= most:
        return lines
    return [*lines[: most - 1], f"{lines[most - 1][: max(0, width - 4)]} ..."]
