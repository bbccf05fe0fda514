"""The library: what it holds and covers, and adding to it."""

from __future__ import annotations

from collections.abc import Sequence

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content

from tui.desk.literal import literal, stacked
from tui.desk.screens.prompt import Prompt
from tui.desk.screens.sheet import Sheet
from tui.desk.widgets.bars import Bar
from tui.desk.widgets.reflowed import Reflowed


class Holdings(Sheet):
    """Documents with their pages, rule packs, and the way in."""

    PLACE = "library"
    TITLE_TEXT = "LIBRARY"

    def body(self) -> ComposeResult:
        """Lay out progress and list."""
        yield Bar(id="adding")
        with VerticalScroll(classes="text first"):
            yield _Lines()

    def begin(self) -> None:
        """Fetch what is held."""
        self.progress(self.desk.adding)
        self.refetch()

    def refetch(self) -> None:
        """Ask again for what is held."""
        width = max(20, self.app.size.width - 2)
        self.desk.engine.do(lambda bench: bench.holdings(width))

    def show(self, lines: Sequence[str]) -> None:
        """Show what is held."""
        self.query_one(_Lines).show(lines)

    def progress(self, text: str, *, done: bool = False) -> None:
        """Show where adding is; what it has added, once it is done."""
        bar = self.query_one("#adding", Bar)
        bar.display = bool(text)
        bar.say(text, "bold")
        if done:
            self.refetch()

    def action_add(self) -> None:
        """Ask for a path and add what is there."""
        self.app.push_screen(
            Prompt(
                "Which file or folder?",
                "PDF, text, a folder of them, or a folder with a rule pack",
            ),
            lambda path: self.desk.add_path(path or ""),
        )

    def action_stop(self) -> None:
        """Stop adding."""
        self.desk.stop_adding()


class _Lines(Reflowed):
    lines: Sequence[str] = ("reading the library ...",)

    def show(self, lines: Sequence[str]) -> None:
        """Show other lines."""
        self.lines = lines
        self.remake()

    def made_for(self, width: int) -> Content:  # noqa: ARG002 - made for it already
        """Return the lines; they wrap again where they are too long."""
        return stacked(literal(line) for line in self.lines)
