"""Adds a folder and embeds it, noting every embedded text: run to be killed.

python kill_target.py LIBRARY FOLDER NOTES
"""

from __future__ import annotations

import hashlib
import os
import sys
from collections.abc import Sequence
from pathlib import Path

import numpy as np
from numpy.typing import NDArray

from assistant.library.encoder import Encoder
from assistant.library.store import LibraryStore
from assistant.library.texts import text_hash
from ingest.embedding import embed_missing
from ingest.pipeline import add
from tests.exported import real_encoder
from tests.fakes import HashEncoder


class QuickEncoder(HashEncoder):
    """The fake with directions that are quicker to make."""

    def __init__(self) -> None:
        super().__init__(dimension=8)

    def _direction(self, word: str) -> NDArray[np.float64]:
        digest = hashlib.sha256(word.encode()).digest()[: self.dimension]
        return np.frombuffer(digest, dtype=np.uint8).astype(np.float64) - 127.5


class NotingEncoder:
    """Writes down what it embeds before the library can know of it."""

    def __init__(self, encoder: Encoder, notes: Path) -> None:
        self.manifest = encoder.manifest
        self.model_hash = encoder.model_hash
        self.dimension = encoder.dimension
        self.count_tokens = encoder.count_tokens
        self.embed_query = encoder.embed_query
        self._encoder = encoder
        self._notes = os.open(notes, os.O_WRONLY | os.O_APPEND | os.O_CREAT)

    def embed_passages(self, texts: Sequence[str]) -> NDArray[np.float32]:
        """Note each text's hash, then embed."""
        lines = "".join(text_hash(text) + "\n" for text in texts)
        os.write(self._notes, lines.encode())
        return self._encoder.embed_passages(texts)


def main(library: Path, folder: Path, notes: Path, *, real: bool) -> None:
    """Add everything, embed everything, say each step."""
    encoder = NotingEncoder(real_encoder() if real else QuickEncoder(), notes)
    with LibraryStore.open(library, create=True) as store:
        os.write(1, b"started\n")
        for _ in add([folder], store, count=encoder.count_tokens):
            os.write(1, b"added\n")
        for _ in embed_missing(store, encoder):
            os.write(1, b"embedded\n")
    os.write(1, b"done\n")


if __name__ == "__main__":
    main(*map(Path, sys.argv[1:4]), real=len(sys.argv) > 1 + 3)
