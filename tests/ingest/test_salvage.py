"""Of a file that is cut off, the pages that are left are read and the rest is named."""

from __future__ import annotations

import io
import zlib
from collections.abc import Iterator, Sequence
from pathlib import Path

import pytest
from fpdf import FPDF
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from assistant.library.store import LibraryStore
from assistant.library.types import PageStatus
from ingest.pipeline import Options
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.isolation import read_file
from ingest.readers.legible import CUT
from ingest.readers.salvage import salvage
from ingest.readers.sniff import PDF
from tests.ingest.sample_pdfs import canvas_pdf, encrypted_pdf, raw_pdf, stream
from tests.shelves import take

PAGES = [[f"page {n} of the manual", "Lamp LD2 flashes."] for n in range(1, 11)]
FONTS = b"<< /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >>"


def cut(path: Path, tenth: int) -> Path:
    data = path.read_bytes()
    path.write_bytes(data[: len(data) * tenth // 10])
    return path


@pytest.mark.parametrize("tenth", [6, 7])
def test_pages_before_the_cut_are_read_and_those_behind_it_are_named(
    tmp_path: Path, tenth: int
) -> None:
    path = cut(canvas_pdf(tmp_path / "cut.pdf", PAGES), tenth)

    facts, *pages = read_file(path, PDF)

    assert isinstance(facts, FileFacts)
    assert facts.pages == len(pages) == len(PAGES)
    read = [each for each in pages if isinstance(each, RawPage) and not each.failure]
    assert facts.damage.endswith(f"{len(read)} of 10 pages are left")
    assert 0 < len(read) < len(PAGES)
    for page in pages:
        assert isinstance(page, RawPage)
        if page.failure:
            assert page.failure == CUT
        else:
            assert page.text == "\n".join(PAGES[page.number - 1])


def test_a_file_cut_before_any_page_is_whole_is_refused_with_a_way_out(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = cut(canvas_pdf(tmp_path / "cut.pdf", PAGES), 5)

    result = take(store, path)

    assert store.documents() == ()
    (refusal,) = result.refused
    assert refusal.path.endswith("cut.pdf")
    assert "fetch the document again" in refusal.hint


def test_a_cut_file_is_taken_in_with_a_warning_and_a_way_out(
    store: LibraryStore, tmp_path: Path
) -> None:
    shelf = tmp_path / "shelf"
    shelf.mkdir()
    cut(canvas_pdf(shelf / "cut.pdf", PAGES), 6)

    result = take(store, shelf)

    assert any("cut off or damaged" in each for each in result.warnings)
    assert any("fetch the document again" in each.way for each in result.remedies)
    (document,) = store.documents()
    statuses = {page.status for page in store.pages(document.sha256)}
    assert statuses == {PageStatus.TEXT, PageStatus.UNREADABLE}


def test_a_cut_file_is_not_read_again_for_pictures_it_cannot_show(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = cut(canvas_pdf(tmp_path / "cut.pdf", PAGES), 6)
    asked: list[Path] = []

    def recognise(
        file: Path, _pages: Sequence[int], _password: str | None
    ) -> Iterator[RawPage]:
        asked.append(file)
        return iter(())

    take(store, path, options=Options(recognise=recognise))

    again = take(store, path, options=Options(recognise=recognise))

    assert again.unchanged == ["cut.pdf"]
    assert asked == []


def test_a_file_whose_fonts_stood_behind_the_cut_is_refused() -> None:
    pdf = FPDF()
    for lines in PAGES:
        pdf.add_page()
        pdf.set_font("helvetica", size=10)
        pdf.cell(text=lines[0])
    whole = bytes(pdf.output())

    assert salvage(whole[: len(whole) * 6 // 10]) is None


def test_an_encrypted_file_is_not_made_into_a_plain_one(tmp_path: Path) -> None:
    data = encrypted_pdf(tmp_path / "locked.pdf", "secret").read_bytes()

    assert salvage(data) is None


def test_objects_in_packed_streams_are_found() -> None:
    packed = [
        b"<< /Type /Pages /Count 1 /Kids [3 0 R] >>",
        b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 300 300] /Contents 5 0 R"
        b" /Resources " + FONTS + b" >>",
    ]
    head = b"2 0 3 %d " % len(packed[0])
    inner = zlib.compress(head + b"".join(packed))
    bundle = (
        b"<< /Type /ObjStm /N 2 /First %d /Filter /FlateDecode /Length %d >>"
        b"\nstream\n%s\nendstream" % (len(head), len(inner), inner)
    )
    said = stream(b"BT /F1 12 Tf 20 200 Td (The bus is 320 V.) Tj ET")
    whole = raw_pdf([b"<< /Type /Catalog /Pages 2 0 R >>", b"null", b"null"])
    data = whole[: whole.index(b"2 0 obj")]
    data += b"4 0 obj\n%s\nendobj\n5 0 obj\n%s\nendobj\n6 0 obj <<" % (bundle, said)

    found = salvage(data)

    assert found is not None
    assert (found.pages, found.lost) == (1, frozenset())
    assert PdfReader(io.BytesIO(found.data)).pages[0].extract_text() == (
        "The bus is 320 V."
    )


def test_pages_without_their_tree_are_read_in_the_order_of_the_file() -> None:
    page = b"<< /Type /Page /MediaBox [0 0 300 300] /Resources " + FONTS
    data = b"%PDF-1.4\n"
    for number, word in ((7, b"first"), (3, b"second")):
        text = stream(b"BT /F1 12 Tf 20 200 Td (%s) Tj ET" % word)
        data += b"%d 0 obj\n%s /Contents %d 0 R >>\nendobj\n" % (
            number,
            page,
            number + 1,
        )
        data += b"%d 0 obj\n%s\nendobj\n" % (number + 1, text)

    found = salvage(data)

    assert found is not None
    read = [each.extract_text() for each in PdfReader(io.BytesIO(found.data)).pages]
    assert read == ["first", "second"]


@settings(max_examples=40)
@given(st.binary(max_size=400), st.integers(0, 2000))
def test_no_bytes_make_it_fail(noise: bytes, at: int) -> None:
    whole = raw_pdf(
        [
            b"<< /Type /Catalog /Pages 2 0 R >>",
            b"<< /Type /Pages /Count 1 /Kids [3 0 R 2 0 R] >>",
            b"<< /Type /Page /Contents 4 0 R >>",
            stream(b"BT ET"),
        ]
    )

    found = salvage(whole[:at] + noise)

    assert found is None or found.data.startswith(b"%PDF-")
