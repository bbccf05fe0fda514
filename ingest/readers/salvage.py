"""Makes a whole PDF of what is left of one that was cut off. Pure: bytes to bytes.

The table that tells where a file's objects lie stands at its end; without it no
library opens the file. Here the objects are found by their own marks, those in
packed object streams too, and written anew with a table of their own.
"""

from __future__ import annotations

import re
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from ingest.readers.base import MAX_PAGES

MOST_OBJECTS = 300_000
MOST_UNPACKED = 100_000_000
"""Bytes of all packed objects together."""
MOST_LEVELS = 20
_OBJECT = re.compile(rb"(?<!\d)(\d{1,8})[ \t\r\n]+(\d{1,5})[ \t\r\n]+obj\b")
_STREAM = re.compile(rb"\bstream\r?\n")
_PAGE = re.compile(rb"/Type\s*/Page(?![A-Za-z])")
_PAGES = re.compile(rb"/Type\s*/Pages\b")
_PACKED = re.compile(rb"/Type\s*/ObjStm\b")
_TABLE = re.compile(rb"/Type\s*/XRef\b")
_LOCKED = re.compile(rb"/Filter\s*/Standard\b")
_KIDS = re.compile(rb"/Kids\s*\[([^\]]*)\]")
_PARENT = re.compile(rb"/Parent\s*(\d+)\s+\d+\s+R")
_REFERENCE = re.compile(rb"(\d+)\s+\d+\s+R")
_ONE = rb"\s*\d+\s+\d+\s+R"
_CONTENTS = re.compile(rb"/Contents(?:\s*\[[^\]]*\]|" + _ONE + rb")")
_RESOURCES = re.compile(rb"/Resources" + _ONE)
_FONT_LIST = re.compile(rb"/Font" + _ONE)
_FONTS = re.compile(rb"/Font\s*<<[^>]*>>")
_LETTERS = re.compile(rb"/(?:DescendantFonts\s*\[[^\]]*\]|ToUnicode" + _ONE + rb")")
"""What tells the letters of a font."""
_STUB = b"<< /Type /Page /MediaBox [0 0 612 792] /Resources << >> >>"


@dataclass(frozen=True, slots=True)
class Salvaged:
    """A whole file made of the rest of one."""

    data: bytes
    pages: int
    lost: frozenset[int]
    """Physical numbers of pages of which nothing, or not all, is left."""

    @property
    def told(self) -> str:
        """What is said of the file."""
        left = self.pages - len(self.lost)
        return f"the file is cut off or damaged; {left} of {self.pages} pages are left"


@dataclass(frozen=True, slots=True)
class _Object:
    body: bytes
    generation: int = 0

    @property
    def head(self) -> bytes:
        """Its dictionary, without the stream behind it."""
        begin = _STREAM.search(self.body)
        return self.body[: begin.start()] if begin else self.body


def salvage(data: bytes) -> Salvaged | None:
    """Return what is left of a file; None where no page is left whole.

    Parameters
    ----------
    data : bytes
        The file. One that is encrypted is not worth the try: its key stands at
        the end.
    """
    found = _unpacked(_objects(data))
    if not found or any(_LOCKED.search(each.head) for each in found.values()):
        return None
    root = _root(found)
    order = _order(found, root)
    if not 0 < len(order) <= MAX_PAGES:
        return None
    lost = frozenset(
        at for at, number in enumerate(order, start=1) if not _is_whole(found, number)
    )
    if len(lost) == len(order):
        return None
    for number in order:
        found.setdefault(number, _Object(_STUB))
    return Salvaged(_written(found, root, order), len(order), lost)


def _objects(data: bytes) -> dict[int, _Object]:
    """Return the objects that are whole; of two of one number the later counts."""
    found: dict[int, _Object] = {}
    at = 0
    while len(found) < MOST_OBJECTS and (begin := _OBJECT.search(data, at)):
        end = data.find(b"endobj", begin.end())
        stream = _STREAM.search(data, begin.end(), end if end >= 0 else len(data))
        if stream:
            end = data.find(b"endstream", stream.end())
            end = data.find(b"endobj", end) if end >= 0 else end
        if end < 0:
            break
        body = data[begin.end() : end].strip(b" \t\r\n")
        found[int(begin[1])] = _Object(body, int(begin[2]))
        at = end
    return found


