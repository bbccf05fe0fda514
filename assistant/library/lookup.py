"""The reading questions that search asks of the store."""

from __future__ import annotations

import json
from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass

from assistant.library import rows
from assistant.library.keyword import expression
from assistant.library.store import LibraryStore
from assistant.library.types import Document, PageStatus, Passage

WEIGHTS = (1.0, 2.0, 1.0)
"""bm25 weight of a word in the title, the section heading, the text."""


@dataclass(frozen=True, slots=True)
class Found:
    """A passage with the key of its document and the printed label of its page."""

    id: int
    document: int
    label: str
    passage: Passage
    text_hash: str
    read_by: str = ""
    """How its page was read: `ocr`, or nothing."""


class Lookup:
    """Reading questions over one open library."""

    def __init__(self, store: LibraryStore) -> None:
        self._store = store

    def documents(self) -> dict[int, Document]:
        """Return every document by its key, in order of path."""
        found = self._store.query(
            f"SELECT id, {rows.DOCUMENT} FROM document ORDER BY path, sha256"  # noqa: S608 - our own column list
        )
        return {row[0]: rows.document(row[1:]) for row in found}

    def passage_count(self, documents: Collection[int]) -> int:
        """Return how many passages the given documents have."""
        found = self._store.query(
            "SELECT count(*) FROM passage "
            "WHERE document IN (SELECT value FROM json_each(?))",
            (_json(documents),),
        )
        return int(found[0][0])

    def keyword(
        self, words: Sequence[str], documents: Collection[int], limit: int
    ) -> list[tuple[int, float]]:
        """Return (passage id, bm25 score) best first; a higher score is better."""
        if not words:
            return []
        found = self._store.query(
            "SELECT words.rowid, round(-bm25(words, ?, ?, ?), 6) AS score FROM words "
            "JOIN passage ON passage.id = words.rowid WHERE words MATCH ? "
            "AND document IN (SELECT value FROM json_each(?)) "
            "ORDER BY score DESC, words.rowid LIMIT ?",
            (*WEIGHTS, expression(words), _json(documents), limit),
        )
        return [(row[0], row[1]) for row in found]

    def having(self, word: str, documents: Collection[int]) -> frozenset[int]:
        """Return the passages of the given documents that have a folded word."""
        found = self._store.query(
            "SELECT words.rowid FROM words JOIN passage ON passage.id = words.rowid "
            "WHERE words MATCH ? AND document IN (SELECT value FROM json_each(?))",
            (expression((word,)), _json(documents)),
        )
        return frozenset(row[0] for row in found)

    def knows(self, word: str) -> bool:
        """Return whether any passage of the whole library has a folded word."""
        found = self._store.query(
            "SELECT 1 FROM words WHERE words MATCH ? LIMIT 1", (expression((word,)),)
        )
        return bool(found)

    def having_code(
        self, codes: Iterable[str], documents: Collection[int]
    ) -> Mapping[str, frozenset[int]]:
        """Return for each code the passages of the given documents that have it."""
        result = {}
        for code in codes:
            found = self._store.query(
                "SELECT passage.id FROM code JOIN passage ON passage.id = code.passage "
                "WHERE code = ? AND document IN (SELECT value FROM json_each(?))",
                (code, _json(documents)),
            )
            result[code] = frozenset(row[0] for row in found)
        return result

    def passages(self, ids: Collection[int]) -> dict[int, Found]:
        """Return passages by their id."""
        return {each.id: each for each in self._found("passage.id", ids)}

    def same_text(
        self, hashes: Collection[str], documents: Collection[int]
    ) -> Mapping[str, tuple[Found, ...]]:
        """Return by text hash every passage of the given documents that has it."""
        result: dict[str, tuple[Found, ...]] = {}
        for each in self._found("passage.text_hash", hashes):
            if each.document in documents:
                result[each.text_hash] = (*result.get(each.text_hash, ()), each)
        return result

    def unreadable(
        self, documents: Mapping[int, Document]
    ) -> dict[str, tuple[int, ...]]:
        """Return by path the pages that cannot be searched."""
        found = self._store.query(
            "SELECT document, number FROM page WHERE status IN (?, ?) ORDER BY number",
            (PageStatus.PICTURE.value, PageStatus.UNREADABLE.value),
        )
        result: dict[str, tuple[int, ...]] = {}
        for key, number in found:
            if key in documents:
                path = documents[key].path
                result[path] = (*result.get(path, ()), number)
        return dict(sorted(result.items()))

    def _found(self, column: str, values: Collection[object]) -> list[Found]:
        found = self._store.query(
            "SELECT passage.id, passage.document, coalesce(label, ''), passage.page, "  # noqa: S608 - one of two literals
            "start, stop, passage.text, section, lead, text_hash, "
            "coalesce(source, '') FROM passage "
            "LEFT JOIN page ON page.document = passage.document "
            "AND page.number = passage.page "
            f"WHERE {column} IN (SELECT value FROM json_each(?)) ORDER BY passage.id",
            (_json(values),),
        )
        return [
            Found(row[0], row[1], row[2], Passage(*row[3:9]), row[9], row[10])
            for row in found
        ]


def _json(values: Collection[object]) -> str:
    return json.dumps(sorted(values, key=str))
