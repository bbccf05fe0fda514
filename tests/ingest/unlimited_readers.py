"""A reader on a system that takes no limit on memory."""

# ruff: noqa: ARG001 - every reader takes the same three arguments

from __future__ import annotations

import resource
import threading
from collections.abc import Iterator
from pathlib import Path

from ingest.readers.base import FileFacts, RawPage, Read

_set = resource.setrlimit


def _but_not_memory(name: int, values: tuple[int, int]) -> None:
    if name != resource.RLIMIT_AS:
        _set(name, values)


resource.setrlimit = _but_not_memory


def hoard(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Fill more memory than the limit, then wait."""
    yield FileFacts(1)
    held = bytearray(b"x") * 150_000_000
    threading.Event().wait()
    yield RawPage(1, "1", str(len(held)))
