"""Records and dataclasses as JSON fields: times in UTC with a Z. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import asdict
from datetime import UTC, datetime

from pydantic import BaseModel

from assistant.dialogue.answer import Answer
from assistant.library.types import Hit, SearchResult


def plain(value: object) -> object:
    """Return a value made of JSON's own kinds; a time becomes UTC with a ``Z``."""
    if isinstance(value, datetime):
        return value.astimezone(UTC).isoformat().replace("+00:00", "Z")
    if isinstance(value, BaseModel):
        return plain(value.model_dump(mode="python"))
    if isinstance(value, Mapping):
        return {str(key): plain(each) for key, each in value.items()}
    if isinstance(value, list | tuple | set | frozenset):
        return [plain(each) for each in value]
    return value


def answer_fields(answer: Answer) -> dict[str, object]:
    """Return the fields of `ask --json`."""
    fields = plain(answer)
    assert isinstance(fields, dict)  # noqa: S101 - a record is a mapping
    return fields


def found_fields(result: SearchResult) -> dict[str, object]:
    """Return the fields of `find --json`."""
    return {
        "status": "found" if result.found else "not_found",
        "hits": [_hit(hit) for hit in result.hits],
        "unreadable": [
            {"document": document, "pages": list(pages)}
            for document, pages in sorted(result.unreadable.items())
        ],
        "reason": result.reason,
        "searched": result.searched,
        "vectors_used": result.vectors_used,
        "note": result.note,
        "missing": list(result.missing),
        "near": [_hit(hit) for hit in result.near],
    }


def _hit(hit: Hit) -> object:
    fields = asdict(hit)
    del fields["passage_id"]
    return plain(fields)
