"""How fast a shelf goes in, again, and with text that repeats.

Run it from the project's folder (Linux)::

    python tests/evaluation/shelf_speed.py [reading] [again] [repeats]

It prints pages a second for text, words and tables beside pypdf's bare text, on the
same files with the same two workers by turns; what adding 500 unchanged documents
again costs; and how many embeddings a shelf of 1,000 pages needs of which 30 %
repeats.
"""

from __future__ import annotations

import os
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path
from time import perf_counter

ROOT = Path(__file__).parents[2]
sys.path.insert(0, str(ROOT))

from assistant.library.store import LibraryStore  # noqa: E402
from ingest.embedding import embed_missing  # noqa: E402
from ingest.outcome import Ingested  # noqa: E402
from ingest.pipeline import add  # noqa: E402
from ingest.readers.ahead import WORKERS, Ahead  # noqa: E402
from ingest.readers.base import RawPage  # noqa: E402
from ingest.readers.isolation import Reading  # noqa: E402
from ingest.readers.sniff import PDF  # noqa: E402
from tests.evaluation.bare_text import BARE  # noqa: E402
from tests.evaluation.machine import (  # noqa: E402
    MIB,
    Checks,
    say,
    table,
    watching,
)
from tests.evaluation.shelf_made import kerned, manuals, notes, shelf  # noqa: E402
from tests.fakes import HashEncoder  # noqa: E402

SAMPLES = ROOT / "kb_samples" / "literature"
TURNS = 2
GOAL = 1.5
REPEATED = 0.3
AGAIN_SECONDS = 3.0


def read_all(files: Sequence[Path], reader: str) -> tuple[int, int, float]:
    """Read files by two workers; return pages, tables and seconds."""
    began = perf_counter()
    pages = tables = 0
    found = Ahead([Reading(path, reader) for path in files])
    try:
        for at in range(len(files)):
            for item in found.items(at):
                if isinstance(item, RawPage):
                    pages += 1
                    tables += len(item.tables)
    finally:
        found.stop()
    return pages, tables, perf_counter() - began


def beside(name: str, files: Sequence[Path]) -> tuple[list[str], float]:
    """Measure both readers by turns; return the row and how many times as fast."""
    seconds = {BARE: 0.0, PDF: 0.0}
    pages = tables = 0
    for _ in range(TURNS):
        for reader in seconds:
            pages, tables, took = read_all(files, reader)
            seconds[reader] += took
    bare, ours = (TURNS * pages / seconds[reader] for reader in (BARE, PDF))
    row = [name, str(len(files)), str(pages), str(tables)]
    row += [f"{bare:.1f}", f"{ours:.1f}", f"{ours / bare:.2f}"]
    return row, ours / bare


def reading(place: Path, checks: Checks, many: int = 4) -> None:
    """Print pages a second on the samples and on manuals of two writers."""
    samples = sorted(SAMPLES.glob("*.pdf"))
    made = manuals(place / "manuals", many, 60)
    rows, times = [], {}
    placed = kerned(place / "kerned", many, 60)
    for name, files in (
        ("samples", samples),
        ("simple text", made),
        ("placed letters", placed),
    ):
        row, times[name] = beside(name, files)
        rows.append(row)
    say(f"pages a second, {WORKERS} workers, process starts counted")
    heads = ("files", "n", "pages", "tables", "pypdf bare", "ours", "times")
    table(heads, rows)
    for name, faster in times.items():
        checks.hold(f"{name}: at least {GOAL} times pypdf", holds=faster >= GOAL)
    with watching() as watched:
        began = perf_counter()
        result = take(place / "manuals", place / "whole")
        took = perf_counter() - began
    pages = sum(result.pages.values())
    say(
        f"added whole (read, cut, stored; no embedding): {pages / took:.1f} pages a "
        f"second, {watched.most_children} reading at a time, this process grew by "
        f"{(watched.own - watched.before) / MIB:.0f} MiB"
    )


def take(folder: Path, library: Path) -> Ingested:
    """Add a folder; nothing is embedded."""
    with LibraryStore.open(library, create=True) as store:
        for step in add([folder], store, count=HashEncoder().count_tokens):
            if isinstance(step, Ingested):
                return step
    return Ingested()


def again(place: Path, checks: Checks) -> None:
    """Add 500 documents by the command, and once more."""
    notes(place / "notes", 500)
    first, said = command(place)
    second, told = command(place)
    say(f"500 documents: {first:.1f} s, again {second:.2f} s")
    checks.hold("the first time all were embedded", holds="embedded" in said)
    checks.hold(
        "again: 500 unchanged, nothing embedded",
        holds=told.count("unchanged ") == 500 and "embedded" not in told,
    )
    checks.hold(f"again: under {AGAIN_SECONDS:g} s", holds=second < AGAIN_SECONDS)


def command(place: Path) -> tuple[float, str]:
    """Run `faultleaf add`; return seconds and what it said."""
    words = ["add", str(place / "notes"), "--library", str(place / "noted")]
    began = perf_counter()
    done = subprocess.run(
        [sys.executable, "-m", "tui", *words],
        cwd=ROOT,
        check=True,
        capture_output=True,
        text=True,
        env={**os.environ, "PYTHONPATH": str(ROOT)},
    )
    return perf_counter() - began, done.stdout


def repeats(place: Path, checks: Checks, pages: int = 1000) -> None:
    """Count the embeddings of a shelf without and with text that repeats."""
    counts = []
    for share in (0.0, REPEATED):
        name = f"shelf-{share:g}"
        shelf(place / name, 10, pages // 10, share)
        counts.append(embedded(place / name, place / f"of-{name}"))
    fall = 1 - counts[1] / counts[0]
    say(f"{pages} pages: {counts[0]} embeddings; {REPEATED:.0%} repeated: {counts[1]}")
    checks.hold(
        f"embeddings fall by {fall:.1%}, as the text does",
        holds=abs(fall - REPEATED) <= 0.01,
    )


def embedded(folder: Path, library: Path) -> int:
    """Add a folder and return how many texts an encoder was given."""
    encoder = HashEncoder(dimension=8)
    take(folder, library)
    with LibraryStore.open(library) as store:
        for _ in embed_missing(store, encoder):
            pass
    return encoder.embedded


PARTS = {"reading": reading, "again": again, "repeats": repeats}


def main(words: Sequence[str]) -> int:
    """Print all parts, or those named, and return 0 when all holds."""
    checks = Checks()
    with tempfile.TemporaryDirectory() as folder:
        for name, part in PARTS.items():
            if not words or name in words:
                part(Path(folder), checks)
    return checks.code()


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
