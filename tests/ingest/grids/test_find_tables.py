"""Tables are found from rules and fills alone, whoever read the page."""

from __future__ import annotations

from collections import Counter

from hypothesis import given, settings
from hypothesis import strategies as st

from ingest.grids.find import find_tables
from ingest.grids.follow import continued
from ingest.grids.model import Box, Style, Table
from ingest.readers.geometry import Fill, Rule, Shapes, Word

COLUMNS = (50.0, 120.0, 300.0, 500.0)


def word(text: str, x: float, y: float, *, bold: bool = False) -> Word:
    return Word(text, x, y, x + 5 * len(text), y + 10, 10, bold=bold)


def line(x0: float, y0: float, x1: float, y1: float, *, drawn: bool = True) -> Rule:
    return Rule(x0, y0, x1, y1, drawn=drawn)


def grid(xs: tuple[float, ...], ys: tuple[float, ...]) -> list[Rule]:
    return [line(xs[0], y, xs[-1], y) for y in ys] + [
        line(x, ys[0], x, ys[-1]) for x in xs
    ]


def written(
    rows: list[list[str]], *, top: float = 100, xs: tuple[float, ...] = COLUMNS
) -> list[Word]:
    return [
        word(text, x + 4, top + 20 * at + 5)
        for at, row in enumerate(rows)
        for x, text in zip(xs, row, strict=False)
        if text
    ]


def page(
    words: list[Word], rules: list[Rule], fills: list[Fill] | None = None
) -> Shapes:
    return Shapes(595, 842, tuple(words), tuple(rules), tuple(fills or ()))


def texts(table: Table) -> list[list[str]]:
    return [[cell.text for cell in row] for row in table.rows]


ROWS = [["Code", "Cause", "Remedy"], ["E1", "fan", "turn"], ["E2", "pump", "change"]]
HEIGHTS = (100.0, 120.0, 140.0, 160.0)


def test_a_grid_gives_its_cells_names_and_edges() -> None:
    (table,) = find_tables(page(written(ROWS), grid(COLUMNS, HEIGHTS)))

    assert texts(table) == ROWS
    assert table.columns == COLUMNS
    assert (table.headers, table.names) == (1, ("Code", "Cause", "Remedy"))
    assert table.style is Style.RULED


def test_the_order_of_rules_and_words_does_not_matter() -> None:
    words, rules = written(ROWS), grid(COLUMNS, HEIGHTS)

    assert find_tables(page(words[::-1], rules[::-1])) == find_tables(
        page(words, rules)
    )


def test_a_cell_merged_downwards_speaks_for_every_row() -> None:
    rules = [line(50, y, 500, y) for y in (100, 120, 160)]
    rules += [line(120, 140, 500, 140)]
    rules += [line(x, 100, x, 160) for x in COLUMNS]
    words = written(
        [["Code", "Cause", "Remedy"], ["", "fan", "turn"], ["", "pump", "see"]]
    )
    words.append(word("E7", 54, 135))

    (table,) = find_tables(page(words, rules))

    assert [row[0].text for row in table.rows] == ["Code", "E7", "E7"]
    assert [row[0].carried for row in table.rows] == [False, False, True]
    assert table.rows[1][0].box == table.rows[2][0].box == Box(50, 120, 120, 160)


def test_a_cell_merged_sideways_names_the_group_of_its_columns() -> None:
    rules = [line(50, y, 500, y) for y in (100, 140, 160, 180)]
    rules += [line(120, 120, 500, 120)]
    rules += [line(x, 100, x, 180) for x in (50.0, 120.0, 500.0)]
    rules += [line(300, 120, 300, 180)]
    words = [word("Point", 54, 115), word("Limits", 280, 105)]
    words += written([["", "low", "high"], ["T1", "4", "9"], ["T2", "3", "8"]], top=120)

    (table,) = find_tables(page(words, rules))

    assert table.headers == 2
    assert table.names == ("Point", "Limits: low", "Limits: high")


def test_rows_without_rules_between_them_are_no_table() -> None:
    assert find_tables(page(written(ROWS), [line(50, 90, 500, 90)])) == ()


def test_horizontal_rules_alone_part_rows_and_words_part_columns() -> None:
    rules = [line(50, y, 500, y) for y in HEIGHTS]

    (table,) = find_tables(page(written(ROWS), rules))

    assert texts(table) == ROWS
    assert table.style is Style.BANDS


def test_every_other_row_filled_is_a_table_with_all_its_rows() -> None:
    rows = [*ROWS, ["E3", "valve", "open"], ["E4", "board", "change"]]
    fills = [Fill(50, y, 500, y + 20, (220, 220, 220)) for y in (100, 140, 180)]
    rules = [
        edge
        for f in fills
        for edge in (
            line(f.x0, f.top, f.x1, f.top, drawn=False),
            line(f.x0, f.bottom, f.x1, f.bottom, drawn=False),
            line(f.x0, f.top, f.x0, f.bottom, drawn=False),
            line(f.x1, f.top, f.x1, f.bottom, drawn=False),
        )
    ]

    (table,) = find_tables(page(written(rows), rules, fills))

    assert texts(table) == rows
    assert table.style is Style.ZEBRA


