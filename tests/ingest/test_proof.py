"""Proof: read again, compared page by page; files in archives and by OCR too."""

from __future__ import annotations

import zipfile
from dataclasses import replace
from pathlib import Path

from assistant.library.sayings import Place
from assistant.library.store import LibraryStore
from assistant.library.types import OCR, Document, TableRow
from ingest.proof import Stray, Verdict, prove
from tests.ingest.sample_pdfs import table_pdf
from tests.shelves import note, take


def _only(store: LibraryStore) -> Document:
    (document,) = store.documents()
    return document


def test_a_pdf_with_a_table_is_proved_row_by_row(
    store: LibraryStore, tmp_path: Path
) -> None:
    file = tmp_path / "table.pdf"
    rows = [("Flashes", "Meaning"), ("4", "Outdoor sensor"), ("6", "Overcurrent")]
    table_pdf(file, rows)
    take(store, file)

    proof = prove(store, _only(store))

    assert (proof.verdict, proof.strays) == (Verdict.PROVED, ())
    assert proof.pages
    assert proof.passages
    assert proof.rows == len(rows) - 1


def test_a_file_in_an_archive_is_read_out_of_it(
    store: LibraryStore, tmp_path: Path
) -> None:
    archive = tmp_path / "bulletins.zip"
    with zipfile.ZipFile(archive, "w") as made:
        made.writestr("one.txt", "Bulletin one\nThe board was changed.")
    take(store, archive)

    assert prove(store, _only(store)).verdict is Verdict.PROVED

    archive.unlink()

    assert prove(store, _only(store)).verdict is Verdict.MISSING


def test_a_row_that_no_page_bears_is_a_stray(
    store: LibraryStore, tmp_path: Path
) -> None:
    take(store, note(tmp_path / "a.txt", "Heron manual\nThe fan turns."))
    about = _only(store)
    row = TableRow(1, 1, 1, ("4", "sensor"), ("Flashes", "Meaning"), 0, 5)
    passages = [each.passage for each in store.passages(about.sha256)]
    store.add_document(about, store.pages(about.sha256), passages, [row])
    store.put_place(about.sha256, Place("0", str(tmp_path / "a.txt")))

    proof = prove(store, about)

    assert proof.verdict is Verdict.DIFFERS
    assert proof.strays == (Stray(1, "the row '4 | sensor'"),)


def test_pages_read_by_ocr_are_not_held_against_the_file(
    store: LibraryStore, tmp_path: Path
) -> None:
    take(store, note(tmp_path / "a.txt", "Heron manual\nThe fan turns."))
    about = _only(store)
    pages = [
        replace(page, source=OCR, text="Read by OCR")
        for page in store.pages(about.sha256)
    ]
    store.add_document(about, pages, [])
    store.put_place(about.sha256, Place("0", str(tmp_path / "a.txt")))

    proof = prove(store, about)

    assert (proof.verdict, proof.ocr) == (Verdict.PROVED, (1,))


def test_a_document_of_unknown_place_says_so(
    store: LibraryStore, tmp_path: Path
) -> None:
    take(store, note(tmp_path / "a.txt", "Heron manual\nThe fan turns."))
    about = _only(store)
    store.put_place(about.sha256, Place("0123", ""))

    proof = prove(store, about)

    assert proof.verdict is Verdict.UNPLACED
    assert "add its folder again" in proof.hint
