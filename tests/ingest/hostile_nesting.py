"""PDFs that unpack, repeat or nest without end, each made by hand."""

from __future__ import annotations

from tests.ingest.sample_pdfs import one_page, raw_pdf, stream

TEXT = b"BT /F1 12 Tf 60 700 Td (The bus is 320 V.) Tj ET"
HELVETICA = b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>"
FONT = b"<< /Font << /F1 " + HELVETICA + b" >> >>"


def page_of(contents: bytes, resources: bytes = FONT, *more: bytes) -> bytes:
    """Return a PDF of one page; further objects start at 5."""
    return raw_pdf([*one_page(contents, resources), *more])


def bomb() -> bytes:
    return page_of(stream(b" " * 400_000_000))


def packed_twice() -> bytes:
    inner = stream(b"0 " * 50_000_000)
    body = inner[inner.index(b"stream\n") + 7 : -len(b"\nendstream")]
    twice = stream(body)
    return page_of(twice.replace(b"/FlateDecode", b"[/FlateDecode /FlateDecode]"))


def _form(contents: bytes, resources: bytes) -> bytes:
    head = b"/Type /XObject /Subtype /Form /BBox [0 0 9 9] /Resources "
    return stream(contents, head + resources)


def mirror() -> bytes:
    own = b"<< /XObject << /X 5 0 R >> >>"
    return page_of(stream(b"/X Do"), own, _form(b"/X Do", own))


def ping_pong() -> bytes:
    one = b"<< /XObject << /X 5 0 R >> >>"
    two = b"<< /XObject << /X 6 0 R >> >>"
    return page_of(stream(b"/X Do"), one, _form(b"/X Do", two), _form(b"/X Do", one))


def forms_fanned_out() -> bytes:
    """Return ten forms, each of which draws the next ten times: 10^10 drawings."""
    more = []
    for number in range(5, 15):
        inner = b"<< /XObject << /X %d 0 R >> >>" % (number + 1)
        more.append(_form(b"/X Do " * 10, inner))
    more.append(_form(TEXT, FONT))
    return page_of(stream(b"/X Do"), b"<< /XObject << /X 5 0 R >> >>", *more)


def page_tree_loop() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [2 0 R 3 0 R] /Count 2 >>"
    return raw_pdf(objects)


def page_tree_deep() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[1] = b"<< /Type /Pages /Kids [5 0 R] /Count 1 >>"
    for number in range(5, 3005):
        kid = 3 if number == 3004 else number + 1
        objects.append(b"<< /Type /Pages /Kids [%d 0 R] /Count 1 >>" % kid)
    return raw_pdf(objects)


def parent_loop() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[2] = b"<< /Type /Page /Parent 3 0 R /Contents 4 0 R >>"
    return raw_pdf(objects)


def xref_loop() -> bytes:
    data = raw_pdf(one_page(stream(TEXT), FONT))
    at = data.rindex(b"xref\n0 ")
    return data.replace(b"/Root 1 0 R", b"/Root 1 0 R /Prev %d" % at)


def xref_far() -> bytes:
    data = raw_pdf(one_page(stream(TEXT), FONT))
    at = data.rindex(b"startxref\n") + len(b"startxref\n")
    return data[:at] + b"99999999999\n%%EOF\n"


def length_of_itself() -> bytes:
    return page_of(b"<< /Length 4 0 R >>\nstream\n" + TEXT + b"\nendstream")


def outline_loop() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[0] = b"<< /Type /Catalog /Pages 2 0 R /Outlines 5 0 R >>"
    objects.append(b"<< /Type /Outlines /First 6 0 R /Last 6 0 R /Count 1 >>")
    objects.append(
        b"<< /Title (Again) /Parent 5 0 R /Next 6 0 R /First 6 0 R "
        b"/Dest [3 0 R /Fit] >>"
    )
    return raw_pdf(objects)


def labels_loop() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[0] = b"<< /Type /Catalog /Pages 2 0 R /PageLabels 5 0 R >>"
    objects.append(b"<< /Kids [5 0 R 5 0 R] >>")
    return raw_pdf(objects)


def object_streams_in_a_ring() -> bytes:
    head = b"/Type /ObjStm /N 1 /First 4 /Extends 5 0 R"
    return page_of(stream(TEXT), FONT, stream(b"6 0 << >>", head))


def nested(open_: bytes) -> bytes:
    return page_of(stream(open_ * 50_000 + TEXT))


def nested_catalog() -> bytes:
    objects = one_page(stream(TEXT), FONT)
    objects[0] = b"<< /Type /Catalog /Pages 2 0 R /X " + b"[" * 100_000 + b" >>"
    return raw_pdf(objects)


def saves() -> bytes:
    return page_of(stream(b"q " * 1_000_000 + TEXT))


def million_operators() -> bytes:
    return page_of(stream(b"1 0 0 1 0 0 cm\n" * 1_000_000 + TEXT))


def million_words() -> bytes:
    one = b"BT /F1 1 Tf %d %d Td (E4) Tj ET\n"
    drawn = b"".join(one % (n % 600, n // 600) for n in range(300_000))
    return page_of(stream(drawn))


def million_lines() -> bytes:
    one = b"%d %d m %d %d l S\n"
    drawn = b"".join(one % (n % 595, n % 842, n % 593, n % 841) for n in range(400_000))
    return page_of(stream(drawn + TEXT))
