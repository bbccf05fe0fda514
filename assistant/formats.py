"""Numbered formats of our SQLite files, brought up step by step, each step whole.

A step and the number that records it are one transaction, so a kill leaves a file
at the old number or at the new one. An older file is copied aside with SQLite's own
backup before its first step; a newer one is refused by name.
"""

from __future__ import annotations

import sqlite3
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from assistant.errors import FaultleafError

Step = Callable[[sqlite3.Connection], None]


@dataclass(frozen=True, slots=True)
class Format:
    """What one kind of file is, and how it came to be so."""

    name: str
    """As errors call it: library, jobs."""
    application: int
    """SQLite's application id of such files."""
    steps: tuple[Step, ...]
    """Step n takes a file from format n-1 to n."""
    refusal: type[FaultleafError]
    """What a newer file is refused with."""
    other: str
    """Where to point instead, for the hint: "--jobs at another file"."""

    @property
    def latest(self) -> int:
        """The format that this program writes."""
        return len(self.steps)

    def refuse_newer(self, connection: sqlite3.Connection, where: Path) -> None:
        """Raise `refusal` when the file was written by a later faultleaf."""
        found = version(connection)
        if found > self.latest:
            raise self.refusal(
                f"{where} has {self.name} format {found}; "
                f"this faultleaf knows up to {self.latest}",
                f"install a newer faultleaf, or point {self.other}",
            )

    def migrate(self, connection: sqlite3.Connection, where: Path) -> None:
        """Bring a file to the latest format, after a backup when it holds anything.

        Parameters
        ----------
        connection : sqlite3.Connection
            In autocommit mode, with no transaction open.
        where : Path
            The file behind it; the backup becomes ``<name>.format-<n>.backup``.

        Raises
        ------
        FaultleafError
            Of the kind `refusal`, when the file is newer than this program.
        """
        self.refuse_newer(connection, where)
        if 0 < version(connection) < self.latest:
            _back_up(connection, where)
        for number, step in enumerate(self.steps, start=1):
            if version(connection) < number:
                self._take(connection, number, step)

    def _take(self, connection: sqlite3.Connection, number: int, step: Step) -> None:
        connection.execute("BEGIN IMMEDIATE")
        try:
            # Read again inside the transaction: another process may have done it.
            if version(connection) < number:
                step(connection)
                connection.execute(f"PRAGMA user_version = {number}")
                connection.execute(f"PRAGMA application_id = {self.application}")
            connection.execute("COMMIT")
        except BaseException:
            connection.execute("ROLLBACK")
            raise


def version(connection: sqlite3.Connection) -> int:
    """Return the number of the last step a file has had."""
    return int(connection.execute("PRAGMA user_version").fetchone()[0])


def _back_up(connection: sqlite3.Connection, where: Path) -> None:
    target = where.with_name(f"{where.name}.format-{version(connection)}.backup")
    copy = sqlite3.connect(target)
    try:
        connection.backup(copy)
    finally:
        copy.close()