def test_a_grid_without_outer_rules_is_closed() -> None:
    rules = [line(50, y, 500, y) for y in HEIGHTS[1:-1]]
    rules += [line(x, 100, x, 160) for x in COLUMNS[1:-1]]

    (table,) = find_tables(page(written(ROWS), rules))

    assert texts(table) == ROWS
    assert table.style is Style.OPEN


def test_codes_in_the_first_row_make_it_data() -> None:
    rows = [["E1", "fan", "turn"], ["E2", "pump", "change"], ["E3", "valve", "open"]]

    (table,) = find_tables(page(written(rows), grid(COLUMNS, HEIGHTS)))

    assert (table.headers, table.names) == (0, ())


def test_a_table_goes_on_with_the_names_of_the_page_before() -> None:
    first = find_tables(page(written(ROWS), grid(COLUMNS, HEIGHTS)))
    more = [["E3", "valve", "open"], ["E4", "board", "change"]]
    xs = tuple(x + 20 for x in COLUMNS)
    second = find_tables(page(written(more, xs=xs), grid(xs, HEIGHTS[:-1])))

    (_, (table,)) = continued([first, second])

    assert table.continues
    assert (table.headers, table.names) == (0, ("Code", "Cause", "Remedy"))


def test_a_repeated_header_is_no_row_of_data() -> None:
    first = find_tables(page(written(ROWS), grid(COLUMNS, HEIGHTS)))
    again = [ROWS[0], ["E3", "valve", "open"], ["E4", "board", "change"]]
    second = find_tables(page(written(again), grid(COLUMNS, HEIGHTS)))

    (_, (table,)) = continued([first, second])

    assert (table.continues, table.headers) == (True, 1)


def test_other_columns_make_another_table() -> None:
    first = find_tables(page(written(ROWS), grid(COLUMNS, HEIGHTS)))
    xs = (50.0, 200.0, 300.0, 500.0)
    more = [["E3", "valve", "open"], ["E4", "board", "change"]]
    second = find_tables(page(written(more, xs=xs), grid(xs, HEIGHTS[:-1])))

    (_, (table,)) = continued([first, second])

    assert not table.continues


coordinates = st.integers(0, 60).map(lambda n: 10.0 * n)


@st.composite
def any_shapes(draw: st.DrawFn) -> Shapes:
    rules = draw(
        st.lists(
            st.builds(
                lambda x, y, length, down, drawn: Rule(
                    x,
                    y,
                    x if down else x + length,
                    y + length if down else y,
                    drawn=drawn,
                ),
                coordinates,
                coordinates,
                coordinates.map(lambda n: n + 5),
                st.booleans(),
                st.booleans(),
            ),
            max_size=24,
        )
    )
    words = draw(
        st.lists(
            st.builds(
                word, st.sampled_from(["E1", "fan", "42"]), coordinates, coordinates
            ),
            max_size=24,
        )
    )
    return page(words, rules)


@settings(max_examples=60)
@given(any_shapes())
def test_any_rules_and_words_give_whole_rows_and_no_word_of_its_own(
    shapes: Shapes,
) -> None:
    there = Counter("".join(w.text for w in shapes.words))

    for table in find_tables(shapes):
        wide = len(table.columns) - 1
        assert all(len(row) == wide for row in table.rows)
        assert list(table.columns) == sorted(table.columns)
        assert table.headers < len(table.rows)
        assert len(table.names) == (wide if table.headers else 0)
        said = [c.text for row in table.rows for c in row if not c.carried]
        assert Counter("".join("".join(said).split())) <= there


def test_columns_ruled_alone_are_cut_into_rows_at_their_codes() -> None:
    rows = [*ROWS, ["E3", "valve", "open"]]
    rules = grid(COLUMNS, (100, 120, 180))

    (table,) = find_tables(page(written(rows), rules))

    assert texts(table) == rows


def test_a_drawing_of_thousands_of_lines_holds_no_table() -> None:
    rules = [line(0.0, y / 2, 500, y / 2) for y in range(0, 9000, 8)]
    rules += [line(x / 2, 0.0, x / 2, 800) for x in range(0, 9000, 8)]

    assert find_tables(page(written(ROWS), rules)) == ()


def test_two_codes_in_one_cell_share_what_stands_beside_them() -> None:
    words = written([["Code", "Cause", "Remedy"]])
    words += [word("E1", 54, 123), word("E2", 54, 135)]
    words += [word("sensor open", 124, 123), word("or short", 124, 135)]
    words += [word("measure", 304, 123)]

    (table,) = find_tables(page(words, grid(COLUMNS, (100, 120, 150))))

    assert texts(table)[1] == ["E1 E2", "sensor open or short", "measure"]
