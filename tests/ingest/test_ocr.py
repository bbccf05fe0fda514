"""Pages that are pictures: drawn, recognised, marked. Codes are written by hand."""

from __future__ import annotations

import io
import subprocess
import sys
from collections.abc import Iterator, Sequence
from pathlib import Path

import pypdfium2 as pdfium
import pytest
from PIL import Image
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from assistant.library.search import Search
from assistant.library.store import LibraryStore
from assistant.library.types import OCR, PageStatus
from ingest.pipeline import Options
from ingest.readers.base import RawPage
from ingest.readers.ocr import Piece, lines_of, models_folder
from ingest.readers.scans import recognise
from tests.shelves import take, text
from tui.plain.as_json import found_fields
from tui.plain.hits import found_lines

needs_ocr = pytest.mark.skipif(
    models_folder() is None, reason="faultleaf[ocr] is not installed"
)
ROWS = (
    ("Fault codes of the outdoor unit", "", ""),
    ("E4", "Discharge sensor open", "CN5"),
    ("E5-1", "Low pressure switch", "CN7"),
    ("P-6", "Overheat protection", "TH3"),
    ("H11", "Fan motor lock", "CN3"),
    ("L52", "Inverter overcurrent", "IPM"),
)
CODES = ("E4", "E5-1", "P-6", "H11", "L52")
TITLE = "Board 2231"


def scan(path: Path) -> Path:
    """Write a PDF whose two pages are one picture of a table, the second turned."""
    made = io.BytesIO()
    page = Canvas(made, invariant=1)
    page.setFont("Helvetica", 11)
    for at, row in enumerate(ROWS):
        for x, cell in zip((60, 130, 400), row, strict=True):
            page.drawString(x, 780 - 18 * at, cell)
    page.save()
    with pdfium.PdfDocument(made.getvalue()) as document:
        picture = document[0].render(scale=150 / 72, grayscale=True).to_pil()
    out = Canvas(str(path), invariant=1)
    for each in (picture, picture.rotate(90, expand=True)):
        width, height = (side * 72 / 150 for side in each.size)
        out.setPageSize((width, height))
        out.drawImage(ImageReader(each), 0, 0, width, height)
        out.showPage()
    out.save()
    return path


TYPED = "Lamp LD2 flashes four times when the discharge sensor is open."


def half_typed(path: Path) -> Path:
    """Write a page of text and a page that is a picture."""
    out = Canvas(str(path), invariant=1)
    out.drawString(60, 700, TYPED)
    out.showPage()
    out.drawImage(ImageReader(Image.new("L", (600, 800), 90)), 0, 0, 595, 842)
    out.save()
    return path


class Reading:
    """Stands for OCR: gives each page the table, or says why not."""

    def __init__(self, failure: str = "") -> None:
        self.failure = failure
        self.asked: list[tuple[int, ...]] = []

    def __call__(
        self, path: Path, pages: Sequence[int], password: str | None
    ) -> Iterator[RawPage]:
        assert path.is_file()
        assert password is None
        self.asked.append(tuple(pages))
        for number in pages:
            words = "" if self.failure else "\n".join("  ".join(row) for row in ROWS)
            yield RawPage(
                number,
                str(number),
                words,
                failure=self.failure,
                source=OCR,
                confidence=0.97,
            )


def test_pieces_are_put_into_lines_and_cells() -> None:
    pieces = [
        Piece("sensor", 0.9, 100, 1, 160, 13),
        Piece("E4", 0.9, 0, 0, 20, 12),
        Piece("CN5", 0.9, 300, 2, 330, 12),
        Piece("open", 0.9, 165, 0, 200, 12),
        Piece("E5", 0.9, 0, 20, 20, 32),
    ]

    assert lines_of(pieces) == ["E4  sensor open  CN5", "E5"]


@needs_ocr
@pytest.mark.slow
def test_scanned_tables_keep_each_code_on_its_line_though_they_lie_on_their_side(
    tmp_path: Path,
) -> None:
    path = scan(tmp_path / "scan.pdf")

    upright, turned = recognise(path, (1, 2))

    for page in (upright, turned):
        assert page.source == OCR
        assert page.confidence > 0.9
        lines = page.text.split("\n")
        for code, meaning, plug in ROWS[1:]:
            assert f"{code}  {meaning}  {plug}" in lines


