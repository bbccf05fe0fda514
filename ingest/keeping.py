"""A document goes in: in place of its earlier state, with what is said of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from assistant.library.sayings import (
    LASTING,
    Earlier,
    Origin,
    Proposal,
    Saying,
    sayings_of,
)
from assistant.library.types import Document
from ingest.applies import proposals
from ingest.assemble import Prepared

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore


@dataclass(frozen=True, slots=True)
class Kept:
    """A document as it stands after it went in."""

    document: Document
    lapsed: tuple[str, ...] = ()
    """What a person said of its earlier state only, word by word."""


def keep(
    store: LibraryStore, ready: Prepared, path: str, replaced: Document | None
) -> Kept:
    """Store a document in the caller's transaction.

    What a person said of a file's earlier state stays where it holds for the next
    one too: title, maker, kind and number; the units it is for only where the pages
    still name the same ones. Revision, date and what it supersedes are read anew.

    Parameters
    ----------
    store : LibraryStore
        The open library, in a transaction.
    ready : Prepared
        What was read.
    path : str
        As the library will know it.
    replaced : Document or None
        The earlier state; of the same sha256 where the same file was read again.
    """
    document = replace(ready.document, path=path)
    proposed = proposals(ready.pages, ready.rows)
    lasting: list[Saying] = []
    lapsed: list[str] = []
    states: tuple[Earlier, ...] = ()
    if replaced is not None:
        states = _states(store, replaced, document)
        for saying in store.said(replaced.sha256):
            if saying.source is not Origin.PERSON:
                continue
            stays = saying.field in LASTING and (
                saying.field != "applies_to"
                or _same(proposed, store.proposals(replaced.sha256))
            )
            if stays or replaced.sha256 == document.sha256:
                lasting.append(saying)
            else:
                lapsed.append(saying.field.replace("_", " "))
        if replaced.sha256 != document.sha256:
            lapsed += [
                f"superseded by {each.path}"
                for each in store.documents()
                if replaced.document_id in each.supersedes
            ]
    store.add_document(
        document,
        ready.pages,
        ready.passages,
        ready.rows,
        replaces=replaced.sha256 if replaced else "",
    )
    store.put_earlier(document.sha256, states)
    store.put_proposals(document.sha256, proposed)
    sayings = [*sayings_of(document, ready.sources), *lasting]
    return Kept(store.put_said(document.sha256, sayings), tuple(lapsed))


def _states(
    store: LibraryStore, replaced: Document, document: Document
) -> tuple[Earlier, ...]:
    known = store.earlier(replaced.sha256)
    if replaced.sha256 == document.sha256:
        return known
    last = Earlier(replaced.sha256, replaced.title, replaced.revision, replaced.date)
    return (*known, last)


def _same(some: Sequence[Proposal], others: Sequence[Proposal]) -> bool:
    return {each.scope for each in some} == {each.scope for each in others}
