"""Fills the sensors of a pack being read with the points of their CSV tables."""

from __future__ import annotations

from pathlib import PurePosixPath

from assistant.checks.kinds import ResistanceTable, TablePoint
from assistant.rules.csv_tables import Table, read_table
from assistant.rules.gathering import Gathering
from assistant.rules.mistakes import Mistake, suggest


def fill_tables(found: Gathering) -> None:
    """Read the table that each sensor names and put its points into the sensor."""
    for place, sensor in sorted(found.items["sensors"].items()):
        if not isinstance(sensor, ResistanceTable):
            continue
        if sensor.points:
            _report(
                found, place, "points", "`points` are not written here", "use the table"
            )
            continue
        table = _table(found, place, sensor)
        if table is None:
            continue
        found.other.extend(table.written.mistakes)
        _check_sources(found, sensor, table)
        found.items["sensors"][place] = sensor.model_copy(
            update={"points": table.points}
        )
        for number, line in enumerate(table.lines):
            found.table_lines[(sensor.id, number)] = (table.written.file, line)


def _report(found: Gathering, place: int, key: str, what: str, hint: str) -> None:
    line = found.line("sensors", place, key)
    called = found.items["sensors"][place].id
    found.report("sensors.yaml", line, f"`{called}`: {what}", hint)


def _table(found: Gathering, place: int, sensor: ResistanceTable) -> Table | None:
    """Read the sensor's table, looked for below the pack's folder only."""
    named = PurePosixPath(sensor.table)
    if named.is_absolute() or ".." in named.parts or "\\" in sensor.table:
        what = f"table `{sensor.table}` lies outside the pack"
        _report(found, place, "table", what, "write tables/NAME.csv")
        return None
    for tried in (named, "tables" / named):
        path = found.folder / tried
        if path.is_file():
            return read_table(path, found.name(str(tried)), found.kept)
    held = sorted(path.name for path in (found.folder / "tables").glob("*.csv"))
    near = suggest(named.name, held)
    hint = near or f"tables there: {', '.join(held) or 'none'}"
    _report(found, place, "table", f"there is no table `{sensor.table}`", hint)
    return None


def _check_sources(found: Gathering, sensor: ResistanceTable, table: Table) -> None:
    if found.head is None:
        return
    for point, line in zip(table.points, table.lines, strict=True):
        aliases = found.head.documents
        if point.doc is not None and point.doc not in aliases:
            table_mistake = f"`{point.doc}` is not a document of this pack"
            hint = suggest(point.doc, aliases)
            found.other.append(
                _at(table, line, table_mistake, hint or "name it in pack.yaml")
            )
        elif sensor.source is None and point.page and _alias(sensor, point) is None:
            found.other.append(
                _at(table, line, "has a page but no document", "add a column `doc`")
            )


def _alias(sensor: ResistanceTable, point: TablePoint) -> str | None:
    return point.doc or (sensor.source.doc if sensor.source else None)


def _at(table: Table, line: int, what: str, hint: str) -> Mistake:
    return Mistake(table.written.file, line, what, hint)
