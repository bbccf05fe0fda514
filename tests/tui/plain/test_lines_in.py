"""Typed lines come one by one, and a timer speaks up while nobody types."""

from __future__ import annotations

import io
import os
from datetime import UTC, datetime, timedelta
from typing import TextIO

import pytest

from assistant.clock import FixedClock, SystemClock
from tui.plain.lines_in import LinesIn

NOW = datetime(2031, 6, 14, 8, 30, tzinfo=UTC)


def test_a_pipe_is_read_to_its_end_whatever_its_line_ends() -> None:
    lines = LinesIn(io.StringIO("one\r\ntwo\n\nlast"), FixedClock(NOW))

    assert list(lines.read(lambda: None, lambda: None)) == ["one", "two", "", "last"]


@pytest.mark.skipif(not hasattr(os, "openpty"), reason="no terminals of this kind")
def test_a_timer_that_is_due_interrupts_the_waiting_on_a_terminal() -> None:
    master, slave = os.openpty()
    clock = SystemClock()
    due: list[datetime] = [clock.now() + timedelta(milliseconds=150)]
    told: list[datetime] = []

    def tell() -> None:
        told.append(clock.now())
        due.clear()
        os.write(master, b"typed after the bell\n")

    with os.fdopen(slave, "r") as source:
        typed = next(LinesIn(source, clock).read(lambda: due[0] if due else None, tell))
    os.close(master)

    assert typed == "typed after the bell"
    assert len(told) == 1


class Closed(io.StringIO):
    """A terminal that can no longer be watched."""

    def isatty(self) -> bool:
        return True

    def fileno(self) -> int:
        raise ValueError


def test_a_terminal_that_cannot_be_watched_is_simply_read() -> None:
    source: TextIO = Closed("one\n")

    lines = LinesIn(source, FixedClock(NOW)).read(lambda: NOW, lambda: None)

    assert list(lines) == ["one"]
