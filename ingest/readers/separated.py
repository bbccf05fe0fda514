"""The reader of tables as text: values parted by commas, semicolons, tabs or bars."""

from __future__ import annotations

import csv
import re
from collections import Counter
from collections.abc import Iterator, Sequence
from pathlib import Path

from assistant.errors import InputError
from ingest.readers.base import FileFacts, Read
from ingest.readers.sheet import Sheet, from_first
from ingest.readers.text import decode

DELIMITERS = (",", ";", "\t", "|")
SAMPLE_LINES = 60
LEAST_ROWS = 3
EVEN_SHARE = 0.9
"""Of the rows looked at: so many must have the usual number of fields."""
LONGEST_FIELD = 400
PROSE_WORDS = 8
"""The usual field of a table has fewer words than a clause of prose."""
MOST_FIELDS = 200
MOST_ROWS = 100_000

_NUMBER = re.compile(r"[-+]?[\d.,\u2009 ]*\d[\d.,]*\s?%?")
_SHAPES = ((re.compile(r"\d+"), "9"), (re.compile(r"[^\W\d_]+"), "A"))


def read_separated(
    path: Path, first: int = 1, password: str | None = None
) -> Iterator[Read]:
    """Read a table as one page, each row a line.

    Raises
    ------
    InputError
        It does not decode, is no table, or has too many rows.
    """
    del password  # a table as text has none
    text = decode(path.read_bytes(), path.name)
    delimiter = delimiter_of(text)
    if not delimiter:
        raise InputError(f"{path.name}: its rows have no common number of fields")
    rows = _rows(text, delimiter, path.name)
    sheet = Sheet()
    sheet.table(rows, int(names_columns(rows)))
    yield FileFacts(1)
    yield from from_first([sheet], first)


def delimiter_of(text: str) -> str:
    r"""Return what parts the fields of a table as text; nothing when it is none.

    Examples
    --------
    >>> delimiter_of("code;meaning\nE4;discharge sensor\nE5;low pressure\n")
    ';'
    >>> delimiter_of("Well, it stopped.\nThen it ran.\nIn short, no.\n")
    ''
    """
    best = ("", 0.0)
    for delimiter in DELIMITERS:
        told = _evenness(text, delimiter)
        if told > best[1]:
            best = (delimiter, told)
    return best[0]


def names_columns(rows: Sequence[Sequence[str]]) -> bool:
    """Whether the first row names the columns: words, each once, unlike the data.

    Examples
    --------
    >>> names_columns([["code", "ohm"], ["E4", "50"], ["E5", "20"]])
    True
    >>> names_columns([["E3", "fan"], ["E4", "sensor"], ["E5", "valve"]])
    False
    """
    if len(rows) < 1 + 1:
        return False
    head = [cell.strip() for cell in rows[0]]
    if not all(head) or len(set(head)) < len(head):
        return False
    return not any(
        _NUMBER.fullmatch(cell) or _like_those_below(cell, column, rows[1:])
        for column, cell in enumerate(head)
    )


def _like_those_below(cell: str, column: int, rows: Sequence[Sequence[str]]) -> bool:
    """Whether a cell with a figure is made as most cells of its column are."""
    if not any(map(str.isdigit, cell)):
        return False
    below = [row[column].strip() for row in rows[:SAMPLE_LINES] if column < len(row)]
    alike = sum(_shape(each) == _shape(cell) for each in below)
    return 2 * alike > len(below)


def _shape(cell: str) -> str:
    for pattern, sign in _SHAPES:
        cell = pattern.sub(sign, cell)
    return cell


def _evenness(text: str, delimiter: str) -> float:
    """Return how surely a delimiter parts a table: 0 where it does not."""
    sample = "\n".join(text.split("\n")[: SAMPLE_LINES + 1])
    if len(sample) < len(text):
        sample = sample[: sample.rfind("\n")]
    try:
        rows = [row for row in _parsed(sample, delimiter) if any(map(str.strip, row))]
    except csv.Error:
        return 0.0
    widths = Counter(map(len, rows))
    usual, number = max(
        widths.items(), key=lambda each: (each[1], each[0]), default=(0, 0)
    )
    if len(rows) < LEAST_ROWS or not 1 < usual <= MOST_FIELDS:
        return 0.0
    share = number / len(rows)
    # A few rows must all be even: two clauses a line are no table.
    if share < (EVEN_SHARE if len(rows) > 1 / (1 - EVEN_SHARE) else 1.0):
        return 0.0
    return 0.0 if _is_prose(rows, delimiter) else share * usual


def _is_prose(rows: Sequence[Sequence[str]], delimiter: str) -> bool:
    fields = [cell for row in rows for cell in row if cell.strip()]
    words = sorted(len(cell.split()) for cell in fields)
    if max(map(len, fields)) > LONGEST_FIELD:
        return True
    if words[len(words) // 2] >= PROSE_WORDS:
        return True
    if delimiter != ",":
        return False
    # Prose puts a space behind every comma, and lines of it seldom agree.
    inner = [cell for row in rows for cell in row[1:] if cell]
    spaced = sum(cell.startswith(" ") for cell in inner)
    return bool(inner) and 2 * spaced > len(inner) and len(rows[0]) <= 1 + 1


def _parsed(text: str, delimiter: str) -> Iterator[list[str]]:
    return csv.reader(text.splitlines(keepends=True), delimiter=delimiter)


def _rows(text: str, delimiter: str, name: str) -> list[list[str]]:
    rows: list[list[str]] = []
    try:
        for row in _parsed(text, delimiter):
            if any(map(str.strip, row)):
                rows.append(row[:MOST_FIELDS])
            if len(rows) > MOST_ROWS:
                raise InputError(
                    f"{name}: more than {MOST_ROWS} rows",
                    "split the table and add the parts",
                )
    except csv.Error as error:
        raise InputError(f"{name}: damaged table ({error})") from error
    return rows
