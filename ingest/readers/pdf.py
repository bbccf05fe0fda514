"""The reader of PDF: pypdf opens it and tells its facts, pdfium reads its pages.

pypdf's text stands in where pdfium fails, or where only pdfium's is no words.
"""

from __future__ import annotations

import gc
from collections import Counter
from collections.abc import Iterator, Sequence
from contextlib import AbstractContextManager, ExitStack, contextmanager
from dataclasses import replace
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, BinaryIO

from ingest.grids.find import find_tables
from ingest.grids.follow import continued
from ingest.readers.base import (
    MAX_FILE_BYTES,
    MAX_PAGE_CHARACTERS,
    Prominent,
    RawPage,
    Read,
)
from ingest.readers.layout import lay_out, upright
from ingest.readers.legible import CUT, fault_of
from ingest.readers.mend import mended
from ingest.readers.pdf_plain import (
    FAULTS,
    DamagedError,
    check_size,
    facts_of,
    guarded,
    is_drawn,
    labels_of,
    open_file,
    reason_of,
    rows_of,
)
from ingest.readers.pdf_shapes import sheet
from ingest.readers.pdfium import Document, PdfiumError, open_document
from ingest.readers.rows import Row
from ingest.readers.salvage import Salvaged, salvage

if TYPE_CHECKING:
    from pypdf import PageObject, PdfReader

    from ingest.grids.model import Table
    from ingest.readers.geometry import Shapes

SCARCE = 200
"""Below so many characters a page is looked at for pictures and drawings."""
LARGE = 1.12
MAX_HEADING = 95
MAX_NUMBER = 8
_WHITE = frozenset(" \t\r\n")
GARBAGE = 50_000
NOTHING = 10
"""Fewer characters are asked for once more, of the other library."""


def read_pdf(path: Path, first: int = 1, password: str | None = None) -> Iterator[Read]:
    """Read a PDF: its facts, then its pages from `first`.

    A page that cannot be read is given with its failure, and the rest goes on.

    Raises
    ------
    InputError
        It needs a password, is damaged beyond opening, or has too many pages.
    """
    yield from _read(path, first, password, plainly=False)


def read_pdf_plain(
    path: Path, first: int = 1, password: str | None = None
) -> Iterator[Read]:
    """Read a PDF as `read_pdf` does, but without pdfium: for files that end it.

    Raises
    ------
    InputError
        It needs a password, is damaged beyond opening, or has too many pages.
    """
    yield from _read(path, first, password, plainly=True)


def _read(
    path: Path, first: int, password: str | None, *, plainly: bool
) -> Iterator[Read]:
    with path.open("rb") as stream, ExitStack() as stack:
        reader, rest = _opened_or_saved(path, stream, password)
        facts = facts_of(reader)
        labels = labels_of(reader, facts.pages)
        yield replace(facts, damage=rest.told) if rest else facts
        laid = None
        if not plainly:
            data = rest.data if rest else None
            opened = open_document(path, password, data)
            laid = _opened(stack, opened, facts.pages)
        before: list[Table] = []
        stack.enter_context(_seldom_collected())
        for number in range(first, facts.pages + 1):
            label = labels[number - 1]
            if rest and number in rest.lost:
                yield RawPage(number, label, failure=CUT)
            else:
                yield _page(reader, laid, (number, label), before)


def _opened_or_saved(
    path: Path, stream: BinaryIO, password: str | None
) -> tuple[PdfReader, Salvaged | None]:
    """Open a file by pypdf; of one that is cut off, what is left of it."""
    try:
        return open_file(path, stream, password), None
    except DamagedError:
        stream.seek(0)
        rest = salvage(stream.read(MAX_FILE_BYTES))
        if rest is None:
            raise
    return open_file(path, BytesIO(rest.data), password), rest


@contextmanager
def _seldom_collected() -> Iterator[None]:
    """Look for dead cycles of objects seldom: a page makes thousands that have none."""
    usual = gc.get_threshold()
    gc.set_threshold(GARBAGE, *usual[1:])
    try:
        yield
    finally:
        gc.set_threshold(*usual)


def _opened(
    stack: ExitStack, opening: AbstractContextManager[Document], pages: int
) -> Document | None:
    """Open the file by pdfium too; nothing when it refuses or counts otherwise."""
    try:
        document = stack.enter_context(opening)
    except PdfiumError:
        return None
    return document if len(document) == pages else None


