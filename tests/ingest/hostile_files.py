"""Some fifty hostile and broken files, made by a script, each with what it is.

All of it is written here; only the first lines of each name a way in which real
files are broken or made to break a reader.
"""

from __future__ import annotations

import io
import random
import zipfile
from collections.abc import Callable, Sequence
from pathlib import Path

from tests.ingest import hostile_nesting as nesting
from tests.ingest.hostile_nesting import FONT, TEXT, page_of
from tests.ingest.sample_pdfs import (
    canvas_pdf,
    encrypted_pdf,
    one_page,
    raw_pdf,
    stream,
)

WHOLE_PAGES = 8

Maker = Callable[[Path], object]


def hostile_files(folder: Path, only: Sequence[str] = ()) -> list[Path]:
    """Write the files into a folder, sorted by name; those named, or all."""
    folder.mkdir(parents=True, exist_ok=True)
    makers = {**_FILES, **_cut_files(folder)}
    for name, make in sorted(makers.items()):
        if not only or name in only:
            make(folder / name)
    return sorted(path for path in folder.iterdir() if path.is_file())


def good_files(folder: Path, many: int = 6) -> list[Path]:
    """Write manuals that must go in whatever lies beside them."""
    folder.mkdir(parents=True, exist_ok=True)
    made = []
    for number in range(1, many + 1):
        lines = [
            f"{number}. Good manual {number}",
            f"Lamp LD{number} flashes {number} times when the sensor is open.",
        ]
        made.append(canvas_pdf(folder / f"good-{number}.pdf", [lines] * 3))
    return made


def _writes(data: bytes) -> Maker:
    return lambda path: path.write_bytes(data)


def _made(make: Callable[[], bytes]) -> Maker:
    return lambda path: path.write_bytes(make())


