"""Drafts a document of the library: its pages and tables in, a draft out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from assistant.errors import InputError
from assistant.library.store import LibraryStore
from assistant.library.types import OCR, Document, Page
from assistant.record import Scope
from ingest.drafts.gather import draft_rows
from ingest.drafts.model import Draft, DraftHead, PageView
from ingest.drafts.words import slug

_WORDS_IN_NAME = 6
_ASK = "faultleaf library lists what is there"


def draft_document(name: str, store: LibraryStore) -> Draft:
    """Return everything in a document that looks like a rule.

    Raises
    ------
    InputError
        The library has no such document, or several of that name.
    """
    document = store.document(name)
    if document is None:
        raise InputError(f"no document {name!r} is in the library", _ASK)
    pages = [_view(page) for page in store.pages(document.sha256)]
    rows = draft_rows(pages, store.table_rows(document.sha256))
    return Draft(_head(document, store), tuple(rows))


def _view(page: Page) -> PageView:
    ocr = page.source == OCR
    return PageView(page.number, page.text, ocr, page.confidence if ocr else 1.0)


def _head(document: Document, store: LibraryStore) -> DraftHead:
    said = {
        "title": document.title,
        "revision": document.revision,
        "sha256": document.sha256,
        "maker": document.maker,
        "kind": document.kind,
        "date": document.date,
    }
    scopes = document.applies_to
    doubts: dict[str, str] = {}
    if not scopes:
        proposed = store.proposals(document.sha256)
        scopes = tuple(dict.fromkeys(each.scope for each in proposed))
        places = "; ".join(
            dict.fromkeys(f"p. {each.page}: {each.quote}" for each in proposed)
        )
        doubts["applies_to"] = (
            f"read from the pages and not yet confirmed ({places})"
            if scopes
            else "for which models it is does not stand on its first pages"
        )
    if not document.revision:
        doubts["revision"] = "the document does not say which revision it is"
    kept = {key: value for key, value in said.items() if value}
    return DraftHead(
        slug(document.title, _WORDS_IN_NAME) or document.document_id,
        document.title,
        {"title": document.title, "revision": document.revision, **kept},
        tuple(_written(scope) for scope in scopes),
        doubts,
    )


def _written(scope: Scope) -> Mapping[str, Any]:
    return scope.model_dump(mode="json", exclude_defaults=True)
