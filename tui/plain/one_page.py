"""One page of the library as text: what is stored, and what the file itself gives."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.errors import InputError
from tui.plain.places import page_words
from tui.plain.text import wrap, wrap_kept

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore
    from assistant.library.types import Document, Page

INDENT = "    "


@dataclass(frozen=True, slots=True)
class PageSheet:
    """A page with all that was kept of it."""

    document: str
    document_id: str
    page: int
    label: str
    status: str
    reason: str
    source: str
    text: str
    raw: str
    """The text before it was repaired, where that changed more than white space."""


def page_of(store: LibraryStore, document: Document, number: int) -> PageSheet:
    """Return a page by its physical number.

    Raises
    ------
    InputError
        The document has no such page.
    """
    pages = store.pages(document.sha256)
    found: Page | None = next((each for each in pages if each.number == number), None)
    if found is None:
        raise InputError(
            f"{document.path} has no page {number}",
            f"its pages are 1 to {len(pages)}, counted in the file",
        )
    return PageSheet(
        document.path,
        document.document_id,
        found.number,
        found.label,
        found.status.value,
        found.reason,
        found.source,
        found.text,
        found.raw,
    )


def page_lines(sheet: PageSheet, width: int) -> Iterator[str]:
    """Give the page as lines; its raw text after it, where that differs."""
    place = page_words(sheet.page, sheet.label, sheet.source)
    yield from wrap(f"{sheet.document} ({sheet.document_id}), {place}", width)
    if sheet.reason:
        yield from wrap(f"{sheet.status}: {sheet.reason}", width, "  ")
    yield from _kept(sheet.text or "no text", width)
    if sheet.raw:
        yield ""
        yield from wrap("Before its repair, as the file gives it:", width)
        yield from _kept(sheet.raw, width)


def _kept(text: str, width: int) -> Iterator[str]:
    for line in text.split("\n"):
        yield from wrap_kept(line, width, INDENT)
