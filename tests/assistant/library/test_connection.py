"""Who may open the library, and what is left behind."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

from assistant.errors import LibraryError
from assistant.library import connection
from assistant.library.connection import FILE
from assistant.library.store import LibraryStore
from tests.literature import document, put


def test_no_library_names_the_command_that_makes_one(tmp_path: Path) -> None:
    for read_only in (True, False):
        with pytest.raises(LibraryError, match="there is no library") as raised:
            LibraryStore.open(tmp_path / "none", read_only=read_only)
        assert raised.value.hint == "faultleaf add PATH…"
        assert raised.value.exit_code == 4


def test_a_file_in_place_of_the_folder_is_refused(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("x")

    with pytest.raises(LibraryError, match="cannot be made"):
        LibraryStore.open(tmp_path / "file", create=True)
    with pytest.raises(LibraryError):
        LibraryStore.open(tmp_path / "file", read_only=True)


def test_a_closed_library_is_one_plain_file(tmp_path: Path) -> None:
    with LibraryStore.open(tmp_path, create=True) as store:
        put(store, document("a.pdf"), "words")

    assert [each.name for each in tmp_path.iterdir()] == [FILE]


def test_readers_go_on_while_one_writes(tmp_path: Path) -> None:
    with LibraryStore.open(tmp_path, create=True) as writer:
        put(writer, document("a.pdf"), "words")
        with LibraryStore.open(tmp_path, read_only=True) as reader:
            with writer.transaction():
                put(writer, document("b.pdf"), "words")
                assert reader.counts()["documents"] == 1
            assert reader.counts()["documents"] == 2


def test_a_reader_cannot_write(tmp_path: Path) -> None:
    LibraryStore.open(tmp_path, create=True).close()

    with (
        LibraryStore.open(tmp_path, read_only=True) as reader,
        pytest.raises(LibraryError, match="cannot be written"),
    ):
        put(reader, document("a.pdf"), "words")


def test_a_second_writer_that_waits_in_vain_is_told_why(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(connection, "BUSY_SECONDS", 0.05)
    with (
        LibraryStore.open(tmp_path, create=True) as first,
        LibraryStore.open(tmp_path) as second,
    ):
        with (
            first.transaction(),
            pytest.raises(LibraryError, match="another process is writing"),
        ):
            put(second, document("a.pdf"), "words")
        put(second, document("a.pdf"), "words")
        assert first.counts()["documents"] == 1


def test_a_folder_that_cannot_be_written_can_be_read(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    with LibraryStore.open(tmp_path, create=True) as store:
        put(store, document("a.pdf"), "words")
    monkeypatch.setattr(os, "access", lambda *_: False)

    with LibraryStore.open(tmp_path, read_only=True) as reader:
        assert reader.counts()["documents"] == 1

    assert [each.name for each in tmp_path.iterdir()] == [FILE]


def test_an_unfinished_write_in_such_a_folder_is_refused(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    LibraryStore.open(tmp_path, create=True).close()
    (tmp_path / f"{FILE}-wal").write_bytes(b"x")
    monkeypatch.setattr(os, "access", lambda *_: False)

    with pytest.raises(LibraryError, match="unfinished write"):
        LibraryStore.open(tmp_path, read_only=True)


def test_a_writer_killed_inside_a_transaction_loses_only_that(tmp_path: Path) -> None:
    script = f"""
import os, signal
from pathlib import Path
from tests.literature import document, put
from assistant.library.store import LibraryStore
store = LibraryStore.open(Path({str(tmp_path)!r}), create=True)
put(store, document("a.pdf"), "first words")
with store.transaction():
    put(store, document("b.pdf"), "second words")
    os.kill(os.getpid(), signal.SIGKILL)
"""
    path = str(Path(__file__).parents[3])

    killed = subprocess.run(
        [sys.executable, "-c", script],
        check=False,
        env={**os.environ, "PYTHONPATH": path},
    )

    assert killed.returncode == -9
    with LibraryStore.open(tmp_path, read_only=True) as store:
        assert [each.path for each in store.documents()] == ["a.pdf"]
    with LibraryStore.open(tmp_path) as store:
        assert store.check() == []
