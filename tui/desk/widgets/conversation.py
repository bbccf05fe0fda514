"""The conversation: one block a turn, the latest at first, older ones on asking."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import tzinfo

from textual.app import ComposeResult
from textual.containers import VerticalScroll
from textual.content import Content
from textual.message import Message

from tui.desk.literal import literal, stacked
from tui.desk.views import Spoken
from tui.desk.widgets.reflowed import Reflowed

LAID_OUT_AFTER = 8
"""Refreshes that a new turn takes at most to be laid out, where it is in view."""
MOUNTED = 300
"""A turn more, and the oldest leaves the widget tree; it can be asked for again."""
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


@dataclass(frozen=True, slots=True)
class Anchor:
    """What stands at the top of the conversation: a turn, and how far into it."""

    block: Block
    part: float
    """Of the turn's height, above the top."""
    width: int
    """Of the conversation then."""


class Conversation(VerticalScroll):
    """The turns of the job on the desk."""

    class OlderAsked(Message):
        """Turns before the number `before`, from 0, are wanted."""

        def __init__(self, before: int) -> None:
            super().__init__()
            self.before = before

    def __init__(self, zone: tzinfo | None) -> None:
        super().__init__(id="talk")
        self._zone = zone
        self.turns: list[Spoken] = []
        """Those in the widget tree."""
        self._earlier = 0
        """How many come before them."""
        self._asked: int | None = None
        """The turn before which older ones are being fetched."""
        self._turning_page = False
        self._anchor: Anchor | None = None

    def compose(self) -> ComposeResult:
        """Begin with what to do."""
        yield Said(WELCOME, id="older")

    async def show(self, turns: Sequence[Spoken], earlier: int) -> None:
        """Show a job's turns in place of the ones before."""
        await self.query(Block).remove()
        self.turns = list(turns)
        self._earlier, self._asked, self._anchor = earlier, None, None
        await self.mount_all([Block(turn, self._zone) for turn in turns])
        self._tell_older()
        blocks = self.query(Block)
        if blocks:
            self._go_to(blocks.last(), 0.0)

    async def add(self, turn: Spoken) -> None:
        """Add a turn at the end; it is shown from its first line."""
        self.turns.append(turn)
        block = Block(turn, self._zone)
        await self.mount(block)
        if len(self.turns) > MOUNTED:
            await self.query(Block).first().remove()
            del self.turns[0]
            self._earlier += 1
        self._tell_older()
        self._go_to(block, 0.0)

    def ask_older(self, *, turn_page: bool = False) -> bool:
        """Ask for older turns; False when there are none."""
        if self._earlier and self._asked is None:
            self._asked = self._earlier
            self._turning_page = turn_page
            self.post_message(self.OlderAsked(self._earlier))
        return bool(self._earlier)

    async def put_before(self, first: int, turns: Sequence[Spoken]) -> None:
        """Mount older turns; what was in view stays there, or one page on."""
        if self._asked != self._earlier or first + len(turns) != self._earlier:
            self._asked = None
            return  # asked for before another job or turn came
        top = self._at_top()
        self.turns[:0] = turns
        self._earlier, self._asked = first, None
        await self.mount_all(
            [Block(turn, self._zone) for turn in turns], after="#older"
        )
        self._tell_older()
        if top is not None:
            self._go_to(top.block, top.part)
        if self._turning_page:
            self.call_after_refresh(self.scroll_page_up, animate=False)

    # -- where it stands -------------------------------------------------------

    def action_scroll_up(self) -> None:
        """Scroll; at the top, ask for what comes before."""
        self._up(super().action_scroll_up)

    def action_page_up(self) -> None:
        """Turn a page back; at the top, ask for what comes before."""
        self._up(super().action_page_up)

    def action_scroll_home(self) -> None:
        """Go to the top; at the top, ask for what comes before."""
        self._up(super().action_scroll_home)

    def on_mouse_scroll_up(self) -> None:
        """At the top, ask for what comes before."""
        if self.scroll_y <= 0:
            self.ask_older()

    def watch_scroll_y(self, old_value: float, new_value: float) -> None:
        """Note what stands at the top, unless a new width is being laid out."""
        super().watch_scroll_y(old_value, new_value)
        if self._anchor is not None and self._anchor.width == self.size.width:
            self._anchor = self._at_top() or self._anchor

    def on_resize(self) -> None:
        """Keep in view what was: lines moved with the width."""
        self._stay()

    def on_show(self) -> None:
        """Show what came while another pane was in view."""
        self._stay()

    def _go_to(self, block: Block, part: float) -> None:
        """Bring a part of a turn to the top, once it has its place."""
        self._anchor = Anchor(block, part, 0)
        self._stay()

    def _stay(self) -> None:
        """Bring to the top what belongs there, after whatever is being laid out."""
        self.call_after_refresh(self._show_anchor, LAID_OUT_AFTER)

    def _up(self, scroll: Callable[[], None]) -> None:
        if self.scroll_y > 0 or not self.ask_older():
            scroll()

    def _at_top(self) -> Anchor | None:
        for block in self.query(Block):
            region = block.virtual_region
            if region.height and region.bottom > self.scroll_y:
                part = max(0.0, (self.scroll_y - region.y) / region.height)
                return Anchor(block, part, self.size.width)
        return None

    def _show_anchor(self, tries: int) -> None:
        anchor = self._anchor
        if anchor is None or not anchor.block.is_mounted:
            return
        region = anchor.block.virtual_region
        if region.height and self.size.width:
            top = round(region.y + anchor.part * region.height)
            self.scroll_to(y=top, animate=False, immediate=True)
            # Also where it could not come to the top: a smaller size may have it
            # there.
            self._anchor = replace(anchor, width=self.size.width)
        elif tries:
            self.call_after_refresh(self._show_anchor, tries - 1)

    def _tell_older(self) -> None:
        note = self.query_one("#older", Said)
        if self._earlier:
            note.say(f"{self._earlier} older turns: o, or scroll on")
        else:
            note.say("" if self.turns else WELCOME)
        note.display = bool(self._earlier) or not self.turns
