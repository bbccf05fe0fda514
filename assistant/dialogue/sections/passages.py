"""Passages found, verbatim, with their pages."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.dialogue.answer import (
    SourceRef,
    Statement,
)
from assistant.dialogue.view import View
from assistant.jobs.events import FoundHit
from assistant.library.types import OCR

PASSAGES_SHOWN = 3


def passage_lines(view: View, most: int = PASSAGES_SHOWN) -> Iterator[Statement]:
    """Show the passages found, verbatim, with their pages."""
    found = view.state.found
    for hit in found.hits[:most] if found else ():
        yield Statement(text=hit.text, basis="passage", sources=(source_of(hit),))


def source_of(hit: FoundHit) -> SourceRef:
    """Cite a passage that was found."""
    return SourceRef(
        document=hit.document,
        document_id=hit.document_id,
        title=hit.title,
        revision=hit.revision,
        page=hit.page,
        label=hit.label,
        quote=hit.text,
        read_by="ocr" if hit.read_by == OCR else "",
    )
