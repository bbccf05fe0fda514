"""A page of the literature as text, the cited words marked."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
from typing import TYPE_CHECKING

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.widgets import Static

from tui.desk.literal import literal, marked
from tui.desk.messages import PageText
from tui.desk.screens.sheet import Sheet
from tui.desk.terminal import viewer_command

if TYPE_CHECKING:
    from assistant.dialogue.answer import SourceRef


def find_span(text: str, quote: str) -> tuple[int, int] | None:
    r"""Return where a quote stands in a page's text, white space folded; else None.

    Examples
    --------
    >>> find_span("row 4  sensor\n  open", "sensor open")
    (7, 20)
    """
    words = quote.split()
    if not words:
        return None
    found = re.search(r"\s+".join(map(re.escape, words)), text)
    return found.span() if found else None


class Page(Sheet):
    """One page; keys turn it, and open the file outside."""

    PLACE = "source"
    TITLE_TEXT = "PAGE"

    def __init__(self, source: SourceRef) -> None:
        super().__init__()
        self._source = source
        self._number = source.page
        self._of = 0
        self._path = ""

    def body(self) -> ComposeResult:
        """Lay out the text."""
        with VerticalScroll(classes="text first"):
            yield Static(literal(""), markup=False, id="page-text")

    def begin(self) -> None:
        """Fetch the page."""
        self._turn_to(self._source.page)

    def show(self, message: PageText) -> None:
        """Show a page that was fetched."""
        self._number, self._of, self._path = message.number, message.of, message.path
        source = message.wanted
        revision = f" rev {source.revision}" if source.revision else ""
        of = f"PDF page {message.number} of {message.of}"
        self.entitle(f"{of}  {source.title}{revision}")
        text = message.text or ""
        here = message.number == source.page
        span = find_span(text, source.quote) if here else None
        self.query_one("#page-text", Static).update(self._content(text, span))
        scroll = self.query_one(VerticalScroll)
        scroll.scroll_home(animate=False)
        if span is not None:
            self.call_after_refresh(self._show_line_of, text[: span[0]])
        elif here and source.quote:
            self.tell("the words cited are not found on this page as text", grave=True)

    def action_next_page(self) -> None:
        """Turn to the next page."""
        self._turn_to(self._number + 1)

    def action_page_before(self) -> None:
        """Turn to the page before."""
        self._turn_to(self._number - 1)

    def action_cited(self) -> None:
        """Turn back to the cited page."""
        self._turn_to(self._source.page)

    def action_viewer(self) -> None:
        """Open the file outside at this page, or say how to."""
        command, words = viewer_command(
            self._path,
            self._number,
            platform=sys.platform,
            which=shutil.which,
            screen=bool(os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")),
        )
        if command is not None:
            try:
                subprocess.Popen(  # noqa: S603 - a viewer that was found here
                    command,
                    stdin=subprocess.DEVNULL,
                    stdout=subprocess.DEVNULL,
                    stderr=subprocess.DEVNULL,
                    start_new_session=True,
                )
            except OSError as error:
                words = f"cannot be opened: {error.strerror}; the file: {self._path}"
        self.tell(words)

    def _show_line_of(self, before: str) -> None:
        """Scroll to where a text ends, some lines above it still in view."""
        shown = self.query_one("#page-text", Static)
        rules = shown.styles.get_rules()
        above = literal(before).get_height(rules, max(1, shown.size.width))
        self.query_one(VerticalScroll).scroll_to(y=max(0, above - 4), animate=False)

    def _content(self, text: str, span: tuple[int, int] | None) -> Content:
        if not text.strip():
            return literal(
                "This page has no text: it is blank or a picture. o opens it."
            )
        return marked(text, *span) if span else literal(text)

    def _turn_to(self, number: int) -> None:
        if number < 1 or (self._of and number > self._of):
            self.tell("there is no page further on")
            return
        source = self._source
        self.desk.engine.do(lambda bench: bench.page(source, number))
