"""A rule pack into the library: loaded, proved against the pages, put in force."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from assistant.dialogue.knowledge import Knowledge
from assistant.errors import InputError, PackError
from assistant.library.store import LibraryStore
from assistant.rules.kinds import PackDocument
from assistant.rules.loader import load_pack_with_lines
from assistant.rules.mistakes import Mistake, PackLines
from assistant.rules.pack import Pack
from assistant.rules.parsed import FOLDER, ParsedFiles
from assistant.rules.references import items_of
from assistant.rules.stored import dump_pack, pack_sha256, read_stored
from assistant.rules.verify import Elsewhere, PageText, verify_pack
from assistant.settings import Settings

NOT_IN_FORCE = "correct the lines named, then add the pack again; it is not in force"


def parsed_files(settings: Settings) -> ParsedFiles:
    """Return the files parsed before, in the user's cache folder."""
    return ParsedFiles(settings.cache / FOLDER)


@dataclass(frozen=True, slots=True)
class Proved:
    """A pack and everything that speaks against it."""

    pack: Pack
    mistakes: tuple[Mistake, ...]

    @property
    def errors(self) -> tuple[Mistake, ...]:
        """What keeps it out of force."""
        return tuple(each for each in self.mistakes if each.severity == "error")

    @property
    def warnings(self) -> tuple[Mistake, ...]:
        """What does not, and should be seen to."""
        return tuple(each for each in self.mistakes if each.severity == "warning")


def take_pack(
    folder: Path, store: LibraryStore, kept: ParsedFiles | None = None
) -> Proved:
    """Put the pack of a folder in force, in place of an earlier version of it.

    Raises
    ------
    PackError
        With every mistake and every source that does not stand. Nothing of the
        pack is in force then; an earlier version stays as it was.
    """
    with store.transaction():
        proved = prove_folder(folder, store, kept)
        if proved.errors:
            raise PackError(tuple(str(each) for each in proved.errors), NOT_IN_FORCE)
        head = proved.pack.head
        payload = dump_pack(proved.pack)
        store.put_pack(head.id, head.version, pack_sha256(proved.pack), payload)
    return proved


def prove_folder(
    folder: Path, store: LibraryStore, kept: ParsedFiles | None = None
) -> Proved:
    """Load the pack of a folder and prove it against the library.

    Files that `kept` holds are not parsed again.

    Raises
    ------
    PackError
        When it cannot be loaded, with every mistake.
    """
    pack, lines = load_pack_with_lines(folder, kept)
    return Proved(pack, _verified(pack, store, lines))


def prove_stored(pack_id: str, store: LibraryStore) -> Proved:
    """Prove a pack in force against the library as it is now.

    Raises
    ------
    InputError
        When no pack of that id is in force.
    """
    stored = {pack.id: pack for pack in store.packs()}
    if pack_id not in stored:
        known = ", ".join(stored) or "none"
        raise InputError(
            f"no rule pack {pack_id!r} is in force; in force: {known}",
            "name a pack's folder or its id",
        )
    pack = read_stored(stored[pack_id].payload)
    return Proved(pack, _verified(pack, store))


def _verified(
    pack: Pack, store: LibraryStore, lines: PackLines | None = None
) -> tuple[Mistake, ...]:
    knowledge = Knowledge(documents=store.documents())
    pages = store.recognised()

    def recognised(named: PackDocument, page: int) -> bool:
        document = knowledge.document_of(named)
        return document is not None and (document.document_id, page) in pages

    return verify_pack(
        pack, page_text_of(store), lines, recognised, _ids_in_force(store)
    )


def _ids_in_force(store: LibraryStore) -> Elsewhere:
    """Return what gives the ids of a pack in force; each pack is read once."""
    payloads = {stored.id: stored.payload for stored in store.packs()}

    @cache
    def ids(pack_id: str) -> frozenset[str] | None:
        if pack_id not in payloads:
            return None
        items = items_of(read_stored(payloads[pack_id])).values()
        return frozenset(item.id for held in items for item in held)

    return ids


def page_text_of(store: LibraryStore) -> PageText:
    """Return what gives the text of a page of a document that a pack names."""
    knowledge = Knowledge(documents=store.documents())

    def page_text(named: PackDocument, page: int) -> str | None:
        document = knowledge.document_of(named)
        return store.page_text(document.sha256, page) if document else None

    return page_text
