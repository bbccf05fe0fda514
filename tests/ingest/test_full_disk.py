"""A full disk or a folder that cannot be written: said clearly, and nothing is lost."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from assistant.errors import LibraryError
from assistant.library.connection import FILE
from assistant.library.search import Search
from assistant.library.store import LibraryStore
from ingest.embedding import embed_missing
from tests.fakes import HashEncoder
from tests.ingest.kills import write_literature
from tests.shelves import note, take

OLD = "Lamp LD9 flashes nine times when the outdoor sensor is open."


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """Return the folder of a library that holds one note, embedded."""
    folder = tmp_path / "library"
    with LibraryStore.open(folder, create=True) as store:
        take(store, note(tmp_path / "old.txt", f"Shop note\n\n{OLD}"))
        list(embed_missing(store, HashEncoder()))
    return folder


def leave_room(store: LibraryStore, pages: int) -> None:
    """Let the file grow by so many of SQLite's pages, as a full disk would."""
    used = store.query("PRAGMA page_count")[0][0]
    store.query(f"PRAGMA max_page_count = {used + pages}")


def check_intact(library: Path) -> None:
    with LibraryStore.open(library, read_only=True) as store:
        assert store.check() == []
        found = Search(store, encoder=None).search("lamp LD9 flashes nine times")
        assert found.hits[0].document == "old.txt"
        assert OLD in found.hits[0].text


@pytest.mark.parametrize("room", [0, 20, 40])
def test_a_full_disk_is_said_and_what_was_stored_stays(
    tmp_path: Path, library: Path, room: int
) -> None:
    write_literature(tmp_path / "shelf")

    with LibraryStore.open(library) as store:
        leave_room(store, room)
        with pytest.raises(LibraryError, match="no space left to write") as error:
            take(store, tmp_path / "shelf")
        stored = len(store.documents())

    assert error.value.hint == "make room; nothing was lost"
    check_intact(library)
    with LibraryStore.open(library) as store:
        assert len(store.documents()) == stored
        take(store, tmp_path / "shelf")
        assert len(store.documents()) == 13


def test_a_disk_that_fills_while_texts_are_embedded_loses_no_text(
    tmp_path: Path, library: Path
) -> None:
    write_literature(tmp_path / "shelf")
    encoder = HashEncoder(dimension=256)

    with LibraryStore.open(library) as store:
        take(store, tmp_path / "shelf")
        leave_room(store, 60)
        with pytest.raises(LibraryError, match="no space left to write"):
            list(embed_missing(store, encoder, replace=True))
    check_intact(library)

    with LibraryStore.open(library) as store:
        list(embed_missing(store, encoder))
        assert store.pending_texts(encoder.model_hash) == []


@pytest.mark.skipif(
    not hasattr(os, "geteuid") or os.geteuid() == 0,
    reason="needs permissions that bind",
)
def test_a_folder_that_cannot_be_written_is_said_and_is_still_read(
    tmp_path: Path, library: Path
) -> None:
    (library / FILE).chmod(0o444)
    library.chmod(0o555)
    try:
        with (
            pytest.raises(LibraryError, match="cannot be written"),
            LibraryStore.open(library) as store,
        ):
            take(store, note(tmp_path / "new.txt", "A new note about the fan."))
        check_intact(library)
    finally:
        library.chmod(0o755)
