"""The store: whole documents in and out, one truth, clear refusals."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest

from assistant.errors import InputError, LibraryError
from assistant.library.connection import FILE
from assistant.library.store import LibraryStore
from assistant.library.texts import embedded_text, text_hash
from assistant.library.types import PageStatus, Passage, TableRow
from assistant.record import Scope
from tests.fakes import HashEncoder
from tests.literature import document, page, put, whole


@pytest.fixture
def store(tmp_path: Path) -> Iterator[LibraryStore]:
    with LibraryStore.open(tmp_path / "library", create=True) as opened:
        yield opened


def test_a_document_comes_back_as_it_went_in(store: LibraryStore) -> None:
    about = document(
        "a/manual.pdf",
        title="Service manual",
        supersedes=("TB-1",),
        applies_to=(Scope(models=("KT*",), voltage="230 V"),),
    )
    first = page(1, "Four flashes: discharge sensor")
    second = page(2, "", PageStatus.PICTURE)
    row = TableRow(1, 1, 1, ("4", "discharge sensor"), ("Flashes", "Meaning"))
    part = Passage(1, 0, 12, "Four flashes", "Faults", "Flashes | Meaning")

    store.add_document(about, [first, second], [part], [row])

    assert store.documents() == (about,)
    assert store.pages(about.sha256) == (first, second)
    assert store.page(about.sha256, 2) == second
    assert store.page_text(about.sha256, 3) is None
    assert store.table_rows(about.sha256) == (row,)
    (kept,) = store.passages(about.sha256)
    assert kept.passage == part
    assert store.passage(kept.id) == kept
    assert store.check() == []


def test_a_passage_that_is_not_on_its_page_is_refused(store: LibraryStore) -> None:
    stray = Passage(1, 0, 4, "Fore", "", "")

    with pytest.raises(InputError, match="not what stands on that page"):
        store.add_document(document("a.pdf"), [page(1, "Four flashes")], [stray])

    assert store.counts()["documents"] == 0


def test_a_removed_document_vanishes_everywhere(store: LibraryStore) -> None:
    encoder = HashEncoder()
    put(store, document("a.pdf"), "E4 sensor", "shared words")
    put(store, document("b.pdf"), "shared words")
    for name, text in store.pending_texts(encoder.model_hash):
        store.put_embeddings(encoder.model_hash, [(name, encoder.embed_query(text))])

    assert store.remove_document(document("a.pdf").sha256)

    counts = store.counts()
    assert counts["documents"] == counts["passages"] == counts["embeddings"] == 1
    assert counts["codes"] == 0
    assert store.query("SELECT rowid FROM words WHERE words MATCH 'sensor'") == []
    assert not store.remove_document(document("a.pdf").sha256)
    assert store.check() == []


def test_a_document_added_again_keeps_its_embeddings(store: LibraryStore) -> None:
    encoder = HashEncoder()
    put(store, document("a.pdf"), "one", "two")
    pending = store.pending_texts(encoder.model_hash)
    vectors = encoder.embed_passages([text for _, text in pending])
    store.put_embeddings(
        encoder.model_hash,
        [(name, vector) for (name, _), vector in zip(pending, vectors, strict=True)],
    )

    put(store, document("a.pdf"), "two", "three")

    assert [text for _, text in store.pending_texts(encoder.model_hash)] == ["three"]
    assert store.counts()["embeddings"] == 1
    assert store.check() == []


def test_a_changed_file_takes_the_place_of_its_earlier_state(
    store: LibraryStore,
) -> None:
    old, new = document("old.pdf"), document("new.pdf")
    put(store, old, "old words")

    store.add_document(
        new, [page(1, "new words")], [whole(1, "new words")], replaces=old.sha256
    )

    assert store.documents() == (new,)


def test_the_same_text_is_embedded_once(store: LibraryStore) -> None:
    put(store, document("a.pdf"), "same words", "same words")
    put(store, document("b.pdf"), "same words")
    encoder = HashEncoder()
    ((name, text),) = store.pending_texts(encoder.model_hash)

    store.put_embeddings(encoder.model_hash, [(name, encoder.embed_query(text))])

    ids, vectors = store.vectors(encoder.model_hash)
    assert text == "same words"
    assert ids.shape == (3,)
    assert np.array_equal(vectors[0], vectors[2])


def test_a_vector_of_a_text_that_has_gone_is_left_out(store: LibraryStore) -> None:
    store.put_embeddings("m", [("0" * 64, np.ones(4, dtype=np.float32))])

    ids, vectors = store.vectors("m")

    assert store.counts()["embeddings"] == 0
    assert ids.shape == (0,)
    assert vectors.shape == (0, 0)


def test_documents_are_named_by_path_name_title_or_start_of_hash(
    store: LibraryStore,
) -> None:
    about = document("lake/units/kt.pdf", title="KT service manual")
    put(store, about, "words")
    put(store, document("other/kt2.pdf"), "words")

    for name in (about.path, "kt.pdf", "kt", "kt SERVICE manual", about.document_id):
        assert store.document(name) == about
    assert store.document("nothing") is None


def test_a_name_that_fits_several_documents_is_refused(store: LibraryStore) -> None:
    put(store, document("a/kt.pdf"), "words")
    put(store, document("b/kt.pdf"), "words")

    with pytest.raises(InputError, match="fits 2 documents"):
        store.document("kt.pdf")


def test_a_renamed_file_keeps_its_passages(store: LibraryStore) -> None:
    about = document("a.pdf", title="A")
    put(store, about, "words")
    before = store.passages(about.sha256)

    store.rename(about.sha256, "b.pdf")

    assert store.documents() == (replace(about, path="b.pdf"),)
    assert store.passages(about.sha256) == before


def test_what_is_said_of_a_document_can_change(store: LibraryStore) -> None:
    about = document("a.pdf", title="A")
    put(store, about, "words")
    changed = replace(about, title="Bulletin", revision="B")

    store.update_document(changed)

    assert store.documents() == (changed,)
    assert store.query("SELECT rowid FROM words WHERE words MATCH 'title:bulletin'")
    with pytest.raises(LibraryError, match="not in the library"):
        store.update_document(document("b.pdf"))


def test_packs_are_kept_by_id(store: LibraryStore) -> None:
    store.put_pack("kt", "1", "aa", "{}")
    store.put_pack("common", "1", "bb", "{}")
    store.put_pack("kt", "2", "cc", '{"a":1}')

    assert [(pack.id, pack.version) for pack in store.packs()] == [
        ("common", "1"),
        ("kt", "2"),
    ]
    assert store.remove_pack("kt")
    assert not store.remove_pack("kt")


def test_the_stamp_follows_content_and_not_the_order_of_adding(tmp_path: Path) -> None:
    stamps = []
    for nth, names in enumerate((["a.pdf", "b.pdf"], ["b.pdf", "a.pdf"])):
        with LibraryStore.open(tmp_path / str(nth), create=True) as store:
            empty = store.stamp()
            for name in names:
                put(store, document(name), "words")
            stamps.append(store.stamp())
            store.put_pack("kt", "1", "aa", "{}")
            assert len({empty, stamps[-1], store.stamp()}) == 3

    assert stamps[0] == stamps[1]


def test_a_transaction_that_fails_leaves_nothing(store: LibraryStore) -> None:
    def add_and_fail() -> None:
        with store.transaction():
            put(store, document("a.pdf"), "words")
            raise RuntimeError

    with pytest.raises(RuntimeError):
        add_and_fail()

    assert store.counts()["passages"] == 0


def test_embedded_text_has_the_heading_and_not_the_title() -> None:
    passage = whole(1, "4 | sensor", section="Faults", lead="Flashes | Meaning")

    assert embedded_text(passage) == "Faults\nFlashes | Meaning\n4 | sensor"
    # sha256 of the empty string, FIPS 180-4 example value, from memory
    assert text_hash("").startswith("e3b0c44298fc1c149afbf4c8996fb924")


def test_a_manifest_that_differs_is_refused_by_name(store: LibraryStore) -> None:
    store.pin_manifest(HashEncoder(model="first").manifest)

    with pytest.raises(LibraryError, match="'first' in the library, 'second'"):
        store.pin_manifest(HashEncoder(model="second").manifest)
    store.pin_manifest(HashEncoder(model="second").manifest, replace=True)

    assert store.manifest() == HashEncoder(model="second").manifest


def test_check_names_what_is_out_of_step(store: LibraryStore) -> None:
    put(store, document("a.pdf"), "E4 sensor", "more")
    with store.transaction() as connection:
        connection.execute("DELETE FROM words WHERE rowid = 1")
        connection.execute("DELETE FROM code")
        connection.execute("UPDATE passage SET text = 'other' WHERE id = 2")

    found = " / ".join(store.check())

    assert "1 passages cannot be found by their words" in found
    assert "1 passages are not what stands on their page" in found
    assert "passages have other codes" in found


def test_a_damaged_file_is_said_to_be_damaged(tmp_path: Path) -> None:
    with LibraryStore.open(tmp_path, create=True) as store:
        put(store, document("a.pdf"), *["words " * 200] * 20)
    file = tmp_path / FILE
    file.write_bytes(b"not a database at all" * 500)

    for read_only in (True, False):
        with pytest.raises(LibraryError, match="damaged") as raised:
            LibraryStore.open(tmp_path, read_only=read_only)
        assert "faultleaf add" in raised.value.hint


def test_a_foreign_sqlite_file_is_refused(tmp_path: Path) -> None:
    other = sqlite3.connect(tmp_path / FILE)
    other.execute("PRAGMA user_version = 1")
    other.execute("CREATE TABLE t (x)")
    other.commit()
    other.close()

    with pytest.raises(LibraryError, match="not a faultleaf library"):
        LibraryStore.open(tmp_path)
