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


@pytest.mark.parametrize(
    ("entry", "replaced"),
    [
        ("VSM-1406", True),
        ("VSM 1406 Rev. A", True),
        ("manual VSM-1406, revision A", True),
        ("VSM-1406 Rev. B", False),
        ("VSM-14061", False),
        ("VSM-140", False),
    ],
)
def test_a_number_on_the_cover_is_known_whole(entry: str, *, replaced: bool) -> None:
    old = document("old.pdf", title="Manual", number="VSM-1406", revision="A")
    new = document("new.pdf", title="Newer", number="VSM-1407", supersedes=(entry,))

    assert bool(superseded({1: old, 2: new})) is replaced


@pytest.mark.parametrize(
    ("number", "replaced"), [("SH-220", True), ("SH-221", False), ("", False)]
)
def test_replaces_issue_3_means_the_same_document(
    number: str, *, replaced: bool
) -> None:
    old = document("a.pdf", title="One", number=number, revision="3")
    new = document(
        "b.pdf",
        title="Two",
        number="SH-220",
        revision="4",
        supersedes=("issue 3 of 2021-02-18",),
    )

    assert bool(superseded({1: old, 2: new})) is replaced


def test_a_person_may_name_one_by_its_identity() -> None:
    new = document("b.pdf", title="Two", supersedes=(OLD.document_id,))

    assert superseded({1: OLD, 2: new}) == {1: "Two"}
