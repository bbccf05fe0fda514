"""Tables of pins, terminals or ports with the value that is right there. Pure."""

from __future__ import annotations

import re

from assistant.library.types import TableRow
from assistant.units.parse import find_unit
from ingest.drafts.columns import Printed, cell
from ingest.drafts.facts import forbidden, new_row
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.words import empty, slug

_WHERE = re.compile(
    r"^(?:pins?|terminals?|between|points?|test points?|plug|connector|measured"
    r"(?: (?:at|between))?|port|lead(?:s)?)$",
    re.IGNORECASE,
)
_WHAT = re.compile(
    r"^(?:(?:sound |right |normal |standard |expected |rated )?(?:value|voltage|volts?|"
    r"resistance|pressure|reading)|right|expected|standard|volts)\b(?P<unit>.*)$",
    re.IGNORECASE,
)
_N = r"[-−]?\d+(?:\.\d+)?"
_U = r"(?P<unit>(?:[kM]?ohms?|[kM]?Ω|m?V|m?A|MPa|kPa|bar|psi[ag]?)(?: ?(?:AC|DC))?)?"
_RANGE = re.compile(
    rf"(?P<low>{_N})\s*(?:-|–|to|\.\.\.?)\s*(?P<high>{_N})\s*{_U}(?P<rest>.*)"
)
_MORE = re.compile(
    rf"(?P<low>{_N})\s*{_U}\s*(?:or more|and more|min(?:imum)?\.?)"
    rf"|(?:above|over|at least|≥|>)\s*(?P<low2>{_N})\s*{_U.replace('unit', 'unit2')}"
)
_LESS = re.compile(
    rf"(?P<high>{_N})\s*{_U}\s*(?:or less|max(?:imum)?\.?)"
    rf"|(?:below|under|at most|≤|<)\s*(?P<high2>{_N})\s*{_U.replace('unit', 'unit2')}"
)
_SINGLE = re.compile(rf"(?:about|approx\.?)?\s*(?P<one>{_N})\s*{_U}(?P<rest>.*)")
_PRESSURE = re.compile(r"\b(?:MPa|kPa|bar|psi)\b")
_KIND = re.compile(
    r"\b(?:gauge|absolute|abs|psig|psia|barg|bara|MPaG|MPa\(g\))\b", re.I
)
_MOVES = re.compile(r"\b(?:swings?|pulses?|changes|varies|between -)\b", re.IGNORECASE)
_NEEDS = {"ohm": "power_off", "V": "live", "A": "live", "PaG": "gauges", "Pa": "gauges"}


def looks_like(table: Printed) -> bool:
    """Return whether a table says what is right at which points."""
    where, what = _places(table)
    return where is not None and what is not None


def _places(table: Printed) -> tuple[int | None, int | None]:
    where = [n for n, name in enumerate(table.header) if _WHERE.match(name)]
    what = [n for n, name in enumerate(table.header) if _WHAT.match(name)]
    if "Between" in table.header:
        where = [table.header.index("Between")]
    return (where[0] if where else None), (what[0] if what else None)


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return one row for each row of the table that names a value."""
    where, what = _places(table)
    return [
        _row(table, row, page, (cell(row, where), cell(row, what)))
        for row in table.rows
        if not empty(cell(row, what)) and not empty(cell(row, where))
    ]


def _row(
    table: Printed, row: TableRow, page: PageView, said: tuple[str, str]
) -> DraftRow:
    points, text = said
    drafted = new_row("checks", table, row, page, 0.7)
    _, what = _places(table)
    header = table.header[what] if what is not None else ""
    band = _band(text, drafted)
    unit = _unit(text, header)
    drafted.fields |= {"kind": "band", "name": f"Value at {points}", "points": points}
    for end, number in band.items():
        drafted.fields[end] = f"{number} {unit}".strip()
    _say_needs(drafted, unit, f"{text} {header}")
    why = forbidden(text)
    if why:
        drafted.left_out.append(f"`{text}`: {why}")
    drafted.doubt("minutes", "how long it takes does not stand there", costs=1.0)
    drafted.id = f"at-{slug(points)}" if slug(points) else "at-unread"
    return drafted


def _band(text: str, drafted: DraftRow) -> dict[str, str]:
    """Return low and high as printed; a doubt where they are not a band."""
    if _MOVES.search(text):
        drafted.doubt("behaviour", f"`{text}`: a behaviour, and no band", costs=0.4)
        return {}
    if found := _MORE.fullmatch(text):
        return {"low": found["low"] or found["low2"]}
    if found := _LESS.fullmatch(text):
        return {"high": found["high"] or found["high2"]}
    if found := _RANGE.fullmatch(text):
        return {"low": found["low"], "high": found["high"]}
    if found := _SINGLE.fullmatch(text):
        told = f"`{text}`: one figure without limits"
        drafted.doubt("band", told, costs=0.5)
        return {}
    drafted.doubt("band", f"`{text}` is no band", costs=0.4)
    return {}


def _unit(text: str, header: str) -> str:
    """Return the unit that the cell or the column's name writes."""
    for place in (text, header):
        for found in re.finditer(r"[A-Za-zΩ°]+(?: (?:AC|DC))?", place):
            unit = find_unit(found[0])
            if unit is not None and unit.canonical in _NEEDS:
                return found[0]
    return ""


def _say_needs(drafted: DraftRow, unit: str, text: str) -> None:
    """Put in what the check needs; the safe order of work is added by the engine."""
    known = find_unit(unit) if unit else None
    if known is None:
        drafted.doubt("unit", "the unit stands neither in the row nor in the column")
    else:
        needs = _NEEDS[known.canonical]
        drafted.fields["needs"] = needs
        if needs == "power_off":
            drafted.fields["requires"] = ["power off"]
        if _PRESSURE.search(text) and not _KIND.search(text):
            told = "gauge or absolute does not stand beside the pressure"
            drafted.doubt("gauge", told)
    drafted.fields["allowed_for"] = ["technician", "licensed technician"]
    points = drafted.fields["points"]
    drafted.fields["ask"] = f"What do you measure at {points}?"
    drafted.fields["outcomes"] = [
        {"result": "pass", "says": "within what the document gives"},
        {"result": "fail", "says": "outside what the document gives"},
    ]
