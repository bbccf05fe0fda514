"""Damaged and hostile files: each ends soon, by name, and takes nothing with it."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import InputError
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.isolation import read_file
from ingest.readers.sniff import PDF, reader_of
from tests.ingest.sample_pdfs import (
    canvas_pdf,
    encrypted_pdf,
    one_page,
    raw_pdf,
    stream,
)

TEXT = b"BT /F1 12 Tf 60 700 Td (The bus is 320 V.) Tj ET"
FONT = b"<< /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Helvetica >> >> >>"


def outcome(path: Path, password: str | None = None) -> str:
    """Return the refusal, or every page's text or failure."""
    try:
        items = list(read_file(path, reader_of(path), password=password))
    except InputError as error:
        return error.what
    facts, *pages = items
    assert isinstance(facts, FileFacts)
    assert len(pages) == facts.pages
    parts = [page.failure or page.text for page in pages if isinstance(page, RawPage)]
    return "\n".join(parts)


@pytest.mark.parametrize("tenth", range(1, 10))
def test_a_file_cut_short_is_read_or_refused_by_name(
    tmp_path: Path, tenth: int
) -> None:
    whole = canvas_pdf(tmp_path / "whole.pdf", [[f"page {n}"] for n in range(1, 7)])
    data = whole.read_bytes()
    cut = tmp_path / "cut.pdf"
    cut.write_bytes(data[: len(data) * tenth // 10])

    said = outcome(cut)

    assert "page 1" in said or "damaged PDF" in said


def test_a_file_of_no_bytes_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "empty.pdf"
    path.touch()

    assert outcome(path) == "empty.pdf: the file is empty"


def test_a_web_page_named_pdf_is_read_as_what_it_is(tmp_path: Path) -> None:
    path = tmp_path / "manual.pdf"
    path.write_text("\n<!DOCTYPE html><html>Not found</html>", encoding="utf-8")

    assert outcome(path) == "Not found"


def test_plain_text_named_pdf_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "manual.pdf"
    path.write_text("The request has timed out.", encoding="utf-8")

    assert outcome(path) == "manual.pdf: named .pdf, but it is not a PDF inside"


@pytest.mark.parametrize(
    ("data", "said"),
    [
        (b"PK\x03\x04 word/document.xml", "a ZIP container"),
        (b"\x89PNG\r\n\x1a\n", "a picture"),
        (bytes(range(256)) * 8, "neither a PDF nor plain text"),
        (b"\x00" * 4000, "neither a PDF nor plain text"),
    ],
)
def test_another_kind_of_file_is_refused_by_its_kind(
    tmp_path: Path, data: bytes, said: str
) -> None:
    path = tmp_path / "manual.txt"
    path.write_bytes(data)

    assert said in outcome(path)


def test_noise_behind_a_pdf_head_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "noise.pdf"
    path.write_bytes(b"%PDF-1.7\n" + bytes(range(256)) * 40)

    assert "damaged PDF" in outcome(path)


@pytest.mark.parametrize("algorithm", ["AES-256", "AES-128", "RC4-128"])
def test_an_encrypted_file_says_that_it_needs_a_password(
    tmp_path: Path, algorithm: str
) -> None:
    path = encrypted_pdf(tmp_path / "locked.pdf", "heron", algorithm)

    assert outcome(path) == "locked.pdf: encrypted, it needs a password"
    assert outcome(path, "tern") == "locked.pdf: the password does not open it"
    assert outcome(path, "heron") == "The bus is 320 V."


def test_a_file_locked_only_against_change_is_read(tmp_path: Path) -> None:
    path = encrypted_pdf(tmp_path / "open.pdf", "")

    assert outcome(path) == "The bus is 320 V."


def test_a_page_tree_that_holds_itself_ends(tmp_path: Path) -> None:
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [2 0 R 3 0 R] /Count 2 >>"
    path = tmp_path / "loop.pdf"
    path.write_bytes(raw_pdf(objects))

    said = outcome(path)

    assert "damaged PDF" in said or "320 V" in said


def test_a_page_tree_a_thousand_deep_ends(tmp_path: Path) -> None:
    depth = 3000
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [5 0 R] /Count 1 >>"
    for number in range(5, 5 + depth):
        kid = b"3 0 R" if number == 4 + depth else b"%d 0 R" % (number + 1)
        objects.append(b"<< /Type /Pages /Kids [" + kid + b"] /Count 1 >>")
    path = tmp_path / "deep.pdf"
    path.write_bytes(raw_pdf(objects))

    said = outcome(path)

    assert "nested too deeply" in said or "damaged PDF" in said or "320 V" in said


def test_arrays_nested_without_end_lose_their_page_only(tmp_path: Path) -> None:
    path = tmp_path / "nested.pdf"
    path.write_bytes(raw_pdf(one_page(stream(b"[" * 50_000 + TEXT), FONT)))

    assert outcome(path) == "objects nested too deeply"


def test_a_form_that_draws_itself_ends(tmp_path: Path) -> None:
    resources = b"<< /XObject << /X 5 0 R >> >>"
    objects = one_page(stream(b"/X Do"), resources)
    inner = b"/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Resources " + resources
    objects.append(stream(b"/X Do", inner))
    path = tmp_path / "mirror.pdf"
    path.write_bytes(raw_pdf(objects))

    said = outcome(path)

    assert said == "" or "nested" in said or "limit" in said.lower()


def test_a_stream_that_unpacks_to_a_flood_loses_its_page_only(tmp_path: Path) -> None:
    path = tmp_path / "bomb.pdf"
    path.write_bytes(raw_pdf(one_page(stream(b" " * 400_000_000))))

    assert path.stat().st_size < 1_000_000
    assert outcome(path) == "unpacks to more than the limit"


def test_a_file_of_too_many_pages_is_refused_with_the_limit(tmp_path: Path) -> None:
    objects = one_page(stream(TEXT), FONT)
    kids = b" ".join(b"%d 0 R" % number for number in range(5, 3006))
    objects[1] = b"<< /Type /Pages /Kids [" + kids + b"] /Count 3001 >>"
    objects += [b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 9 9] >>"] * 3001
    path = tmp_path / "many.pdf"
    path.write_bytes(raw_pdf(objects))

    assert outcome(path) == "many.pdf: 3001 pages; the limit is 3000"


def test_a_count_that_lies_is_not_believed(tmp_path: Path) -> None:
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [3 0 R] /Count 999999999 >>"
    path = tmp_path / "liar.pdf"
    path.write_bytes(raw_pdf(objects))

    said = outcome(path)

    assert "320 V" in said or "limit is 3000" in said


def test_a_file_over_the_size_limit_is_refused_unread(tmp_path: Path) -> None:
    path = tmp_path / "huge.pdf"
    with path.open("wb") as file:
        file.write(b"%PDF-1.7\n")
        file.truncate(201_000_000)  # a hole: no space is used

    assert outcome(path) == "huge.pdf: 201 MB; the limit is 200 MB"


def test_what_is_no_regular_file_is_refused(tmp_path: Path) -> None:
    with pytest.raises(InputError, match="not a regular file"):
        reader_of(tmp_path)


def test_a_pdf_is_known_by_its_bytes_whatever_its_name(tmp_path: Path) -> None:
    path = tmp_path / "manual.txt"
    canvas_pdf(path, [["The bus is 320 V."]])

    assert reader_of(path) == PDF
    assert outcome(path) == "The bus is 320 V."
