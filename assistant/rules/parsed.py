"""Files that were parsed before, kept by the hash of their content.

Parsing is the slow part of loading a pack, and a shop adds and verifies the same
folder again and again. What came out of a file without a mistake is kept as JSON in
the user's cache folder under the SHA-256 of the file's text: an unchanged file is not
parsed again, wherever it lies and whatever it is called, and a changed one is another
entry. Nothing depends on it: an entry that is missing, damaged or of another form is
as good as none, and the folder may be deleted at any time.
"""

from __future__ import annotations

import hashlib
import json
import os
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

FORM = "1"
"""Changed whenever a reader makes something else of the same text."""
FOLDER = "parsed-rules"
MOST = 500
"""Entries kept; those written longest ago go first."""


@dataclass(frozen=True, slots=True)
class ParsedFiles:
    """Kept results in a folder that need not exist yet."""

    folder: Path

    def get(self, reader: str, text: str) -> object:
        """Return what a reader made of a text before, or None."""
        try:
            kept = self._path(reader, text).read_text("utf-8")
        except (OSError, UnicodeDecodeError):
            return None
        digest, _, payload = kept.partition("\n")
        if digest != _sha256(payload):
            return None
        made: object = json.loads(payload)
        return made

    def put(self, reader: str, text: str, made: object) -> None:
        """Keep what a reader made of a text; a folder not writable keeps nothing."""
        payload = json.dumps(made, separators=(",", ":"), ensure_ascii=False)
        path = self._path(reader, text)
        beside = path.with_suffix(f".{os.getpid()}")
        with suppress(OSError):
            self.folder.mkdir(parents=True, exist_ok=True)
            beside.write_text(f"{_sha256(payload)}\n{payload}", "utf-8")
            beside.replace(path)
            self._prune()

    def _path(self, reader: str, text: str) -> Path:
        return self.folder / f"{_sha256(f'{FORM} {reader} {text}')}.json"

    def _prune(self) -> None:
        held = list(self.folder.glob("*.json"))
        if len(held) <= MOST:
            return
        dated = sorted((path.stat().st_mtime_ns, path.name, path) for path in held)
        for *_, path in dated[: len(held) - MOST]:
            path.unlink(missing_ok=True)


def _sha256(text: str) -> str:
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()
