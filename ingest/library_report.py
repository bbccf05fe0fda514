"""What the library covers, document by document."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.library.texts import embedded_text
from assistant.library.types import OCR, TEXTLESS, Document, Page, PageStatus
from ingest.quality import remedies

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore

KINDS = ("text", "table", "OCR", "picture only", "blank", "unreadable")
"""How a page was read; a page of text with a table on it is a table."""


@dataclass(frozen=True, slots=True)
class Coverage:
    """How well one document can be searched."""

    document: Document
    pages: Mapping[PageStatus, int]
    passages: int
    longest: int | None
    """Tokens of its longest passage with all around it; None without a counter."""
    lost: Mapping[int, str]
    """Physical page to the reason why it cannot be searched."""
    kinds: Mapping[int, str]
    """Physical page to how it was read, one of `KINDS`."""
    remedies: Mapping[str, tuple[int, ...]]
    """What can be done about pages that are lost or doubtful, and about which."""

    @property
    def counts(self) -> dict[str, int]:
        """Pages of each kind there is, in the order of `KINDS`."""
        found = Counter(self.kinds.values())
        return {kind: found[kind] for kind in KINDS if found[kind]}


def coverage(
    store: LibraryStore, count: Callable[[str], int] | None = None
) -> tuple[Coverage, ...]:
    """Return the coverage of every document, by path."""
    return tuple(cover_one(store, document, count) for document in store.documents())


def kind_of(page: Page, *, tabled: bool) -> str:
    """Return how a page was read, one of `KINDS`.

    Parameters
    ----------
    page : Page
        As stored.
    tabled : bool
        Whether rows of a table stand on it.
    """
    if page.status is PageStatus.PICTURE:
        return "picture only"
    if page.status is not PageStatus.TEXT:
        return page.status.value
    if page.source == OCR:
        return "OCR"
    return "table" if tabled else "text"


def cover_one(
    store: LibraryStore, document: Document, count: Callable[[str], int] | None = None
) -> Coverage:
    """Return the coverage of one document; `count` counts the tokens of a text."""
    pages = store.pages(document.sha256)
    stored = store.passages(document.sha256)
    longest = None
    if count is not None:
        texts = (embedded_text(each.passage) for each in stored)
        longest = max(map(count, texts), default=0)
    lost = {page.number: page.reason for page in pages if page.status in TEXTLESS}
    statuses = Counter(page.status for page in pages)
    tabled = {row.page for row in store.table_rows(document.sha256)}
    kinds = {page.number: kind_of(page, tabled=page.number in tabled) for page in pages}
    return Coverage(
        document, statuses, len(stored), longest, lost, kinds, remedies(pages)
    )
