"""Where each field of a document was read, and its own number."""

from __future__ import annotations

import pytest

from assistant.library.sayings import Origin
from ingest.identify import identify, number_of
from ingest.readers.base import FileFacts, Prominent


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("Service Bulletin VSB-2231", "VSB-2231"),
        ("Document VSM-1407 Revision C", "VSM-1407"),
        ("Document SH-220, issue 4, 2022-10-03", "SH-220"),
        ("Technical note TN-31: fan board", "TN-31"),
        ("Document No.: 0914-107", ""),
        ("Replaces two rows of Service Manual VSM-1407", ""),
        ("Keep it with the installation. See manual VSM-1407.", ""),
        ("The manual 2 of 3", ""),
    ],
)
def test_a_document_is_known_by_its_own_number_and_not_anothers(
    text: str, number: str
) -> None:
    assert number_of(text) == number


def test_metadata_and_cover_are_told_apart() -> None:
    facts = FileFacts(pages=1, title="Heron service manual", author="Vellamere")
    cover = "VELLAMERE\nDocument VSM-1407 Revision C\nIssued 2021-03-15"

    known = identify(facts, [cover], [], "scan-17")

    assert known.number == "VSM-1407"
    assert known.sources["title"] is Origin.FILE
    assert known.sources["maker"] is Origin.FILE
    assert known.sources["revision"] is Origin.COVER


def test_a_large_line_of_the_cover_is_a_title_from_the_cover() -> None:
    facts = FileFacts(pages=1)
    line = Prominent("Heron service manual", 24.0, bold=True)

    known = identify(facts, ["Heron service manual"], [line], "scan-17")

    assert (known.title, known.sources["title"]) == (
        "Heron service manual",
        Origin.COVER,
    )


def test_without_any_words_the_file_name_is_the_title() -> None:
    known = identify(FileFacts(pages=1), [""], [], "scan-17")

    assert (known.title, known.sources["title"]) == ("scan-17", Origin.NAME)
