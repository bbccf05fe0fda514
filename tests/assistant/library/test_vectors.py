"""Nearest passages: exact when few, FAISS when many, its file never trusted blindly."""

from __future__ import annotations

import itertools
import os
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from assistant.errors import LibraryError
from assistant.library import vectors
from assistant.library.store import LibraryStore
from assistant.library.vectors import CACHE, VectorIndex
from ingest.embedding import embed_missing
from tests.fakes import HashEncoder
from tests.literature import document, put

TEXTS = [f"word{n} word{n % 7} common" for n in range(60)]


@pytest.fixture
def store(tmp_path: Path) -> Iterator[LibraryStore]:
    with LibraryStore.open(tmp_path, create=True) as opened:
        put(opened, document("a.pdf"), *TEXTS)
        put(opened, document("b.pdf"), *TEXTS[:3], "quite another thing")
        list(embed_missing(opened, HashEncoder()))
        yield opened


@pytest.fixture
def query() -> NDArray[np.float32]:
    return HashEncoder().embed_query("word5 common")


def index(store: LibraryStore) -> VectorIndex:
    encoder = HashEncoder()
    return VectorIndex(store, encoder.model_hash, encoder.dimension)


def test_few_rows_are_searched_exactly(
    store: LibraryStore, query: NDArray[np.float32]
) -> None:
    found = index(store).nearest(query, [1, 2], 64)

    ids, matrix = store.vectors(HashEncoder().model_hash)
    cosines = dict(zip(ids.tolist(), (matrix @ query).tolist(), strict=True))
    assert len(found) == 64
    assert [value for _, value in found] == sorted(
        (value for _, value in found), reverse=True
    )
    for key, value in found:
        assert value == pytest.approx(cosines[key], abs=1e-5)
    assert not (store.folder / CACHE).exists()


def test_equal_cosines_come_by_id(
    store: LibraryStore, query: NDArray[np.float32]
) -> None:
    found = index(store).nearest(query, [1, 2], 64)

    for (one, first), (other, second) in itertools.pairwise(found):
        assert (-first, one) < (-second, other)


def test_many_rows_give_the_same_through_faiss(
    store: LibraryStore, query: NDArray[np.float32], monkeypatch: pytest.MonkeyPatch
) -> None:
    exact = index(store).nearest(query, [1, 2], 10)
    monkeypatch.setattr(vectors, "EXACT_ROWS", 1)

    assert index(store).nearest(query, [1, 2], 10) == exact
    assert (store.folder / CACHE).exists()
    of_second = index(store).nearest(query, [2], 10)
    second = {each.id for each in store.passages(document("b.pdf").sha256)}
    assert {key for key, _ in of_second} == second


@pytest.mark.parametrize("place", [30, 400, -1])
def test_a_damaged_cache_is_rebuilt(
    store: LibraryStore,
    query: NDArray[np.float32],
    monkeypatch: pytest.MonkeyPatch,
    place: int,
) -> None:
    monkeypatch.setattr(vectors, "EXACT_ROWS", 1)
    exact = index(store).nearest(query, [1, 2], 10)
    whole = (store.folder / CACHE).read_bytes()
    damaged = bytearray(whole)
    damaged[place] ^= 1
    (store.folder / CACHE).write_bytes(bytes(damaged))

    assert index(store).nearest(query, [1, 2], 10) == exact
    assert (store.folder / CACHE).read_bytes() == whole


def test_a_stale_cache_is_rebuilt(
    store: LibraryStore, query: NDArray[np.float32], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(vectors, "EXACT_ROWS", 1)
    searched = index(store)
    searched.nearest(query, [1, 2], 5)
    put(store, document("c.pdf"), "word5 common")
    list(embed_missing(store, HashEncoder()))

    best, cosine = searched.nearest(query, [1, 2, 3], 1)[0]

    assert best == store.passages(document("c.pdf").sha256)[0].id
    assert cosine == pytest.approx(1, abs=1e-5)


def test_a_cache_that_cannot_be_written_is_kept_in_memory(
    store: LibraryStore, query: NDArray[np.float32], monkeypatch: pytest.MonkeyPatch
) -> None:
    def refuse(*_: object) -> None:
        raise PermissionError

    monkeypatch.setattr(vectors, "EXACT_ROWS", 1)
    monkeypatch.setattr(vectors, "write_whole", refuse)

    assert len(index(store).nearest(query, [1, 2], 5)) == 5
    assert not (store.folder / CACHE).exists()


def test_nothing_embedded_gives_nothing(
    store: LibraryStore, query: NDArray[np.float32]
) -> None:
    other = VectorIndex(store, "another model", 32)

    assert other.nearest(query, [1, 2], 5) == []
    assert other.cosines(query[None], [1, 2]).tolist() == [[0.0, 0.0]]
    assert other.line_cosines(query[None], [1, 2]).tolist() == [[-1.0, -1.0]]


def test_vectors_of_another_length_are_refused(store: LibraryStore) -> None:
    with pytest.raises(LibraryError, match="have 32 numbers"):
        index(store).nearest(np.ones(8, dtype=np.float32), [1], 5)


def test_writing_a_file_whole_leaves_the_old_one_when_it_fails(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    target = tmp_path / "file"
    vectors.write_whole(target, b"old")

    def fail(*_: object) -> None:
        raise OSError("the disk is full")

    monkeypatch.setattr(os, "fsync", fail)
    with pytest.raises(OSError, match="full"):
        vectors.write_whole(target, b"new")

    assert target.read_bytes() == b"old"
    assert list(tmp_path.iterdir()) == [target]


def test_a_small_library_is_searched_without_faiss_or_torch() -> None:
    script = (
        "import sys, assistant.library.search, assistant.library.encoder, "
        "ingest.embedding; "
        "print([name for name in ('faiss', 'torch', 'onnxruntime', 'tokenizers', "
        "'sentence_transformers') if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script],
        check=True,
        capture_output=True,
        text=True,
        cwd=Path(__file__).parents[3],
    )

    assert done.stdout.strip() == "[]"
