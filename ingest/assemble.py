"""Makes of a file's raw pages what the library stores: pure."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath

from assistant.library.sayings import Origin
from assistant.library.types import Document, Page, PageStatus, Passage, TableRow
from ingest.blocks import Carried, GridRow, lines_of
from ingest.cleaning import Cleaned, before_repair, cleaned, repair
from ingest.headings import Look, headings
from ingest.identify import identify
from ingest.labels import printed_labels
from ingest.passages import passages
from ingest.quality import doubt, judge, unreadable_lines
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
    sources: Mapping[str, Origin]
    """Field of the document to where it was read."""


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
    stored = cleaned([page.text for page in raw])
    texts = [page.text for page in stored]
    grids = [_grid(*each) for each in zip(raw, stored, strict=True)]
    running = [
        lines - grid.keys()
        for lines, grid in zip(running_lines(texts), grids, strict=True)
    ]
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
        number=identity.number,
    )
    cut, rows = _cut(facts, list(zip(raw, pages, running, grids, strict=True)), count)
    return Prepared(document, pages, cut, rows, identity.sources)


def _page(raw: RawPage, label: str, text: str, running: frozenset[int]) -> Page:
    if raw.failure:
        return Page(raw.number, label, PageStatus.UNREADABLE, "", raw.failure)
    status, reason = judge(text, running, drawn=raw.drawn, cover=raw.cover)
    if status is PageStatus.TEXT:
        reason = doubt(text)
    return Page(
        raw.number,
        label,
        status,
        text,
        reason,
        raw.source,
        raw.confidence,
        before_repair(raw.raw or raw.text, text),
    )


def _grid(raw: RawPage, page: Cleaned) -> dict[int, GridRow]:
    """Return the rows of a page's ruled tables by their line in the stored text."""
    found: dict[int, GridRow] = {}
    for number, table in enumerate(raw.tables):
        names = tuple(map(repair, table.names))
        for at, row in enumerate(table.rows):
            cells = tuple(map(repair, row.cells))
            head = at < table.headers
            found[page.line_of(row.line)] = GridRow(number, cells, names, head)
    return found


def _cut(
    facts: FileFacts,
    sheets: Sequence[tuple[RawPage, Page, frozenset[int], Mapping[int, GridRow]]],
    count: Callable[[str], int],
) -> tuple[tuple[Passage, ...], tuple[TableRow, ...]]:
    styled = any(source.prominent for source, *_ in sheets)
    carried = Carried()
    found: list[Passage] = []
    rows: list[TableRow] = []
    for source, page, lines, grid in sheets:
        if page.status is not PageStatus.TEXT:
            continue
        marked = tuple(title for title, at in facts.outline if at == page.number)
        look = Look(source.prominent, marked)
        barred = lines | grid.keys() | unreadable_lines(page.text)
        heads = headings(page.text, barred, look, styled=styled)
        kept, carried = lines_of(page.text, lines, heads, carried, grid)
        found.extend(passages(page.number, page.text, kept, count))
        rows.extend(table_rows(page.number, kept))
    return tuple(found), tuple(rows)
