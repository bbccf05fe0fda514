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
_REVISION = re.compile(
    r"\b(?:revision|rev|edition|issue|ed)\.?\s*:?\s*(\w+(?:\.\w+)*)", re.I
)
_NUMBER = re.compile(r"\b[A-Z]{1,6}[- ]?\d{1,8}(?:[-/]\d{1,6})*[A-Z]?\b", re.I)

_DATE = re.compile(r"\b(?:\d{1,2}\s+)?(?:[a-z]{3,9}\.?,?\s+)?(?:19|20)\d\d[-\d]*", re.I)


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
            _names(entry, document, other) for entry in other.supersedes
        ):
            return other
    return None


def _names(entry: str, document: Document, by: Document) -> bool:
    """Whether an entry of what `by` supersedes names the document."""
    if entry == document.document_id:
        return True
    if _PART.search(entry):
        return False
    revision = _REVISION.search(entry)
    if revision and document.revision:
        # "replaces edition 1" names the older of two files of one title
        if normal(revision.group(1)) != normal(document.revision):
            return False
    elif revision:
        return False
    if revision and _is_bare(entry) and _same_work(document, by):
        return True
    if document.number and normal(document.number) in _numbers(entry):
        return True
    names = (document.title, PurePosixPath(document.path).stem)
    said = normal(entry)
    return any(
        len(normal(name)) >= SHORTEST_NAME and normal(name) in said for name in names
    )


def _numbers(entry: str) -> set[str]:
    """Return the document numbers of an entry: whole, so VSM-140 is not VSM-1407."""
    return {normal(found[0]) for found in _NUMBER.finditer(entry)}


def _is_bare(entry: str) -> bool:
    """Whether an entry names a revision only, as in "issue 3 of 2021-02-18"."""
    rest = _DATE.sub(" ", _REVISION.sub(" ", entry))
    return not re.search(r"[^\W\d_]{4}|\d", rest)


def _same_work(one: Document, other: Document) -> bool:
    """Whether two documents are states of one: by number, else by maker and title."""
    if one.number or other.number:
        return normal(one.number) == normal(other.number)
    return same_title(one, other)


def same_title(one: Document, other: Document) -> bool:
    """Return whether two documents are of one maker, which is known, and title."""
    return bool(one.maker) and (one.maker, one.title) == (other.maker, other.title)