def test_no_library_in_that_process_reaches_a_network() -> None:
    asked = (
        "from ingest.readers.ocr import stay_offline; stay_offline()\n"
        "import urllib.request; urllib.request.urlopen('http://127.0.0.1:9/')"
    )

    ended = subprocess.run(
        [sys.executable, "-c", asked], capture_output=True, text=True, check=False
    )

    assert "reading pictures never uses a network" in ended.stderr


def test_a_page_over_which_the_process_dies_is_given_up_and_the_next_is_read(
    tmp_path: Path,
) -> None:
    path = tmp_path / "any.pdf"
    path.write_bytes(b"%PDF-")

    pages = list(
        recognise(path, (2, 4, 7), reader="tests.ingest.picture_readers:dies_at_four")
    )

    assert [(page.number, page.text, page.failure) for page in pages] == [
        (2, "page 2", ""),
        (4, "", "OCR gave it up: ended with code 3"),
        (7, "page 7", ""),
    ]


def test_only_pages_without_text_are_recognised_and_marked(
    store: LibraryStore, tmp_path: Path
) -> None:
    reading = Reading()

    result = take(
        store, half_typed(tmp_path / "b.pdf"), options=Options(recognise=reading)
    )

    assert reading.asked == [(2,)]
    (document,) = store.documents()
    first, second = store.pages(document.sha256)
    assert (first.text.strip(), first.source) == (TYPED, "")
    assert (second.status, second.source, second.confidence) == (
        PageStatus.TEXT,
        OCR,
        0.97,
    )
    assert result.pages == {PageStatus.TEXT: 2}
    assert store.recognised() == {(document.document_id, 2)}
    assert all(code in text(store) for code in CODES)


def test_every_hit_on_such_a_page_says_so(store: LibraryStore, tmp_path: Path) -> None:
    path = half_typed(tmp_path / "b.pdf")
    take(store, path, options=Options(recognise=Reading()))

    hits = Search(store, None).search("E5-1 low pressure switch").hits

    assert {(hit.page, hit.read_by) for hit in hits} == {(2, OCR)}
    result = Search(store, None).search("E5-1 low pressure switch")
    assert "p. 2 (read by OCR)" in "\n".join(found_lines(result, 100))
    assert found_fields(result)["hits"][0]["read_by"] == "ocr"  # type: ignore[index]


def test_a_page_that_stays_a_picture_says_what_was_made_of_it(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = half_typed(tmp_path / "b.pdf")
    take(store, path, options=Options(recognise=Reading("a script it does not know")))

    (document,) = store.documents()
    second = store.page(document.sha256, 2)

    assert second is not None
    assert (second.status, second.source) == (PageStatus.PICTURE, "")
    assert second.reason.endswith("a script it does not know")


def test_a_page_kept_as_a_picture_is_read_once_when_ocr_comes(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = half_typed(tmp_path / "board.pdf")
    without = take(store, path, options=Options(way_to_recognise="install it"))
    reading = Reading()

    later = take(store, path, options=Options(recognise=reading))
    again = take(store, path, options=Options(recognise=reading))

    assert without.warnings == [
        "board.pdf: 1 of 2 pages cannot be searched (no text); install it"
    ]
    assert later.replaced == ["board.pdf"]
    assert again.unchanged == ["board.pdf"]
    assert reading.asked == [(2,)]
    assert "E5-1" in text(store)


def test_a_page_that_ocr_cannot_read_is_not_tried_again(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = half_typed(tmp_path / "board.pdf")
    reading = Reading("a poor picture")
    take(store, path, options=Options(recognise=reading))

    again = take(store, path, options=Options(recognise=reading))

    assert again.unchanged == ["board.pdf"]
    assert reading.asked == [(2,)]


def test_a_document_added_anew_as_a_picture_is_read_when_ocr_comes(
    store: LibraryStore, tmp_path: Path
) -> None:
    path = half_typed(tmp_path / "board.pdf")
    reading = Reading()
    take(store, path, options=Options(recognise=reading))
    (document,) = store.documents()
    store.remove_document(document.sha256)
    take(store, path)

    later = take(store, path, options=Options(recognise=reading))

    assert later.replaced == ["board.pdf"]
    assert reading.asked == [(2,), (2,)]
