"""Lines of a page know what they are; tables keep their first line."""

from __future__ import annotations

from ingest.blocks import Carried, Kind, Line, lines_of, table_cells
from ingest.tables import table_rows

NONE: frozenset[int] = frozenset()
FRESH = Carried()
TABLE = "Flashes  Meaning  Action\n3  Sensor open  CN5\n4  Sensor hot  CN6"


def lines(
    page: str, carried: Carried = FRESH, heads: dict[int, str] | None = None
) -> list[Line]:
    return lines_of(page, NONE, heads or {}, carried)[0]


def carried_on(page: str, carried: Carried = FRESH) -> Carried:
    return lines_of(page, NONE, {}, carried)[1]


def test_rows_carry_the_first_line_of_their_table() -> None:
    found = lines(f"Read the lamp.\n{TABLE}\nThen reset.")

    assert [line.kind for line in found] == [
        Kind.PROSE,
        Kind.ROW,
        Kind.ROW,
        Kind.ROW,
        Kind.PROSE,
    ]
    assert [line.lead for line in found] == [
        "",
        "",
        *["Flashes  Meaning  Action"] * 2,
        "",
    ]


def test_one_line_with_a_gap_is_no_table() -> None:
    found = lines("Name:  board\nand prose below it")

    assert [line.kind for line in found] == [Kind.PROSE, Kind.PROSE]


def test_a_table_goes_on_over_the_page() -> None:
    carried = carried_on(TABLE)

    found = lines("5  Fan locked  CN7\n6  Fan slow  CN7", carried)

    assert {line.lead for line in found} == {"Flashes  Meaning  Action"}


def test_a_header_that_is_printed_again_is_not_repeated() -> None:
    found = lines("Flashes  Meaning  Action\n5  Fan locked  CN7", carried_on(TABLE))

    assert [line.lead for line in found] == ["", "Flashes  Meaning  Action"]


def test_another_table_on_the_next_page_keeps_its_own_header() -> None:
    page = "Temperature  Resistance  Voltage\n25  10.0  1.65\n30  8.1  1.40"

    found = lines(page, carried_on(TABLE))

    assert {line.lead for line in found[1:]} == {"Temperature  Resistance  Voltage"}


def test_pairs_with_figures_have_no_header() -> None:
    found = lines("Fuse  25 A\nCharge  1.2 kg\nPipe  7.5 m")

    assert [line.lead for line in found] == ["", "", ""]


def test_the_section_is_carried_over_pages() -> None:
    first = lines_of("4.2 Codes\ntext", NONE, {0: "4.2 Codes"}, Carried())[1]

    assert [line.section for line in lines("more text", first)] == ["4.2 Codes"]


def test_signal_words_and_steps_are_known() -> None:
    found = lines("WARNING\nIt is live.\n1. Wait.\n• Look.")

    assert [line.kind for line in found] == [
        Kind.SIGNAL,
        Kind.PROSE,
        Kind.ITEM,
        Kind.ITEM,
    ]


def test_pipes_make_cells() -> None:
    assert table_cells("| E4 | sensor | CN5 |") == ["E4", "sensor", "CN5"]


def test_table_rows_name_their_columns_and_their_place() -> None:
    page = f"Read the lamp.\n{TABLE}"

    rows = table_rows(7, lines(page))

    assert [(row.table, row.row) for row in rows] == [(1, 1), (1, 2)]
    assert rows[0].header == ("Flashes", "Meaning", "Action")
    assert rows[1].cells == ("4", "Sensor hot", "CN6")
    assert page[rows[1].start : rows[1].end] == "4  Sensor hot  CN6"
    assert rows[0].page == 7


def test_rows_that_go_on_over_the_page_name_the_same_columns() -> None:
    rows = table_rows(
        8, lines("5  Fan locked  CN7\n6  Fan slow  CN7", carried_on(TABLE))
    )

    assert [row.header for row in rows] == [("Flashes", "Meaning", "Action")] * 2
