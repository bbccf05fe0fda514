"""The one door to pypdf: opens a PDF, tells its facts, and reads its pages plainly.

Its text stands in where pdfium fails or gives text that is no words.
"""

from __future__ import annotations

import logging
import math
import re
from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from typing import Any, BinaryIO, TypeVar

from pypdf import PageObject, PdfReader
from pypdf.errors import (
    DependencyError,
    FileNotDecryptedError,
    LimitReachedError,
    PyPdfError,
    WrongPasswordError,
)
from pypdf.generic import (
    ContentStream,
    Destination,
    DictionaryObject,
    FloatObject,
    NameObject,
    PdfObject,
    StreamObject,
)

from assistant.errors import InputError
from ingest.readers.base import MAX_PAGES, FileFacts, LockedError
from ingest.readers.rows import Fragment, Row, is_gap, rows

Matrix = Sequence[float]
Font = Mapping[str, Any] | None
MAX_PACKED = 50_000
"""Streams of more bytes are unpacked by pypdf first: it stops at a limit."""
MAX_FORMS = 40
_WITH_PASSWORD = "add it with --password, or ask for a copy without one"  # noqa: S105
_PAINTS = re.compile(rb"(?:^|\s)(?:S|s|f|F|f\*|B|B\*|b|b\*|sh|EI)(?=\s|$)")
FAULTS = (
    PyPdfError,
    DependencyError,
    ArithmeticError,
    AssertionError,
    AttributeError,
    LookupError,
    MemoryError,
    NotImplementedError,
    OSError,
    RecursionError,
    TypeError,
    ValueError,
)
"""What pypdf was seen to raise on damaged files."""


class DamagedError(InputError):
    """The file cannot be opened as it is."""


def open_file(path: Path, stream: BinaryIO, password: str | None) -> PdfReader:
    """Open a PDF.

    Raises
    ------
    DamagedError
        It is damaged beyond opening.
    InputError
        It needs a password, or has too many pages.
    """
    logging.getLogger("pypdf").addHandler(logging.NullHandler())
    logging.getLogger("pypdf").propagate = False
    try:
        reader = PdfReader(stream, password=password)
        pages = len(reader.pages)
    except WrongPasswordError as error:
        raise LockedError(
            f"{path.name}: the password does not open it", _WITH_PASSWORD
        ) from error
    except (FileNotDecryptedError, DependencyError) as error:
        raise LockedError(
            f"{path.name}: encrypted, it needs a password", _WITH_PASSWORD
        ) from error
    except FAULTS as error:
        raise DamagedError(
            f"{path.name}: damaged PDF ({reason_of(error)})", "fetch the document again"
        ) from error
    if pages == 0:
        raise DamagedError(f"{path.name}: damaged PDF (no pages)", "fetch it again")
    if pages > MAX_PAGES:
        raise InputError(
            f"{path.name}: {pages} pages; the limit is {MAX_PAGES}",
            "split the document and add the parts",
        )
    return reader


def reason_of(error: BaseException) -> str:
    """Return why something could not be read, in a few words."""
    if isinstance(error, MemoryError):
        return "needs more memory than a reader may use"
    if isinstance(error, RecursionError):
        return "objects nested too deeply"
    if isinstance(error, LimitReachedError):
        return "unpacks to more than the limit"
    words = " ".join(str(error).split())
    return (words or type(error).__name__)[:120]


_T = TypeVar("_T")


def guarded(read: Callable[[], _T], otherwise: _T) -> _T:
    """Return what `read` gives; the ornaments of a file may be broken."""
    try:
        return read()
    except FAULTS:
        return otherwise


def facts_of(reader: PdfReader) -> FileFacts:
    """Return what the file says of itself."""

    def entry(name: str) -> str:
        words = guarded(lambda: str(_metadata(reader).get(name, "")), "")
        return "" if words.strip("() ") in _EMPTY_ENTRIES else words.strip()

    def created() -> str:
        when = reader.metadata.creation_date if reader.metadata else None
        return when.date().isoformat() if when else ""

    return FileFacts(
        pages=len(reader.pages),
        title=entry("/Title"),
        subject=entry("/Subject"),
        author=entry("/Author"),
        created=guarded(created, ""),
        outline=guarded(lambda: tuple(_outline(reader, reader.outline)), ()),
    )


def _metadata(reader: PdfReader) -> Mapping[str, Any]:
    return reader.metadata or {}


_EMPTY_ENTRIES = ("", "anonymous", "unspecified", "untitled", "None")


def _outline(reader: PdfReader, level: list[Any]) -> Iterator[tuple[str, int]]:
    for item in level:
        if isinstance(item, list):
            yield from _outline(reader, item)
        elif isinstance(item, Destination):
            index = guarded(partial(reader.get_destination_page_number, item), None)
            if index is not None and index >= 0:
                yield str(item.title).strip(), index + 1


def labels_of(reader: PdfReader, pages: int) -> list[str]:
    """Return the label of every page; its number where the file has none."""
    plain = [str(number) for number in range(1, pages + 1)]
    labels = guarded(lambda: list(reader.page_labels), plain)
    return labels if len(labels) == pages else plain


def rows_of(page: PageObject) -> list[Row]:
    """Extract with positions; plain lines where the positions lose a word."""
    fragments: list[Fragment] = []
    pending: list[Fragment] = []

    def flush() -> None:
        if pending:
            fragments.extend(_cells(pending))
            pending.clear()

    def visit(text: str, cm: Matrix, tm: Matrix, font: Font, size: float) -> None:
        for part in text.splitlines(keepends=True):
            words = part.rstrip("\r\n")
            if words.strip() or (words and pending):
                pending.append(_fragment(words, cm, tm, font, size))
            if words != part:
                flush()

    with _parted_at_moves(page):
        whole = page.extract_text(visitor_text=visit)
    flush()
    if "".join(f.text for f in fragments).split() != whole.split() and _letters(
        whole
    ) != _letters("".join(f.text for f in fragments)):
        return [Row([[Fragment(line, 0, 0, 0)]]) for line in whole.splitlines()]
    return rows(fragments)


