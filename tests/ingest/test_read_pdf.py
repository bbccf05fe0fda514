"""What the PDF reader gives for files whose content is known."""

from __future__ import annotations

import logging
from pathlib import Path

import pytest
from pypdf import PdfReader, PdfWriter
from pypdf.constants import PageLabelStyle
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas

from ingest.readers.base import FileFacts, RawPage
from ingest.readers.pdf import read_pdf, read_pdf_plain
from tests.ingest.sample_pdfs import canvas_pdf, one_page, raw_pdf, stream, table_pdf


def read(path: Path) -> tuple[FileFacts, list[RawPage]]:
    facts, *pages = read_pdf(path)
    assert isinstance(facts, FileFacts)
    return facts, [page for page in pages if isinstance(page, RawPage)]


def test_every_page_has_its_physical_number_from_one(tmp_path: Path) -> None:
    path = canvas_pdf(tmp_path / "a.pdf", [["first"], ["second"], ["third"]])

    facts, pages = read(path)

    assert facts.pages == 3
    assert [(page.number, page.text) for page in pages] == [
        (1, "first"),
        (2, "second"),
        (3, "third"),
    ]


def test_reading_can_begin_behind_a_lost_page(tmp_path: Path) -> None:
    path = canvas_pdf(tmp_path / "a.pdf", [["first"], ["second"], ["third"]])

    _, *pages = read_pdf(path, first=3)

    assert [page.number for page in pages if isinstance(page, RawPage)] == [3]


def test_metadata_is_told_and_fillers_of_writers_are_not(tmp_path: Path) -> None:
    named = canvas_pdf(tmp_path / "a.pdf", [["x"]], title="Larch", author="Larch Co")
    bare = canvas_pdf(tmp_path / "b.pdf", [["x"]])

    facts, _ = read(named)
    assert (facts.title, facts.author) == ("Larch", "Larch Co")

    facts, _ = read(bare)
    assert (facts.title, facts.author, facts.subject) == ("", "", "")


def test_the_labels_of_the_file_are_kept(tmp_path: Path) -> None:
    plain = canvas_pdf(tmp_path / "plain.pdf", [["i"], ["ii"], ["one"]])
    writer = PdfWriter(clone_from=PdfReader(plain))
    writer.set_page_label(0, 1, style=PageLabelStyle.LOWERCASE_ROMAN)
    writer.set_page_label(2, 2, style=PageLabelStyle.DECIMAL, start=12)
    path = tmp_path / "labelled.pdf"
    writer.write(path)

    assert [page.label for page in read(path)[1]] == ["i", "ii", "12"]


def test_bookmarks_are_told_with_their_pages(tmp_path: Path) -> None:
    plain = canvas_pdf(tmp_path / "plain.pdf", [["a"], ["b"]])
    writer = PdfWriter(clone_from=PdfReader(plain))
    chapter = writer.add_outline_item(title="1 Lamps", page_number=0)
    writer.add_outline_item(title="1.1 Counting", page_number=1, parent=chapter)
    path = tmp_path / "outlined.pdf"
    writer.write(path)

    assert read(path)[0].outline == (("1 Lamps", 1), ("1.1 Counting", 2))


def test_a_table_drawn_cell_by_cell_reads_row_by_row(tmp_path: Path) -> None:
    rows = [
        ["Flashes", "Meaning", "Plug"],
        ["3", "Sensor TD out of range while the compressor is running", "CN5"],
        ["4", "Fan", "CN7"],
    ]

    (page,) = read(table_pdf(tmp_path / "t.pdf", rows))[1]

    assert page.text.split("\n") == ["  ".join(cells) for cells in rows]


def test_a_row_set_in_one_text_object_keeps_its_cells(tmp_path: Path) -> None:
    path = tmp_path / "t.pdf"
    canvas = Canvas(str(path))
    for y, cells in ((700, ("25", "10.0", "1.65")), (686, ("30", "8.1", "1.40"))):
        text = canvas.beginText()
        for x, cell in zip((60, 160, 260), cells, strict=True):
            text.setTextOrigin(x, y)
            text.textOut(cell)
        canvas.drawText(text)
    canvas.save()

    (page,) = read(path)[1]

    assert page.text.split("\n") == ["25  10.0  1.65", "30  8.1  1.40"]


def test_a_turned_page_reads_in_its_own_direction(tmp_path: Path) -> None:
    path = tmp_path / "turned.pdf"
    canvas = Canvas(str(path))
    canvas.rotate(90)
    for at, cells in enumerate((("25", "10.0"), ("30", "8.1"))):
        for x, cell in zip((60, 160), cells, strict=True):
            canvas.drawString(x, -200 - 14 * at, cell)
    canvas.save()

    (page,) = read(path)[1]

    assert page.text.split("\n") == ["25  10.0", "30  8.1"]


