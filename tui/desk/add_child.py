"""The process that adds: progress as JSON lines on stdout, stopped by a closed stdin.

Run as ``python -m tui.desk.add_child PATH LIBRARY CACHE MODEL``.
"""

from __future__ import annotations

import contextlib
import io
import json
import os
import sys
import threading
from pathlib import Path
from typing import TextIO

from assistant.errors import FaultleafError
from assistant.settings import Settings
from tui.plain.console import Console
from tui.plain.text import count

NICE = 10
"""Behind the screen, which must stay quick."""


class Stopped(BaseException):
    """The parent wants no more."""


class Telling(Console):
    """A console whose lines and progress go to the parent as JSON."""

    def __init__(self, pipe: TextIO) -> None:
        super().__init__(out=io.StringIO(), err=io.StringIO(), source=io.StringIO())
        self._pipe = pipe
        self.stopped = threading.Event()

    def progress(self, text: str, *, last: bool = False) -> None:  # noqa: ARG002 - one line is like another
        """Tell where the work is; here it also ends when the parent wants no more."""
        if self.stopped.is_set():
            raise Stopped
        self.send({"text": text})

    def talk(self, text: str) -> None:
        """Tell what is not data."""
        self.send({"text": text})

    def send(self, told: dict[str, object]) -> None:
        """Write one message."""
        self._pipe.write(json.dumps(told) + "\n")
        self._pipe.flush()


def main(path: str, library: str, cache: str, model: str) -> None:
    """Add what lies under `path`, then embed it."""
    with contextlib.suppress(AttributeError, OSError):
        os.nice(NICE)
    pipe = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)  # a library that prints must not speak between our lines
    console = Telling(pipe)
    watch = threading.Thread(target=_watch, args=(console,), daemon=True)
    watch.start()
    settings = Settings(
        library=Path(library),
        jobs=Path(os.devnull),
        cache=Path(cache),
        model=Path(model) if model else None,
    )
    with contextlib.suppress(Stopped, BrokenPipeError):
        console.send({"lines": _add(Path(path), settings, console)})


def _add(path: Path, settings: Settings, console: Telling) -> list[str]:
    from assistant.library.store import LibraryStore
    from tui.adding import add_paths
    from tui.embedding import embed_library

    try:
        with LibraryStore.open(settings.library, create=True) as store:
            result = add_paths([path], store, settings, console)
            done = embed_library(store, settings, console)
    except FaultleafError as error:
        return [f"not added: {error.what}", *filter(None, (error.hint,))]
    lines = [
        f"{word}: {', '.join(names)}"
        for word in ("added", "replaced", "renamed", "unchanged", "duplicates", "packs")
        if (names := getattr(result, word))
    ]
    lines += [f"refused: {refusal.reason}" for refusal in result.refused]
    lines += [f"warning: {text}" for text in (*result.warnings, done.warning) if text]
    return [*lines, f"{count(done.texts, 'text')} embedded"]


def _watch(console: Telling) -> None:
    sys.stdin.read()
    console.stopped.set()


if __name__ == "__main__":
    main(*sys.argv[1:5])
