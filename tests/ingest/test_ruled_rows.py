"""Rows of ruled tables reach the library with their columns' names and their place."""

from __future__ import annotations

from ingest.assemble import prepare
from ingest.cleaning import cleaned
from ingest.readers.base import FileFacts, RawPage, RawRow, RawTable

HEAD = ("Code", "Meaning")
TEXT = (
    "The electrical box is\nopened last. The elec-\ntrical cover stays.\n"
    "Code  Meaning\nE1  Sensor open\nSensor hot\nThen reset."
)
TABLE = RawTable(
    rows=(
        RawRow(3, HEAD),
        RawRow(4, ("E1", "Sensor open")),
        RawRow(5, ("E1", "Sensor hot")),
    ),
    headers=1,
    columns=(60, 120, 300),
    names=HEAD,
)


def test_a_merged_cell_is_told_in_every_row_it_covers() -> None:
    page = RawPage(1, "1", TEXT, tables=(TABLE,))

    ready = prepare("0" * 64, "a.pdf", FileFacts(1), [page], len)

    stored = ready.pages[0].text
    assert [(row.cells, row.header) for row in ready.rows] == [
        (("E1", "Sensor open"), HEAD),
        (("E1", "Sensor hot"), HEAD),
    ]
    assert [stored[row.start : row.end] for row in ready.rows] == [
        "E1  Sensor open",
        "Sensor hot",
    ]


def test_lines_are_found_again_behind_a_closed_hyphen() -> None:
    (page,) = cleaned([TEXT])

    lines = page.text.split("\n")
    assert lines[1] == "opened last. The electrical cover stays."
    assert lines[page.line_of(3)] == "Code  Meaning"
    assert page.line_of(0) == 0
