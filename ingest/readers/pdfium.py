"""The one door to pdfium: pages give characters, paths and pictures, as plain values.

pdfium runs only in a reading process: a damaged file can end it. All it holds of a
page is given back before the next page.
"""

from __future__ import annotations

import ctypes
import math
import os
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from pathlib import Path as FilePath
from struct import Struct
from typing import Any, TypeAlias

import pypdfium2_raw as raw

from ingest.readers.geometry import Frame, Matrix
from ingest.readers.pdfium_values import Drawn, Font, Objects, Picture, Run, Style

MAX_SEGMENTS = 4_000
"""A path of more is a drawing."""
MAX_PAGE_SEGMENTS = 40_000
MAX_OBJECTS = 60_000
UPRIGHT = 0.999
"""Cosine: characters of such lines stand side by side, left to right."""
MAX_DEPTH = 6
"""Forms inside forms; deeper ones are not looked into."""
_NAME_BYTES = 128
_FORCE_BOLD = 1 << 18
_HEAVY = ("bold", "black", "heavy", "demi")
_SYMBOLS = ("wingding", "symbol", "dingbat", "webding")
_STROKED_TEXT = 2


Box: TypeAlias = tuple[float, float, float, float]
Handle: TypeAlias = Any
"""A pointer or structure of pdfium: its bindings have no types."""


class PdfiumError(Exception):
    """pdfium cannot open the file, or a page of it."""


def _quick(function: Handle, *kinds: Handle, gives: Handle = ctypes.c_int) -> Handle:
    """Return a function of pdfium that takes bare addresses and keeps the lock.

    It is asked for every word: the checks of the bindings cost more than its work.
    """
    return ctypes.cast(function, ctypes.PYFUNCTYPE(gives, *kinds))


_ADDRESS = ctypes.c_void_p
_OBJECT = _quick(
    raw.FPDFText_GetTextObject, _ADDRESS, ctypes.c_int, gives=ctypes.c_void_p
)
_FONT = _quick(raw.FPDFTextObj_GetFont, _ADDRESS, gives=ctypes.c_void_p)
_ORIGIN = _quick(raw.FPDFText_GetCharOrigin, _ADDRESS, ctypes.c_int, _ADDRESS, _ADDRESS)
_BOX = _quick(raw.FPDFText_GetLooseCharBox, _ADDRESS, ctypes.c_int, _ADDRESS)
_PLACED = Struct("2d4f")
"""Two doubles for a character's origin, and FS_RECTF: left, top, right, bottom."""
_Y, _RECTANGLE = 8, 16
_NO_FONT = Font(bold=False, symbols=False)
_initialised: list[bool] = []


@contextmanager
def open_document(
    path: FilePath, password: str | None, data: bytes | None = None
) -> Iterator[Document]:
    """Open a file, or `data` in its place, for as long as the context lasts.

    Raises
    ------
    PdfiumError
        It cannot be opened.
    """
    if not _initialised:
        raw.FPDF_InitLibrary()
        _initialised.append(True)
    secret = password.encode() if password else None
    if data is None:
        handle = raw.FPDF_LoadDocument(os.fsencode(path), secret)
    else:
        handle = raw.FPDF_LoadMemDocument64(data, len(data), secret)
    if not handle:
        raise PdfiumError(f"pdfium refuses it (error {raw.FPDF_GetLastError()})")
    try:
        yield Document(handle)
    finally:
        raw.FPDF_CloseDocument(handle)


class Document:
    """An open file."""

    def __init__(self, handle: Handle) -> None:
        self._handle = handle

    def __len__(self) -> int:
        return int(raw.FPDF_GetPageCount(self._handle))

    @contextmanager
    def page(self, index: int) -> Iterator[OpenPage]:
        """Open a page, from 0, for as long as the context lasts.

        Raises
        ------
        PdfiumError
            It cannot be parsed.
        """
        with self._loaded(index) as page:
            text = raw.FPDFText_LoadPage(page)
            if not text:
                raise PdfiumError("pdfium cannot parse the text of the page")
            try:
                yield OpenPage(page, text)
            finally:
                raw.FPDFText_ClosePage(text)

    def picture(self, index: int, scale: float, most: int) -> Picture:
        """Draw a page, from 0, in grey.

        Parameters
        ----------
        index : int
            The page.
        scale : float
            Pixels a point; fewer where the picture would have more than `most`.
        most : int
            Pixels, but for sides that are rounded up.

        Raises
        ------
        PdfiumError
            It cannot be parsed, or has no size that can be drawn.
        """
        with self._loaded(index) as page:
            sides = raw.FPDF_GetPageWidthF(page), raw.FPDF_GetPageHeightF(page)
            scale = min(scale, math.sqrt(most / max(1e-9, math.prod(sides))))
            if not all(0 < side * scale <= most for side in sides):
                raise PdfiumError("its page has no size that can be drawn")
            width, height = (math.ceil(side * scale) for side in sides)
            grey = bytearray(b"\xff") * (width * height)
            buffer = (ctypes.c_ubyte * len(grey)).from_buffer(grey)
            bitmap = raw.FPDFBitmap_CreateEx(
                width, height, raw.FPDFBitmap_Gray, buffer, width
            )
            if not bitmap:
                raise PdfiumError("pdfium cannot draw a page of that size")
            flags = raw.FPDF_GRAYSCALE | raw.FPDF_ANNOT
            raw.FPDF_RenderPageBitmap(bitmap, page, 0, 0, width, height, 0, flags)
            raw.FPDFBitmap_Destroy(bitmap)
            return Picture(width, height, grey)

    @contextmanager
    def _loaded(self, index: int) -> Iterator[Handle]:
        page = raw.FPDF_LoadPage(self._handle, index)
        if not page:
            raise PdfiumError("pdfium cannot parse the page")
        try:
            yield page
        finally:
            raw.FPDF_ClosePage(page)


