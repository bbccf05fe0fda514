"""Lines as they are typed, and a word in between when a timer is due."""

from __future__ import annotations

import selectors
from collections.abc import Callable, Iterator
from datetime import datetime
from typing import TextIO

from assistant.clock import Clock

LONGEST_SLEEP = 20.0
"""Seconds after which the clock is asked again: it may have been set, or the
machine may have slept."""


class LinesIn:
    """The lines of a stream, read one by one without holding up the timers.

    Parameters
    ----------
    source : TextIO
        Where lines come from; a stream without a file descriptor is only read.
    clock : Clock
        What timers are compared with.
    """

    def __init__(self, source: TextIO, clock: Clock) -> None:
        self._source = source
        self._clock = clock

    def read(
        self, next_due: Callable[[], datetime | None], tell_due: Callable[[], None]
    ) -> Iterator[str]:
        """Yield lines until the stream ends.

        Parameters
        ----------
        next_due : callable
            Gives the instant at which the next timer is due, None when none runs.
        tell_due : callable
            Called when that instant has come.
        """
        while True:
            self._await_input(next_due, tell_due)
            line = self._source.readline()
            if not line:
                return
            yield line.rstrip("\r\n")

    def _await_input(
        self, next_due: Callable[[], datetime | None], tell_due: Callable[[], None]
    ) -> None:
        # Only a terminal is waited for: its lines come one by one, so nothing lies
        # unseen in the stream's own buffer. A pipe is read through.
        if not self._source.isatty():
            return
        with selectors.DefaultSelector() as selector:
            try:
                selector.register(self._source, selectors.EVENT_READ)
            except (OSError, ValueError):
                return
            while not selector.select(self._patience(next_due())):
                due = next_due()
                if due is not None and due <= self._clock.now():
                    tell_due()

    def _patience(self, due: datetime | None) -> float | None:
        if due is None:
            return None
        left = (due - self._clock.now()).total_seconds()
        return min(max(left, 0.05), LONGEST_SLEEP)
