"""An open library file: transactions, reading, and notes about itself."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from pathlib import Path
from types import TracebackType
from typing import Any, Self

from assistant.library.connection import (
    FILE,
    close,
    connect_reader,
    connect_writer,
    explained,
)


class OpenLibrary:
    """An open library file. Use as a context manager, or call `close`.

    One object may be used from several threads; calls take turns.
    """

    def __init__(
        self, connection: sqlite3.Connection, folder: Path, *, read_only: bool
    ) -> None:
        self.folder = folder
        self.read_only = read_only
        self.connection = connection
        self._turn = threading.RLock()

    @classmethod
    def open(
        cls, folder: Path, *, create: bool = False, read_only: bool = False
    ) -> Self:
        """Open the library of a folder.

        Parameters
        ----------
        folder : Path
            Where `library.sqlite` lies.
        create : bool
            Make the folder and an empty library when there is none.
        read_only : bool
            Never write; works from a folder that cannot be written.

        Raises
        ------
        LibraryError
            No library, damaged, locked, or written by a later faultleaf.
        """
        if read_only:
            return cls(connect_reader(folder), folder, read_only=True)
        connection = connect_writer(folder, create=create)
        return cls(connection, folder, read_only=False)

    def close(self) -> None:
        """Close the file; a second call does nothing."""
        close(self.connection)

    def __enter__(self) -> Self:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    @contextmanager
    def transaction(self) -> Iterator[sqlite3.Connection]:
        """Make everything inside happen together or not at all; may be nested."""
        with self._turn, explained(self.folder / FILE):
            if self._inside():
                yield self.connection
                return
            self.connection.execute("BEGIN IMMEDIATE")
            try:
                yield self.connection
                self.connection.execute("COMMIT")
            except BaseException:
                # SQLite has rolled back by itself after a full disk.
                if self._inside():
                    self.connection.execute("ROLLBACK")
                raise

    def _inside(self) -> bool:
        return self.connection.in_transaction

    def query(self, statement: str, values: Sequence[object] = ()) -> list[Any]:
        """Return every row of a reading statement."""
        with self._turn, explained(self.folder / FILE):
            return self.connection.execute(statement, values).fetchall()

    def change_mark(self) -> str:
        """Return a mark that changes, while this is open, with any write by anyone."""
        with self._turn, explained(self.folder / FILE):
            others = self.connection.execute("PRAGMA data_version").fetchone()[0]
            return f"{others} {self.connection.total_changes}"

    def note(self, key: str) -> str | None:
        """Return a value noted about the library itself."""
        found = self.query("SELECT value FROM note WHERE key = ?", (key,))
        return str(found[0][0]) if found else None

    def put_note(self, key: str, value: str) -> None:
        """Note a value about the library itself."""
        with self.transaction() as connection:
            connection.execute(
                "INSERT OR REPLACE INTO note VALUES (?, ?)", (key, value)
            )
