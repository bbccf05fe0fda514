"""Makes of a file's raw pages what the library stores: pure."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath

from assistant.library.types import Document, Page, PageStatus, Passage, TableRow
from ingest.blocks import Carried, lines_of
from ingest.cleaning import clean
from ingest.headings import Look, headings
from ingest.identify import identify
from ingest.labels import printed_labels
from ingest.passages import passages
from ingest.quality import judge
from ingest.readers.base import FileFacts, RawPage
from ingest.running import running_lines
from ingest.tables import table_rows


@dataclass(frozen=True, slots=True)
class Prepared:
    """A document as it goes into the library."""

    document: Document
    pages: tuple[Page, ...]
    passages: tuple[Passage, ...]
    rows: tuple[TableRow, ...]


def prepare(
    sha256: str,
    path: str,
    facts: FileFacts,
    raw: Sequence[RawPage],
    count: Callable[[str], int],
) -> Prepared:
    """Clean, judge, cut and name a document.

    Parameters
    ----------
    sha256, path : str
        Identity, and place below the added folder.
    facts : FileFacts
        What the file says of itself.
    raw : sequence of RawPage
        Every page, in order.
    count : callable
        Tokens of a text, special tokens included.
    """
    texts = clean([page.text for page in raw])
    running = running_lines(texts)
    labels = printed_labels([page.label for page in raw], texts, running)
    pages = tuple(
        _page(page, label, text, lines)
        for page, label, text, lines in zip(raw, labels, texts, running, strict=True)
    )
    cover = raw[0].prominent if raw else ()
    identity = identify(facts, texts, cover, PurePosixPath(path).stem)
    document = Document(
        sha256=sha256,
        path=path,
        title=identity.title,
        maker=identity.maker,
        kind=identity.kind,
        revision=identity.revision,
        date=identity.date,
        supersedes=identity.supersedes,
    )
    cut, rows = _cut(facts, raw, pages, running, count)
    return Prepared(document, pages, cut, rows)


def _page(raw: RawPage, label: str, text: str, running: frozenset[int]) -> Page:
    if raw.failure:
        return Page(raw.number, label, PageStatus.UNREADABLE, "", raw.failure)
    status, reason = judge(text, running, drawn=raw.drawn)
    return Page(raw.number, label, status, text, reason)


def _cut(
    facts: FileFacts,
    raw: Sequence[RawPage],
    pages: Sequence[Page],
    running: Sequence[frozenset[int]],
    count: Callable[[str], int],
) -> tuple[tuple[Passage, ...], tuple[TableRow, ...]]:
    styled = any(page.prominent for page in raw)
    carried = Carried()
    found: list[Passage] = []
    rows: list[TableRow] = []
    for source, page, lines in zip(raw, pages, running, strict=True):
        if page.status is not PageStatus.TEXT:
            continue
        marked = tuple(title for title, at in facts.outline if at == page.number)
        heads = headings(
            page.text, lines, Look(source.prominent, marked), styled=styled
        )
        kept, carried = lines_of(page.text, lines, heads, carried)
        found.extend(passages(page.number, page.text, kept, count))
        rows.extend(table_rows(page.number, kept))
    return tuple(found), tuple(rows)
