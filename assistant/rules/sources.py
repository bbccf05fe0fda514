"""Proves a pack's sources: the document is held, the page is there, the quote on it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from assistant.checks.kinds import ResistanceTable
from assistant.record import Item
from assistant.rules.kinds import PackDocument
from assistant.rules.mistakes import Mistake, PackLines
from assistant.rules.pack import FILES, Pack

PageText = Callable[[PackDocument, int], str | None]
"""The text of a physical page of a document the pack names, or None: no such page,
or the document is not in the library."""

Recognised = Callable[[PackDocument, int], bool]
"""Whether the text of that page was recognised in a picture (OCR)."""

NEIGHBOURS = (1, -1, 2, -2)
"""How far off a page number is looked for when a quote is not on its page."""


@dataclass(frozen=True, slots=True)
class Claim:
    """One quote that must stand on a page; `place` is where the pack says so."""

    place: tuple[str, int]
    label: str
    doc: str
    page: int
    quote: str


def prove_sources(
    pack: Pack,
    page_text: PageText,
    lines: PackLines,
    recognised: Recognised | None = None,
) -> Iterator[Mistake]:
    """Yield every document, page and quote that the library does not bear out.

    A quote that stands on a page read by OCR is a warning: letters and digits may be
    misread, so a person must have compared it with the page itself.
    """
    pages = _Pages(page_text)
    held = {}
    for alias, document in pack.head.documents.items():
        held[alias] = pages.text(document, 1) is not None
        if not held[alias]:
            file, line = lines.head("documents", alias)
            yield Mistake(
                file,
                line,
                f"`{alias}` ({document.title}, revision {document.revision}) is not in "
                "the library",
                "add the document first: faultleaf add PATH",
            )
    for claim in _claims(pack, lines):
        if held.get(claim.doc):
            document = pack.head.documents[claim.doc]
            wrong = _wrong(document, claim, pages)
            if wrong is not None:
                what, hint = wrong
                yield Mistake(*claim.place, f"{claim.label}: {what}", hint)
            elif recognised is not None and recognised(document, claim.page):
                what = f"page {claim.page} of {document.title} was read by OCR"
                told = f"{claim.label}: {what}"
                yield Mistake(*claim.place, told, _CONFIRM, "warning")


_CONFIRM = "a person must confirm the quote on the page itself"


def _claims(pack: Pack, lines: PackLines) -> Iterator[Claim]:
    for place, entry in enumerate(pack.head.supersedes):
        where = lines.head("supersedes", place, "quote")
        yield Claim(where, "supersedes", entry.doc, entry.page, entry.quote)
    for name in FILES:
        items: tuple[Item, ...] = getattr(pack, name)
        for item in items:
            yield from _of_item(item, lines)


def _of_item(item: Item, lines: PackLines) -> Iterator[Claim]:
    label = f"`{item.id}`"
    if item.source is not None:
        where = lines.place(item.id, "source", "quote")
        source = item.source
        yield Claim(where, label, source.doc, source.page, source.quote)
    if not isinstance(item, ResistanceTable):
        return
    for number, point in enumerate(item.points):
        if point.page and point.quote:
            doc = point.doc or (item.source.doc if item.source is not None else "")
            where = lines.point(item.id, number)
            yield Claim(where, label, doc, point.page, point.quote)


def folded(text: str) -> str:
    """Return text with every run of white space as one space; case is kept."""
    return " ".join(text.split())


class _Pages:
    """The pages of documents, each fetched and folded once."""

    def __init__(self, page_text: PageText) -> None:
        self._page_text = page_text
        self._held: dict[tuple[str, str, int], str | None] = {}

    def text(self, document: PackDocument, page: int) -> str | None:
        """Return the folded text of a page, or None where there is none."""
        key = (document.title, document.revision, page)
        if key not in self._held:
            text = self._page_text(document, page) if page > 0 else None
            self._held[key] = None if text is None else folded(text)
        return self._held[key]


def stands_in(quote: str, text: str) -> bool:
    """Return whether a folded quote stands in a folded text as whole words.

    Examples
    --------
    >>> stands_in("4 flashes", "row 3: 4 flashes"), stands_in("4 flashes", "14 flashes")
    (True, False)
    >>> stands_in("5 kohm", "1.5 kohm")
    False
    """
    place = text.find(quote)
    while place >= 0:
        end = place + len(quote)
        around = text[max(place - 2, 0) : place], text[end : end + 2]
        if not (_goes_on(around[0][::-1], quote[0]) or _goes_on(around[1], quote[-1])):
            return True
        place = text.find(quote, place + 1)
    return False


def _goes_on(beside: str, edge: str) -> bool:
    """Return whether a word or number goes on past the edge of a quote."""
    if not beside or not edge.isalnum():
        return False
    if beside[0] in ".," and edge.isdigit():
        return beside[1:].isdigit()
    return beside[0].isalnum()


def _wrong(
    document: PackDocument, claim: Claim, pages: _Pages
) -> tuple[str, str] | None:
    text = pages.text(document, claim.page)
    if text is None:
        return f"{document.title} has no page {claim.page}", "pages count from 1"
    quote = folded(claim.quote)
    if stands_in(quote, text):
        return None
    what = f"`{quote}` does not stand on page {claim.page} of {document.title}"
    if stands_in(quote.casefold(), text.casefold()):
        return what, "it stands there in other capitals"
    for step in NEIGHBOURS:
        near = pages.text(document, claim.page + step)
        if near is not None and stands_in(quote, near):
            return what, f"it stands on page {claim.page + step}"
    return what, "copy the words from the page as they stand there"