def _unpacked(found: dict[int, _Object]) -> dict[int, _Object]:
    """Return all objects by themselves, and none that only tells of others."""
    plain: dict[int, _Object] = {}
    left = MOST_UNPACKED
    for number, each in found.items():
        if _PACKED.search(each.head):
            inner = _unzipped(each, left)
            left -= len(inner)
            for name, body in _inside(each.head, inner):
                plain.setdefault(name, _Object(body))
        elif not _TABLE.search(each.head):
            plain[number] = each
    return plain


def _unzipped(packed: _Object, most: int) -> bytes:
    begin = _STREAM.search(packed.body)
    if begin is None or b"FlateDecode" not in packed.head:
        return b""
    try:
        return zlib.decompressobj().decompress(packed.body[begin.end() :], max(1, most))
    except zlib.error:
        return b""


def _inside(head: bytes, inner: bytes) -> Iterator[tuple[int, bytes]]:
    """Give the objects of an object stream (PDF 32000-1, 7.5.7)."""
    first = re.search(rb"/First\s+(\d+)", head)
    if first is None:
        return
    start = int(first[1])
    numbers = [int(each) for each in re.findall(rb"\d+", inner[:start])]
    places = list(zip(numbers[::2], numbers[1::2], strict=False))
    ends = [place for _, place in places[1:]] + [len(inner) - start]
    for (name, place), end in zip(places, ends, strict=False):
        yield name, inner[start + place : start + end].strip()


def _root(found: Mapping[int, _Object]) -> int | None:
    """Return the number of the top of the page tree, if that is left."""
    tops = (
        number
        for number, each in sorted(found.items())
        if _PAGES.search(each.head) and not _PARENT.search(each.head)
    )
    return next(tops, None)


def _order(found: Mapping[int, _Object], root: int | None) -> list[int]:
    """Return the numbers of all pages in their order, as far as it is known."""
    if root is None:
        return [number for number, each in found.items() if _PAGE.search(each.head)]
    return list(_leaves(found, root, MOST_LEVELS, set()))


def _leaves(
    found: Mapping[int, _Object], number: int, depth: int, seen: set[int]
) -> Iterator[int]:
    if number in seen:
        return
    seen.add(number)
    node = found.get(number)
    kids = _KIDS.search(node.head) if node and _PAGES.search(node.head) else None
    if kids is None or depth == 0:
        yield number
        return
    for kid in _REFERENCE.findall(kids[1]):
        yield from _leaves(found, int(kid), depth - 1, seen)


def _is_whole(found: Mapping[int, _Object], number: int) -> bool:
    """Whether a page is there, with all that it writes and its fonts."""
    page = found.get(number)
    if page is None:
        return False
    wanted = _named(_CONTENTS, page.head)
    fonts = page.head
    for resources in _named(_RESOURCES, page.head):
        wanted.append(resources)
        fonts = found[resources].head if resources in found else b""
    for listed in _named(_FONT_LIST, fonts):
        wanted.append(listed)
        fonts += b" /Font << %s >>" % (found[listed].head if listed in found else b"")
    for font in _named(_FONTS, fonts):
        wanted.append(font)
        if font in found:
            wanted += _named(_LETTERS, found[font].head)
    return all(number in found for number in wanted)


def _named(what: re.Pattern[bytes], body: bytes) -> list[int]:
    """Return the numbers of the objects that an entry refers to."""
    return [
        int(number)
        for match in what.finditer(body)
        for number in _REFERENCE.findall(match[0])
    ]


def _written(found: Mapping[int, _Object], root: int | None, order: list[int]) -> bytes:
    """Write objects with a table and a trailer (PDF 32000-1, 7.5.4 and 7.5.5)."""
    objects = dict(found)
    top = max(objects) + 1
    if root is None:
        root, top = top, top + 1
        kids = b" ".join(b"%d 0 R" % number for number in order)
        pages = b"<< /Type /Pages /Count %d /Kids [%s] >>" % (len(order), kids)
        objects[root] = _Object(pages)
    objects[top] = _Object(b"<< /Type /Catalog /Pages %d 0 R >>" % root)
    out = bytearray(b"%PDF-1.7\n")
    table = bytearray(b"xref\n0 1\n0000000000 65535 f \n")
    for number, each in sorted(objects.items()):
        table += b"%d 1\n%010d %05d n \n" % (number, len(out), each.generation)
        out += b"%d %d obj\n%s\nendobj\n" % (number, each.generation, each.body)
    trailer = b"trailer\n<< /Size %d /Root %d 0 R >>\n" % (top + 1, top)
    end = b"startxref\n%d\n%%%%EOF\n" % len(out)
    return bytes(out + table + trailer + end)
