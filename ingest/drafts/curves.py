"""Resistance-temperature tables: one sensor a column, one point a cell. Pure."""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from assistant.library.types import TableRow
from assistant.units.parse import find_unit, parse_quantity
from ingest.drafts.columns import Printed, cell
from ingest.drafts.curve_checks import (
    COLDEST,
    HOTTEST,
    degree_as_zero,
    off_the_curve,
    restarts,
    wrong_turns,
)
from ingest.drafts.facts import mark_page, new_row
from ingest.drafts.model import POINTS, DraftRow, PageView
from ingest.drafts.surroundings import before
from ingest.drafts.words import empty, slug

_TEMPERATURE = re.compile(
    r"^(?:temp(?:erature)?\.?\b.*|t|.*(?:°|deg\.? ?)[CF]\b.*|[°º℃℉][CF]?|at)$",
    re.IGNORECASE,
)
_UNIT = re.compile(
    r"(?<![A-Za-z])(k?ohms?|[kM]?Ω|Mohms?|°\s?[CF]|deg ?[CF]|℃|℉)(?![A-Za-z])"
)
_RESISTANCE = re.compile(r"\b(?:resistance|ohms?|r)\b|Ω|kohm|Mohm", re.IGNORECASE)
_NUMBER = re.compile(r"[-−+]?\d+(?:\.\d+)?")
_ROLES = (
    "discharge",
    "outdoor air",
    "outdoor coil",
    "indoor coil",
    "room",
    "suction",
    "liquid",
    "heat sink",
    "coil",
)
_TOLERANCE = re.compile(r"±\s?(\d+(?:\.\d+)?)\s?%")
_FEWEST = 2
_OHMS = "resistance"
_KELVIN = "temperature"


@dataclass(slots=True)
class _Curve:
    """A column of resistances with the column of its temperatures."""

    name: str
    temperature_unit: str
    resistance_unit: str
    points: list[tuple[TableRow, str, str]] = field(default_factory=list)
    merged: bool = False
    """It began where the temperatures of another table started anew."""


def looks_like(table: Printed) -> bool:
    """Return whether a table has resistances beside temperatures."""
    groups = _groups(table.header)
    if not groups:
        return False
    numbers = [
        _NUMBER.fullmatch(cell(row, place)) is not None
        for row in table.rows
        for at, others in groups
        for place in (at, *others)
    ]
    named = any(_RESISTANCE.search(name) for name in table.header)
    return (
        len(table.rows) > 1
        and 2 * sum(numbers) > len(numbers)
        and (named or any(_UNIT.search(name) for name in table.header))
    )


