"""Files into a library, with progress: what `add` and the sample library share."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import closing, contextmanager
from dataclasses import dataclass
from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, TypedDict

from assistant.clock import SystemClock
from assistant.errors import FaultleafError, InputError
from assistant.settings import Settings
from tui.plain.console import Console
from tui.plain.pace import PaceLine

if TYPE_CHECKING:
    from assistant.library.store import LibraryStore
    from ingest.outcome import Ingested
    from ingest.pipeline import Recognise
    from ingest.progress import Progress

STOPPED = (
    "what was stored stays and can be searched; the same command goes on from there"
)


@dataclass(frozen=True, slots=True)
class Ways:
    """What a person asks for beside the paths."""

    password: str | None = None
    """Of encrypted files."""
    ocr: bool | None = None
    """None reads pictures where that is installed."""
    prune: bool = False
    """Take out documents whose files are gone from the folders named."""


def add_paths(
    paths: Sequence[Path],
    store: LibraryStore,
    settings: Settings,
    console: Console,
    ways: Ways | None = None,
) -> Ingested:
    """Take files, folders and rule packs into an open library.

    Pages without text are read by OCR where that is installed, unless `ways` says no.

    Raises
    ------
    InputError
        There is nothing to add under any of the paths, or OCR is asked for and not
        installed.
    LibraryError
        The library cannot be written, or the model's tokenizer is missing.
    """
    from ingest.outcome import Ingested
    from ingest.packs import parsed_files, take_pack
    from ingest.pipeline import Options, add
    from ingest.shaken import shaken_packs

    warnings: list[str] = []

    kept = parsed_files(settings)

    def taking(folder: Path) -> None:
        proved = take_pack(folder, store, kept)
        warnings.extend(str(each) for each in proved.warnings)

    ways = ways or Ways()
    options = Options(
        password=ways.password,
        ask_password=partial(ask_password, console) if _asks(console) else None,
        add_pack=taking,
        prune=ways.prune,
        **_pictures(ocr=ways.ocr),
    )
    steps = add(paths, store, count=token_counter(settings), options=options)
    pace = PaceLine(SystemClock())
    with told_when_stopped(console), closing(steps):
        for step in steps:
            if isinstance(step, Ingested):
                step.warnings.extend(warnings)
                if step.replaced or step.pruned:
                    step.warnings.extend(shaken_packs(store))
                return step
            console.progress(pace.line(step), last=_ends(step))
    raise FaultleafError("adding ended without a result")


class _Pictures(TypedDict):
    """The options of `ingest.pipeline.add` that concern pictures of pages."""

    recognise: Recognise | None
    way_to_recognise: str


def _pictures(*, ocr: bool | None) -> _Pictures:
    from ingest.pictures import AGAIN, WAY
    from ingest.readers.ocr import models_folder
    from ingest.readers.scans import recognise

    installed = models_folder() is not None
    if ocr and not installed:
        raise InputError("reading pictures needs an extra", WAY)
    if installed and ocr is not False:
        return {"recognise": recognise, "way_to_recognise": ""}
    return {"recognise": None, "way_to_recognise": AGAIN if installed else WAY}


def ask_password(console: Console, path: str) -> str | None:
    """Ask a person for a file's password, unseen; None when they give none."""
    from getpass import getpass

    console.talk(f"{path} is encrypted; Enter alone leaves it out")
    return getpass("password: ") or None


def _asks(console: Console) -> bool:
    """Whether a person sits there who can be asked while data goes elsewhere."""
    return console.source.isatty() and console.err.isatty()


@contextmanager
def told_when_stopped(console: Console) -> Iterator[None]:
    """Say what Ctrl-C leaves behind."""
    try:
        yield
    except KeyboardInterrupt:
        console.talk(STOPPED)
        raise


def _ends(step: Progress) -> bool:
    """Whether the line stands: documents and pages share one to their end."""
    return step.finished and step.stage != "read"


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
