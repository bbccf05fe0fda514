"""Bring a library's vectors up to date, saying what takes long and why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from assistant.clock import SystemClock
from assistant.errors import LibraryError
from assistant.settings import Settings
from tui.plain.console import Console
from tui.plain.pace import PaceLine

if TYPE_CHECKING:
    from assistant.library.encoder import Encoder
    from assistant.library.store import LibraryStore

EXPORTING = (
    "preparing the embedding model once for this machine: it loads PyTorch and "
    "writes one file to {cache}; this takes about a minute"
)


STOPPED = (
    "all that was added can be searched by its words; faultleaf library embed goes on"
)


@dataclass(frozen=True, slots=True)
class Embedded:
    """How many texts got their vector, and why the rest did not."""

    texts: int
    warning: str = ""


def embed_library(
    store: LibraryStore, settings: Settings, console: Console, *, replace: bool = False
) -> Embedded:
    """Embed what is still missing, exporting the model first when it must be.

    A model that cannot be prepared is a warning: keyword search goes on.

    Parameters
    ----------
    replace : bool
        Embed everything anew with the configured model, whatever was used before.

    Raises
    ------
    LibraryError
        The library is pinned to another model and `replace` is false.
    """
    from ingest.embedding import embed_missing

    try:
        encoder = _encoder(settings, console)
    except LibraryError as error:
        return Embedded(0, f"only keywords can be searched: {error.what}")
    done = 0
    pace = PaceLine(SystemClock())
    try:
        for step in embed_missing(store, encoder, replace=replace):
            done = step.done
            console.progress(pace.line(step), last=step.finished)
    except KeyboardInterrupt:
        console.talk(STOPPED)
        raise
    return Embedded(done)


def _encoder(settings: Settings, console: Console) -> Encoder:
    from assistant.library.encoder import load_encoder

    found = load_encoder(settings)
    if found is not None:
        return found
    from ingest.export import export

    console.talk(EXPORTING.format(cache=settings.cache))
    export(settings)
    made = load_encoder(settings)
    if made is None:
        raise LibraryError(
            "the exported model cannot be found again", "faultleaf doctor"
        )
    return made
