"""Formats: older files move up after a backup, newer ones are refused by name."""

from __future__ import annotations

import sqlite3
from dataclasses import replace
from pathlib import Path

import pytest

from assistant.errors import LibraryError
from assistant.formats import version
from assistant.library.connection import FILE
from assistant.library.migrations import FORMAT
from assistant.library.sayings import Origin, Place
from assistant.library.store import LibraryStore
from tests.formats import stepped
from tests.literature import document, put


def add_a_column(connection: sqlite3.Connection) -> None:
    connection.execute("ALTER TABLE document ADD COLUMN shelf TEXT")


def fail_half_way(connection: sqlite3.Connection) -> None:
    connection.execute("ALTER TABLE document ADD COLUMN shelf TEXT")
    raise RuntimeError


def _library(folder: Path) -> Path:
    with LibraryStore.open(folder, create=True) as store:
        put(store, document("a.pdf"), "words")
    return folder / FILE


def test_an_older_file_is_backed_up_and_migrated(tmp_path: Path) -> None:
    file = _library(tmp_path)
    connection = sqlite3.connect(file, isolation_level=None)

    stepped(FORMAT, add_a_column).migrate(connection, file)

    assert version(connection) == FORMAT.latest + 1
    assert connection.execute("SELECT path, shelf FROM document").fetchall() == [
        ("a.pdf", None)
    ]
    connection.close()
    backup = sqlite3.connect(tmp_path / f"{FILE}.format-{FORMAT.latest}.backup")
    assert version(backup) == FORMAT.latest
    assert backup.execute("SELECT path FROM document").fetchall() == [("a.pdf",)]
    backup.close()


def test_a_step_that_fails_leaves_the_older_format(tmp_path: Path) -> None:
    file = _library(tmp_path)
    connection = sqlite3.connect(file, isolation_level=None)

    with pytest.raises(RuntimeError):
        stepped(FORMAT, fail_half_way).migrate(connection, file)

    assert version(connection) == FORMAT.latest
    columns = [row[1] for row in connection.execute("PRAGMA table_info(document)")]
    assert "shelf" not in columns
    connection.close()


@pytest.mark.parametrize("read_only", [True, False])
def test_a_newer_file_is_refused_by_number(tmp_path: Path, read_only: bool) -> None:
    file = _library(tmp_path)
    connection = sqlite3.connect(file)
    connection.execute(f"PRAGMA user_version = {FORMAT.latest + 1}")
    connection.close()

    with pytest.raises(LibraryError, match=f"format {FORMAT.latest + 1}"):
        LibraryStore.open(tmp_path, read_only=read_only)


def test_a_library_of_the_first_format_keeps_what_it_knew(tmp_path: Path) -> None:
    file = tmp_path / FILE
    connection = sqlite3.connect(file, isolation_level=None)
    first = replace(FORMAT, steps=FORMAT.steps[:1])
    first.migrate(connection, file)
    connection.execute(
        "INSERT INTO document VALUES "
        "(1, 'aa', 'a.pdf', 'Heron manual', '', '', 'C', '', '[\"VSM-1\"]', '[]')"
    )
    connection.execute("INSERT INTO note VALUES ('origin:aa', '0123')")
    connection.close()

    with LibraryStore.open(tmp_path) as store:
        (kept,) = store.documents()
        said = {each.field: each for each in store.said("aa")}
        places = store.places()

    assert (kept.title, kept.revision, kept.number) == ("Heron manual", "C", "")
    assert said["supersedes"].value == ("VSM-1",)
    assert {each.source for each in said.values()} == {Origin.READING}
    assert places == {"aa": Place("0123", "")}
    assert (tmp_path / f"{FILE}.format-1.backup").exists()


def test_every_step_is_numbered_in_order() -> None:
    names = [step.__name__ for step in FORMAT.steps]

    assert [int(name[1:4]) for name in names] == list(range(1, FORMAT.latest + 1))
