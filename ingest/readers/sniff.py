"""Which reader a file needs, told by its first bytes and never by its name."""

from __future__ import annotations

import stat
from pathlib import Path

from assistant.errors import InputError
from ingest.readers.base import MAX_FILE_BYTES

PDF = "ingest.readers.pdf:read_pdf"
TEXT = "ingest.readers.text:read_text"
HEAD_BYTES = 1024

_OTHERS = (
    (b"PK\x03\x04", "a ZIP container (an office document or an archive)"),
    (b"\xd0\xcf\x11\xe0", "an old office document"),
    (b"\x89PNG", "a picture"),
    (b"\xff\xd8\xff", "a picture"),
    (b"GIF8", "a picture"),
    (b"II*\x00", "a picture"),
    (b"MM\x00*", "a picture"),
    (b"\x7fELF", "a program"),
    (b"MZ", "a program"),
    (b"\x1f\x8b", "a compressed file"),
    (b"7z\xbc\xaf", "an archive"),
    (b"Rar!", "an archive"),
    (b"SQLite format 3", "a database"),
    (b"{\\rtf", "a rich-text document"),
    (b"%!PS", "a PostScript file"),
)
_AS_PDF = "print it to PDF, then add that"


def reader_of(path: Path) -> str:
    """Return the reader of a file, as ``module:function``.

    Raises
    ------
    InputError
        Not a regular file, empty, too large, or of a kind that is not read.
    """
    check_size(path)
    with path.open("rb") as file:
        head = file.read(HEAD_BYTES)
    if b"%PDF-" in head:
        return PDF
    kind = _foreign_kind(head)
    if path.suffix.lower() == ".pdf":
        found = kind or "not a PDF inside"
        raise InputError(
            f"{path.name}: named .pdf, but it is {found}", "fetch the document again"
        )
    if kind:
        raise InputError(f"{path.name}: {kind}, not a PDF or plain text", _AS_PDF)
    return TEXT


def check_size(path: Path) -> None:
    """Refuse what is no regular file, is empty, or is larger than the limit.

    Raises
    ------
    InputError
        With the reason and the size.
    """
    found = path.stat()
    if not stat.S_ISREG(found.st_mode):
        raise InputError(f"{path.name}: not a regular file")
    if found.st_size == 0:
        raise InputError(f"{path.name}: the file is empty", "fetch the document again")
    if found.st_size > MAX_FILE_BYTES:
        raise InputError(
            f"{path.name}: {found.st_size / 1e6:.0f} MB; the limit is "
            f"{MAX_FILE_BYTES / 1e6:.0f} MB",
            "split the document and add the parts",
        )


def _foreign_kind(head: bytes) -> str:
    for magic, kind in _OTHERS:
        if head.startswith(magic):
            return kind
    start = head.lstrip(b"\xef\xbb\xbf \t\r\n").lower()
    if start.startswith((b"<!doctype html", b"<html", b"<head")):
        return "an HTML page"
    return ""
