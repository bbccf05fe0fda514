"""From paths to a library: look, read, assemble, store, one document at a time.

Each document is one transaction; whoever stops listening stops the work between
two pages, and the library holds every document up to there.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path

from assistant.errors import (
    ANSWERED,
    WITH_WARNINGS,
    FaultleafError,
    InputError,
    LibraryError,
)
from assistant.library.types import Document, Page, PageStatus
from ingest.assemble import Prepared, prepare
from ingest.collect import Candidate, Refusal, collect
from ingest.plan import FILE, ORIGIN, Action, Hashed, Step, Store, decide, look
from ingest.progress import Progress
from ingest.readers.base import FileFacts, RawPage
from ingest.readers.isolation import read_file
from ingest.readers.limits import Limits

WARN_SHARE = 0.2
WARN_PAGES = 10
_TEXTLESS = (PageStatus.PICTURE, PageStatus.UNREADABLE)


@dataclass(slots=True)
class Ingested:
    """What came of adding; the last thing `add` gives."""

    added: list[str] = field(default_factory=list)
    replaced: list[str] = field(default_factory=list)
    renamed: list[str] = field(default_factory=list)
    unchanged: list[str] = field(default_factory=list)
    duplicates: list[str] = field(default_factory=list)
    packs: list[str] = field(default_factory=list)
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


@dataclass(frozen=True, slots=True)
class Options:
    """How to add."""

    password: str | None = None
    """Tried on every encrypted file."""
    limits: Limits = field(default_factory=Limits)
    add_pack: Callable[[Path], None] | None = None
    """Takes in a rule pack's folder, or raises; without it packs are refused."""


def add(
    paths: Sequence[Path],
    store: Store,
    *,
    count: Callable[[str], int],
    options: Options | None = None,
) -> Iterator[Progress | Ingested]:
    """Take files and folders into the library.

    Content that is known is left alone, a moved file gets its new path, a changed
    one replaces its earlier state; nothing else is touched. A file that cannot be
    taken in is noted with its reason and the rest goes on.

    Parameters
    ----------
    paths : sequence of Path
        Files and folders; folders are walked in sorted order.
    store : Store
        The open library.
    count : callable
        Tokens of a text, special tokens included.
    options : Options, optional
        Password, limits, and what takes in rule packs.

    Yields
    ------
    Progress or Ingested
        Progress while it works; `Ingested` once, at the end.

    Raises
    ------
    InputError
        There is nothing to add under any of the paths.
    LibraryError
        The library cannot be written.
    """
    run = _Run(store, count, options or Options())
    found = collect(paths, leave_out=getattr(store, "folder", None))
    run.result.refused.extend(found.refused)
    hashed: list[Hashed] = []
    for done, each in enumerate(look(found.files), start=1):
        if isinstance(each, Hashed):
            hashed.append(each)
            note = each.candidate.path
        else:
            run.result.refused.append(each)
            note = each.path
        yield Progress("look", done, len(found.files), note)
    steps = decide(hashed, store)
    for done, step in enumerate(steps, start=1):
        yield from run.take(step)
        yield Progress("store", done, len(steps), step.path)
    for done, folder in enumerate(found.packs, start=1):
        run.take_pack(folder)
        yield Progress("packs", done, len(found.packs), folder.name)
    yield run.result


class _Run:
    """One call of `add`: the store, the way, and the result so far."""

    def __init__(
        self, store: Store, count: Callable[[str], int], options: Options
    ) -> None:
        self.store = store
        self.count = count
        self.options = options
        self.result = Ingested()

    def take(self, step: Step) -> Iterator[Progress]:
        """Do one step; a file's own fault is noted, the library's is raised."""
        if step.action in {Action.ADD, Action.REPLACE}:
            try:
                yield from self._read(step)
            except LibraryError:
                raise
            except FaultleafError as error:
                self.result.refused.append(Refusal.of(step.path, error))
        elif step.action is Action.DUPLICATE:
            self.result.duplicates.append(f"{step.path}: {step.note}")
        else:
            self._settle(step)

    def take_pack(self, folder: Path) -> None:
        """Hand a rule pack's folder to whoever takes it in."""
        try:
            if self.options.add_pack is None:
                raise InputError(f"{folder}: a rule pack, not literature")
            self.options.add_pack(folder)
            self.result.packs.append(folder.name)
        except LibraryError:
            raise
        except FaultleafError as error:
            self.result.refused.append(Refusal.of(folder.name, error))

    def _settle(self, step: Step) -> None:
        """Note the place of content that the library already holds."""
        renamed = step.action is Action.RENAME
        with self.store.transaction():
            if renamed:
                self.store.rename(step.sha256, step.path)
            self._note_origin(step)
        done = self.result.renamed if renamed else self.result.unchanged
        done.append(step.path)

    def _read(self, step: Step) -> Iterator[Progress]:
        if step.candidate is None:
            return
        facts: FileFacts | None = None
        raw: list[RawPage] = []
        for item in self._items(step, step.candidate):
            if isinstance(item, FileFacts):
                facts = item
            else:
                raw.append(item)
            pages = facts.pages if facts else 0
            yield Progress("read", len(raw), pages, step.path)
        if facts is None:
            raise InputError(f"{step.path}: the reader gave nothing")
        self._store(step, prepare(step.sha256, step.path, facts, raw, self.count))

    def _items(self, step: Step, candidate: Candidate) -> Iterator[FileFacts | RawPage]:
        return read_file(
            candidate.file,
            step.reader,
            password=self.options.password,
            limits=self.options.limits,
        )

    def _store(self, step: Step, ready: Prepared) -> None:
        document = ready.document
        replaced = step.other
        if step.action is Action.ADD and replaced is not None:
            if _same_title(replaced, document):
                document = replace(document, path=replaced.path)
            else:
                self.result.warnings.append(_namesake(step.path, replaced))
                replaced = None
        with self.store.transaction():
            self.store.add_document(
                document,
                ready.pages,
                ready.passages,
                ready.rows,
                replaces=replaced.sha256 if replaced else "",
            )
            self._note_origin(step)
        done = self.result.replaced if replaced else self.result.added
        done.append(document.path)
        self.result.pages.update(page.status for page in ready.pages)
        self.result.passages += len(ready.passages)
        self.result.warnings.extend(textless_warning(document.path, ready.pages))

    def _note_origin(self, step: Step) -> None:
        if step.candidate is not None:
            self.store.put_note(ORIGIN + step.sha256, step.candidate.origin)
            where = str(step.candidate.file.absolute())
            self.store.put_note(FILE + step.sha256, where)


def _same_title(one: Document, other: Document) -> bool:
    """Whether two documents of one path are states of the same one."""
    return bool(one.maker) and (one.maker, one.title) == (other.maker, other.title)


def _namesake(path: str, other: Document) -> str:
    return (
        f"{path}: {other.path} from another folder stays in the library beside it; "
        f"if this is its new edition: faultleaf remove {other.document_id}"
    )


def textless_warning(path: str, pages: Sequence[Page]) -> Iterator[str]:
    """Give a warning when too much of a document cannot be searched.

    That is ten pages, or more than a fifth of those that are not blank.
    """
    counts: Mapping[PageStatus, int] = Counter(page.status for page in pages)
    lost = sum(counts.get(status, 0) for status in _TEXTLESS)
    written = len(pages) - counts.get(PageStatus.BLANK, 0)
    if lost >= WARN_PAGES or lost > WARN_SHARE * written:
        yield f"{path}: {lost} of {written} pages cannot be searched (no text)"
