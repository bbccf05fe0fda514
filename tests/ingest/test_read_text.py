"""What the reader of plain text gives."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import InputError
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.text import decode, read_text


def pages(path: Path, first: int = 1) -> list[RawPage]:
    facts, *rest = read_text(path, first)
    assert isinstance(facts, FileFacts)
    return [page for page in rest if isinstance(page, RawPage)]


@pytest.mark.parametrize(
    "encoding", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"]
)
def test_the_usual_encodings_are_told_apart(encoding: str) -> None:
    text = "Reading 25 °C at plug CN5 – write it down\n"

    assert decode(text.encode(encoding), "note.txt") == text


def test_other_scripts_are_text_too() -> None:
    text = "压缩机 Проверка\n" * 5

    assert decode(text.encode(), "note.txt") == text


@pytest.mark.parametrize("data", [b"\x00\x01" * 50, b"\xff\x00\x81\x8d" * 50])
def test_noise_is_no_text(data: bytes) -> None:
    with pytest.raises(InputError, match=r"note\.txt: neither a PDF nor plain text"):
        decode(data, "note.txt")


def test_form_feeds_part_pages(tmp_path: Path) -> None:
    path = tmp_path / "note.txt"
    path.write_text("one\ftwo\fthree\f\n", encoding="utf-8")

    assert [(page.number, page.text) for page in pages(path)] == [
        (1, "one"),
        (2, "two"),
        (3, "three"),
    ]
    assert [page.number for page in pages(path, first=3)] == [3]


def test_too_many_pages_are_refused(tmp_path: Path) -> None:
    path = tmp_path / "note.txt"
    path.write_text("x\f" * 3001, encoding="utf-8")

    with pytest.raises(InputError, match="3001 pages; the limit is 3000"):
        list(read_text(path))


@given(st.binary(max_size=400))
def test_any_bytes_are_text_or_refused(data: bytes) -> None:
    try:
        text = decode(data, "note.txt")
    except InputError:
        return
    assert "\0" not in text
