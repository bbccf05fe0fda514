"""What the reports about a shelf share: memory, tables, and what must hold."""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path

MIB = 1 << 20


def say(text: str = "") -> None:
    """Write one line of the report."""
    sys.stdout.write(text + "\n")
    sys.stdout.flush()


def table(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
    """Write a table whose columns are as wide as what is in them."""
    whole = [heads, *rows]
    wide = [max(len(row[at]) for row in whole) for at in range(len(heads))]
    for row in whole:
        say("  ".join(map(str.ljust, row, wide)).rstrip())


class Checks:
    """What must hold; told one by one, counted at the end."""

    def __init__(self) -> None:
        self.failed = 0

    def hold(self, what: str, *, holds: bool) -> None:
        """Say whether it does."""
        self.failed += not holds
        say(f"{'ok  ' if holds else 'FAIL'}  {what}")

    def code(self) -> int:
        """Return the exit code: 0 when all holds."""
        return 1 if self.failed else 0


def status(process: int | str, field: str) -> int:
    """Return a size in bytes from Linux's account of a process; 0 when it is gone."""
    try:
        told = Path(f"/proc/{process}/status").read_text("ascii", "replace")
    except OSError:
        return 0
    for line in told.splitlines():
        if line.startswith(field + ":"):
            return int(line.split()[1]) * 1024
    return 0


class Watched:
    """The most memory that this process, and any process below it, held."""

    def __init__(self) -> None:
        self.before = status(os.getpid(), "VmRSS")
        self.own = self.before
        self.child = 0
        self.most_children = 0

    def look(self) -> None:
        """Take the sizes of the moment."""
        self.own = max(self.own, status(os.getpid(), "VmRSS"))
        children = [status(each, "VmHWM") for each in below()]
        self.child = max([self.child, *children])
        self.most_children = max(self.most_children, len(children))


def below() -> list[str]:
    """Return the processes that this one started and that still run."""
    found: list[str] = []
    for task in Path("/proc/self/task").iterdir():
        try:
            found += (task / "children").read_text("ascii").split()
        except OSError:
            continue
    return found


@contextmanager
def watching(every: float = 0.05) -> Iterator[Watched]:
    """Look at the sizes again and again while the block runs."""
    watched, over = Watched(), threading.Event()

    def look() -> None:
        while not over.wait(every):
            watched.look()

    thread = threading.Thread(target=look, daemon=True)
    thread.start()
    try:
        yield watched
    finally:
        over.set()
        thread.join()
        watched.look()
