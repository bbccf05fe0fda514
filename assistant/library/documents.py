"""Documents in the library: in, out, renamed, looked up; their pages and passages."""

from __future__ import annotations

import json
from collections.abc import Callable, Sequence
from pathlib import PurePosixPath

from assistant.errors import InputError, LibraryError
from assistant.library import intake, rows
from assistant.library.base import OpenLibrary
from assistant.library.keyword import fold
from assistant.library.types import (
    ID_DIGITS,
    OCR,
    TEXTLESS,
    Document,
    Page,
    Passage,
    StoredPassage,
    TableRow,
)

SHORTEST_PREFIX = 6
"""Hex digits of a sha256 that may stand for a document."""

_NAMINGS: tuple[Callable[[Document, str], bool], ...] = (
    lambda document, name: document.sha256 == name,
    lambda document, name: document.path == name,
    lambda document, name: PurePosixPath(document.path).name == name,
    lambda document, name: document.title.casefold() == name.casefold(),
    lambda document, name: (
        len(name) >= SHORTEST_PREFIX and document.sha256.startswith(name.lower())
    ),
    lambda document, name: PurePosixPath(document.path).stem == name,
)
"""The ways to name a document, tried in turn."""


class Documents(OpenLibrary):
    """The part of the library that holds literature."""

    def add_document(
        self,
        document: Document,
        pages: Sequence[Page],
        passages: Sequence[Passage],
        rows: Sequence[TableRow] = (),
        *,
        replaces: str = "",
    ) -> None:
        """Store a document whole, in one transaction.

        A document of the same sha256 is replaced, and so is `replaces`, the
        sha256 of an earlier state of the file.

        Raises
        ------
        InputError
            When a passage is not the span of its page that it says it is.
        """
        intake.refuse_stray(passages, pages, document)
        with self.transaction() as connection:
            hashes = self._take_out(document.sha256)
            hashes |= self._take_out(replaces) if replaces else set()
            key = intake.insert_document(connection, document)
            intake.insert_pages(connection, key, pages)
            intake.insert_passages(connection, key, document.title, passages)
            intake.insert_rows(connection, key, rows)
            self._drop_unused(hashes)

    def remove_document(self, sha256: str) -> bool:
        """Remove a document everywhere; False when it was not there.

        Embeddings of texts that no passage uses any more go with it.
        """
        with self.transaction():
            known = bool(
                self.query("SELECT 1 FROM document WHERE sha256 = ?", (sha256,))
            )
            self._drop_unused(self._take_out(sha256))
        return known

    def documents(self) -> tuple[Document, ...]:
        """Return every document, by path."""
        found = self.query(
            f"SELECT {rows.DOCUMENT} FROM document ORDER BY path, sha256"  # noqa: S608 - our own column list
        )
        return tuple(rows.document(row) for row in found)

    def document(self, name: str) -> Document | None:
        """Return the document of a sha256 or its start, a path, file name or title.

        Raises
        ------
        InputError
            When the name fits several documents.
        """
        known = self.documents()
        for fits in _NAMINGS:
            named = [each for each in known if fits(each, name)]
            if len(named) == 1:
                return named[0]
            if named:
                raise InputError(
                    f"{name!r} fits {len(named)} documents: "
                    + ", ".join(f"{each.document_id} {each.path}" for each in named),
                    "name one by its path or its identity",
                )
        return None

    def rename(self, sha256: str, new_path: str) -> None:
        """Note that the same file is now found under another path."""
        with self.transaction() as connection:
            connection.execute(
                "UPDATE document SET path = ? WHERE sha256 = ?", (new_path, sha256)
            )

    def update_document(self, document: Document) -> None:
        """Store what is said about a document anew; its text stays.

        Raises
        ------
        LibraryError
            When the document is not in the library.
        """
        with self.transaction() as connection:
            values = rows.document_row(document)
            changed = connection.execute(
                f"UPDATE document SET ({rows.DOCUMENT}) = (?,?,?,?,?,?,?,?,?,?) "  # noqa: S608 - our own column list
                "WHERE sha256 = ?",
                (*values, document.sha256),
            )
            if not changed.rowcount:
                raise LibraryError(
                    f"{document.path} is not in the library", "faultleaf add PATH…"
                )
            connection.execute(
                "UPDATE words SET title = ? WHERE rowid IN (SELECT passage.id FROM "
                "passage JOIN document ON document.id = passage.document "
                "WHERE sha256 = ?)",
                (fold(document.title), document.sha256),
            )

    # pages and passages

    def pages(self, sha256: str) -> tuple[Page, ...]:
        """Return a document's pages in order; none when it is not known."""
        found = self.query(
            f"SELECT {rows.PAGE} FROM page JOIN document "  # noqa: S608 - our own column list
            "ON document.id = page.document WHERE sha256 = ? ORDER BY page.number",
            (sha256,),
        )
        return tuple(rows.page(row) for row in found)

    def page(self, sha256: str, number: int) -> Page | None:
        """Return one page by its physical number, from 1."""
        found = self.query(
            f"SELECT {rows.PAGE} FROM page JOIN document "  # noqa: S608 - our own column list
            "ON document.id = page.document WHERE sha256 = ? AND page.number = ?",
            (sha256, number),
        )
        return rows.page(found[0]) if found else None

    def textless(self, sha256: str) -> tuple[int, ...]:
        """Return the pages of a document that cannot be searched, in order."""
        found = self.query(
            "SELECT page.number FROM page JOIN document ON document.id = page.document "
            "WHERE sha256 = ? AND status IN (?, ?) ORDER BY page.number",
            (sha256, *TEXTLESS),
        )
        return tuple(row[0] for row in found)

    def recognised(self) -> frozenset[tuple[str, int]]:
        """Return (document id, page) of every page that was read by OCR."""
        found = self.query(
            "SELECT sha256, page.number FROM page JOIN document "
            "ON document.id = page.document WHERE source = ?",
            (OCR,),
        )
        return frozenset((row[0][:ID_DIGITS], row[1]) for row in found)

    def page_text(self, sha256: str, number: int) -> str | None:
        """Return a page's text, or None where there is no such page."""
        found = self.page(sha256, number)
        return found.text if found else None

    def passage(self, passage_id: int) -> StoredPassage | None:
        """Return one passage by its id."""
        found = self.passages(ids=(passage_id,))
        return found[0] if found else None

    def passages(
        self, sha256: str = "", *, ids: Sequence[int] = ()
    ) -> tuple[StoredPassage, ...]:
        """Return the passages of a document, or those of the given ids, in order."""
        where = "document.sha256 = ?"
        if not sha256:
            where = "passage.id IN (SELECT value FROM json_each(?))"
        found = self.query(
            f"SELECT {rows.PASSAGE} FROM passage JOIN document "  # noqa: S608 - our own column list
            f"ON document.id = passage.document WHERE {where} ORDER BY passage.id",
            (sha256 or json.dumps(list(ids)),),
        )
        return tuple(rows.passage(row) for row in found)

    def table_rows(self, sha256: str) -> tuple[TableRow, ...]:
        """Return the table rows of a document, by page, table and row."""
        found = self.query(
            "SELECT page, nth, row, cells, header, start, stop FROM table_row "
            "JOIN document ON document.id = table_row.document "
            "WHERE sha256 = ? ORDER BY page, nth, row",
            (sha256,),
        )
        return tuple(rows.table_row(row) for row in found)

    def _take_out(self, sha256: str) -> set[str]:
        """Delete a document; return the hashes of the texts it had.

        Notes about it, whose keys end in a colon and its sha256, go too.
        """
        of = "WHERE document = (SELECT id FROM document WHERE sha256 = ?)"
        texts = self.query(
            f"SELECT text_hash FROM passage {of} UNION SELECT line.text_hash FROM line "  # noqa: S608 - a literal above
            f"JOIN passage ON passage.id = line.passage {of}",
            (sha256, sha256),
        )
        self.connection.execute(
            f"DELETE FROM words WHERE rowid IN (SELECT id FROM passage {of})",  # noqa: S608 - a literal above
            (sha256,),
        )
        self.connection.execute("DELETE FROM document WHERE sha256 = ?", (sha256,))
        self.connection.execute("DELETE FROM note WHERE key LIKE '%:' || ?", (sha256,))
        return {row[0] for row in texts}

    def _drop_unused(self, hashes: set[str]) -> None:
        self.connection.execute(
            "DELETE FROM embedding WHERE text_hash IN (SELECT value FROM json_each(?)) "
            "AND text_hash NOT IN (SELECT text_hash FROM passage) "
            "AND text_hash NOT IN (SELECT text_hash FROM line)",
            (json.dumps(sorted(hashes)),),
        )
