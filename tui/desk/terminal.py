"""The terminal around the screen: its streams, its title, viewers outside it."""

from __future__ import annotations

import os
import sys
from collections.abc import Callable, Iterator, Mapping, MutableMapping
from contextlib import contextmanager
from pathlib import Path

QUIET = {
    "TEXTUAL_ANIMATIONS": "none",
    "TEXTUAL_SMOOTH_SCROLL": "0",
    "TOKENIZERS_PARALLELISM": "false",
}
"""Unless a person set them otherwise: nothing moves, slow lines stay free."""
PAGED: Mapping[str, tuple[str, ...]] = {
    "evince": ("--page-index={page}", "{path}"),
    "okular": ("-p", "{page}", "{path}"),
    "zathura": ("-P", "{page}", "{path}"),
    "qpdfview": ("{path}#{page}",),
    "mupdf": ("{path}", "{page}"),
}
"""Viewers that open a file at a page, and how each is told it."""


def settle_environment(environment: MutableMapping[str, str]) -> None:
    """Set what Textual reads at its import: no motion; an empty NO_COLOR is none.

    The terminal itself says how large it is: an exported COLUMNS or LINES may be of
    another terminal, or of a size that it no longer has.
    """
    for name in ("COLUMNS", "LINES"):
        environment.pop(name, None)
    for name, value in QUIET.items():
        environment.setdefault(name, value)
    if environment.get("NO_COLOR") == "":
        del environment["NO_COLOR"]


@contextmanager
def only_the_driver_writes(log: Path) -> Iterator[None]:
    """Keep the terminal for the screen's driver; all other output goes to `log`.

    File descriptors 1 and 2 themselves are turned away, so that a library's C code
    is kept off too. The driver gets the terminal under another descriptor.
    """
    log.parent.mkdir(parents=True, exist_ok=True)
    terminal = os.dup(2 if os.isatty(2) else 1)
    kept = {number: os.dup(number) for number in (1, 2)}
    streams = (sys.__stdout__, sys.__stderr__)
    sink = os.open(log, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    try:
        drawn = os.fdopen(terminal, "w", encoding="utf-8", closefd=False)
        sys.__stdout__ = sys.__stderr__ = drawn  # type: ignore[misc]
        for number in kept:
            os.dup2(sink, number)
        yield
        drawn.flush()
    finally:
        sys.__stdout__, sys.__stderr__ = streams  # type: ignore[misc]
        for number, copy in kept.items():
            os.dup2(copy, number)
            os.close(copy)
        os.close(sink)
        os.close(terminal)


def title_sequence(title: str) -> str:
    """Return what sets a terminal's title; control characters cannot be in it."""
    shown = "".join(letter for letter in title if letter.isprintable())
    return f"\x1b]2;{shown}\x07"


def viewer_command(
    path: str,
    page: int,
    *,
    platform: str,
    which: Callable[[str], str | None],
    screen: bool,
) -> tuple[list[str] | None, str]:
    """Return the command that opens a file at a page, and it in words.

    Parameters
    ----------
    path : str
        The file.
    page : int
        Physical, from 1.
    platform : str
        As ``sys.platform``.
    which : callable
        Finds a program, as ``shutil.which``.
    screen : bool
        Whether there is a graphical screen to open it on.

    Returns
    -------
    command, words
        The command is None where nothing can be opened from here; the words then
        say what to run where it can.
    """
    if platform == "darwin":
        return ["open", path], f"opened outside; turn to PDF page {page}"
    if platform == "win32":
        command = ["cmd", "/c", "start", "", path]
        return command, f"opened outside; turn to PDF page {page}"
    for name, words in PAGED.items():
        if screen and which(name):
            told = [word.format(path=path, page=page) for word in words]
            return [name, *told], f"opened at PDF page {page}"
    if screen and which("xdg-open"):
        return ["xdg-open", path], f"opened outside; turn to PDF page {page}"
    return None, f"no viewer here; elsewhere: xdg-open '{path}' (PDF page {page})"
