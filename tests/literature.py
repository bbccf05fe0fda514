"""Small invented documents for tests of the library."""

from __future__ import annotations

import hashlib

from assistant.library.store import LibraryStore
from assistant.library.types import Document, Page, PageStatus, Passage


def document(path: str, *, title: str = "", **more: object) -> Document:
    """Return a document whose identity follows from its path."""
    sha256 = hashlib.sha256(path.encode()).hexdigest()
    return Document(sha256=sha256, path=path, title=title or path, **more)  # type: ignore[arg-type]


def page(number: int, text: str, status: PageStatus = PageStatus.TEXT) -> Page:
    """Return a page that is labelled as it is numbered."""
    return Page(number, str(number), status, text)


def whole(number: int, text: str, section: str = "", lead: str = "") -> Passage:
    """Return the passage that is all of a page's text."""
    return Passage(number, 0, len(text), text, section, lead)


def put(store: LibraryStore, about: Document, *texts: str) -> None:
    """Store a document with one passage on each page."""
    pages = [page(number, text) for number, text in enumerate(texts, start=1)]
    passages = [whole(each.number, each.text) for each in pages]
    store.add_document(about, pages, passages)
