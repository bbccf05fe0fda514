"""What the library covers, document by document."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Protocol

from assistant.library.texts import embedded_text
from assistant.library.types import Document, Page, PageStatus, StoredPassage


class Reader(Protocol):
    """What a report asks of the library."""

    def documents(self) -> tuple[Document, ...]:
        """Return every document, by path."""
        ...

    def pages(self, sha256: str) -> tuple[Page, ...]:
        """Return a document's pages."""
        ...

    def passages(
        self, sha256: str = "", *, ids: Sequence[int] = ()
    ) -> tuple[StoredPassage, ...]:
        """Return a document's passages."""
        ...


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


def coverage(
    store: Reader, count: Callable[[str], int] | None = None
) -> tuple[Coverage, ...]:
    """Return the coverage of every document, by path."""
    return tuple(_one(store, document, count) for document in store.documents())


def _one(
    store: Reader, document: Document, count: Callable[[str], int] | None
) -> Coverage:
    pages = store.pages(document.sha256)
    stored = store.passages(document.sha256)
    longest = None
    if count is not None:
        texts = (embedded_text(each.passage) for each in stored)
        longest = max(map(count, texts), default=0)
    lost = {
        page.number: page.reason
        for page in pages
        if page.status in (PageStatus.PICTURE, PageStatus.UNREADABLE)
    }
    statuses = Counter(page.status for page in pages)
    return Coverage(document, statuses, len(stored), longest, lost)
