"""The shape of `library.sqlite`, as numbered steps that never change once released.

Each step runs in one transaction with the number that records it, so a kill
leaves a file at the old number or at the new one. An older file is copied aside
with SQLite's own backup before its first step; a newer file is refused.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from pathlib import Path

from assistant.errors import LibraryError

APPLICATION = 0x666C6C62
"""SQLite's application id of our files: the letters "fllb"."""

Step = Callable[[sqlite3.Connection], None]


def m001_documents_pages_passages(connection: sqlite3.Connection) -> None:
    """Literature, its codes, its keyword form, its embeddings, and rule packs."""
    for statement in _M001:
        connection.execute(statement)


_M001 = (
    """CREATE TABLE document (
        id INTEGER PRIMARY KEY, sha256 TEXT NOT NULL UNIQUE, path TEXT NOT NULL,
        title TEXT NOT NULL, maker TEXT NOT NULL, kind TEXT NOT NULL,
        revision TEXT NOT NULL, date TEXT NOT NULL, supersedes TEXT NOT NULL,
        applies_to TEXT NOT NULL)""",
    """CREATE TABLE page (
        document INTEGER NOT NULL REFERENCES document ON DELETE CASCADE,
        number INTEGER NOT NULL, label TEXT NOT NULL, status TEXT NOT NULL,
        text TEXT NOT NULL, reason TEXT NOT NULL,
        PRIMARY KEY (document, number)) WITHOUT ROWID""",
    # AUTOINCREMENT: an id that a job has noted is never given to another passage.
    """CREATE TABLE passage (
        id INTEGER PRIMARY KEY AUTOINCREMENT,
        document INTEGER NOT NULL REFERENCES document ON DELETE CASCADE,
        page INTEGER NOT NULL, start INTEGER NOT NULL, stop INTEGER NOT NULL,
        text TEXT NOT NULL, section TEXT NOT NULL, lead TEXT NOT NULL,
        text_hash TEXT NOT NULL)""",
    "CREATE INDEX passage_document ON passage (document, page)",
    "CREATE INDEX passage_text ON passage (text_hash)",
    """CREATE TABLE table_row (
        document INTEGER NOT NULL REFERENCES document ON DELETE CASCADE,
        page INTEGER NOT NULL, nth INTEGER NOT NULL, row INTEGER NOT NULL,
        cells TEXT NOT NULL, header TEXT NOT NULL, start INTEGER NOT NULL,
        stop INTEGER NOT NULL, PRIMARY KEY (document, page, nth, row)) WITHOUT ROWID""",
    """CREATE TABLE line (
        passage INTEGER NOT NULL REFERENCES passage ON DELETE CASCADE,
        start INTEGER NOT NULL, stop INTEGER NOT NULL, text_hash TEXT NOT NULL,
        PRIMARY KEY (passage, start)) WITHOUT ROWID""",
    "CREATE INDEX line_text ON line (text_hash)",
    """CREATE TABLE code (
        code TEXT NOT NULL,
        passage INTEGER NOT NULL REFERENCES passage ON DELETE CASCADE,
        PRIMARY KEY (code, passage)) WITHOUT ROWID""",
    "CREATE INDEX code_passage ON code (passage)",
    """CREATE VIRTUAL TABLE words USING fts5 (
        title, section, body, tokenize = 'porter unicode61')""",
    """CREATE TABLE embedding (
        model_hash TEXT NOT NULL, text_hash TEXT NOT NULL, vector BLOB NOT NULL,
        PRIMARY KEY (model_hash, text_hash))""",
    """CREATE TABLE pack (
        id TEXT PRIMARY KEY, version TEXT NOT NULL, sha256 TEXT NOT NULL,
        payload TEXT NOT NULL) WITHOUT ROWID""",
    "CREATE TABLE note (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID",
)

STEPS: tuple[Step, ...] = (m001_documents_pages_passages,)
LATEST = len(STEPS)


def version(connection: sqlite3.Connection) -> int:
    """Return the number of the last step a file has had."""
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def refuse_newer(
    connection: sqlite3.Connection, where: Path, latest: int = LATEST
) -> None:
    """Raise LibraryError when the file was written by a later faultleaf."""
    found = version(connection)
    if found > latest:
        raise LibraryError(
            f"{where} has library format {found}; this faultleaf knows up to {latest}",
            "install a newer faultleaf, or point --library at another folder",
        )


def migrate(
    connection: sqlite3.Connection,
    where: Path,
    steps: tuple[Step, ...] = STEPS,
) -> None:
    """Bring a file to the latest format, after a backup when it holds anything.

    Parameters
    ----------
    connection : sqlite3.Connection
        In autocommit mode, with no transaction open.
    where : Path
        The file behind it; the backup becomes ``<name>.format-<n>.backup``.
    steps : tuple of callables
        Step n takes a file from format n-1 to n.

    Raises
    ------
    LibraryError
        When the file is newer than this program.
    """
    refuse_newer(connection, where, len(steps))
    if 0 < version(connection) < len(steps):
        _back_up(connection, where)
    for number, step in enumerate(steps, start=1):
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Read inside the transaction: another process may have done it.
            if version(connection) < number:
                step(connection)
                connection.execute(f"PRAGMA user_version = {number}")
                connection.execute(f"PRAGMA application_id = {APPLICATION}")
            connection.execute("COMMIT")
        except BaseException:
            connection.execute("ROLLBACK")
            raise


def _back_up(connection: sqlite3.Connection, where: Path) -> None:
    target = where.with_name(f"{where.name}.format-{version(connection)}.backup")
    copy = sqlite3.connect(target)
    try:
        connection.backup(copy)
    finally:
        copy.close()
