"""Forms: named fields, choices, each wrong entry told at its field."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any, ClassVar, cast

from textual import events, on
from textual.app import ComposeResult
from textual.containers import Horizontal, VerticalScroll
from textual.widgets import Input, Static

from tui.desk.forms import ReadingFields, UnitFields
from tui.desk.literal import literal
from tui.desk.screens.sheet import Sheet
from tui.desk.widgets.bars import KeyLine

KEYS = "Enter takes it in  Tab next field  Space chooses  (last field: leave)"


@dataclass(frozen=True, slots=True)
class Field:
    """One line of a form; with `options` it is chosen, else typed."""

    name: str
    label: str
    hint: str = ""
    options: tuple[str, ...] = ()


class Choice(Static, can_focus=True):
    """A field that is chosen: Space goes through the options."""

    def __init__(self, options: Sequence[str], id: str) -> None:  # noqa: A002 - Textual's own word
        super().__init__(literal(""), id=id, classes="choice", markup=False)
        self._options = ("", *options)
        self._at = 0

    def on_mount(self) -> None:
        """Show the first."""
        self._draw()

    @property
    def value(self) -> str:
        """What is chosen; empty when nothing is."""
        return self._options[self._at]

    def on_key(self, event: events.Key) -> None:
        """Choose another."""
        steps = {"space": 1, "right": 1, "left": -1}
        if event.key in steps:
            event.stop()
            self._at = (self._at + steps[event.key]) % len(self._options)
            self._draw()

    def _draw(self) -> None:
        shown = [
            f"[{each}]" if each == self.value else each for each in self._options[1:]
        ]
        mark = "not said" if self.value else "[not said]"
        self.update(literal("  ".join((mark, *shown))))


class Leave(Static, can_focus=True):
    """The last field: Enter on it goes back."""


class Form(Sheet):
    """A sheet of fields. Enter anywhere takes the form in, save on `leave`."""

    PLACE = "page"
    BINDINGS: ClassVar[list[Any]] = []
    FIELDS: ClassVar[tuple[Field, ...]] = ()

    handed_in = False
    """Whether the worker has it, and what it says of it is awaited."""

    def body(self) -> ComposeResult:
        """Lay out the fields, each with room for what is wrong with it."""
        with VerticalScroll(id="form", can_focus=False):
            for nth, field in enumerate(self.FIELDS):
                with Horizontal(classes="field"):
                    yield Static(
                        literal(field.label), classes="field-name", markup=False
                    )
                    yield self._entry(field, first=nth == 0)
                yield Static(
                    literal(""), id=f"wrong-{field.name}", classes="wrong", markup=False
                )
            yield Leave(literal("leave"), id="leave", classes="choice", markup=False)

    def begin(self) -> None:
        """Name the keys; no cursor blinks."""
        self.query_one(KeyLine).plain(KEYS)
        for line in self.query(Input):
            line.cursor_blink = False

    def on_key(self, event: events.Key) -> None:
        """Take the form in, or leave it; in a typed field Enter is the field's own."""
        if event.key != "enter" or isinstance(self.focused, Input):
            return
        event.stop()
        if isinstance(self.focused, Leave):
            self.app.pop_screen()
        else:
            self.hand_in()

    @on(Input.Submitted)
    def entered(self, event: Input.Submitted) -> None:
        """Take the form in."""
        event.stop()
        self.hand_in()

    def hand_in(self) -> None:
        """Hand the form to the worker, once."""
        if not self.handed_in:
            self.handed_in = True
            self.send()

    def values(self) -> dict[str, str]:
        """Return what stands in every field."""
        return {
            field.name: cast(Any, self.query_one(f"#{field.name}")).value.strip()
            for field in self.FIELDS
        }

    def send(self) -> None:
        """Hand the form to the worker; to be overridden."""
        raise NotImplementedError

    def refuse(self, wrong: Mapping[str, str]) -> None:
        """Tell at each field what is wrong, and go to the first of them."""
        self.handed_in = False
        for field in self.FIELDS:
            line = self.query_one(f"#wrong-{field.name}", Static)
            reason = wrong.get(field.name, "")
            line.display = bool(reason)
            line.update(literal(f"! {reason}" if reason else ""))
        first = next(field.name for field in self.FIELDS if field.name in wrong)
        self.query_one(f"#{first}").focus()

    def _entry(self, field: Field, *, first: bool) -> Input | Choice:
        if field.options:
            return Choice(field.options, field.name)
        return Input(
            placeholder=field.hint,
            id=field.name,
            compact=True,
            select_on_focus=False,
            classes="first" if first else "",
        )


class Reading(Form):
    """A reading with what a verdict needs."""

    BINDINGS: ClassVar[list[Any]] = []
    TITLE_TEXT = "READING"
    FIELDS = (
        Field("of", "what", "TH3, supply, bus ..."),
        Field("value", "value", "12.4 kohm, 231 V, OL"),
        Field("temperature", "at sensor", "30 C, 86 F"),
        Field("meter", "meter", "its name, or 1 % + 3"),
        Field("power", "power", options=("off", "live")),
        Field("unplugged", "unplugged", options=("yes", "no")),
    )

    def send(self) -> None:
        """Let the worker parse the fields and enter the facts."""
        fields = ReadingFields(**cast(Any, self.values()))
        self.desk.engine.do(lambda bench: bench.reading(fields))


class Unit(Form):
    """The nameplate, and who is at the unit."""

    BINDINGS: ClassVar[list[Any]] = []
    TITLE_TEXT = "UNIT AND PERSON"
    FIELDS = (
        Field("outdoor", "outdoor", "model of the outdoor unit"),
        Field("indoor", "indoor", "model of the indoor unit"),
        Field("serial", "serial", "serial number"),
        Field("more", "more", "board=orange, voltage=230"),
        Field(
            "role",
            "you",
            options=("customer", "maintenance", "technician", "licensed technician"),
        ),
    )

    def send(self) -> None:
        """Let the worker parse the fields and enter the facts."""
        fields = UnitFields(**cast(Any, self.values()))
        self.desk.engine.do(lambda bench: bench.unit(fields))
