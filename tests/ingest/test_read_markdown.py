"""What the reader of Markdown gives."""

from __future__ import annotations

from pathlib import Path

import pytest

from ingest.readers.base import RawPage
from ingest.readers.markdown import looks_like_markdown, read_markdown

TEXT = """\
# Lamps of the **blue** board

The bus holds 320 V.
Wait *five* minutes.

## Lamp `LD2`

1. Turn the supply off
2. Measure at [CN5](plug.html)
   - pin 1
   - pin 3

| Flashes | Meaning |
|--------:|---------|
| 4 | Discharge sensor<br>open |
| 5 | low \\| high |

```
LD1  on
LD2  off
```
"""


@pytest.fixture
def page(tmp_path: Path) -> RawPage:
    path = tmp_path / "lamps.md"
    path.write_text(TEXT, encoding="utf-8")
    _, found = read_markdown(path)
    assert isinstance(found, RawPage)
    return found


def test_words_stay_and_marks_of_style_go(page: RawPage) -> None:
    assert page.text.split("\n") == [
        "Lamps of the blue board",
        "",
        "The bus holds 320 V.",
        "Wait five minutes.",
        "",
        "Lamp LD2",
        "",
        "1. Turn the supply off",
        "2. Measure at CN5",
        "- pin 1",
        "- pin 3",
        "",
        "Flashes  Meaning",
        "4  Discharge sensor open",
        "5  low | high",
        "",
        "LD1  on",
        "LD2  off",
    ]


def test_headings_stand_out_by_their_level(page: RawPage) -> None:
    first, second = page.prominent

    assert (first.text, second.text) == ("Lamps of the blue board", "Lamp LD2")
    assert first.size > second.size


def test_tables_keep_cells_and_header(page: RawPage) -> None:
    (table,) = page.tables

    assert table.headers == 1
    assert [(row.line, row.cells) for row in table.rows] == [
        (12, ("Flashes", "Meaning")),
        (13, ("4", "Discharge sensor open")),
        (14, ("5", "low | high")),
    ]


def test_form_feeds_part_pages(tmp_path: Path) -> None:
    path = tmp_path / "two.md"
    path.write_text("# One\n\na\f# Two\n\nb\n", encoding="utf-8")

    _, *pages = read_markdown(path, first=2)

    assert [
        (page.number, page.text) for page in pages if isinstance(page, RawPage)
    ] == [(2, "Two\n\nb")]


@pytest.mark.parametrize(
    ("text", "marked"),
    [
        ("# Lamps\n\nLD2 is **amber**.\n", True),
        ("a | b\n--|--\n1 | 2\n", True),
        ("# One\n# Two\n# Three\n", True),
        ("E4 ---- sensor\n- low\n- high\n", False),
        ("Part # 4 and ** a note **\n", False),
        ("BOATHOUSE\n=========\n\nThe supply dips.\n", False),
        ("# 12 is the order number\n", False),
    ],
)
def test_markdown_is_told_from_plain_text(text: str, *, marked: bool) -> None:
    assert looks_like_markdown(text) is marked
