"""Proves a stored document against its file: read again, compared page by page."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from typing import TYPE_CHECKING

from assistant.errors import FaultleafError, InputError
from assistant.library.types import OCR, Document, Page
from ingest.assemble import Prepared, prepare
from ingest.collect import Candidate, collect, file_hash
from ingest.gone import what_lies_at
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.isolation import read_file
from ingest.readers.limits import Limits
from ingest.readers.sniff import reader_of

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore


class Verdict(StrEnum):
    """What came of proving a document."""

    PROVED = "proved"
    DIFFERS = "differs"
    """The file is the same, and something stored does not stand on its page."""
    CHANGED = "changed"
    """The file is not what it was."""
    MISSING = "missing"
    """No file lies where it lay."""
    UNREAD = "unread"
    """The file is there and could not be read."""
    UNPLACED = "unplaced"
    """An earlier faultleaf did not keep where it lay."""


@dataclass(frozen=True, slots=True)
class Stray:
    """Something stored that does not stand on its page."""

    page: int
    what: str


@dataclass(frozen=True, slots=True)
class Proof:
    """What was proved of one document."""

    document: Document
    verdict: Verdict
    place: str = ""
    reason: str = ""
    hint: str = ""
    pages: int = 0
    passages: int = 0
    rows: int = 0
    """How many of each were held against the file."""
    ocr: tuple[int, ...] = ()
    """Pages read by OCR: proved against the store only, not recognised again."""
    strays: tuple[Stray, ...] = ()


@dataclass(frozen=True, slots=True)
class How:
    """How files are read again."""

    password: str | None = None
    limits: Limits | None = None


def prove(store: LibraryStore, document: Document, how: How | None = None) -> Proof:
    """Read a document's file again and hold everything stored against it."""
    place = store.places().get(document.sha256)
    if place is None or not place.path:
        hint = "add its folder again; that notes where it lies"
        return Proof(document, Verdict.UNPLACED, reason=_UNPLACED, hint=hint)
    proof = Proof(document, Verdict.MISSING, place.path)
    try:
        top = what_lies_at(place.path)
        if top is None:
            remove = f"faultleaf remove {document.document_id}"
            hint = f"add it from where it is now, or: {remove}"
            return replace(proof, reason="no file lies there any more", hint=hint)
        with collect([top]) as found:
            for file in found.files:
                if str(file.where) == place.path:
                    return _held_against(store, proof, file, how or How())
        return replace(proof, reason=f"not in {top} any more")
    except FaultleafError as error:
        return replace(
            proof, verdict=Verdict.UNREAD, reason=error.what, hint=error.hint
        )
    except OSError as error:
        reason = f"cannot be read ({error.strerror})"
        return replace(proof, verdict=Verdict.UNREAD, reason=reason)


_UNPLACED = "it is not known where its file lies"


def _held_against(
    store: LibraryStore, proof: Proof, file: Candidate, how: How
) -> Proof:
    document = proof.document
    if file_hash(file.file) != document.sha256:
        hint = f"faultleaf add {proof.place}"
        reason = "the file has changed since it was added"
        return replace(proof, verdict=Verdict.CHANGED, reason=reason, hint=hint)
    fresh = _read(file, document, how)
    pages = store.pages(document.sha256)
    ocr = tuple(page.number for page in pages if page.source == OCR)
    strays = tuple(_strays(store, document, pages, fresh))
    proof = replace(
        proof,
        verdict=Verdict.DIFFERS if strays else Verdict.PROVED,
        pages=len(pages),
        passages=len(store.passages(document.sha256)),
        rows=len(store.table_rows(document.sha256)),
        ocr=ocr,
        strays=strays,
    )
    if not strays:
        return proof
    reason = "what is stored does not stand on its page"
    hint = f"take it out and add it again: faultleaf remove {document.document_id}"
    return replace(proof, reason=reason, hint=hint)


def _read(file: Candidate, document: Document, how: How) -> Prepared:
    reader = reader_of(file.file, file.name)
    facts: FileFacts | None = None
    raw: list[RawPage] = []
    for item in read_file(file.file, reader, password=how.password, limits=how.limits):
        if isinstance(item, FileFacts):
            facts = item
        else:
            raw.append(item)
    if facts is None:
        raise InputError(f"{document.path}: the reader gave nothing")
    # How passages are cut does not matter here: words serve for tokens.
    return prepare(document.sha256, document.path, facts, raw, _words)


def _words(text: str) -> int:
    return len(text.split())


def _strays(
    store: LibraryStore, document: Document, pages: Sequence[Page], fresh: Prepared
) -> Iterator[Stray]:
    """Give everything stored that the file, or the page's own text, does not bear."""
    held = {page.number: page for page in pages}
    yield from _stray_pages(held, {page.number: page for page in fresh.pages})
    for each in store.passages(document.sha256):
        passage = each.passage
        if not _stands(held, passage.page, passage.start, passage.end, passage.text):
            yield Stray(passage.page, f"the passage {_start(passage.text)}")
    there = {(row.page, row.cells, row.start, row.end) for row in fresh.rows}
    for row in store.table_rows(document.sha256):
        read_by_ocr = row.page in held and held[row.page].source == OCR
        if (row.page, row.cells, row.start, row.end) not in there and not read_by_ocr:
            yield Stray(row.page, f"the row {_start(' | '.join(row.cells))}")


def _stray_pages(held: Mapping[int, Page], now: Mapping[int, Page]) -> Iterator[Stray]:
    for number in sorted(now.keys() - held.keys()):
        yield Stray(number, "the page is not in the library")
    for number, page in sorted(held.items()):
        again = now.get(number)
        if again is None:
            yield Stray(number, "the file has no such page")
        elif page.source != OCR and page.text != again.text:
            yield Stray(number, "its text is not the stored one")


def _stands(
    pages: Mapping[int, Page], number: int, start: int, end: int, text: str
) -> bool:
    return number in pages and pages[number].text[start:end] == text


def _start(text: str) -> str:
    folded = " ".join(text.split())
    return repr(folded if len(folded) <= 50 else folded[:47] + "...")  # noqa: PLR2004
