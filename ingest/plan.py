"""What adding would do to each file, decided before anything is read or written."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from enum import StrEnum
from pathlib import Path, PurePosixPath
from typing import TYPE_CHECKING

from assistant.errors import InputError
from assistant.library.types import Document
from ingest.collect import Candidate, Collected, Refusal, file_hash
from ingest.gone import gone
from ingest.readers.sniff import misnamed, reader_of

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore


class Action(StrEnum):
    """What is done with a file."""

    ADD = "add"
    REPLACE = "replace"
    """A new state of a file that is in the library."""
    RENAME = "rename"
    UNCHANGED = "unchanged"
    DUPLICATE = "duplicate"
    """The same content as another file, which stands for both."""
    GONE = "gone"
    """Its file is no longer where it was; it stays."""
    PRUNE = "prune"
    """The same, and it is to go."""
    PACK = "pack"
    REFUSE = "refuse"


@dataclass(frozen=True, slots=True)
class Step:
    """One file's lot."""

    action: Action
    path: str
    """As the library will know it."""
    candidate: Candidate | None = None
    sha256: str = ""
    reader: str = ""
    other: Document | None = None
    """What it replaces, renames, doubles, or shares its path with."""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Hashed:
    """A candidate with its content's identity and its reader."""

    candidate: Candidate
    sha256: str
    reader: str

    @property
    def note(self) -> str:
        """What is said where the file is not what its name says."""
        return misnamed(self.reader, self.candidate.name)


def look(files: Iterable[Candidate]) -> Iterator[Hashed | Refusal]:
    """Identify file after file, refusing what is plainly not to be read."""
    for candidate in files:
        try:
            reader = reader_of(candidate.file, candidate.name)
            yield Hashed(candidate, file_hash(candidate.file), reader)
        except InputError as error:
            yield Refusal.of(candidate.path, error, candidate)
        except OSError as error:
            reason = f"{candidate.path}: cannot be read ({error.strerror})"
            yield Refusal(candidate.path, reason, "check the file's permissions")


def decide(
    files: Sequence[Hashed],
    store: LibraryStore,
    roots: Sequence[Path] = (),
    *,
    prune: bool = False,
) -> list[Step]:
    """Return what to do with each file, in order, then with those that are gone.

    Parameters
    ----------
    files : sequence of Hashed
        What was found.
    store : LibraryStore
        The open library.
    roots : sequence of Path
        Where it was looked for: documents from there without a file are gone.
    prune : bool
        Documents that are gone are to go from the library too.
    """
    planner = _Planner(files, store)
    steps = [planner.step(each) for each in files]
    action = Action.PRUNE if prune else Action.GONE
    return steps + [
        Step(action, each.path, sha256=each.sha256, other=each)
        for each in planner.gone(roots, steps)
    ]


def plan(
    collected: Collected,
    store: LibraryStore,
    roots: Sequence[Path] = (),
    *,
    prune: bool = False,
) -> list[Step]:
    """Return what adding would do, changing nothing; as `decide`."""
    looked = list(look(collected.files))
    hashed = [each for each in looked if isinstance(each, Hashed)]
    refused = [each for each in looked if isinstance(each, Refusal)]
    return [
        *decide(hashed, store, roots, prune=prune),
        *(Step(Action.PACK, folder.name) for folder in collected.packs),
        *(
            Step(Action.REFUSE, each.path, note=each.reason)
            for each in (*collected.refused, *refused)
        ),
    ]


class _Planner:
    """Holds what the library knows while the files of one run are decided."""

    def __init__(self, files: Sequence[Hashed], store: LibraryStore) -> None:
        known = self.known = store.documents()
        self.places = store.places()
        self.by_hash = {each.sha256: each for each in known}
        self.by_path = {each.path: each for each in known}
        self.origins = {name: place.origin for name, place in self.places.items()}
        self.by_origin = {
            origin: self.by_hash[sha256]
            for sha256, origin in self.origins.items()
            if origin
        }
        self.here = {each.candidate.origin: each.sha256 for each in files}
        self.found = {str(each.candidate.where): each.sha256 for each in files}
        self.taken: dict[str, str] = {}

    def step(self, file: Hashed) -> Step:
        if file.sha256 in self.taken:
            return self._twice(file, self.taken[file.sha256])
        stored = self.by_hash.get(file.sha256)
        step = self._known(file, stored) if stored else self._new(file)
        if step.action is not Action.DUPLICATE:
            self.taken[file.sha256] = step.path
        return step

    def gone(self, roots: Sequence[Path], steps: Sequence[Step]) -> list[Document]:
        """Return what has no file under the roots and no step that follows it."""
        followed = {
            each.other.sha256
            for each in steps
            if each.other and each.action in (Action.REPLACE, Action.RENAME)
        }
        left = [each for each in self.known if each.sha256 not in followed]
        return gone(left, self.places, roots, self.found)

    def _twice(self, file: Hashed, path: str) -> Step:
        return Step(
            Action.DUPLICATE,
            file.candidate.path,
            file.candidate,
            file.sha256,
            other=self.by_hash.get(file.sha256),
            note=f"the same content as {path}",
        )

    def _known(self, file: Hashed, stored: Document) -> Step:
        """Decide on content that the library holds."""
        origin = self.origins.get(stored.sha256, "")
        path = file.candidate.path
        action = Action.UNCHANGED
        if origin == file.candidate.origin:
            # The same file, perhaps reached from a folder further up.
            if path.endswith("/" + stored.path):
                action = Action.RENAME
        elif origin and self.here.get(origin) == file.sha256:
            return self._twice(file, stored.path)
        elif path != stored.path:
            action = Action.RENAME
        if action is Action.UNCHANGED:
            path = stored.path
        return Step(action, path, file.candidate, file.sha256, file.reader, stored)

    def _new(self, file: Hashed) -> Step:
        """Decide on content that the library has not seen."""
        candidate = file.candidate
        before = self.by_origin.get(candidate.origin)
        if before is None:
            before = self.by_path.get(candidate.path)
            if before is not None and before.sha256 in self.origins:
                return Step(
                    Action.ADD,
                    self._free_path(file),
                    candidate,
                    file.sha256,
                    file.reader,
                    before,
                    file.note,
                )
        # Content that only moved elsewhere in this run is not replaced.
        if before is None or before.sha256 in self.here.values():
            path = candidate.path
            return Step(
                Action.ADD, path, candidate, file.sha256, file.reader, note=file.note
            )
        return Step(
            Action.REPLACE,
            before.path,
            candidate,
            file.sha256,
            file.reader,
            before,
            file.note,
        )

    def _free_path(self, file: Hashed) -> str:
        """Return the path with as many folders before it as make it its own."""
        path = PurePosixPath(file.candidate.path)
        above = file.candidate.where.parents[len(path.parts) - 1 :]
        for folder in above:
            if str(path) not in self.by_path:
                return str(path)
            path = PurePosixPath(folder.name) / path
        return f"{file.sha256[:12]}/{file.candidate.path}"
