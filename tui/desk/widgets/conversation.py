"""The conversation: one block a turn, the latest mounted, older ones on asking."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import tzinfo

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content

from tui.desk.literal import literal, stacked
from tui.desk.views import Spoken
from tui.desk.widgets.reflowed import Reflowed

MOUNTED = 300
"""Most turns in the widget tree at once."""
MORE = 50
"""So many older turns come at a time."""
STYLES = {
    "alarm": "bold reverse",
    "wait": "bold $text-warning",
    "good": "bold $text-success",
    "bold": "bold",
}
WELCOME = """\
Say what the unit shows or does, in your own words:
"amber light flashes 4 times, then a pause".
/ lists every action. Tab leaves this line; then letters act."""


class Block(Reflowed):
    """One turn: the person's words, and the answer under them."""

    def __init__(self, turn: Spoken, zone: tzinfo | None) -> None:
        super().__init__(classes="turn")
        self.turn = turn
        self._zone = zone

    def made_for(self, width: int) -> Content:
        """Return words and answer, wrapped for a width."""
        from tui.plain.places import Frame
        from tui.plain.render import answer_lines
        from tui.plain.text import wrap
        from tui.plain.words import STATUS_KINDS

        turn = self.turn
        parts = [literal(line, "bold") for line in wrap(turn.words, width, "> ")]
        if turn.answer is not None:
            frame = Frame(width=width, now=turn.at, zone=self._zone)
            first, *rest = answer_lines(turn.answer, frame, turn.before)
            parts.append(literal(first, STYLES[STATUS_KINDS[turn.answer.status]]))
            parts += [literal(line) for line in rest]
        return stacked((*parts, literal("")))


class Said(Reflowed):
    """A line of the program's own in the conversation."""

    def __init__(self, text: str, *, id: str | None = None) -> None:  # noqa: A002 - Textual's own word
        super().__init__(classes="said", id=id)
        self._text = text

    def made_for(self, width: int) -> Content:
        """Return the text, line by line."""
        from tui.plain.text import wrap

        lines = [line for each in self._text.split("\n") for line in wrap(each, width)]
        return stacked(literal(line) for line in lines)

    def say(self, text: str) -> None:
        """Say something else."""
        self._text = text
        self.remake()


class Conversation(VerticalScroll):
    """The turns of the job on the desk."""

    def __init__(self, zone: tzinfo | None) -> None:
        super().__init__(id="talk")
        self._zone = zone
        self.turns: list[Spoken] = []
        self._first = 0
        """Index of the oldest turn that is mounted."""
        self._shown: Block | None = None

    def compose(self) -> ComposeResult:
        """Begin with what to do."""
        yield Said(WELCOME, id="older")

    async def show(self, turns: Sequence[Spoken]) -> None:
        """Show a job's turns in place of the ones before."""
        await self.query(Block).remove()
        self.turns = list(turns)
        self._first = max(0, len(self.turns) - MOUNTED)
        latest = self.turns[self._first :]
        await self.mount_all([Block(turn, self._zone) for turn in latest])
        self._tell_older()
        blocks = self.query(Block)
        self._shown = None
        if blocks:
            self.call_after_refresh(self._show_from_start, blocks.last())

    async def add(self, turn: Spoken) -> None:
        """Add a turn at the end; it is shown from its first line."""
        self.turns.append(turn)
        block = Block(turn, self._zone)
        await self.mount(block)
        blocks = self.query(Block)
        if len(blocks) > MOUNTED:
            await blocks.first().remove()
            self._first += 1
        self._tell_older()
        self.call_after_refresh(self._show_from_start, block)

    async def older(self) -> bool:
        """Mount older turns; False when there are none."""
        if not self._first:
            return False
        start = max(0, self._first - MORE)
        older = [Block(turn, self._zone) for turn in self.turns[start : self._first]]
        await self.mount_all(older, after="#older")
        self._first = start
        blocks = list(self.query(Block))
        for block in blocks[MOUNTED:]:
            await block.remove()
        self._tell_older()
        self.call_after_refresh(self.scroll_home, animate=False)
        return True

    def on_resize(self) -> None:
        """Keep the turn in view that was: lines moved with the width."""
        if self._shown is not None:
            self.call_after_refresh(self._show_from_start, self._shown)

    def _show_from_start(self, block: Block) -> None:
        self._shown = block
        if block.is_mounted:
            self.scroll_to_widget(block, animate=False, top=True)

    def _tell_older(self) -> None:
        note = self.query_one("#older", Said)
        if self._first:
            note.say(f"o shows {self._first} older turns")
        else:
            note.say("" if self.turns else WELCOME)
        note.display = bool(self._first) or not self.turns
