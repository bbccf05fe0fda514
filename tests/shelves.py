"""A store taking in files, and what is in it afterwards."""

from __future__ import annotations

from pathlib import Path

from assistant.library.store import LibraryStore
from ingest.outcome import Ingested
from ingest.pipeline import Options, add
from ingest.progress import Progress
from tests.fakes import HashEncoder

ENCODER = HashEncoder()


def note(path: Path, text: str) -> Path:
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(text, encoding="utf-8")
    return path


def take(store: LibraryStore, *paths: Path, options: Options | None = None) -> Ingested:
    *told, result = add(
        paths, store, count=ENCODER.count_tokens, options=options or Options()
    )
    assert all(isinstance(each, Progress) for each in told)
    assert isinstance(result, Ingested)
    return result


def paths(store: LibraryStore) -> list[str]:
    return [document.path for document in store.documents()]


def text(store: LibraryStore) -> str:
    return "\n".join(
        each.passage.text
        for document in store.documents()
        for each in store.passages(document.sha256)
    )
