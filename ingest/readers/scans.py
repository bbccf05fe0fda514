"""Has single pages of a file recognised, in a process with limits of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path

from assistant.errors import InputError
from ingest.readers import ocr
from ingest.readers.base import RawPage
from ingest.readers.limits import Limits
from ingest.readers.process import DiedError, Process

LIMITS = Limits(
    memory=5 << 29,  # 2.5 GiB: models and pictures took 0.7 to 1.2 GB
    page_seconds=180.0,  # 3 s on two free cores; the first page loads the models
    file_seconds=600.0,
    seconds_a_page=30.0,
)
DEATHS = 2
"""So many pages may end the process; after them the rest is left."""


def recognise(
    path: Path,
    pages: Sequence[int],
    password: str | None = None,
    *,
    reader: str = ocr.READER,
    limits: Limits = LIMITS,
) -> Iterator[RawPage]:
    """Give each of the pages as it was recognised, or with the reason why not.

    Parameters
    ----------
    path : Path
        A PDF.
    pages : sequence of int
        Physical numbers, from 1.
    password : str, optional
        Opens an encrypted file.
    reader : str
        ``module:function``; takes the pages beside what a `Reader` takes.
    limits : Limits
        What the process may use.
    """
    left = sorted(set(pages))
    reason = "not given"
    for _ in range(DEATHS):
        request = _request(path, left, password, reader, limits)
        try:
            yield from _given(Process(request, limits), left)
        except (DiedError, InputError) as fault:
            reason = str(fault)
        if not left:
            return
        yield _lost(left.pop(0), reason)
    for number in left:
        yield _lost(number, reason)


def _request(
    path: Path, pages: Sequence[int], password: str | None, reader: str, limits: Limits
) -> dict[str, object]:
    return {
        "path": str(path),
        "reader": reader,
        "plain": "",
        "first": 1,
        "plain_until": 0,
        "pages": list(pages),
        "password": password,
        "memory": limits.memory,
        "seconds": limits.seconds(len(pages)),
    }


def _given(process: Process, left: list[int]) -> Iterator[RawPage]:
    """Give what the process gives of the pages that are left."""
    for item in process.items():
        if isinstance(item, RawPage) and item.number in left:
            left.remove(item.number)
            yield item


def _lost(number: int, reason: str) -> RawPage:
    return RawPage(number, str(number), failure=f"OCR gave it up: {reason}")
