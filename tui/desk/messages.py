"""What workers tell the screen; they never touch a widget."""

from __future__ import annotations

from typing import TYPE_CHECKING

from textual.message import Message

if TYPE_CHECKING:
    from datetime import datetime

    from assistant.dialogue.answer import SourceRef
    from tui.desk.views import JobLine, JobView, Spoken


class FromWorker(Message):
    """Whatever a worker tells."""


class Opened(FromWorker):
    """A job is on the desk: its latest turns and how it stands.

    `view` None is a new one; `earlier` counts the turns before those given.
    """

    def __init__(
        self,
        view: JobView | None,
        turns: tuple[Spoken, ...],
        note: str = "",
        earlier: int = 0,
    ) -> None:
        super().__init__()
        self.view = view
        self.turns = turns
        self.note = note
        self.earlier = earlier


class Older(FromWorker):
    """Older turns of a job; `first` is the number of the first of them, from 0."""

    def __init__(self, job: str, first: int, turns: tuple[Spoken, ...]) -> None:
        super().__init__()
        self.job = job
        self.first = first
        self.turns = turns


class Told(FromWorker):
    """A turn has its answer."""

    def __init__(self, view: JobView, turn: Spoken) -> None:
        super().__init__()
        self.view = view
        self.turn = turn


class Stands(FromWorker):
    """How a job stands, without a new turn."""

    def __init__(self, view: JobView) -> None:
        super().__init__()
        self.view = view


class Lines(FromWorker):
    """Every job with its timers; `over` names those newly over."""

    def __init__(
        self, lines: tuple[JobLine, ...], at: datetime, over: tuple[str, ...] = ()
    ) -> None:
        super().__init__()
        self.lines = lines
        self.at = at
        self.over = over


class PageText(FromWorker):
    """A page of a document as text; `wanted` is the source it was opened for."""

    def __init__(
        self,
        wanted: SourceRef,
        number: int,
        of: int,
        text: str | None,
        path: str = "",
    ) -> None:
        super().__init__()
        self.wanted = wanted
        self.number = number
        self.of = of
        self.text = text
        self.path = path


class LibraryText(FromWorker):
    """What the library holds, as lines made for a width."""

    def __init__(self, lines: tuple[str, ...]) -> None:
        super().__init__()
        self.lines = lines


class Refused(FromWorker):
    """Fields of a form that cannot be taken, each with its reason."""

    def __init__(self, wrong: dict[str, str]) -> None:
        super().__init__()
        self.wrong = wrong


class Notice(FromWorker):
    """One line for the person."""

    def __init__(self, text: str, *, grave: bool = False) -> None:
        super().__init__()
        self.text = text
        self.grave = grave


class Adding(FromWorker):
    """Where adding is; `done` True when it has ended, with its `lines`."""

    def __init__(
        self, text: str, *, done: bool = False, lines: tuple[str, ...] = ()
    ) -> None:
        super().__init__()
        self.text = text
        self.done = done
        self.lines = lines


class SearchReady(FromWorker):
    """How the library is searched from now on."""

    def __init__(self, by: str) -> None:
        super().__init__()
        self.by = by
