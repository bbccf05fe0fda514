"""Readers of single pages that misbehave, for the process that recognises pictures."""

from __future__ import annotations

import os
from collections.abc import Iterator, Sequence
from pathlib import Path

from ingest.readers.base import FileFacts, RawPage, Read


def dies_at_four(
    path: Path, first: int, password: str | None, pages: Sequence[int] = ()
) -> Iterator[Read]:
    """End without a word at page 4."""
    del path, password
    yield FileFacts(9)
    for number in pages:
        if number == 4:
            os._exit(3)
        if number >= first:
            yield RawPage(number, str(number), f"page {number}")
