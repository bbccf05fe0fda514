"""Finds what a person means by the paths they name: files, rule packs, neither."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from assistant.errors import FaultleafError, InputError

PACK_FILE = "pack.yaml"
_CHUNK = 1 << 20
_LITTER = frozenset(("thumbs.db", "desktop.ini"))


@dataclass(frozen=True, slots=True)
class Candidate:
    """A file that may become a document."""

    file: Path
    path: str
    """Below the added folder, POSIX separators; a lone file's name."""

    @property
    def origin(self) -> str:
        """A short hash of where the file lies, which tells two of one name apart."""
        place = str(self.file.resolve())
        return hashlib.sha256(place.encode("utf-8", "surrogateescape")).hexdigest()[:16]


@dataclass(frozen=True, slots=True)
class Refusal:
    """What was not taken in, and the way out."""

    path: str
    reason: str
    hint: str = ""
    exit_code: int = InputError.exit_code

    @classmethod
    def of(cls, path: str, error: FaultleafError) -> Refusal:
        """Return the refusal that an error means for a path."""
        return cls(path, error.what, error.hint, error.exit_code)


@dataclass(slots=True)
class Collected:
    """Everything found under the named paths, each once, in a fixed order."""

    files: list[Candidate] = field(default_factory=list)
    packs: list[Path] = field(default_factory=list)
    refused: list[Refusal] = field(default_factory=list)


def collect(paths: Sequence[Path], leave_out: Path | None = None) -> Collected:
    """Walk the paths.

    A folder that holds ``pack.yaml`` is a rule pack as a whole. Hidden files and
    folders are passed over, and so is `leave_out`, the library's own folder.

    Raises
    ------
    InputError
        There is nothing to add under any of the paths.
    """
    found = Collected()
    seen: set[Path] = set()
    for path in paths:
        before = len(found.files) + len(found.packs) + len(found.refused)
        for item in _walk(path, leave_out):
            _note(found, item, seen)
        if before == len(found.files) + len(found.packs) + len(found.refused):
            reason = "nothing in it to add"
            found.refused.append(Refusal(str(path), f"{path}: {reason}", _WHAT))
    if not found.files and not found.packs:
        first = found.refused[0] if found.refused else Refusal("", "nothing named")
        reasons = "; ".join(each.reason for each in found.refused) or first.reason
        raise InputError(reasons, first.hint or _WHAT)
    return found


_WHAT = "name PDF or text files, a folder of them, or a rule pack's folder"


def file_hash(path: Path) -> str:
    """Return the sha256 of a file, as hex digits."""
    seen = hashlib.sha256()
    with path.open("rb") as file:
        while chunk := file.read(_CHUNK):
            seen.update(chunk)
    return seen.hexdigest()


def _note(found: Collected, item: Candidate | Refusal | Path, seen: set[Path]) -> None:
    if isinstance(item, Refusal):
        found.refused.append(item)
        return
    place = (item.file if isinstance(item, Candidate) else item).resolve()
    if place in seen:
        return
    seen.add(place)
    if isinstance(item, Candidate):
        found.files.append(item)
    else:
        found.packs.append(item)


def _walk(path: Path, leave_out: Path | None) -> Iterator[Candidate | Refusal | Path]:
    if path.is_dir():
        yield from _walk_folder(path, leave_out)
    elif path.name == PACK_FILE and path.is_file():
        yield path.parent
    elif path.exists():
        yield Candidate(path, path.name)
    else:
        reason = f"{path}: no such file or folder"
        yield Refusal(str(path), reason, "check the spelling")


def _walk_folder(
    root: Path, leave_out: Path | None
) -> Iterator[Candidate | Refusal | Path]:
    refused: list[Refusal] = []
    files: list[Candidate] = []
    packs: list[Path] = []

    def note(error: OSError) -> None:
        where = str(error.filename)
        refused.append(Refusal(where, f"{where}: cannot be opened ({error.strerror})"))

    for folder, inner, names in os.walk(root, onerror=note):
        here = Path(folder)
        if PACK_FILE in names:
            inner.clear()
            packs.append(here)
            continue
        inner[:] = [
            name
            for name in inner
            if not name.startswith(".") and not _same(here / name, leave_out)
        ]
        files += [
            Candidate(here / name, (here / name).relative_to(root).as_posix())
            for name in names
            if not name.startswith((".", "~$")) and name.lower() not in _LITTER
        ]
    yield from sorted(files, key=lambda each: each.path)
    yield from sorted(packs)
    yield from sorted(refused, key=lambda each: each.path)


def _same(folder: Path, other: Path | None) -> bool:
    return other is not None and folder.resolve() == other.resolve()
