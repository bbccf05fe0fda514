"""From paths to a library: look, read, assemble, store, one document at a time.

The next files are read meanwhile, and stored in their turn. Each document is one
transaction; whoever stops listening stops the work between two pages, and the
library holds every document up to there.
"""

from __future__ import annotations

from collections.abc import Callable, Generator, Iterator, Sequence
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import FaultleafError, InputError, LibraryError
from assistant.library.sayings import Place
from assistant.library.superseded import same_title
from assistant.library.types import Document
from ingest.assemble import Prepared, prepare
from ingest.collect import Candidate, Collected, Refusal, collect
from ingest.keeping import Kept, keep
from ingest.outcome import Ingested, Remedy
from ingest.pictures import to_recognise, with_reasons, with_recognised
from ingest.plan import Action, Hashed, Step, decide, look
from ingest.progress import Pace, Progress
from ingest.quality import remedies
from ingest.readers.ahead import WORKERS, Ahead
from ingest.readers.base import FileFacts, LockedError, RawPage, Read
from ingest.readers.isolation import Reading
from ingest.readers.limits import Limits
from ingest.readers.sniff import PDF
from ingest.telling import (
    gone_warning,
    lapsed_warning,
    namesake,
    near_lines,
    replaced_line,
    textless_warning,
)

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore

_READ = (Action.ADD, Action.REPLACE)
TRIED = "ocr:"
"""Start of the note that a document's pictures were read, whatever came of it."""
Recognise = Callable[[Path, Sequence[int], str | None], Iterator[RawPage]]
"""File, pages and password in; those pages as OCR reads them out."""


@dataclass(frozen=True, slots=True)
class Options:
    """How to add."""

    password: str | None = None
    """Tried on every encrypted file."""
    ask_password: Callable[[str], str | None] | None = None
    """Asked, with its path, about a file that is locked; None leaves it out."""
    workers: int = WORKERS
    """Files read at a time."""
    limits: Limits = field(default_factory=Limits)
    add_pack: Callable[[Path], None] | None = None
    """Takes in a rule pack's folder, or raises; without it packs are refused."""
    recognise: Recognise | None = None
    """Reads pages whose text is missing or bad; without it they stay pictures."""
    prune: bool = False
    """Take out documents whose files are gone from the folders named."""
    way_to_recognise: str = ""
    """Said where pages stay pictures for want of it."""