@contextmanager
def _parted_at_moves(page: PageObject) -> Iterator[None]:
    """Make pypdf tell every move of the pen, not only those to another line.

    Some writers set a whole table row in one text object. An empty change of the
    page's matrix before each move changes nothing but has the text so far told.
    Afterwards the page is as it was: kept, the parsed pages of a long file would
    fill the memory.
    """
    if "/Contents" not in page:
        yield
        return
    before = page.raw_get("/Contents")
    contents = ContentStream(before, page.pdf, "bytes")
    parted: list[tuple[Any, bytes]] = []
    shown = False
    for operands, operator in contents.operations:
        if operator in _MOVES and shown:
            parted.append((_IDENTITY, b"cm"))
            shown = False
        shown = operator in _SHOWS or (shown and operator not in _ENDS)
        parted.append((operands, operator))
    contents.operations = parted
    page[NameObject("/Contents")] = contents
    try:
        yield
    finally:
        page[NameObject("/Contents")] = before


_IDENTITY = [FloatObject(value) for value in (1, 0, 0, 1, 0, 0)]
_MOVES = frozenset((b"Tm", b"Td", b"TD"))
_SHOWS = frozenset((b"Tj", b"TJ"))
_ENDS = frozenset((b"ET", b"BT"))


def _letters(text: str) -> str:
    return "".join(text.split())


def _fragment(text: str, cm: Matrix, tm: Matrix, font: Font, size: float) -> Fragment:
    """Place a piece of text in its own reading direction (PDF 32000-1, 9.4.4)."""
    a = tm[0] * cm[0] + tm[1] * cm[2]
    b = tm[0] * cm[1] + tm[1] * cm[3]
    scale = math.hypot(a, b) or 1.0
    x = tm[4] * cm[0] + tm[5] * cm[2] + cm[4]
    y = tm[4] * cm[1] + tm[5] * cm[3] + cm[5]
    along = (a * x + b * y) / scale
    above = (a * y - b * x) / scale
    name = str(font.get("/BaseFont", "")) if font else ""
    bold = "bold" in name.lower() or "black" in name.lower()
    return Fragment(text, along, above, abs(size) * scale, bold)


def _cells(pieces: list[Fragment]) -> Iterator[Fragment]:
    """Join the pieces of a line, but part them where a column's gap stands."""
    group: list[Fragment] = []
    for piece in pieces:
        if group and piece.text.strip() and is_gap(group[-1], piece):
            yield _joined(group)
            group = []
        group.append(piece)
    yield _joined(group)


def _joined(parts: list[Fragment]) -> Fragment:
    """Make one fragment of the pieces of a line; the largest share decides."""
    weights: Counter[float] = Counter()
    for part in parts:
        weights[round(part.size, 1)] += len(part.text.strip())
    text = "".join(part.text for part in parts)
    bold = all(part.bold for part in parts if part.text.strip())
    size, _ = weights.most_common(1)[0]
    return Fragment(text, parts[0].x, parts[0].y, size, bold)


def check_size(page: PageObject) -> None:
    """Unpack what is large, so that pypdf's limits speak before pdfium's memory.

    Raises
    ------
    LimitReachedError
        It unpacks to more than the limit.
    RecursionError
        A form draws itself.
    """
    contents = page.get("/Contents")
    body = contents.get_object() if contents is not None else None
    for part in body if isinstance(body, list) else [body]:
        _check_stream(part)
    _check_forms(page.get("/Resources"), frozenset(), [MAX_FORMS])


def _check_stream(part: PdfObject | None) -> None:
    body = part.get_object() if part is not None else None
    if not isinstance(body, StreamObject):
        return
    filters = body.get("/Filter")
    chained = isinstance(filters, list) and len(filters) > 1
    if chained or int(body.get("/Length", 0)) > MAX_PACKED:
        body.get_data()


def _check_forms(
    resources: PdfObject | None, above: frozenset[int], left: list[int]
) -> None:
    """Walk the forms of a page; one that stands inside itself is refused."""
    for item in _entries(_entries(resources).get("/XObject")).values():
        body = item.get_object()
        if not isinstance(body, StreamObject) or body.get("/Subtype") != "/Form":
            continue
        if id(body) in above:
            raise RecursionError
        left[0] -= 1
        if left[0] <= 0:
            return
        _check_stream(body)
        _check_forms(body.get("/Resources"), above | {id(body)}, left)


def is_drawn(page: PageObject) -> bool:
    """Whether the page shows a picture or paints a path."""
    contents = page.get_contents()
    if contents is None:
        return False
    if _PAINTS.search(contents.get_data()):
        return True
    return any(_objects(page.get("/Resources"), depth=3))


def _objects(resources: PdfObject | None, depth: int) -> Iterator[bool]:
    """Tell of every picture or painted form in the resources."""
    for item in _entries(_entries(resources).get("/XObject")).values():
        body = item.get_object()
        if depth == 0 or not isinstance(body, StreamObject):
            continue
        if body.get("/Subtype") == "/Image":
            yield True
        elif body.get("/Subtype") == "/Form":
            yield bool(_PAINTS.search(body.get_data()))
            yield from _objects(body.get("/Resources"), depth - 1)


def _entries(item: PdfObject | None) -> Mapping[Any, PdfObject]:
    body = item.get_object() if item is not None else None
    return body if isinstance(body, DictionaryObject) else {}
