"""Embedding what is missing: once a text, committed by the batch, resumable."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from assistant.errors import LibraryError
from assistant.library.store import LibraryStore
from ingest.embedding import BATCH, embed_missing
from tests.fakes import HashEncoder
from tests.literature import document, put


@pytest.fixture
def store(tmp_path: Path) -> Iterator[LibraryStore]:
    with LibraryStore.open(tmp_path, create=True) as opened:
        put(opened, document("a.pdf"), *[f"text {n}" for n in range(150)])
        put(opened, document("b.pdf"), "text 1", "text 2")
        yield opened


def test_every_text_is_embedded_once(store: LibraryStore) -> None:
    encoder = HashEncoder()

    told = list(embed_missing(store, encoder))

    assert [each.done for each in told] == [64, 128, 150]
    assert told[-1].finished
    assert encoder.embedded == 150
    assert store.counts()["embeddings"] == 150
    assert list(embed_missing(store, encoder)) == []
    assert encoder.embedded == 150


def test_work_that_was_stopped_goes_on_where_it_was(store: LibraryStore) -> None:
    encoder = HashEncoder()
    next(embed_missing(store, encoder))
    assert store.counts()["embeddings"] == BATCH

    list(embed_missing(store, encoder))

    assert encoder.embedded == 150
    assert store.counts()["embeddings"] == 150


def test_another_encoder_is_refused_until_it_is_asked_for(store: LibraryStore) -> None:
    list(embed_missing(store, HashEncoder()))
    other = HashEncoder(dimension=16)

    with pytest.raises(LibraryError, match="dimension 32 in the library"):
        list(embed_missing(store, other))
    assert other.embedded == 0
    list(embed_missing(store, other, replace=True))

    assert store.manifest() == other.manifest
    assert store.pending_texts(other.model_hash) == []
