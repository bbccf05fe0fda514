"""Which reader a file needs, told by its first bytes and never by its name."""

from __future__ import annotations

import re
import stat
from pathlib import Path, PurePosixPath

from assistant.errors import InputError
from ingest.readers.base import MAX_FILE_BYTES
from ingest.readers.markdown import looks_like_markdown
from ingest.readers.separated import delimiter_of
from ingest.readers.text import AS_PDF, NO_TEXT, decode

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
        sample = file.read(SAMPLE_BYTES)
        whole = not file.read(1)
    head = sample[:HEAD_BYTES]
    if b"%PDF-" in head:
        return PDF
    kind = _foreign_kind(head)
    reader = "" if kind else _text_reader(sample, whole=whole)
    if name.lower().endswith(".pdf") and reader != HTML:
        raise InputError(
            f"{name}: named .pdf, but it is {kind or 'not a PDF inside'}",
            "fetch the document again",
        )
    if not reader:
        found = f"{kind}, not a PDF or text" if kind else NO_TEXT
        raise InputError(f"{name}: {found}", AS_PDF)
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


def _text_reader(data: bytes, *, whole: bool) -> str:
    """Return the reader of a text by how it begins; nothing where it is none."""
    try:
        text = decode(data, "", whole=whole)
    except InputError:
        # A web page names its encoding itself.
        return HTML if _is_web_page(data.decode("latin-1")) else ""
    text = text.replace("\r\n", "\n").replace("\r", "\n")
    if not whole:
        text = text[: text.rfind("\n") + 1] or text
    if _is_web_page(text):
        return HTML
    if looks_like_markdown(text):
        return MARKDOWN
    return TABLE if delimiter_of(text) else TEXT


def _is_web_page(text: str) -> bool:
    before = _BEFORE_TAG.match(text)
    return bool(_TAG.match(text, before.end() if before else 0))


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
