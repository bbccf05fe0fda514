"""Tables in which several lamps are each on, off or flashing. Pure."""

from __future__ import annotations

import re

from assistant.library.types import TableRow
from ingest.drafts.columns import Printed, cell, lamp_of_header, roles_of
from ingest.drafts.facts import add_texts, judge_fault, new_row, say_meaning
from ingest.drafts.flashes import TEXTS
from ingest.drafts.model import DraftRow, Fields, PageView
from ingest.drafts.surroundings import GLYPHS, legend, legend_line
from ingest.drafts.words import count_of, empty, slug

_STATES: tuple[tuple[str, re.Pattern[str]], ...] = tuple(
    (state, re.compile(form, re.IGNORECASE))
    for state, form in (
        ("any", r"any|either|does not matter|don't care"),
        ("slow", r"(?:flash(?:es|ing)?|blink(?:s|ing)?)? ?slow(?:ly)?(?: blink)?"),
        ("fast", r"(?:flash(?:es|ing)?|blink(?:s|ing)?)? ?fast|quick(?:ly)?"),
        ("flicker", r"flicker(?:s|ing)?"),
        ("flash", r"(?:even(?:ly)? )?(?:flash(?:es|ing)?|blink(?:s|ing)?)"),
        ("on", r"on|lit|steady|lights|steady on|continuous"),
        ("off", r"off|dark|out|not lit"),
    )
)
_COUNT = re.compile(r"\d{1,2}(?: ?(?:x|×|times|flashes|blinks))?", re.IGNORECASE)
_PHASE = re.compile(
    r"\b(?:both together|at the same (?:time|moment)|alternat\w+|in turns?|"
    r"taking turns)\b",
    re.IGNORECASE,
)
FEWEST = 2


def looks_like(table: Printed) -> bool:
    """Return whether two or more columns are lamps and one says what they mean."""
    places = roles_of(table)
    return len(_lamps(table)) >= FEWEST and ("meaning" in places)


def _lamps(table: Printed) -> list[tuple[int, dict[str, str]]]:
    named = ((place, lamp_of_header(name)) for place, name in enumerate(table.header))
    return [(place, lamp) for place, lamp in named if lamp]


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return one row for each row of the table."""
    outside = _outside(table, page)
    signs, line = legend(outside), legend_line(outside)
    return [_row(table, row, page, (signs, line)) for row in table.rows]


def _outside(table: Printed, page: PageView) -> str:
    """Return the page without the rows of the table: a legend is no row."""
    last = max(row.end for row in table.rows)
    return f"{page.text[: table.start]}\n{page.text[last:]}"


def _row(
    table: Printed, row: TableRow, page: PageView, explained: tuple[dict[str, str], str]
) -> DraftRow:
    drafted = new_row("signals", table, row, page, 0.9)
    drafted.fields["kind"] = "several_lamps"
    signs, line = explained
    lamps: list[Fields] = []
    for place, lamp in _lamps(table):
        held = _state(drafted, cell(row, place), lamp, signs)
        lamps.append({"lamp": lamp, **held})
    drafted.fields["lamps"] = lamps
    if any(glyph in "".join(row.cells) for glyph in signs):
        drafted.fields["legend_source"] = line
    places = roles_of(table)
    meaning = cell(row, places["meaning"])
    say_meaning(drafted, meaning)
    judge_fault(drafted, meaning, page, table, row)
    add_texts(drafted, row, places, TEXTS)
    if any(name.casefold() == "number" for name in table.header):
        told = "a column gives the number that the lamps make: tens and units?"
        drafted.doubt("number", told)
    if _PHASE.search(drafted.quote):
        told = "the row says how the lamps flash beside each other: a pair by phase?"
        drafted.doubt("phase", told)
    drafted.id = f"lamps-{slug(meaning) or 'unread'}"
    return drafted


def _state(
    drafted: DraftRow, text: str, lamp: dict[str, str], signs: dict[str, str]
) -> Fields:
    """Return what a cell says of its lamp; nothing, with a doubt, if that is lost."""
    name = lamp.get("label") or lamp.get("colour", "")
    if empty(text):
        told = f"the cell of {name} is blank: as above, or nothing?"
        drafted.doubt(f"lamp-{slug(name)}", told, costs=0.5)
        return {}
    if text[0] in GLYPHS:
        if text in signs:
            return {"state": signs[text]}
        told = f"`{text}`: the page has no legend for this sign"
        drafted.doubt("legend", told, costs=0.4)
        return {}
    for state, form in _STATES:
        if form.fullmatch(text):
            return {"state": state}
    if _COUNT.fullmatch(text):
        count, _ = count_of(text)
        if count is not None:
            return {"state": "count", "count": count}
    drafted.doubt(f"lamp-{slug(name)}", f"`{text}` is no state of a lamp", costs=0.5)
    return {}
