"""Which reader a file needs, told by its first bytes and never by its name."""

from __future__ import annotations

import re
import stat
from pathlib import Path, PurePosixPath

from assistant.errors import InputError
from ingest.readers.base import MAX_FILE_BYTES
from ingest.readers.markdown import looks_like_markdown
from ingest.readers.separated import delimiter_of
from ingest.readers.text import decode

PDF = "ingest.readers.pdf:read_pdf"
TEXT = "ingest.readers.text:read_text"
HTML = "ingest.readers.hypertext:read_html"
MARKDOWN = "ingest.readers.markdown:read_markdown"
TABLE = "ingest.readers.separated:read_separated"
HEAD_BYTES = 1024
SAMPLE_BYTES = 65_536
"""How much of a text is looked at to tell what it is."""

_KINDS = {
    PDF: "a PDF",
    TEXT: "plain text",
    HTML: "a web page",
    MARKDOWN: "Markdown",
    TABLE: "a table as text",
}
_NAMES = {
    ".pdf": (PDF,),
    ".htm": (HTML,),
    ".html": (HTML,),
    ".xhtml": (HTML,),
    ".md": (MARKDOWN, TEXT),
    ".csv": (TABLE, TEXT),
    ".tsv": (TABLE, TEXT),
    ".txt": (TEXT, MARKDOWN, TABLE),
}
_TAG = re.compile(
    r"<(?:!doctype\s+html|html|head|body|table|div|h[1-6]|p|article|section|main)"
    r"(?=[\s>])",
    re.IGNORECASE,
)
_BEFORE_TAG = re.compile(r"(?:\s+|<\?xml[^>]{0,300}\?>|<!--.{0,4000}?-->)+", re.DOTALL)
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


def reader_of(path: Path, name: str = "") -> str:
    """Return the reader of a file, as ``module:function``.

    Parameters
    ----------
    path : Path
        The file.
    name : str, optional
        What it is called, where that is not the path's own name.

    Raises
    ------
    InputError
        Not a regular file, empty, too large, or of a kind that is not read.
    """
    name = name or path.name
    check_size(path, name)
    with path.open("rb") as file:
        head = file.read(HEAD_BYTES)
        kind = _foreign_kind(head)
        sample = head if kind else head + file.read(SAMPLE_BYTES - HEAD_BYTES)
    if b"%PDF-" in head:
        return PDF
    if kind and not _named_pdf(name):
        raise InputError(f"{name}: {kind}, not a PDF or text", _AS_PDF)
    reader = TEXT if kind else _text_reader(_sampled(sample))
    if _named_pdf(name) and reader != HTML:
        found = kind or "not a PDF inside"
        raise InputError(
            f"{name}: named .pdf, but it is {found}", "fetch the document again"
        )
    return reader


def misnamed(reader: str, name: str) -> str:
    """Return what to say where a file is not what its name says; else nothing.

    Examples
    --------
    >>> misnamed(HTML, "manual.pdf")
    'named .pdf, but it is a web page and is read as that'
    >>> misnamed(TEXT, "manual.txt")
    ''
    """
    suffix = PurePosixPath(name).suffix.lower()
    if reader in _NAMES.get(suffix, (reader,)):
        return ""
    return f"named {suffix}, but it is {_KINDS[reader]} and is read as that"


def _named_pdf(name: str) -> bool:
    return name.lower().endswith(".pdf")


def _sampled(data: bytes) -> str:
    """Return the start of a file as text, nothing where it is none.

    What the cut parted is left out, up to the line before.
    """
    if len(data) >= SAMPLE_BYTES:
        data = data[: data.rfind(b"\n") + 1] or data
        data = data[: len(data) // 2 * 2]
    try:
        text = decode(data, "")
    except InputError:
        return ""  # its reader will say so
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _text_reader(text: str) -> str:
    """Return the reader of a text, told by how it begins and how its lines are made."""
    before = _BEFORE_TAG.match(text)
    if _TAG.match(text, before.end() if before else 0):
        return HTML
    if looks_like_markdown(text):
        return MARKDOWN
    return TABLE if delimiter_of(text) else TEXT


def check_size(path: Path, name: str = "") -> None:
    """Refuse what is no regular file, is empty, or is larger than the limit.

    Raises
    ------
    InputError
        With the reason and the size.
    """
    name = name or path.name
    found = path.stat()
    if not stat.S_ISREG(found.st_mode):
        raise InputError(f"{name}: not a regular file")
    if found.st_size == 0:
        raise InputError(f"{name}: the file is empty", "fetch the document again")
    if found.st_size > MAX_FILE_BYTES:
        raise InputError(
            f"{name}: {found.st_size / 1e6:.0f} MB; the limit is "
            f"{MAX_FILE_BYTES / 1e6:.0f} MB",
            "split the document and add the parts",
        )


def _foreign_kind(head: bytes) -> str:
    for magic, kind in _OTHERS:
        if head.startswith(magic):
            return kind
    return ""
