"""The shape of `jobs.sqlite`, as numbered steps that never change once released."""

from __future__ import annotations

import sqlite3

from assistant.errors import JobsError
from assistant.formats import Format


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

FORMAT = Format(
    name="jobs",
    application=0x666C6A62,  # the letters "fljb"
    steps=(m001_events,),
    refusal=JobsError,
    other="--jobs at another file",
)
"""What a `jobs.sqlite` is."""
