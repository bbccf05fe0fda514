"""The simple ways of searching that ours has to beat."""

from __future__ import annotations

import re
import sqlite3
from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from assistant.library.encoder import Encoder
from assistant.library.store import LibraryStore
from assistant.library.texts import embedded_text
from assistant.library.types import StoredPassage

SOFTENING = 60
DEEP = 60
Ranked = list[tuple[tuple[str, int], float]]


class Simple:
    """Four ways over the passages of one library, nothing folded, nothing tuned."""

    def __init__(self, store: LibraryStore, encoder: Encoder) -> None:
        import bm25s

        documents = {each.sha256: each for each in store.documents()}
        self._paths = {key: each.path for key, each in documents.items()}
        self._passages: list[StoredPassage] = [
            each for key in documents for each in store.passages(key)
        ]
        texts = [
            f"{documents[each.document].title}\n{embedded_text(each.passage)}"
            for each in self._passages
        ]
        self._encoder = encoder
        known = dict(zip(*_rows(store, encoder), strict=True))
        self._matrix: NDArray[np.float32] = np.stack(
            [known[each.id] for each in self._passages]
        )
        self._words = sqlite3.connect(":memory:")
        self._words.execute(
            "CREATE VIRTUAL TABLE words USING fts5 (body, tokenize='porter unicode61')"
        )
        self._words.executemany(
            "INSERT INTO words (rowid, body) VALUES (?, ?)",
            [(place, text) for place, text in enumerate(texts)],
        )
        self._bm25 = bm25s.BM25()
        self._bm25.index(_tokens(texts), show_progress=False)

    def fts5(self, text: str, verdicts: Mapping[str, str] | None) -> Ranked:
        """Rank as SQLite does over the words as typed."""
        return self._pages(self._fts5(text), verdicts)

    def bm25s(self, text: str, verdicts: Mapping[str, str] | None) -> Ranked:
        """Rank by the bm25s library with its usual parameters."""
        scores = self._bm25.get_scores(_tokens([text])[0])
        return self._pages(_best(scores), verdicts)

    def vectors(self, text: str, verdicts: Mapping[str, str] | None) -> Ranked:
        """Rank by cosine alone."""
        return self._pages(self._cosines(text), verdicts)

    def fusion(self, text: str, verdicts: Mapping[str, str] | None) -> Ranked:
        """Fuse SQLite's ranking and cosine by reciprocal rank."""
        total: dict[int, float] = {}
        for ranking in (self._fts5(text), self._cosines(text)):
            kept = [place for place, _ in ranking if self._applies(place, verdicts)]
            for rank, place in enumerate(kept[:DEEP], start=1):
                total[place] = total.get(place, 0.0) + 1 / (SOFTENING + rank)
        ranked = sorted(total.items(), key=lambda each: (-each[1], each[0]))
        return self._pages(ranked, verdicts)

    def _fts5(self, text: str) -> list[tuple[int, float]]:
        words = re.findall(r"\w+", text)
        if not words:
            return []
        found = self._words.execute(
            "SELECT rowid, -bm25(words) FROM words WHERE words MATCH ? "
            "ORDER BY bm25(words), rowid",
            (" OR ".join(f'"{word}"' for word in words),),
        )
        return [(row[0], row[1]) for row in found]

    def _cosines(self, text: str) -> list[tuple[int, float]]:
        return _best(self._matrix @ self._encoder.embed_query(text))

    def _applies(self, place: int, verdicts: Mapping[str, str] | None) -> bool:
        sha256 = self._passages[place].document
        return verdicts is None or verdicts[sha256] != "excluded"

    def _pages(
        self, ranked: Sequence[tuple[int, float]], verdicts: Mapping[str, str] | None
    ) -> Ranked:
        """From passages to pages, each page once."""
        pages: dict[tuple[str, int], float] = {}
        for place, score in ranked:
            if self._applies(place, verdicts):
                each = self._passages[place]
                pages.setdefault((self._paths[each.document], each.passage.page), score)
        return list(pages.items())


def _rows(
    store: LibraryStore, encoder: Encoder
) -> tuple[list[int], list[NDArray[np.float32]]]:
    ids, matrix = store.vectors(encoder.model_hash)
    return ids.tolist(), list(matrix)


def _best(scores: np.ndarray) -> list[tuple[int, float]]:
    order = np.lexsort((np.arange(len(scores)), -scores))
    return [(int(place), float(scores[place])) for place in order]


def _tokens(texts: Sequence[str]) -> list[list[str]]:
    return [re.findall(r"\w+", text.casefold()) for text in texts]