def add(
    paths: Sequence[Path],
    store: LibraryStore,
    *,
    count: Callable[[str], int],
    options: Options | None = None,
) -> Generator[Progress | Ingested, None, None]:
    """Take files and folders into the library.

    Content that is known is left alone, a moved file gets its new path, a changed
    one replaces its earlier state; nothing else is touched. Documents that came from
    a folder named and have no file there any more are told, and with `prune` taken
    out. A file that cannot be taken in is noted with its reason and the rest goes on.

    Parameters
    ----------
    paths : sequence of Path
        Files and folders; folders are walked in sorted order.
    store : LibraryStore
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
    with collect(paths, leave_out=store.folder) as found:
        yield from _take_in(found, paths, run)


def _take_in(
    found: Collected, paths: Sequence[Path], run: _Run
) -> Generator[Progress | Ingested, None, None]:
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
    decided = decide(hashed, run.store, paths, prune=run.options.prune)
    steps = [run.again(step) for step in decided]
    run.read_ahead(steps)
    try:
        for done, step in enumerate(steps, start=1):
            yield from run.take(step)
            yield Progress("store", done, len(steps), step.path, run.pace.tally())
    finally:
        run.stop()
    run.compare()
    for done, folder in enumerate(found.packs, start=1):
        run.take_pack(folder)
        yield Progress("packs", done, len(found.packs), folder.name)
    yield run.result


class _Run:
    """One call of `add`: the store, the way, and the result so far."""

    def __init__(
        self, store: LibraryStore, count: Callable[[str], int], options: Options
    ) -> None:
        self.store = store
        self.count = count
        self.options = options
        self.result = Ingested()
        self.pace = Pace([])
        self.ahead = Ahead([])
        self.turns: dict[str, int] = {}
        self.tried: set[str] = set()
        self.places = dict(store.places())
        self.new: set[str] = set()
        self.opened_with = self.options.password
        """The password of the file in hand."""

    def read_ahead(self, steps: Sequence[Step]) -> None:
        """Begin to read what the steps will want read, in their order."""
        wanted = {
            step.sha256: (step, step.candidate)
            for step in steps
            if step.action in _READ and step.candidate is not None
        }
        self.turns = {name: turn for turn, name in enumerate(wanted)}
        self.pace = Pace([_size(found.file) for _, found in wanted.values()])
        readings = [
            self._reading(step, found, self.options.password)
            for step, found in wanted.values()
        ]
        self.ahead = Ahead(readings, self.options.workers)

    def stop(self) -> None:
        """End all reading."""
        self.ahead.stop()

    def _reading(
        self, step: Step, candidate: Candidate, password: str | None
    ) -> Reading:
        limits = self.options.limits
        return Reading(candidate.file, step.reader, password=password, limits=limits)

    def take(self, step: Step) -> Iterator[Progress]:
        """Do one step; a file's own fault is noted, the library's is raised."""
        if step.action in _READ:
            try:
                yield from self._read(step)
            except LibraryError:
                raise
            except FaultleafError as error:
                self.result.refused.append(Refusal.of(step.path, error))
                self.pace.document(self.turns[step.sha256])
        elif step.action is Action.DUPLICATE:
            self.result.duplicates.append(f"{step.path}: {step.note}")
        elif step.action in (Action.GONE, Action.PRUNE):
            self._gone(step)
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

    def compare(self) -> None:
        """Tell what of the new says nearly the same as another document."""
        if self.new:
            known, units = self.store.documents(), self.store.units()
            self.result.near.extend(near_lines(known, units, self.new))

    def _gone(self, step: Step) -> None:
        """Tell of a document without a file, or take it out."""
        document = step.other
        # It may have become the earlier state of what this run took in.
        if document is None or document not in self.store.documents():
            return
        if step.action is Action.PRUNE:
            self.store.remove_document(document.sha256)
            self.result.pruned.append(document.path)
        else:
            self.result.gone.append(document.path)
            self.result.warnings.append(gone_warning(document))

    def _settle(self, step: Step) -> None:
        """Note the place of content that the library already holds."""
        renamed = step.action is Action.RENAME
        if renamed:
            with self.store.transaction():
                self.store.rename(step.sha256, step.path)
                self._note_place(step)
        else:
            self._note_place(step)
        done = self.result.renamed if renamed else self.result.unchanged
        done.append(step.path)

    def _read(self, step: Step) -> Iterator[Progress]:
        if step.candidate is None:
            return
        facts: FileFacts | None = None
        raw: list[RawPage] = []
        turn = self.turns[step.sha256]
        for item in self._items(step, step.candidate, self.ahead.items(turn)):
            if isinstance(item, FileFacts):
                facts = item
                self.pace.open(turn, facts.pages)
            else:
                raw.append(item)
                self.pace.page()
            pages, tally = facts.pages if facts else 0, self.pace.tally()
            yield Progress("read", len(raw), pages, step.path, tally)
        if facts is None:
            raise InputError(f"{step.path}: the reader gave nothing")
        ready = prepare(step.sha256, step.path, facts, raw, self.count)
        self._store(step, (yield from self._recognised(step, facts, raw, ready)))
        if facts.damage:
            self.result.warnings.append(f"{step.path}: {facts.damage}")

    def again(self, step: Step) -> Step:
        """Return a step that reads a known file for its pictures, if it has any."""
        if (
            self.options.recognise is None
            or step.action is not Action.UNCHANGED
            or step.reader != PDF
            or self.store.note(TRIED + step.sha256)
            or not self.store.textless(step.sha256)
        ):
            return step
        return replace(step, action=Action.REPLACE)

    def _recognised(
        self, step: Step, facts: FileFacts, raw: Sequence[RawPage], ready: Prepared
    ) -> Generator[Progress, None, Prepared]:
        """Have the pages read whose text is missing or bad."""
        wanted = to_recognise(ready.pages)
        recognise = self.options.recognise
        if not wanted or recognise is None or not step.candidate or step.reader != PDF:
            return ready
        self.tried.add(step.sha256)
        if facts.damage:
            return ready
        read: dict[int, RawPage] = {}
        for page in recognise(step.candidate.file, wanted, self.opened_with):
            read[page.number] = page
            tally = self.pace.tally()
            yield Progress("ocr", len(read), len(wanted), step.path, tally)
        pages = with_recognised(raw, read)
        ready = prepare(step.sha256, step.path, facts, pages, self.count)
        return replace(ready, pages=with_reasons(ready.pages, read))

    def _items(
        self, step: Step, candidate: Candidate, items: Iterator[Read]
    ) -> Iterator[Read]:
        """Give what is read; where a file is locked, ask until it opens."""
        self.opened_with = self.options.password
        while True:
            try:
                yield from items
            except LockedError:
                ask = self.options.ask_password
                password = ask(step.path) if ask else None
                if not password:
                    raise
                self.opened_with = password
                items = self._reading(step, candidate, password).items()
            else:
                return

    def _store(self, step: Step, ready: Prepared) -> None:
        replaced, path = step.other, step.path
        if step.action is Action.ADD and replaced is not None:
            if same_title(replaced, ready.document):
                path = replaced.path
            else:
                self.result.warnings.append(namesake(step.path, replaced))
                replaced = None
        with self.store.transaction():
            kept = keep(self.store, ready, path, replaced)
            self.places.pop(step.sha256, None)
            self._note_place(step)
            if step.sha256 in self.tried:
                self.store.put_note(TRIED + step.sha256, "1")
        self._tell(step, kept, replaced)
        self.result.warnings.extend(
            textless_warning(path, ready.pages, self.options.way_to_recognise)
        )
        self.result.remedies.extend(
            Remedy(path, way, on) for way, on in remedies(ready.pages).items()
        )
        self.result.pages.update(page.status for page in ready.pages)
        self.result.passages += len(ready.passages)
        self.pace.document(self.turns[step.sha256], len(ready.passages))

    def _tell(self, step: Step, kept: Kept, replaced: Document | None) -> None:
        path = kept.document.path
        self.new.add(kept.document.sha256)
        if replaced is None:
            self.result.added.append(path)
        else:
            self.result.replaced.append(path)
            self.result.states.append(replaced_line(kept, replaced))
            self.result.warnings.extend(lapsed_warning(kept))
        if step.note:
            self.result.warnings.append(f"{path}: {step.note}")

    def _note_place(self, step: Step) -> None:
        """Keep where the file lies, if that is new."""
        if step.candidate is None:
            return
        place = Place(step.candidate.origin, step.candidate.kept)
        if self.places.get(step.sha256) != place:
            self.store.put_place(step.sha256, place)


def _size(file: Path) -> int:
    try:
        return file.stat().st_size
    except OSError:
        return 0  # gone since it was looked at; its reading says so
