"""Something wrong inside one written item."""

from __future__ import annotations

from dataclasses import dataclass

from assistant.rules.mistakes import Path


@dataclass(frozen=True, slots=True)
class Finding:
    """Something wrong at `path` of an item."""

    path: Path
    what: str
    hint: str = ""
