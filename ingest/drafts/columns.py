"""What the columns of a printed table are about, by their names. Pure."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from itertools import groupby

from assistant.library.types import TableRow

_ROLES: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (role, re.compile(form, re.IGNORECASE))
    for role, form in (
        ("short", r"^(?:short|quick|fast)\b"),
        ("long", r"^(?:long|slow)\b"),
        (
            "count",
            r"^(?:(?:no\.?|number|count|times)(?: of (?:the )?(?:led )?"
            r"(?:flashes|blinks|times))?|(?:(?:led|lamp)[ -]?)?(?:flash(?:es)?|blinks?)"
            r"(?: (?:count|number|no\.?|code))?|flashing (?:count|times))$",
        ),
        (
            "code",
            r"^(?:(?:(?:fault|error|display|check|alarm|trouble) )?codes?"
            r"|display|shown|indication|error|remote(?: display)?)$",
        ),
        ("sub", r"^(?:sub(?:-?code)?|then|second(?: code)?|detail(?: code)?)$"),
        (
            "meaning",
            r"^(?:meanings?|fault|failure|malfunction|description|contents?|details?"
            r"|state|problem|fault (?:description|name|content)|abnormality)$",
        ),
        (
            "action",
            r"^(?:what the unit does|unit(?: (?:action|operation|state))?|operation"
            r"|behaviour)$",
        ),
        ("recover", r"^(?:recovery|ends(?: with)?|reset(?: by)?|release)$"),
        ("step", r"^(?:remed(?:y|ies)|what to do|do|action|service|countermeasure)$"),
    )
)
_LAMP = re.compile(
    r"^(?:(?P<first>green|red|amber|yellow|orange|blue|white)\s+)?"
    r"(?:lamp|led)?\s*"
    r"(?P<label>(?:LD|LED|LP|D|H|L|V)\s?-?\d{1,2}[A-Z]?)?\s*"
    r"\(?(?P<colour>green|red|amber|yellow|orange|blue|white)?\)?\s*(?:lamp|led)?$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Printed:
    """A printed table: its place, its column names and its rows in order."""

    page: int
    number: int
    header: tuple[str, ...]
    rows: tuple[TableRow, ...]

    @property
    def name(self) -> str:
        """How drafts and people call it."""
        return f"p{self.page}-t{self.number}"

    @property
    def start(self) -> int:
        """Where its first row stands in the page's text."""
        return self.rows[0].start


def printed_tables(rows: Sequence[TableRow]) -> list[Printed]:
    """Return the tables that stored rows belong to."""
    ordered = sorted(rows, key=lambda row: (row.page, row.table, row.row))
    found = []
    for (page, number), group in groupby(
        ordered, key=lambda row: (row.page, row.table)
    ):
        held = tuple(group)
        header = tuple(name.rpartition(": ")[2].strip() for name in held[0].header)
        if not header and len(held) > 1 and _names_columns(held[0].cells):
            header, held = held[0].cells, held[1:]
        found.append(Printed(page, number, header, held))
    return found


def _names_columns(cells: Sequence[str]) -> bool:
    """Return whether a first row, told from no other, names what its columns are of."""
    roles = {role_of(name) for name in cells}
    lamps = sum(lamp_of_header(name) is not None for name in cells)
    return "meaning" in roles and (
        lamps > 1 or bool(roles & {"count", "code", "short"})
    )


def role_of(name: str) -> str:
    """Return what a column is about, or nothing.

    Examples
    --------
    >>> [role_of(name) for name in ("Flashes", "Meaning", "Code", "Cause")]
    ['count', 'meaning', 'code', '']
    """
    folded = " ".join(name.split())
    for role, form in _ROLES:
        if form.search(folded):
            return role
    return ""


def roles_of(table: Printed) -> dict[str, int]:
    """Return role -> place of the first column about it."""
    found: dict[str, int] = {}
    for place, name in enumerate(table.header):
        found.setdefault(role_of(name), place)
    found.pop("", None)
    means = meaning_place(table)
    if means is not None:
        return {**found, "meaning": means}
    return {role: place for role, place in found.items() if role != "meaning"}


def fault_column(table: Printed) -> int | None:
    """Return the place of a column that says yes or no to being a fault."""
    for place, name in enumerate(table.header):
        said = {cell(row, place).casefold() for row in table.rows}
        if name.casefold() == "fault" and said & {"yes", "no"}:
            return place
    return None


def meaning_place(table: Printed) -> int | None:
    """Return the place of the column that says what a row means."""
    yes_no = fault_column(table)
    for place, name in enumerate(table.header):
        if place != yes_no and role_of(name) == "meaning":
            return place
    return None


def lamp_of_header(name: str) -> dict[str, str] | None:
    """Return the lamp that a column is named after, or None.

    Examples
    --------
    >>> lamp_of_header("LD1 green"), lamp_of_header("Code")
    ({'label': 'LD1', 'colour': 'green'}, None)
    """
    found = _LAMP.match(" ".join(name.split()))
    if found is None or not (found["label"] or found["first"] or found["colour"]):
        return None
    lamp = {"label": (found["label"] or "").replace(" ", "")}
    lamp["colour"] = (found["first"] or found["colour"] or "").casefold()
    return {key: value for key, value in lamp.items() if value}


def cell(row: TableRow, place: int | None) -> str:
    """Return a cell with its white space folded; nothing where there is none."""
    if place is None or place >= len(row.cells):
        return ""
    return " ".join(row.cells[place].split())
