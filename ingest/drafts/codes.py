"""Tables of display codes. Pure."""

from __future__ import annotations

import re

from assistant.library.types import TableRow
from ingest.drafts.columns import Printed, cell, roles_of
from ingest.drafts.facts import add_texts, judge_fault, new_row, say_meaning
from ingest.drafts.flashes import TEXTS
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.surroundings import display_named
from ingest.drafts.words import empty, slug

CODE = re.compile(r"[A-Za-z]{1,2}[- ]?\d{1,3}|\d{2,3}|[A-Za-z]{2}|[A-Za-z]{1,2}-\d")
_SUB = re.compile(r"\d{1,3}|[A-Za-z]\d{1,2}")
_FOOTNOTE = re.compile(r"(?P<code>\w[\w-]*?)\s*[*†‡]+")
_MIXED = re.compile(r"[A-Za-z]\d*[OIl]\d*|\d[OIlSB]|[OIl]\d$")
"""Letters that stand where a digit is meant, or the other way round."""


def looks_like(table: Printed) -> bool:
    """Return whether a table gives meanings to codes of a display."""
    places = roles_of(table)
    if not {"code", "meaning"} <= set(places):
        return False
    shown = [_code(cell(row, places["code"])) for row in table.rows]
    return 2 * sum(CODE.fullmatch(code) is not None for code in shown) >= len(shown)


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return one row for each row of the table."""
    places = roles_of(table)
    return [_row(table, row, page, places) for row in table.rows]


def _code(text: str) -> str:
    """Return a code without the footnote marks glued to it."""
    marked = _FOOTNOTE.fullmatch(text)
    return marked["code"] if marked else text


def _row(
    table: Printed, row: TableRow, page: PageView, places: dict[str, int]
) -> DraftRow:
    drafted = new_row("signals", table, row, page, 0.95)
    drafted.fields["kind"] = "display_code"
    code = _code(cell(row, places["code"]))
    if empty(code):
        drafted.doubt("code", "the code is not on the page", costs=0.4)
    elif not CODE.fullmatch(code):
        drafted.doubt("code", f"`{code}` is no single code", costs=0.4)
    else:
        drafted.fields["code"] = code
        if _MIXED.search(code):
            drafted.doubt("glyph", f"`{code}`: letter or digit? O and 0, I, l and 1")
    sub = cell(row, places.get("sub"))
    if _SUB.fullmatch(sub):
        drafted.fields["kind"] = "main_sub_code"
        drafted.fields |= {"sub": sub, "sub_meaning_type": "finer cause"}
    where = display_named(page.text, table.start)
    if where:
        drafted.fields["display"] = where
    meaning = cell(row, places["meaning"])
    say_meaning(drafted, meaning)
    judge_fault(drafted, meaning, page, table, row)
    add_texts(drafted, row, places, TEXTS)
    shown = f"{drafted.fields.get('code', '')} {drafted.fields.get('sub', '')}"
    what = slug(shown) or slug(meaning) or "unread"
    drafted.id = f"code-{what}"
    return drafted
