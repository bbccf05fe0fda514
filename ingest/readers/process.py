"""One reading process: started, asked, listened to, watched, and ended.

It limits itself; this side ends it when it is silent too long, takes longer than a
file may, or holds more memory than it may where the system does not see to that.
"""

from __future__ import annotations

import json
import os
import queue
import signal
import subprocess
import sys
import threading
from collections.abc import Iterator, Mapping
from pathlib import Path

from ingest.readers import wire
from ingest.readers.base import Read
from ingest.readers.limits import Limits
from ingest.readers.memory import resident

MAX_LINE = 64_000_000
"""Bytes of one page on the pipe: five million characters, escaped, with room."""
WAITING = 32
"""Lines that wait for whoever listens; behind them the process itself waits."""
TICK = 0.1 if sys.platform == "linux" else 0.5
"""Seconds between two looks at the process."""
_ROOT = Path(__file__).resolve().parents[2]


class DiedError(Exception):
    """The process is gone without having said the end."""


class Process:
    """A reader at work on one file. Call `items` once; `stop` from anywhere.

    Parameters
    ----------
    request : mapping
        What it is asked, as `ingest.readers.child` takes it.
    limits : Limits
        What this side watches: silence, time, memory.
    """

    def __init__(self, request: Mapping[str, object], limits: Limits) -> None:
        self.peak = 0
        """The most memory it was seen to hold, in bytes."""
        self._limits = limits
        self._lines: queue.Queue[bytes] = queue.Queue(WAITING)
        self._over = threading.Event()
        self._ended_for = ""
        self._child = subprocess.Popen(
            [sys.executable, "-P", "-m", "ingest.readers.child"],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.DEVNULL,
            env=_environment(),
            # Ctrl-C is ours to hear; the process ends with its pipe.
            start_new_session=True,
        )
        self._threads = [
            threading.Thread(target=target, daemon=True)
            for target in (self._listen, self._watch)
        ]
        for thread in self._threads:
            thread.start()
        self._ask(json.dumps(request).encode("ascii") + b"\n")

    def items(self) -> Iterator[Read]:
        """Give what it gives; it never outlives this generator.

        Raises
        ------
        DiedError
            It ended, or was ended, before the end of the file.
        InputError
            It refused the file.
        """
        try:
            yield from self._received()
        finally:
            self._close()

    def stop(self) -> None:
        """End it at once."""
        self._child.kill()

    def _ask(self, request: bytes) -> None:
        if self._child.stdin is None:
            return
        try:
            self._child.stdin.write(request)
            self._child.stdin.flush()
        except BrokenPipeError:
            return  # its end is told by the silence of its output

    def _received(self) -> Iterator[Read]:
        seconds = self._limits.page_seconds
        while True:
            try:
                line = self._lines.get(timeout=seconds)
            except queue.Empty:
                raise DiedError(f"no page within {seconds:g} s") from None
            if not line.endswith(b"\n"):
                raise DiedError(self._how_it_ended())
            try:
                item = wire.decode(line)
            except ValueError as fault:
                raise DiedError(f"gave {fault}") from fault
            if isinstance(item, wire.End):
                self.peak = max(self.peak, item.peak)
                return
            yield item

    def _listen(self) -> None:
        """Hand over line by line; an empty one says that the pipe is closed."""
        out = self._child.stdout
        while out is not None and (line := out.readline(MAX_LINE)):
            if not self._hand_over(line):
                return
        self._hand_over(b"")

    def _hand_over(self, line: bytes) -> bool:
        while not self._over.is_set():
            try:
                self._lines.put(line, timeout=TICK)
            except queue.Full:
                continue
            return True
        return False

    def _watch(self) -> None:
        left = float(self._limits.seconds(3_000))
        while not self._over.wait(TICK):
            self.peak = max(self.peak, resident(self._child.pid))
            if self.peak > self._limits.memory:
                self._end("used more memory than a reader may")
            # While nobody takes its pages it waits, and its time stands still.
            left -= 0.0 if self._lines.full() else TICK
            if left <= 0:
                self._end("the file took longer than it may")

    def _end(self, reason: str) -> None:
        self._ended_for = self._ended_for or reason
        self._child.kill()

    def _close(self) -> None:
        self._over.set()
        self._child.kill()
        self._child.wait()
        for thread in self._threads:
            thread.join()
        for pipe in (self._child.stdin, self._child.stdout):
            if pipe is not None:
                pipe.close()

    def _how_it_ended(self) -> str:
        try:
            code = self._child.wait(timeout=5)
        except subprocess.TimeoutExpired:
            return "gave more than a page may hold"
        return self._ended_for or ending(code)


def ending(code: int) -> str:
    """Say in words what an exit code means.

    Examples
    --------
    >>> ending(-9)
    'killed by signal 9 (SIGKILL)'
    >>> ending(1)
    'ended with code 1'
    """
    if code == -getattr(signal, "SIGXCPU", 0):
        return "used more processor time than a file may"
    if code < 0:
        known = {each.value: f" ({each.name})" for each in signal.Signals}
        return f"killed by signal {-code}{known.get(-code, '')}"
    return f"ended with code {code}"


def _environment() -> dict[str, str]:
    """Let the child find this package first, wherever it was started from."""
    found = os.environ.get("PYTHONPATH")
    path = os.pathsep.join([str(_ROOT), *([found] if found else [])])
    return {**os.environ, "PYTHONPATH": path}
