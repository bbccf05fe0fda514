"""The reader of plain text; form feeds part its pages."""

from __future__ import annotations

import codecs
from collections.abc import Iterator
from pathlib import Path

from assistant.errors import InputError
from ingest.readers.base import (
    MAX_PAGE_CHARACTERS,
    MAX_PAGES,
    FileFacts,
    RawPage,
    Read,
)

PRINTABLE_SHARE = 0.95
NO_TEXT = "neither a PDF nor plain text"
AS_PDF = "print it to PDF, then add that"


def read_text(
    path: Path, first: int = 1, password: str | None = None
) -> Iterator[Read]:
    """Read a text file: its facts, then its pages from `first`.

    Raises
    ------
    InputError
        It does not decode, is mostly not printable, or has too many pages.
    """
    del password  # plain text has none
    pages = paged(decode(path.read_bytes(), path.name), path.name)
    yield FileFacts(len(pages))
    for number, text in enumerate(pages[first - 1 :], start=first):
        if len(text) > MAX_PAGE_CHARACTERS:
            failure = f"more than {MAX_PAGE_CHARACTERS} characters on one page"
            yield RawPage(number, str(number), failure=failure)
        else:
            yield RawPage(number, str(number), text)


def decode(data: bytes, name: str, *, whole: bool = True) -> str:
    """Decode as UTF-8, UTF-16 or Windows-1252, whichever holds.

    Parameters
    ----------
    data : bytes
        The file, or its start.
    name : str
        What it is called.
    whole : bool
        It is not only the start, whose last sign may be cut.

    Raises
    ------
    InputError
        None of them gives mostly printable text.
    """
    for encoding in _candidates(data):
        try:
            text = codecs.getincrementaldecoder(encoding)().decode(data, whole)
        except UnicodeDecodeError:
            continue
        if _printable(text, guessed=encoding.startswith("utf-16-")):
            return text
    raise InputError(f"{name}: {NO_TEXT}", AS_PDF)


def _candidates(data: bytes) -> tuple[str, ...]:
    if data.startswith(codecs.BOM_UTF8):
        return ("utf-8-sig",)
    if data.startswith((codecs.BOM_UTF16_LE, codecs.BOM_UTF16_BE)):
        return ("utf-16",)
    return ("utf-8", "utf-16-le", "utf-16-be", "cp1252")


def _printable(text: str, *, guessed: bool) -> bool:
    """Whether nearly all is printable; a guessed UTF-16 must be half ASCII.

    Any even run of bytes decodes as UTF-16, mostly into East Asian signs.
    """
    sample = text[:200_000]
    if guessed and 2 * sum(map(str.isascii, sample)) < len(sample):
        return False
    good = sum(char.isprintable() or char in "\n\r\t\f" for char in sample)
    return good >= PRINTABLE_SHARE * len(sample) and "\0" not in sample


def paged(text: str, name: str) -> list[str]:
    """Part a text at its form feeds.

    Raises
    ------
    InputError
        There are too many pages.
    """
    pages = text.split("\f")
    if len(pages) > 1 and not pages[-1].strip():
        pages.pop()
    if len(pages) > MAX_PAGES:
        raise InputError(
            f"{name}: {len(pages)} pages; the limit is {MAX_PAGES}",
            "split the document and add the parts",
        )
    return pages
