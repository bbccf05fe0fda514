"""The real program on a pseudo-terminal: what it writes, and when."""

from __future__ import annotations

import fcntl
import os
import pty
import select
import struct
import subprocess
import sys
import termios
import time
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType

ROOT = Path(__file__).parents[1]


class OnTerminal:
    """The program with a terminal of its own; use as a context manager.

    `words` are what Python runs; by themselves the program.
    """

    def __init__(
        self,
        environment: dict[str, str],
        width: int,
        height: int,
        words: Sequence[str] = ("-m", "tui"),
    ) -> None:
        self._words = words
        self._environment = {**os.environ, "PYTHONPATH": str(ROOT), **environment}
        self._environment["TERM"] = "xterm-256color"
        self._size = struct.pack("HHHH", height, width, 0, 0)
        self.written = b""

    def __enter__(self) -> OnTerminal:
        self._ours, theirs = pty.openpty()
        fcntl.ioctl(theirs, termios.TIOCSWINSZ, self._size)
        self.began = time.perf_counter()
        self.child = subprocess.Popen(
            [sys.executable, *self._words],
            cwd=ROOT,
            env=self._environment,
            stdin=theirs,
            stdout=theirs,
            stderr=theirs,
            start_new_session=True,
        )
        os.close(theirs)
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.child.kill()
        self.child.wait()
        os.close(self._ours)

    def read(self, seconds: float) -> bytes:
        """Return what is written within some seconds; empty when nothing is."""
        if not select.select([self._ours], [], [], max(0.0, seconds))[0]:
            return b""
        try:
            got = os.read(self._ours, 65536)
        except OSError:
            return b""
        self.written += got
        return got

    def wait_for(self, text: bytes, seconds: float = 60.0) -> float:
        """Read until a text was written; return the seconds since the start."""
        ends = time.perf_counter() + seconds
        while text not in self.written:
            if time.perf_counter() > ends:
                raise AssertionError(f"{text!r} never came: {self.written[-2000:]!r}")
            self.read(0.05)
        return time.perf_counter() - self.began

    def quiet(self, for_seconds: float = 1.0, most: float = 60.0) -> None:
        """Read until nothing is written for some seconds."""
        ends = time.perf_counter() + most
        while self.read(for_seconds) and time.perf_counter() < ends:
            pass

    def bytes_within(self, seconds: float) -> int:
        """Return how many bytes are written within some seconds."""
        ends = time.perf_counter() + seconds
        count = 0
        while (left := ends - time.perf_counter()) > 0:
            count += len(self.read(left))
        return count

    def send(self, keys: bytes) -> None:
        """Press keys."""
        os.write(self._ours, keys)

    def key_to_paint(self, key: bytes) -> float:
        """Press a key that is shown; return the seconds until something is."""
        while self.read(0):
            pass
        began = time.perf_counter()
        self.send(key)
        while not self.read(1.0):
            if time.perf_counter() - began > 5:
                raise AssertionError("a key was never shown")
        return time.perf_counter() - began

    def leave(self, keys: bytes, most: float = 20.0) -> float:
        """Press keys that leave; return the seconds until the program has ended."""
        began = time.perf_counter()
        self.send(keys)
        while self.child.poll() is None:
            self.read(0.02)
            if time.perf_counter() - began > most:
                raise AssertionError("it did not end")
        return time.perf_counter() - began
