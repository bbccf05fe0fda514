"""The library as the pure core sees it, and a search's outcome as an event."""

from __future__ import annotations

from assistant.dialogue.knowledge import Knowledge
from assistant.jobs.events import Found, FoundHit
from assistant.library.store import LibraryStore
from assistant.library.types import SearchResult
from assistant.rules.applicability import Plate
from assistant.rules.stored import read_stored


def knowledge_of(library: LibraryStore | None) -> Knowledge:
    """Read packs, documents and the page labels that packs cite."""
    if library is None:
        return Knowledge()
    documents = library.documents()
    packs = tuple(read_stored(pack.payload) for pack in library.packs())
    labels = {
        (document.document_id, page.number): page.label
        for document in documents
        for page in library.pages(document.sha256)
    }
    return Knowledge(
        packs=packs,
        documents=tuple(documents),
        labels=labels,
        recognised=library.recognised(),
    )


def found_body(query: str, plate: Plate, result: SearchResult) -> Found:
    """Keep a search's outcome as an event."""
    return Found(
        query=query,
        filter=" ".join(plate.model_dump(exclude_none=True).values()),
        hits=tuple(
            FoundHit(
                document=hit.document,
                document_id=hit.document_id,
                title=hit.title,
                revision=hit.revision,
                page=hit.page,
                label=hit.label,
                section=hit.section,
                text=hit.text,
                score=hit.score,
                unit_match=hit.unit_match,
                read_by=hit.read_by,
            )
            for hit in (result.hits if result.found else ())
        ),
        reason=result.reason,
        searched=result.searched,
        unreadable=dict(result.unreadable),
    )
