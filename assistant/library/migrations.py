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


def m002_how_a_page_was_read(connection: sqlite3.Connection) -> None:
    """Note of every page how its text was got, and how surely."""
    for statement in _M002:
        connection.execute(statement)


_M002 = (
    "ALTER TABLE page ADD COLUMN source TEXT NOT NULL DEFAULT ''",
    "ALTER TABLE page ADD COLUMN confidence REAL NOT NULL DEFAULT 0",
)


def m003_who_says_what(connection: sqlite3.Connection) -> None:
    """Document numbers; who says what of a document; where its file lies."""
    for statement in _M003:
        connection.execute(statement)


_M003 = (
    "ALTER TABLE document ADD COLUMN doc_number TEXT NOT NULL DEFAULT ''",
    """CREATE TABLE said (
        document INTEGER NOT NULL REFERENCES document ON DELETE CASCADE,
        field TEXT NOT NULL, source TEXT NOT NULL, value TEXT NOT NULL,
        person TEXT NOT NULL, day TEXT NOT NULL,
        PRIMARY KEY (document, field, source)) WITHOUT ROWID""",
    """CREATE TABLE proposal (
        document INTEGER NOT NULL REFERENCES document ON DELETE CASCADE,
        nth INTEGER NOT NULL, scope TEXT NOT NULL, page INTEGER NOT NULL,
        quote TEXT NOT NULL, PRIMARY KEY (document, nth)) WITHOUT ROWID""",
    """CREATE TABLE place (
        document INTEGER PRIMARY KEY REFERENCES document ON DELETE CASCADE,
        origin TEXT NOT NULL, path TEXT NOT NULL)""",
    """CREATE TABLE earlier (
        sha256 TEXT PRIMARY KEY,
        document INTEGER NOT NULL REFERENCES document ON DELETE CASCADE,
        title TEXT NOT NULL, revision TEXT NOT NULL, date TEXT NOT NULL)
        WITHOUT ROWID""",
    # Until now only a hash of where a file lies was kept, among the notes.
    """INSERT INTO place (document, origin, path)
        SELECT document.id, note.value, '' FROM document
        JOIN note ON note.key = 'origin:' || document.sha256""",
    "DELETE FROM note WHERE key LIKE 'origin:%'",
    # What an earlier faultleaf read: from the file or its cover, not told which.
    *(
        f"""INSERT INTO said SELECT id, '{field}', 'reading', {value}, '', ''
        FROM document WHERE {field} NOT IN ('', '[]')"""  # noqa: S608 - literals below
        for field, value in (
            ("title", "json_quote(title)"),
            ("maker", "json_quote(maker)"),
            ("kind", "json_quote(kind)"),
            ("revision", "json_quote(revision)"),
            ("date", "json_quote(date)"),
            ("supersedes", "supersedes"),
            ("applies_to", "applies_to"),
        )
    ),
)


def m004_a_page_before_its_repair(connection: sqlite3.Connection) -> None:
    """Keep the text of a page as its file gives it, where a repair changed it."""
    connection.execute("ALTER TABLE page ADD COLUMN raw TEXT NOT NULL DEFAULT ''")


FORMAT = Format(
    name="library",
    application=0x666C6C62,  # the letters "fllb"
    steps=(
        m001_documents_pages_passages,
        m002_how_a_page_was_read,
        m003_who_says_what,
        m004_a_page_before_its_repair,
    ),
    refusal=LibraryError,
    other="--library at another folder",
)
"""What a `library.sqlite` is."""