def test_large_and_bold_lines_are_told(tmp_path: Path) -> None:
    path = tmp_path / "p.pdf"
    canvas = Canvas(str(path))
    for y, font, size, line in (
        (780, "Helvetica", 16, "4 Lamps"),
        (760, "Helvetica-Bold", 10, "Counting"),
        (740, "Helvetica", 10, "Count the flashes of the lamp in ten seconds."),
    ):
        canvas.setFont(font, size)
        canvas.drawString(60, y, line)
    canvas.save()

    (page,) = read(path)[1]

    assert [(line.text, line.bold) for line in page.prominent] == [
        ("4 Lamps", False),
        ("Counting", True),
    ]


@pytest.mark.parametrize("kind", ["blank", "drawing", "picture", "form"])
def test_a_page_without_text_tells_whether_something_is_drawn(
    tmp_path: Path, kind: str
) -> None:
    path = tmp_path / "p.pdf"
    canvas = Canvas(str(path))
    if kind == "drawing":
        canvas.line(60, 60, 300, 300)
    elif kind == "picture":
        from PIL import Image

        canvas.drawImage(ImageReader(Image.new("L", (40, 40), 128)), 60, 60)
    elif kind == "form":
        canvas.beginForm("f")
        canvas.rect(0, 0, 40, 40, fill=1)
        canvas.endForm()
        canvas.doForm("f")
    canvas.showPage()
    canvas.save()

    (page,) = read(path)[1]

    assert page.text == ""
    assert page.drawn is (kind != "blank")


def test_a_page_that_cannot_be_parsed_is_lost_alone(tmp_path: Path) -> None:
    font = b"<< /Font << /F1 << /Type /Font /Subtype /Type1 /BaseFont /Courier >> >> >>"
    objects = one_page(stream(b"[" * 50_000), font)
    objects[1] = b"<< /Type /Pages /Kids [3 0 R 5 0 R] /Count 2 >>"
    objects.append(objects[2].replace(b"4 0 R", b"6 0 R"))
    objects.append(stream(b"BT /F1 12 Tf 60 700 Td (The bus is 320 V.) Tj ET"))
    path = tmp_path / "half.pdf"
    path.write_bytes(raw_pdf(objects))

    first, second = read(path)[1]

    assert (first.text, first.failure) == ("", "objects nested too deeply")
    assert (second.text, second.failure) == ("The bus is 320 V.", "")


def test_complaints_of_the_library_stay_off_the_terminal(
    tmp_path: Path, capfd: pytest.CaptureFixture[str]
) -> None:
    path = canvas_pdf(tmp_path / "a.pdf", [["text"]])
    path.write_bytes(b"junk\n" + path.read_bytes() + b"\nmore junk\n")

    read(path)
    logging.getLogger("pypdf").warning("more")

    assert capfd.readouterr().err == ""


def test_pypdf_reads_a_page_that_would_end_pdfium(tmp_path: Path) -> None:
    resources = (
        b"<< /XObject << /X 5 0 R >> /Font << /F1 << /Type /Font /Subtype /Type1 "
        b"/BaseFont /Helvetica >> >> >>"
    )
    text = b"BT /F1 12 Tf 60 700 Td (The bus is 320 V.) Tj ET"
    inner = b"/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Resources " + resources
    objects = [*one_page(stream(text + b" /X Do"), resources), stream(b"/X Do", inner)]
    path = tmp_path / "mirror.pdf"
    path.write_bytes(raw_pdf(objects))

    (page,) = read(path)[1]

    assert "320 V" in page.text or page.failure == "objects nested too deeply"


def test_the_plain_reader_gives_the_same_words(tmp_path: Path) -> None:
    path = canvas_pdf(tmp_path / "a.pdf", [["The bus is 320 V."]], running=True)

    _, page = read_pdf_plain(path)

    assert isinstance(page, RawPage)
    assert sorted(page.text.split()) == sorted(read(path)[1][0].text.split())


def test_a_picture_over_the_page_is_told_by_its_share(tmp_path: Path) -> None:
    from PIL import Image

    path = tmp_path / "scan.pdf"
    canvas = Canvas(str(path), pagesize=(400, 500))
    picture = ImageReader(Image.new("L", (40, 40), 128))
    canvas.drawImage(picture, 0, 0, width=400, height=400)
    canvas.save()

    (page,) = read(path)[1]

    assert page.cover == pytest.approx(0.8)