def _page(
    reader: PdfReader,
    laid: Document | None,
    place: tuple[int, str],
    before: list[Table],
) -> RawPage:
    """Read one page; `before` holds the last one's tables, which may go on."""
    number, label = place
    try:
        page = reader.pages[number - 1]
        found = None if laid is None else _laid_page(page, laid, place, before)
        if found is None or len(found.text) < NOTHING or fault_of(found.text):
            found = _better(found, page, number, label)
        found = _mended(found, page)
    except FAULTS as error:
        return RawPage(number, label, failure=reason_of(error))
    if len(found.text) > MAX_PAGE_CHARACTERS:
        failure = f"more than {MAX_PAGE_CHARACTERS} characters on one page"
        return RawPage(number, label, failure=failure)
    return found


def _mended(found: RawPage, page: PageObject) -> RawPage:
    """Take lines that pdfium damaged from pypdf, where pypdf has them whole."""
    lines = found.text.split("\n")

    def read_again() -> list[str]:
        return guarded(lambda: [row.text for row in rows_of(page)], [])

    text = "\n".join(mended(lines, read_again))
    return found if text == found.text else replace(found, text=text, raw=found.text)


def _laid_page(
    page: PageObject, document: Document, place: tuple[int, str], before: list[Table]
) -> RawPage | None:
    """Read a page by pdfium; nothing when it cannot be parsed."""
    try:
        check_size(page)
        with document.page(place[0] - 1) as opened:
            found = sheet(opened)
    except (PdfiumError, RecursionError):
        return None  # pypdf bears what would end pdfium
    shapes = upright(found.shapes)
    none: tuple[Table, ...] = ()
    tables = guarded(lambda: _tables(shapes, before), none)
    before[:] = tables
    laid = lay_out(shapes, tables)
    text = "\n".join(laid.lines)
    return RawPage(
        *place,
        text,
        drawn=len(text) < SCARCE and found.drawn,
        cover=_cover(shapes),
        prominent=tuple(_prominent(laid.rows)),
        tables=laid.tables,
        raw=found.raw if set(found.raw) - set(text) - _WHITE else "",
    )


def _cover(shapes: Shapes) -> float:
    """Return the share of a page under its largest picture, up to 1."""
    area = shapes.width * shapes.height
    largest = max(
        (
            (min(each.x1, shapes.width) - max(each.x0, 0.0))
            * (min(each.bottom, shapes.height) - max(each.top, 0.0))
            for each in shapes.pictures
        ),
        default=0.0,
    )
    return round(min(1.0, max(0.0, largest) / area), 3) if area > 0 else 0.0


def _tables(shapes: Shapes, before: Sequence[Table]) -> tuple[Table, ...]:
    """Return the ruled tables of a page, those that go on with their names."""
    return continued([before, find_tables(shapes)])[1]


def _better(
    found: RawPage | None, page: PageObject, number: int, label: str
) -> RawPage:
    """Return pypdf's page, unless it says no more than the one at hand."""
    try:
        lines = rows_of(page)
    except FAULTS:
        if found is None or not (found.text or found.drawn):
            raise  # better said so than called blank
        return found
    text = "\n".join(row.text for row in lines)
    if found is not None and (
        not text.strip()
        or fault_of(text)
        or (len(text) <= len(found.text) and not fault_of(found.text))
    ):
        return found
    drawn = found.drawn if found else guarded(lambda: is_drawn(page), True)
    return RawPage(
        number,
        label,
        text,
        drawn=len(text) < SCARCE and drawn,
        cover=found.cover if found else 0.0,
        prominent=tuple(_prominent(lines)),
    )


def _prominent(found: Sequence[Row]) -> Iterator[Prominent]:
    """Give the short lines that are larger than most of the page, or bold."""
    sizes: Counter[float] = Counter()
    for row in found:
        for fragment in row.fragments:
            sizes[round(fragment.size, 1)] += len(fragment.text)
    body = sizes.most_common(1)[0][0] if sizes else 0.0
    for row in found:
        text = row.text
        size = max(fragment.size for fragment in row.fragments)
        bold = all(fragment.bold for fragment in row.fragments)
        if len(text) > MAX_HEADING or not _one_cell(row):
            continue
        if bold or size >= LARGE * body:
            yield Prominent(text, round(size, 1), bold)


def _one_cell(row: Row) -> bool:
    """Whether the row is no table row; a heading's number may stand apart."""
    number, *rest = row.cells
    return not rest or (len(rest) == 1 and len(number[0].text.strip()) <= MAX_NUMBER)
