"""Sentences that give a meaning to a count of flashes or to a code. Pure."""

from __future__ import annotations

import re

from ingest.drafts.facts import fault_by_words, mark_page, say_meaning
from ingest.drafts.model import DraftRow, PageView
from ingest.drafts.words import DURATION, NUMBER_WORDS, slug

_COUNT = rf"(?P<count>\d{{1,2}}|{'|'.join(NUMBER_WORDS)})"
_LAMP = r"(?P<lamp>(?:LD|LED|LP|H|D)\s?-?\d{1,2}[A-Z]?)"
_OVER = rf"(?: (?:every|in|within) (?P<window>{DURATION.pattern}))?"
_SAYS = r"(?:\s*[:=–]\s*|\s+-\s+|\s*,?\s+(?:means?|when|if)\s+(?:that\s+)?)"
_FORMS = tuple(
    re.compile(form, re.IGNORECASE)
    for form in (
        rf"(?:(?:lamp|led) )?{_LAMP} (?:flashes|blinks) {_COUNT} times?{_OVER}{_SAYS}"
        r"(?P<meaning>.+)",
        rf"{_COUNT} (?:flashes|blinks)(?: of (?:(?:lamp|led) )?{_LAMP})?{_OVER}{_SAYS}"
        r"(?P<meaning>.+)",
    )
)
_CODE = re.compile(
    rf"(?i:(?:fault |error )?codes?|display) (?P<code>[A-Z][A-Za-z]?-?\d{{1,3}}){_SAYS}"
    r"(?P<meaning>.+)"
)
_STEP = re.compile(
    r"^(?:film|look|count|wait|reset|measure|press|see|note|check|switch)\b", re.I
)
"""What begins a step and no meaning."""


def of_sentence(sentence: str, page: PageView) -> DraftRow | None:
    """Return the row that a sentence gives, or None."""
    text = sentence.rstrip(".")
    for form in _FORMS:
        found = form.fullmatch(text)
        if found is not None:
            return _flashes(found, sentence, page)
    code = _CODE.fullmatch(text)
    return _code(code, sentence, page) if code is not None else None


def _flashes(found: re.Match[str], sentence: str, page: PageView) -> DraftRow | None:
    if _STEP.match(found["meaning"]):
        return None
    row = DraftRow("signals", "", {}, page.number, sentence, 0.7)
    mark_page(row, page)
    row.fields["kind"] = "count_per_window" if found["window"] else "group_then_pause"
    lamp = (found["lamp"] or "").replace(" ", "")
    row.fields["lamp"] = {"label": lamp} if lamp else {}
    if not lamp:
        row.doubt("lamp", "which lamp it is does not stand in the sentence")
    word = found["count"].casefold()
    count = NUMBER_WORDS.get(word) or int(word)
    row.fields["count"] = count
    if found["window"]:
        row.fields["window"] = found["window"].rstrip(".")
    _say(row, found["meaning"], page)
    row.id = f"{slug(lamp) or 'lamp'}-{count}"
    return row


def _code(found: re.Match[str], sentence: str, page: PageView) -> DraftRow | None:
    if _STEP.match(found["meaning"]):
        return None
    row = DraftRow("signals", "", {}, page.number, sentence, 0.7)
    mark_page(row, page)
    row.fields |= {"kind": "display_code", "code": found["code"]}
    _say(row, found["meaning"], page)
    row.id = f"code-{slug(found['code'])}"
    return row


def _say(row: DraftRow, meaning: str, page: PageView) -> None:
    say_meaning(row, meaning)
    fault_by_words(row, meaning, page, page.text.find(row.quote.split()[0]))
