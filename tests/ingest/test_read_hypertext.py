"""What the reader of web pages gives; expected lines are written by hand."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from assistant.errors import InputError
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.hypertext import decode_html, read_html


def page(path: Path, text: str | bytes) -> RawPage:
    data = text.encode() if isinstance(text, str) else text
    path.write_bytes(data)
    facts, only = read_html(path)
    assert isinstance(facts, FileFacts)
    assert facts.pages == 1
    assert isinstance(only, RawPage)
    return only


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "page.html"


def test_words_are_read_without_scripts_and_styles(path: Path) -> None:
    found = page(
        path,
        "<html><head><title>Board lamps</title><style>p {color: red}</style>"
        "<script>document.write('<p>never</p>')</script></head>"
        "<body><p>The bus holds\n 320&nbsp;V &ndash; wait &#53; minutes.</p>"
        "<noscript>no script</noscript><svg><text>drawn</text></svg>"
        "<!-- hidden --><p>Then measure.</p></body></html>",
    )

    assert found.text == "The bus holds 320 V – wait 5 minutes.\n\nThen measure."


def test_the_title_and_author_are_facts(path: Path) -> None:
    path.write_text(
        "<html><head><meta name=author content='Otter Narrows'>"
        "<title> Board\n lamps </title></head><p>x</p>",
        encoding="utf-8",
    )

    facts = next(iter(read_html(path)))

    assert isinstance(facts, FileFacts)
    assert (facts.title, facts.author) == ("Board lamps", "Otter Narrows")


def test_headings_stand_out_by_their_level(path: Path) -> None:
    found = page(path, "<h1>Lamps</h1><p>a</p><h3>Lamp <em>LD2</em></h3><p>b</p>")

    assert found.text == "Lamps\n\na\n\nLamp LD2\n\nb"
    first, second = found.prominent
    assert (first.text, second.text) == ("Lamps", "Lamp LD2")
    assert first.size > second.size > 10


def test_lists_keep_their_numbers(path: Path) -> None:
    found = page(
        path,
        "<ol start=3><li>Turn the supply off<li>Wait</ol><ul><li>LD2</li></ul>",
    )

    assert found.text == "3. Turn the supply off\n4. Wait\n\n- LD2"


def test_set_text_keeps_its_lines(path: Path) -> None:
    found = page(path, "<pre>LD1  on\nLD2  off\n\nLD3  on</pre>")

    assert found.text == "LD1  on\nLD2  off\n\nLD3  on"


def test_a_table_gives_a_line_a_row(path: Path) -> None:
    found = page(
        path,
        "<p>Codes</p><table><tr><th>Code<th>Meaning<tr><td>E4<td>Discharge "
        "sensor<br>open<tr><td>E5<td></table><p>End</p>",
    )

    assert found.text.split("\n") == [
        "Codes", "", "Code  Meaning", "E4  Discharge sensor open", "E5", "", "End",
    ]  # fmt: skip
    (table,) = found.tables
    assert table.headers == 1
    assert [(row.line, row.cells) for row in table.rows] == [
        (2, ("Code", "Meaning")),
        (3, ("E4", "Discharge sensor open")),
        (4, ("E5", "")),
    ]


def test_merged_cells_reach_every_row_they_cover(path: Path) -> None:
    found = page(
        path,
        "<table><thead><tr><th rowspan=2>Code<th colspan=2>Limit<tr><th>low<th>high"
        "</thead><tbody><tr><td rowspan=2>E4<td>10<td>90<tr><td>20<td>80"
        "<tr><td colspan=3>See page 9</tbody></table>",
    )

    (table,) = found.tables
    assert table.headers == 2
    assert [row.cells for row in table.rows] == [
        ("Code", "Limit", "Limit"),
        ("Code", "low", "high"),
        ("E4", "10", "90"),
        ("E4", "20", "80"),
        ("See page 9", "", ""),
    ]
    assert found.text.split("\n")[0] == "Code  Limit"
    assert found.text.split("\n")[3] == "E4  20  80"


def test_a_rowspan_of_nothing_or_nonsense_stays_in_the_table(path: Path) -> None:
    found = page(
        path,
        "<table><tr><td rowspan=0>E4<td colspan=99999>a<tr><td>b<tr><td>c</table>",
    )

    (table,) = found.tables
    assert [row.cells[0] for row in table.rows] == ["E4", "E4", "E4"]
    assert max(len(row.cells) for row in table.rows) <= 201


def test_a_table_in_a_cell_is_text_of_that_cell(path: Path) -> None:
    found = page(
        path,
        "<table><tr><td>E4<td><table><tr><td>fan<td>valve</table> both</table>",
    )

    assert found.text == "E4  fan valve both"


def test_what_is_never_closed_is_still_read(path: Path) -> None:
    found = page(path, "<table><tr><td>E4<td>sensor")

    assert found.text == "E4  sensor"


@pytest.mark.parametrize(
    ("head", "encoding"),
    [
        ('<meta charset="iso-8859-1">', "cp1252"),
        ('<meta http-equiv=x content="text/html; charset=windows-1250">', "cp1250"),
        ('<?xml version="1.0" encoding="utf-8"?>', "utf-8"),
        ("", "utf-8-sig"),
        ("", "utf-16"),
        ('<meta charset="no-such">', "utf-8"),
        ('<meta charset="utf-8">', "cp1252"),
    ],
)
def test_its_encoding_is_told_by_mark_and_by_what_it_says(
    head: str, encoding: str
) -> None:
    text = f"{head}<p>Fühler 25 °C</p>"

    assert decode_html(text.encode(encoding), "page.html") == text


def test_a_page_of_scripts_only_is_refused(path: Path) -> None:
    path.write_text("<html><script>load()</script></html>", encoding="utf-8")

    with pytest.raises(InputError, match=r"page\.html: a web page without words"):
        list(read_html(path))


def test_tables_nested_without_end_are_read_as_text(path: Path) -> None:
    found = page(path, "<table><tr><td>" * 3000 + "E4")

    assert "E4" in found.text


@given(
    st.lists(
        st.sampled_from(
            ("<table>", "</table>", "<tr>", "<td rowspan=3>", "<th colspan=2>", "</td>",
             "<p>", "</p>", "<h2>", "</h2>", "<li>", "<ol>", "</ol>", "<pre>", "</pre>",
             "<script>", "</script>", "E4 open", " ", "<svg/>", "<br>", "&amp;", "<")
        ),
        max_size=40,
    )
)  # fmt: skip
def test_rows_are_the_lines_they_say_whatever_the_tags(
    tmp_path_factory: pytest.TempPathFactory, parts: list[str]
) -> None:
    path = tmp_path_factory.mktemp("web") / "page.html"
    path.write_text("<html>" + "".join(parts), encoding="utf-8")

    try:
        _, found = read_html(path)
    except InputError:
        return

    assert isinstance(found, RawPage)
    lines = found.text.split("\n")
    for table in found.tables:
        assert len({len(row.cells) for row in table.rows}) == 1
        assert table.headers < len(table.rows)
        for row in table.rows:
            assert set(lines[row.line].split("  ")) <= {*row.cells}
