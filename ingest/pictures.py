"""Which pages OCR is to read, and what becomes of what it read: pure."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace

from assistant.library.types import OCR, TEXTLESS, Page, PageStatus
from ingest.readers.base import RawPage

WAY = "to have pictures read: pip install 'faultleaf[ocr]', then add it again"
"""Said where the extra is not installed."""
AGAIN = "to have pictures read: add it again with --ocr"
"""Said where it is, and was not to be used."""


def to_recognise(pages: Sequence[Page]) -> tuple[int, ...]:
    """Return the numbers of the pages whose text is missing or bad."""
    return tuple(page.number for page in pages if page.status in TEXTLESS)


def with_recognised(
    raw: Sequence[RawPage], read: Mapping[int, RawPage]
) -> list[RawPage]:
    """Return the pages of a file with what was recognised in place of what was bad."""
    return [_merged(page, read.get(page.number)) for page in raw]


def _merged(page: RawPage, read: RawPage | None) -> RawPage:
    if read is None or read.failure or not read.text.strip():
        return page
    return replace(
        page,
        text=read.text,
        failure="",
        prominent=(),
        tables=(),
        source=OCR,
        confidence=read.confidence,
    )


def with_reasons(
    pages: Sequence[Page], read: Mapping[int, RawPage]
) -> tuple[Page, ...]:
    """Return the pages, those that stay without text saying what OCR made of them."""
    return tuple(_told(page, read.get(page.number)) for page in pages)


def _told(page: Page, read: RawPage | None) -> Page:
    if read is None:
        return page
    if page.status is PageStatus.TEXT:
        return page
    said = read.failure or "OCR found no words on it"
    reason = f"{page.reason}; {said}" if page.reason else said
    return replace(page, reason=reason, source="", confidence=0.0)
