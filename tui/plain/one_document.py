"""One document of the library: what is said of it and by whom, page by page."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.errors import InputError
from assistant.library.sayings import (
    FIELDS,
    Earlier,
    Origin,
    Proposal,
    Saying,
    Value,
    in_force,
)
from assistant.library.superseded import superseded
from assistant.record import Scope
from tui.plain.text import count, numbers, wrap

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore
    from assistant.library.types import Document
    from ingest.library_report import Coverage

ACCEPT = "faultleaf library set {} --accept-applies --by NAME"


@dataclass(frozen=True, slots=True)
class Told:
    """One field of a document and whose word it is."""

    field: str
    value: Value
    source: str
    person: str
    day: str
    instead_of: Value | None = None
    """What was read, where a person says otherwise."""


@dataclass(frozen=True, slots=True)
class Sheet:
    """Everything known of one document."""

    document: str
    document_id: str
    sha256: str
    title: str
    told: tuple[Told, ...]
    known: Mapping[str, str]
    """Identity to path, of documents that it is said to supersede."""
    superseded_by: str
    earlier: tuple[Earlier, ...]
    proposals: tuple[Proposal, ...]
    pages: Mapping[str, str]
    """How pages were read, to their numbers: ``3-7``."""
    counts: Mapping[str, int]
    remedies: Mapping[str, str]
    """What can be done, to the pages it concerns."""
    passages: int
    longest: int | None
    """Tokens of its longest passage with all around it; None without a counter."""
    place: str
    lies_there: bool | None
    """Whether the file is where it was; None when that is not known."""


def named_document(store: LibraryStore, name: str) -> Document:
    """Return the document of a name.

    Raises
    ------
    InputError
        There is none, with the one that took its place where it had been there.
    """
    found = store.document(name)
    if found is not None:
        return found
    after = store.state_after(name)
    if after is not None:
        raise InputError(
            f"{name} is an earlier state of {after.path}, whose current one is "
            f"{after.document_id}",
            f"faultleaf library show {after.document_id}",
        )
    raise InputError(f"{name!r} is not in the library", "`faultleaf library` lists it")


def sheet_of(
    store: LibraryStore, document: Document, tokens: Callable[[str], int] | None = None
) -> Sheet:
    """Gather everything known of a document; `tokens` counts those of a text."""
    from ingest.gone import still_lies
    from ingest.library_report import cover_one

    cover = cover_one(store, document, tokens)
    known = store.documents()
    by = superseded(dict(enumerate(known)))
    place = store.places().get(document.sha256)
    return Sheet(
        document=document.path,
        document_id=document.document_id,
        sha256=document.sha256,
        title=document.title,
        told=tuple(_told(store.said(document.sha256))),
        known={
            each.document_id: each.path
            for each in known
            if each.document_id in document.supersedes
        },
        superseded_by=by.get(known.index(document), ""),
        earlier=store.earlier(document.sha256),
        proposals=store.proposals(document.sha256),
        pages=page_ranges(cover),
        counts=cover.counts,
        remedies={way: numbers(on) for way, on in cover.remedies.items()},
        passages=cover.passages,
        longest=cover.longest,
        place=place.path if place else "",
        lies_there=still_lies(place),
    )


def page_ranges(cover: Coverage) -> dict[str, str]:
    """Return the pages of each kind as ``3-7, 9``."""
    return {
        kind: numbers(page for page, each in cover.kinds.items() if each == kind)
        for kind in cover.counts
    }


def _told(sayings: tuple[Saying, ...]) -> Iterator[Told]:
    stands = in_force(sayings)
    for field in FIELDS:
        if field not in stands:
            continue
        said = stands[field]
        read = [
            each.value
            for each in sayings
            if each.field == field and each.source is not Origin.PERSON
        ]
        other = read[0] if read and said.source is Origin.PERSON else None
        yield Told(field, said.value, said.source.value, said.person, said.day, other)


def sheet_lines(sheet: Sheet, width: int) -> list[str]:
    """Return a document's sheet as lines."""
    return [
        *wrap(f"{sheet.document} ({sheet.document_id})", width),
        *_superseded_lines(sheet, width),
        *_told_lines(sheet, width),
        *_proposal_lines(sheet, width),
        *_page_lines(sheet, width),
        *_place_lines(sheet, width),
    ]


