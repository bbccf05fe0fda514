"""The shape of `library.sqlite`, as numbered steps that never change once released."""

from __future__ import annotations

import sqlite3

from assistant.errors import LibraryError
from assistant.formats import Format


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

FORMAT = Format(
    name="library",
    application=0x666C6C62,  # the letters "fllb"
    steps=(m001_documents_pages_passages,),
    refusal=LibraryError,
    other="--library at another folder",
)
"""What a `library.sqlite` is."""
