"""What a library holds and covers, gathered once and shown as plain lines."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypedDict

from assistant.dialogue.knowledge import Knowledge
from assistant.library.superseded import superseded
from assistant.record import Scope
from assistant.rules.stored import read_stored
from tui.plain.text import count, numbers, wrap

if TYPE_CHECKING:
    from assistant.library.sayings import Place
    from assistant.library.store import LibraryStore
    from assistant.library.types import Document
    from assistant.rules.pack import Pack
    from ingest.library_report import Coverage

EMPTY = "The library is empty. faultleaf add PATH... puts literature in."


@dataclass(frozen=True, slots=True)
class HeldDocument:
    """One document: how well it can be searched, and for which models."""

    document: str
    document_id: str
    title: str
    maker: str
    kind: str
    revision: str
    date: str
    applies_to: tuple[str, ...]
    pages: Mapping[str, int]
    """Pages by status: text, blank, picture, unreadable."""
    coverage: Mapping[str, int]
    """Pages by how they were read: text, table, OCR, picture only, ..."""
    passages: int
    unreadable: Mapping[int, str]
    """Physical page to the reason."""
    remedies: Mapping[str, str]
    """What can be done about such pages, to their numbers."""
    packs: tuple[str, ...]
    """Rule packs that rest on it."""
    superseded_by: str
    proposed: tuple[str, ...]
    """Models its pages name, as long as nobody stated which units it is for."""
    file_is_gone: bool


@dataclass(frozen=True, slots=True)
class HeldPack:
    """One rule pack in force."""

    id: str
    version: str
    title: str
    kind: str
    sha256: str
    applies_to: tuple[str, ...]
    items: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class Holdings:
    """Everything a library holds."""

    folder: str
    documents: tuple[HeldDocument, ...]
    packs: tuple[HeldPack, ...]
    counts: Mapping[str, int]
    near: tuple[str, ...]
    """Documents that say nearly the same."""
    not_embedded: int | None
    """Texts without a vector; None when none was ever made."""


def holdings(store: LibraryStore) -> Holdings:
    """Read what a library holds."""
    from ingest.library_report import coverage
    from ingest.telling import near_lines

    stored = store.packs()
    packs = tuple(read_stored(pack.payload) for pack in stored)
    knowledge = Knowledge(packs=packs, documents=store.documents())
    manifest = store.manifest()
    known = knowledge.documents
    replaced = superseded(dict(enumerate(known)))
    places = store.places()
    by = {known[key].sha256: title for key, title in replaced.items()}
    missing = len(store.pending_texts(manifest.model_hash)) if manifest else None
    return Holdings(
        folder=str(store.folder),
        documents=tuple(
            _document(each, knowledge, _keeping(each.document, store, by, places))
            for each in coverage(store)
        ),
        packs=tuple(
            _pack(pack, each.sha256) for pack, each in zip(packs, stored, strict=True)
        ),
        counts=store.counts(),
        near=tuple(near_lines(known, store.units())),
        not_embedded=missing,
    )


def holdings_lines(held: Holdings, width: int) -> list[str]:
    """Return the holdings as lines: documents by path, then rule packs."""
    lines = [*wrap(f"Library {held.folder}", width), *wrap(_total(held), width)]
    if not held.documents and not held.packs:
        return [*lines, EMPTY]
    for document in held.documents:
        lines += ["", *_document_lines(document, width)]
    for pack in held.packs:
        lines += ["", *_pack_lines(pack, width)]
    for each in held.near:
        lines += ["", *wrap(each, width, "Nearly the same: ", "  ")]
    return [*lines, "", *wrap(_vectors(held), width)]


def models_of(scopes: Sequence[Scope]) -> tuple[str, ...]:
    """Return the model patterns that scopes name, each once."""
    return tuple(dict.fromkeys(model for scope in scopes for model in scope.models))


class _Keeping(TypedDict):
    """What is known of a document's state."""

    superseded_by: str
    proposed: tuple[str, ...]
    file_is_gone: bool


