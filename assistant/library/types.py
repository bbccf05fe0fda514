"""The nouns of the library: documents, pages, passages, hits, citations."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from enum import StrEnum

from assistant.record import Scope

ID_DIGITS = 12
OCR = "ocr"
"""What a page's `source` and a citation's `read_by` say of recognised text."""


class PageStatus(StrEnum):
    """How well a page was read."""

    TEXT = "text"
    BLANK = "blank"
    PICTURE = "picture"
    """No text under a picture or drawing: it cannot be searched."""
    UNREADABLE = "unreadable"
    """The reader failed on it, or what it gave is not words."""


TEXTLESS = (PageStatus.PICTURE, PageStatus.UNREADABLE)
"""Pages that cannot be searched."""


@dataclass(frozen=True, slots=True)
class Page:
    """One physical page; `number` counts from 1, `label` is what is printed."""

    number: int
    label: str
    status: PageStatus
    text: str
    reason: str = ""
    """Why it is not `text`; of one that is, what is doubtful about it."""
    source: str = ""
    """`ocr` where the text was recognised in a picture, else nothing."""
    confidence: float = 0.0
    """Of a page read by OCR, 0 to 1."""
    raw: str = ""
    """The text before it was repaired, where that changed more than white space."""


@dataclass(frozen=True, slots=True)
class Passage:
    """A stored span of one page's text: `page.text[start:end] == text`."""

    page: int
    start: int
    end: int
    text: str
    section: str = ""
    """The heading it stands under."""
    lead: str = ""
    """The table's first line, repeated for search where the span is a later part."""


@dataclass(frozen=True, slots=True)
class Document:
    """One file of literature; identity is `sha256`."""

    sha256: str
    path: str
    """As added: below the added folder, POSIX separators."""
    title: str
    maker: str = ""
    kind: str = ""
    """service manual | bulletin | tech note | shop note | ..."""
    revision: str = ""
    date: str = ""
    supersedes: tuple[str, ...] = ()
    """Titles or document numbers this one names as replaced."""
    applies_to: tuple[Scope, ...] = ()
    number: str = ""
    """The maker's own number of it, without the revision."""

    @property
    def document_id(self) -> str:
        """The short identity that outputs print: 12 hex digits."""
        return self.sha256[:ID_DIGITS]


Match = Callable[[Document], str]
"""Whether a document applies to the unit: confirmed, possible or excluded."""


@dataclass(frozen=True, slots=True)
class Hit:
    """One passage found, best first; `score` only orders."""

    passage_id: int
    document: str
    document_id: str
    title: str
    revision: str
    page: int
    label: str
    section: str
    text: str
    score: float
    unit_match: str = "possible"
    """confirmed | possible"""
    also: tuple[str, ...] = ()
    """Other places with the same text, as `document p. n`."""
    evidence: Mapping[str, float] = field(default_factory=dict)
    """Raw evidence: cosine, coverage, code."""
    superseded_by: str = ""
    """Title of the document that replaces this one; '' when none does."""
    read_by: str = ""
    """`ocr` where the page was recognised in a picture, else nothing."""


@dataclass(frozen=True, slots=True)
class SearchResult:
    """What a search gave, and if nothing: why, and what could not be read."""

    found: bool
    hits: tuple[Hit, ...]
    reason: str
    """'' | no match | below threshold | code not in these documents |
    nothing applies to this unit | library empty"""
    searched: int
    """Documents searched."""
    unreadable: Mapping[str, tuple[int, ...]] = field(default_factory=dict)
    """Document path -> pages that cannot be searched."""
    vectors_used: bool = True
    """False when only keywords were searched (no exported encoder)."""
    note: str = ""
    """Why only keywords were searched, with the way out; '' otherwise."""
    missing: tuple[str, ...] = ()
    """Codes and counts (`#11`) that were asked for and stand in no document."""
    near: tuple[Hit, ...] = ()
    """What came closest when nothing was found: for `--why`, never an answer."""


@dataclass(frozen=True, slots=True)
class TableRow:
    """One row of a table found on a page, cells left to right."""

    page: int
    table: int
    """Which table of the page, from 1."""
    row: int
    """Which row below the header, from 1."""
    cells: tuple[str, ...]
    header: tuple[str, ...] = ()
    """Column names; empty when the table has none."""
    start: int = 0
    end: int = 0
    """The row's span of the page's text; equal when it is not known."""


@dataclass(frozen=True, slots=True)
class StoredPassage:
    """A passage as the library holds it."""

    id: int
    document: str
    """The document's sha256."""
    passage: Passage


@dataclass(frozen=True, slots=True)
class StoredPack:
    """A rule pack in force: `payload` is its canonical JSON."""

    id: str
    version: str
    sha256: str
    payload: str


@dataclass(frozen=True, slots=True)
class Manifest:
    """What the vectors of a library were made with; all of it must agree."""

    model: str
    model_hash: str
    """sha256 of the weights."""
    dimension: int
    pooling: str
    normalise: bool
    query_prompt: str
    passage_prompt: str
    max_tokens: int
    """Longest text with special tokens; a longer one is refused."""
    splitter: str
    """Version of the rules that cut pages into passages."""
