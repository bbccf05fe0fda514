"""The one thread that works for the screen, task by task, in order."""

from __future__ import annotations

import logging
import queue
import threading
from collections.abc import Callable, Iterable

from textual.message import Message

from assistant.errors import FaultleafError
from tui.desk.bench import Bench
from tui.desk.messages import Notice, SearchReady

Task = Callable[[Bench], Iterable[Message]]
Post = Callable[[Message], object]
PATIENCE = 0.5
"""Seconds that leaving waits for a task in hand."""


class Engine:
    """Runs tasks on the bench in a thread of its own and posts what they give.

    A daemon thread: leaving never waits for it longer than `PATIENCE`. Whatever it
    was in the middle of is whole on the disk, for every event is its own commit.
    """

    def __init__(self, bench: Bench, post: Post) -> None:
        self.bench = bench
        self._post = post
        self._tasks: queue.Queue[Task | None] = queue.Queue()
        self._thread = threading.Thread(target=self._work, daemon=True, name="bench")
        self._warming: threading.Thread | None = None
        self._stopping = False

    def start(self) -> None:
        """Begin to work."""
        self._thread.start()

    def do(self, task: Task) -> None:
        """Put a task in line."""
        self._tasks.put(task)

    @property
    def started(self) -> bool:
        """Whether it has begun to work."""
        return self._thread.ident is not None

    @property
    def idle(self) -> bool:
        """Whether nothing is in hand and nothing in line."""
        return self._tasks.unfinished_tasks == 0

    def warm_up(self) -> None:
        """Load the encoder beside the work; until then words alone are searched."""
        self.do(self._begin_warming)

    def _begin_warming(self, bench: Bench) -> Iterable[Message]:
        _ = bench.session  # opened here, by its own thread
        self._warming = threading.Thread(target=self._warm, daemon=True, name="encoder")
        self._warming.start()
        return ()

    def stop(self) -> bool:
        """Take no more tasks; say whether the work has ended."""
        self._stopping = True
        self._tasks.put(None)
        for thread in (self._thread, self._warming):
            if thread is not None and thread.is_alive():
                thread.join(PATIENCE / 2)
        warming = self._warming is not None and self._warming.is_alive()
        return not self._thread.is_alive() and not warming

    def _work(self) -> None:
        while (task := self._tasks.get()) is not None and not self._stopping:
            self._run(task)
            self._tasks.task_done()
        self.bench.shut()

    def _run(self, task: Task) -> None:
        try:
            for message in task(self.bench):
                self._post(message)
        except FaultleafError as error:
            hint = f" - {error.hint}" if error.hint else ""
            self._post(Notice(f"{error.what}{hint}", grave=True))
        except Exception as error:  # whatever it is, the person must hear of it
            logging.getLogger(__name__).exception("a task of the screen failed")
            self._post(Notice(f"faultleaf itself failed: {error!r}", grave=True))

    def _warm(self) -> None:
        from assistant.dialogue.opening import search_by_meaning

        try:
            ready = search_by_meaning(self.bench.session, self.bench.settings)
        except FaultleafError as error:
            self._post(Notice(error.what, grave=True))
            return
        if not self._stopping:
            self._post(SearchReady("words and meaning" if ready else "words only"))
