"""Between the nouns of the library and the rows that hold them. Pure."""

from __future__ import annotations

import json
from collections.abc import Sequence
from typing import Any

from pydantic import TypeAdapter

from assistant.library.types import (
    Document,
    Page,
    PageStatus,
    Passage,
    StoredPack,
    StoredPassage,
    TableRow,
)
from assistant.record import Scope

DOCUMENT = (
    "sha256, path, title, maker, kind, revision, date, supersedes, applies_to, "
    "doc_number"
)
PAGE = "page.number, label, status, text, reason, source, confidence, raw"
PASSAGE = (
    "passage.id, document.sha256, passage.page, passage.start, passage.stop, "
    "passage.text, passage.section, passage.lead"
)

_SCOPES: TypeAdapter[tuple[Scope, ...]] = TypeAdapter(tuple[Scope, ...])


def scopes_json(scopes: Sequence[Scope]) -> str:
    """Return scopes as JSON."""
    fields = _SCOPES.dump_python(tuple(scopes), mode="json", exclude_defaults=True)
    return json.dumps(fields, ensure_ascii=False, sort_keys=True)


def scopes_of(text: str) -> tuple[Scope, ...]:
    """Return the scopes of their JSON."""
    return _SCOPES.validate_json(text) if text != "[]" else ()


def document_row(document: Document) -> tuple[str, ...]:
    """Return the values of a document in the order of `DOCUMENT`."""
    return (
        document.sha256,
        document.path,
        document.title,
        document.maker,
        document.kind,
        document.revision,
        document.date,
        json.dumps(document.supersedes, ensure_ascii=False),
        scopes_json(document.applies_to),
        document.number,
    )


def document(row: Sequence[Any]) -> Document:
    """Return the document of a row that has the columns of `DOCUMENT`."""
    return Document(
        sha256=row[0],
        path=row[1],
        title=row[2],
        maker=row[3],
        kind=row[4],
        revision=row[5],
        date=row[6],
        supersedes=tuple(json.loads(row[7])),
        applies_to=scopes_of(row[8]),
        number=row[9],
    )


def page(row: Sequence[Any]) -> Page:
    """Return the page of a row that has the columns of `PAGE`."""
    return Page(row[0], row[1], PageStatus(row[2]), *row[3:8])


def passage(row: Sequence[Any]) -> StoredPassage:
    """Return the passage of a row that has the columns of `PASSAGE`."""
    return StoredPassage(row[0], row[1], Passage(*row[2:8]))


def table_row(row: Sequence[Any]) -> TableRow:
    """Return the table row of a row (page, nth, row, cells, header, start, stop)."""
    return TableRow(
        page=row[0],
        table=row[1],
        row=row[2],
        cells=tuple(json.loads(row[3])),
        header=tuple(json.loads(row[4])),
        start=row[5],
        end=row[6],
    )


def pack(row: Sequence[Any]) -> StoredPack:
    """Return the pack of a row (id, version, sha256, payload)."""
    return StoredPack(*row)
