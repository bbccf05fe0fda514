"""What has been read of a pack so far, with its lines and its mistakes."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path as FilePath

from assistant.record import Item
from assistant.rules.mistakes import Mistake, PackLines, Path, nearest
from assistant.rules.pack import FILES, PackHead
from assistant.rules.parsed import ParsedFiles
from assistant.rules.yaml_lines import Written


@dataclass(slots=True)
class Gathering:
    """A pack being read: nothing here is in force until it is whole."""

    folder: FilePath
    kept: ParsedFiles | None = None
    """Files parsed before."""
    files: dict[str, Written] = field(default_factory=dict)
    """File name -> what it holds."""
    head: PackHead | None = None
    items: dict[str, dict[int, Item]] = field(
        default_factory=lambda: {name: {} for name in FILES}
    )
    """File -> place in it -> item, of those whose shape is right."""
    ids: dict[str, dict[str, int]] = field(default_factory=dict)
    """File -> id -> place; no entry for a file that could not be read."""
    table_lines: dict[tuple[str, int], tuple[str, int]] = field(default_factory=dict)
    other: list[Mistake] = field(default_factory=list)

    def name(self, file: str) -> str:
        """Return how messages call a file of the pack."""
        return (self.folder / file).as_posix()

    def add(self, written: Written) -> Written:
        """Keep what was read of a file."""
        self.files[FilePath(written.file).name] = written
        return written

    def report(self, file: str, line: int, what: str, hint: str = "") -> None:
        """Add a mistake of a file of the pack."""
        self.other.append(Mistake(self.name(file), line, what, hint))

    def note_id(self, name: str, called: str, place: int) -> None:
        """Remember an id, and report one that is used already."""
        line = self.line(name, place, "id")
        for other, ids in self.ids.items():
            if called in ids:
                first = self.line(other, ids[called], "id")
                self.report(
                    f"{name}.yaml",
                    line,
                    f"id `{called}` is used already, in {other}.yaml line {first}",
                    "an id is unique in the whole pack",
                )
                return
        self.ids[name][called] = place

    def raw_items(self, name: str) -> list[tuple[int, dict[str, object]]]:
        """Return place and keys of each item of a file, as written."""
        written = self.files.get(f"{name}.yaml")
        data = written.data if written is not None else None
        listed = data if isinstance(data, tuple) else ()
        return [(n, raw) for n, raw in enumerate(listed) if isinstance(raw, dict)]

    def label(self, name: str, place: int) -> str:
        """Return how messages call an item: its id, else its place."""
        data = self.files[f"{name}.yaml"].data
        called = data[place].get("id") if isinstance(data[place], dict) else None
        return f"`{called}`" if called is not None else f"item {place + 1}"

    def line(self, name: str, *path: str | int) -> int:
        """Return the line of a path in an item file."""
        return nearest(self.files[f"{name}.yaml"].lines, path)

    @property
    def mistakes(self) -> list[Mistake]:
        """All mistakes so far."""
        found = list(self.other)
        for written in self.files.values():
            found.extend(written.mistakes)
        return found

    def composed(self) -> dict[str, tuple[Item, ...]]:
        """Return the items of each file in the order written."""
        return {
            name: tuple(placed[place] for place in sorted(placed))
            for name, placed in self.items.items()
        }

    def pack_lines(self) -> PackLines:
        """Return where everything stands."""
        places: dict[str, tuple[str, Path]] = {}
        for name, ids in self.ids.items():
            for called, place in ids.items():
                places[called] = (self.name(f"{name}.yaml"), (place,))
        return PackLines(
            files={written.file: written.lines for written in self.files.values()},
            items=places,
            tables=self.table_lines,
            head_file=self.name("pack.yaml"),
        )
