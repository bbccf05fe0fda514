"""What a draft is made of: rows with quote, confidence and doubts. Pure."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

SEEN = "seen"
"""The word by which a person says: compared with the page, it is as written."""
POINTS = "tables"
"""The folder of a pack that holds CSV tables."""

Fields = dict[str, Any]
"""Keys and values of an item as a person would write them."""


@dataclass(frozen=True, slots=True)
class PageView:
    """One page as drafting sees it."""

    number: int
    text: str
    ocr: bool = False
    """Its text was recognised in a picture."""
    confidence: float = 1.0

    @property
    def folded(self) -> str:
        """The text with every run of white space as one space."""
        return " ".join(self.text.split())


@dataclass(slots=True)
class DraftRow:
    """One row that may become a rule once a person has accepted it.

    Attributes
    ----------
    file : str
        File of the pack it would go to: ``signals``, ``waits``, … or the path of a
        CSV table such as ``tables/th1.csv``.
    id : str
        How `accept` names it; also the item's id, but for a point of a table.
    fields : dict
        The item without `id` and `source`; only what stands on the page.
    page, quote
        Where it stands. The quote is the page's own words.
    confidence : float
        0 to 1: how well the row fits its kind and how well the page was read.
    doubts : dict of str to str
        Name of the doubt -> what is doubtful. A row is accepted without any.
    table : str
        Name of the printed table, such as ``p11-t1``; empty for a sentence.
    left_out : list of str
        What stands in the row and is not taken over, with the reason.
    """

    file: str
    id: str
    fields: Fields
    page: int
    quote: str
    confidence: float = 1.0
    doubts: dict[str, str] = field(default_factory=dict)
    table: str = ""
    left_out: list[str] = field(default_factory=list)
    settled: list[str] = field(default_factory=list)
    """`doubt=value, by NAME at TIME`: what a person settled."""

    @property
    def is_point(self) -> bool:
        """Whether it is a row of a CSV table."""
        return self.file.startswith(f"{POINTS}/")

    def doubt(self, name: str, why: str, *, costs: float = 0.8) -> None:
        """Note a doubt, once, and trust the row less."""
        if name not in self.doubts:
            self.doubts[name] = why
            self.confidence *= costs


@dataclass(frozen=True, slots=True)
class DraftHead:
    """What the pack would say of itself; `doubts` as those of a row."""

    id: str
    title: str
    document: Mapping[str, str]
    """title, revision, sha256 and, where known, maker, kind and date."""
    applies_to: tuple[Mapping[str, Any], ...] = ()
    doubts: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Draft:
    """Everything drafted from one document."""

    head: DraftHead
    rows: tuple[DraftRow, ...]
