"""Finds what a person means by the paths they name: files, rule packs, neither."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from assistant.errors import FaultleafError, InputError
from ingest.readers.archive import Member, Room, is_archive, members

PACK_FILE = "pack.yaml"
DRAFT_FILE = "draft.yaml"
_NO_PACK = "faultleaf rules accept DRAFT ROW... --by NAME takes its rows into a pack"
_CHUNK = 1 << 20
_LITTER = frozenset(("thumbs.db", "desktop.ini"))


@dataclass(frozen=True, slots=True)
class Candidate:
    """A file that may become a document."""

    file: Path
    path: str
    """Below the added folder, POSIX separators; a lone file's name. A file from an
    archive has the archive as its folder."""
    place: str = ""
    """Where it lies, for a file that is read from a copy."""

    @property
    def where(self) -> Path:
        """The whole path of the file, or of the archive with the name inside."""
        return Path(self.place or os.path.realpath(self.file))

    @property
    def kept(self) -> str:
        """The whole path where it is text; a name of odd bytes cannot be stored."""
        where = str(self.where)
        return where if _told(where) == where else ""

    @property
    def name(self) -> str:
        """What the file is called, whatever its copy is."""
        return PurePosixPath(self.path).name

    @property
    def origin(self) -> str:
        """A short hash of where the file lies, which tells two of one name apart."""
        place = str(self.where).encode("utf-8", "surrogateescape")
        return hashlib.sha256(place).hexdigest()[:16]

    def in_its_name(self, said: str) -> str:
        """Return what was said of the copy as said of the file itself."""
        return said.replace(self.file.name, self.name) if self.place else said


@dataclass(frozen=True, slots=True)
class Refusal:
    """What was not taken in, and the way out."""

    path: str
    reason: str
    hint: str = ""
    exit_code: int = InputError.exit_code

    @classmethod
    def of(
        cls, path: str, error: FaultleafError, candidate: Candidate | None = None
    ) -> Refusal:
        """Return the refusal that an error means for a path.

        Where the error begins with the file's bare name, it gets the whole path: a
        folder may hold many files of one name.
        """
        what = candidate.in_its_name(error.what) if candidate else error.what
        name = PurePosixPath(path).name
        if what.startswith(f"{name}:"):
            what = path + what.removeprefix(name)
        return cls(path, what, error.hint, error.exit_code)


@dataclass(slots=True)
class Collected:
    """Everything found under the named paths, each once, in a fixed order."""

    files: list[Candidate] = field(default_factory=list)
    packs: list[Path] = field(default_factory=list)
    refused: list[Refusal] = field(default_factory=list)
    aside: TemporaryDirectory[str] | None = None
    """Holds the copies of files that are in archives."""
    room: Room | None = None

    def __enter__(self) -> Collected:
        return self

    def __exit__(self, *_: object) -> None:
        self.close()

    def close(self) -> None:
        """Throw the copies away."""
        if self.aside is not None:
            self.aside.cleanup()

    def unpacking(self) -> Room:
        """Return the room for copies, made when first asked for."""
        if self.room is None:
            self.aside = TemporaryDirectory(prefix="faultleaf-")
            self.room = Room(Path(self.aside.name))
        return self.room


def collect(paths: Sequence[Path], leave_out: Path | None = None) -> Collected:
    """Walk the paths.

    A folder that holds ``pack.yaml`` is a rule pack as a whole. Hidden files and
    folders are passed over, and so is `leave_out`, the library's own folder. Links
    to files are followed, links to folders are said and not followed. Files in
    archives are copied; who collects closes, and the copies are gone.

    Raises
    ------
    InputError
        There is nothing to add under any of the paths.
    """
    found = Collected()
    try:
        _walk_all(found, paths, leave_out)
    except BaseException:
        found.close()
        raise
    return found


def _walk_all(found: Collected, paths: Sequence[Path], leave_out: Path | None) -> None:
    seen: set[str] = set()
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


_WHAT = "name PDF or text files, a folder of them, or a rule pack's folder"


def file_hash(path: Path) -> str:
    """Return the sha256 of a file, as hex digits."""
    seen = hashlib.sha256()
    with path.open("rb") as file:
        while chunk := file.read(_CHUNK):
            seen.update(chunk)
    return seen.hexdigest()


def _note(found: Collected, item: Candidate | Refusal | Path, seen: set[str]) -> None:
    if isinstance(item, Refusal):
        found.refused.append(item)
        return
    # Not Path.resolve, which raises for a link that leads to itself.
    place = os.path.realpath(item.file if isinstance(item, Candidate) else item)
    if place in seen:
        return
    seen.add(place)
    if not isinstance(item, Candidate):
        found.packs.append(item)
    elif is_archive(item.file):
        _unpack(found, item)
    else:
        found.files.append(item)


def _unpack(found: Collected, archive: Candidate) -> None:
    """Note the files of an archive in its place."""
    before = len(found.files) + len(found.refused)
    try:
        for each in members(archive.file, found.unpacking()):
            path = f"{archive.path}/{each.name}"
            if isinstance(each, Member):
                place = f"{archive.where}/{each.name}"
                found.files.append(Candidate(each.copy, path, place))
            else:
                reason = f"{path}: {each.reason}"
                found.refused.append(Refusal(path, reason, each.hint))
    except InputError as error:
        reason = f"{archive.path}: {error.what}"
        found.refused.append(Refusal(archive.path, reason, error.hint))
    except OSError as error:
        reason = f"{archive.path}: cannot be unpacked ({error.strerror})"
        found.refused.append(Refusal(archive.path, reason, "make room on the disk"))
    if before == len(found.files) + len(found.refused):
        reason = f"{archive.path}: an archive without a document in it"
        found.refused.append(Refusal(archive.path, reason, _WHAT))


def _walk(path: Path, leave_out: Path | None) -> Iterator[Candidate | Refusal | Path]:
    if path.is_dir():
        yield from _walk_folder(path, leave_out)
    elif _draft_above(path):
        yield _draft(path)
    elif path.name == PACK_FILE and path.is_file():
        yield path.parent
    elif os.path.lexists(path):
        yield Candidate(path, _told(path.name))
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
        reason = f"{where}: cannot be opened ({error.strerror})"
        refused.append(Refusal(where, reason, "check the folder's permissions"))

    for folder, inner, names in os.walk(root, onerror=note):
        here = Path(folder)
        if DRAFT_FILE in names:
            inner.clear()
            refused.append(_draft(here))
            continue
        if PACK_FILE in names:
            inner.clear()
            packs.append(here)
            continue
        inner[:] = [
            name
            for name in inner
            if not name.startswith(".") and not _same(here / name, leave_out)
        ]
        refused += [_link(here / name) for name in inner if (here / name).is_symlink()]
        files += [
            Candidate(here / name, _told((here / name).relative_to(root).as_posix()))
            for name in names
            if not name.startswith((".", "~$")) and name.lower() not in _LITTER
        ]
    yield from sorted(files, key=lambda each: each.path)
    yield from sorted(packs)
    yield from sorted(refused, key=lambda each: each.path)


def _draft_above(path: Path) -> bool:
    """Return whether a file belongs to a draft: beside its head, or in its tables."""
    folder = path.parent
    home = folder.parent if folder.name == "tables" else folder
    return (home / DRAFT_FILE).is_file()


def _draft(where: Path) -> Refusal:
    """Return what is said of a draft of rules: it is no pack and no literature."""
    told = _told(str(where))
    return Refusal(told, f"{told}: a draft, and a draft answers nothing", _NO_PACK)


def _link(folder: Path) -> Refusal:
    """Return what is said of a link to a folder: it may lead round in a circle."""
    where = _told(str(folder))
    return Refusal(
        where, f"{where}: a link to a folder, not followed", "name that folder itself"
    )


def _told(path: str) -> str:
    """Return a path as it can be stored and shown, whatever bytes it is made of."""
    return path.encode("utf-8", "surrogateescape").decode("utf-8", "replace")


def _same(folder: Path, other: Path | None) -> bool:
    return other is not None and os.path.realpath(folder) == os.path.realpath(other)
