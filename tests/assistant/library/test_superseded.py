"""Which document replaces which: whole ones only, and only the right edition."""

from __future__ import annotations

import pytest

from assistant.library.superseded import superseded
from tests.literature import document

OLD = document("sh-220.pdf", title="Lomvi handbook", revision="3")


@pytest.mark.parametrize(
    "names",
    [
        "Lomvi handbook",
        "the Lomvi Handbook, issue 3",
        "SH-220",
        "lomvi-handbook rev. 3",
    ],
)
def test_a_document_named_by_title_or_number_is_replaced(names: str) -> None:
    new = document("new.pdf", title="Lomvi handbook 4", supersedes=(names,))

    assert superseded({1: OLD, 2: new}) == {1: "Lomvi handbook 4"}


@pytest.mark.parametrize(
    "names",
    [
        "two rows of table 6-2, Lomvi handbook",
        "page 12 of SH-220",
        "Lomvi handbook, issue 2",
        "Heron manual",
        "",
    ],
)
def test_a_part_another_edition_or_another_title_replaces_nothing(names: str) -> None:
    new = document("new.pdf", title="Newer", supersedes=(names,))

    assert superseded({1: OLD, 2: new}) == {}


def test_no_document_replaces_itself() -> None:
    itself = document("a.pdf", title="Lomvi handbook", supersedes=("Lomvi handbook",))

    assert superseded({1: itself}) == {}
