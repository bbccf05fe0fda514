"""What a file is, told by its content."""

from __future__ import annotations

from pathlib import Path

import pytest

from ingest.readers.sniff import (
    HTML,
    MARKDOWN,
    SAMPLE_BYTES,
    TABLE,
    TEXT,
    misnamed,
    reader_of,
)

PAGE = "<!-- saved -->\n<!DOCTYPE html>\n<p>Lamps</p>"
TABLE_TEXT = "code;meaning\nE4;sensor\nE5;pressure\n"


@pytest.mark.parametrize(
    ("text", "reader"),
    [
        (PAGE, HTML),
        ('<?xml version="1.0"?>\n<html xmlns="x"><body/></html>', HTML),
        ("<table><tr><td>E4</table>", HTML),
        ("# Lamps\n\nLD2 is **amber**.\n", MARKDOWN),
        (TABLE_TEXT, TABLE),
        ("Lamp LD2 flashes four times.\n", TEXT),
        ("<4 V: low\n>6 V: high\n", TEXT),
        ("<pressure> is what the gauge reads\n", TEXT),
    ],
)
@pytest.mark.parametrize("encoding", ["utf-8", "utf-16"])
def test_content_tells_the_reader(
    tmp_path: Path, text: str, reader: str, encoding: str
) -> None:
    path = tmp_path / "literature"
    path.write_bytes(text.encode(encoding))

    assert reader_of(path) == reader


def test_a_sign_parted_by_the_sample_does_not_matter(tmp_path: Path) -> None:
    row = "E4;Fühler °C\n"
    path = tmp_path / "long.csv"
    path.write_text(row * (2 * SAMPLE_BYTES // len(row)), encoding="utf-8")

    assert reader_of(path) == TABLE


@pytest.mark.parametrize(
    ("name", "reader", "said"),
    [
        ("manual.pdf", HTML, "named .pdf, but it is a web page and is read as that"),
        ("note.txt", HTML, "named .txt, but it is a web page and is read as that"),
        ("page.html", TEXT, "named .html, but it is plain text and is read as that"),
        ("note.txt", MARKDOWN, ""),
        ("note.md", TEXT, ""),
        ("codes.csv", TABLE, ""),
        ("README", MARKDOWN, ""),
    ],
)
def test_a_name_that_misleads_is_said(name: str, reader: str, said: str) -> None:
    assert misnamed(reader, name) == said
