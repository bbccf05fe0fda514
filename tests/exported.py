"""The real encoder, exported once for the whole suite."""

from __future__ import annotations

from filelock import FileLock

from assistant.library.encoder import Encoder, load_encoder
from assistant.settings import Settings, settings


def real_settings() -> Settings:
    """Return settings whose cache holds an export, made by the first who asks.

    With FAULTLEAF_TEST_CACHE set, the export outlives the run.
    """
    return exported_to(settings())


def exported_to(places: Settings) -> Settings:
    """Return the places; the first process that asks exports, the others wait."""
    places.cache.mkdir(parents=True, exist_ok=True)
    with FileLock(places.cache / "export.lock"):
        if load_encoder(places) is None:
            from ingest.export import export

            export(places)
    return places


def real_encoder() -> Encoder:
    """Return the encoder of the packaged model."""
    encoder = load_encoder(real_settings())
    assert encoder is not None
    return encoder
