"""The library: one SQLite file that is the only truth about the literature.

A document goes in, and out, in one transaction with its pages, passages, codes
and keyword rows. Embeddings follow in their own table and may lag behind.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Collection, Mapping, Sequence
from dataclasses import asdict
from typing import TYPE_CHECKING

from assistant.errors import LibraryError
from assistant.library import rows
from assistant.library.health import problems
from assistant.library.lines import line_text
from assistant.library.migrations import FORMAT
from assistant.library.stated import Stated
from assistant.library.texts import embedded_text
from assistant.library.types import Manifest, Passage, StoredPack

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

_COUNTED = {
    "documents": "document",
    "pages": "page",
    "passages": "passage",
    "lines": "line",
    "table_rows": "table_row",
    "codes": "code",
    "embeddings": "embedding",
    "packs": "pack",
}


class LibraryStore(Stated):
    """An open library: literature, embeddings, rule packs, and its own health."""

    def put_pack(
        self, global_id: str, version: str, sha256: str, payload_json: str
    ) -> None:
        """Put a rule pack in force in place of any other of that id."""
        with self.transaction() as connection:
            connection.execute(
                "INSERT OR REPLACE INTO pack VALUES (?, ?, ?, ?)",
                (global_id, version, sha256, payload_json),
            )

    def remove_pack(self, global_id: str) -> bool:
        """Take a rule pack out of force; False when it was not there."""
        with self.transaction() as connection:
            gone = connection.execute("DELETE FROM pack WHERE id = ?", (global_id,))
        return gone.rowcount > 0

    def packs(self) -> tuple[StoredPack, ...]:
        """Return the packs in force, by id."""
        found = self.query("SELECT id, version, sha256, payload FROM pack ORDER BY id")
        return tuple(rows.pack(row) for row in found)

    def counts(self) -> Mapping[str, int]:
        """Return how many documents, pages, passages, ... there are."""
        return {
            name: self.query(f"SELECT count(*) FROM {table}")[0][0]  # noqa: S608 - our own table names
            for name, table in _COUNTED.items()
        }

    def stamp(self) -> str:
        """Return a hash that changes when documents, what is said of them or packs do.

        The same documents and packs give the same stamp on every machine,
        whatever order they came in.
        """
        seen = hashlib.sha256(f"format {FORMAT.latest}".encode())
        for row in self.query(
            f"SELECT {rows.DOCUMENT} FROM document ORDER BY sha256"  # noqa: S608 - our own column list
        ):
            seen.update(json.dumps(tuple(row)).encode())
        for row in self.query("SELECT id, version, sha256 FROM pack ORDER BY id"):
            seen.update(json.dumps(tuple(row)).encode())
        return seen.hexdigest()

    def check(self) -> list[str]:
        """Return what is wrong with the file; nothing when all is well."""
        with self._turn:
            return problems(self.connection)

    # embeddings

    def pending_texts(self, model_hash: str) -> list[tuple[str, str]]:
        """Return (hash, text) of every distinct text that this model has yet to embed.

        First the passages, in the order they came in, then their lines.
        """
        known = {
            row[0]
            for row in self.query(
                "SELECT text_hash FROM embedding WHERE model_hash = ?", (model_hash,)
            )
        }
        texts: dict[str, str] = {}
        for row in self.query(
            "SELECT text_hash, page, start, stop, text, section, lead FROM passage "
            "ORDER BY id"
        ):
            if row[0] not in known:
                texts.setdefault(row[0], embedded_text(Passage(*row[1:7])))
        for row in self.query(
            "SELECT line.text_hash, section, "
            "substr(text, line.start + 1, line.stop - line.start) FROM line "
            "JOIN passage ON passage.id = line.passage ORDER BY passage.id, line.start"
        ):
            if row[0] not in known:
                texts.setdefault(row[0], line_text(row[1], row[2]))
        return list(texts.items())

    def put_embeddings(
        self, model_hash: str, vectors: Sequence[tuple[str, NDArray[np.float32]]]
    ) -> None:
        """Store vectors by the hash of their text, in one transaction.

        A vector whose text stands nowhere any more is left out.

        Parameters
        ----------
        vectors : sequence of (text hash, vector of shape (dimension,))
        """
        values = [
            (model_hash, name, vector.astype("<f4").tobytes(), name, name)
            for name, vector in vectors
        ]
        with self.transaction() as connection:
            connection.executemany(
                "INSERT OR REPLACE INTO embedding SELECT ?, ?, ? "
                "WHERE EXISTS (SELECT 1 FROM passage WHERE text_hash = ?) "
                "OR EXISTS (SELECT 1 FROM line WHERE text_hash = ?)",
                values,
            )

    def vectors(
        self, model_hash: str, documents: Collection[int] | None = None
    ) -> tuple[NDArray[np.int64], NDArray[np.float32]]:
        """Return the embedded passages: their ids and vectors, in order of id.

        Parameters
        ----------
        documents : collection of int, optional
            Keys of the only documents wanted.

        Returns
        -------
        ids : array of shape (n,)
        vectors : array of shape (n, dimension)
            Of unit length; shape (0, 0) when there are none.
        """
        import numpy as np

        wanted = "SELECT id FROM document"
        if documents is not None:
            wanted = "SELECT value FROM json_each(?)"
        found = self.query(
            "SELECT passage.id, vector FROM passage CROSS JOIN embedding "  # noqa: S608 - one of two literals
            "ON embedding.text_hash = passage.text_hash AND model_hash = ? "
            f"WHERE document IN ({wanted}) ORDER BY passage.id",
            (model_hash,)
            if documents is None
            else (model_hash, json.dumps(sorted(documents))),
        )
        ids = np.array([row[0] for row in found], dtype=np.int64)
        joined = b"".join(row[1] for row in found)
        matrix = np.frombuffer(joined, dtype="<f4").reshape(
            len(found), -1 if found else 0
        )
        return ids, matrix.astype(np.float32, copy=False)

    def manifest(self) -> Manifest | None:
        """Return what the vectors were made with; None before the first."""
        noted = self.note("manifest")
        return Manifest(**json.loads(noted)) if noted else None

    def pin_manifest(self, manifest: Manifest, *, replace: bool = False) -> None:
        """Note what the vectors are made with.

        Raises
        ------
        LibraryError
            When the library is pinned to another one and `replace` is false.
        """
        with self.transaction():
            pinned = self.manifest()
            if pinned not in (None, manifest) and not replace:
                raise LibraryError(mismatch(pinned, manifest), EMBED_AGAIN)
            self.put_note("manifest", json.dumps(asdict(manifest), sort_keys=True))


EMBED_AGAIN = (
    "go back to that encoder, or embed all anew: faultleaf library embed --anew"
)


def mismatch(pinned: Manifest | None, offered: Manifest) -> str:
    """Say by name how two manifests differ; '' when they agree."""
    if pinned is None or pinned == offered:
        return ""
    ours, theirs = asdict(pinned), asdict(offered)
    differences = [
        f"{name} {ours[name]!r} in the library, {theirs[name]!r} in the encoder"
        for name in ours
        if ours[name] != theirs[name]
    ]
    return "the library's vectors were made by another encoder: " + "; ".join(
        differences
    )
