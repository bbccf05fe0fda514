"""Where lines go: data to stdout, talk to stderr, progress only to a terminal."""

from __future__ import annotations

import json
import os
import shutil
import sys
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import TextIO

from tui.plain.text import LEAST_WIDTH, clean, spelled

WIDEST = 100
"""Columns past which lines of prose are hard to read."""
_CODES = {"bold": "1", "alarm": "1;31", "wait": "1;33", "good": "1;32"}
_CLEAR_LINE = "\r\x1b[K"


@dataclass
class Console:
    """The two streams of one run, and what may be drawn on them."""

    out: TextIO = field(default_factory=lambda: sys.stdout)
    err: TextIO = field(default_factory=lambda: sys.stderr)
    source: TextIO = field(default_factory=lambda: sys.stdin)
    json: bool = False
    colour: bool = False
    width: int = 80
    _drawn: bool = False

    @classmethod
    def of_process(cls) -> Console:
        """Return a console on the process's own streams."""
        console = cls()
        console.width = _width(console.out)
        dumb = os.environ.get("TERM") == "dumb"
        # An empty NO_COLOR counts as unset, as its convention says.
        console.colour = (
            console.out.isatty() and not dumb and not os.environ.get("NO_COLOR")
        )
        return console

    @property
    def interactive(self) -> bool:
        """Whether a person sits at both ends."""
        return self.source.isatty() and self.out.isatty()

    def line(self, text: str = "") -> None:
        """Write one line of data."""
        self._write(self.out, text)

    def lines(self, texts: Iterable[str]) -> None:
        """Write lines of data."""
        for text in texts:
            self.line(text)

    def document(self, fields: Mapping[str, object]) -> None:
        """Write the one JSON document of this run, its schema first."""
        whole = {"schema": 1, **fields}
        self.out.write(json.dumps(whole, ensure_ascii=True, indent=2) + "\n")
        self.out.flush()

    def talk(self, text: str) -> None:
        """Write a line that is not data."""
        self._end_progress()
        self._write(self.err, text)

    def progress(self, text: str, *, last: bool = False) -> None:
        """Draw a line of progress over the one before; nothing without a terminal."""
        if not self.err.isatty():
            return
        shown = clean(text)[: max(self.width - 1, LEAST_WIDTH)]
        self.err.write(_CLEAR_LINE + spelled(shown, _encoding(self.err)))
        self._drawn = True
        if last:
            self._end_progress()
        self.err.flush()

    def emphasis(self, text: str, kind: str) -> str:
        """Return text in bold or a colour where colour is wanted, else as it is."""
        return f"\x1b[{_CODES[kind]}m{text}\x1b[0m" if self.colour else text

    def _end_progress(self) -> None:
        if self._drawn:
            self.err.write("\n")
            self._drawn = False

    @staticmethod
    def _write(stream: TextIO, text: str) -> None:
        stream.write(spelled(text, _encoding(stream)) + "\n")
        stream.flush()


def _encoding(stream: TextIO) -> str:
    return stream.encoding or "utf-8"


def _width(stream: TextIO) -> int:
    if not stream.isatty() and "COLUMNS" not in os.environ:
        return 80
    return min(shutil.get_terminal_size().columns, WIDEST)
