"""The pages of the sample literature as they are read into a library; none is built."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from assistant.rules.kinds import PackDocument
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.isolation import read_file
from ingest.readers.sniff import PDF

LITERATURE = Path(__file__).parents[1] / "kb_samples" / "literature"


@cache
def documents() -> dict[str, tuple[str, ...]]:
    """Return the pages of every document by its title, white space folded."""
    found: dict[str, tuple[str, ...]] = {}
    for path in sorted(LITERATURE.iterdir()):
        if path.suffix == ".pdf":
            facts, *pages = read_file(path, PDF)
            title = facts.title if isinstance(facts, FileFacts) else None
            texts = [page.text for page in pages if isinstance(page, RawPage)]
        else:
            texts = [path.read_text(encoding="utf-8")]
            title = texts[0].splitlines()[0]
        if title:
            found.setdefault(title, tuple(" ".join(text.split()) for text in texts))
    return found


def page_text(document: PackDocument, page: int) -> str | None:
    """Return the text of a page of the document that a pack names, or None."""
    pages = documents().get(document.title, ())
    return pages[page - 1] if 1 <= page <= len(pages) else None
