"""What the commands open, from the words of the call."""

from __future__ import annotations

import argparse
from collections.abc import Sequence
from typing import TYPE_CHECKING

from assistant.clock import SystemClock
from assistant.errors import UsageError
from assistant.settings import Settings, settings
from tui.plain.console import Console

if TYPE_CHECKING:
    from assistant.jobs.store import JobStore
    from assistant.library.store import LibraryStore
    from tui.plain.render import Frame


def places(args: argparse.Namespace) -> Settings:
    """Return where everything lies for this call."""
    return settings(library=args.library, jobs=args.jobs)


def reading_library(args: argparse.Namespace) -> LibraryStore:
    """Open the library for reading only.

    Raises
    ------
    LibraryError
        When there is none, or it cannot be used.
    """
    from assistant.library.store import LibraryStore

    return LibraryStore.open(places(args).library, read_only=True)


def reading_jobs(args: argparse.Namespace) -> JobStore | None:
    """Open the file of jobs for reading only; None when there is none yet."""
    from assistant.jobs.store import JobStore

    path = places(args).jobs
    if not path.exists():
        return None
    return JobStore.open(path, clock=SystemClock(), read_only=True)


def frame_of(console: Console) -> Frame:
    """Return what lines are made for: this terminal, this zone, this instant."""
    from tui.plain.render import Frame

    return Frame(width=console.width, now=SystemClock().now())


def readable(text: str) -> str:
    """Return typed text with undecodable bytes replaced, so that it can be stored."""
    return text.encode("utf-8", "surrogateescape").decode("utf-8", "replace")


def words_of(words: Sequence[str], console: Console) -> str:
    """Return the words of a call as one text; a lone ``-`` reads stdin.

    Raises
    ------
    UsageError
        When there is no text.
    """
    text = " ".join(words)
    if text == "-":
        text = console.source.read()
    if not text.strip():
        raise UsageError("there is no text", "write it after the command, in quotes")
    return text.strip()
