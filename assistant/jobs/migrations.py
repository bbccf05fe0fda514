"""The shape of `jobs.sqlite`, as numbered steps that never change once released.

A step and the number that records it are one transaction. An older file is copied
aside before its first step; a newer one is refused by name.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from pathlib import Path

from assistant.errors import JobsError

APPLICATION = 0x666C6A62
"""SQLite's application id of our files: the letters "fljb"."""

Step = Callable[[sqlite3.Connection], None]


def m001_events(connection: sqlite3.Connection) -> None:
    """Events as canonical JSON, with the columns that order and chain them.

    Triggers keep the table append-only against a slip of our own; against a
    person with an SQLite tool there is the chain.
    """
    for statement in _M001:
        connection.execute(statement)


_M001 = (
    """CREATE TABLE event (
        id TEXT PRIMARY KEY, job TEXT NOT NULL, machine TEXT NOT NULL,
        seq INTEGER NOT NULL, noted TEXT NOT NULL, kind TEXT NOT NULL,
        digest TEXT NOT NULL, payload TEXT NOT NULL,
        UNIQUE (job, machine, seq)) WITHOUT ROWID""",
    """CREATE TRIGGER event_kept BEFORE UPDATE ON event
        BEGIN SELECT RAISE(ABORT, 'events are never changed'); END""",
    """CREATE TRIGGER event_stays BEFORE DELETE ON event
        BEGIN SELECT RAISE(ABORT, 'events are never deleted'); END""",
    "CREATE TABLE note (key TEXT PRIMARY KEY, value TEXT NOT NULL) WITHOUT ROWID",
)

STEPS: tuple[Step, ...] = (m001_events,)
LATEST = len(STEPS)


def version(connection: sqlite3.Connection) -> int:
    """Return the number of the last step a file has had."""
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def refuse_newer(
    connection: sqlite3.Connection, where: Path, latest: int = LATEST
) -> None:
    """Raise JobsError when the file was written by a later faultleaf."""
    found = version(connection)
    if found > latest:
        raise JobsError(
            f"{where} has jobs format {found}; this faultleaf knows up to {latest}",
            "install a newer faultleaf, or point --jobs at another file",
        )


def migrate(
    connection: sqlite3.Connection, where: Path, steps: tuple[Step, ...] = STEPS
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
    JobsError
        When the file is newer than this program.
    """
    refuse_newer(connection, where, len(steps))
    if 0 < version(connection) < len(steps):
        _back_up(connection, where)
    for number, step in enumerate(steps, start=1):
        if version(connection) >= number:
            continue
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Read again inside the transaction: another process may have done it.
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
