"""What several kinds of row share: the meaning, whether it is a fault, its steps."""

from __future__ import annotations

import re

from assistant.library.types import TableRow
from assistant.rules.refused import never_said, refused
from ingest.drafts.columns import Printed, cell, fault_column
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.surroundings import speaks_of_faults
from ingest.drafts.words import REFERENCE, empty

_NORMAL = re.compile(
    r"\b(?:normal|no fault|not a fault|standby|stand-by|ready|waiting|first start|"
    r"(?:re)?start delay|"
    r"preheat(?:ing)?|defrost(?:ing)?\b(?! (?:sensor|fault|fail))|running(?! away)|"
    r"test run|keys locked|filter time)\b",
    re.IGNORECASE,
)
_WRONG = re.compile(
    r"\b(?:faults?|fail(?:s|ed)?|failures?|defects?|defective|errors?|malfunction|abnormal|"
    r"open|short(?:ed)?|short circuit|out of range|trip(?:s|ped)?|lock(?:ed)?(?: ?out)|"
    r"lost|no (?:pulses|messages?|signal|rotation|feedback|communication)|too (?:high|"
    r"low|hot|cold)|above|below|over-?(?:current|load|heat|voltage)|"
    r"under-?voltage|blocked|leak|seized|drifts?|gas found|position lost)\b",
    re.IGNORECASE,
)
_GLYPH_JUNK = re.compile(r"[\ufffd\u0000-\u0008\ue000-\uf8ff]")
UNREADABLE = "a sign in it could not be read"


def new_row(
    file: str, table: Printed, row: TableRow, page: PageView, confidence: float
) -> DraftRow:
    """Return a row without fields, quoting the row of the page word for word."""
    quote = " ".join(page.text[row.start : row.end].split())
    drafted = DraftRow(file, "", {}, page.number, quote, confidence, table=table.name)
    mark_page(drafted, page)
    if _GLYPH_JUNK.search("".join(row.cells)):
        drafted.doubt("sign", UNREADABLE)
    return drafted


def mark_page(row: DraftRow, page: PageView) -> None:
    """Note that a page was recognised in a picture: its digits may be misread."""
    if page.ocr:
        row.doubt(
            "ocr",
            f"page {page.number} was read by OCR: compare every letter and digit with "
            "the page",
            costs=min(page.confidence, 0.7),
        )


def say_meaning(drafted: DraftRow, text: str) -> None:
    """Put the meaning in, unless it is lost or something that is never said."""
    if empty(text) or not re.search(r"[A-Za-z]{2}", text):
        drafted.doubt("meaning", "the meaning is not on the page", costs=0.5)
        return
    why = forbidden(text)
    if why:
        drafted.left_out.append(f"`{text}`: {why}")
        drafted.doubt("meaning", f"the row says what the engine refuses: {why}")
        return
    drafted.fields["meaning"] = text


def judge_fault(
    drafted: DraftRow, text: str, page: PageView, table: Printed, row: TableRow
) -> None:
    """Put in whether it is a fault: by its own column, the row's words, the title's."""
    column = cell(row, fault_column(table)).casefold()
    if column in ("yes", "no"):
        drafted.fields["is_fault"] = column == "yes"
        return
    fault_by_words(drafted, text, page, table.start)


def fault_by_words(drafted: DraftRow, text: str, page: PageView, start: int) -> None:
    """Put in whether it is a fault, by its words, else by the lines above `start`."""
    normal, wrong = _NORMAL.search(text), _WRONG.search(text)
    if normal and not wrong:
        drafted.fields["is_fault"] = False
        return
    title = speaks_of_faults(page.text, start)
    if wrong and title is not False and not normal:
        drafted.fields["is_fault"] = True
    elif title is not None and not normal and not wrong:
        drafted.fields["is_fault"] = title
    else:
        drafted.doubt("is_fault", "neither the row nor its title says if it is a fault")


def forbidden(text: str) -> str:
    """Return why a text is no step and nothing to say, or nothing.

    Examples
    --------
    >>> forbidden("Bridge the high pressure switch and restart")
    'it takes a protection out'
    >>> forbidden("Clean the coil")
    ''
    """
    hint = never_said(text)
    return refused(text) or (f"it is never said: {hint}" if hint else "")


def add_texts(
    drafted: DraftRow, row: TableRow, places: dict[str, int], named: dict[str, str]
) -> None:
    """Put in further columns as they stand; a refused step is no step.

    `named` maps the role of a column to the field it fills; a cell that only refers
    to another page is left where it is.
    """
    for role, field in named.items():
        text = cell(row, places.get(role))
        if empty(text) or field in drafted.fields:
            continue
        why = forbidden(text)
        if why:
            drafted.left_out.append(f"`{text}`: {why}")
        elif not REFERENCE.match(text):
            drafted.fields[field] = text
