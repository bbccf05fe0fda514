"""Resistance-temperature tables as shops keep them: CSV with units and sources."""

from __future__ import annotations

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from pathlib import Path as FilePath

from pydantic import TypeAdapter, ValidationError

from assistant.checks.kinds import TablePoint
from assistant.rules.mistakes import suggest
from assistant.rules.parsed import ParsedFiles
from assistant.rules.yaml_lines import Written, read_text

COLUMNS = ("temperature", "resistance", "doc", "page", "quote")
NEEDED = ("temperature", "resistance")
FEWEST = 2
"""Points that make a table: a value stands between two."""
EXAMPLE = "such as `temperature degC,resistance kohm,page,quote`"


@dataclass(slots=True)
class Table:
    """The points of a table, coldest first, and the line of each."""

    points: tuple[TablePoint, ...] = ()
    lines: tuple[int, ...] = ()
    written: Written = field(default_factory=lambda: Written(file=""))


@dataclass(frozen=True, slots=True)
class _Column:
    place: int
    unit: str


def read_table(path: FilePath, name: str, kept: ParsedFiles | None = None) -> Table:
    """Return the points of a CSV table, called `name` in messages.

    The header names `temperature` and `resistance`, each with its unit there or in
    every cell; `doc`, `page` and `quote` say where a row stands. Never raises for
    the content: what cannot be read is in `written.mistakes`. A text that `kept`
    holds is not parsed again.
    """
    table = Table(written=Written(file=name))
    text = read_text(path, table.written)
    if text is None:
        return table
    if kept is not None and _restore(kept.get(READER, text), table):
        return table
    table = _parse(text, table)
    if kept is not None and not table.written.mistakes:
        points = _POINTS.dump_python(table.points, mode="json")
        kept.put(READER, text, {"points": points, "lines": table.lines})
    return table


READER = "resistance table"
_POINTS = TypeAdapter(tuple[TablePoint, ...])


def _restore(before: object, table: Table) -> bool:
    if not isinstance(before, dict):
        return False
    table.points = _POINTS.validate_python(tuple(before["points"]))
    table.lines = tuple(before["lines"])
    return True


def _parse(text: str, table: Table) -> Table:
    """Read the whole of a text into `table`."""
    rows = _rows(text, table.written)
    if not rows:
        table.written.report(1, "the table is empty", f"write a header {EXAMPLE}")
        return table
    line, header = rows[0]
    columns = _columns(header, line, table.written)
    if not all(name in columns for name in NEEDED):
        return table
    found = []
    for line, cells in rows[1:]:
        point = _point(cells, line, columns, table.written)
        if point is not None:
            found.append((line, point))
    _compare(found, table.written)
    found.sort(key=lambda entry: entry[1].temperature.value)
    table.points = tuple(point for _, point in found)
    table.lines = tuple(line for line, _ in found)
    return table


def _rows(text: str, written: Written) -> list[tuple[int, list[str]]]:
    reader = csv.reader(text.splitlines(keepends=True), strict=True)
    rows = []
    try:
        for cells in reader:
            if any(cell.strip() for cell in cells):
                rows.append((reader.line_num, [cell.strip() for cell in cells]))
    except csv.Error as error:
        written.report(reader.line_num, f"is not CSV here ({error})")
    return rows


def _columns(header: list[str], line: int, written: Written) -> Mapping[str, _Column]:
    if len(header) == 1 and ";" in header[0]:
        written.report(
            line,
            "columns are separated by `;`",
            "save with commas between columns and points in decimals",
        )
        return {}
    columns: dict[str, _Column] = {}
    meant: set[str] = set()
    for place, cell in enumerate(header):
        word, _, unit = cell.partition(" ")
        name = word.casefold()
        if name not in COLUMNS:
            near = suggest(name, COLUMNS)
            meant.add(near)
            hint = near or f"known: {', '.join(COLUMNS)}"
            written.report(line, f"unknown column `{cell}`", hint)
        elif name in columns:
            written.report(line, f"column `{name}` is written twice")
            return {}
        else:
            columns[name] = _Column(place, unit.strip().strip("()[]"))
    for name in NEEDED:
        if name not in columns and f"did you mean `{name}`?" not in meant:
            written.report(line, f"column `{name}` is missing", f"header {EXAMPLE}")
    return columns


def _point(
    cells: list[str], line: int, columns: Mapping[str, _Column], written: Written
) -> TablePoint | None:
    extra = [cell for cell in cells[len(columns) :] if cell]
    if extra:
        written.report(
            line,
            f"has more cells than the header ({', '.join(extra)[:40]})",
            "put a cell that holds a comma between double quotes",
        )
        return None
    said: dict[str, object] = {}
    for name in columns:
        value = _cell(cells, columns[name])
        if name == "page" and value:
            if not value.isdecimal() or int(value) < 1:
                written.report(line, f"page `{value}` is not a page number from 1")
                return None
            said[name] = int(value)
        elif value or name in NEEDED:
            said[name] = _with_unit(value, columns[name].unit)
    return _validated(said, line, written)


def _validated(
    said: dict[str, object], line: int, written: Written
) -> TablePoint | None:
    try:
        point = TablePoint.model_validate(said)
    except ValidationError as error:
        for detail in error.errors(include_url=False):
            reason = detail.get("ctx", {}).get("error", detail["msg"])
            written.report(line, f"{detail['loc'][0]}: {reason}")
        return None
    if point.resistance.value <= 0:
        text = point.resistance.text
        written.report(line, f"resistance: {text} is not above zero")
        return None
    return point


def _cell(cells: Sequence[str], column: _Column) -> str:
    return cells[column.place] if column.place < len(cells) else ""


def _with_unit(value: str, unit: str) -> str:
    has_own = any(character.isalpha() or character in "°Ω" for character in value)
    return value if has_own or not unit else f"{value} {unit}"


def _compare(found: list[tuple[int, TablePoint]], written: Written) -> None:
    """Report what a copied or misread table shows: repeats and wrong turns."""
    if len(found) < FEWEST:
        written.report(1, f"has {len(found)} usable rows; a table needs two or more")
        return
    ordered = sorted(found, key=lambda entry: (entry[1].temperature.value, entry[0]))
    falls = ordered[-1][1].resistance.value < ordered[0][1].resistance.value
    for (first, low), (second, high) in pairwise(ordered):
        if low.temperature.value == high.temperature.value:
            written.report(
                max(first, second),
                f"temperature {high.temperature.text} is there already, on line "
                f"{min(first, second)}",
            )
        elif (high.resistance.value < low.resistance.value) != falls:
            way = "fall" if falls else "rise"
            written.report(
                second,
                f"resistance {high.resistance.text} does not {way} from "
                f"{low.resistance.text} on line {first} as the rest of the table does",
                "compare both rows with the page",
            )
