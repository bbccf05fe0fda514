"""Limits of protection stops: `6 in 60 minutes` in a table or a sentence. Pure."""

from __future__ import annotations

import re

from assistant.library.types import TableRow
from ingest.drafts.columns import Printed, cell
from ingest.drafts.facts import forbidden, mark_page, new_row
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.words import DURATION, NUMBER_WORDS, slug

_NUMBER = rf"(?P<limit>\d{{1,3}}|{'|'.join(NUMBER_WORDS)})"
LIMIT = re.compile(
    rf"\b{_NUMBER}\s*(?:(?:protection )?(?:stops?|trips?|times?)\s*)?(?:with)?in\s+"
    rf"(?:any\s+|a\s+)?{DURATION.pattern}",
    re.IGNORECASE,
)
"""So many stops in so long a time."""
IN_A_ROW = re.compile(
    rf"\b{_NUMBER}\s*(?:(?:stops?|trips?|times?|failures?)\s*)?"
    r"in (?:a row|succession)\b"
    rf"|\b(?P<more>\d{{1,3}}|{'|'.join(NUMBER_WORDS)}) consecutive\b",
    re.IGNORECASE,
)
"""So many stops one after the other."""
_CLEARS = re.compile(
    rf"\b(?:run|running)\b[^.;]*?\b{DURATION.pattern}[^.;]*?\b(?:zero|anew|clears?)\b"
    rf"|\b{DURATION.pattern} of (?:undisturbed |normal )?running\b[^.;]*?"
    r"\b(?:zero|anew|clears?)\b",
    re.IGNORECASE,
)
"""A run that begins the count anew."""
_FAILED_STARTS = re.compile(
    r"\bfail(?:s|ed) (?:to )?starts?\b|\bstart failures?\b", re.IGNORECASE
)
_LOCKS = re.compile(r"\block(?:s|ed)?(?: ?out)?\b|\blockout\b|\bstays off\b", re.I)
_LOGS = re.compile(r"\b(?:log(?:ged)? only|only logged|noted only)\b", re.IGNORECASE)
_EDGE = re.compile(
    r"\bexactly (?:at the edge|so long ago)\b[^.]*?\b(?P<no>no longer |not )?counts?\b",
    re.IGNORECASE,
)
_OF = re.compile(
    r"\b(?:stops?|trips?|openings?) (?:of|by|on|for) (?:the )?(?P<event>[\w ]{3,40}?)"
    r"(?= (?:with)?in\b|[.,;]|$)"
    r"|^(?:the )?(?!unit\b|compressor\b)"
    r"(?P<first>(?:(?!is\b|are\b|locks?\b|after\b)[a-z]\w*\s){1,4}?)"
    r"(?:stops?|trips?|opens)\b",
    re.IGNORECASE,
)
_FUNCTION = 0


def looks_like(table: Printed) -> bool:
    """Return whether some row gives a number of stops in a time."""
    locks = any(_LOCKS.search(name) for name in table.header)
    hits = [row for row in table.rows if _limit(row) is not None]
    return bool(hits) and (locks or 2 * len(hits) >= len(table.rows))


def _limit(row: TableRow) -> re.Match[str] | None:
    for text in row.cells[1:]:
        found = _counted(text)
        if found is not None:
            return found
    return None


def _counted(text: str) -> re.Match[str] | None:
    return LIMIT.search(text) or IN_A_ROW.search(text)


def draft(table: Printed, page: PageView) -> list[DraftRow]:
    """Return one row for each limit that the table gives."""
    drafted = []
    for row in table.rows:
        found = _limit(row)
        if found is None:
            continue
        one = new_row("stops", table, row, page, 0.8)
        event = cell(row, _FUNCTION)
        _say(one, found, page, event)
        drafted.append(one)
    return drafted


def of_sentence(sentence: str, page: PageView) -> DraftRow | None:
    """Return the limit that a sentence gives, or None."""
    found = _counted(sentence)
    if found is None or not _LOCKS.search(sentence):
        return None
    row = DraftRow("stops", "", {}, page.number, sentence, 0.7)
    mark_page(row, page)
    named = _OF.search(sentence)
    event = (named["event"] or named["first"] or "").strip() if named else ""
    _say(row, found, page, event)
    if len(LIMIT.findall(sentence)) > 1:
        row.doubt("limit", "the sentence gives more than one limit")
    return row


def _say(row: DraftRow, found: re.Match[str], page: PageView, event: str) -> None:
    row.fields["kind"] = "sliding_window" if found.re is LIMIT else "consecutive"
    if event and not forbidden(event):
        row.fields["name"] = f"stops: {event}"
        row.fields["event"] = (
            event[0].lower() + event[1:] if event[1:2].islower() else event
        )
    else:
        row.doubt("event", "which protection stops does not stand there")
    row.fields["limit"] = _number(found)
    if _LOGS.search(row.quote):
        row.fields["unit_action"] = "log_only"
    else:
        row.doubt(
            "reset", "how it is reset or released does not stand there", costs=0.9
        )
    if found.re is LIMIT:
        row.fields["window"] = f"{found[2]} {found[3].rstrip('.')}"
        _say_edge(row, page)
    else:
        _say_clearing(row, page, event)
    row.id = f"stops-{slug(event)}" if slug(event) else "stops-unread"


def _number(found: re.Match[str]) -> int:
    groups = found.groupdict()
    limit = str(groups["limit"] or groups.get("more")).casefold()
    return NUMBER_WORDS.get(limit) or int(limit)


def _say_edge(row: DraftRow, page: PageView) -> None:
    edge = _EDGE.search(page.folded)
    if edge is None:
        told = "whether a stop exactly at the edge still counts does not stand there"
        row.doubt("edge", told, costs=0.9)
    else:
        row.fields["edge"] = "does_not_count" if edge["no"] else "counts"


def _say_clearing(row: DraftRow, page: PageView, event: str) -> None:
    """Put in the one run that the page says begins a row of stops anew."""
    if _FAILED_STARTS.search(event):
        row.fields["kind"] = "failed_starts"
    runs = {
        " ".join(part for part in found.groups() if part)
        for found in _CLEARS.finditer(page.folded)
    }
    if len(runs) == 1:
        row.fields["clears_after"] = {"run": runs.pop()}
    else:
        told = "what begins the row of stops anew does not stand there"
        row.doubt("clears_after", told, costs=0.9)
