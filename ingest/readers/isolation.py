"""Runs a reader in a process of its own, so that no file can take us with it.

The process limits itself (memory, processor time), gives its pages one by one,
and is killed when it is silent too long. When it dies, the page in hand is
noted as lost and one more process goes on behind it. It dies with us.
"""

from __future__ import annotations

import json
import os
import queue
import signal
import subprocess
import sys
import threading
from collections.abc import Generator, Iterator
from pathlib import Path

from assistant.errors import InputError
from ingest.readers import wire
from ingest.readers.base import MAX_FILE_CHARACTERS, FileFacts, RawPage, Read
from ingest.readers.limits import Limits

MAX_LINE = 64_000_000
"""Bytes of one page on the pipe: five million characters, escaped, with room."""
_ROOT = Path(__file__).resolve().parents[2]


def read_file(
    path: Path,
    reader: str,
    *,
    password: str | None = None,
    limits: Limits | None = None,
) -> Iterator[Read]:
    """Read a file in another process: its facts, then every page of it.

    Parameters
    ----------
    path : Path
        The file.
    reader : str
        ``module:function`` of a `Reader`.
    password : str, optional
        Opens an encrypted file.
    limits : Limits, optional
        What the process may use.

    Raises
    ------
    InputError
        The file cannot be opened: encrypted, damaged, of another kind, or its
        reader died before the first page.
    """
    run = _Run(path, reader, password, limits or Limits())
    yield from run.items()


class _DiedError(Exception):
    """The process is gone without having said the end."""


class _Run:
    """One file's reading: one process, and one more if it dies."""

    def __init__(
        self, path: Path, reader: str, password: str | None, limits: Limits
    ) -> None:
        self.path = path
        self.reader = reader
        self.password = password
        self.limits = limits
        self.facts: FileFacts | None = None
        self.next = 1
        self.characters = 0

    def items(self) -> Iterator[Read]:
        try:
            yield from self._attempt()
        except _DiedError as death:
            if self.facts is None:
                raise InputError(
                    f"{self.path.name}: the reader gave up ({death})",
                    "open it in another program and print it to a new PDF",
                ) from death
            yield self._lost(str(death))
            yield from self._second()

    def _second(self) -> Iterator[Read]:
        if self._over():
            return
        try:
            yield from self._attempt()
        except (_DiedError, InputError) as death:
            while not self._over():
                yield self._lost(f"not reached: {death}")

    def _over(self) -> bool:
        return self.facts is None or self.next > self.facts.pages

    def _lost(self, reason: str) -> RawPage:
        page = RawPage(self.next, str(self.next), failure=reason)
        self.next += 1
        return page

    def _attempt(self) -> Generator[Read, None, None]:
        for item in _items(self):
            if isinstance(item, RawPage):
                self.next = item.number + 1
                yield self._within(item)
            elif self.facts is None:
                self.facts = item  # a second process tells them again
                yield item

    def _within(self, page: RawPage) -> RawPage:
        """Return the page, or its loss when the file holds too much text."""
        self.characters += len(page.text)
        if self.characters <= MAX_FILE_CHARACTERS:
            return page
        failure = f"more than {MAX_FILE_CHARACTERS} characters in one file"
        return RawPage(page.number, page.label, failure=failure)

    def request(self) -> bytes:
        """Return what the process is asked, as one line."""
        pages = self.facts.pages if self.facts else 0
        asked = {
            "path": str(self.path),
            "reader": self.reader,
            "first": self.next,
            "password": self.password,
            "memory": self.limits.memory,
            "seconds": self.limits.seconds(pages or 3_000),
        }
        return json.dumps(asked).encode("ascii") + b"\n"


def _items(run: _Run) -> Iterator[Read]:
    """Start a process and give what it gives; it never outlives this generator."""
    child = subprocess.Popen(
        [sys.executable, "-P", "-m", "ingest.readers.child"],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.DEVNULL,
        env=_environment(),
    )
    lines: queue.SimpleQueue[bytes] = queue.SimpleQueue()
    listener = threading.Thread(target=_listen, args=(child, lines), daemon=True)
    listener.start()
    overdue = threading.Event()
    timer = threading.Timer(run.limits.seconds(3_000), _overrun, (child, overdue))
    timer.daemon = True
    timer.start()
    try:
        _ask(child, run.request())
        yield from _received(child, lines, run.limits.page_seconds)
    except _DiedError:
        if overdue.is_set():
            raise _DiedError("the file took longer than it may") from None
        raise
    finally:
        timer.cancel()
        child.kill()
        child.wait()
        listener.join()
        for pipe in (child.stdin, child.stdout):
            if pipe is not None:
                pipe.close()


def _environment() -> dict[str, str]:
    """Let the child find this package first, wherever it was started from."""
    found = os.environ.get("PYTHONPATH")
    path = os.pathsep.join([str(_ROOT), *([found] if found else [])])
    return {**os.environ, "PYTHONPATH": path}


def _ask(child: subprocess.Popen[bytes], request: bytes) -> None:
    if child.stdin is None:
        return
    try:
        child.stdin.write(request)
        child.stdin.flush()
    except BrokenPipeError:
        return  # its end is told by the silence of its output


def _listen(child: subprocess.Popen[bytes], lines: queue.SimpleQueue[bytes]) -> None:
    """Hand over line by line; an empty one says that the pipe is closed."""
    if child.stdout is not None:
        while line := child.stdout.readline(MAX_LINE):
            lines.put(line)
    lines.put(b"")


def _overrun(child: subprocess.Popen[bytes], overdue: threading.Event) -> None:
    overdue.set()
    child.kill()


def _received(
    child: subprocess.Popen[bytes], lines: queue.SimpleQueue[bytes], seconds: float
) -> Iterator[Read]:
    while True:
        try:
            line = lines.get(timeout=seconds)
        except queue.Empty:
            raise _DiedError(f"no page within {seconds:g} s") from None
        if not line.endswith(b"\n"):
            raise _DiedError(_how_it_ended(child))
        item = wire.decode(line)
        if item is None:
            return
        yield item


def _how_it_ended(child: subprocess.Popen[bytes]) -> str:
    try:
        code = child.wait(timeout=5)
    except subprocess.TimeoutExpired:
        return "gave more than a page may hold"
    if code == -getattr(signal, "SIGXCPU", 0):
        return "used more processor time than a file may"
    if code < 0:
        return f"killed by signal {-code} ({signal.Signals(-code).name})"
    return f"ended with code {code}"
