"""Readers that misbehave, for the tests of the process that runs them."""

# ruff: noqa: ARG001 - every reader takes the same three arguments

from __future__ import annotations

import os
import signal
import sys
import threading
from collections.abc import Iterator
from pathlib import Path

from ingest.readers.base import FileFacts, RawPage, Read


def hang(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Fall silent after the first page."""
    yield FileFacts(3)
    for number in range(first, 4):
        if number == 2:
            threading.Event().wait()
        yield RawPage(number, str(number), f"page {number}")


def die_on_two(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Be killed over page 2 of 4."""
    yield FileFacts(4)
    for number in range(first, 5):
        if number == 2:
            os.kill(os.getpid(), signal.SIGSEGV)
        yield RawPage(number, str(number), f"page {number}")


def die_always(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Be killed over every page."""
    yield FileFacts(4)
    os.kill(os.getpid(), signal.SIGSEGV)


def die_on_even(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Be killed over every second page of 6."""
    yield FileFacts(6)
    for number in range(first, 7):
        if number % 2 == 0:
            os.kill(os.getpid(), signal.SIGSEGV)
        yield RawPage(number, str(number), f"page {number}")


def hardy(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Read what the others die of."""
    yield FileFacts(6)
    for number in range(first, 7):
        yield RawPage(number, str(number), f"plain {number}")


def die_on_four(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Read plainly, but be killed over page 4 of 6."""
    for item in hardy(path, first, password):
        if isinstance(item, RawPage) and item.number == 4:
            os.kill(os.getpid(), signal.SIGSEGV)
        yield item


def die_behind_the_last(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Give everything, then be killed before the end is said."""
    yield FileFacts(1)
    yield RawPage(1, "1", "page 1")
    os.kill(os.getpid(), signal.SIGKILL)


def leave_quietly(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """End without a word, and with a code that looks well."""
    yield FileFacts(2)
    os._exit(0)


def skip(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Leave out a page."""
    yield FileFacts(3)
    yield RawPage(3, "3", "page 3")


def babble(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Give a page that is none."""
    yield FileFacts(1)
    yield RawPage("one", "1", 1)  # type: ignore[arg-type]


def slow(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Take a while over each of three pages."""
    yield FileFacts(3)
    for number in range(first, 4):
        threading.Event().wait(0.1)
        yield RawPage(number, str(number), f"{path.name} {number}")


def die_at_once(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Be killed before anything is told."""
    os.kill(os.getpid(), signal.SIGABRT)
    yield FileFacts(1)


def eat_memory(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Ask for more memory than the limit."""
    yield FileFacts(1)
    yield RawPage(1, "1", str(len(bytearray(3 << 30))))


def spin(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Use processor time without end."""
    yield FileFacts(1)
    while True:
        pass


def write_much(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Try to fill the disk."""
    yield FileFacts(1)
    path.with_suffix(".written").write_bytes(b"x" * 100)
    yield RawPage(1, "1", "written")


def chatter(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Print on both outputs, as libraries do."""
    print("noise")  # noqa: T201
    os.write(2, b"noise")
    yield FileFacts(1)
    print('{"page": 1}', flush=True)  # noqa: T201
    sys.stderr.write("noise")
    yield RawPage(1, "1", "quiet")


def tell_pid(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Give the own process id, then wait for ever."""
    yield FileFacts(2)
    yield RawPage(1, "1", str(os.getpid()))
    threading.Event().wait()
