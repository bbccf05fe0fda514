"""A build that is killed at random moments, and what must be whole afterwards."""

from __future__ import annotations

import os
import random
import shutil
import sqlite3
import subprocess
import sys
import time
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

from assistant.library.connection import FILE
from assistant.library.search import Search
from assistant.library.store import LibraryStore
from assistant.library.types import PageStatus
from ingest.embedding import BATCH

HERE = Path(__file__).parent
ROOT = HERE.parents[1]
DOCUMENTS = 12
PARTS = 40
PAGES = 2
STEPS = 60
"""Steps, drawn at random, after which the kill comes; a whole build has about 75."""


def write_literature(folder: Path) -> None:
    """Twelve text manuals of two pages, no two passages alike."""
    for number in range(DOCUMENTS):
        pages = []
        for page in range(PAGES):
            lines = [f"{page + 1}.{number + 1} Board {number} page {page}", ""]
            lines += [
                f"Lamp {number}-{page}-{part} flashes {part} times when the sensor "
                f"of plug CN{number}{page}{part} is open or short on the main board."
                for part in range(PARTS)
            ]
            pages.append("\n".join(lines))
        name = f"part-{number % 3}/manual-{number:02}.txt"
        (folder / name).parent.mkdir(parents=True, exist_ok=True)
        (folder / name).write_text("\f".join(pages), encoding="utf-8")


@dataclass
class Workplace:
    """Where the killed process works."""

    library: Path
    folder: Path
    notes: Path

    def start(self, *more: str) -> subprocess.Popen[bytes]:
        target = HERE / "kill_target.py"
        places = map(str, (self.library, self.folder, self.notes))
        return subprocess.Popen(
            [sys.executable, str(target), *places, *more],
            stdout=subprocess.PIPE,
            env={**os.environ, "PYTHONPATH": str(ROOT)},
        )

    def noted(self) -> Counter[str]:
        if not self.notes.exists():
            return Counter()
        return Counter(self.notes.read_text(encoding="ascii").split())


def run_for(process: subprocess.Popen[bytes], steps: int, moment: float) -> bool:
    """Let it take so many steps and a moment more, kill it; True if it had ended."""
    assert process.stdout is not None
    said = b""
    for _ in range(steps):
        said = process.stdout.readline()
        if said in {b"", b"done\n"}:
            break
    deadline = time.monotonic() + moment
    while time.monotonic() < deadline:
        pass
    process.kill()
    process.wait()
    process.stdout.close()
    return said == b"done\n"


def check_whole(place: Workplace) -> None:
    """Every document is all there or not at all, and what is there answers."""
    if not (place.library / FILE).exists():
        return
    connection = sqlite3.connect(place.library / FILE)
    try:
        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert connection.execute("PRAGMA foreign_key_check").fetchall() == []
    finally:
        connection.close()
    with LibraryStore.open(place.library, create=True) as store:
        counts = store.counts()
        passages = 0
        for document in store.documents():
            pages = store.pages(document.sha256)
            stored = store.passages(document.sha256)
            assert [page.number for page in pages] == [1, 2]
            assert all(page.status is PageStatus.TEXT for page in pages)
            for each in stored:
                text = pages[each.passage.page - 1].text
                assert text[each.passage.start : each.passage.end] == each.passage.text
            passages += len(stored)
        assert counts["documents"] == len(store.documents())
        assert counts["passages"] == passages
        assert counts["embeddings"] <= passages + counts["lines"]
        words = store.query("SELECT count(*) FROM words")[0][0]
        assert words == passages
        if store.documents():
            result = Search(store).search("sensor of the plug open or short")
            assert result.found
            assert "sensor" in result.hits[0].text
            last = store.documents()[-1].path
            number = int(last[-6:-4])
            asked = f"lamp {number}-1-7 flashes, plug CN{number}17"
            first = Search(store).search(asked).hits[0]
            assert (first.document, first.page) == (last, 2)
            assert f"Lamp {number}-1-7 flashes" in first.text


def check_settled(place: Workplace, kills: int) -> int:
    """All is there, and beside one batch a kill nothing was embedded twice.

    Returns how many texts were embedded again.
    """
    check_whole(place)
    with LibraryStore.open(place.library) as store:
        counts = store.counts()
        texts = {
            row[0]
            for row in store.query(
                "SELECT text_hash FROM passage UNION SELECT text_hash FROM line"
            )
        }
    noted = place.noted()
    assert counts["documents"] == DOCUMENTS
    assert counts["embeddings"] == len(texts)
    assert set(noted) == texts
    again = sum(noted.values()) - len(texts)
    assert again <= BATCH * kills
    return again


def survive(place: Workplace, wanted: int, seed: int) -> int:
    """Kill so often at random moments, checking each time.

    Where the work was done before the kill came, it begins anew. Returns how many
    texts were embedded again over all builds.
    """
    chance = random.Random(seed)  # noqa: S311 - a seed, no secret
    total = kills = again = 0
    while total < wanted:
        steps = chance.randrange(0, STEPS)
        # Without a step it is killed while it starts, opens and migrates.
        moment = chance.uniform(0, 0.03 if steps else 1.0)
        ended = run_for(place.start(), steps, moment)
        if not ended:
            total, kills = total + 1, kills + 1
            check_whole(place)
            continue
        again += check_settled(place, kills)
        shutil.rmtree(place.library)
        place.notes.unlink()
        kills = 0
    assert run_for(place.start(), 10_000, 0.0)
    return again + check_settled(place, kills)
