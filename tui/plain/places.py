"""Places in the literature as lines, and what lines are made for. Pure."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, tzinfo

from assistant.dialogue.answer import SourceRef
from tui.plain.text import excerpt, wrap

QUOTE_LENGTH = 220
INDENT = "  "


@dataclass(frozen=True, slots=True)
class Frame:
    """What lines are made for: columns, the zone of the clock, the present."""

    width: int
    now: datetime
    zone: tzinfo | None = None
    """None is the machine's own zone."""


def place_of(source: SourceRef) -> str:
    """Return ``Title rev B, p. 12 (PDF page 15)``."""
    revision = f" rev {source.revision}" if source.revision else ""
    page = page_words(source.page, source.label, source.read_by)
    return f"{source.title}{revision}, {page}"


def page_words(page: int, label: str, read_by: str = "") -> str:
    """Return the printed page beside the physical one, or one where they agree.

    A page that was recognised in a picture is never cited without saying so.

    Examples
    --------
    >>> page_words(12, "12", "ocr")
    'p. 12 (read by OCR)'
    """
    said = " (read by OCR)" if read_by else ""
    if label and label != str(page):
        return f"p. {label} (PDF page {page}){said}"
    return f"p. {page}{said}"


def source_lines(
    sources: Sequence[SourceRef],
    frame: Frame,
    quoted: set[tuple[str, str]] | None = None,
) -> Iterator[str]:
    """Yield places with their words; words already `quoted` are not repeated."""
    seen = set() if quoted is None else quoted
    for source in dict.fromkeys(sources):
        if not source.title:
            continue  # a rule that stands in no document
        place = place_of(source)
        quote = excerpt(source.quote, QUOTE_LENGTH)
        fresh = bool(quote) and (place, quote) not in seen
        seen.add((place, quote))
        yield from wrap(place + (":" if fresh else ""), frame.width, INDENT)
        if fresh:
            yield from wrap(f'"{quote}"', frame.width, INDENT * 2)
