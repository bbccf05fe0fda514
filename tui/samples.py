"""The packaged samples: where they lie, and the library built from them once."""

from __future__ import annotations

import hashlib
import shutil
import tempfile
from importlib.resources import files
from pathlib import Path

from assistant.errors import InputError, UsageError
from assistant.settings import Settings
from tui.plain.console import Console

PARTS = ("literature", "packs")
FOLDER = "samples"
BUILDING = "building the sample library from the packaged literature and rule packs"


def samples_folder() -> Path:
    """Return the folder of the packaged samples.

    Raises
    ------
    InputError
        When the package was installed in a form that has no folder.
    """
    folder = files("kb_samples")
    if not isinstance(folder, Path):
        raise InputError(
            "the samples are not plain files in this installation",
            "install faultleaf with pip",
        )
    return folder


def dialogues() -> dict[str, Path]:
    """Return the packaged dialogues by name."""
    found = sorted((samples_folder() / "dialogues").glob("*.yaml"))
    return {path.stem: path for path in found}


def dialogue(name: str) -> Path:
    """Return the file of a packaged dialogue.

    Raises
    ------
    UsageError
        When there is none of that name.
    """
    known = dialogues()
    if name not in known:
        raise UsageError(
            f"there is no dialogue {name!r}; known: {', '.join(known)}",
            "faultleaf demo --list",
        )
    return known[name]


def sample_library(
    settings: Settings, console: Console, *, fresh: bool = False
) -> Path:
    """Return the folder of the sample library, building it when it is not there.

    It lies in the cache, under the hash of what it is built from, and appears whole
    or not at all.

    Raises
    ------
    InputError
        When a packaged document or rule pack is refused.
    """
    folder = settings.cache / FOLDER / fingerprint(samples_folder())
    if fresh:
        shutil.rmtree(folder, ignore_errors=True)
    if folder.exists():
        return folder
    console.talk(BUILDING)
    folder.parent.mkdir(parents=True, exist_ok=True)
    with tempfile.TemporaryDirectory(dir=folder.parent) as made:
        built = Path(made) / "library"
        build(built, settings, console)
        if not folder.exists():
            built.rename(folder)
    return folder


def fingerprint(root: Path) -> str:
    """Return a hash of the samples and of the rules that turn them into a library."""
    from assistant.library.migrations import FORMAT
    from assistant.library.texts import SPLITTER

    seen = hashlib.sha256(f"format {FORMAT.latest}, splitter {SPLITTER}".encode())
    for part in PARTS:
        for path in sorted((root / part).rglob("*")):
            if path.is_file():
                seen.update(path.relative_to(root).as_posix().encode())
                seen.update(path.read_bytes())
    return seen.hexdigest()[:16]


def build(folder: Path, settings: Settings, console: Console) -> None:
    """Build the sample library into a folder that is not there yet.

    Raises
    ------
    InputError
        When a packaged document or rule pack is refused.
    """
    from assistant.library.store import LibraryStore
    from tui.adding import Ways, add_paths
    from tui.embedding import embed_library

    paths = [samples_folder() / part for part in PARTS]
    with LibraryStore.open(folder, create=True) as store:
        # Without OCR, which not every installation has: the samples are the same.
        result = add_paths(paths, store, settings, console, Ways(ocr=False))
        if result.refused:
            reasons = "\n".join(refusal.reason for refusal in result.refused)
            raise InputError(reasons, "install faultleaf again")
        done = embed_library(store, settings, console)
    if done.warning:
        console.talk(f"warning: {done.warning}")
