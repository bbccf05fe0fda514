"""Foreign text in every widget: nothing vanishes, nothing crashes."""

from __future__ import annotations

import asyncio
from datetime import UTC

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from textual.app import App, ComposeResult
from textual.containers import VerticalScroll
from textual.widgets import Input, OptionList, Static

from assistant.dialogue.answer import (
    Answer,
    CauseShown,
    CautionShown,
    NextCheck,
    Question,
    SourceRef,
    Statement,
    WaitShown,
)
from tests.desk_driver import START
from tui.desk.literal import literal, marked
from tui.desk.views import JobView, Spoken
from tui.desk.widgets.bars import Bar, KeyLine, QuestionBar, ViewBar
from tui.desk.widgets.conversation import Block, Said
from tui.desk.widgets.panes import NAMES, Pane
from tui.plain.text import clean

NASTY = (
    "[E4] fault code [OFF]",
    "see [/foo] and [/]",
    "[=] [@click=app.quit]press[/]",
    "[bold red]not bold[/bold red]",
    "$text-primary {var} %s \\[ \\",
    "\x1b[31mred\x1b[0m \x07bell \x00",
    "冷房 故障 コード 点滅 四回",
    "Ångström ±5 °C ½ \u202eright to left",
    "x" * 300,
    "]" * 40 + "[" * 40,
)
letters = st.text(
    st.one_of(st.sampled_from("[]/=@$\\{}()'\"#:;,.-* "), st.characters(codec="utf-8")),
    min_size=1,
    max_size=60,
)


def answer(text: str) -> Answer:
    """Return an answer that has a text in every place a text can be."""
    source = SourceRef(
        document=text,
        document_id="0" * 12,
        title=text,
        revision=text,
        page=1,
        label="",
        quote=text,
    )
    wait = {"id": text, "name": text, "started": None, "earliest": None, "usual": None}
    check = {"id": text, "name": text, "minutes": 5.0, "needs": "look", "ask": text}
    return Answer(
        job="J",
        status="asking",
        statements=(Statement(text=text, basis="passage", sources=(source,)),),
        question=Question(text=text, splits=(text, text)),
        waits=(
            WaitShown.model_validate(
                {**wait, "give_up": None, "state": "start_unknown"}
            ),
        ),
        causes=(CauseShown(id=text, name=text, standing="possible", weight=0.5),),
        next_check=NextCheck.model_validate({**check, "steps": (text,)}),
        cautions=(CautionShown(text=text, basis=text),),
    )


def view(text: str) -> JobView:
    return JobView(
        job="J",
        answer=answer(text),
        at=START,
        role=text,
        plate=((text, text),),
        context=(text,),
        question=text,
        options=(text, text),
    )


class Everything(App[None]):
    """Every widget that shows foreign text, each as tall as it needs."""

    CSS = "OptionList { height: auto; } #question { display: block; }"

    def __init__(self, text: str) -> None:
        super().__init__()
        self._text = text

    def compose(self) -> ComposeResult:
        text = self._text
        with VerticalScroll():
            yield Block(Spoken(START, text, answer(text)), UTC)
            yield Said(text, id="said")
            for name in NAMES:
                yield Pane(name, UTC)
            yield QuestionBar()
            yield OptionList()
            yield Static(marked(text, 0, len(text) // 2), markup=False, id="page")
            for bar in (Bar, ViewBar, KeyLine):
                yield bar(id=bar.__name__)
            yield Input(value=text, placeholder="x")

    def on_mount(self) -> None:
        for pane in self.query(Pane):
            pane.show(view(self._text), START)
        self.query_one(QuestionBar).ask(self._text, (self._text,))
        for bar in self.query(Bar):
            bar.say(self._text)
        self.query_one(OptionList).add_option(literal(self._text))


SHOWING = (
    *("#said", "#page", "OptionList"),
    *("Block", "#pane-unit", "#pane-causes", "#pane-check"),
)


def letters_of(text: str) -> str:
    return "".join(clean(text).split())


def drawn(app: Everything, selector: str) -> str:
    widget = app.query_one(selector)
    lines = (widget.render_line(nth).text for nth in range(max(1, widget.size.height)))
    return "".join("".join(lines).split())


async def hiding(text: str) -> list[str]:
    """Return the widgets that do not show a text whole, wide or narrow."""
    app = Everything(text)
    wanted = letters_of(text)
    async with app.run_test(size=(60, 200)) as pilot:
        await pilot.pause()
        found = [each for each in SHOWING if wanted not in drawn(app, each)]
        await pilot.resize_terminal(20, 60)
        await pilot.pause()
        if wanted not in drawn(app, "#said"):
            found.append("#said, narrow")
    return found


@pytest.mark.parametrize("text", NASTY)
async def test_hostile_text_is_shown_whole_in_every_widget(text: str) -> None:
    assert await hiding(text) == []


@pytest.mark.parametrize(
    "examples", [pytest.param(5), pytest.param(150, marks=pytest.mark.slow)]
)
def test_any_text_is_shown_whole_in_every_widget(examples: int) -> None:
    @given(letters)
    @settings(max_examples=examples)
    def each(text: str) -> None:
        assert asyncio.run(hiding(text)) == []

    each()
