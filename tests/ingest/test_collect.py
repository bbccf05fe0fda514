"""What is found under the paths that a person names."""

from __future__ import annotations

import os
import zipfile
from pathlib import Path

import pytest

from assistant.library.store import LibraryStore
from ingest.collect import collect
from ingest.plan import Action, plan
from tests.shelves import note, paths, take, text

PAGE = "<html><h1>Lamps</h1><p>LD2 flashes four times.</p></html>"


def archive(path: Path, files: dict[str, str]) -> Path:
    with zipfile.ZipFile(path, "w") as made:
        for name, content in files.items():
            made.writestr(name, content)
    return path


def test_a_link_that_leads_round_in_a_circle_ends(tmp_path: Path) -> None:
    note(tmp_path / "shelf" / "a.txt", "one")
    (tmp_path / "shelf" / "round").symlink_to(tmp_path / "shelf")
    (tmp_path / "shelf" / "self").symlink_to(tmp_path / "shelf" / "self")

    with collect([tmp_path / "shelf"]) as found:
        assert [each.path for each in found.files] == ["a.txt", "self"]
        (refused,) = found.refused

    assert "round: a link to a folder, not followed" in refused.reason


def test_a_link_that_leads_nowhere_is_refused_by_name(
    store: LibraryStore, tmp_path: Path
) -> None:
    note(tmp_path / "shelf" / "a.txt", "one")
    (tmp_path / "shelf" / "self").symlink_to(tmp_path / "shelf" / "self")

    result = take(store, tmp_path / "shelf")

    assert result.added == ["a.txt"]
    assert [each.path for each in result.refused] == ["self"]


def test_hidden_files_are_passed_over(tmp_path: Path) -> None:
    for name in (".hidden.txt", ".git/x.txt", "~$open.txt", "Thumbs.db", "a.txt"):
        note(tmp_path / name, "text")

    with collect([tmp_path]) as found:
        assert [each.path for each in found.files] == ["a.txt"]


@pytest.mark.skipif(os.geteuid() == 0, reason="everything is readable for root")
def test_a_folder_that_cannot_be_opened_is_said(tmp_path: Path) -> None:
    note(tmp_path / "a.txt", "one")
    note(tmp_path / "locked" / "b.txt", "two")
    (tmp_path / "locked").chmod(0)

    try:
        with collect([tmp_path]) as found:
            assert [each.path for each in found.files] == ["a.txt"]
            assert "cannot be opened" in found.refused[0].reason
    finally:
        (tmp_path / "locked").chmod(0o700)


@pytest.mark.skipif(os.name == "nt", reason="names are text there")
def test_a_name_of_odd_bytes_is_shown_and_stored(
    store: LibraryStore, tmp_path: Path
) -> None:
    odd = os.fsdecode(os.fsencode(tmp_path) + b"/caf\xe9.txt")
    Path(odd).write_text("LD2 flashes four times.", encoding="utf-8")

    take(store, tmp_path)

    assert paths(store) == ["caf\ufffd.txt"]


def test_a_pipe_is_refused_and_not_waited_for(
    store: LibraryStore, tmp_path: Path
) -> None:
    note(tmp_path / "shelf" / "a.txt", "one")
    os.mkfifo(tmp_path / "shelf" / "pipe")

    result = take(store, tmp_path / "shelf")

    assert [each.reason for each in result.refused] == ["pipe: not a regular file"]


def test_files_of_an_archive_become_documents_below_it(
    store: LibraryStore, tmp_path: Path
) -> None:
    zipped = archive(
        tmp_path / "shelf.zip",
        {"larch/manual.pdf": PAGE, "codes.csv": "code,meaning\nE4,low\nE5,high\n"},
    )

    result = take(store, zipped)

    assert paths(store) == ["shelf.zip/codes.csv", "shelf.zip/larch/manual.pdf"]
    assert result.warnings == [
        "shelf.zip/larch/manual.pdf: named .pdf, but it is a web page and is read as "
        "that"
    ]
    assert "LD2 flashes four times." in text(store)


def test_an_archive_added_again_changes_nothing(
    store: LibraryStore, tmp_path: Path
) -> None:
    zipped = archive(tmp_path / "shelf.zip", {"a.txt": "one", "b.txt": "two"})
    take(store, zipped)

    again = take(store, zipped)

    assert again.unchanged == ["shelf.zip/a.txt", "shelf.zip/b.txt"]
    assert not again.added


def test_a_file_changed_inside_an_archive_is_replaced(
    store: LibraryStore, tmp_path: Path
) -> None:
    zipped = archive(tmp_path / "shelf.zip", {"a.txt": "one", "b.txt": "two"})
    take(store, zipped)
    archive(zipped, {"a.txt": "one", "b.txt": "three"})

    again = take(store, zipped)

    assert again.replaced == ["shelf.zip/b.txt"]
    assert "three" in text(store)
    assert "two" not in text(store)


def test_the_same_content_beside_its_archive_is_one_document(
    store: LibraryStore, tmp_path: Path
) -> None:
    note(tmp_path / "shelf" / "a.txt", "one")
    archive(tmp_path / "shelf" / "b.zip", {"a.txt": "one"})

    result = take(store, tmp_path / "shelf")

    assert result.added == ["a.txt"]
    assert result.duplicates == ["b.zip/a.txt: the same content as a.txt"]


def test_faults_inside_an_archive_are_said_by_the_names_inside(
    store: LibraryStore, tmp_path: Path
) -> None:
    zipped = archive(tmp_path / "s.zip", {"empty.pdf": "", "a.txt": "one", "../x": "y"})

    result = take(store, zipped)

    assert result.added == ["s.zip/a.txt"]
    assert {each.path: each.reason for each in result.refused} == {
        "s.zip/../x": "s.zip/../x: its name leads out of the archive",
        "s.zip/empty.pdf": "s.zip/empty.pdf: the file is empty",
    }


def test_an_archive_without_documents_is_said(
    store: LibraryStore, tmp_path: Path
) -> None:
    note(tmp_path / "shelf" / "a.txt", "one")
    archive(tmp_path / "shelf" / "none.zip", {"d/": ""})

    result = take(store, tmp_path / "shelf")

    assert [each.reason for each in result.refused] == [
        "none.zip: an archive without a document in it"
    ]


def test_copies_are_gone_after_collecting(tmp_path: Path) -> None:
    zipped = archive(tmp_path / "shelf.zip", {"a.txt": "one"})

    with collect([zipped]) as found:
        copy = found.files[0].file
        assert copy.read_text(encoding="utf-8") == "one"

    assert not copy.exists()


def test_the_plan_names_what_a_misnamed_file_is(
    store: LibraryStore, tmp_path: Path
) -> None:
    page = note(tmp_path / "manual.pdf", PAGE)

    with collect([page]) as found:
        (step,) = plan(found, store)

    assert step.action is Action.ADD
    assert step.note == "named .pdf, but it is a web page and is read as that"
