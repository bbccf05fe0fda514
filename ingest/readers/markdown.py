"""The reader of Markdown: its words, headings and pipe tables; marks of style go."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path
from typing import TYPE_CHECKING

from ingest.readers.base import FileFacts, Read
from ingest.readers.sheet import Sheet, from_first
from ingest.readers.text import decode, paged

if TYPE_CHECKING:
    from markdown_it.token import Token

_BREAK = re.compile(r"<br\s*/?>", re.IGNORECASE)
_HEAD = re.compile(r"#{1,6}[ \t]+\S")
_DELIMITERS = re.compile(r"\s{0,3}\|?\s*:?-+:?\s*(?:\|\s*:?-+:?\s*)+\|?\s*")
_FENCE = re.compile(r"(?:```|~~~)\s*\w*\s*")
_LINK = re.compile(r"!?\[[^\]\n]{1,200}\]\([^)\s]{1,500}\)")
_STRONG = re.compile(r"\*\*[^*\s][^*\n]{0,200}\*\*|`[^`\n]{1,200}`")
_TWO_MARKS = 2


def read_markdown(
    path: Path, first: int = 1, password: str | None = None
) -> Iterator[Read]:
    """Read a Markdown file; form feeds part its pages.

    Raises
    ------
    InputError
        It does not decode, or has too many pages.
    """
    del password  # a Markdown file has none
    pages = paged(decode(path.read_bytes(), path.name), path.name)
    sheets = [_sheet(text) for text in pages]
    yield FileFacts(len(sheets))
    yield from from_first(sheets, first)


def looks_like_markdown(text: str) -> bool:
    r"""Whether a text is marked up, and does not merely hold a stray sign.

    A table's delimiter row under a row with bars settles it; else a heading mark
    and one more kind of mark, or three heading marks, must be there.

    Examples
    --------
    >>> looks_like_markdown("# Lamps\n\n- **LD2** flashes\n")
    True
    >>> looks_like_markdown("# 4 is the order number\nCall the shop.\n")
    False
    """
    lines = text.split("\n")
    for above, below in pairwise(lines):
        if "|" in above and "|" in below and _DELIMITERS.fullmatch(below):
            return True
    heads = sum(_HEAD.match(line) is not None for line in lines)
    marks = (
        heads > 0,
        any(_FENCE.fullmatch(line) for line in lines),
        bool(_LINK.search(text)),
        bool(_STRONG.search(text)),
    )
    return heads > _TWO_MARKS or sum(marks) >= _TWO_MARKS


def _sheet(text: str) -> Sheet:
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark", {"html": False}).enable("table")
    writer = _Writer()
    for token in parser.parse(text):
        writer.take(token)
    return writer.sheet


@dataclass(slots=True)
class _Writer:
    """Writes block after block to a sheet."""

    sheet: Sheet = field(default_factory=Sheet)
    lists: list[int | None] = field(default_factory=list)
    mark: str = ""
    """What the next line of a list opens with."""
    heading: int = 0
    rows: list[list[str]] | None = None
    heads: int = 0

    def take(self, token: Token) -> None:
        """Write one block token."""
        kind, _, edge = token.type.rpartition("_")
        if edge == "open":
            self._open(kind, token)
        elif edge == "close":
            self._close(kind)
        elif token.type == "inline":
            self._words(_plain(token.children or ()))
        elif token.type in {"fence", "code_block"}:
            self._code(token.content)

    def _open(self, kind: str, token: Token) -> None:
        if kind == "heading":
            self.heading = int(token.tag[1])
        elif kind == "bullet_list":
            self.lists.append(None)
        elif kind == "ordered_list":
            self.lists.append(int(token.attrGet("start") or 1))
        elif kind == "list_item":
            self._open_item()
        elif kind == "table":
            self.rows, self.heads = [], 0
        elif kind == "tr" and self.rows is not None:
            self.rows.append([])
        elif kind == "paragraph" and not token.hidden and not self.mark:
            self.sheet.blank()

    def _close(self, kind: str) -> None:
        if kind == "heading":
            self.heading = 0
        elif kind in {"bullet_list", "ordered_list"}:
            self.lists.pop()
        elif kind == "thead":
            self.heads = len(self.rows or ())
        elif kind == "table" and self.rows is not None:
            self.sheet.table(self.rows, self.heads)
            self.rows = None

    def _open_item(self) -> None:
        number = self.lists[-1]
        self.mark = "- " if number is None else f"{number}. "
        if number is not None:
            self.lists[-1] = number + 1

    def _words(self, text: str) -> None:
        if self.rows:
            self.rows[-1].append(text.replace("\n", " "))
            return
        if self.heading:
            self.sheet.heading(text, self.heading)
            return
        for line in text.split("\n"):
            self.sheet.line(self.mark + line)
            self.mark = ""

    def _code(self, text: str) -> None:
        """Write what is set as it is: displays and wiring lists often are."""
        self.sheet.blank()
        for line in text.rstrip("\n").split("\n"):
            self.sheet.line(line)
        self.sheet.blank()


def _plain(tokens: Sequence[Token]) -> str:
    parts: list[str] = []
    for token in tokens:
        if token.type in {"softbreak", "hardbreak"}:
            parts.append("\n")
        elif token.type in {"text", "code_inline", "image"}:
            parts.append(token.content)
    return _BREAK.sub(" ", "".join(parts))
