"""The line for writing."""

from __future__ import annotations

from textual import events
from textual.message import Message
from textual.widgets import Input


class Composer(Input):
    """Takes words; a slash at its empty start asks for the list of actions."""

    class PaletteAsked(Message):
        """A slash was typed where nothing else stood."""

    def __init__(self) -> None:
        super().__init__(
            placeholder="say what you see;  / lists all;  Tab leaves",
            id="write",
            compact=True,
            select_on_focus=False,
        )
        self.cursor_blink = False
        self._said: list[str] = []
        self._back = 0

    def on_key(self, event: events.Key) -> None:
        """Turn a first slash into the palette, and up into what was said before."""
        if event.key == "slash" and not self.value:
            event.stop()
            event.prevent_default()
            self.post_message(self.PaletteAsked())
        elif event.key in ("up", "down") and self._said:
            event.stop()
            self._recall(-1 if event.key == "up" else 1)

    def _on_paste(self, event: events.Paste) -> None:
        """Take a paste in whole: its lines become one."""
        event.stop()
        event.prevent_default()
        self.replace(" ".join(event.text.split()), *self.selection)

    def take(self) -> str:
        """Return what stands on the line and empty it."""
        words = self.value.strip()
        self.value = ""
        if words:
            self._said.append(words)
        self._back = len(self._said)
        return words

    def _recall(self, by: int) -> None:
        self._back = min(max(0, self._back + by), len(self._said))
        older = self._back < len(self._said)
        self.value = self._said[self._back] if older else ""
        self.cursor_position = len(self.value)
