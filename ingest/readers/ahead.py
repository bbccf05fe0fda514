"""Reads the next files while the one before is taken in: two workers, one order."""

from __future__ import annotations

import queue
import threading
from collections.abc import Iterator, Sequence

from ingest.readers.base import RawPage, Read
from ingest.readers.isolation import Reading

WORKERS = 2
"""Reading processes at a time; each of them is another file's."""
AHEAD_FILES = 16
"""How many files may be begun behind the one that is taken in."""
AHEAD_CHARACTERS = 8_000_000
"""How much of their text may wait."""
_LOOK = 0.5
"""Seconds between two looks, so that Ctrl-C is heard everywhere."""

_Slot = Read | Exception | None


class Ahead:
    """Readings that run beside each other and are given one after the other.

    What is given, and its order, does not depend on which of them is quicker. Text
    that waits for its turn is bounded: behind that, workers pause.

    Parameters
    ----------
    readings : sequence of Reading
        In the order in which they will be asked for.
    workers : int
        How many run at a time.
    """

    def __init__(self, readings: Sequence[Reading], workers: int = WORKERS) -> None:
        self._readings = readings
        self._slots: list[queue.SimpleQueue[_Slot]] = [
            queue.SimpleQueue() for _ in readings
        ]
        self._change = threading.Condition()
        self._begun = 0
        self._current = 0
        self._waiting = 0
        self._stopped = False
        self._threads = [
            threading.Thread(target=self._work, daemon=True)
            for _ in range(min(workers, len(readings)))
        ]
        for thread in self._threads:
            thread.start()

    def items(self, at: int) -> Iterator[Read]:
        """Give the facts and pages of one reading; they are asked for in order.

        Raises
        ------
        InputError
            As its reading does.
        """
        with self._change:
            self._current = at
            self._change.notify_all()
        while True:
            try:
                found = self._slots[at].get(timeout=_LOOK)
            except queue.Empty:
                continue
            if found is None:
                return
            if isinstance(found, Exception):
                raise found
            with self._change:
                self._waiting -= _weight(found)
                self._change.notify_all()
            yield found

    def stop(self) -> None:
        """End every process and thread at once."""
        with self._change:
            self._stopped = True
            self._change.notify_all()
            begun = self._readings[self._current : self._begun]
        for reading in begun:
            reading.stop()
        for thread in self._threads:
            thread.join()

    def _work(self) -> None:
        while (at := self._next()) is not None:
            slot = self._slots[at]
            try:
                for item in self._readings[at].items():
                    if not self._room_for(at, item):
                        return
                    slot.put(item)
                slot.put(None)
            except Exception as error:  # noqa: BLE001 - raised where it is listened to
                slot.put(error)

    def _next(self) -> int | None:
        """Return the next file to begin, once there is room for it."""
        with self._change:
            self._change.wait_for(lambda: self._stopped or not self._crowded())
            if self._stopped or self._begun == len(self._readings):
                return None
            self._begun += 1
            return self._begun - 1

    def _crowded(self) -> bool:
        ahead = self._begun - self._current
        full = self._waiting >= AHEAD_CHARACTERS or ahead > AHEAD_FILES
        return self._begun < len(self._readings) and ahead > 0 and full

    def _room_for(self, at: int, item: Read) -> bool:
        """Wait until the text may wait too; False when all is stopped."""
        with self._change:
            self._change.wait_for(
                lambda: (
                    self._stopped
                    or at <= self._current
                    or self._waiting < AHEAD_CHARACTERS
                )
            )
            self._waiting += _weight(item)
            return not self._stopped


def _weight(item: Read) -> int:
    return len(item.text) if isinstance(item, RawPage) else 0
