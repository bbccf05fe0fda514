"""pypdf's own text, and nothing else: what the reading of PDF is measured beside."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from pypdf import PdfReader

from ingest.readers.base import FileFacts, RawPage, Read

BARE = "tests.evaluation.bare_text:read_bare"


def read_bare(path: Path, first: int, password: str | None) -> Iterator[Read]:
    """Give `extract_text` of every page."""
    reader = PdfReader(path, password=password)
    yield FileFacts(len(reader.pages))
    for number in range(first, len(reader.pages) + 1):
        yield RawPage(number, str(number), reader.pages[number - 1].extract_text())
