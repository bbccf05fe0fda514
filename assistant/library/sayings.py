"""What is said of a document, by whom: the file, its cover, a person. Pure.

What a person says stands before what was read. A proposal stands nowhere until a
person accepts it.
"""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum

from assistant.library.rows import scopes_json, scopes_of
from assistant.library.types import Document
from assistant.record import Scope

Value = str | tuple[str, ...] | tuple[Scope, ...]

FIELDS = (
    "title", "maker", "kind", "number", "revision", "date", "supersedes", "applies_to",
)  # fmt: skip
"""What can be said of a document."""
LASTING = ("title", "maker", "kind", "number", "applies_to")
"""What a person said of a file that holds for its next state too."""

_UNSAID = Document(sha256="", path="", title="")


class Origin(StrEnum):
    """Where a statement comes from."""

    FILE = "file"
    """The file's own metadata."""
    COVER = "cover page"
    """The first pages, or the last."""
    NAME = "file name"
    READING = "reading"
    """File or cover; read by an earlier faultleaf, which did not note which."""
    PERSON = "person"


@dataclass(frozen=True, slots=True)
class Saying:
    """One statement about a document; `value` is of the field's own kind."""

    field: str
    source: Origin
    value: Value
    person: str = ""
    day: str = ""
    """ISO date on which a person said it."""


@dataclass(frozen=True, slots=True)
class Proposal:
    """Units that a page names as those a document is for; it excludes nothing."""

    scope: Scope
    page: int
    quote: str


@dataclass(frozen=True, slots=True)
class Place:
    """Where a document's file lay when it was last added."""

    origin: str
    """A short hash of the whole path."""
    path: str
    """The whole path; empty where an earlier faultleaf kept only the hash."""


@dataclass(frozen=True, slots=True)
class Earlier:
    """An earlier state of a file that is in the library."""

    sha256: str
    title: str
    revision: str
    date: str


def sayings_of(document: Document, sources: Mapping[str, Origin]) -> tuple[Saying, ...]:
    """Return what was read of a document as statements, by field."""
    return tuple(
        Saying(field, sources.get(field, Origin.COVER), getattr(document, field))
        for field in FIELDS
        if getattr(document, field)
    )


def in_force(sayings: Iterable[Saying]) -> dict[str, Saying]:
    """Return the statement that counts for each field: a person's before any other."""
    found: dict[str, Saying] = {}
    for each in sorted(sayings, key=lambda one: (one.field, one.source)):
        held = found.get(each.field)
        if held is None or each.source is Origin.PERSON:
            found[each.field] = each
    return found


def settled(
    document: Document, sayings: Iterable[Saying], fields: Collection[str] = FIELDS
) -> Document:
    """Return a document with the statements in force on these fields as its own."""
    stands = in_force(sayings)
    values = {
        field: stands[field].value if field in stands else getattr(_UNSAID, field)
        for field in fields
    }
    if not values.get("title", document.path):
        values["title"] = document.path
    return replace(document, **values)  # type: ignore[arg-type]


def dumped(value: Value) -> str:
    """Return a value as JSON."""
    if not isinstance(value, str):
        scopes = [each for each in value if isinstance(each, Scope)]
        if scopes:
            return scopes_json(scopes)
    return json.dumps(value, ensure_ascii=False)


def loaded(field: str, text: str) -> Value:
    """Return the value of a field from its JSON."""
    if field == "applies_to":
        return scopes_of(text)
    value = json.loads(text)
    return tuple(value) if isinstance(value, list) else str(value)


def accepted(proposals: Sequence[Proposal]) -> tuple[Scope, ...]:
    """Return what proposals mean together, once a person accepts them.

    Serial ranges that stand alone narrow the models named beside them.

    Examples
    --------
    >>> from assistant.record import SerialRange
    >>> late = SerialRange(first="2231")
    >>> (scope,) = accepted([Proposal(Scope(models=("KX-24",)), 1, "KX-24"),
    ...                      Proposal(Scope(serial=late), 1, "from 2231")])
    >>> scope.models, scope.serial.first
    (('KX-24',), '2231')
    """
    models = [each.scope for each in proposals if each.scope.models]
    serials = [each.scope.serial for each in proposals if not each.scope.models]
    if not serials:
        return tuple(dict.fromkeys(models))
    if not models:
        return tuple(dict.fromkeys(each.scope for each in proposals))
    return tuple(
        dict.fromkeys(
            scope.model_copy(update={"serial": serial})
            for scope in models
            for serial in serials
        )
    )
