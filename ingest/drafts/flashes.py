"""Tables of flash counts, and of quick and long flashes. Pure."""

from __future__ import annotations

import re
from dataclasses import dataclass

from assistant.library.types import TableRow
from ingest.drafts.columns import Printed, cell, lamp_of_header, roles_of
from ingest.drafts.facts import add_texts, judge_fault, new_row, say_meaning
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.surroundings import lamp_named, rhythm
from ingest.drafts.words import count_of, slug

_TOLD = re.compile(r"\w+ (?:flash(?:es)?|blinks?)", re.IGNORECASE)
TEXTS = {"action": "unit_action", "recover": "recover", "step": "note"}
"""Role of a column -> field of the row that takes its words."""


def looks_like(table: Printed) -> bool:
    """Return whether a table gives meanings to counts of flashes."""
    if sum(lamp_of_header(name) is not None for name in table.header) > 1:
        return False
    places = _places(table)
    counted = "count" in places or {"short", "long"} <= set(places)
    return counted and "meaning" in places and _mostly_counts(table, places)


def _places(table: Printed) -> dict[str, int]:
    """Return role -> place; without column names, by what the first cells say."""
    if any(table.header):
        return roles_of(table)
    told = [_TOLD.fullmatch(cell(row, 0)) is not None for row in table.rows]
    return {"count": 0, "meaning": 1} if 2 * sum(told) > len(told) else {}


def _mostly_counts(table: Printed, places: dict[str, int]) -> bool:
    """Return whether at least a third of the count column is counts."""
    place = places.get("count", places.get("short"))
    read = [count_of(cell(row, place))[0] is not None for row in table.rows]
    return 3 * sum(read) >= len(read)


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return one row for each row of the table."""
    places = _places(table)
    lamp = _lamp(table, page)
    timing = rhythm(page.text, table.start)
    one = _short_long if "count" not in places else _counted
    shared = Shared(places, lamp, timing, table)
    return [one(table, row, page, shared) for row in table.rows]


@dataclass(frozen=True, slots=True)
class Shared:
    """What all rows of a table have in common."""

    places: dict[str, int]
    lamp: dict[str, str]
    timing: dict[str, str]
    table: Printed


def _lamp(table: Printed, page: PageView) -> dict[str, str]:
    named = [lamp for name in table.header if (lamp := lamp_of_header(name))]
    return named[0] if len(named) == 1 else lamp_named(page.text, table.start)


def _counted(table: Printed, row: TableRow, page: PageView, shared: Shared) -> DraftRow:
    places, lamp, timing = shared.places, shared.lamp, shared.timing
    drafted = new_row("signals", table, row, page, 0.95)
    over = "count_per_window" if "window" in timing else "group_then_pause"
    drafted.fields["kind"] = over
    _say_lamp(drafted, lamp)
    count, why = count_of(cell(row, places["count"]))
    if count is None:
        drafted.doubt("count", why, costs=0.4)
    else:
        drafted.fields["count"] = count
    drafted.fields |= timing
    _say_rest(drafted, row, page, shared)
    drafted.id = _id(drafted, "" if count is None else str(count))
    return drafted


def _short_long(
    table: Printed, row: TableRow, page: PageView, shared: Shared
) -> DraftRow:
    places, lamp = shared.places, shared.lamp
    drafted = new_row("signals", table, row, page, 0.9)
    drafted.fields["kind"] = "short_long"
    _say_lamp(drafted, lamp)
    shown = []
    for name in ("short", "long"):
        text = cell(row, places[name])
        count, why = (0, "") if text == "0" else count_of(text)
        if count is None:
            drafted.doubt(name, why, costs=0.4)
        else:
            drafted.fields[name] = count
            shown.append(str(count))
    if places["long"] < places["short"]:
        drafted.doubt("digit_order", "the long flashes stand first: which come first?")
    _say_rest(drafted, row, page, shared)
    drafted.id = _id(drafted, "-".join(shown) if not drafted.doubts else "")
    return drafted


def _say_lamp(drafted: DraftRow, lamp: dict[str, str]) -> None:
    drafted.fields["lamp"] = dict(lamp)
    if not lamp:
        drafted.doubt("lamp", "which lamp it is does not stand by the table")


def _say_rest(drafted: DraftRow, row: TableRow, page: PageView, shared: Shared) -> None:
    places = shared.places
    meaning = cell(row, places["meaning"])
    say_meaning(drafted, meaning)
    judge_fault(drafted, meaning, page, shared.table, row)
    add_texts(drafted, row, places, TEXTS)


def _id(drafted: DraftRow, shown: str) -> str:
    """Return an id of the lamp and what it shows; of the meaning where that is lost."""
    lamp = drafted.fields["lamp"]
    name = slug(lamp.get("label") or lamp.get("colour") or "lamp")
    what = shown or slug(drafted.fields.get("meaning", "")) or "unread"
    return f"{name}-{what}"
