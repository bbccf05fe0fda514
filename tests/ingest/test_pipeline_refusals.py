"""What is not taken in: named with its reason, and nothing else is lost."""

from __future__ import annotations

from pathlib import Path

import pytest

from assistant.errors import InputError, PackError
from assistant.library.connection import FILE
from assistant.library.store import LibraryStore
from ingest.collect import Refusal
from ingest.pipeline import Options
from tests.ingest.sample_pdfs import canvas_pdf, encrypted_pdf
from tests.shelves import note, paths, take


def test_a_bad_file_is_noted_and_the_rest_goes_in(
    store: LibraryStore, folder: Path
) -> None:
    (folder / "zero.pdf").touch()
    encrypted_pdf(folder / "locked.pdf", "heron")
    canvas_pdf(folder / "good.pdf", [["The bus is 320 V."]])

    result = take(store, folder)

    assert "good.pdf" in result.added
    assert [(each.path, each.reason) for each in result.refused] == [
        ("zero.pdf", "zero.pdf: the file is empty"),
        ("locked.pdf", "locked.pdf: encrypted, it needs a password"),
    ]
    assert all(each.hint for each in result.refused)
    assert result.exit_code == 3


def test_a_password_opens_what_is_locked(store: LibraryStore, tmp_path: Path) -> None:
    path = encrypted_pdf(tmp_path / "locked.pdf", "heron")

    result = take(store, path, options=Options(password="heron"))  # noqa: S106 - a test's

    assert result.added == ["locked.pdf"]


def test_where_nothing_was_taken_in_the_code_is_an_error(
    store: LibraryStore, tmp_path: Path
) -> None:
    (tmp_path / "zero.pdf").touch()

    result = take(store, tmp_path / "zero.pdf")

    assert result.exit_code == 2
    assert store.documents() == ()


def test_an_empty_folder_is_a_clear_error(store: LibraryStore, tmp_path: Path) -> None:
    empty = tmp_path / "empty"
    empty.mkdir()

    with pytest.raises(InputError, match="empty: nothing in it to add") as error:
        take(store, empty)

    assert "PDF or text" in error.value.hint


def test_a_missing_path_is_a_clear_error(store: LibraryStore, tmp_path: Path) -> None:
    with pytest.raises(InputError, match=r"nowhere\.pdf: no such file or folder"):
        take(store, tmp_path / "nowhere.pdf")


def test_a_missing_path_beside_good_ones_does_not_stop_them(
    store: LibraryStore, folder: Path
) -> None:
    result = take(store, folder / "nowhere", folder / "shop.txt")

    assert result.added == ["shop.txt"]
    assert len(result.refused) == 1


def test_hidden_files_litter_and_the_library_itself_are_passed_over(
    folder: Path,
) -> None:
    note(folder / ".git" / "config", "x")
    note(folder / ".hidden.txt", "x")
    note(folder / "~$open.txt", "x")
    note(folder / "Thumbs.db", "x")
    with LibraryStore.open(folder / "library", create=True) as store:
        result = take(store, folder)

        assert (store.folder / FILE).exists()

    assert result.refused == []
    assert len(result.added) == 3


def test_a_folder_with_a_pack_is_handed_over_after_the_literature(
    store: LibraryStore, folder: Path
) -> None:
    note(folder / "rules" / "pack.yaml", "schema: 1")
    note(folder / "rules" / "signals.yaml", "[]")
    seen: list[tuple[str, int]] = []

    def add_pack(pack: Path) -> None:
        seen.append((pack.name, len(store.documents())))

    result = take(store, folder, options=Options(add_pack=add_pack))

    assert seen == [("rules", 3)]
    assert result.packs == ["rules"]
    assert not any("rules" in path for path in paths(store))


def test_a_pack_that_fails_is_refused_with_its_own_exit_code(
    store: LibraryStore, folder: Path
) -> None:
    pack = note(folder / "rules" / "pack.yaml", "schema: 1").parent

    def add_pack(_: Path) -> None:
        raise PackError(("pack.yaml:1: version is missing",))

    result = take(store, pack, options=Options(add_pack=add_pack))

    assert result.refused[0].reason == "pack.yaml:1: version is missing"
    assert result.exit_code == PackError.exit_code


def test_without_a_taker_a_pack_is_refused(store: LibraryStore, folder: Path) -> None:
    note(folder / "rules" / "pack.yaml", "schema: 1")

    result = take(store, folder)

    assert "a rule pack, not literature" in result.refused[0].reason


def test_a_refusal_names_the_file_below_the_added_folder() -> None:
    error = InputError("cut.pdf: damaged PDF", "fetch the document again")

    assert Refusal.of("sub/cut.pdf", error).reason == "sub/cut.pdf: damaged PDF"
    assert Refusal.of("cut.pdf", error).reason == "cut.pdf: damaged PDF"
