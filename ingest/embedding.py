"""Computing the embeddings that the library still lacks, a batch at a time."""

from __future__ import annotations

from collections.abc import Iterator

from assistant.library.encoder import Encoder
from assistant.library.store import LibraryStore
from ingest.progress import Progress

BATCH = 64
"""Texts that are committed together: what a kill can cost."""


def embed_missing(
    store: LibraryStore, encoder: Encoder, *, replace: bool = False
) -> Iterator[Progress]:
    """Embed every text that this encoder has not embedded yet.

    Each batch is committed before its progress is told, so whoever stops
    listening, or is killed, loses at most the batch in hand. A text is embedded
    once, however many passages have it.

    Parameters
    ----------
    replace : bool
        Pin the library to this encoder even when it is pinned to another.

    Yields
    ------
    Progress
        Stage ``embed``; nothing when nothing is missing.

    Raises
    ------
    LibraryError
        The library is pinned to another encoder and `replace` is false.
    InputError
        A text is longer than the encoder takes.
    """
    store.pin_manifest(encoder.manifest, replace=replace)
    pending = store.pending_texts(encoder.model_hash)
    for start in range(0, len(pending), BATCH):
        batch = pending[start : start + BATCH]
        vectors = encoder.embed_passages([text for _, text in batch])
        store.put_embeddings(
            encoder.model_hash,
            [(name, vector) for (name, _), vector in zip(batch, vectors, strict=True)],
        )
        yield Progress("embed", start + len(batch), len(pending))
