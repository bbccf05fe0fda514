"""Runs a reader in a process of its own, so that no file can take us with it.

A process that dies over a page is followed by a second one, which reads that page
by the plain reader and goes on; a third reads all that is left by the plain one.
What no process could read is given as lost, with the reason. They die with us.
"""

from __future__ import annotations

import sys
import threading
from collections.abc import Iterator
from pathlib import Path

from assistant.errors import InputError
from ingest.readers.base import MAX_FILE_CHARACTERS, FileFacts, RawPage, Read
from ingest.readers.limits import Limits
from ingest.readers.process import DiedError, Process

PLAIN = {"ingest.readers.pdf:read_pdf": "ingest.readers.pdf:read_pdf_plain"}
"""The readers that have a slower and hardier one to fall back to, and that one."""
_TO_THE_END = sys.maxsize


def read_file(
    path: Path,
    reader: str,
    *,
    password: str | None = None,
    limits: Limits | None = None,
) -> Iterator[Read]:
    """Read a file in another process: its facts, then every page of it.

    Parameters
    ----------
    path : Path
        The file.
    reader : str
        ``module:function`` of a `Reader`.
    password : str, optional
        Opens an encrypted file.
    limits : Limits, optional
        What the process may use.

    Raises
    ------
    LockedError
        It needs a password, or another one.
    InputError
        The file cannot be opened: damaged, of another kind, or its reader died
        before the first page.
    """
    reading = Reading(path, reader, password=password, limits=limits)
    yield from reading.items()


class Reading:
    """One file's reading: at most three processes, each behind where one died."""

    def __init__(
        self,
        path: Path,
        reader: str,
        *,
        plain: str | None = None,
        password: str | None = None,
        limits: Limits | None = None,
    ) -> None:
        self.path = path
        self.peak = 0
        """The most memory that one of its processes held, in bytes."""
        self._reader = reader
        self._plain = PLAIN.get(reader, "") if plain is None else plain
        self._plain_until = 0
        self._password = password
        self._limits = limits or Limits()
        self._facts: FileFacts | None = None
        self._next = 1
        self._characters = 0
        self._process: Process | None = None
        self._stopped = threading.Event()
        self._behind_a_death = False

    def items(self) -> Iterator[Read]:
        """Give the facts and every page, as `read_file` does; once."""
        reason = ""
        for _ in range(3 if self._plain else 2):
            try:
                yield from self._attempt()
            except (DiedError, InputError) as death:
                if self._stopped.is_set() or self._over():
                    return
                reason = str(death)
                self._refuse(death)
                yield from self._behind(reason)
            else:
                return
        if self._facts is None:
            raise self._given_up(reason)
        while not self._over():
            yield self._lost(f"not reached: {reason}")

    def stop(self) -> None:
        """End it at once; `items` then ends without the rest."""
        self._stopped.set()
        if self._process is not None:
            self._process.stop()

    def _refuse(self, death: DiedError | InputError) -> None:
        """Raise where the file is refused and no other reader may do better."""
        hopeless = not self._plain or self._plain_until > self._next
        if isinstance(death, InputError):
            if self._facts is None or (hopeless and not self._behind_a_death):
                raise death
        elif self._facts is None and hopeless:
            raise self._given_up(str(death)) from death

    def _given_up(self, reason: str) -> InputError:
        return InputError(
            f"{self.path.name}: the reader gave up ({reason})",
            "open it in another program and print it to a new PDF",
        )

    def _behind(self, reason: str) -> Iterator[RawPage]:
        """Decide where and how the next process goes on; give what is lost."""
        first = not self._behind_a_death
        self._behind_a_death = True
        if self._facts is None:
            self._plain_until = _TO_THE_END
            return
        if not self._plain or self._next < self._plain_until:
            yield self._lost(reason)
        self._plain_until = self._next + 1 if first else _TO_THE_END

    def _over(self) -> bool:
        return self._facts is not None and self._next > self._facts.pages

    def _lost(self, reason: str) -> RawPage:
        page = RawPage(self._next, str(self._next), failure=reason)
        self._next += 1
        return page

    def _attempt(self) -> Iterator[Read]:
        if self._stopped.is_set():
            return
        process = self._process = Process(self._request(), self._limits)
        if self._stopped.is_set():
            process.stop()
        try:
            for item in process.items():
                if not isinstance(item, RawPage):
                    yield from self._first_facts(item)
                elif item.number == self._next:
                    self._next += 1
                    yield self._within(item)
                else:
                    raise DiedError(f"gave page {item.number} out of turn")
        finally:
            self.peak = max(self.peak, process.peak)
        if not self._over():
            raise DiedError("ended before the last page")

    def _first_facts(self, facts: FileFacts) -> Iterator[FileFacts]:
        if self._facts is None:  # a second process tells them again
            self._facts = facts
            yield facts

    def _within(self, page: RawPage) -> RawPage:
        """Return the page, or its loss when the file holds too much text."""
        self._characters += len(page.text)
        if self._characters <= MAX_FILE_CHARACTERS:
            return page
        failure = f"more than {MAX_FILE_CHARACTERS} characters in one file"
        return RawPage(page.number, page.label, failure=failure)

    def _request(self) -> dict[str, object]:
        pages = self._facts.pages if self._facts else 0
        return {
            "path": str(self.path),
            "reader": self._reader,
            "plain": self._plain,
            "first": self._next,
            "plain_until": self._plain_until if self._plain else 0,
            "password": self._password,
            "memory": self._limits.memory,
            "seconds": self._limits.seconds(pages or 3_000),
        }
