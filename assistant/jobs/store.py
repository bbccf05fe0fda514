"""The file of jobs: events appended one by one, each on the disk before the next."""

from __future__ import annotations

import sqlite3
import threading
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from datetime import UTC, datetime
from pathlib import Path
from types import TracebackType
from typing import Any

from pydantic import ValidationError

from assistant.clock import Clock
from assistant.errors import JobsError, UsageError
from assistant.jobs.chain import Link, chain_problems, digest_of, head_of, in_order
from assistant.jobs.connection import connect_reader, connect_writer, explained
from assistant.jobs.events import Body, Event, Opened, SteadyMark
from assistant.jobs.summary import SUMMARY_KINDS, JobSummary, summarise

LEAST_PREFIX = 4
"""Fewest characters that may stand for a job."""


class JobStore:
    """An open file of jobs; use `open`, then close it or leave its `with` block.

    One object may be used from several threads; calls take turns.
    """

    def __init__(
        self, connection: sqlite3.Connection, where: Path, machine: str
    ) -> None:
        self._connection = connection
        self._where = where
        self._turn = threading.RLock()
        self.machine = machine
        """The ULID under which this file's own events are chained."""

    @classmethod
    def open(
        cls,
        path: Path,
        *,
        clock: Clock,
        read_only: bool = False,
        machine: str | None = None,
    ) -> JobStore:
        """Open a file of jobs, making or migrating it unless `read_only`.

        Parameters
        ----------
        path : Path
            The SQLite file.
        clock : Clock
            Makes the machine id of a new file.
        read_only : bool
            Refuse every write; the file must be there.
        machine : str, optional
            The machine id a new file gets; a file that has one keeps it.

        Raises
        ------
        JobsError
            Missing (read-only), damaged, foreign, newer, or not to be written.
        """
        connection = connect_reader(path) if read_only else connect_writer(path)
        with explained(path):
            return cls(connection, path, _machine(connection, machine, clock))

    def close(self) -> None:
        """Close the file."""
        with suppress(sqlite3.Error):
            self._connection.close()

    def __enter__(self) -> JobStore:
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        trace: TracebackType | None,
    ) -> None:
        self.close()

    def append(
        self,
        job: str,
        body: Body,
        *,
        noted: datetime,
        event_id: str,
        steady: SteadyMark | None = None,
    ) -> Event:
        """Chain one event to a job and commit it before returning.

        Raises
        ------
        JobsError
            A job that does not begin with Opened, or is opened twice; an event id
            that is there already; a file that cannot be written.
        """
        with self._transaction():
            seq, prev = self._last(job)
            if isinstance(body, Opened) == self._known(job):
                raise JobsError(
                    f"job {job} is already open"
                    if isinstance(body, Opened)
                    else f"there is no job {job}",
                    "faultleaf job list",
                )
            event = Event(
                id=event_id,
                job=job,
                noted=noted.astimezone(UTC),
                machine=self.machine,
                seq=seq + 1,
                prev=prev,
                body=body,
                steady=steady,
            )
            self._insert(event)
        return event

    def events(self, job: str) -> tuple[Event, ...]:
        """Return a job's events in order; none when there is no such job.

        Raises
        ------
        JobsError
            When a stored event cannot be read, with its id.
        """
        rows = self._rows("SELECT id, payload FROM event WHERE job = ?", (job,))
        return in_order(self._read(str(id_), str(text)) for id_, text in rows)

    def jobs(self) -> tuple[JobSummary, ...]:
        """Return a line for every job, the one worked on last first."""
        counted = self._rows("SELECT job, count(*), max(noted) FROM event GROUP BY job")
        marks = ",".join("?" * len(SUMMARY_KINDS))
        found = []
        for job, count, last in counted:
            rows = self._rows(
                f"SELECT id, payload FROM event WHERE job = ? AND kind IN ({marks})",  # noqa: S608 - marks only
                (job, *SUMMARY_KINDS),
            )
            events = in_order(self._read(str(id_), str(text)) for id_, text in rows)
            line = summarise(
                events, count=int(count), last=datetime.fromisoformat(last)
            )
            if line is not None:
                found.append(line)
        found.sort(key=lambda line: line.id)
        return tuple(sorted(found, key=lambda line: line.last, reverse=True))

    def resolve(self, part: str) -> str:
        """Return the one job whose id begins or ends with `part`.

        Raises
        ------
        UsageError
            Too short, none, or several, with the ids that fit.
        """
        asked = part.strip().upper()
        ids = [str(job) for (job,) in self._rows("SELECT DISTINCT job FROM event")]
        if asked in ids:
            return asked
        if len(asked) < LEAST_PREFIX:
            raise UsageError(
                f"{part!r} is too short to name a job",
                f"give at least {LEAST_PREFIX} characters of its id; "
                "`faultleaf job list` shows them",
            )
        fits = sorted(
            id_ for id_ in ids if id_.startswith(asked) or id_.endswith(asked)
        )
        if not fits:
            raise UsageError(
                f"no job has an id that begins or ends with {part!r}",
                "`faultleaf job list` shows them",
            )
        if len(fits) > 1:
            raise UsageError(
                f"{part!r} fits {len(fits)} jobs: {', '.join(fits)}",
                "give more characters, or the last ones",
            )
        return fits[0]

    def head(self, job: str) -> str:
        """Return the digest to note elsewhere, against which `verify` can be asked."""
        return head_of(self._links(job))

    def verify(self, job: str, head: str | None = None) -> tuple[str, ...]:
        """Return what is wrong with a job's chain; nothing when it holds."""
        return chain_problems(self._links(job), head)

    @contextmanager
    def _transaction(self) -> Iterator[None]:
        with self._turn, explained(self._where):
            self._connection.execute("BEGIN IMMEDIATE")
            try:
                yield
                self._connection.execute("COMMIT")
            except BaseException:
                with suppress(sqlite3.Error):
                    self._connection.execute("ROLLBACK")
                raise

    def _rows(
        self, statement: str, values: tuple[str, ...] = ()
    ) -> list[tuple[Any, ...]]:
        with self._turn, explained(self._where):
            return self._connection.execute(statement, values).fetchall()

    def _last(self, job: str) -> tuple[int, str]:
        row = self._connection.execute(
            "SELECT seq, digest FROM event WHERE job = ? AND machine = ? "
            "ORDER BY seq DESC LIMIT 1",
            (job, self.machine),
        ).fetchone()
        return (int(row[0]), str(row[1])) if row else (0, "")

    def _known(self, job: str) -> bool:
        found = self._connection.execute(
            "SELECT 1 FROM event WHERE job = ? LIMIT 1", (job,)
        )
        return found.fetchone() is not None

    def _insert(self, event: Event) -> None:
        payload = event.canonical()
        try:
            self._connection.execute(
                "INSERT INTO event VALUES (?, ?, ?, ?, ?, ?, ?, ?)",
                (
                    event.id,
                    event.job,
                    event.machine,
                    event.seq,
                    event.noted.isoformat(timespec="microseconds"),
                    event.body.kind,
                    digest_of(payload),
                    payload,
                ),
            )
        except sqlite3.IntegrityError as error:
            raise JobsError(
                f"event id {event.id} is already in {self._where}"
            ) from error

    def _links(self, job: str) -> list[Link]:
        rows = self._rows(
            "SELECT id, job, machine, seq, digest, payload FROM event WHERE job = ?",
            (job,),
        )
        return [Link(*row) for row in rows]

    def _read(self, event_id: str, payload: str) -> Event:
        try:
            return Event.model_validate_json(payload)
        except ValidationError as error:
            raise JobsError(
                f"event {event_id} in {self._where} cannot be read",
                "put a backup of the file in its place; "
                "`faultleaf job verify` names what was changed",
            ) from error


def _machine(connection: sqlite3.Connection, given: str | None, clock: Clock) -> str:
    """Return the file's machine id, noting one in a new file."""
    asked = "SELECT value FROM note WHERE key = 'machine'"
    row = connection.execute(asked).fetchone()
    if row is None:
        # OR IGNORE: another process may be opening the same new file.
        connection.execute(
            "INSERT OR IGNORE INTO note VALUES ('machine', ?)",
            (given or clock.new_id(),),
        )
        row = connection.execute(asked).fetchone()
    return str(row[0])
