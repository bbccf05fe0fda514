"""Writing one document's rows; every function runs inside the caller's transaction."""

from __future__ import annotations

import json
import sqlite3
from collections.abc import Mapping, Sequence
from functools import lru_cache

from assistant.errors import InputError
from assistant.library import rows
from assistant.library.codes import (
    codes_in,
    counts_in,
    letter_codes_in,
    normal,
    row_counts,
)
from assistant.library.keyword import fold
from assistant.library.lines import line_spans, line_text
from assistant.library.texts import embedded_text, text_hash
from assistant.library.types import Document, Page, Passage, TableRow


def refuse_stray(
    passages: Sequence[Passage], pages: Sequence[Page], document: Document
) -> None:
    """Raise InputError when a passage is not the span of its page it says it is."""
    texts: Mapping[int, str] = {page.number: page.text for page in pages}
    for passage in passages:
        text = texts.get(passage.page)
        if text is None or text[passage.start : passage.end] != passage.text:
            raise InputError(
                f"{document.path} p. {passage.page}: the passage at "
                f"{passage.start}-{passage.end} is not what stands on that page",
                "this is a mistake of the reader of this format; report it",
            )


def insert_document(connection: sqlite3.Connection, document: Document) -> int:
    """Insert the document's own row; return its key."""
    made = connection.execute(
        f"INSERT INTO document ({rows.DOCUMENT}) VALUES (?,?,?,?,?,?,?,?,?,?)",  # noqa: S608 - our own column list
        rows.document_row(document),
    )
    return int(made.lastrowid or 0)


def insert_pages(
    connection: sqlite3.Connection, key: int, pages: Sequence[Page]
) -> None:
    """Insert every page of the document with this key."""
    connection.executemany(
        "INSERT INTO page (document, number, label, status, text, reason, source, "
        "confidence, raw) VALUES (?,?,?,?,?,?,?,?,?)",
        [
            (
                key,
                page.number,
                page.label,
                page.status.value,
                page.text,
                page.reason,
                page.source,
                page.confidence,
                page.raw,
            )
            for page in pages
        ],
    )


def insert_passages(
    connection: sqlite3.Connection,
    key: int,
    title: str,
    passages: Sequence[Passage],
) -> None:
    """Insert every passage with its lines, its codes and its keyword form."""
    folded_title = fold(title)
    for passage in passages:
        made = connection.execute(
            "INSERT INTO passage (document, page, start, stop, text, section, lead, "
            "text_hash) VALUES (?,?,?,?,?,?,?,?)",
            (
                key,
                passage.page,
                passage.start,
                passage.end,
                passage.text,
                passage.section,
                passage.lead,
                text_hash(embedded_text(passage)),
            ),
        )
        row = made.lastrowid
        connection.executemany(
            "INSERT INTO line VALUES (?, ?, ?, ?)",
            [
                (row, start, stop, text_hash(line_text(passage.section, line)))
                for start, stop in line_spans(passage)
                for line in [passage.text[start:stop]]
            ],
        )
        connection.executemany(
            "INSERT INTO code VALUES (?, ?)",
            [(code, row) for code in passage_codes(passage)],
        )
        connection.execute(
            "INSERT INTO words (rowid, title, section, body) VALUES (?,?,?,?)",
            (
                row,
                folded_title,
                fold(passage.section),
                fold(f"{passage.lead}\n{passage.text}"),
            ),
        )


def insert_rows(
    connection: sqlite3.Connection, key: int, table_rows: Sequence[TableRow]
) -> None:
    """Insert the rows of the document's tables."""
    connection.executemany(
        "INSERT INTO table_row VALUES (?,?,?,?,?,?,?,?)",
        [
            (
                key,
                row.page,
                row.table,
                row.row,
                json.dumps(row.cells, ensure_ascii=False),
                json.dumps(row.header, ensure_ascii=False),
                row.start,
                row.end,
            )
            for row in table_rows
        ],
    )


def passage_codes(passage: Passage) -> tuple[str, ...]:
    """Return the codes and flash counts a passage is found by, sorted."""
    codes = codes_in(embedded_text(passage))
    counts = counts_in(passage.text, passage.lead)
    return tuple(sorted({*codes, *counts, *letter_codes_in(passage.text)}))


@lru_cache(maxsize=8192)
def key_codes(passage: Passage) -> frozenset[str]:
    """Return the codes and counts that a passage is about, not merely mentions.

    Those that its heading names, and those that open one of its lines, as the rows
    of a code table do.
    """
    section = passage.section
    opening = (line.split(maxsplit=1)[:1] for line in passage.text.splitlines())
    rows = {normal(word) for words in opening for word in words}
    counts = row_counts(passage.text, passage.lead)
    named = (*codes_in(section), *counts_in(section), *counts)
    coded = {*codes_in(passage.text), *letter_codes_in(passage.text)}
    return frozenset(named) | (rows & coded)
