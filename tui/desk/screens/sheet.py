"""What every sheet over the conversation shares: a title, a key line, a way back."""

from __future__ import annotations

from typing import TYPE_CHECKING, ClassVar, cast

from textual.app import ComposeResult
from textual.screen import Screen

from tui.desk.actions import Place, bindings
from tui.desk.widgets.bars import Bar, KeyLine

if TYPE_CHECKING:
    from tui.desk.app import Desk


class Sheet(Screen[None]):
    """A whole screen of one matter; `q` goes back."""

    PLACE: ClassVar[Place] = "page"
    TITLE_TEXT: ClassVar[str] = ""
    AUTO_FOCUS = ".first"

    def __init_subclass__(cls) -> None:
        """Give each sheet the keys of its place."""
        super().__init_subclass__()
        if "BINDINGS" not in cls.__dict__:
            cls.BINDINGS = [*bindings(cls.PLACE)]
            cls._merged_bindings = cls._merge_bindings()

    @property
    def desk(self) -> Desk:
        """The app."""
        from tui.desk.app import Desk

        return cast(Desk, self.app)

    def compose(self) -> ComposeResult:
        """Lay out title, body and keys."""
        yield Bar(id="sheet-title")
        yield from self.body()
        yield KeyLine(id="keys")

    def body(self) -> ComposeResult:
        """Lay out what the sheet is about; to be overridden."""
        raise NotImplementedError

    def on_mount(self) -> None:
        """Name the sheet and its keys."""
        self.entitle(self.TITLE_TEXT)
        self.query_one(KeyLine).keys(self.PLACE)
        self.begin()

    def begin(self) -> None:
        """Fill the body; to be overridden. Textual runs `on_mount` of every class."""

    def entitle(self, text: str) -> None:
        """Set the title line."""
        self.query_one("#sheet-title", Bar).say(text, "bold reverse")

    def tell(self, text: str, *, grave: bool = False) -> None:
        """Show one line to the person."""
        self.query_one(KeyLine).notice(text, grave=grave)

    def action_leave(self) -> None:
        """Go back."""
        self.app.pop_screen()
