"""Files that are gone from a folder: told, taken out only when asked, never others."""

from __future__ import annotations

from pathlib import Path

import numpy as np

from assistant.library.store import LibraryStore
from ingest.collect import collect
from ingest.embedding import embed_missing
from ingest.pipeline import Options
from ingest.plan import Action, plan
from tests.fakes import HashEncoder
from tests.shelves import note, paths, take, text

PRUNE = Options(prune=True)


def test_a_gone_file_is_told_and_stays(store: LibraryStore, folder: Path) -> None:
    take(store, folder)
    (folder / "shop.txt").unlink()

    result = take(store, folder)

    assert result.gone == ["shop.txt"]
    assert "it still answers" in result.warnings[0]
    assert result.exit_code == 3
    assert "shop.txt" in paths(store)


def test_a_pruned_document_vanishes_everywhere(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    list(embed_missing(store, HashEncoder()))
    (folder / "shop.txt").unlink()

    result = take(store, folder, options=PRUNE)

    assert result.pruned == ["shop.txt"]
    assert result.exit_code == 0
    assert "supply dips" not in text(store)
    assert store.query("SELECT rowid FROM words WHERE words MATCH 'boathouse'") == []
    counts = store.counts()
    assert counts["documents"] == 2
    ids, vectors = store.vectors(HashEncoder().model_hash)
    assert ids.shape == (counts["passages"],)
    assert np.isfinite(vectors).all()
    assert store.check() == []


def test_pruning_one_folder_never_purges_another(
    store: LibraryStore, folder: Path, tmp_path: Path
) -> None:
    elsewhere = note(tmp_path / "elsewhere" / "shop.txt", "Yard notes\nOther words.")
    take(store, folder)
    take(store, elsewhere)
    (folder / "shop.txt").unlink()
    elsewhere.unlink()

    result = take(store, folder / "larch", options=PRUNE)

    assert result.pruned == []
    assert len(paths(store)) == 4


def test_a_moved_file_is_not_gone(store: LibraryStore, folder: Path) -> None:
    take(store, folder)
    (folder / "shop.txt").rename(folder / "larch" / "boathouse.txt")

    result = take(store, folder, options=PRUNE)

    assert result.renamed == ["larch/boathouse.txt"]
    assert result.pruned == result.gone == []


def test_a_file_that_cannot_be_read_any_more_is_not_gone(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    (folder / "shop.txt").write_bytes(b"")

    result = take(store, folder, options=PRUNE)

    assert result.pruned == []
    assert [each.path for each in result.refused] == ["shop.txt"]
    assert "shop.txt" in paths(store)


def test_a_file_overwritten_with_another_known_text_is_gone(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    (folder / "shop.txt").write_bytes((folder / "larch" / "manual.txt").read_bytes())

    result = take(store, folder, options=PRUNE)

    assert result.pruned == ["shop.txt"]
    assert len(paths(store)) == 2


def test_a_plan_says_what_is_gone_and_writes_nothing(
    store: LibraryStore, folder: Path
) -> None:
    take(store, folder)
    (folder / "shop.txt").unlink()
    before = store.stamp()

    with collect([folder]) as found:
        told = plan(found, store, [folder])
        asked = plan(found, store, [folder], prune=True)

    assert [s.path for s in told if s.action is Action.GONE] == ["shop.txt"]
    assert [s.path for s in asked if s.action is Action.PRUNE] == ["shop.txt"]
    assert store.stamp() == before


def test_an_archive_that_cannot_be_opened_loses_nothing(
    store: LibraryStore, folder: Path
) -> None:
    import zipfile

    archive = folder / "bulletins.zip"
    with zipfile.ZipFile(archive, "w") as made:
        made.writestr("one.txt", "Bulletin one\nThe board was changed.")
        made.writestr("two.txt", "Bulletin two\nThe fan was changed.")
    take(store, folder)
    whole = archive.read_bytes()
    archive.write_bytes(whole[: len(whole) // 2])

    broken = take(store, folder, options=PRUNE)

    assert broken.pruned == []

    with zipfile.ZipFile(archive, "w") as made:
        made.writestr("two.txt", "Bulletin two\nThe fan was changed.")

    assert take(store, folder, options=PRUNE).pruned == ["bulletins.zip/one.txt"]


def test_the_same_folder_by_another_way_is_the_same(
    store: LibraryStore, folder: Path, tmp_path: Path
) -> None:
    take(store, folder)
    (folder / "shop.txt").unlink()
    other = tmp_path / "shelf"
    other.symlink_to(folder)

    assert take(store, other).gone == ["shop.txt"]
