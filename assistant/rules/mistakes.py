"""A mistake of a pack: which line of which file, what is wrong, the way out."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Literal

Path = tuple[str | int, ...]
"""Where a value stands in a file: list positions and keys, outermost first."""


@dataclass(frozen=True, slots=True, order=True)
class Mistake:
    """One thing wrong in one line; `warning` does not keep a pack out of force."""

    file: str
    line: int
    what: str
    hint: str = ""
    severity: Literal["error", "warning"] = "error"

    def __str__(self) -> str:
        """Return `file:line: what; hint`."""
        tail = f"; {self.hint}" if self.hint else ""
        return f"{self.file}:{self.line}: {self.what}{tail}"


@dataclass(frozen=True, slots=True)
class PackLines:
    """Where each value of a loaded pack stands.

    `files` maps a file to the line of each path in it; `items` maps an item's id to
    its file and its path there; `tables` maps (sensor id, point number from 0) to
    its file and line.
    """

    files: Mapping[str, Mapping[Path, int]] = field(default_factory=dict)
    items: Mapping[str, tuple[str, Path]] = field(default_factory=dict)
    tables: Mapping[tuple[str, int], tuple[str, int]] = field(default_factory=dict)
    head_file: str = "pack.yaml"

    def place(self, item: str, *path: str | int) -> tuple[str, int]:
        """Return file and line of `path` in an item, or of what holds it."""
        if item not in self.items:
            return self.head_file, 0
        file, base = self.items[item]
        if file not in self.files:
            return file, 0
        return file, nearest(self.files[file], (*base, *path))

    def head(self, *path: str | int) -> tuple[str, int]:
        """Return file and line of `path` in `pack.yaml`."""
        if self.head_file not in self.files:
            return self.head_file, 0
        return self.head_file, nearest(self.files[self.head_file], path)

    def point(self, sensor: str, number: int) -> tuple[str, int]:
        """Return file and line of a table's point, counted from 0."""
        return self.tables.get((sensor, number)) or self.place(sensor, "table")


def nearest(lines: Mapping[Path, int], path: Path) -> int:
    """Return the line of `path`, or of the innermost part of it that is written."""
    for length in range(len(path), -1, -1):
        if path[:length] in lines:
            return lines[path[:length]]
    return 1


def suggest(word: str, among: Iterable[str]) -> str:
    """Return ``did you mean …?`` for the nearest of `among`, or nothing.

    Examples
    --------
    >>> suggest("cuont", ("count", "window"))
    'did you mean `count`?'
    >>> suggest("zzz", ("count", "window"))
    ''
    """
    choices = sorted(set(among))
    folded = {choice.casefold(): choice for choice in reversed(choices)}
    near = difflib.get_close_matches(word.casefold(), folded, n=1, cutoff=0.6)
    return f"did you mean `{folded[near[0]]}`?" if near else ""
