"""What a job rests on: packs in the library, documents, and how to cite them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from functools import cached_property
from typing import Literal

from assistant.dialogue.answer import SourceRef
from assistant.library.types import Document
from assistant.record import Item, Scope
from assistant.rules.applicability import Plate, match_scopes
from assistant.rules.inforce import InForce, in_force
from assistant.rules.kinds import PackDocument
from assistant.rules.pack import Pack, PackHead
from assistant.rules.references import items_of


@dataclass(frozen=True)
class Knowledge:
    """The library as the pure core sees it.

    `labels` maps (document id, physical page) to the printed label; `recognised`
    names the pages that were read by OCR the same way.
    """

    packs: tuple[Pack, ...] = ()
    documents: tuple[Document, ...] = ()
    labels: Mapping[tuple[str, int], str] = field(default_factory=dict)
    recognised: frozenset[tuple[str, int]] = frozenset()
    _in_force: dict[Plate, InForce] = field(default_factory=dict, repr=False)
    """What applies to each unit asked about so far: the same plate, the same rows."""

    def in_force(self, plate: Plate) -> InForce:
        """Return the items that apply, or may apply, to a unit."""
        if plate not in self._in_force:
            self._in_force[plate] = in_force(self.packs, plate)
        return self._in_force[plate]

    @cached_property
    def by_pack(self) -> Mapping[str, Pack]:
        """Packs by id."""
        return {pack.head.id: pack for pack in self.packs}

    @cached_property
    def scopes(self) -> tuple[Scope, ...]:
        """Every `applies_to` of every pack and row."""
        return tuple(
            scope
            for pack in self.packs
            for scopes in (pack.head.applies_to, *_narrowed(pack))
            for scope in scopes
        )

    def document_of(self, named: PackDocument) -> Document | None:
        """Find the library's document that a pack names: by hash, else by title."""
        for document in self.documents:
            if named.sha256 and document.sha256 == named.sha256:
                return document
        wanted = (_folded(named.title), _folded(named.revision))
        for document in self.documents:
            if (_folded(document.title), _folded(document.revision)) == wanted:
                return document
        return None

    def cite(self, gid: str, item: Item) -> tuple[SourceRef, ...]:
        """Cite where an item of a pack stands, or whose rule it is without a page."""
        head = self.by_pack[gid.partition("/")[0]].head
        source = item.source
        named = head.documents.get(source.doc) if source else None
        if source is None or named is None:
            return (_unprinted(gid, head),)
        document = self.document_of(named)
        identity = document.document_id if document else ""
        return (
            SourceRef(
                document=document.path if document else "",
                document_id=identity,
                title=named.title,
                revision=named.revision,
                page=source.page,
                label=self.labels.get((identity, source.page), ""),
                quote=source.quote,
                rule=gid,
                rank=head.kind,
                read_by="ocr" if (identity, source.page) in self.recognised else "",
            ),
        )

    def scopes_of(self, document: Document) -> tuple[Scope, ...]:
        """Collect what a document applies to: its own word, else its packs'."""
        if document.applies_to:
            return document.applies_to
        scopes: list[Scope] = []
        for pack in self.packs:
            named = pack.head.documents.values()
            if pack.head.kind == "maker" and any(
                self.document_of(entry) == document for entry in named
            ):
                scopes.extend(pack.head.applies_to)
        return tuple(scopes)

    def document_match(
        self, plate: Plate
    ) -> Mapping[str, Literal["confirmed", "possible", "excluded"]]:
        """Say for each document (sha256) whether it applies to a unit."""
        return {
            document.sha256: match_scopes(self.scopes_of(document), plate)
            for document in self.documents
        }


def _narrowed(pack: Pack) -> Iterator[tuple[Scope, ...]]:
    for items in items_of(pack).values():
        yield from (item.applies_to for item in items)


def _unprinted(gid: str, head: PackHead) -> SourceRef:
    """Cite a rule that stands on no page: the shop's by whom and when."""
    signed = ", ".join(part for part in (head.author, head.date) if part)
    return SourceRef(
        document="",
        document_id="",
        title=f"{head.title} ({signed})" if signed else "",
        revision="",
        page=0,
        label="",
        quote="",
        rule=gid,
        rank=head.kind,
    )


def _folded(text: str) -> str:
    return " ".join(text.casefold().split())