def _cut_files(folder: Path) -> dict[str, Maker]:
    def cut(tenth: int) -> Maker:
        def make(path: Path) -> None:
            pages = [[f"page {n}"] for n in range(1, WHOLE_PAGES)]
            whole = canvas_pdf(folder / "whole.tmp", pages)
            data = whole.read_bytes()
            whole.unlink()
            path.write_bytes(data[: len(data) * tenth // 10])

        return make

    return {f"cut-at-{tenth}-tenths.pdf": cut(tenth) for tenth in range(1, 10)}


# What is too large, too many, or of a wrong kind.


def _many_pages(many: int) -> Callable[[], bytes]:
    def make() -> bytes:
        objects = one_page(stream(TEXT), FONT)
        kids = b" ".join(b"%d 0 R" % number for number in range(5, 5 + many))
        objects[1] = b"<< /Type /Pages /Kids [" + kids + b"] /Count %d >>" % many
        one = (
            b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 595 842] "
            b"/Contents 4 0 R /Resources " + FONT + b" >>"
        )
        return raw_pdf([*objects, *[one] * many])

    return make


def _box(numbers: bytes) -> Callable[[], bytes]:
    def make() -> bytes:
        objects = one_page(stream(TEXT), FONT)
        objects[2] = objects[2].replace(b"[0 0 595 842]", numbers)
        return raw_pdf(objects)

    return make


def _count_lies() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [3 0 R] /Count 999999999 >>"
    return raw_pdf(objects)


def _no_pages() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [] /Count 0 >>"
    return raw_pdf(objects)


def _huge_picture() -> bytes:
    picture = (
        b"/Type /XObject /Subtype /Image /Width 60000 /Height 60000 "
        b"/ColorSpace /DeviceRGB /BitsPerComponent 8"
    )
    resources = b"<< /XObject << /X 5 0 R >> >>"
    return page_of(stream(b"/X Do"), resources, stream(b"\0" * 10_000_000, picture))


def _font(font: bytes, *more: bytes) -> bytes:
    return page_of(stream(TEXT), b"<< /Font << /F1 " + font + b" >> >>", *more)


def _font_cycle() -> bytes:
    composite = (
        b"<< /Type /Font /Subtype /Type0 /BaseFont /Own /Encoding /Identity-H "
        b"/DescendantFonts [5 0 R] >>"
    )
    return _font(b"5 0 R", composite)


def _font_noise() -> bytes:
    noise = random.Random(4).randbytes(60_000)  # noqa: S311 - noise, no secret
    font = (
        b"<< /Type /Font /Subtype /TrueType /BaseFont /Noise /FirstChar 0 "
        b"/LastChar 99999999 /Widths [1 2 (x)] /FontDescriptor 5 0 R >>"
    )
    told = b"<< /Type /FontDescriptor /FontName /Noise /Flags 4 /FontFile2 6 0 R >>"
    return _font(font, told, stream(noise))


def _letters_flood() -> bytes:
    """Return a map from codes to letters that makes each code fifty thousand."""
    flood = b"<" + b"0041" * 50_000 + b">"
    table = b"100 beginbfchar\n" + b"".join(
        b"<%02x> " % code + flood + b"\n" for code in range(32, 132)
    )
    font = b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /ToUnicode 5 0 R >>"
    return _font(font, stream(table + b"endbfchar"))


def _letters_range() -> bytes:
    table = b"1 beginbfrange\n<00000000> <ffffffff> <0041>\nendbfrange"
    font = b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica /ToUnicode 5 0 R >>"
    return _font(font, stream(table))


def _type3_that_draws_itself() -> bytes:
    font = (
        b"<< /Type /Font /Subtype /Type3 /FontBBox [0 0 9 9] "
        b"/FontMatrix [1 0 0 1 0 0] /CharProcs << /a 6 0 R >> /Encoding "
        b"<< /Differences [32 /a] >> /FirstChar 32 /LastChar 32 /Widths [9] "
        b"/Resources << /Font << /F1 5 0 R >> >> >>"
    )
    return _font(b"5 0 R", font, stream(b"BT /F1 9 Tf ( ) Tj ET"))


def _filters() -> bytes:
    chain = b"[" + b"/ASCIIHexDecode " * 5_000 + b"]"
    return page_of(b"<< /Length 2 /Filter " + chain + b" >>\nstream\n41\nendstream")


def _bad_predictor() -> bytes:
    extra = b"/DecodeParms << /Predictor 15 /Columns 2147483647 /Colors 99999 >>"
    return page_of(stream(TEXT, extra))


def _flipped() -> bytes:
    data = bytearray(raw_pdf(one_page(stream(TEXT * 200), FONT)))
    chance = random.Random(7)  # noqa: S311 - damage, no secret
    for _ in range(len(data) // 20):
        data[chance.randrange(9, len(data))] = chance.randrange(256)
    return bytes(data)


def _no_xref() -> bytes:
    data = raw_pdf(one_page(stream(TEXT), FONT))
    return data[: data.rindex(b"xref\n0 ")]


def _packed(entries: dict[str, bytes]) -> bytes:
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, data in entries.items():
            archive.writestr(zipfile.ZipInfo(name), data, zipfile.ZIP_DEFLATED)
    return out.getvalue()


def _archive_bomb() -> bytes:
    return _packed({f"manual-{n}.txt": b"E4 " * 30_000_000 for n in range(8)})


def _archives_in_archives() -> bytes:
    data = _packed({"a.txt": b"E4 " * 1_000_000})
    for _ in range(8):
        data = _packed({f"{n}.zip": data for n in range(10)})
    return data


def _archive_that_climbs() -> bytes:
    return _packed({"../../climbed.txt": b"The bus is 320 V.", "/rooted.txt": b"x"})


def _no_bytes(path: Path) -> None:
    path.touch()


def _hole(path: Path) -> None:
    with path.open("wb") as file:
        file.write(b"%PDF-1.7\n")
        file.truncate(201_000_000)  # uses no space


def _locked(password: str) -> Maker:
    return lambda path: encrypted_pdf(path, password)


_BOXES = b"[-1e38 -1e38 1e38 1e38]"
_FILES: dict[str, Maker] = {
    "archive-bomb.zip": _made(_archive_bomb),
    "archive-climbs.zip": _made(_archive_that_climbs),
    "archive-cut.zip": _writes(_packed({"a.txt": b"x" * 9000})[:60]),
    "archives-in-archives.zip": _made(_archives_in_archives),
    "box-huge.pdf": _made(_box(_BOXES)),
    "box-none.pdf": _made(_box(b"[0 0 0 0]")),
    "box-words.pdf": _made(_box(b"[(a) /b null true]")),
    "bomb.pdf": _made(nesting.bomb),
    "bomb-packed-twice.pdf": _made(nesting.packed_twice),
    "catalog-nested.pdf": _made(nesting.nested_catalog),
    "count-lies.pdf": _made(_count_lies),
    "filters-5000.pdf": _made(_filters),
    "flipped-bytes.pdf": _made(_flipped),
    "font-cycle.pdf": _made(_font_cycle),
    "font-letters-flood.pdf": _made(_letters_flood),
    "font-letters-range.pdf": _made(_letters_range),
    "font-noise.pdf": _made(_font_noise),
    "font-of-itself.pdf": _made(_type3_that_draws_itself),
    "form-draws-itself.pdf": _made(nesting.mirror),
    "forms-draw-each-other.pdf": _made(nesting.ping_pong),
    "forms-fanned-out.pdf": _made(nesting.forms_fanned_out),
    "head-only.pdf": _writes(b"%PDF-1.7\n"),
    "hole-201-mb.pdf": _hole,
    "labels-loop.pdf": _made(nesting.labels_loop),
    "length-of-itself.pdf": _made(nesting.length_of_itself),
    "locked-owner-only.pdf": _locked(""),
    "locked-user.pdf": _locked("heron"),
    "million-lines.pdf": _made(nesting.million_lines),
    "million-operators.pdf": _made(nesting.million_operators),
    "million-saves.pdf": _made(nesting.saves),
    "nested-arrays.pdf": _made(lambda: nesting.nested(b"[")),
    "nested-entries.pdf": _made(lambda: nesting.nested(b"<</a ")),
    "no-bytes.pdf": _no_bytes,
    "no-pages.pdf": _made(_no_pages),
    "no-xref.pdf": _made(_no_xref),
    "noise.pdf": _writes(b"%PDF-1.7\n" + bytes(range(256)) * 40),
    "noise.txt": _writes(bytes(range(256)) * 40),
    "object-streams-ring.pdf": _made(nesting.object_streams_in_a_ring),
    "outline-loop.pdf": _made(nesting.outline_loop),
    "page-tree-deep.pdf": _made(nesting.page_tree_deep),
    "page-tree-loop.pdf": _made(nesting.page_tree_loop),
    "pages-3000.pdf": _made(_many_pages(3000)),
    "pages-3001.pdf": _made(_many_pages(3001)),
    "parent-loop.pdf": _made(nesting.parent_loop),
    "picture-huge.pdf": _made(_huge_picture),
    "predictor-huge.pdf": _made(_bad_predictor),
    "words-300000.pdf": _made(nesting.million_words),
    "wrong-kind-office.pdf": _writes(b"\xd0\xcf\x11\xe0" + b"\0" * 600),
    "wrong-kind-picture.pdf": _writes(b"\x89PNG\r\n\x1a\n" + b"\0" * 600),
    "wrong-kind-program.pdf": _writes(b"\x7fELF" + b"\0" * 600),
    "xref-far.pdf": _made(nesting.xref_far),
    "xref-loop.pdf": _made(nesting.xref_loop),
}
