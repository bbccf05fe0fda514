"""The panes beside the conversation: timers, unit, causes, next check, sources."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, tzinfo
from typing import TYPE_CHECKING

from textual.content import Content

from tui.desk.literal import literal, stacked
from tui.desk.timers import wait_line
from tui.desk.views import JobView, sources_of
from tui.desk.widgets.reflowed import Reflowed

if TYPE_CHECKING:
    from assistant.dialogue.answer import NextCheck

NAMES = ("timers", "unit", "causes", "check", "sources")
TITLES = {
    "timers": "TIMERS",
    "unit": "UNIT AND CONTEXT",
    "causes": "CAUSES",
    "check": "NEXT CHECK",
    "sources": "SOURCES",
}
SHOWN_SOURCES = 9


class Pane(Reflowed):
    """One titled pane of the job on the desk."""

    def __init__(self, name: str, zone: tzinfo | None) -> None:
        super().__init__(id=f"pane-{name}", classes="pane")
        self._which = name
        self._zone = zone
        self._view: JobView | None = None
        self._now: datetime | None = None

    def show(self, view: JobView | None, now: datetime) -> None:
        """Show how a job stands."""
        self._view = view
        self._now = now
        self.remake()

    def tick(self, now: datetime) -> None:
        """Draw the time that is left; nothing else changes, so nothing moves."""
        self._now = now
        if self._view is not None and self._which == "timers":
            self.remake(layout=False)

    def made_for(self, width: int) -> Content:
        """Return the title and the lines under it."""
        from tui.plain.text import wrap

        title = literal(TITLES[self._which], "bold $text-primary")
        if self._view is None or self._now is None:
            return stacked((title, literal("-")))
        texts = list(_LINES[self._which](self._view, self._now, self._zone))
        if self._which == "check" and self.screen.has_class("-wide"):
            texts = list(_check_short(self._view))
        texts = texts or [("", "-")]
        lines = [line for lead, text in texts for line in wrap(text, width, lead)]
        return stacked((title, *(literal(line) for line in lines)))


def _timers(
    view: JobView, now: datetime, zone: tzinfo | None
) -> Iterator[tuple[str, str]]:
    for wait in view.answer.waits:
        seen = " (seen)" if wait.id in view.acknowledged else ""
        yield "- ", f"{wait.name}: {wait_line(wait, now, zone)}{seen}"
    for stop in view.answer.stops:
        low, high = stop.count.min, stop.count.max
        told = str(low) if low == high else f"{low} to {high}"
        yield "- ", f"{stop.name}: {told} of {stop.limit}, {stop.state}"


def _unit(
    view: JobView,
    _now: datetime,
    _zone: tzinfo | None,
) -> Iterator[tuple[str, str]]:
    for name, value in view.plate:
        yield "", f"{name}: {value}"
    yield "", f"you: {view.role or 'customer (not said)'}"
    for text in view.context:
        yield "", text


def _causes(
    view: JobView,
    _now: datetime,
    _zone: tzinfo | None,
) -> Iterator[tuple[str, str]]:
    for number, cause in enumerate(view.answer.causes, start=1):
        yield f"{number}. ", f"{cause.name} - {cause.standing}"


def _check(
    view: JobView,
    _now: datetime,
    _zone: tzinfo | None,
) -> Iterator[tuple[str, str]]:
    check = view.answer.next_check
    if check is not None:
        yield from _check_lines(check)


def _check_short(view: JobView) -> Iterator[tuple[str, str]]:
    """Yield the check without its steps: beside the answer that has them."""
    check = view.answer.next_check
    if check is None:
        return
    for lead, text in _check_lines(check):
        if not lead.rstrip(". ").isdigit():
            yield lead, text
    if check.steps:
        yield "", f"{len(check.steps)} steps stand in the answer"


def _check_lines(check: NextCheck) -> Iterator[tuple[str, str]]:
    from tui.plain.words import NEEDS_WORDS

    yield "", check.name
    yield "", f"{NEEDS_WORDS[check.needs]}; about {check.minutes:g} min"
    for number, step in enumerate(check.steps, start=1):
        yield f"{number}. ", step
    if check.ask:
        yield "Tell: ", check.ask


def _sources(
    view: JobView,
    _now: datetime,
    _zone: tzinfo | None,
) -> Iterator[tuple[str, str]]:
    from tui.plain.places import place_of

    found = sources_of(view.answer)
    for number, source in enumerate(found[:SHOWN_SOURCES], start=1):
        yield f"{number}. ", place_of(source)
    if len(found) > SHOWN_SOURCES:
        yield "", f"and {len(found) - SHOWN_SOURCES} more: s"


_LINES = {
    "timers": _timers,
    "unit": _unit,
    "causes": _causes,
    "check": _check,
    "sources": _sources,
}
