r"""Finds the units a document is for, on its first pages and in model tables: pure.

What is found is a proposal with its quote; a person decides. Written forms become
model patterns: ``VEH-O26/35`` two models, ``VET-O/VEB-O 42-60`` two ranges,
``VEH-Oxx`` any two characters, ``VEH-O26*`` any ending.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass

from assistant.library.sayings import Proposal
from assistant.library.types import Page, PageStatus, TableRow
from assistant.record import Scope, SerialRange
from assistant.rules.serials import serial_key
from ingest.models import models_in

COVER_PAGES = 3
"""Physical pages on which a statement counts as one about the whole document."""
BLOCK_LINES = 8
"""So many lines below a heading "Models" may name them."""
MOST_PROPOSALS = 12

_ROLES = ("outdoor", "indoor")
_WORDS = r"(?:models?|units?|model (?:numbers?|nos?\.?|names?|codes?)|types?)"
_LEAD = re.compile(
    rf"\b(?:applicable (?:to )?(?:(?:outdoor|indoor) )?{_WORDS}"
    rf"|(?:applies|applicable|valid) (?:only )?(?:to|for)(?: {_WORDS})?"
    rf"|(?:covers|covering|concerns)(?: the)?(?: (?:outdoor|indoor))?(?: {_WORDS})?"
    rf"|for(?: [A-Z][a-z]+)?(?: (?:outdoor|indoor))? {_WORDS}"
    rf"|(?:outdoor|indoor) {_WORDS}|models?)\s*[:\-–]?\s+",
    re.IGNORECASE,
)
_FOR = re.compile(r"^(?:for|to suit)\s*:\s*", re.IGNORECASE)
_BLOCK = re.compile(
    rf"^(?:applicable )?(?:(outdoor|indoor) )?{_WORDS}(?: covered)?\s*:?$",
    re.IGNORECASE,
)
_NOT = re.compile(
    r"\b(?:not|except|excluding|without|but no|see|spare|accessor|option|remote)\b",
    re.IGNORECASE,
)
_HEADER = re.compile(
    r"^(?:applicable )?(?:(outdoor|indoor)(?: unit)?|(?:(outdoor|indoor) )?"
    r"(?:unit )?model(?:s|(?: (?:no\.?|numbers?|names?|codes?))?))(?: models?)?$",
    re.IGNORECASE,
)
_TABLE_ABOUT = re.compile(r"\bapplicable\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class _Found:
    models: tuple[str, ...]
    role: str
    page: int
    quote: str


def proposals(pages: Sequence[Page], rows: Sequence[TableRow]) -> tuple[Proposal, ...]:
    """Return what the pages and tables say a document is for.

    Parameters
    ----------
    pages : sequence of Page
        All of them, in order; statements count on the first ones only.
    rows : sequence of TableRow
        Of every table; a column of models counts on the first pages, or anywhere
        under a header that says "applicable".
    """
    front = [
        page
        for page in pages[:COVER_PAGES]
        if page.status is PageStatus.TEXT and page.text
    ]
    found: list[Proposal] = []
    seen: set[tuple[str, str]] = set()
    for each in (*_stated(front), *_tabled(rows)):
        new = tuple(m for m in each.models if (m, each.role) not in seen)
        seen.update((model, each.role) for model in new)
        if new:
            scope = Scope(models=new, unit_role=each.role or None)
            found.append(Proposal(scope, each.page, each.quote))
    found += _serials(front)
    return tuple(found[:MOST_PROPOSALS])


def _stated(pages: Iterable[Page]) -> Iterator[_Found]:
    for page in pages:
        lines = page.text.split("\n")
        for at, line in enumerate(lines):
            block = _BLOCK.match(line.strip())
            if block:
                yield from _block(page.number, line, lines[at + 1 :], block[1] or "")
            else:
                yield from _line(page.number, line)


def _line(number: int, line: str) -> Iterator[_Found]:
    """Read "Outdoor units: A, B" and "This manual covers models A to C"."""
    leads = list(_LEAD.finditer(line)) or list(_FOR.finditer(line))
    stops = [*(lead.start() for lead in leads[1:]), len(line)]
    for lead, stop in zip(leads, stops, strict=False):
        said = _up_to_an_exception(line[lead.end() : stop])
        models = models_in(said, whole=True)
        if models:
            yield _Found(models, _role(lead[0]), number, _quote(line))


def _up_to_an_exception(text: str) -> str:
    """Cut what is said off where it begins to say what is not meant."""
    sentence = re.split(r"[.;](?:\s|$)", text, maxsplit=1)[0]
    limit = _NOT.search(sentence)
    return sentence[: limit.start()] if limit else sentence


def _block(
    number: int, heading: str, below: Sequence[str], role: str
) -> Iterator[_Found]:
    """Read the lines below a heading "Models", up to the first that names none."""
    taken: list[str] = []
    models: list[str] = []
    for line in below[:BLOCK_LINES]:
        named = () if _NOT.search(line) else models_in(line, whole=True)
        if not named:
            break
        taken.append(" ".join(line.split()))
        models += named
    if models:
        quote = _quote(f"{heading.strip()}: {'; '.join(taken)}")
        yield _Found(tuple(dict.fromkeys(models)), role.lower(), number, quote)


def _tabled(rows: Sequence[TableRow]) -> Iterator[_Found]:
    """Read the columns of models, table by table."""
    columns: dict[tuple[int, int, int], list[str]] = {}
    for row in rows:
        applicable = any(_TABLE_ABOUT.search(name) for name in row.header)
        if row.page > COVER_PAGES and not applicable:
            continue
        for at, name in enumerate(row.header[: len(row.cells)]):
            if _HEADER.match(" ".join(name.split())):
                columns.setdefault((row.page, row.table, at), []).append(row.cells[at])
    headers = {(row.page, row.table): row.header for row in rows}
    for (page, table, at), cells in columns.items():
        models = [model for cell in cells for model in models_in(cell, whole=True)]
        name = headers[page, table][at]
        if models:
            quote = _quote(f"{name}: {', '.join(dict.fromkeys(cells))}")
            yield _Found(tuple(dict.fromkeys(models)), _role(name), page, quote)


def _role(text: str) -> str:
    return next((role for role in _ROLES if role in text.lower()), "")


_SERIAL = (
    r"\bserial(?:s|\s*(?:no|nos|number|numbers|week|weeks))?\.?\s*:?\s*"
    r"(?:no\.?\s*)?(?:week\s*)?"
)
_DIGITS = r"[A-Z]{0,3}(\d{4}(?:-?\d{2,8})?)"
_LATER = r"(?:and|or)\s*(?:later|above|up|higher|newer)"
_OLDER = r"(?:and|or)\s*(?:earlier|below|before|older)"
_FROM = r"\b(?:from|as of|starting (?:at|with))\s+(?:the\s+)?"
_UNTIL = r"(?:up to|until)(?:\s+and including)?"
_SERIALS = tuple(
    re.compile(form, re.IGNORECASE)
    for form in (
        rf"{_SERIAL}(?:from\s+)?{_DIGITS}\s*(?:to|-|–|through|until)\s*{_DIGITS}",
        rf"{_SERIAL}{_DIGITS}\s*{_LATER}()",
        rf"{_FROM}{_SERIAL}{_DIGITS}()",
        rf"\b{_UNTIL}()\s+{_SERIAL}{_DIGITS}",
        rf"{_SERIAL}{_UNTIL}()\s+{_DIGITS}",
        rf"{_SERIAL}(){_DIGITS}\s*{_OLDER}",
    )
)
"""Each with a first and a last number, either of them empty."""


def _serials(pages: Iterable[Page]) -> Iterator[Proposal]:
    """Read runs of serial numbers whose first four digits can be year and week."""
    for page in pages:
        taken: list[tuple[int, int]] = []
        for pattern in _SERIALS:
            for match in pattern.finditer(page.text):
                first, last = match[1], match[2]
                inside = any(a < match.end() and match.start() < b for a, b in taken)
                if inside or not all(_is_week(each) for each in (first, last) if each):
                    continue
                taken.append(match.span())
                run = SerialRange(first=first or None, last=last or None)
                quote = _around(page.text, match.start(), match.end())
                yield Proposal(Scope(serial=run), page.number, quote)


def _is_week(serial: str) -> bool:
    return serial_key(SerialRange(), serial) is not None


def _around(text: str, start: int, end: int) -> str:
    first = text.rfind("\n", 0, start) + 1
    last = text.find("\n", end)
    return _quote(text[first : last if last >= 0 else len(text)])


def _quote(text: str) -> str:
    return " ".join(text.split())[:200]
