"""Tells title, revision, date, kind and what is superseded from first pages: pure."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from assistant.library.sayings import Origin
from ingest.readers.base import FileFacts, Prominent

FIRST_PAGES = 3
LAST_PAGES = 1
MAX_TITLE = 120
COVER_LINES = 12

_REVISION = re.compile(
    r"\b(?:Revision|Rev\.?|Edition|Issue|Version|Ed\.)\s*(?:No\.?\s*)?[:#]?\s*"
    r"([A-Z]{1,2}\d{0,2}|\d{1,3}(?:\.\d{1,3})*[A-Za-z]?)(?![\w.]*\w)",
    re.IGNORECASE,
)
_MONTHS = "janfebmaraprmayjunjulaugsepoctnovdec"
_MONTH = r"(Jan|Feb|Mar|Apr|May|Jun|Jul|Aug|Sep|Oct|Nov|Dec)[a-z]*\.?"
_ISO = re.compile(r"\b((?:19|20)\d\d)-(0[1-9]|1[0-2])(?:-(0[1-9]|[12]\d|3[01]))?\b")
_DAY_FIRST = re.compile(rf"\b(?:(\d{{1,2}})\s+)?{_MONTH},?\s+((?:19|20)\d\d)\b")
_MONTH_FIRST = re.compile(rf"\b{_MONTH}\s+(\d{{1,2}}),\s*((?:19|20)\d\d)\b")
_SUPERSEDES = re.compile(
    r"\b(?:supersedes?|replaces?|cancels and replaces)\s*:?\s+"
    r"([^;\n]{3,120}(?:(?<=,)\n[^;\n]{3,80}|\n(?-i:[a-z])[^;\n]{3,80})?)",
    re.IGNORECASE,
)
_NUMBER = re.compile(
    r"\b(?:document|doc\.|manual|publication|pub\.|bulletin|form|note|handbook|guide)"
    r"\s*(?:number|no\.?|#)?\s*:?\s*((?-i:[A-Z]{1,6})[- ]?\d{1,8}(?:[-/]\d{1,6})*"
    r"(?-i:[A-Z])?)\b",
    re.IGNORECASE,
)
_OTHER_DOCUMENT = re.compile(
    r"\b(?:supersede|replace|cancel|see|refer|correct|amend|together with|also)",
    re.IGNORECASE,
)
_NEXT_SENTENCE = re.compile(r"(?<!\bRev)(?<!\bNo)(?<!\bEd)\.(?:\s+(?=[A-Z])|$)")
_PARTLY = re.compile(
    r"\b(?:rows?|tables?|pages?|sections?|chapters?|paragraphs?|steps?|lines?|those)\b",
    re.IGNORECASE,
)
_PART_REPLACED = re.compile(
    r"\b(?:filter|fan|board|motor|sensor|fuse|battery|part|valve|compressor|"
    r"capacitor|cable|connector|unit)s?\b",
    re.IGNORECASE,
)
_DOCUMENT_WORDS = re.compile(
    r"\b(?:manual|bulletin|note|guide|edition|issue|revision|rev|document|section|"
    r"instructions?|sheet)\b|[A-Z]{2,}[- ]?\d{2,}",
    re.IGNORECASE,
)
_KINDS = (
    ("bulletin", r"\b(?:service|technical|product)?\s*bulletin\b"),
    ("tech note", r"\b(?:tech(?:nical)? note|application note|service note)\b"),
    ("shop note", r"\b(?:shop|workshop|crew)\b.*\bnotes?\b"),
    ("wiring diagram", r"\bwiring diagrams?$"),
    ("parts list", r"\b(?:parts (?:list|catalogue)|spare parts)\b"),
    ("installation manual", r"\b(?:installation (?:manual|guide|instructions))\b"),
    ("user manual", r"\b(?:owner'?s|user|operat(?:ion|ing|or'?s)) (?:manual|guide)\b"),
    ("data sheet", r"\b(?:data ?sheet|submittal)\b"),
    (
        "service manual",
        r"\b(?:service|maintenance|repair|workshop|troubleshooting) "
        r"(?:manual|guide|handbook|instructions)\b"
        r"|\b(?:handbook|manual) (?:for|of) (?:service|maintenance|repair)\b",
    ),
)


@dataclass(frozen=True, slots=True)
class Identity:
    """What a document says it is; empty where it does not say."""

    title: str
    maker: str = ""
    kind: str = ""
    revision: str = ""
    date: str = ""
    supersedes: tuple[str, ...] = ()
    number: str = ""
    sources: Mapping[str, Origin] = field(default_factory=dict)
    """Field to where it was read."""


def identify(
    facts: FileFacts,
    pages: Sequence[str],
    prominent: Sequence[Prominent],
    name: str,
) -> Identity:
    """Return what a document is.

    Parameters
    ----------
    facts : FileFacts
        The file's own metadata.
    pages : sequence of str
        Stored text of every page, in order.
    prominent : sequence of Prominent
        The large lines of page 1.
    name : str
        The file's name without suffix: the title of last resort.
    """
    opening = "\n".join(pages[:FIRST_PAGES])
    cover = pages[0] if pages else ""
    title, titled = _title(facts, cover, prominent, name)
    head = "\n".join((title, facts.subject))
    heads = "\n".join((head, *cover.split("\n")[:COVER_LINES]))
    edges = "\n".join((opening, *pages[FIRST_PAGES:][-LAST_PAGES:]))
    headed = titled if titled is not Origin.NAME else Origin.FILE
    sources = {
        "title": titled,
        "maker": Origin.FILE,
        "kind": headed if kind_of(head) else Origin.COVER,
        "revision": headed if revision_of(head) else Origin.COVER,
        "number": headed if number_of(head) else Origin.COVER,
    }
    return Identity(
        title=title,
        maker=facts.author,
        kind=kind_of(heads),
        revision=revision_of(f"{head}\n{edges}"),
        date=date_of(opening),
        supersedes=supersedes_of(opening),
        number=number_of(f"{head}\n{cover}"),
        sources=sources,
    )


def _title(
    facts: FileFacts, cover: str, prominent: Sequence[Prominent], name: str
) -> tuple[str, Origin]:
    """Return the title and where it stands."""
    if _is_title(facts.title, name):
        return facts.title, Origin.FILE
    if prominent:
        return _largest(prominent), Origin.COVER
    for line in cover.split("\n"):
        words = re.sub(r"^#+\s*", "", " ".join(line.split()))
        if sum(map(str.isalpha, words)) >= len("code"):
            return words[:MAX_TITLE], Origin.COVER
    return name, Origin.NAME


def _is_title(text: str, name: str) -> bool:
    """Whether metadata holds a title; writers also put file names there."""
    return (
        sum(map(str.isalpha, text)) >= len("code")
        and not re.search(r"\.\w{3,4}$", text)
        and text.lower() != name.lower()
        and not text.startswith("Microsoft ")
    )


def _largest(prominent: Sequence[Prominent]) -> str:
    """Join the first run of lines of the greatest height."""
    size = max(line.size for line in prominent)
    lines: list[str] = []
    for line in prominent:
        if line.size == size:
            lines.append(" ".join(line.text.split()))
        elif lines:
            break
    return " ".join(lines)[:MAX_TITLE]


def kind_of(heads: str) -> str:
    """Return the kind that title, subject or cover names; the title weighs first.

    Examples
    --------
    >>> kind_of("Service bulletin 14: inverter board, corrects the service manual")
    'bulletin'
    """
    for line in heads.split("\n"):
        places = [
            (match.start(), kind)
            for kind, pattern in _KINDS
            if (match := re.search(pattern, line.strip(), re.IGNORECASE))
        ]
        if places:
            return min(places)[1]
    return ""


def revision_of(text: str) -> str:
    """Return the first revision that is named.

    Examples
    --------
    >>> revision_of("LV-204 Rev. C, 2024-03")
    'C'
    >>> revision_of("Issue 2")
    '2'
    """
    for match in _REVISION.finditer(text):
        # "issue is", "version of": words, which only upper case is not.
        if match[1][0].isdigit() or match[1].isupper():
            return match[1]
    return ""


def number_of(text: str) -> str:
    """Return the number the maker gives a document, as title or cover name it.

    Numbers of other documents, which it replaces or points to, are passed over.

    Examples
    --------
    >>> number_of("Service Bulletin VSB-2231")
    'VSB-2231'
    >>> number_of("Replaces Service Manual VSM-1406")
    ''
    """
    for line in text.split("\n"):
        other = _OTHER_DOCUMENT.search(line)
        for match in _NUMBER.finditer(line):
            if other is None or match.start() < other.start():
                return match[1]
    return ""


def date_of(text: str) -> str:
    """Return the first date, as ISO year and month, with the day if it is given.

    Examples
    --------
    >>> date_of("Issued 14 March 2023")
    '2023-03-14'
    >>> date_of("Edition: June 2021")
    '2021-06'
    """
    found: list[tuple[int, str]] = []
    if match := _ISO.search(text):
        found.append((match.start(), match[0]))
    if match := _DAY_FIRST.search(text):
        found.append((match.start(), _iso(match[3], match[2], match[1])))
    if match := _MONTH_FIRST.search(text):
        found.append((match.start(), _iso(match[3], match[1], match[2])))
    return min(found)[1] if found else ""


def _iso(year: str, month: str, day: str | None) -> str:
    number = _MONTHS.index(month.lower()) // 3 + 1
    return f"{year}-{number:02}" + (f"-{int(day):02}" if day else "")


def supersedes_of(text: str) -> tuple[str, ...]:
    """Return the documents that this one says it replaces as a whole.

    Parts that replace parts, and statements about single tables or pages, are not
    given: those leave the other document in force.

    Examples
    --------
    >>> supersedes_of("This bulletin supersedes VSB-19 Rev. B. Keep it.")
    ('VSB-19 Rev. B',)
    >>> supersedes_of("Replaces two rows of table 6-2, manual SM-110")
    ()
    >>> supersedes_of("Replace the fan motor. It replaces the old fan motor.")
    ()
    """
    found: list[str] = []
    for match in _SUPERSEDES.finditer(text):
        sentence = _NEXT_SENTENCE.split(" ".join(match[1].split()))[0]
        document = _DOCUMENT_WORDS.search(sentence)
        part = _PART_REPLACED.search(sentence)
        other = part is not None and document and part.start() < document.start()
        if document and not other and not _PARTLY.search(sentence):
            found.append(sentence.strip(" ,:."))
    return tuple(dict.fromkeys(found))
