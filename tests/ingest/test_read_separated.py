"""What the reader of tables as text gives."""

from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import InputError
from ingest.readers.base import RawPage
from ingest.readers.separated import delimiter_of, read_separated

ROWS = [
    ["code", "meaning", "first check"],
    ["E4", "Discharge sensor, open", "resistance at CN5"],
    ["E5", 'reads "Lo"', ""],
    ["P-6", "overheat\nprotection", "fan"],
]


def written(delimiter: str, rows: list[list[str]] | None = None) -> str:
    out = io.StringIO()
    csv.writer(out, delimiter=delimiter).writerows(rows or ROWS)
    return out.getvalue()


def page(path: Path, data: bytes) -> RawPage:
    path.write_bytes(data)
    _, found = read_separated(path)
    assert isinstance(found, RawPage)
    return found


@pytest.mark.parametrize("delimiter", [",", ";", "\t", "|"])
@pytest.mark.parametrize("encoding", ["utf-8", "utf-8-sig", "utf-16", "cp1252"])
def test_rows_are_read_whatever_parts_and_encodes_them(
    tmp_path: Path, delimiter: str, encoding: str
) -> None:
    data = written(delimiter).replace("overheat", "Überhitzung").encode(encoding)

    found = page(tmp_path / "codes.csv", data)

    assert found.text.split("\n") == [
        "code  meaning  first check",
        "E4  Discharge sensor, open  resistance at CN5",
        'E5  reads "Lo"',
        "P-6  Überhitzung protection  fan",
    ]
    (table,) = found.tables
    assert table.headers == 1
    assert table.rows[2].cells == ("E5", 'reads "Lo"', "")
    assert [row.line for row in table.rows] == [0, 1, 2, 3]


def test_a_table_of_data_only_has_no_header(tmp_path: Path) -> None:
    found = page(tmp_path / "t.csv", b"E4,sensor\nE5,pressure\nE6,fan\n")

    assert found.tables[0].headers == 0


def test_numbers_name_no_columns(tmp_path: Path) -> None:
    found = page(tmp_path / "t.csv", b"-10;55.3\n0;32.6\n10;19.9\n")

    assert found.tables[0].headers == 0


@pytest.mark.parametrize(
    "text",
    [
        "Well, it stopped.\nThen, it ran.\nIn short, no.\n",
        "E4, open\n",
        "one line\nanother line\na third line\n",
        "Lamp LD2; see page 4\nWait\nMeasure; then write\n",
        "\n\n\n",
        "",
    ],
)
def test_prose_is_no_table(text: str) -> None:
    assert delimiter_of(text) == ""


def test_what_is_no_table_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "note.csv"
    path.write_text("just a line\n", encoding="utf-8")

    with pytest.raises(InputError, match=r"note\.csv: its rows have no common number"):
        list(read_separated(path))


_FIELD = st.text(
    st.characters(codec="utf-8", exclude_categories=("C", "Z")), max_size=9
)


@given(st.lists(st.tuples(_FIELD, _FIELD, _FIELD), min_size=1, max_size=8))
def test_cells_come_back_as_they_were_written(
    tmp_path_factory: pytest.TempPathFactory, rows: list[tuple[str, str, str]]
) -> None:
    head = ["code", "meaning", "first check"]
    data = [head, *map(list, rows), ["E4", "open", "CN5"], ["E5", "low", "CN6"]]
    path = tmp_path_factory.mktemp("csv") / "t.csv"

    found = page(path, written(";", data).encode())

    kept = tuple(tuple(row) for row in data if any(row))
    assert tuple(row.cells for row in found.tables[0].rows) == kept
