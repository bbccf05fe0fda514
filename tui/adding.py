"""Files into a library, with progress: what `add` and the sample library share."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from assistant.errors import FaultleafError
from assistant.settings import Settings
from tui.plain.console import Console

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore
    from ingest.pipeline import Ingested
    from ingest.progress import Progress

STAGES = {
    "look": "looking at files",
    "read": "reading pages",
    "store": "storing documents",
    "packs": "proving rule packs",
    "embed": "embedding",
}


def add_paths(
    paths: Sequence[Path],
    store: LibraryStore,
    settings: Settings,
    console: Console,
    password: str | None = None,
) -> Ingested:
    """Take files, folders and rule packs into an open library.

    Raises
    ------
    InputError
        There is nothing to add under any of the paths.
    LibraryError
        The library cannot be written, or the model's tokenizer is missing.
    """
    from ingest.packs import take_pack
    from ingest.pipeline import Ingested, Options, add

    warnings: list[str] = []

    def taking(folder: Path) -> None:
        proved = take_pack(folder, store)
        warnings.extend(str(each) for each in proved.warnings)

    options = Options(password=password, add_pack=taking)
    for step in add(paths, store, count=token_counter(settings), options=options):
        if isinstance(step, Ingested):
            step.warnings.extend(warnings)
            return step
        draw(step, console)
    raise FaultleafError("adding ended without a result")


def token_counter(settings: Settings) -> Callable[[str], int]:
    """Return what counts the tokens of a text as the model will.

    Raises
    ------
    LibraryError
        When the model is not installed.
    """
    from assistant.library.encoder import TOKENIZER, find_model_folder
    from assistant.library.tokens import TokenCounter

    return TokenCounter(find_model_folder(settings) / TOKENIZER).count


def draw(step: Progress, console: Console) -> None:
    """Draw one step of long work."""
    stage = STAGES.get(step.stage, step.stage)
    console.progress(
        f"{stage}: {step.done} of {step.total} {step.note}".rstrip(), last=step.finished
    )