def _superseded_lines(sheet: Sheet, width: int) -> Iterator[str]:
    from ingest.telling import state_text

    if sheet.superseded_by:
        yield from wrap(f"SUPERSEDED by {sheet.superseded_by}", width, "  ")
    for each in sheet.earlier:
        yield from wrap(f"earlier state: {state_text(each)}", width, "  ")


def _told_lines(sheet: Sheet, width: int) -> Iterator[str]:
    for each in sheet.told:
        who = ", ".join(filter(None, (each.source, each.person, each.day)))
        name = each.field.replace("_", " ")
        value = value_text(each.value)
        for identity, path in sheet.known.items():
            value = value.replace(identity, f"{path} {identity}")
        yield from wrap(f"{name}: {value} ({who})", width, "  ")
        if each.instead_of is not None:
            yield from wrap(f"read: {value_text(each.instead_of)}", width, "    ")


def value_text(value: Value) -> str:
    """Return a field's value in words."""
    if isinstance(value, str):
        return value or "nothing"
    parts = [each if isinstance(each, str) else scope_text(each) for each in value]
    return "; ".join(parts) or "nothing"


def scope_text(scope: Scope) -> str:
    """Return the units of a scope in words.

    Examples
    --------
    >>> scope_text(Scope(models=("KX-24", "KX-36"), unit_role="outdoor"))
    'outdoor KX-24, KX-36'
    """
    parts = [scope.unit_role or "", ", ".join(scope.models)]
    if scope.exclude:
        parts.append(f"but not {', '.join(scope.exclude)}")
    if scope.serial is not None:
        first, last = scope.serial.first, scope.serial.last
        run = f"{first} to {last}" if first and last else f"from {first}"
        parts.append(f"serial {run if first else f'up to {last}'}")
    for name in ("voltage", "phase", "board_mark", "capacity_class", "market"):
        if getattr(scope, name):
            parts.append(f"{name.replace('_', ' ')} {getattr(scope, name)}")
    return " ".join(filter(None, parts)) or "every unit"


def _proposal_lines(sheet: Sheet, width: int) -> Iterator[str]:
    for nth, each in enumerate(sheet.proposals, start=1):
        said = f"proposed {nth}: for {scope_text(each.scope)} (p. {each.page}: "
        yield from wrap(f'{said}"{each.quote}")', width, "  ")
    if sheet.proposals and not any(t.field == "applies_to" for t in sheet.told):
        yield from wrap(
            "A proposal excludes nothing until it is accepted.", width, "  "
        )
        yield from wrap(ACCEPT.format(sheet.document_id), width, "  try: ", "    ")


def _page_lines(sheet: Sheet, width: int) -> Iterator[str]:
    told = ", ".join(f"{on} {kind}" for kind, on in sheet.pages.items())
    text = f"PDF pages: {told or 'none'}; {count(sheet.passages, 'passage')}"
    yield from wrap(text, width, "  ")
    if sheet.longest is not None:
        from assistant.library.encoder import MAX_TOKENS

        said = "; none is cut for its vector"
        if sheet.longest > MAX_TOKENS:
            said = f", more than {MAX_TOKENS}: cut"
        text = f"longest passage: {sheet.longest} tokens{said}"
        yield from wrap(text, width, "  ")
    for way, pages in sheet.remedies.items():
        yield from wrap(f"page {pages}: {way}", width, "  ")


def _place_lines(sheet: Sheet, width: int) -> Iterator[str]:
    if not sheet.place:
        yield from wrap("it is not known where its file lies", width, "  ")
    elif sheet.lies_there is None:
        said = f"whether its file is still there cannot be seen: {sheet.place}"
        yield from wrap(said, width, "  ")
    elif sheet.lies_there:
        yield from wrap(f"file: {sheet.place}", width, "  ")
    else:
        yield from wrap(f"its file is gone from {sheet.place}", width, "  ")
