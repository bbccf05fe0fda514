"""What a document says it is."""

from __future__ import annotations

import pytest

from ingest.identify import date_of, identify, kind_of, revision_of, supersedes_of
from ingest.readers.base import FileFacts, Prominent


def large(text: str, size: float = 20) -> Prominent:
    return Prominent(text, size, bold=True)


def test_metadata_names_the_title_and_the_maker() -> None:
    facts = FileFacts(1, title="Larch Service Manual", author="Larch")

    found = identify(facts, ["cover"], [], "scan-004")

    assert (found.title, found.maker) == ("Larch Service Manual", "Larch")
    assert found.kind == "service manual"


@pytest.mark.parametrize("title", ["", "scan-004.pdf", "Microsoft Word - x", "12-34"])
def test_metadata_that_is_no_title_yields_to_the_cover(title: str) -> None:
    facts = FileFacts(1, title=title)
    cover = [large("LARCH", 12), large("Service"), large("Manual"), large("2021", 9)]

    assert identify(facts, ["cover"], cover, "scan-004").title == "Service Manual"


def test_without_prominence_the_first_worded_line_is_the_title() -> None:
    found = identify(FileFacts(1), ["12\n# Boathouse notes\nmore"], [], "n")

    assert found.title == "Boathouse notes"


def test_the_file_name_is_the_title_of_last_resort() -> None:
    assert identify(FileFacts(1), [""], [], "larch-4").title == "larch-4"


@pytest.mark.parametrize(
    ("text", "revision"),
    [
        ("VSM-1 Rev. C", "C"),
        ("Revision 3", "3"),
        ("REVISION: B2", "B2"),
        ("Issue 2, June 2021", "2"),
        ("Edition 1.4", "1.4"),
        ("the issue is open; rev. D", "D"),
        ("a revision of the board", ""),
        ("revolutions per second", ""),
        ("Version française", ""),
    ],
)
def test_the_revision_is_read_as_printed(text: str, revision: str) -> None:
    assert revision_of(text) == revision


@pytest.mark.parametrize(
    ("text", "date"),
    [
        ("Issued 2021-03-15", "2021-03-15"),
        ("2021-03", "2021-03"),
        ("14 March 2023", "2023-03-14"),
        ("March 14, 2023", "2023-03-14"),
        ("Sept. 2020", "2020-09"),
        ("part 2021-99-12", ""),
        ("no date", ""),
    ],
)
def test_the_date_is_read_as_iso(text: str, date: str) -> None:
    assert date_of(text) == date


@pytest.mark.parametrize(
    ("heads", "kind"),
    [
        ("Service Bulletin VSB-1", "bulletin"),
        ("Technical note TN-4", "tech note"),
        ("Handbook for Service", "service manual"),
        ("Installation manual", "installation manual"),
        ("Owner's manual", "user manual"),
        ("Supply shop, note at the counter", "shop note"),
        ("Bulletin 3\nreplaces a page of the service manual", "bulletin"),
        ("Larch", ""),
    ],
)
def test_the_kind_is_told_by_the_first_line_that_names_one(
    heads: str, kind: str
) -> None:
    assert kind_of(heads) == kind


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("Supersedes VSM-1407 Rev. B.", ("VSM-1407 Rev. B",)),
        (
            "This bulletin replaces bulletin VSB-19 of 2020",
            ("bulletin VSB-19 of 2020",),
        ),
        ("Replaces two rows of table 6-2, Service Manual VSM-1407 Rev. C", ()),
        ("The board replaces the old board of the manual", ()),
        ("replace the fuse", ()),
    ],
)
def test_only_whole_documents_are_superseded(text: str, named: tuple[str, ...]) -> None:
    assert supersedes_of(text) == named
