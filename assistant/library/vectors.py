"""Nearest passages by vector: exact for small libraries, FAISS for large ones.

The one door to FAISS. The vectors in SQLite are the truth; the FAISS file beside
it is a cache with a stamp and a checksum, rebuilt when either does not match.

Under `EXACT_ROWS` rows, whether the library is small or a filter leaves few, the
product is taken in NumPy over the stored vectors: it is exact, and FAISS (whose
import alone costs a fifth of a second) is not loaded.
"""

from __future__ import annotations

import hashlib
import os
import tempfile
from collections.abc import Collection, Sequence
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np

from assistant.errors import LibraryError
from assistant.library.store import LibraryStore

if TYPE_CHECKING:
    from numpy.typing import NDArray

EXACT_ROWS = 20_000
CACHE = "vectors.faiss"
_HEAD = b"faultleaf vectors 1\n"
_DIGEST = 32


class VectorIndex:
    """Nearest-passage search over the vectors that one model made.

    Parameters
    ----------
    store : LibraryStore
        An open library.
    model_hash : str
        Whose vectors.
    dimension : int
        Their length.
    """

    def __init__(self, store: LibraryStore, model_hash: str, dimension: int) -> None:
        self._store = store
        self._model_hash = model_hash
        self._dimension = dimension
        self._index: tuple[str, Any] | None = None
        self._exact: tuple[str, NDArray[np.int64], NDArray[np.float32]] | None = None

    def nearest(
        self,
        query: NDArray[np.float32],
        documents: Collection[int],
        limit: int,
    ) -> list[tuple[int, float]]:
        """Return (passage id, cosine) of the nearest passages, nearest first.

        Parameters
        ----------
        query : array of shape (dimension,)
            Of unit length.
        documents : collection of int
            Keys of the only documents searched.

        Raises
        ------
        LibraryError
            When the stored vectors are of another length than the query.
        """
        rows = self._rows(documents)
        if not rows:
            return []
        if rows < EXACT_ROWS:
            ids, vectors = self._stored(documents)
            return _ordered(ids, self._product(vectors, query), limit)
        ids = self._approximate(query, documents, 2 * limit)
        return _ordered(ids, self.cosines(query[None], ids.tolist())[0], limit)

    def cosines(
        self, queries: NDArray[np.float32], passages: Collection[int]
    ) -> NDArray[np.float64]:
        """Return the exact cosine of each passage, 0 where it has no vector.

        Parameters
        ----------
        queries : array of shape (m, dimension)

        Returns
        -------
        array of shape (m, len(passages)), in the order of `passages`
        """
        # CROSS JOIN keeps SQLite from walking through every vector of the model.
        found = self._store.query(
            "SELECT passage.id, vector FROM passage CROSS JOIN embedding "
            "ON embedding.text_hash = passage.text_hash AND model_hash = ? "
            "WHERE passage.id IN (SELECT value FROM json_each(?))",
            (self._model_hash, str(sorted(passages))),
        )
        known = dict(found)
        empty = bytes(4 * self._dimension)
        return self._products([known.get(each, empty) for each in passages], queries)

    def line_cosines(
        self, queries: NDArray[np.float32], passages: Collection[int]
    ) -> NDArray[np.float64]:
        """Return the cosine of each passage's nearest line, -1 where it has none.

        Shapes as for `cosines`.
        """
        found = self._store.query(
            "SELECT passage, vector FROM line CROSS JOIN embedding "
            "ON embedding.text_hash = line.text_hash AND model_hash = ? "
            "WHERE passage IN (SELECT value FROM json_each(?))",
            (self._model_hash, str(sorted(passages))),
        )
        place = {key: at for at, key in enumerate(passages)}
        owners = np.array([place[row[0]] for row in found], dtype=np.int64)
        products = self._products([row[1] for row in found], queries)
        best = np.full((len(queries), len(passages)), -1.0)
        for row, values in zip(best, products, strict=True):
            np.maximum.at(row, owners, values)
        return best

    def _products(
        self, blobs: Sequence[bytes], queries: NDArray[np.float32]
    ) -> NDArray[np.float64]:
        if not blobs:
            return np.zeros((len(queries), 0))
        matrix = np.frombuffer(b"".join(blobs), dtype="<f4").reshape(len(blobs), -1)
        return np.stack([self._product(matrix, query) for query in queries])

    def _product(
        self, vectors: NDArray[np.float32], query: NDArray[np.float32]
    ) -> NDArray[np.float64]:
        if vectors.shape[1] != query.shape[0]:
            raise LibraryError(
                f"the stored vectors have {vectors.shape[1]} numbers, "
                f"the query has {query.shape[0]}",
                "faultleaf doctor",
            )
        return vectors.astype(np.float64) @ query.astype(np.float64)

    def _rows(self, documents: Collection[int]) -> int:
        found = self._store.query(
            "SELECT count(*) FROM passage CROSS JOIN embedding "
            "ON embedding.text_hash = passage.text_hash AND model_hash = ? "
            "WHERE document IN (SELECT value FROM json_each(?))",
            (self._model_hash, str(sorted(documents))),
        )
        return int(found[0][0])

    def _stored(
        self, documents: Collection[int]
    ) -> tuple[NDArray[np.int64], NDArray[np.float32]]:
        state = f"{self._store.change_mark()} {sorted(documents)}"
        if self._exact is None or self._exact[0] != state:
            self._exact = (state, *self._store.vectors(self._model_hash, documents))
        return self._exact[1:]

    def _approximate(
        self, query: NDArray[np.float32], documents: Collection[int], limit: int
    ) -> NDArray[np.int64]:
        import faiss

        index = self._faiss()
        allowed = self._store.query(
            "SELECT id FROM passage WHERE document IN (SELECT value FROM json_each(?))",
            (str(sorted(documents)),),
        )
        chosen = faiss.IDSelectorBatch(np.array(allowed, dtype=np.int64).ravel())
        parameters = faiss.SearchParameters(sel=chosen)  # type: ignore[call-arg] # its stub lacks it
        _, ids = index.search(query.reshape(1, -1), limit, params=parameters)
        return np.array([each for each in ids[0] if each >= 0], dtype=np.int64)

    def _faiss(self) -> Any:  # noqa: ANN401 - FAISS has no types
        mark = self._store.change_mark()
        if self._index is None or self._index[0] != mark:
            stamp = self._stamp()
            self._index = (mark, self._read(stamp) or self._build(stamp))
        return self._index[1]

    def _stamp(self) -> str:
        """Hash what the cache must have been built from: ids, texts, model."""
        seen = hashlib.sha256(self._model_hash.encode())
        for key, name in self._store.query(
            "SELECT passage.id, passage.text_hash FROM passage CROSS JOIN embedding "
            "ON embedding.text_hash = passage.text_hash AND model_hash = ? "
            "ORDER BY passage.id",
            (self._model_hash,),
        ):
            seen.update(f"{key} {name}\n".encode())
        return seen.hexdigest()

    def _read(self, stamp: str) -> Any:  # noqa: ANN401 - FAISS has no types
        """Read the cache; None when it is missing, stale or damaged."""
        import faiss

        try:
            data = (self._store.folder / CACHE).read_bytes()
        except OSError:
            return None
        head = _HEAD + stamp.encode() + b"\n"
        start = len(head) + _DIGEST
        digest, body = data[len(head) : start], data[start:]
        # FAISS loads a file with a flipped bit without complaint.
        if not data.startswith(head) or hashlib.sha256(body).digest() != digest:
            return None
        return faiss.deserialize_index(np.frombuffer(body, dtype=np.uint8))

    def _build(self, stamp: str) -> Any:  # noqa: ANN401 - FAISS has no types
        import faiss

        ids, vectors = self._store.vectors(self._model_hash)
        flat = faiss.IndexScalarQuantizer(
            self._dimension, faiss.ScalarQuantizer.QT_fp16, faiss.METRIC_INNER_PRODUCT
        )
        index = faiss.IndexIDMap2(flat)
        index.train(vectors)
        index.add_with_ids(vectors, ids)
        body = faiss.serialize_index(index).tobytes()
        head = _HEAD + stamp.encode() + b"\n"
        with suppress(OSError):  # a read-only folder: it lives in memory only
            write_whole(
                self._store.folder / CACHE, head + hashlib.sha256(body).digest() + body
            )
        return index


def write_whole(target: Path, data: bytes) -> None:
    """Put a file in place whole or not at all: temporary file, fsync, rename."""
    handle, name = tempfile.mkstemp(dir=target.parent, prefix=f".{target.name}.")
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        Path(name).replace(target)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise


def _ordered(
    ids: NDArray[np.int64], cosines: NDArray[np.float64], limit: int
) -> list[tuple[int, float]]:
    """Sort by cosine to 1e-6, then by id: ties come back in a fixed order."""
    rounded = np.round(cosines, 6)
    order = np.lexsort((ids, -rounded))[:limit]
    return [(int(ids[at]), float(rounded[at])) for at in order]
