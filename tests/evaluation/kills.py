"""What a build loses that is killed, runs out of disk, or may not write.

Run it from the project's folder (Linux; the disk part needs `unshare`)::

    python tests/evaluation/kills.py [KILLS]

It kills a build of twelve manuals with a stand-in for the encoder at thirty random
moments, checks the library after each, and lets it end. Then it fills a small disk,
and makes it read-only, below a library that was there before.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from assistant.errors import LibraryError  # noqa: E402
from assistant.library.search import Search  # noqa: E402
from assistant.library.store import LibraryStore  # noqa: E402
from ingest.embedding import BATCH, embed_missing  # noqa: E402
from tests.evaluation.machine import Checks, say  # noqa: E402
from tests.fakes import HashEncoder  # noqa: E402
from tests.ingest.kills import (  # noqa: E402
    DOCUMENTS,
    Workplace,
    survive,
    write_literature,
)
from tests.shelves import note, take  # noqa: E402

SIZE = 700
"""KiB of the small disk: the first library fits, the shelf does not."""
OLD = "Lamp LD9 flashes nine times when the outdoor sensor is open."
INSIDE = "--inside"


def killed(times: int, checks: Checks) -> None:
    """Kill a build so often; every check that fails raises."""
    with tempfile.TemporaryDirectory() as folder:
        shelf = Path(folder) / "literature"
        write_literature(shelf)
        place = Workplace(Path(folder) / "library", shelf, Path(folder) / "notes")
        began = perf_counter()
        again = survive(place, times, seed=20260714)
        with LibraryStore.open(place.library) as store:
            texts = store.counts()["embeddings"]
    say(f"{times} kills in {perf_counter() - began:.0f} s")
    checks.hold(
        "after each kill: whole documents only, all text on its page", holds=True
    )
    checks.hold("after each kill: the first answer is the right page", holds=True)
    checks.hold(
        f"{texts} texts; {again} were embedded again, at most {BATCH} a kill",
        holds=again <= BATCH * times,
    )


def disk(checks: Checks) -> None:
    """Run the second part where a small disk can be mounted, if it can."""
    with tempfile.TemporaryDirectory() as place:
        mount = f"mount -t tmpfs -o size={SIZE}k none {place}"
        words = f'{mount} && exec "$0" "$@"'
        inside = [sys.executable, __file__, INSIDE, place]
        done = subprocess.run(
            ["unshare", "-rm", "sh", "-c", words, *inside],
            check=False,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )
    checks.hold("the small disk, above", holds=done.returncode == 0)


def inside(place: Path) -> Checks:
    """Fill the disk at `place`, then write where nothing may be written."""
    checks = Checks()
    library = place / "library"
    with tempfile.TemporaryDirectory() as elsewhere:
        shelf = Path(elsewhere) / "shelf"
        write_literature(shelf)
        old = note(Path(elsewhere) / "old.txt", f"Shop note\n\n{OLD}")
        with LibraryStore.open(library, create=True) as store:
            take(store, old)
            list(embed_missing(store, HashEncoder()))
        say(f"a disk of {SIZE} KiB")
        said = refused(library, shelf)
        checks.hold(f"full: {said}", holds="no space left" in said)
        intact("full", library, checks)
        remount(place, "size=40m")
        with LibraryStore.open(library) as store:
            take(store, shelf)
            documents = len(store.documents())
        checks.hold(
            f"room made, added again: {documents} of {DOCUMENTS + 1} documents",
            holds=documents == DOCUMENTS + 1,
        )
        remount(place, "ro")
        said = refused(library, shelf)
        checks.hold(f"read-only: {said}", holds="cannot be written" in said)
        intact("read-only", library, checks)
    return checks


def remount(place: Path, option: str) -> None:
    """Give the disk another size, or make it read-only."""
    subprocess.run(["mount", "-o", f"remount,{option}", str(place)], check=True)


def refused(library: Path, shelf: Path) -> str:
    """Add the shelf, and return how it was refused."""
    try:
        with LibraryStore.open(library) as store:
            take(store, shelf)
    except LibraryError as error:
        return f"{error.what} ({error.hint})"
    return "nothing was refused"


def intact(state: str, library: Path, checks: Checks) -> None:
    """Say whether the library is whole and still answers."""
    try:
        with LibraryStore.open(library, read_only=True) as store:
            faults = store.check()
            hits = Search(store).search("lamp LD9 flashes nine times").hits
            documents = len(store.documents())
    except LibraryError as error:
        checks.hold(f"{state}: the library opens ({error.what})", holds=False)
        return
    answers = bool(hits) and hits[0].document == "old.txt" and OLD in hits[0].text
    checks.hold(
        f"{state}: {documents} documents, whole, the old one answers",
        holds=answers and not faults,
    )


def main(words: list[str]) -> int:
    """Do both parts, and return 0 when all holds."""
    if words[:1] == [INSIDE]:
        return inside(Path(words[1])).code()
    checks = Checks()
    killed(int(words[0]) if words else 30, checks)
    disk(checks)
    return checks.code()


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
