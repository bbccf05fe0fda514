"""All documents with the writer that makes each."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

from kb_samples.making import (
    bulletin,
    ondreval,
    skarnvik,
    vellamere,
    writer_canvas,
    writer_cells,
)
from kb_samples.making.blocks import Document

Writer = Callable[[Document, Path], None]


def catalogue() -> tuple[tuple[Document, Writer], ...]:
    """Return every PDF document and its writer, sorted by file name."""
    flowing = (
        *bulletin.documents(),
        *ondreval.documents(),
        *skarnvik.documents(),
    )
    pairs: list[tuple[Document, Writer]] = [
        *((document, writer_canvas.write) for document in vellamere.documents()),
        *((document, writer_cells.write) for document in flowing),
    ]
    return tuple(sorted(pairs, key=lambda pair: pair[0].file))


def write_all(folder: Path) -> tuple[Path, ...]:
    """Write all documents into `folder` and return their paths."""
    folder.mkdir(parents=True, exist_ok=True)
    paths = []
    for document, write in catalogue():
        path = folder / document.file
        write(document, path)
        paths.append(path)
    return tuple(paths)