class OpenPage:
    """One page in hand."""

    def __init__(self, page: Handle, text: Handle) -> None:
        self._page = page
        self._text = text
        self._address = ctypes.cast(text, ctypes.c_void_p).value or 0
        self._placed = ctypes.create_string_buffer(_PLACED.size)
        self._matrix = raw.FS_MATRIX()
        self._fonts: dict[int, Font] = {}
        self._styles: dict[int, Style] = {}

    def frame(self) -> Frame:
        """Return the page's box, inherited where it is, and its quarter turns."""
        box = raw.FS_RECTF()
        raw.FPDF_GetPageBoundingBox(self._page, box)
        turns = raw.FPDFPage_GetRotation(self._page) % 4
        return Frame(box.left, box.bottom, box.right, box.top, turns)

    def text(self) -> str:
        """Return all characters, one for each index that the other methods take."""
        count = raw.FPDFText_CountChars(self._text)
        if count <= 0:
            return ""
        buffer = (ctypes.c_ushort * (count + 1))()
        got = raw.FPDFText_GetText(self._text, 0, count, buffer)
        if got == count + 1:
            units = bytes(buffer)[: 2 * count]
            found = units.decode("utf-16-le", "surrogatepass")
            if len(found) == count:
                return found
        codes = (raw.FPDFText_GetUnicode(self._text, at) for at in range(count))
        return "".join(map(chr, codes))

    def runs(self, spans: Iterable[tuple[int, int]]) -> Iterator[Run]:
        """Give where words stand, each from its first character to before its end.

        One loop for the whole page: each call costs as much as all else.
        """
        text, placed, styles = self._address, self._placed, self._styles
        x_at = ctypes.addressof(placed)
        y_at, box_at = x_at + _Y, x_at + _RECTANGLE
        unpack, of, origin, loose = _PLACED.unpack, _OBJECT, _ORIGIN, _BOX
        for start, end in spans:
            key = of(text, start) or 0
            style = styles.get(key) or self._new_style(start, key)
            origin(text, start, x_at, y_at)
            loose(text, end - 1, box_at)
            x, y, left, high, right, low = unpack(placed)
            if style.a > UPRIGHT and right > x:
                away = low - y if low > y else y - high if high < y else 0.0
                yield Run(x, low, right, high, x, y, away, style)
            else:
                yield self._turned_run(start, (x, y), (left, low, right, high), style)

    def _turned_run(
        self, start: int, origin: tuple[float, float], last: Box, style: Style
    ) -> Run:
        _BOX(self._address, start, ctypes.addressof(self._placed) + _RECTANGLE)
        _, _, x0, y1, x1, y0 = _PLACED.unpack(self._placed)
        left, bottom, right, top = last
        x, y = origin
        across = (
            ((left + right) / 2 - (x0 + x1) / 2) * style.b,
            ((bottom + top) / 2 - (y0 + y1) / 2) * style.a,
        )
        box = (min(left, x0), min(bottom, y0), max(right, x1), max(top, y1))
        return Run(*box, x, y, abs(across[1] - across[0]), style)

    def origin(self, at: int) -> tuple[float, float]:
        """Return where a character stands on its base line."""
        place = ctypes.addressof(self._placed)
        _ORIGIN(self._address, at, place, place + _Y)
        x, y, *_ = _PLACED.unpack(self._placed)
        return x, y

    def style(self, at: int) -> Style:
        """Return how a character is set."""
        key = _OBJECT(self._address, at) or 0
        return self._styles.get(key) or self._new_style(at, key)

    def _new_style(self, at: int, key: int) -> Style:
        handle = raw.FPDFText_GetTextObject(self._text, at)
        matrix = self._matrix
        raw.FPDFText_GetMatrix(self._text, at, matrix)
        scale = (matrix.a**2 + matrix.b**2) ** 0.5 or 1.0
        size = abs(raw.FPDFText_GetFontSize(self._text, at)) * scale
        font = self._font(handle) if handle else _NO_FONT
        known = Style(round(size, 2), matrix.a / scale, matrix.b / scale, font)
        if key:
            self._styles[key] = known
        return known

    def _font(self, text_object: Handle) -> Font:
        key = _FONT(text_object) or 0
        found = self._fonts.get(key)
        if found is None:
            handle = raw.FPDFTextObj_GetFont(text_object)
            found = self._fonts[key] = _font(handle) if handle else _NO_FONT
        if raw.FPDFTextObj_GetTextRenderMode(text_object) == _STROKED_TEXT:
            return Font(bold=True, symbols=found.symbols)
        return found

    def objects(self) -> Objects:
        """Return the paths and pictures, those of forms among them."""
        found = Objects()
        count = raw.FPDFPage_CountObjects(self._page)
        for at in range(count):
            handle = raw.FPDFPage_GetObject(self._page, at)
            _take(handle, Matrix(), MAX_DEPTH, found)
        return found


