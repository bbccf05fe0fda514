"""A library with one page of one document, and a draft of it in a folder."""

from __future__ import annotations

import hashlib
from datetime import UTC, datetime
from pathlib import Path

from assistant.library.store import LibraryStore
from assistant.library.types import Document, Page, PageStatus
from assistant.record import Scope
from ingest.drafts.folder import write_draft
from ingest.drafts.make import draft_document
from tests.drafted import page_with

NOW = datetime(2031, 4, 2, 10, 0, tzinfo=UTC)
TITLE = "Ulvetarn Service Sheet US-12"
FLASHES = (
    ("Flashes", "Meaning"),
    [
        ("1", "Coil sensor open"),
        ("2", "Discharge sensor open"),
        ("", "Outdoor fan blocked"),
        ("4", "Overcurrent fault"),
    ],
)
CURVE = (
    ("°C", "RT3 kohm"),
    [("0", "168"), ("10", "101"), ("20", "62.7"), ("30", "40.2"), ("40", "62.5")],
)
LINES = (
    "Faults shown by red lamp LD3, every 8 seconds",
    FLASHES,
    "Resistance of the discharge sensor RT3",
    CURVE,
    "After every stop the compressor stays off for at least 5 minutes.",
)


def stock(store: LibraryStore, *, scopes: bool = True, ocr: bool = False) -> str:
    """Put the sheet into a library and return its path there."""
    page, rows = page_with(*LINES, number=1)
    stored = Page(
        1, "", PageStatus.TEXT, page.text, source="ocr" if ocr else "", confidence=0.9
    )
    document = Document(
        sha256=hashlib.sha256(page.text.encode()).hexdigest(),
        path="us-12.pdf",
        title=TITLE,
        revision="1",
        applies_to=(Scope(models=("ULO-20", "ULO-28")),) if scopes else (),
    )
    store.add_document(document, [stored], [], rows)
    return document.path


def draft_in(folder: Path, store: LibraryStore, *, scopes: bool = True) -> Path:
    """Write the draft of the sheet below `folder` and return its folder."""
    made = draft_document(stock(store, scopes=scopes), store)
    write_draft(made, folder / "us-draft")
    return folder / "us-draft"
