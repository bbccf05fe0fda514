"""What every key does, from the one table."""

from __future__ import annotations

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content

from tui.desk.actions import PLACE_NAMES, at, key_name
from tui.desk.literal import literal, stacked
from tui.desk.screens.sheet import Sheet
from tui.desk.widgets.reflowed import Reflowed

MORE = """\
In the line for writing: Enter says it; an empty line and / lists every action; up and
down bring back what was said. Outside it, 1 to 9 answer the open question.
Nothing needs Ctrl, Alt, function keys or Esc.

Every statement says what it rests on: from the manual, shop rule, common practice,
worked out, from the page. It all defers to the maker's literature, local codes and
licensed practice."""


class Help(Sheet):
    """The keys of every place."""

    PLACE = "page"
    TITLE_TEXT = "HELP"

    def body(self) -> ComposeResult:
        """Lay out the table."""
        with VerticalScroll(classes="text first"):
            yield _Keys()


class _Keys(Reflowed):
    def made_for(self, width: int) -> Content:
        """Return every action under its place."""
        from tui.plain.text import wrap

        parts: list[Content] = []
        for place, name in PLACE_NAMES.items():
            parts.append(literal(name, "bold"))
            for each in at(place):
                lines = wrap(each.help, width, f"  {key_name(each):<6} ")
                parts += [literal(line) for line in lines]
            parts.append(literal(""))
        for text in MORE.split("\n\n"):
            parts += [literal(line) for line in (*wrap(text, width), "")]
        return stacked(parts)
