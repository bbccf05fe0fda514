"""Opening `library.sqlite`: for one writer, for readers, from a read-only folder.

At rest the library is one file in rollback mode, so it can be copied, shipped and
read from a folder that cannot be written. A writer switches it to a write-ahead
log, so that readers go on meanwhile, and switches back when it closes last.
"""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from assistant.errors import LibraryError
from assistant.formats import version
from assistant.library.migrations import FORMAT

FILE = "library.sqlite"
BUSY_SECONDS = 5.0
"""How long a writer waits for another one."""

ADD = "faultleaf add PATH…"
_DAMAGED = frozenset({"SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_FORMAT"})


@contextmanager
def explained(where: Path) -> Iterator[None]:
    """Turn what SQLite raises into a LibraryError with its way out."""
    try:
        yield
    except sqlite3.Error as error:
        raise explain(error, where) from error


def explain(error: sqlite3.Error, where: Path) -> LibraryError:
    """Say in words what SQLite's error means for the library at `where`."""
    full = getattr(error, "sqlite_errorname", "") or ""
    name = "_".join(full.split("_")[:2])
    if name in {"SQLITE_BUSY", "SQLITE_LOCKED"}:
        return LibraryError(
            f"the library {where} is locked: another process is writing to it",
            "wait until that `add` or `remove` has ended, then try again",
        )
    if name in _DAMAGED:
        return LibraryError(
            f"the library {where} is damaged: {error}",
            f"put a backup in its place, or move it away and run: {ADD}",
        )
    if name in {"SQLITE_READONLY", "SQLITE_PERM"}:
        return LibraryError(
            f"the library {where} cannot be written: {error}",
            "name a folder of your own with --library, or ask who keeps this one",
        )
    if name == "SQLITE_FULL":
        return LibraryError(
            f"no space left to write {where}", "make room; nothing was lost"
        )
    return LibraryError(
        f"the library {where} cannot be used: {error}", "faultleaf doctor"
    )


def connect_writer(folder: Path, *, create: bool) -> sqlite3.Connection:
    """Open the library of a folder for writing, making or migrating it.

    Raises
    ------
    LibraryError
        Missing and `create` is false; damaged, locked, newer, or read-only.
    """
    where = folder / FILE
    if create:
        _make_folder(folder)
    _require(where, missing_is_fine=create)
    with explained(where):
        connection = sqlite3.connect(
            where,
            timeout=BUSY_SECONDS,
            isolation_level=None,
            check_same_thread=False,
        )
        try:
            _refuse_foreign(connection, where)
            FORMAT.refuse_newer(connection, where)
            connection.execute("PRAGMA journal_mode = WAL")
            connection.execute("PRAGMA synchronous = FULL")
            connection.execute("PRAGMA foreign_keys = ON")
            FORMAT.migrate(connection, where)
        except BaseException:
            connection.close()
            raise
    return connection


def connect_reader(folder: Path) -> sqlite3.Connection:
    """Open the library of a folder for reading only; the folder may be read-only.

    Raises
    ------
    LibraryError
        Missing, damaged, of another format, or left with an unfinished write in
        a folder that cannot be written.
    """
    where = folder / FILE
    _require(where, missing_is_fine=False)
    with explained(where):
        connection = _open_reader(where)
        try:
            _refuse_foreign(connection, where)
            FORMAT.refuse_newer(connection, where)
            if version(connection) < FORMAT.latest:
                connection.close()
                close(connect_writer(folder, create=False))
                connection = _open_reader(where)
        except BaseException:
            connection.close()
            raise
    return connection


def close(connection: sqlite3.Connection) -> None:
    """Close; the last writer leaves one plain file behind."""
    with suppress(sqlite3.Error):
        # Fails, harmlessly, while another process has the file open.
        connection.execute("PRAGMA busy_timeout = 0")
        if not connection.execute("PRAGMA query_only").fetchone()[0]:
            connection.execute("PRAGMA journal_mode = DELETE")
    connection.close()


def _open_reader(where: Path) -> sqlite3.Connection:
    uri = where.resolve().as_uri() + "?mode=ro"
    log = where.with_name(where.name + "-wal")
    pending = log.exists() and log.stat().st_size > 0
    if not os.access(where.parent, os.W_OK):
        if pending:
            raise LibraryError(
                f"the library {where} holds an unfinished write and its folder "
                "cannot be written",
                "open it once where it can be written, then copy it again",
            )
        uri += "&immutable=1"
    connection = sqlite3.connect(
        uri,
        uri=True,
        timeout=BUSY_SECONDS,
        isolation_level=None,
        check_same_thread=False,
    )
    connection.execute("PRAGMA query_only = ON")
    return connection


def _make_folder(folder: Path) -> None:
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise LibraryError(
            f"the library folder {folder} cannot be made: {error.strerror}",
            "name another folder with --library",
        ) from error


def _require(where: Path, *, missing_is_fine: bool) -> None:
    try:
        empty = not where.exists() or where.stat().st_size == 0
    except OSError as error:
        raise LibraryError(
            f"the library folder {where.parent} cannot be read: {error.strerror}",
            "name another folder with --library",
        ) from error
    if empty and not missing_is_fine:
        raise LibraryError(f"there is no library in {where.parent}", ADD)


def _refuse_foreign(connection: sqlite3.Connection, where: Path) -> None:
    found = connection.execute("PRAGMA application_id").fetchone()[0]
    if version(connection) and found != FORMAT.application:
        raise LibraryError(
            f"{where} is an SQLite file, but not a faultleaf library",
            "name another folder with --library",
        )