def _groups(header: tuple[str, ...]) -> list[tuple[int, list[int]]]:
    """Return each temperature column with the columns of resistances after it."""
    groups: list[tuple[int, list[int]]] = []
    for place, name in enumerate(header):
        if _TEMPERATURE.match(name) and not _RESISTANCE.search(name):
            groups.append((place, []))
        elif groups and not re.search(r"\b(?:V|volts?)\b", name):
            groups[-1][1].append(place)
    return [(at, others) for at, others in groups if others]


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return a row for each sensor, and one for each of its points."""
    drafted: list[DraftRow] = []
    for curve in _curves(table, page):
        if len(curve.points) >= _FEWEST:
            drafted += _of_curve(curve, table, page)
    return drafted


def _curves(table: Printed, page: PageView) -> Iterator[_Curve]:
    """Yield the curves of a table; groups of the same names go on from each other."""
    whole: dict[str, _Curve] = {}
    for at, others in _groups(table.header):
        degrees = _unit_of(table.header[at], page, table, ("C", "F", "℃", "℉"))
        for place in others:
            name = table.header[place]
            unit = _unit_of(name, page, table, ("ohm", "ohms", "Ω"))
            key = f"{name}|{degrees}"
            curve = whole.setdefault(key, _Curve(_bare(name), degrees, unit))
            for row in table.rows:
                warm, ohm = cell(row, at), cell(row, place)
                if not (empty(warm) and empty(ohm)):
                    curve.points.append((row, warm, ohm))
    for curve in whole.values():
        yield from _parted(curve)


def _parted(curve: _Curve) -> Iterator[_Curve]:
    """Yield a curve in the parts in which its temperatures start anew."""
    read = [_value(warm) for _, warm, _ in curve.points]
    known = [n for n, value in enumerate(read) if value is not None]
    values = [value for value in read if value is not None]
    cuts = [known[n] for n in restarts(values, degree_as_zero(values))]
    for number, start in enumerate([0, *cuts]):
        end = [*cuts, len(curve.points)][number]
        yield _Curve(
            curve.name,
            curve.temperature_unit,
            curve.resistance_unit,
            curve.points[start:end],
            merged=number > 0,
        )


def _value(text: str) -> float | None:
    return float(text.replace("−", "-")) if _NUMBER.fullmatch(text) else None


def _bare(name: str) -> str:
    """Return a column's name without its unit."""
    bare = _UNIT.sub("", name)
    bare = re.sub(r"\b(?:resistance|in)\b", "", bare, flags=re.IGNORECASE)
    return " ".join(bare.strip(" ()[],/").split())


def _unit_of(name: str, page: PageView, table: Printed, among: tuple[str, ...]) -> str:
    """Return the unit of a column: of its name, else of the title above the table."""
    for line in (name, *before(page.text, table.start)[:2]):
        units = {
            found[1]
            for found in _UNIT.finditer(line)
            if found[1].replace(" ", "").endswith(among)
        }
        if len(units) == 1:
            unit = units.pop()
            return unit if find_unit(unit) is not None else ""
    return ""


def _of_curve(curve: _Curve, table: Printed, page: PageView) -> list[DraftRow]:
    sensor = _sensor(curve, table, page)
    file = f"{POINTS}/{sensor.id}.csv"
    sensor.fields["table"] = f"{sensor.id}.csv"
    points = [
        _point(curve, each, (file, sensor.id), (table, page)) for each in curve.points
    ]
    if curve.merged:
        told = "the temperatures start anew here: which sensor is this table of?"
        sensor.doubt("sensor", told, costs=0.4)
    _judge(points, sensor)
    return [sensor, *points]


def _sensor(curve: _Curve, table: Printed, page: PageView) -> DraftRow:
    title, *_ = [*before(page.text, table.start), ""]
    own = _line_of(curve.name, page) if curve.name else ""
    line = own or title or table.rows[0].cells[0]
    row = DraftRow("sensors", "", {}, page.number, " ".join(line.split()), 0.9)
    row.table = table.name
    mark_page(row, page)
    row.fields["kind"] = "resistance_table"
    roles = _roles(line) or _roles(title)
    named = curve.name or (f"{roles[0]} sensor" if len(roles) == 1 else "")
    if named:
        row.fields["name"] = named
    else:
        row.doubt("name", "the column does not say which sensor it is of")
    if len(roles) == 1:
        row.fields["role"] = roles[0]
    else:
        row.doubt("role", "what the sensor measures does not stand beside its name")
    tolerances = {found[1] for found in _TOLERANCE.finditer(line)}
    if len(tolerances) == 1 and own:
        row.fields["tolerance"] = f"{tolerances.pop()} %"
    row.id = slug(named) or f"sensor-{table.name}"
    if curve.merged:
        row.id = f"{row.id}-again"
    return row


def _line_of(name: str, page: PageView) -> str:
    """Return the one line outside figures that names a sensor with a role."""
    form = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)")
    lines = [x for x in page.text.splitlines() if form.search(x) and _roles(x)]
    single = [line for line in lines if len(_roles(line)) == 1]
    agree = len({_roles(line)[0] for line in single}) == 1
    return single[0] if agree else ""


