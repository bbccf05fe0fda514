"""What came of adding."""

from __future__ import annotations

from collections import Counter
from dataclasses import dataclass, field

from assistant.errors import ANSWERED, WITH_WARNINGS
from assistant.library.types import PageStatus
from ingest.collect import Refusal


@dataclass(frozen=True, slots=True)
class Remedy:
    """What can be done about pages of a document."""

    path: str
    way: str
    pages: tuple[int, ...]


@dataclass(slots=True)
class Ingested:
    """What came of adding; the last thing `add` gives."""

    added: list[str] = field(default_factory=list)
    replaced: list[str] = field(default_factory=list)
    renamed: list[str] = field(default_factory=list)
    unchanged: list[str] = field(default_factory=list)
    duplicates: list[str] = field(default_factory=list)
    packs: list[str] = field(default_factory=list)
    gone: list[str] = field(default_factory=list)
    """In the library; their files are no longer where they were."""
    pruned: list[str] = field(default_factory=list)
    """The same, taken out of the library."""
    states: list[str] = field(default_factory=list)
    """Of what was replaced: which state is current now."""
    near: list[str] = field(default_factory=list)
    """What of the new says nearly the same as another document."""
    remedies: list[Remedy] = field(default_factory=list)
    """What can be done about pages that cannot be searched, or are doubtful."""
    refused: list[Refusal] = field(default_factory=list)
    warnings: list[str] = field(default_factory=list)
    pages: Counter[PageStatus] = field(default_factory=Counter)
    """Pages of what was added or replaced, by how well they were read."""
    passages: int = 0

    @property
    def exit_code(self) -> int:
        """0, or 3 with warnings; where nothing was taken in, the refusal's own."""
        if self.refused and not self._anything():
            return max(refusal.exit_code for refusal in self.refused)
        return WITH_WARNINGS if self.refused or self.warnings else ANSWERED

    def _anything(self) -> bool:
        done = (self.added, self.replaced, self.renamed, self.unchanged, self.packs)
        return any(done)
