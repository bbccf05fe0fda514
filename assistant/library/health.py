"""Is the library file whole? Read-only questions, answered in words."""

from __future__ import annotations

import sqlite3

from assistant.library.intake import passage_codes
from assistant.library.rows import PASSAGE, passage

_COUNTS = (
    (
        "SELECT count(*) FROM passage WHERE id NOT IN (SELECT rowid FROM words)",
        "passages cannot be found by their words",
    ),
    (
        "SELECT count(*) FROM words WHERE rowid NOT IN (SELECT id FROM passage)",
        "keyword rows belong to no passage",
    ),
    (
        "SELECT count(*) FROM passage LEFT JOIN page ON page.document = "
        "passage.document AND page.number = passage.page WHERE page.text IS NULL OR "
        "substr(page.text, start + 1, stop - start) <> passage.text",
        "passages are not what stands on their page",
    ),
    (
        "SELECT count(*) FROM embedding WHERE text_hash NOT IN "
        "(SELECT text_hash FROM passage) "
        "AND text_hash NOT IN (SELECT text_hash FROM line)",
        "embeddings belong to no passage",
    ),
    (
        "SELECT count(*) FROM (SELECT model_hash FROM embedding GROUP BY model_hash "
        "HAVING count(DISTINCT length(vector)) > 1)",
        "models have embeddings of several lengths",
    ),
)


def problems(connection: sqlite3.Connection) -> list[str]:
    """Return every problem of the file behind a connection, in a fixed order."""
    try:
        found = _file_problems(connection)
        # A file that SQLite itself finds broken is not worth the slower questions.
        return found or [*_keyword_problems(connection), *_content(connection)]
    except sqlite3.Error as error:
        return [f"the file cannot be read through: {error}"]


def _file_problems(connection: sqlite3.Connection) -> list[str]:
    rows = connection.execute("PRAGMA integrity_check").fetchall()
    found = [f"SQLite: {row[0]}" for row in rows if row[0] != "ok"]
    stray = connection.execute("PRAGMA foreign_key_check").fetchall()
    return found + ([f"{len(stray)} rows belong to nothing"] if stray else [])


def _keyword_problems(connection: sqlite3.Connection) -> list[str]:
    """Ask FTS5 about itself, which takes a connection that may write: a copy."""
    copy = sqlite3.connect(":memory:")
    try:
        connection.backup(copy)
        copy.execute("INSERT INTO words (words, rank) VALUES ('integrity-check', 0)")
    except sqlite3.DatabaseError as error:
        return [f"keyword index: {error}"]
    finally:
        copy.close()
    return []


def _content(connection: sqlite3.Connection) -> list[str]:
    found = []
    for question, meaning in _COUNTS:
        number = connection.execute(question).fetchone()[0]
        if number:
            found.append(f"{number} {meaning}")
    wrong = sum(1 for _ in _wrong_codes(connection))
    return found + ([f"{wrong} passages have other codes than noted"] if wrong else [])


def _wrong_codes(connection: sqlite3.Connection) -> list[int]:
    noted: dict[int, set[str]] = {}
    for code, owner in connection.execute("SELECT code, passage FROM code"):
        noted.setdefault(owner, set()).add(code)
    stored = connection.execute(
        f"SELECT {PASSAGE} FROM passage JOIN document "  # noqa: S608 - our own column list
        "ON document.id = passage.document"
    )
    return [
        row[0]
        for row in stored
        if noted.get(row[0], set()) != set(passage_codes(passage(row).passage))
    ]
