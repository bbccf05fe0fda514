"""Opening `jobs.sqlite`, for a writer or from a folder that cannot be written."""

from __future__ import annotations

import os
import sqlite3
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from assistant.errors import JobsError
from assistant.formats import version
from assistant.jobs.migrations import FORMAT

BUSY_SECONDS = 5.0
"""How long a writer waits for another one."""
ELSEWHERE = "name another file with --jobs or FAULTLEAF_JOBS"
SHARED = frozenset(
    {"9p", "afpfs", "cifs", "davfs", "fuse.davfs", "fuse.sshfs", "nfs", "nfs4"}
    | {"smb3", "smbfs"}
)
"""File systems on which SQLite's write-ahead log is not safe."""
_DAMAGED = ("SQLITE_CORRUPT", "SQLITE_NOTADB", "SQLITE_FORMAT")
_REFUSED = ("SQLITE_READONLY", "SQLITE_PERM", "SQLITE_CANTOPEN")


@contextmanager
def explained(where: Path) -> Iterator[None]:
    """Turn what SQLite raises into a JobsError with its way out."""
    try:
        yield
    except sqlite3.Error as error:
        raise _explain(error, where) from error


def _explain(error: sqlite3.Error, where: Path) -> JobsError:
    name = getattr(error, "sqlite_errorname", "") or ""
    if name.startswith(("SQLITE_BUSY", "SQLITE_LOCKED")):
        return JobsError(
            f"the file of jobs {where} is locked: another process is writing to it",
            "end the other faultleaf that works on it, then try again",
        )
    if name.startswith(_DAMAGED):
        return JobsError(
            f"the file of jobs {where} is damaged or not ours: {error}",
            f"put a backup in its place, or {ELSEWHERE}",
        )
    if name.startswith(_REFUSED):
        return JobsError(
            f"the file of jobs {where} cannot be written: {error}", ELSEWHERE
        )
    if name.startswith("SQLITE_FULL"):
        return JobsError(f"no space left to write {where}", "make room; try again")
    return JobsError(f"the file of jobs {where} cannot be used: {error}", ELSEWHERE)


def connect_writer(where: Path) -> sqlite3.Connection:
    """Open, make or migrate a file of jobs.

    Raises
    ------
    JobsError
        On a share, in a folder that cannot be written, damaged, foreign, newer.
    """
    refuse_shared(where)
    try:
        where.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise JobsError(
            f"the folder {where.parent} cannot be made: {error.strerror}", ELSEWHERE
        ) from error
    with explained(where):
        connection = _connect(str(where), uri=False)
        try:
            _refuse_foreign(connection, where)
            connection.execute("PRAGMA journal_mode = WAL")
            # FULL: what was said is on the disk before the next question.
            connection.execute("PRAGMA synchronous = FULL")
            FORMAT.migrate(connection, where)
        except BaseException:
            connection.close()
            raise
    return connection


def connect_reader(where: Path) -> sqlite3.Connection:
    """Open a file of jobs for reading only.

    Raises
    ------
    JobsError
        Missing, damaged, foreign, or of another format.
    """
    if not where.exists():
        raise JobsError(f"there is no file of jobs at {where}", ELSEWHERE)
    uri = where.resolve().as_uri() + "?mode=ro"
    if not os.access(where.parent, os.W_OK):
        # Without a writable folder the log's index cannot be made.
        uri += "&immutable=1"
    with explained(where):
        connection = _connect(uri, uri=True)
        try:
            connection.execute("PRAGMA query_only = ON")
            _refuse_foreign(connection, where)
            _refuse_older(connection, where)
        except BaseException:
            connection.close()
            raise
    return connection


def file_system(where: Path, mounts: str) -> str:
    """Return the type of file system that `where` lies on, '' when not known.

    `mounts` is text in the form of Linux's mount table.
    """
    best, kind = "", ""
    for line in mounts.splitlines():
        fields = line.split()
        if len(fields) < 3:  # noqa: PLR2004 - device, place, type
            continue
        place = fields[1].replace("\\040", " ")
        if len(place) >= len(best) and Path(place) in (where, *where.parents):
            best, kind = place, fields[2]
    return kind


def refuse_shared(where: Path) -> None:
    """Raise JobsError on a network share, unless FAULTLEAF_ANY_DISK is set."""
    table = Path("/proc/mounts")
    if os.environ.get("FAULTLEAF_ANY_DISK") or not table.exists():
        return
    kind = file_system(where.absolute(), table.read_text(errors="replace"))
    if kind in SHARED:
        raise JobsError(
            f"{where} lies on a network share ({kind}), where a live SQLite file "
            "can be damaged",
            f"{ELSEWHERE}; FAULTLEAF_ANY_DISK=1 overrides",
        )


def _connect(target: str, *, uri: bool) -> sqlite3.Connection:
    return sqlite3.connect(
        target,
        uri=uri,
        timeout=BUSY_SECONDS,
        isolation_level=None,
        check_same_thread=False,
    )


def _refuse_foreign(connection: sqlite3.Connection, where: Path) -> None:
    found = connection.execute("PRAGMA application_id").fetchone()[0]
    tables = connection.execute("SELECT count(*) FROM sqlite_schema").fetchone()[0]
    if tables and found != FORMAT.application:
        raise JobsError(
            f"{where} is an SQLite file, but not a faultleaf file of jobs", ELSEWHERE
        )
    FORMAT.refuse_newer(connection, where)


def _refuse_older(connection: sqlite3.Connection, where: Path) -> None:
    found = version(connection)
    if found < FORMAT.latest:
        raise JobsError(
            f"{where} has jobs format {found}, older than {FORMAT.latest}",
            "open it once where it can be written; it is migrated then",
        )
