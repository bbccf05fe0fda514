"""Records and dataclasses as JSON fields: times in UTC with a Z. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
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
    if is_dataclass(value) and not isinstance(value, type):
        return {each.name: plain(getattr(value, each.name)) for each in fields(value)}
    if isinstance(value, Mapping):
        return {str(key): plain(each) for key, each in value.items()}
    if isinstance(value, list | tuple | set | frozenset):
        return [plain(each) for each in value]
    return value


def record_fields(value: object) -> dict[str, object]:
    """Return the fields of a record or a dataclass."""
    return dict(_named(value))


def answer_fields(answer: Answer) -> dict[str, object]:
    """Return the fields of `ask --json`."""
    return dict(_named(answer))


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
    return {name: value for name, value in _named(hit) if name != "passage_id"}


def _named(value: object) -> list[tuple[str, object]]:
    """Return the fields of a record or a dataclass, made plain."""
    made = plain(value)
    return list(made.items()) if isinstance(made, dict) else []
