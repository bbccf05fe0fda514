"""Which documents are replaced by which. Pure."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from pathlib import PurePosixPath

from assistant.library.codes import normal
from assistant.library.types import Document

SHORTEST_NAME = 4
"""Letters and digits a title or number needs before it can be recognised."""

_PART = re.compile(r"\b(?:rows?|tables?|pages?|sections?|p|pp|lines?|item)\b", re.I)
_REVISION = re.compile(r"\b(?:revision|rev|edition|issue)\.?\s*:?\s*([\w.]+)", re.I)


def superseded(documents: Mapping[int, Document]) -> dict[int, str]:
    """Return by key the title of the document that replaces each replaced one.

    Only documents among those given count: one that does not apply to the unit
    replaces nothing. A document that replaces rows, pages or sections of another
    leaves it in force.

    Examples
    --------
    >>> old = Document("a" * 64, "old.pdf", "Heron manual", revision="A")
    >>> new = Document("b" * 64, "new.pdf", "Heron manual 2",
    ...                supersedes=("Heron manual, revision A",))
    >>> superseded({1: old, 2: new})
    {1: 'Heron manual 2'}
    """
    result: dict[int, str] = {}
    for key, document in sorted(documents.items(), key=lambda each: each[1].path):
        newer = _replacing(document, documents.values())
        if newer is not None:
            result[key] = newer.title
    return result


def _replacing(document: Document, others: Iterable[Document]) -> Document | None:
    for other in sorted(others, key=lambda each: each.path):
        if other.sha256 != document.sha256 and any(
            _names(entry, document) for entry in other.supersedes
        ):
            return other
    return None


def _names(entry: str, document: Document) -> bool:
    if _PART.search(entry):
        return False
    revision = _REVISION.search(entry)
    if revision and document.revision:
        # "replaces edition 1" names the older of two files of one title
        if normal(revision.group(1)) != normal(document.revision):
            return False
    elif revision:
        return False
    names = (document.title, PurePosixPath(document.path).stem)
    said = normal(entry)
    return any(
        len(normal(name)) >= SHORTEST_NAME and normal(name) in said for name in names
    )