def _font(handle: Handle) -> Font:
    buffer = ctypes.create_string_buffer(_NAME_BYTES)
    raw.FPDFFont_GetBaseFontName(handle, buffer, _NAME_BYTES)
    name = buffer.value.decode("utf-8", "replace").lower()
    forced = raw.FPDFFont_GetFlags(handle) & _FORCE_BOLD
    return Font(
        bold=bool(forced > 0) or any(word in name for word in _HEAVY),
        symbols=any(word in name for word in _SYMBOLS),
    )


def _take(handle: Handle, outer: Matrix, depth: int, found: Objects) -> None:
    """Note one object of a page; walk into forms."""
    found.seen += 1
    if found.seen > MAX_OBJECTS:
        found.drawing = True
        return
    kind = raw.FPDFPageObj_GetType(handle)
    if kind == raw.FPDF_PAGEOBJ_PATH:
        _take_path(handle, outer, found)
    elif kind == raw.FPDF_PAGEOBJ_IMAGE:
        found.pictures.append(_matrix(handle).then(outer).unit_box())
    elif kind == raw.FPDF_PAGEOBJ_SHADING:
        found.shaded = True
    elif kind == raw.FPDF_PAGEOBJ_FORM and depth > 0:
        inner = _matrix(handle).then(outer)
        for at in range(raw.FPDFFormObj_CountObjects(handle)):
            _take(raw.FPDFFormObj_GetObject(handle, at), inner, depth - 1, found)


def _matrix(handle: Handle) -> Matrix:
    matrix = raw.FS_MATRIX()
    raw.FPDFPageObj_GetMatrix(handle, matrix)
    return Matrix(matrix.a, matrix.b, matrix.c, matrix.d, matrix.e, matrix.f)


def _take_path(handle: Handle, outer: Matrix, found: Objects) -> None:
    mode, stroke = ctypes.c_int(), raw.FPDF_BOOL()
    raw.FPDFPath_GetDrawMode(handle, mode, stroke)
    stroked, filled = bool(stroke.value), mode.value != raw.FPDF_FILLMODE_NONE
    if not (stroked or filled):
        return  # it only clips
    count = raw.FPDFPath_CountSegments(handle)
    found.segments += count
    if count > MAX_SEGMENTS or found.segments > MAX_PAGE_SEGMENTS:
        found.drawing = True
        return
    path = Drawn([], False, stroked, filled, _colour(handle) if filled else (0, 0, 0))
    _take_points(handle, count, _matrix(handle).then(outer), path)
    found.paths.append(path)


def _colour(handle: Handle) -> tuple[int, int, int]:
    """Return the colour of a fill; one that cannot be seen is white."""
    red, green, blue, alpha = (ctypes.c_uint() for _ in range(4))
    told = raw.FPDFPageObj_GetFillColor(handle, red, green, blue, alpha)
    if told and alpha.value == 0:
        return (255, 255, 255)
    return (red.value, green.value, blue.value)


def _take_points(handle: Handle, count: int, matrix: Matrix, path: Drawn) -> None:
    x, y = ctypes.c_float(), ctypes.c_float()
    for at in range(count):
        segment = raw.FPDFPath_GetPathSegment(handle, at)
        kind = raw.FPDFPathSegment_GetType(segment)
        raw.FPDFPathSegment_GetPoint(segment, x, y)
        point = matrix.apply(x.value, y.value)
        if kind != raw.FPDF_SEGMENT_LINETO or not path.points:
            path.curved = path.curved or kind == raw.FPDF_SEGMENT_BEZIERTO
            path.points.append([point])
        else:
            path.points[-1].append(point)
        if raw.FPDFPathSegment_GetClose(segment) and len(path.points[-1]) > 1:
            path.points[-1].append(path.points[-1][0])