def _keeping(
    document: Document,
    store: LibraryStore,
    superseded_by: Mapping[str, str],
    places: Mapping[str, Place],
) -> _Keeping:
    from ingest.gone import still_lies

    scopes = [each.scope for each in store.proposals(document.sha256)]
    place = places.get(document.sha256)
    return {
        "superseded_by": superseded_by.get(document.sha256, ""),
        "proposed": () if document.applies_to else models_of(scopes),
        "file_is_gone": still_lies(place) is False,
    }


def _document(each: Coverage, knowledge: Knowledge, keeping: _Keeping) -> HeldDocument:
    document = each.document
    resting = [
        pack.head.id
        for pack in knowledge.packs
        if any(
            knowledge.document_of(named) == document
            for named in pack.head.documents.values()
        )
    ]
    return HeldDocument(
        document=document.path,
        document_id=document.document_id,
        title=document.title,
        maker=document.maker,
        kind=document.kind,
        revision=document.revision,
        date=document.date,
        applies_to=models_of(knowledge.scopes_of(document)),
        pages={status.value: number for status, number in sorted(each.pages.items())},
        coverage=each.counts,
        passages=each.passages,
        unreadable=dict(sorted(each.lost.items())),
        remedies={way: numbers(on) for way, on in each.remedies.items()},
        packs=tuple(resting),
        **keeping,
    )


def _pack(pack: Pack, sha256: str) -> HeldPack:
    names = ("signals", "waits", "stops", "sensors", "checks", "causes")
    return HeldPack(
        id=pack.head.id,
        version=pack.head.version,
        title=pack.head.title,
        kind=pack.head.kind,
        sha256=sha256,
        applies_to=models_of(pack.head.applies_to),
        items={name: len(getattr(pack, name)) for name in names},
    )


def _total(held: Holdings) -> str:
    counts = held.counts
    return ", ".join(
        (
            count(counts["documents"], "document"),
            count(counts["pages"], "page"),
            count(counts["passages"], "passage"),
            count(counts["packs"], "rule pack"),
        )
    )


def _document_lines(document: HeldDocument, width: int) -> Iterator[str]:
    revision = f" rev {document.revision}" if document.revision else ""
    yield from wrap(f"{document.title}{revision}", width)
    about = (document.maker, document.kind, document.date, document.document_id)
    yield from wrap(
        f"{document.document} ({', '.join(filter(None, about))})", width, "  "
    )
    if document.superseded_by:
        yield from wrap(f"SUPERSEDED by {document.superseded_by}", width, "  ")
    pages = ", ".join(f"{number} {name}" for name, number in document.coverage.items())
    yield from wrap(
        f"pages: {pages}; {count(document.passages, 'passage')}", width, "  "
    )
    models = ", ".join(document.applies_to) or "not stated"
    yield from wrap(f"models: {models}", width, "  ")
    if document.unreadable:
        lost = numbers(document.unreadable)
        yield from wrap(f"cannot be searched: PDF page {lost}", width, "  ")
    for way, on in document.remedies.items():
        yield from wrap(f"page {on}: {way}", width, "    ")
    if document.proposed and not document.applies_to:
        proposed = ", ".join(document.proposed)
        yield from wrap(f"proposed, excludes nothing: {proposed}", width, "  ")
    if document.file_is_gone:
        yield from wrap("its file is gone from where it was", width, "  ")
    if document.packs:
        yield from wrap(f"rules: {', '.join(document.packs)}", width, "  ")


def _pack_lines(pack: HeldPack, width: int) -> Iterator[str]:
    yield from wrap(
        f"Rules {pack.id} {pack.version} ({pack.kind}): {pack.title}", width
    )
    items = ", ".join(
        f"{number} {name}" for name, number in pack.items.items() if number
    )
    yield from wrap(items or "no items", width, "  ")
    models = ", ".join(pack.applies_to) or "every unit"
    yield from wrap(f"models: {models}", width, "  ")


def _vectors(held: Holdings) -> str:
    if held.not_embedded is None:
        return (
            "Only keywords can be searched. faultleaf library embed adds the vectors."
        )
    if held.not_embedded:
        texts = count(held.not_embedded, "text")
        return f"{texts} without a vector. faultleaf library embed computes them."
    return "Every text has its vector."