def _roles(line: str) -> list[str]:
    folded = line.casefold()
    found = []
    for role in _ROLES:
        if re.search(rf"\b{role}\b", folded):
            found.append(role)
            folded = folded.replace(role, "")
    return found


def _point(
    curve: _Curve,
    point: tuple[TableRow, str, str],
    names: tuple[str, str],
    where: tuple[Printed, PageView],
) -> DraftRow:
    row, warm, ohm = point
    file, sensor = names
    drafted = new_row(file, where[0], row, where[1], 0.95)
    drafted.id = f"{sensor}:{warm or 'unread'}".replace(" ", "")
    told = (
        (_KELVIN, warm, curve.temperature_unit),
        (_OHMS, ohm, curve.resistance_unit),
    )
    for name, text, unit in told:
        if not _NUMBER.fullmatch(text):
            drafted.doubt(name, f"`{text}` is no number" if text else "no figure here")
            continue
        drafted.fields[name] = f"{text} {unit}".strip()
        if not unit:
            why = f"the unit of {name} stands neither in the column nor in its title"
            drafted.doubt(f"{name}_unit", why)
    return drafted


def _judge(points: list[DraftRow], sensor: DraftRow) -> None:
    """Doubt what the figures of a whole curve show to be misread."""
    _judge_degrees(points)
    whole = [(row, *read) for row in points if (read := _read(row)) is not None]
    for row, kelvin, ohm in whole:
        if not COLDEST <= kelvin <= HOTTEST:
            told = f"{row.fields[_KELVIN]} is no temperature of such a sensor"
            row.doubt("range", told, costs=0.4)
        if ohm <= 0:
            row.doubt("range", "a resistance is above zero", costs=0.4)
    sound = [each for each in whole if not {"range", "degree"} & set(each[0].doubts)]
    if len(sound) < _FEWEST:
        return
    ohms = [ohm for _, _, ohm in sound]
    if ohms[-1] > ohms[0]:
        told = "resistance rises with temperature: columns swapped, or another sensor?"
        sensor.doubt("rising", told, costs=0.5)
    for place in wrong_turns(ohms):
        told = "resistance turns against the run of the table"
        sound[place][0].doubt("order", told, costs=0.3)
    rounding = max(_rounding(str(row.fields[_OHMS])) for row, _, _ in sound)
    for place in off_the_curve([kelvin for _, kelvin, _ in sound], ohms, rounding):
        told = "ln R is off the line of its neighbours over 1/T: a misread figure?"
        sound[place][0].doubt("smooth", told, costs=0.4)


def _rounding(text: str) -> float:
    """Return half a unit of the last printed digit, relative to the value."""
    number = text.split(" ", maxsplit=1)[0]
    decimals = len(number.partition(".")[2])
    value = abs(float(number))
    return 0.5 * 10.0**-decimals / value if value else 0.0


def _judge_degrees(points: list[DraftRow]) -> None:
    read = [
        (row, _value(str(row.fields.get(_KELVIN, "")).split(" ")[0])) for row in points
    ]
    known = [(row, value) for row, value in read if value is not None]
    for place in degree_as_zero([value for _, value in known]):
        row, value = known[place]
        told = f"{value:.0f} stands out of order: was a degree sign read as its last 0?"
        row.doubt("degree", told, costs=0.3)


def _read(row: DraftRow) -> tuple[float, float] | None:
    """Return kelvin and ohm of a point; a missing unit counts as °C and ohm."""
    try:
        warm, ohm = (str(row.fields[name]) for name in (_KELVIN, _OHMS))
        if f"{_KELVIN}_unit" in row.doubts:
            warm = f"{warm} °C"
        if f"{_OHMS}_unit" in row.doubts:
            ohm = f"{ohm} ohm"
        return parse_quantity(warm).value, parse_quantity(ohm).value
    except (KeyError, ValueError):
        return None
